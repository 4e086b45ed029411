import { type Static, Type } from 'typebox'
import { FEWEST_BALLS } from '#shared/geometry/ring-of-balls.ts'
import { SELECTION_GOALS, type SelectionGoal } from '#shared/questions/selection/ball-choice.ts'
import { GROOVE_FIELDS } from '#shared/questions/selection/fields.ts'
import { answerOf, answerUnion } from '#src/api/answer.ts'
import { type DesignRequest, designRef } from '#src/api/design-input.ts'
import { optionalField } from '#src/api/fields.ts'
import { type Length, shownLength } from '#src/api/length.ts'
import { shownShare } from '#src/api/number.ts'
import { refTo } from '#src/http/schema.ts'

const MOST_MEASURED = 500

const goal = (description: string) =>
  Type.Unsafe<SelectionGoal>(Type.Enum(SELECTION_GOALS, { type: 'string', description }))

export const BallSelectionRequest = Type.Object(
  {
    design: Type.Unsafe<DesignRequest>({
      ...designRef,
      description: 'The bearing: how many balls it takes, the gap to aim at, and the `units` of request and answer.',
    }),
    measured: Type.Array(refTo<typeof Length>('Length'), {
      minItems: FEWEST_BALLS,
      maxItems: MOST_MEASURED,
      description: 'The diameter of each ball on hand, as many as the ring takes or more.',
    }),
    goal: goal(
      '`close-groove`: the ball gap nearest to `design.ballGap`. `least-groove-change`: the groove that leaves just that gap nearest to the groove as it is. `least-spread`: largest and smallest ball differ least.',
    ),
    grooveBottomDiameter: optionalField(GROOVE_FIELDS.grooveBottomDiameter),
    trackDiameter: optionalField(GROOVE_FIELDS.trackDiameter),
    grooveCircleDiameter: optionalField(GROOVE_FIELDS.grooveCircleDiameter),
  },
  {
    $id: 'BallSelectionRequest',
    description: 'A measured lot of balls, and the bearing that takes so many of them.',
    additionalProperties: false,
  },
)
export type BallSelectionRequest = Static<typeof BallSelectionRequest>

const ChosenBall = Type.Object(
  {
    index: Type.Integer({ minimum: 0, description: 'Place in `measured`, from 0.' }),
    diameter: shownLength('As it was measured.'),
  },
  { $id: 'ChosenBall', description: 'A ball to take.' },
)

const SelectionBounds = Type.Object(
  {
    of: Type.Enum(['ball-gap', 'groove-radius', 'spread'], {
      type: 'string',
      description: 'What the goal asks about: how far the gap or the groove radius is off its aim, or the spread.',
    }),
    missedBy: shownLength('By how much this choice misses. For `spread` the spread itself.'),
    noneBelow: shownLength('No choice of so many balls of the lot, in any order, misses less: proven.'),
    atMostFromBest: shownLength('The difference: so far from the best possible this choice can be, at most.'),
    everyChoiceTried: Type.Boolean({
      description: 'Whether all choices were tried, or a large lot was searched by exchanging balls.',
    }),
    ballGap: Type.Object(
      {
        min: Type.Optional(
          shownLength(
            'No choice in any order leaves less. Absent where the largest balls of the lot do not even go in.',
          ),
        ),
        max: shownLength('No choice in any order leaves more.'),
      },
      { description: 'What any choice can leave.' },
    ),
    message: Type.String({ description: 'The same in words.' }),
  },
  { $id: 'SelectionBounds', description: 'How near this choice comes, and how near any other could.' },
)

const OrderEffect = Type.Object(
  {
    ballGap: Type.Object({
      min: shownLength('No order of these balls leaves less: proven.'),
      max: shownLength('No order of these balls leaves more: proven.'),
    }),
    message: Type.String({ description: 'The same in words.' }),
  },
  { $id: 'OrderEffect', description: 'What the order of the chosen balls round the ring can still change.' },
)

/** Which balls to take. */
const CHOSEN = {
  chosen: Type.Array(refTo<typeof ChosenBall>('ChosenBall'), {
    description:
      'In their order round the ring: the largest balls opposite one another, so that no side stands out; on plates the three largest a third of a turn apart. The gap lies between the last and the first.',
  }),
  leftOver: Type.Array(Type.Integer({ minimum: 0 }), {
    description: 'The other balls, by their places in `measured`.',
  }),
}
/** What they leave, and how near that is. */
const FIGURES = {
  ballGap: shownLength(
    'Exact for these balls in this order, each on the bottom of the groove: below 0 the ring does not close.',
  ),
  mean: shownLength('Mean diameter of the chosen balls: what plug and inner ring go by, and the space between plates.'),
  standardDeviation: shownLength('Of the chosen balls, over one less than their number.'),
  spread: shownLength('Largest less smallest of the chosen balls.'),
  grooveChange: Type.Object(
    { radial: shownLength('By radius.'), diametral: shownLength('Twice that.') },
    {
      description:
        'From this groove to the one in which these balls leave the gap aimed at: above 0 wood to remove, below 0 too deep. Where balls ride on the edges of the groove: of the land with it. On plates: how far the circle is to move out.',
    },
  ),
  bounds: refTo<typeof SelectionBounds>('SelectionBounds'),
  orderEffect: refTo<typeof OrderEffect>('OrderEffect'),
}

const inputRef = refTo<typeof BallSelectionRequest>('BallSelectionRequest')

const RingBallSelectionResponse = Type.Object(answerOf(['radial', 'roller'], inputRef, { ...CHOSEN, ...FIGURES }), {
  $id: 'RingBallSelectionResponse',
  description: 'Which balls to take, what they leave, and how near that is.',
})

const PlateRest = Type.Object(
  {
    carriers: Type.Array(
      Type.Object({
        index: Type.Integer({ minimum: 0, description: 'Place in `measured`, from 0.' }),
        share: shownShare('Part of what lies over the middle that it carries.'),
      }),
      { description: 'The three that carry at first: the wood gives under a load, and more of them do.' },
    ),
    plateGap: shownLength('Between the faces of the plates, over the middle.'),
    rise: shownLength("From one side of the upper plate's face to the other."),
    mostClearance: shownLength('The most that is left between the upper plate and a ball.'),
    message: Type.String({ description: 'The same in words.' }),
  },
  {
    $id: 'PlateRest',
    description: 'How the upper plate lies on the chosen balls, evenly spaced in this order, before anything gives.',
  },
)

export const ThrustBallSelectionResponse = Type.Object(
  answerOf(['thrust'], inputRef, { ...CHOSEN, plateRest: refTo<typeof PlateRest>('PlateRest'), ...FIGURES }),
  { $id: 'ThrustBallSelectionResponse', description: 'The same of a turntable, and how even its upper plate lies.' },
)
export type ThrustBallSelectionResponse = Static<typeof ThrustBallSelectionResponse>

export const BallSelectionResponse = answerUnion(
  'BallSelectionResponse',
  'Which balls to take, what gap they leave, and how good the choice is.',
  RingBallSelectionResponse,
  ThrustBallSelectionResponse,
)
export type BallSelectionResponse = Static<typeof BallSelectionResponse>

export const BALL_SELECTION_SCHEMAS = [
  BallSelectionRequest,
  ChosenBall,
  SelectionBounds,
  OrderEffect,
  PlateRest,
  RingBallSelectionResponse,
  ThrustBallSelectionResponse,
  BallSelectionResponse,
]
