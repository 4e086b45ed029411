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
    diameter: shownLength('Diameter, as you measured it.'),
  },
  { $id: 'ChosenBall', description: 'A ball to use.' },
)

const SelectionBounds = Type.Object(
  {
    of: Type.Enum(['ball-gap', 'groove-radius', 'spread'], {
      type: 'string',
      description:
        'The quantity that the goal makes small: the distance of the gap or of the groove radius from its aim, or the spread.',
    }),
    missedBy: shownLength('Distance of this choice from the goal. For `spread` the spread itself.'),
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
      { description: 'Range of the ball gaps that any choice can leave.' },
    ),
    message: Type.String({ description: 'Summary in words.' }),
  },
  { $id: 'SelectionBounds', description: 'How close this choice comes to the goal, and how close any other could.' },
)

const OrderEffect = Type.Object(
  {
    ballGap: Type.Object(
      {
        min: shownLength('No order of these balls leaves less: proven.'),
        max: shownLength('No order of these balls leaves more: proven.'),
      },
      { description: 'Range of the ball gap over all orders.' },
    ),
    message: Type.String({ description: 'Summary in words.' }),
  },
  { $id: 'OrderEffect', description: 'Effect of the order of the chosen balls round the ring.' },
)

/** Which balls to take. */
const CHOSEN = {
  chosen: Type.Array(refTo<typeof ChosenBall>('ChosenBall'), {
    description:
      'The balls to use, in their order round the ring. The largest lie opposite one another; on plates the three largest lie a third of a turn apart. The gap is between the last and the first.',
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
  mean: shownLength(
    'Mean diameter of the chosen balls. It decides the plug, the inner ring, and the space between plates.',
  ),
  standardDeviation: shownLength('Standard deviation of the chosen balls (divisor n − 1).'),
  spread: shownLength('Largest minus smallest diameter of the chosen balls.'),
  grooveChange: Type.Object(
    { radial: shownLength('Change in radius.'), diametral: shownLength('Change in diameter.') },
    {
      description:
        'Change of the groove after which these balls leave the target gap. Above 0 there is wood to remove; below 0 the groove is too deep. Where balls ride on the edges of the groove, the land changes with it. On plates: how far the groove circle must move out.',
    },
  ),
  bounds: refTo<typeof SelectionBounds>('SelectionBounds'),
  orderEffect: refTo<typeof OrderEffect>('OrderEffect'),
}

const inputRef = refTo<typeof BallSelectionRequest>('BallSelectionRequest')

const RingBallSelectionResponse = Type.Object(answerOf(['radial', 'roller'], inputRef, { ...CHOSEN, ...FIGURES }), {
  $id: 'RingBallSelectionResponse',
  description: 'The balls to use, the gap that they leave, and a bound on any other choice.',
})

const PlateRest = Type.Object(
  {
    carriers: Type.Array(
      Type.Object({
        index: Type.Integer({ minimum: 0, description: 'Place in `measured`, from 0.' }),
        share: shownShare('Share that it carries of a load over the middle.'),
      }),
      { description: 'The three that carry at first: the wood gives under a load, and more of them do.' },
    ),
    plateGap: shownLength('Space between the faces of the plates, at the middle.'),
    rise: shownLength('Difference in height from one side of the upper plate to the other.'),
    mostClearance: shownLength('The most that is left between the upper plate and a ball.'),
    message: Type.String({ description: 'Summary in words.' }),
  },
  {
    $id: 'PlateRest',
    description: 'Position of the upper plate on the chosen balls, evenly spaced in this order, before anything gives.',
  },
)

export const ThrustBallSelectionResponse = Type.Object(
  answerOf(['thrust'], inputRef, { ...CHOSEN, plateRest: refTo<typeof PlateRest>('PlateRest'), ...FIGURES }),
  {
    $id: 'ThrustBallSelectionResponse',
    description: 'The balls to use in a turntable, the gap that they leave, and how level its upper plate lies.',
  },
)
export type ThrustBallSelectionResponse = Static<typeof ThrustBallSelectionResponse>

export const BallSelectionResponse = answerUnion(
  'BallSelectionResponse',
  'The balls to use, the gap that they leave, and how good the choice is.',
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
