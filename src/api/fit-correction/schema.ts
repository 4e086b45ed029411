import { type Static, type TProperties, Type } from 'typebox'
import type { FitState } from '#shared/questions/fit/decision.ts'
import { type FittedRing, RINGS } from '#shared/questions/fit/fit-setup.ts'
import type { ReadingDecides, ReadingReason } from '#shared/questions/fit/next-reading.ts'
import type { ToolName } from '#shared/questions/fit/reading.ts'
import type { Life, LifeWithPlay, Obstacle } from '#shared/questions/fit/rescue.ts'
import { answerOf } from '#src/api/answer.ts'
import type { Assumption } from '#src/api/assumption.ts'
import { designRef } from '#src/api/design-input.ts'
import { length, nonNegativeLength, shownLength, signedLength } from '#src/api/length.ts'
import {
  choiceOf,
  described,
  flag,
  integer,
  listOf,
  named,
  namedRequest,
  object,
  requestObject,
  text,
} from '#src/api/schema.ts'
import { refTo } from '#src/http/schema.ts'
import { READING_SCHEMAS, ReadingRequest } from './readings.ts'

/** Readings of all states together. */
export const MOST_READINGS = 50
const MOST_STATES = 20
const MOST_COUNTED = 50
const MOST_SIZES = 50

const chance = (description: string) => Type.Number({ minimum: 0, maximum: 1, description })

const tool = choiceOf<ToolName>('A cutting edge, or abrasive paper.', ['sharp-tool', 'abrasive'])

export const ToolErrorRequest = namedRequest(
  'ToolErrorRequest',
  'Standard deviation of the depth of a cut: √(absolute² + (relative × depth)²).',
  {
    absolute: nonNegativeLength('Standard deviation of a shallow cut.'),
    relative: Type.Number({
      minimum: 0,
      maximum: 1,
      description: 'Part that grows with the depth, as a fraction of the depth.',
    }),
  },
)

export const FitTarget = namedRequest('FitTarget', 'The gap or the play to end with.', {
  ballGap: Type.Optional(nonNegativeLength("Gap to end with; not for an inner ring. Default: the design's.")),
  minBallGap: Type.Optional(
    nonNegativeLength("Smallest good gap, once the last ball is in; not for an inner ring. Default: the design's."),
  ),
  maxBallGap: Type.Optional(nonNegativeLength("Largest good gap; not for an inner ring. Default: the design's.")),
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
      description: 'Chance of ending too deep that you accept. Default: 0.05. Common practice, no source.',
    }),
  ),
  finishAllowance: Type.Optional(
    nonNegativeLength(
      "Film or raised grain that still comes on each surface; not for a turntable, whose gap it leaves. Default: the design's.",
    ),
  ),
})

export const EarlierState = namedRequest(
  'EarlierState',
  'The readings before a cut, and the cut. The service learns from them how accurately you cut and read.',
  {
    readings: Type.Array(refTo<typeof ReadingRequest>('ReadingRequest'), { maxItems: MOST_READINGS }),
    thenRemoved: requestObject('The cut that followed these readings.', {
      with: tool,
      radial: nonNegativeLength('Intended depth of the cut.'),
    }),
  },
)

export const CountedRemoval = namedRequest(
  'CountedRemoval',
  'Counted strokes of the abrasive, and the change that they made.',
  {
    strokes: Type.Integer({ minimum: 1, maximum: 100_000, description: 'Number of strokes.' }),
    ballGapBefore: Type.Optional(signedLength('Ball gap before the strokes; not for an inner ring.')),
    ballGapAfter: Type.Optional(signedLength('Ball gap after the strokes; not for an inner ring.')),
    radialInternalClearanceBefore: Type.Optional(signedLength('Inner ring: play before the strokes.')),
    radialInternalClearanceAfter: Type.Optional(signedLength('Inner ring: play after the strokes.')),
  },
)

export const BallsOnHand = namedRequest('BallsOnHand', 'Other balls that you have, of one size.', {
  diameter: length('Mean diameter of these balls.'),
  quantity: Type.Integer({ minimum: 1, maximum: 10_000, description: 'Number of these balls.' }),
})

export const FitCorrectionRequest = namedRequest(
  'FitCorrectionRequest',
  'A groove that is half cut, and what was measured at it.',
  {
    design: designRef,
    ring: Type.Optional(
      choiceOf<FittedRing>(
        'The ring that is being cut. Required where the bearing has rings; does not apply where it has none.',
        RINGS,
      ),
    ),
    readings: Type.Array(refTo<typeof ReadingRequest>('ReadingRequest'), {
      maxItems: MOST_READINGS,
      description: 'Readings at the present state of the groove. The list may be empty.',
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
            'Accuracy of your cuts. Defaults: 0.2 mm and 10 %, and 0.05 mm and 5 %. Common practice, no source.',
        },
      ),
    ),
    removalHistory: Type.Optional(
      Type.Array(refTo<typeof CountedRemoval>('CountedRemoval'), { maxItems: MOST_COUNTED }),
    ),
    ballsOnHand: Type.Optional(
      Type.Array(refTo<typeof BallsOnHand>('BallsOnHand'), {
        maxItems: MOST_SIZES,
        description: 'Other balls that you have: larger ones may rescue a groove that is too deep.',
      }),
    ),
  },
)
export type FitCorrectionRequest = Static<typeof FitCorrectionRequest>

export const LengthEstimate = named('LengthEstimate', 'An estimate of a length.', {
  value: shownLength('Mean.'),
  standardUncertainty: shownLength('Standard uncertainty.'),
  interval95: object('The shortest interval that holds it with a chance of 95 %.', {
    min: shownLength('Lower end of the interval.'),
    max: shownLength('Upper end of the interval.'),
  }),
})

export const estimate = (description: string) => described<typeof LengthEstimate>('LengthEstimate', description)

const STATES = ['unread', 'more-to-remove', 'in-band', 'too-deep', 'unclear'] as const satisfies readonly FitState[]
const WHYS = [
  'groove-unread',
  'no-word-on-last-ball',
  'refusal-has-no-figure',
  'readings-disagree',
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
  'too-few-larger',
  'no-such-bearing',
  'too-thin',
  'too-much',
  'too-deep-for-it-too',
] as const satisfies readonly Obstacle[]
const LIVES = ['hardly-noticed', 'knocks', 'balls-bunch', 'ball-short'] as const satisfies readonly Life[]
const LIVES_WITH_PLAY = ['hardly-noticed', 'rattles', 'wanders'] as const satisfies readonly LifeWithPlay[]

/** The next cut, which ends where a size of its own says. */
export const nextStep = <Until extends TProperties>($id: string, until: Until) =>
  named($id, 'The next cut.', {
    with: tool,
    radial: shownLength('Depth of the cut: a radial thickness of wood.'),
    diametral: shownLength('Change of the diameter: twice the depth.'),
    until: object(
      'About what you measure when the cut is done. The chance below is that of a cut of depth `radial`.',
      until,
    ),
    isSizeKnown: flag(
      'Whether the present size is known well enough to stop at `until`. If not, measure it first and stop when it has changed by `diametral`.',
    ),
    strokes: Type.Optional(integer('Number of strokes of your abrasive, where `removalHistory` has counted strokes.')),
    overshootProbability: chance('Chance of ending too deep with this cut. It is never above `overshootRisk`.'),
  })

const GROOVE_UNTIL = { grooveBottomDiameter: shownLength('Diameter across the bottoms of the groove.') }
export const TRACK_UNTIL = { trackDiameter: shownLength('Diameter of the track.') }
export const CIRCLE_UNTIL = {
  grooveCircleDiameter: shownLength('Diameter of the circle in which the groove is deepest.'),
}
export const GrooveNextStep = nextStep('GrooveNextStep', GROOVE_UNTIL)

export const NextReading = named('NextReading', 'A reading that can be made now, and what it decides.', {
  kind: text('The `kind` of the reading to make.'),
  ballsLeftOut: Type.Optional(integer('For an opening: number of balls to leave out.')),
  count: Type.Optional(integer('For a row: number of balls in the row.')),
  why: choiceOf('The reason for this reading.', WHYS),
  decides: choiceOf('The question that this reading decides.', DECIDES),
  expected: Type.Optional(shownLength('The value that it will probably show.')),
  standardUncertaintyNow: shownLength('Present standard uncertainty of the gap or the play.'),
  standardUncertaintyAfter: shownLength('Expected standard uncertainty after this reading.'),
  message: text('The reading in words.'),
})

/* Options for a groove that is too deep, each with its figures. */

const InnerRingSizes = named('InnerRingSizes', 'Sizes that the inner ring then needs.', {
  grooveBottomDiameter: Type.Optional(shownLength('Diameter across the bottoms of the groove.')),
  landDiameter: Type.Optional(shownLength('Diameter of the land.')),
  landGap: Type.Optional(shownLength('Space between the lands of the two rings.')),
  trackDiameter: Type.Optional(shownLength('Diameter of the track.')),
})

const rescue = <const Option extends string, Own extends TProperties>(
  option: Option,
  $id: string,
  description: string,
  own: Own,
) =>
  Type.Object(
    {
      option: Type.Literal(option, { description: 'A name for programs.' }),
      possible: flag('Whether the bearing could be put together and would run.'),
      obstacle: Type.Optional(choiceOf('The reason why it is not possible. Absent where it is possible.', OBSTACLES)),
      ballGap: Type.Optional(shownLength('The gap that it leaves.')),
      radialInternalClearance: Type.Optional(shownLength('The play that it leaves the inner ring.')),
      pocketDiameter: Type.Optional(shownLength('Diameter of the pockets of a new cage for these balls.')),
      ...own,
      innerRing: Type.Optional(refTo<typeof InnerRingSizes>('InnerRingSizes')),
      message: text('Instructions in words.'),
      livingWithIt: Type.Optional(text('How such a bearing runs.')),
    },
    { $id, description },
  )

const RESCUES = [
  rescue('accept', 'AcceptRescue', 'Leave it as it is.', {
    overMaxBallGap: shownLength('Amount by which the gap exceeds the largest good gap.'),
    shareOfBall: Type.Number({ description: 'The gap as a fraction of the ball diameter.' }),
    life: choiceOf('The effect of the gap in use.', LIVES),
  }),
  rescue('accept-play', 'AcceptPlayRescue', 'Leave the inner ring as it is.', {
    overMaxPlay: shownLength('Amount by which the play exceeds the largest good play.'),
    shareOfBall: Type.Number({ description: 'The play as a fraction of the ball diameter.' }),
    life: choiceOf('The effect of the play in use.', LIVES_WITH_PLAY),
  }),
  rescue('mating-faces', 'MatingFacesRescue', 'Sand the mating faces of a split inner ring.', {
    matingFaces: shownLength('Thickness to sand off both faces together.'),
  }),
  rescue('balls-on-hand', 'BallsOnHandRescue', 'A full set of other balls that are on hand.', {
    diameter: Type.Optional(shownLength('Diameter of these balls.')),
    ballCount: integer('Number of balls that the ring takes.'),
  }),
  rescue('mixed-balls', 'MixedBallsRescue', 'Some larger balls among the others.', {
    diameter: Type.Optional(shownLength('Diameter of the larger balls.')),
    replacedCount: Type.Optional(integer('Number of balls to replace.')),
    standsOut: Type.Optional(shownLength('Distance by which the larger balls stand further in than the others.')),
  }),
  rescue('larger-balls', 'LargerBallsRescue', 'A set of balls of the size that closes the gap.', {
    diameter: Type.Optional(shownLength('Diameter of these balls.')),
    largerBy: Type.Optional(shownLength('Difference from the present diameter.')),
    from: Type.Optional(shownLength('Smallest mean diameter of such a set that does. Only where it is possible.')),
    to: Type.Optional(shownLength('Largest mean diameter of such a set that does.')),
  }),
  rescue('spacers', 'SpacersRescue', 'Spacers between the balls.', {
    spacerCount: integer('Number of spacers, one between each two neighbours.'),
    eachThickness: Type.Optional(shownLength('Thickness of each spacer. Absent where that is too thin to make.')),
    singleThickness: shownLength('Thickness of a single spacer instead.'),
  }),
  rescue('lining', 'LiningRescue', 'A lining glued into the groove, or coats of finish where it is thin.', {
    thickness: shownLength('Thickness of the lining.'),
    grooveRadius: Type.Optional(shownLength('Radius of the groove with its lining.')),
  }),
  rescue('one-ball-more', 'OneBallMoreRescue', 'Cut on for one ball more.', {
    ballCount: integer('Total number of balls.'),
    deeper: shownLength('Further cut, radially; below 0 it is too deep for that as well.'),
    until: Type.Optional(
      object('Sizes at which that cut ends.', {
        grooveBottomDiameter: Type.Optional(GROOVE_UNTIL.grooveBottomDiameter),
        trackDiameter: Type.Optional(TRACK_UNTIL.trackDiameter),
        grooveCircleDiameter: Type.Optional(CIRCLE_UNTIL.grooveCircleDiameter),
        grooveDepth: Type.Optional(shownLength('Depth of the groove.')),
      }),
    ),
  }),
  rescue('new-blank', 'NewBlankRescue', 'Start again.', {}),
  rescue('new-inner-ring', 'NewInnerRingRescue', 'A new inner ring, made to the outer ring as it is.', {}),
]

export const RescueOption = Type.Unsafe<Static<(typeof RESCUES)[number]>>({
  $id: 'RescueOption',
  description: 'One thing that can still be done with a groove that is too deep.',
  type: 'object',
  required: ['option'],
  discriminator: { propertyName: 'option' },
  oneOf: RESCUES.map((schema) => ({ $ref: String(Reflect.get(schema, '$id')) })),
})

const LearntRatio = named('LearntRatio', 'An estimate of a ratio.', {
  value: Type.Number({ description: 'Mean.' }),
  standardUncertainty: Type.Number({ description: 'Standard uncertainty.' }),
  interval95: object('The shortest interval that holds the ratio with a chance of 95 %.', {
    min: Type.Number({ description: 'Lower end of the interval.' }),
    max: Type.Number({ description: 'Upper end of the interval.' }),
  }),
})

/** The properties of an answer: beside its defaults it states what is taken of a bearing before it is measured. */
export const fitAnswerOf = <const Name extends string, Body extends TProperties>(name: Name, body: Body) => ({
  ...answerOf([name], refTo<typeof FitCorrectionRequest>('FitCorrectionRequest'), body),
  assumed: listOf<typeof Assumption>(
    'Assumption',
    'The values that the request left open, and what is taken of a bearing before it is measured.',
  ),
})

/** How the groove stands. */
export const STANDING = {
  action: choiceOf('`cut`: see `nextStep`. `measure`: see `nextReading`. `stop`: see `reason`.', [
    'cut',
    'measure',
    'stop',
  ]),
  reason: Type.Optional(choiceOf('The reason to stop.', ['in-band', 'too-deep', 'cannot-be-told'])),
  state: choiceOf(
    '`more-to-remove`, `in-band` and `too-deep` only at `confidence`; `unread`: nothing was measured at it.',
    STATES,
  ),
  confidence: chance('Chance that a verdict needs.'),
  probability: object('Chances about the present groove, with any finish that is still to come.', {
    tooTight: chance('Chance that too little is cut.'),
    inBand: chance('Chance that the groove is finished.'),
    tooDeep: chance('Chance that too much is cut.'),
  }),
}

/** The work that is left. */
export const WORK = {
  remaining: object('Distance to the aim. Above 0 there is wood to remove; below 0 too much is removed.', {
    radial: shownLength('Change in depth.'),
    diametral: shownLength('Change in diameter.'),
  }),
  nextReading: Type.Optional(refTo<typeof NextReading>('NextReading')),
  askedReading: Type.Optional(
    object(
      'The reading that `summary` asks for: now, or after the cut of `nextStep`. Absent where nothing is left to measure.',
      {
        kind: text('The `kind` of the reading to make.'),
        ballsLeftOut: Type.Optional(integer('For an opening: number of balls to leave out.')),
        count: Type.Optional(integer('For a row: number of balls in the row.')),
      },
    ),
  ),
  overshootProbability: chance('Chance of ending too deep if you follow this advice.'),
  expectedChecks: Type.Number({ description: 'Average number of readings still to come.' }),
  agreement: object('The agreement of the readings with one another.', {
    agrees: flag('Whether the readings agree with one another.'),
    disagreements: Type.Array(
      Type.Object({
        path: text('A JSON pointer into the input.'),
        chance: chance('Chance of a reading this far off, given all others.'),
        expected: Type.Optional(
          object('The value that the other readings predict, with its 95 % interval.', {
            value: shownLength('Mean.'),
            min: shownLength('Lower end of the interval.'),
            max: shownLength('Upper end of the interval.'),
          }),
        ),
        message: text('The disagreement in words.'),
      }),
      { description: 'The readings that do not fit the others.' },
    ),
  }),
  learnt: object('Your own habits, learnt from `earlier` and `removalHistory`.', {
    toolBias: described<typeof LearntRatio>('LearntRatio', 'Excess of your cuts, as a fraction of the intended depth.'),
    readingBias: estimate('Excess of your readings of a rule.'),
    removalPerStroke: Type.Optional(
      object('Removal per stroke, learnt from `removalHistory`.', {
        radial: shownLength('Depth removed per stroke.'),
        relativeUncertainty: Type.Number({ description: 'Relative standard uncertainty of `radial`.' }),
      }),
    ),
  }),
  rescue: Type.Optional(
    listOf<typeof RescueOption>(
      'RescueOption',
      'What can still be done with a groove that is too deep, in the order in which to try it.',
    ),
  ),
}

export const ADJUSTMENT = {
  adjustment: Type.Optional(
    object('What a little at the mating faces of a split inner ring does. Absent where that is too much.', {
      matingFaces: shownLength(
        'Total thickness to sand off the mating faces (above 0), or thickness of the shim between them (below 0), that brings the play to the aim.',
      ),
      message: text('The adjustment in words.'),
    }),
  ),
}

export const GAP = estimate('The gap as it is now.')
export const PLAY = estimate('The play of the inner ring as it is now.')
export const CENTRES = {
  pitchRadius: estimate('Radius of the circle through the centres of the balls.'),
  ballDiameter: estimate('Mean diameter of the balls.'),
}
export const BOTH_RINGS = {
  ring: choiceOf<FittedRing>('The ring that is being cut.', RINGS),
  ballGap: Type.Optional({ ...GAP, description: 'Outer ring: the gap as it is now.' }),
  radialInternalClearance: Type.Optional({ ...PLAY, description: 'Inner ring: the play as it is now.' }),
  ...CENTRES,
}

/** Schemas that the request and the answers of several arrangements share. */
export const FIT_PARTS = [
  ...READING_SCHEMAS,
  ReadingRequest,
  ToolErrorRequest,
  FitTarget,
  EarlierState,
  CountedRemoval,
  BallsOnHand,
  FitCorrectionRequest,
  LengthEstimate,
  LearntRatio,
  GrooveNextStep,
  NextReading,
  InnerRingSizes,
  ...RESCUES,
  RescueOption,
]
