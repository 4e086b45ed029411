import type { Closure } from '#shared/geometry/closure.ts'
import type { GapOverOrders } from '#shared/geometry/order-round-the-ring.ts'
import { itemAt, lastOf } from '#shared/numbers/item-at.ts'
import {
  countChoices,
  everyChoice,
  type Miss,
  nearestByExchange,
  nearestOfAll,
  type Places,
} from '#shared/numbers/nearest-choice.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { SelectionGoal } from './fields.ts'

/** The goals that depend on one figure of the balls. */
export type FigureGoal = Exclude<SelectionGoal, 'best-bearing'>

export interface MeasuredBall {
  /** In the measured lot, from 0. */
  readonly index: number
  readonly diameter: Mm
}

/** The groove, the balls to choose from, and the order by which choices are compared. */
export interface ChoiceTask {
  readonly closure: Closure
  /** As it is cut: what the closure goes by. */
  readonly radius: Mm
  /** The ball gap aimed at. */
  readonly aim: Mm
  /** The smallest first; of each two fit side by side, as many as the ring takes at least. */
  readonly lot: readonly MeasuredBall[]
  readonly ballCount: number
  /** For each place round the ring the rank by size, 0 for the largest. */
  readonly order: readonly number[]
}

export interface BallChoice {
  /** In the order of the task. */
  readonly balls: readonly MeasuredBall[]
  /** By how much the choice misses: of the gap, of the groove's radius, or the spread, as the goal says. */
  readonly missedBy: number
  /** No choice of so many balls, in whatever order, misses less. Proven; 0 where nothing better is known. */
  readonly noneBelow: number
  readonly everyChoiceTried: boolean
}

/** The range of the gap over all choices and orders. No `least` if the largest balls do not go in. */
export interface Reach {
  readonly least?: Mm
  readonly most: Mm
}

/** Every choice is tried up to so many, and as long as balls × balls × choices stay below what takes milliseconds. */
const MOST_CHOICES = 5_000
const MOST_PAIRS = 300_000

/** Two spreads are the same within rounding, in ball diameters. */
const SAME_SPREAD = 1e-9

/**
 * The balls that suit a goal best, and how far from the best possible they can be.
 *
 * For a given order, every ball that grows makes the gap smaller, as long as the others cover half the ring
 * (`Closure`). So put the Z largest, by rank, in the places of any choice: no choice in any order leaves less
 * than the Z largest in their worst order, nor more than the Z smallest in theirs (`overOrders`). That is the reach;
 * an aim outside it is missed by its distance at least. A small lot is tried to the last choice, and each bounded over
 * its orders. In a large one exchanges come so near that the miss itself says how little is left to gain. For the
 * groove, the least miss of the gap is divided by the steepest slope between here and there. The least spread is exact:
 * it is that of neighbours in the sorted lot, of several such the choice that comes nearest to the aim.
 *
 * @param task some choice can be laid, and each covers half the ring (`overOrders` of the Z smallest says so); no
 *   ball below 2/3 of another
 */
export function chooseBalls(task: ChoiceTask, goal: FigureGoal): BallChoice {
  const { places, missedBy, noneBelow, everyChoiceTried } = CHOOSERS[goal](task)
  const balls = task.order.flatMap((rank) => task.lot[places[places.length - 1 - rank] ?? -1] ?? [])
  return { balls, missedBy, noneBelow: Math.min(missedBy, noneBelow), everyChoiceTried }
}

interface Chosen extends Omit<BallChoice, 'balls'> {
  /** In the sorted lot. */
  readonly places: Places
}

const CHOOSERS: Readonly<Record<FigureGoal, (task: ChoiceTask) => Chosen>> = {
  'close-groove': (task) => {
    const nearest = nearestIn(task, gapMiss(task))
    return { ...nearest, noneBelow: leastGapMiss(task, nearest.everyChoiceTried) }
  },
  'least-groove-change': (task) => {
    const nearest = nearestIn(task, grooveMiss(task))
    const noneBelow = leastGapMiss(task, nearest.everyChoiceTried) / steepest(task, nearest.missedBy)
    return { ...nearest, noneBelow }
  },
  'least-spread': leastSpread,
}

/** By how much balls in some order miss a goal: of the gap, of the groove's radius, or the spread. */
export function missOf({ closure, radius, aim }: ChoiceTask, goal: FigureGoal, diameters: readonly number[]): number {
  if (goal === 'least-spread') return Math.max(...diameters) - Math.min(...diameters)
  const off =
    goal === 'close-groove' ? closure.gap(radius, diameters) - aim : radius - closure.radiusFor(diameters, aim)
  return Math.abs(off)
}

/** Gap above the aim: it falls as the balls grow. */
function gapMiss(task: ChoiceTask): Miss {
  const lay = layer(task)
  return (places) => task.closure.gap(task.radius, lay(places)) - task.aim
}

/** By how much the groove is too wide for the balls: it falls as they grow. */
function grooveMiss(task: ChoiceTask): Miss {
  const lay = layer(task)
  return (places) => task.radius - task.closure.radiusFor(lay(places), task.aim)
}

/** The diameters of a choice, in their order round the ring. */
function layer({ lot, order }: ChoiceTask): (places: Places) => readonly number[] {
  return (places) => order.map((rank) => lot[places[places.length - 1 - rank] ?? -1]?.diameter ?? Number.NaN)
}

function nearestIn({ lot, ballCount }: ChoiceTask, miss: Miss): Omit<Chosen, 'noneBelow'> {
  const everyChoiceTried = countChoices(lot.length, ballCount, MOST_CHOICES) * ballCount * ballCount <= MOST_PAIRS
  const nearest = everyChoiceTried
    ? nearestOfAll(lot.length, ballCount, miss)
    : nearestByExchange(diametersOf(lot), ballCount, miss)
  return { places: nearest.places, missedBy: Math.abs(nearest.miss), everyChoiceTried }
}

export const diametersOf = (balls: readonly MeasuredBall[]): readonly Mm[] => balls.map(({ diameter }) => diameter)

/** By how much every choice in every order misses the gap aimed at, at least. */
function leastGapMiss(task: ChoiceTask, everyChoiceTried: boolean): number {
  const { closure, radius, aim, lot, ballCount } = task
  const { least = Number.NEGATIVE_INFINITY, most } = reachOf(task)
  const outsideReach = beside(aim, { least, most })
  if (outsideReach > 0 || !everyChoiceTried) return outsideReach
  const lay = layer(task)
  let nearest = Number.POSITIVE_INFINITY
  for (const places of everyChoice(lot.length, ballCount)) {
    nearest = Math.min(nearest, beside(aim, closure.overOrders(radius, lay(places))))
    if (nearest === 0) break
  }
  return nearest
}

const beside = (aim: number, { least, most }: { readonly least: number; readonly most: number }): number =>
  Math.max(0, least - aim, aim - most)

/** The range of the gap over all choices and orders: see `chooseBalls`. */
export function reachOf({ closure, radius, lot, ballCount }: Omit<ChoiceTask, 'order' | 'aim'>): Reach {
  const largest = diametersOf(lot.slice(-ballCount))
  const { least } = closure.overOrders(radius, largest)
  const { most } = closure.overOrders(radius, diametersOf(lot.slice(0, ballCount)))
  // Where they overlap all round, nothing can be laid, and nothing is proven about what others leave.
  return least > -itemAt(largest, 0) ? { least, most } : { most }
}

/** The range of the gap over all orders of one choice. */
export const overOrders = ({ closure, radius }: ChoiceTask, balls: readonly MeasuredBall[]): GapOverOrders =>
  closure.overOrders(radius, diametersOf(balls))

/** No gap opens faster with the radius, within `change` of it. */
function steepest({ closure, radius, lot, ballCount }: ChoiceTask, change: number): number {
  const [smallest, largest] = [itemAt(lot, 0).diameter, lastOf(lot).diameter]
  return closure.steepest(mm(radius - change), { ballCount, smallest, largest })
}

function leastSpread(task: ChoiceTask): Chosen {
  const { lot, ballCount } = task
  const at = (place: number): number => lot[place]?.diameter ?? Number.NaN
  const starts = Array.from({ length: lot.length - ballCount + 1 }, (_, start) => start)
  const spreads = starts.map((start) => at(start + ballCount - 1) - at(start))
  const spread = Math.min(...spreads)
  const same = SAME_SPREAD * at(0)
  let best: Chosen | undefined
  for (const start of starts) {
    // A run that begins with the same size as the one before holds no choice that was not among those of that one.
    if (!(itemAt(spreads, start) <= spread + same) || (start > 0 && at(start) === at(start - 1))) continue
    const end = lot.findLastIndex(({ diameter }) => diameter <= at(start) + spread + same)
    const run: ChoiceTask = { ...task, lot: lot.slice(start, end + 1) }
    const nearest = nearestIn(run, gapMiss(run))
    if (best !== undefined && !(nearest.missedBy < best.missedBy)) continue
    best = { ...nearest, places: nearest.places.map((place) => place + start), noneBelow: spread }
  }
  if (best === undefined) throw new RangeError(`lot must hold ${ballCount} balls at least, got ${lot.length}`)
  return { ...best, missedBy: spread, everyChoiceTried: true }
}
