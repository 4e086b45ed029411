import { type Static, Type } from 'typebox'
import { type FittedRing, RINGS, TOOLS, type ToolName } from '#shared/bearing/fit-correction/input.ts'
import { RESCUE_OPTIONS, STATES } from '#shared/bearing/fit-correction/names.ts'
import { answerUnion, arrangementTag } from '#src/api/answer.ts'
import type { Caution } from '#src/api/caution.ts'
import { designRef } from '#src/api/design-input.ts'
import { length, nonNegativeLength, shownLength, signedLength } from '#src/api/length.ts'
import type { UnitsName } from '#src/api/units.ts'
import { refTo } from '#src/http/schema.ts'
import { READING_SCHEMAS, ReadingRequest } from './readings.ts'

/** Of all states together. */
export const MOST_READINGS = 50
const MOST_STATES = 20
const MOST_COUNTED = 50
const MOST_SIZES = 50

const chance = (description: string) => Type.Number({ minimum: 0, maximum: 1, description })

const tool = Type.Unsafe<ToolName>(
  Type.Enum(TOOLS, { type: 'string', description: 'A cutting edge, or paper and the like.' }),
)

export const ToolErrorRequest = Type.Object(
  {
    absolute: nonNegativeLength('Standard deviation of a shallow cut.'),
    relative: Type.Number({
      minimum: 0,
      maximum: 1,
      description: 'Part that grows with the depth, as a fraction of the depth.',
    }),
  },
  {
    $id: 'ToolErrorRequest',
    description: 'Standard deviation of the depth of a cut: √(absolute² + (relative × depth)²).',
    additionalProperties: false,
  },
)

export const FitTarget = Type.Object(
  {
    ballGap: Type.Optional(nonNegativeLength("Outer ring: gap to end with. Default: the design's.")),
    minBallGap: Type.Optional(nonNegativeLength("Outer ring: limit of the gap. Default: the design's.")),
    maxBallGap: Type.Optional(nonNegativeLength("Outer ring: limit of the gap. Default: the design's.")),
    radialInternalClearance: Type.Optional(nonNegativeLength("Inner ring: play to end with. Default: the design's.")),
    minRadialInternalClearance: Type.Optional(
      nonNegativeLength("Inner ring: smallest good play. Default: half the design's play."),
    ),
    maxRadialInternalClearance: Type.Optional(
      nonNegativeLength("Inner ring: largest good play. Default: twice the design's play."),
    ),
    overshootRisk: Type.Optional(
      Type.Number({
        minimum: 0.0001,
        maximum: 0.5,
        description: 'Chance of ending too deep that you accept, over all cuts to come. Default: 0.05.',
      }),
    ),
    finishAllowance: Type.Optional(
      nonNegativeLength("Film or raised grain that still comes on each surface. Default: the design's."),
    ),
  },
  { $id: 'FitTarget', description: 'The gap or the play to end with.', additionalProperties: false },
)

export const EarlierState = Type.Object(
  {
    readings: Type.Array(refTo<typeof ReadingRequest>('ReadingRequest'), { maxItems: MOST_READINGS }),
    thenRemoved: Type.Object(
      { with: tool, radial: nonNegativeLength('Depth that you meant to cut.') },
      { description: 'The cut that followed these readings.', additionalProperties: false },
    ),
  },
  { $id: 'EarlierState', description: 'The readings before a cut, and the cut.', additionalProperties: false },
)

export const CountedRemoval = Type.Object(
  {
    strokes: Type.Integer({ minimum: 1, maximum: 100_000, description: 'Number of strokes.' }),
    ballGapBefore: Type.Optional(signedLength('Outer ring: ball gap before the strokes.')),
    ballGapAfter: Type.Optional(signedLength('Outer ring: ball gap after the strokes.')),
    radialInternalClearanceBefore: Type.Optional(signedLength('Inner ring: play before the strokes.')),
    radialInternalClearanceAfter: Type.Optional(signedLength('Inner ring: play after the strokes.')),
  },
  {
    $id: 'CountedRemoval',
    description: 'Counted strokes of the abrasive, and the change that they made.',
    additionalProperties: false,
  },
)

export const BallsOnHand = Type.Object(
  {
    diameter: length('Mean diameter of these balls.'),
    quantity: Type.Integer({ minimum: 1, maximum: 10_000, description: 'Number of these balls.' }),
  },
  { $id: 'BallsOnHand', description: 'Other balls that you have, of one size.', additionalProperties: false },
)

export const FitCorrectionRequest = Type.Object(
  {
    design: designRef,
    ring: Type.Optional(
      Type.Unsafe<FittedRing>(
        Type.Enum(RINGS, {
          type: 'string',
          description:
            'The ring on the lathe. Rings must say it; the plates of a `thrust` arrangement, which are cut alike, may not.',
        }),
      ),
    ),
    readings: Type.Array(refTo<typeof ReadingRequest>('ReadingRequest'), {
      minItems: 1,
      maxItems: MOST_READINGS,
      description: 'Readings at the present state of the groove.',
    }),
    earlier: Type.Optional(
      Type.Array(refTo<typeof EarlierState>('EarlierState'), {
        maxItems: MOST_STATES,
        description: `Earlier states, the oldest first. With the present readings there may be ${MOST_READINGS} readings in all.`,
      }),
    ),
    target: Type.Optional(refTo<typeof FitTarget>('FitTarget')),
    tools: Type.Optional(
      Type.Object(
        {
          sharpTool: Type.Optional(refTo<typeof ToolErrorRequest>('ToolErrorRequest')),
          abrasive: Type.Optional(refTo<typeof ToolErrorRequest>('ToolErrorRequest')),
        },
        {
          additionalProperties: false,
          description: 'How true your cuts are. Defaults: 0.2 mm + 10 %, and 0.05 mm + 5 %.',
        },
      ),
    ),
    removalHistory: Type.Optional(
      Type.Array(refTo<typeof CountedRemoval>('CountedRemoval'), {
        maxItems: MOST_COUNTED,
        description: 'How much your abrasive removes in a stroke.',
      }),
    ),
    ballsOnHand: Type.Optional(
      Type.Array(refTo<typeof BallsOnHand>('BallsOnHand'), {
        maxItems: MOST_SIZES,
        description: 'Other balls that you have: larger ones may rescue a groove that is too deep.',
      }),
    ),
  },
  {
    $id: 'FitCorrectionRequest',
    description: 'A groove that is half cut, and what was read at it.',
    additionalProperties: false,
  },
)
export type FitCorrectionRequest = Static<typeof FitCorrectionRequest>

export const LengthEstimate = Type.Object(
  {
    value: shownLength('Mean value.'),
    standardUncertainty: shownLength('Standard uncertainty of the estimate.'),
    interval95: Type.Object(
      { low: shownLength('Lower end of the interval.'), high: shownLength('Upper end of the interval.') },
      { description: 'The shortest interval that holds 95 %.' },
    ),
  },
  { $id: 'LengthEstimate', description: 'An estimate of a length.' },
)

const NextStep = Type.Object(
  {
    with: tool,
    radial: shownLength('Depth to remove before you measure again.'),
    diametral: shownLength('The change of diameter: twice the depth.'),
    strokes: Type.Optional(
      Type.Integer({ description: 'Number of strokes of your abrasive, where you counted some.' }),
    ),
    overshootProbability: chance('Chance that this cut alone ends too deep.'),
  },
  { $id: 'NextStep', description: 'The next cut.' },
)

export const RescueOption = Type.Object(
  {
    option: Type.Enum(RESCUE_OPTIONS, { type: 'string', description: 'A name for programs.' }),
    possible: Type.Boolean({ description: 'Whether this option works for this bearing.' }),
    ballGap: Type.Optional(shownLength('Ball gap that it leaves.')),
    figures: Type.Record(Type.String(), Type.Number(), {
      description: 'Lengths in `units`; names that end in Count are counts, `engagement` is a ratio.',
    }),
    message: Type.String({ description: 'The option in words.' }),
  },
  { $id: 'RescueOption', description: 'A way out of a groove that is too deep. From least to most work.' },
)

const estimate = (description: string) =>
  Type.Unsafe<Static<typeof LengthEstimate>>({ ...refTo<typeof LengthEstimate>('LengthEstimate'), description })

/** How the groove stands. */
const STANDING = {
  state: Type.Enum(STATES, {
    type: 'string',
    description: '`too-deep`: more likely than not. `in-band`: with `confidence`. Else `more-to-remove`.',
  }),
  confidence: chance('How certain `in-band` has to be.'),
  advice: Type.String({ description: 'Advice on what to do now.' }),
  probability: Type.Object(
    {
      tooTight: chance('Chance that it is below the band.'),
      inBand: chance('Chance that it is within the band.'),
      tooDeep: chance('Chance that it is above the band.'),
    },
    { description: 'How likely the gap, or the play, is below, within and above its band now.' },
  ),
}
/** What is still to do. */
const WORK = {
  target: Type.Object(
    {
      aim: shownLength('Ball gap to end with; for the inner ring the play.'),
      min: shownLength('Smallest good value.'),
      max: shownLength('Largest good value.'),
      overshootRisk: chance('Accepted chance of ending too deep, over all cuts to come.'),
      finishAllowance: shownLength('Film or raised grain still to come on each surface.'),
    },
    { description: 'Aim of the plan.' },
  ),
  remaining: Type.Object(
    { radial: shownLength('Change in depth.'), diametral: shownLength('The change of diameter: twice the depth.') },
    { description: 'Distance to the aim. Above 0 there is wood to remove; below 0 the groove is too deep.' },
  ),
  nextStep: Type.Optional(refTo<typeof NextStep>('NextStep')),
  stop: Type.Boolean({
    description:
      'Cut no more and read no more: in band, too deep, or no further reading is likely to make clear which. Without `nextStep` and not `stop`: read again.',
  }),
  overshootProbability: chance('Chance of ending too deep if you follow the advice to the end.'),
  expectedChecks: Type.Number({ description: 'Readings still to come on average.' }),
  removalPerStroke: Type.Optional(
    Type.Object(
      {
        radial: shownLength('Per stroke.'),
        relativeUncertainty: Type.Number({ description: 'Standard uncertainty of that, over itself.' }),
      },
      { description: 'Learnt from `removalHistory`.' },
    ),
  ),
  agreement: Type.Object(
    {
      agrees: Type.Boolean({ description: 'Whether the readings agree with one another.' }),
      disagreements: Type.Array(
        Type.Object({
          path: Type.String({ description: 'A JSON pointer into the input.' }),
          chance: chance('Chance of a reading this far off, given all others.'),
          expected: Type.Optional(
            Type.Object(
              {
                value: shownLength('Mean value.'),
                low: shownLength('Lower end of the interval.'),
                high: shownLength('Upper end of the interval.'),
              },
              { description: 'The value that the other readings predict.' },
            ),
          ),
          message: Type.String({ description: 'The disagreement in words.' }),
        }),
        { description: 'The readings that do not fit the others.' },
      ),
    },
    { description: 'How well the readings agree with one another.' },
  ),
  bestNextReading: Type.Object(
    {
      kind: Type.String({ description: 'The `kind` of the reading.' }),
      count: Type.Optional(Type.Integer({ description: 'Balls in the row.' })),
      standardUncertaintyNow: shownLength('Present standard uncertainty of the gap or the play.'),
      standardUncertaintyAfter: shownLength('Standard uncertainty after this reading.'),
      decides: Type.Optional(
        chance(
          'Chance that this reading makes the next step clear. Present only where the next step is unclear and no cut is advised.',
        ),
      ),
      message: Type.String({ description: 'The reading to take, in words.' }),
    },
    { description: 'The reading that would tell you most.' },
  ),
}

export const RingFitCorrectionResponse = Type.Object(
  {
    arrangement: arrangementTag('radial', 'roller', 'caged'),
    units: refTo<typeof UnitsName>('Units'),
    ring: Type.Unsafe<FittedRing>(Type.Enum(RINGS, { type: 'string', description: 'The ring on the lathe.' })),
    ...STANDING,
    ballGap: Type.Optional(estimate('Outer ring: the gap as it is now.')),
    pitchRadius: Type.Optional(estimate('Outer ring: pitch radius.')),
    ballDiameter: Type.Optional(estimate('Outer ring: mean diameter of the balls in it.')),
    radialInternalClearance: Type.Optional(estimate('Inner ring: the play as it is now.')),
    grooveBottomDiameter: estimate('Groove bottom diameter of this ring.'),
    ...WORK,
    adjustment: Type.Optional(
      Type.Object(
        {
          matingFaces: shownLength(
            'Inner ring: total thickness to sand off the mating faces (above 0), or thickness of the shim between them (below 0), that brings the play to the aim.',
          ),
          worthwhile: Type.Boolean({
            description: 'Whether that is less work than to cut deeper, or a new inner ring. Common practice.',
          }),
          message: Type.String({ description: 'The adjustment in words.' }),
        },
        { description: 'A split inner ring can be adjusted where its halves meet.' },
      ),
    ),
    rescue: Type.Optional(Type.Array(refTo<typeof RescueOption>('RescueOption'))),
    cautions: Type.Array(refTo<typeof Caution>('Caution')),
  },
  { $id: 'RingFitCorrectionResponse', description: 'Present state of the groove, and the next step.' },
)
export type RingFitCorrectionResponse = Static<typeof RingFitCorrectionResponse>

export const ThrustFitCorrectionResponse = Type.Object(
  {
    units: refTo<typeof UnitsName>('Units'),
    arrangement: arrangementTag('thrust'),
    ...STANDING,
    ballGap: estimate('The gap as it is now.'),
    pitchRadius: estimate('Radius of the groove circle.'),
    ballDiameter: estimate('Mean diameter of the balls.'),
    ...WORK,
    rescue: Type.Optional(Type.Array(refTo<typeof RescueOption>('RescueOption'))),
    cautions: Type.Array(refTo<typeof Caution>('Caution')),
  },
  {
    $id: 'ThrustFitCorrectionResponse',
    description:
      "Present state of a turntable's groove, and the next step. A depth to remove is wood off the outer flank, which makes the groove circle larger.",
  },
)
export type ThrustFitCorrectionResponse = Static<typeof ThrustFitCorrectionResponse>

export const FitCorrectionResponse = answerUnion(
  'FitCorrectionResponse',
  'The present state of the groove, and what to do next.',
  RingFitCorrectionResponse,
  ThrustFitCorrectionResponse,
)
export type FitCorrectionResponse = Static<typeof FitCorrectionResponse>

const INPUTS = [
  ...READING_SCHEMAS,
  ReadingRequest,
  ToolErrorRequest,
  FitTarget,
  EarlierState,
  CountedRemoval,
  BallsOnHand,
  FitCorrectionRequest,
]
const OUTPUTS = [
  LengthEstimate,
  NextStep,
  RescueOption,
  RingFitCorrectionResponse,
  ThrustFitCorrectionResponse,
  FitCorrectionResponse,
]

export const FIT_CORRECTION_SCHEMAS = [...INPUTS, ...OUTPUTS]
