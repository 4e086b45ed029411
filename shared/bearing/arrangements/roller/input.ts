import { choice, group, type InputOf, length, nonNegativeLength, required } from '#shared/bearing/field.ts'
import * as fields from '#shared/bearing/fields.ts'

const ROLLERS = required(
  group(
    'Rollers',
    'The rollers to use: dowels.',
    {
      count: fields.COUNT,
      diameter: required(length('Nominal roller diameter.')),
      length: length(
        'Length of each roller.',
        fields.trade(
          'the width minus 1/20 of a roller',
          'as long as the ring is wide, minus what lets the roller run free of the cheeks',
        ),
      ),
      material: choice(
        'Material of the rollers.',
        fields.BALL_MATERIALS,
        fields.trade('wood', 'most makers have turned wooden dowels'),
      ),
      standardDeviation: nonNegativeLength(
        'Standard deviation of the diameters of single rollers.',
        fields.trade('by material', 'the usual scatter of dowels of this material in one lot'),
      ),
      diameters: fields.DIAMETERS,
    },
    ['standardDeviation', 'diameters'],
  ),
)

/** Rollers between two plain rings, held in by cheeks. */
export const ROLLER_FIELDS = group(
  'RollerDesignRequest',
  'A full ring of dowel rollers between two plain rings, held in by cheeks.',
  {
    balls: ROLLERS,
    bore: fields.BORE,
    outerRing: group(
      'PlainOuterRingRequest',
      'Options for the outer ring.',
      fields.outsideFields(
        'Least wood behind the track.',
        fields.trade('2/3 of a roller diameter', 'wood behind the track two thirds as thick as a roller'),
      ),
      ...fields.OUTSIDE_CHOICES,
    ),
    ...fields.gapFields('open-side', 'roller'),
    radialInternalClearance: fields.radialInternalClearance('roller'),
    finishAllowance: fields.FINISH_ALLOWANCE,
    width: fields.widthField(
      fields.trade('2 rollers', 'twice the diameter of a roller: long rollers hardly turn askew'),
    ),
    shopDenominator: fields.SHOP_DENOMINATOR,
  },
)

export type RollerInput = fields.Tagged<'roller'> & InputOf<typeof ROLLER_FIELDS.fields>
