import { chanceTaken, thresholdOf } from '#shared/bearing/entry-threshold.ts'
import { oneSidedOrder, spreadOrder } from '#shared/geometry/order-round-the-ring.ts'
import { bestOrder, ordersJudged } from '#shared/numbers/best-order.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { countChoices, everyChoice } from '#shared/numbers/nearest-choice.ts'
import { summary } from '#shared/statistics/summary.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import {
  type BallChoice,
  type ChoiceTask,
  chooseBalls,
  diametersOf,
  type FigureGoal,
  type MeasuredBall,
} from './ball-choice.ts'
import type { BallPlace, OrderAim, OrderFigures } from './ball-place.ts'

/** Balls in their order round the ring, the gap between the last and the first, and what they do there. */
export interface OrderedBalls extends Pick<OrderFigures, 'margin' | 'runOut'> {
  readonly balls: readonly MeasuredBall[]
  readonly ballGap: Mm
  /** Chance that the last ball goes in at that gap: see `threshold.ts`. */
  readonly lastBallGoesIn: number
  /** Whether every order was tried, or the best of a search is here. */
  readonly everyOrderTried: boolean
}

/** The facts by which orders and choices are judged. */
export interface OrderTask {
  readonly choice: ChoiceTask
  readonly place: BallPlace
  /** From the design. */
  readonly ballDiameter: Mm
  readonly maxBallGap: Mm
  /** The orders to use that are known already, by the balls. */
  readonly advised: Map<string, OrderedBalls>
  /** The choices by one figure that are known already. */
  readonly byFigure: Map<FigureGoal, BallChoice>
}

/**
 * Miss of a gap limit that is passed over, in ball diameters: the search ends somewhere, sizes are rounded, and nobody can measure it.
 * Common practice, no source.
 */
export const UNNOTICED = 1e-5

export const chanceOfLast = ({ place, ballDiameter }: OrderTask, ballGap: Mm): number =>
  chanceTaken(thresholdOf(place.assemblyGap, ballDiameter), 0, place.assemblyGap, ballGap + UNNOTICED * ballDiameter)

/**
 * Orders looked at for each ball, and balls laid in all. Of 9 to 30 balls sixteen times as many bettered no run-out by
 * more than 0.0003 mm, of 60 by 0.003 mm, of 200 by 0.03 mm.
 */
const EVALUATIONS_A_BALL = 100
const MOST_BALLS_LAID = 300_000
const evaluationsFor = (count: number): number =>
  Math.floor(Math.min(EVALUATIONS_A_BALL * count, MOST_BALLS_LAID / count))

/** Balls laid while the best order of so many is looked for. */
export const ballsLaid = (count: number): number => count * ordersJudged(count, evaluationsFor(count))

/** Weight of margin beside a least run-out, and the other way round: it decides between orders that are alike. */
const BESIDE = 1e-3

/**
 * The score of an order for an aim. The advised order is the one with the least run-out among those with enough margin;
 * where none has enough, the one with the most. Margin and run-out are had one for the other, about a hundredth for a
 * hundredth, so it takes a limit to choose between them.
 */
function worthFor(aim: OrderAim, { place, choice }: OrderTask): (figures: OrderFigures) => number {
  // no run-out is as large as the ring, so whatever has too little margin is worth less than all that has enough
  const beyond = 4 * choice.radius
  switch (aim) {
    case 'advised':
      return ({ margin, runOut }) =>
        margin >= place.enough ? BESIDE * margin - runOut : margin - place.enough - beyond - BESIDE * runOut
    case 'most-play':
      return ({ margin, runOut }) => margin - BESIDE * runOut
    case 'least-run-out':
    case 'least-rise':
      return ({ margin, runOut }) => BESIDE * margin - runOut
    case 'least-play':
      return ({ margin }) => -margin
    case 'most-rise':
      return ({ runOut }) => runOut
    default:
      return aim satisfies never
  }
}

/**
 * The best order of some balls for an aim: of up to eight balls the best of all, of more the best of a search.
 *
 * @param balls in an order to begin with, among others
 */
export function orderBalls(task: OrderTask, balls: readonly MeasuredBall[], aim: OrderAim): OrderedBalls {
  const { choice, place } = task
  const ranked = balls.toSorted((one, other) => other.diameter - one.diameter || one.index - other.index)
  const count = ranked.length
  const judge = place.judge(choice.radius, diametersOf(ranked))
  const { order, exhaustive } = bestOrder({
    count,
    judge,
    worth: worthFor(aim, task),
    starts: [
      balls.map((ball) => ranked.indexOf(ball)),
      oneSidedOrder(count),
      spreadOrder(count),
      spreadOrder(count, 3),
    ],
    evaluations: evaluationsFor(count),
  })
  const { margin, runOut } = judge(order)
  const laid = order.map((rank) => itemAt(ranked, rank))
  const ballGap = choice.closure.gap(choice.radius, diametersOf(laid))
  const lastBallGoesIn = chanceOfLast(task, ballGap)
  return { balls: laid, ballGap, lastBallGoesIn, margin, runOut, everyOrderTried: exhaustive }
}

/** Orders that were looked for already, by the balls. */
const keyOf = (balls: readonly MeasuredBall[]): string =>
  balls
    .map(({ index }) => index)
    .toSorted((one, other) => one - other)
    .join()

/** The order to use some balls in, looked for once for each task. */
export function advisedOrder(task: OrderTask, balls: readonly MeasuredBall[]): OrderedBalls {
  const key = keyOf(balls)
  const known = task.advised.get(key) ?? orderBalls(task, balls, 'advised')
  task.advised.set(key, known)
  return known
}

/** The best choice by one figure, looked for once for each task. */
export function choiceBy({ choice, byFigure }: OrderTask, goal: FigureGoal): BallChoice {
  const known = byFigure.get(goal) ?? chooseBalls(choice, goal)
  byFigure.set(goal, known)
  return known
}

/** A chance as good as certain. */
export const SURE = 0.95
/** Run-outs that differ by less are alike, in ball diameters: 0.014 mm for balls of 14 mm. Common practice, no source. */
const ALIKE = 1e-3
/** Spreads that differ by less are alike, in ball diameters: the gap counts more. Common practice, no source. */
const AS_EVEN = 5e-3
/** Chances, and parts of the margin that is enough, that are alike. */
const CHANCE_STEP = 0.01
const MARGIN_STEPS = 20

/**
 * The shortfalls of a choice, the most important first: a last ball that goes in, a gap within the band, enough margin; then its
 * run-out, how far its balls differ, and how far its gap is from the aim. A ball that stands out from the others carries nothing
 * or too much, whatever the run-out.
 */
function shortfalls(
  { place, choice, ballDiameter, maxBallGap }: OrderTask,
  { balls, lastBallGoesIn, ballGap, margin, runOut }: Omit<OrderedBalls, 'everyOrderTried'>,
): readonly [unsure: number, wide: number, tight: number, runOut: number, spread: number, off: number] {
  const unnoticed = UNNOTICED * ballDiameter
  const diameters = diametersOf(balls)
  const spread = Math.max(...diameters) - Math.min(...diameters)
  const steps = (lack: number, step: number): number => Math.ceil(Math.max(0, lack) / step)
  return [
    steps(SURE - lastBallGoesIn, CHANCE_STEP),
    steps(ballGap - maxBallGap - unnoticed, ALIKE * ballDiameter),
    steps(place.enough - margin - unnoticed, Math.max(unnoticed, place.enough / MARGIN_STEPS)),
    Math.floor(runOut / (ALIKE * ballDiameter)),
    Math.floor(spread / (AS_EVEN * ballDiameter)),
    Math.abs(ballGap - choice.aim),
  ]
}

const isBetter = (one: readonly number[], other: readonly number[]): boolean =>
  (one.map((value, index) => value - itemAt(other, index)).find((more) => more !== 0) ?? 0) < 0

const least = <T>(items: readonly T[], lackOf: (item: T) => readonly number[]): T =>
  items
    .map((item) => ({ item, lack: lackOf(item) }))
    .reduce((best, next) => (isBetter(next.lack, best.lack) ? next : best)).item

const FIGURE_GOALS: readonly FigureGoal[] = ['close-groove', 'least-groove-change', 'least-spread']

/** Every choice is tried as long as their orders take no more than so many balls to lay: a quarter of a second. */
const MOST_BALLS_TRIED = 1_000_000

/** By so many balls a stretch of the sorted lot is longer than a choice; none is longer than it has to be. */
const LONGER = [0, 1, 2, 4, 8]

/**
 * The balls that make the best bearing: gap, play and run-out together. Of a small lot every choice is tried. Balls of nearly one size need no trade between play
 * and run-out, so the choices looked at are those from short stretches of the sorted lot: the run of neighbours with the least
 * scatter among those whose gap is good; and from the stretch with the least spread of each length that has both larger
 * and smaller gaps than the aim, the balls that come nearest to it. Beside them are the best choices by one figure. Nothing is
 * proven of others.
 */
export function bestBearing(task: OrderTask): OrderedBalls & { readonly everyChoiceTried: boolean } {
  const { lot, ballCount } = task.choice
  const everyChoiceTried =
    countChoices(lot.length, ballCount, MOST_BALLS_TRIED) * ballsLaid(ballCount) <= MOST_BALLS_TRIED
  const tried = everyChoiceTried
    ? [...everyChoice(lot.length, ballCount)].map((places) => places.map((place) => itemAt(lot, place)))
    : likelyChoices(task)
  const best = least(
    tried.map((balls) => advisedOrder(task, balls)),
    (ordered) => shortfalls(task, ordered),
  )
  return { ...best, everyChoiceTried }
}

function likelyChoices(task: OrderTask): readonly (readonly MeasuredBall[])[] {
  const { choice, place } = task
  const { lot, ballCount, closure, radius, order, aim } = choice
  const starts = Array.from({ length: lot.length - ballCount + 1 }, (_, start) => start)
  const runs = starts.map((start) => {
    const balls = lot.slice(start, start + ballCount)
    const ballGap = closure.gap(
      radius,
      order.map((rank) => itemAt(balls, ballCount - 1 - rank).diameter),
    )
    const { standardDeviation } = summary(diametersOf(balls))
    const figures = { balls, ballGap, lastBallGoesIn: chanceOfLast(task, ballGap), margin: place.enough, runOut: mm(0) }
    const [unsure, wide, , , , off] = shortfalls(task, figures)
    return { balls, ballGap, lack: [unsure, wide, standardDeviation, off] }
  })
  const spreadFrom = (start: number, longer: number): number =>
    itemAt(lot, start + longer + ballCount - 1).diameter - itemAt(lot, start).diameter
  const stretches = LONGER.flatMap((longer) => {
    const around = starts
      .slice(0, Math.max(0, starts.length - longer))
      .filter((start) => itemAt(runs, start).ballGap >= aim && itemAt(runs, start + longer).ballGap <= aim)
    if (around.length === 0) return []
    const start = least(around, (each) => [spreadFrom(each, longer)])
    const stretch = { ...choice, lot: lot.slice(start, start + ballCount + longer) }
    return [chooseBalls(stretch, 'close-groove').balls]
  })
  const byFigure = FIGURE_GOALS.map((goal) => choiceBy(task, goal).balls)
  return [...byFigure, least(runs, ({ lack }) => lack).balls, ...stretches]
}
