import { type Static, type TProperties, Type } from 'typebox'
import type { FitState } from '#shared/questions/fit/decision.ts'
import { type FittedRing, RINGS } from '#shared/questions/fit/fit-correction.ts'
import type { ReadingDecides, ReadingReason } from '#shared/questions/fit/next-reading.ts'
import type { ToolName } from '#shared/questions/fit/reading.ts'
import type { Life, Obstacle } from '#shared/questions/fit/rescue.ts'
import { answerUnion, arrangementTag } from '#src/api/answer.ts'
import type { Assumption } from '#src/api/assumption.ts'
import type { Caution } from '#src/api/caution.ts'
import { designRef } from '#src/api/design-input.ts'
import { length, nonNegativeLength, shownLength, signedLength } from '#src/api/length.ts'
import type { Source } from '#src/api/source.ts'
import type { UnitsName } from '#src/api/units.ts'
import type { Warning } from '#src/api/warning.ts'
import { refTo } from '#src/http/schema.ts'
import { READING_SCHEMAS, ReadingRequest } from './readings.ts'

/** Of all states together. */
export const MOST_READINGS = 50
const MOST_STATES = 20
const MOST_COUNTED = 50
const MOST_SIZES = 50

const chance = (description: string) => Type.Number({ minimum: 0, maximum: 1, description })

const tool = Type.Unsafe<ToolName>(
  Type.Enum(['sharp-tool', 'abrasive'], { type: 'string', description: 'A cutting edge, or abrasive paper.' }),
)

export const ToolErrorRequest = Type.Object(
  {
    absolute: nonNegativeLength('Standard deviation of a shallow cut.'),
    relative: Type.Number({
      minimum: 0,
      maximum: 1,
      description: 'What depth adds to it, as a fraction of the depth.',
    }),
  },
  {
    $id: 'ToolErrorRequest',
    description: 'How far a cut comes out from what was asked: √(absolute² + (relative × depth)²).',
    additionalProperties: false,
  },
)

export const FitTarget = Type.Object(
  {
    ballGap: Type.Optional(nonNegativeLength("Outer ring, plates: gap to end with. Default: the design's.")),
    minBallGap: Type.Optional(nonNegativeLength("Outer ring, plates. Default: the design's.")),
    maxBallGap: Type.Optional(nonNegativeLength("Outer ring, plates. Default: the design's.")),
    radialInternalClearance: Type.Optional(nonNegativeLength("Inner ring: play to end with. Default: the design's.")),
    minRadialInternalClearance: Type.Optional(nonNegativeLength("Inner ring. Default: half the design's play.")),
    maxRadialInternalClearance: Type.Optional(nonNegativeLength("Inner ring. Default: twice the design's play.")),
    overshootRisk: Type.Optional(
      Type.Number({
        minimum: 0.0001,
        maximum: 0.5,
        description: 'Chance of ending too deep that you accept. Default: 0.05. Common practice, no source.',
      }),
    ),
    finishAllowance: Type.Optional(
      nonNegativeLength("Film or raised grain that still comes on each surface. Default: the design's."),
    ),
  },
  { $id: 'FitTarget', description: 'Where to end.', additionalProperties: false },
)

export const EarlierState = Type.Object(
  {
    readings: Type.Array(refTo<typeof ReadingRequest>('ReadingRequest'), { maxItems: MOST_READINGS }),
    thenRemoved: Type.Object(
      { with: tool, radial: nonNegativeLength('Depth that the cut was meant to have.') },
      { additionalProperties: false },
    ),
  },
  {
    $id: 'EarlierState',
    description: 'What was measured before a cut, and the cut. The service learns from it how true you cut and read.',
    additionalProperties: false,
  },
)

export const CountedRemoval = Type.Object(
  {
    strokes: Type.Integer({ minimum: 1, maximum: 100_000 }),
    ballGapBefore: Type.Optional(signedLength('Outer ring, plates.')),
    ballGapAfter: Type.Optional(signedLength('Outer ring, plates.')),
    radialInternalClearanceBefore: Type.Optional(signedLength('Inner ring.')),
    radialInternalClearanceAfter: Type.Optional(signedLength('Inner ring.')),
  },
  {
    $id: 'CountedRemoval',
    description: 'Strokes of the abrasive that were counted, and what they did.',
    additionalProperties: false,
  },
)

export const BallsOnHand = Type.Object(
  {
    diameter: length('Mean of these balls.'),
    quantity: Type.Integer({ minimum: 1, maximum: 10_000 }),
  },
  { $id: 'BallsOnHand', additionalProperties: false },
)

export const FitCorrectionRequest = Type.Object(
  {
    design: designRef,
    ring: Type.Optional(
      Type.Unsafe<FittedRing>(
        Type.Enum(RINGS, {
          type: 'string',
          description:
            'The ring that is being cut. Required for rings; plates, which are cut alike, must leave it out.',
        }),
      ),
    ),
    readings: Type.Array(refTo<typeof ReadingRequest>('ReadingRequest'), {
      maxItems: MOST_READINGS,
      description: 'What was measured at this state of the groove. May be empty.',
    }),
    earlier: Type.Optional(
      Type.Array(refTo<typeof EarlierState>('EarlierState'), {
        maxItems: MOST_STATES,
        description: `Earlier states, the first one first. At most ${MOST_READINGS} readings in all, those of now included.`,
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
          description:
            'How true your cuts are. Defaults: 0.2 mm and 10 %, and 0.05 mm and 5 %. Common practice, no source.',
        },
      ),
    ),
    removalHistory: Type.Optional(
      Type.Array(refTo<typeof CountedRemoval>('CountedRemoval'), { maxItems: MOST_COUNTED }),
    ),
    ballsOnHand: Type.Optional(Type.Array(refTo<typeof BallsOnHand>('BallsOnHand'), { maxItems: MOST_SIZES })),
  },
  {
    $id: 'FitCorrectionRequest',
    description: 'A groove that is half cut, and what was measured at it.',
    additionalProperties: false,
  },
)
export type FitCorrectionRequest = Static<typeof FitCorrectionRequest>

const interval = (what: string) =>
  Type.Object(
    { min: shownLength('Lower end.'), max: shownLength('Upper end.') },
    { description: `The shortest interval that holds ${what} with a chance of 95 %.` },
  )

export const LengthEstimate = Type.Object(
  {
    value: shownLength('Mean.'),
    standardUncertainty: shownLength('Standard uncertainty.'),
    interval95: interval('it'),
  },
  { $id: 'LengthEstimate', description: 'What is known of a length.' },
)

const estimate = (description: string) =>
  Type.Unsafe<Static<typeof LengthEstimate>>({ ...refTo<typeof LengthEstimate>('LengthEstimate'), description })

const STATES = ['unread', 'more-to-remove', 'in-band', 'too-deep', 'unclear'] as const satisfies readonly FitState[]
const WHYS = [
  'groove-unread',
  'no-word-on-last-ball',
  'refusal-has-no-figure',
  'cut-too-risky',
  'verdict-uncertain',
] as const satisfies readonly ReadingReason[]
const DECIDES = [
  'how-deep-to-cut',
  'whether-it-is-finished',
  'whether-it-is-too-deep',
] as const satisfies readonly ReadingDecides[]
const OBSTACLES = [
  'none-on-hand',
  'out-of-band',
  'last-ball-stays-out',
  'rides-on-edges',
  'stands-out',
  'no-such-bearing',
  'too-thin',
  'too-deep-for-it-too',
] as const satisfies readonly Obstacle[]
const LIVES = ['hardly-noticed', 'knocks', 'balls-bunch', 'ball-short'] as const satisfies readonly Life[]

/** The next cut, which ends where a size of its own says. */
const nextStep = <Until extends TProperties>($id: string, until: Until) =>
  Type.Object(
    {
      with: tool,
      radial: shownLength('Depth of the cut: a radial thickness of wood.'),
      diametral: shownLength('Twice that: how much the diameter changes.'),
      until: Type.Object(until, {
        description:
          'About what you measure when the cut is done. The chance below is that of a cut of depth `radial`.',
      }),
      strokes: Type.Optional(
        Type.Integer({ description: 'The same in strokes of your abrasive, where `removalHistory` counted some.' }),
      ),
      overshootProbability: chance('Of ending too deep with this cut. Never above `overshootRisk`.'),
    },
    { $id, description: 'The next cut.' },
  )

const GROOVE_UNTIL = { grooveBottomDiameter: shownLength('Across the bottoms of the groove.') }
const TRACK_UNTIL = { trackDiameter: shownLength('Across the track.') }
const CIRCLE_UNTIL = { grooveCircleDiameter: shownLength("Across the groove's deepest circle.") }
export const GrooveNextStep = nextStep('GrooveNextStep', GROOVE_UNTIL)
export const TrackNextStep = nextStep('TrackNextStep', TRACK_UNTIL)
export const PlateNextStep = nextStep('PlateNextStep', CIRCLE_UNTIL)

const NextReading = Type.Object(
  {
    kind: Type.String({ description: 'The `kind` of the reading to make.' }),
    ballsLeftOut: Type.Optional(Type.Integer({ description: 'Of an opening: how many to leave out.' })),
    count: Type.Optional(Type.Integer({ description: 'Of a row: how many to lay in it.' })),
    why: Type.Enum(WHYS, { type: 'string' }),
    decides: Type.Enum(DECIDES, { type: 'string' }),
    expected: Type.Optional(shownLength('About what it will show.')),
    standardUncertaintyNow: shownLength('Of the gap or the play.'),
    standardUncertaintyAfter: shownLength('What this reading is expected to leave of it.'),
    message: Type.String(),
  },
  { $id: 'NextReading', description: 'A reading that can be made now, and what it decides.' },
)

/* The ways out, each with its figures. */

const InnerRingSizes = Type.Object(
  {
    grooveBottomDiameter: Type.Optional(shownLength('Of a groove.')),
    landDiameter: Type.Optional(shownLength('Of a ring with a groove.')),
    landGap: Type.Optional(shownLength('Between the lands of the two rings.')),
    trackDiameter: Type.Optional(shownLength('Of a plain track.')),
  },
  { $id: 'InnerRingSizes', description: 'What the inner ring must then measure.' },
)

const rescue = <const Option extends string, Own extends TProperties>(
  option: Option,
  $id: string,
  description: string,
  own: Own,
) =>
  Type.Object(
    {
      option: Type.Literal(option),
      possible: Type.Boolean({ description: 'Whether the bearing could be put together and would run.' }),
      obstacle: Type.Optional(
        Type.Enum(OBSTACLES, { type: 'string', description: 'Why it is not possible. Absent where it is.' }),
      ),
      ballGap: Type.Optional(shownLength('The gap that it leaves.')),
      ...own,
      innerRing: Type.Optional(refTo<typeof InnerRingSizes>('InnerRingSizes')),
      message: Type.String({ description: 'What to do.' }),
      livingWithIt: Type.Optional(Type.String({ description: 'How such a bearing runs.' })),
    },
    { $id, description },
  )

const RESCUES = [
  rescue('accept', 'AcceptRescue', 'Leave it as it is.', {
    overMaxBallGap: shownLength('How far the gap is over the largest allowed.'),
    shareOfBall: Type.Number({ description: 'The gap over the ball diameter.' }),
    life: Type.Enum(LIVES, { type: 'string' }),
  }),
  rescue('balls-on-hand', 'BallsOnHandRescue', 'A full set of other balls that are on hand.', {
    diameter: Type.Optional(shownLength('Of these balls.')),
    ballCount: Type.Integer({ description: 'How many it takes.' }),
  }),
  rescue('mixed-balls', 'MixedBallsRescue', 'Some larger balls among the others.', {
    diameter: Type.Optional(shownLength('Of the larger ones.')),
    replacedCount: Type.Optional(Type.Integer({ description: 'How many are replaced.' })),
    standsOut: Type.Optional(shownLength('How much further in than the others the larger ones stand.')),
  }),
  rescue('larger-balls', 'LargerBallsRescue', 'A set of balls of the size that closes the gap.', {
    diameter: Type.Optional(shownLength('Of these balls.')),
    largerBy: Type.Optional(shownLength('Than the present ones.')),
  }),
  rescue('spacers', 'SpacersRescue', 'Spacers between the balls.', {
    spacerCount: Type.Integer({ description: 'One between each two neighbours.' }),
    eachThickness: Type.Optional(shownLength('Of each.')),
    singleThickness: Type.Optional(shownLength('Of a single one instead.')),
  }),
  rescue('lining', 'LiningRescue', 'A lining glued into the groove.', {
    thickness: shownLength('Of the lining.'),
    grooveRadius: Type.Optional(shownLength('Of the groove once it is lined.')),
  }),
  rescue('one-ball-more', 'OneBallMoreRescue', 'Cut on for one ball more.', {
    ballCount: Type.Integer({ description: 'Balls in all.' }),
    deeper: shownLength('Further cut, radially; below 0 it is too deep for that as well.'),
    until: Type.Optional(
      Type.Object(
        {
          grooveBottomDiameter: Type.Optional(GROOVE_UNTIL.grooveBottomDiameter),
          trackDiameter: Type.Optional(TRACK_UNTIL.trackDiameter),
          grooveCircleDiameter: Type.Optional(CIRCLE_UNTIL.grooveCircleDiameter),
          grooveDepth: Type.Optional(shownLength('Of a groove.')),
        },
        { description: 'Where that cut ends.' },
      ),
    ),
  }),
  rescue('new-blank', 'NewBlankRescue', 'Start again.', {}),
]

export const RescueOption = Type.Unsafe<Static<(typeof RESCUES)[number]>>({
  $id: 'RescueOption',
  description: 'A way out of a groove that is too deep.',
  type: 'object',
  required: ['option'],
  discriminator: { propertyName: 'option' },
  oneOf: RESCUES.map((schema) => ({ $ref: String(Reflect.get(schema, '$id')) })),
})

const LearntRatio = Type.Object(
  {
    value: Type.Number({ description: 'Mean.' }),
    standardUncertainty: Type.Number(),
    interval95: Type.Object({ min: Type.Number(), max: Type.Number() }),
  },
  { $id: 'LearntRatio', description: 'What was learnt of a ratio.' },
)

/** What every answer begins with, and how the groove stands. */
const STANDING = {
  units: refTo<typeof UnitsName>('Units'),
  input: Type.Unsafe<FitCorrectionRequest>({
    ...refTo('FitCorrectionRequest'),
    description: 'The request with every default filled in. Sent again, it gives the same answer.',
  }),
  assumed: Type.Array(refTo<typeof Assumption>('Assumption'), {
    description: 'The values that the request left open, and what is taken of a bearing before it is measured.',
  }),
  summary: Type.String({ description: 'What to do now, in one or two sentences.' }),
  action: Type.Enum(['cut', 'measure', 'stop'], {
    type: 'string',
    description: '`cut`: see `nextStep`. `measure`: see `nextReading`. `stop`: see `reason`.',
  }),
  reason: Type.Optional(
    Type.Enum(['in-band', 'too-deep', 'cannot-be-told'], { type: 'string', description: 'Why to stop.' }),
  ),
  state: Type.Enum(STATES, {
    type: 'string',
    description:
      '`more-to-remove`, `in-band` and `too-deep` only at `confidence`; `unread`: nothing was measured at it.',
  }),
  confidence: chance('How certain a verdict has to be.'),
  probability: Type.Object(
    { tooTight: chance('Not enough cut.'), inBand: chance('Finished.'), tooDeep: chance('Too much cut.') },
    { description: 'How the groove is now, with any finish on it that is still to come.' },
  ),
}

/** What is still to do. */
const WORK = {
  remaining: Type.Object(
    { radial: shownLength('Depth.'), diametral: shownLength('Twice that.') },
    { description: 'From here to the aim: above 0 wood to remove, below 0 too much removed.' },
  ),
  nextReading: Type.Optional(refTo<typeof NextReading>('NextReading')),
  overshootProbability: chance('Of ending too deep when this advice is followed.'),
  expectedChecks: Type.Number({ description: 'Readings still to come on average.' }),
  agreement: Type.Object({
    agrees: Type.Boolean(),
    disagreements: Type.Array(
      Type.Object({
        path: Type.String({ description: 'A JSON pointer into the input.' }),
        chance: chance('Of a reading so far off, given all others.'),
        expected: Type.Optional(
          Type.Object(
            { value: shownLength('Mean.'), min: shownLength('Lower end.'), max: shownLength('Upper end.') },
            { description: 'What the others lead to expect, with 95 %.' },
          ),
        ),
        message: Type.String(),
      }),
    ),
  }),
  learnt: Type.Object(
    {
      toolBias: Type.Unsafe<Static<typeof LearntRatio>>({
        ...refTo<typeof LearntRatio>('LearntRatio'),
        description: 'How much more than intended your cuts remove, over what was intended.',
      }),
      readingBias: estimate('How much too long you read a rule.'),
      removalPerStroke: Type.Optional(
        Type.Object(
          {
            radial: shownLength('Per stroke.'),
            relativeUncertainty: Type.Number({ description: 'Standard uncertainty of that, over itself.' }),
          },
          { description: 'From `removalHistory`.' },
        ),
      ),
    },
    { description: 'What `earlier` and `removalHistory` show of your hand.' },
  ),
  rescue: Type.Optional(
    Type.Array(refTo<typeof RescueOption>('RescueOption'), {
      description: 'Of an outer groove, or plates, that are too deep: the ways out, the first to try first.',
    }),
  ),
}

const FOOT = {
  warnings: Type.Array(refTo<typeof Warning>('Warning'), { description: 'What may go wrong.' }),
  cautions: Type.Array(refTo<typeof Caution>('Caution'), { description: 'What can hurt someone.' }),
  sources: Type.Array(refTo<typeof Source>('Source'), { description: 'Where the figures come from.' }),
}

const ADJUSTMENT = {
  adjustment: Type.Optional(
    Type.Object(
      {
        matingFaces: shownLength(
          'What to sand off the mating faces in all (above 0), or the shim to put between them (below 0), to bring the play to the aim.',
        ),
        worthwhile: Type.Boolean({
          description: 'Whether that is less work than cutting or a new inner ring. Common practice, no source.',
        }),
        message: Type.String(),
      },
      { description: 'A split inner ring can be adjusted where its halves meet.' },
    ),
  ),
}

const GAP = estimate('The gap as it is now.')
const PLAY = estimate('The play of the inner ring as it is now.')
const PITCH = estimate('Of the circle through the centres of the balls.')
const BALL = estimate('Mean of the balls.')

const BOTH_RINGS = {
  ring: Type.Unsafe<FittedRing>(Type.Enum(RINGS, { type: 'string' })),
  ballGap: Type.Optional({ ...GAP, description: 'Outer ring: the gap as it is now.' }),
  radialInternalClearance: Type.Optional({ ...PLAY, description: 'Inner ring: the play as it is now.' }),
  pitchRadius: PITCH,
  ballDiameter: BALL,
}

export const RadialFitCorrectionResponse = Type.Object(
  {
    arrangement: arrangementTag('radial'),
    ...STANDING,
    ...BOTH_RINGS,
    grooveBottomDiameter: estimate('Of the ring that is being cut.'),
    nextStep: Type.Optional(refTo<typeof GrooveNextStep>('GrooveNextStep')),
    ...WORK,
    ...ADJUSTMENT,
    ...FOOT,
  },
  { $id: 'RadialFitCorrectionResponse', description: 'How the groove is, and what to do next.' },
)
export type RadialFitCorrectionResponse = Static<typeof RadialFitCorrectionResponse>

export const RollerFitCorrectionResponse = Type.Object(
  {
    arrangement: arrangementTag('roller'),
    ...STANDING,
    ...BOTH_RINGS,
    trackDiameter: estimate('Of the ring that is being cut.'),
    nextStep: Type.Optional(refTo<typeof TrackNextStep>('TrackNextStep')),
    ...WORK,
    ...ADJUSTMENT,
    ...FOOT,
  },
  {
    $id: 'RollerFitCorrectionResponse',
    description: 'How the track is, and what to do next. `ball…` are the rollers.',
  },
)
export type RollerFitCorrectionResponse = Static<typeof RollerFitCorrectionResponse>

export const CagedFitCorrectionResponse = Type.Object(
  {
    arrangement: arrangementTag('caged'),
    ...STANDING,
    ring: Type.Unsafe<'inner'>(Type.Enum(['inner'], { type: 'string' })),
    radialInternalClearance: PLAY,
    pitchRadius: PITCH,
    ballDiameter: BALL,
    grooveBottomDiameter: estimate('Of the inner ring.'),
    nextStep: Type.Optional(refTo<typeof GrooveNextStep>('GrooveNextStep')),
    ...WORK,
    ...ADJUSTMENT,
    ...FOOT,
  },
  { $id: 'CagedFitCorrectionResponse', description: "How the inner ring's groove is, and what to do next." },
)
export type CagedFitCorrectionResponse = Static<typeof CagedFitCorrectionResponse>

export const ThrustFitCorrectionResponse = Type.Object(
  {
    arrangement: arrangementTag('thrust'),
    ...STANDING,
    ballGap: GAP,
    pitchRadius: PITCH,
    ballDiameter: BALL,
    grooveCircleDiameter: estimate("Across the groove's deepest circle."),
    nextStep: Type.Optional(refTo<typeof PlateNextStep>('PlateNextStep')),
    ...WORK,
    ...FOOT,
  },
  {
    $id: 'ThrustFitCorrectionResponse',
    description: "How the plates are, and what to do next. A cut moves the groove's circle out, in both plates alike.",
  },
)
export type ThrustFitCorrectionResponse = Static<typeof ThrustFitCorrectionResponse>

export const FitCorrectionResponse = answerUnion(
  'FitCorrectionResponse',
  'How the groove is now, and what to do next: cut, measure or stop.',
  RadialFitCorrectionResponse,
  RollerFitCorrectionResponse,
  CagedFitCorrectionResponse,
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
  LearntRatio,
  GrooveNextStep,
  TrackNextStep,
  PlateNextStep,
  NextReading,
  InnerRingSizes,
  ...RESCUES,
  RescueOption,
  RadialFitCorrectionResponse,
  RollerFitCorrectionResponse,
  CagedFitCorrectionResponse,
  ThrustFitCorrectionResponse,
  FitCorrectionResponse,
]

export const FIT_CORRECTION_SCHEMAS = [...INPUTS, ...OUTPUTS]
