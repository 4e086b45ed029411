import { type Static, type TObject, type TProperties, type TSchema, Type } from 'typebox'
import { FEWEST_BALLS } from '#shared/geometry/ring-of-balls.ts'
import type { OrderedBalls } from '#shared/questions/selection/ball-order.ts'
import type { OrderAim } from '#shared/questions/selection/ball-place.ts'
import type { BallSelection } from '#shared/questions/selection/ball-selection.ts'
import { GOAL_FIELD, GROOVE_FIELDS, SELECTION_GOALS } from '#shared/questions/selection/fields.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { answerOf } from '#src/api/answer.ts'
import { type DesignRequest, designRef } from '#src/api/design-input.ts'
import { optionalField } from '#src/api/fields.ts'
import { type Length, shownLength } from '#src/api/length.ts'
import { shownShare } from '#src/api/number.ts'
import { choiceOf, flag, named, namedRequest, object, type Raw, ref, text } from '#src/api/schema.ts'
import { refTo } from '#src/http/schema.ts'

const MOST_MEASURED = 500

export const BallSelectionRequest = namedRequest(
  'BallSelectionRequest',
  'A measured lot of balls, and the bearing that takes so many of them.',
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
    goal: optionalField(GOAL_FIELD),
    grooveBottomDiameter: optionalField(GROOVE_FIELDS.grooveBottomDiameter),
    trackDiameter: optionalField(GROOVE_FIELDS.trackDiameter),
    grooveCircleDiameter: optionalField(GROOVE_FIELDS.grooveCircleDiameter),
    innerGrooveBottomDiameter: optionalField(GROOVE_FIELDS.innerGrooveBottomDiameter),
    innerTrackDiameter: optionalField(GROOVE_FIELDS.innerTrackDiameter),
  },
)
export type BallSelectionRequest = Static<typeof BallSelectionRequest>

export const placeInLot = Type.Integer({ minimum: 0, description: 'Place in `measured`, from 0.' })

const ChosenBall = named('ChosenBall', 'A ball to use.', {
  index: placeInLot,
  diameter: shownLength('Diameter, as you measured it.'),
})

const SelectionBounds = named(
  'SelectionBounds',
  'How close this choice comes to the goal, and how close any other could.',
  {
    of: choiceOf(
      'The quantity that the goal makes small: the run-out, the distance of the gap or of the groove radius from its aim, or the spread.',
      ['run-out', 'ball-gap', 'groove-radius', 'spread'],
    ),
    missedBy: shownLength('Distance of this choice from the goal. For `run-out` and `spread` that figure itself.'),
    noneBelow: shownLength('No choice of so many balls of the lot, in any order, misses less: proven.'),
    atMostFromBest: shownLength('The difference: so far from the best possible this choice can be, at most.'),
    everyChoiceTried: flag('Whether all choices were tried, or a large lot was searched by exchanging balls.'),
    ballGap: object('Range of the ball gaps that any choice can leave.', {
      min: Type.Optional(
        shownLength('No choice in any order leaves less. Absent where the largest balls of the lot do not even go in.'),
      ),
      max: shownLength('No choice in any order leaves more.'),
    }),
    message: text('Summary in words.'),
  },
)

export const SHARED_SCHEMAS: readonly TSchema[] = [BallSelectionRequest, ChosenBall, SelectionBounds]

const GAP = {
  ballGap: shownLength(
    'Gap between the last ball and the first. Exact for these balls in this order, each on the bottom of the groove: below 0 the ring does not close.',
  ),
  lastBallGoesIn: shownShare(
    'Chance that the last ball goes in at this gap. The gap that it needs is not known beforehand: it is somewhere between 0 and the `assemblyGap` of the design.',
  ),
}
const ORDER = {
  order: Type.Array(placeInLot, { description: 'The balls in their order round the ring: places in `measured`.' }),
}

/** A change of a raceway, radially and across. */
export const changeOf = (description: string) =>
  Type.Object(
    { radial: shownLength('Change in radius.'), diametral: shownLength('Change in diameter.') },
    { description },
  )
export const bothWays = (radial: Mm) => ({ radial, diametral: mm(2 * radial) })

/** The part of an answer that is the arrangement's own: its schema, and its figures. */
interface Own<Name extends string, Figures extends TProperties, More extends TProperties> {
  readonly names: readonly [Name, ...Name[]]
  /** The names of its schemas begin with this. */
  readonly prefix: string
  readonly description: string
  /** The aims of its orders, with what each is. */
  readonly aims: Partial<Readonly<Record<OrderAim, string>>>
  /** The figures of balls in one order. */
  readonly figures: Figures
  readonly figuresOf: (ordered: OrderedBalls) => Raw<TObject<Figures>>
  /** Figures of the chosen balls alone. */
  readonly more: More
  readonly moreOf: (selection: BallSelection) => Raw<TObject<More>>
}

/** The answer of an arrangement. */
export function selectionAnswer<const Name extends string, Figures extends TProperties, More extends TProperties>({
  names,
  prefix,
  description,
  aims,
  figures,
  figuresOf,
  more,
  moreOf,
}: Own<Name, Figures, More>) {
  const aim = Object.entries(aims).map(([name, means]) => `\`${name}\`: ${means}`)
  const Order = named(`${prefix}Order`, 'The chosen balls in one order.', {
    aim: choiceOf(`What the order is for. ${aim.join(' ')}`, Object.keys(aims)),
    ...ORDER,
    ...GAP,
    ...figures,
  })
  const Choice = named(`${prefix}Choice`, 'The best choice for one goal, in the order to use.', {
    goal: choiceOf('The goal that it serves best.', SELECTION_GOALS),
    ...ORDER,
    ...GAP,
    ...figures,
    spread: shownLength('Largest minus smallest diameter.'),
  })
  const OrderEffect = named(`${prefix}OrderEffect`, 'Effect of the order of the chosen balls round the ring.', {
    ballGap: object('Range of the ball gap over all orders.', {
      min: shownLength('No order of these balls leaves less: proven.'),
      max: shownLength('No order of these balls leaves more: proven.'),
    }),
    everyOrderTried: flag(
      'Whether every order was tried, which is so of up to eight balls, or these are the best of a search.',
    ),
    orders: Type.Array(ref(Order), {
      description: 'The order to use first, then the best orders by one figure, the order to avoid last.',
    }),
    message: text('Summary in words.'),
  })
  const Response = Type.Object(
    answerOf(names, refTo<typeof BallSelectionRequest>('BallSelectionRequest'), {
      chosen: Type.Array(ref(ChosenBall), {
        description:
          'The balls to use, in the order to lay them round the ring. The gap is between the last and the first.',
      }),
      leftOver: Type.Array(Type.Integer({ minimum: 0 }), {
        description: 'The other balls, by their places in `measured`.',
      }),
      ...GAP,
      ...figures,
      ...more,
      mean: shownLength(
        'Mean diameter of the chosen balls. It decides the plug, the inner ring, and how high an upper plate is.',
      ),
      standardDeviation: shownLength('Standard deviation of the chosen balls (divisor n − 1).'),
      spread: shownLength('Largest minus smallest diameter of the chosen balls.'),
      grooveChange: changeOf(
        'Change of the groove after which these balls leave the target gap. Above 0 there is wood to remove; below 0 the groove is too deep. Where balls ride on the edges of the groove, the land changes with it. On a plate: how far the groove circle must move out.',
      ),
      bounds: ref(SelectionBounds),
      orderEffect: ref(OrderEffect),
      choices: Type.Array(ref(Choice), {
        description:
          'The best choice for each goal, `best-bearing` first: what one figure costs in the others. Two goals may be served by the same balls.',
      }),
    }),
    { $id: `${prefix}BallSelectionResponse`, description },
  )
  const schemas: readonly TSchema[] = [Order, Choice, OrderEffect, Response]
  return { schemas, Response, figuresOf, moreOf }
}
