import { choice, group, type InputOf, length, nonNegativeLength, required } from '#shared/bearing/field.ts'
import * as fields from '#shared/bearing/fields.ts'

const ROLLERS = required(
  group(
    'Rollers',
    'The dowels that roll.',
    {
      count: fields.COUNT,
      diameter: required(length('Nominal roller diameter.')),
      length: length(
        'Length of the rollers.',
        fields.trade(
          'the width less 1/20 of a roller',
          'as long as the ring is wide, less what lets it run free of the cheeks',
        ),
      ),
      material: choice(
        'Material of the rollers.',
        fields.BALL_MATERIALS,
        fields.trade('wood', 'turned wooden dowels are what most makers have'),
      ),
      standardDeviation: nonNegativeLength(
        'Standard deviation of single rollers about their mean.',
        fields.trade('by material', 'how much dowels of this material scatter in a bought lot'),
      ),
      diameters: fields.DIAMETERS,
    },
    ['standardDeviation', 'diameters'],
  ),
)

/** Rollers between two plain rings, kept in by cheeks. */
export const ROLLER_FIELDS = group(
  'RollerDesignRequest',
  'A full ring of dowel rollers between two plain rings, kept in by cheeks.',
  {
    balls: ROLLERS,
    bore: fields.BORE,
    outerRing: group(
      'PlainOuterRingRequest',
      'Options for the outer ring.',
      fields.outsideFields(
        'Least wood behind the track.',
        fields.trade('2/3 of a roller diameter', 'two thirds of a roller of wood behind the track'),
      ),
      ...fields.OUTSIDE_CHOICES,
    ),
    ...fields.gapFields(fields.trade('1/20 of a roller', 'a gap that shows')),
    radialInternalClearance: fields.RADIAL_INTERNAL_CLEARANCE,
    finishAllowance: fields.FINISH_ALLOWANCE,
    width: fields.widthField(
      fields.trade('2 rollers', 'twice as wide as the rollers are thick: long rollers hardly turn askew'),
    ),
    shopDenominator: fields.SHOP_DENOMINATOR,
  },
)

export type RollerInput = fields.Tagged<'roller'> & InputOf<typeof ROLLER_FIELDS.fields>
