import { type GapOverOrders, gapOverOrders } from '#shared/geometry/order-round-the-ring.ts'
import { closingRadius, unequalBallGap } from '#shared/geometry/unequal-balls.ts'
import {
  countChoices,
  everyChoice,
  type Miss,
  nearestByExchange,
  nearestOfAll,
  type Places,
} from '#shared/numbers/nearest-choice.ts'
import type { Mm } from '#shared/units/length.ts'

/** What the balls are chosen for. */
export const SELECTION_GOALS = ['close-groove', 'least-groove-change', 'least-spread'] as const
export type SelectionGoal = (typeof SELECTION_GOALS)[number]

export interface MeasuredBall {
  /** In the measured lot, from 0. */
  readonly index: number
  readonly diameter: Mm
}

/** The groove, the balls to choose from, and how they are laid. */
export interface ChoiceTask {
  readonly bottomRadius: Mm
  /** The ball gap aimed at. */
  readonly aim: Mm
  /** The smallest first; none larger than the groove's bottom radius, as many as the ring takes at least. */
  readonly lot: readonly MeasuredBall[]
  readonly ballCount: number
  /** For each place round the ring the rank by size, 0 for the largest. */
  readonly order: readonly number[]
}

export interface BallChoice {
  /** In their order round the ring. */
  readonly balls: readonly MeasuredBall[]
  /** By how much the choice misses: of the gap, of the groove's radius, or the spread, as the goal says. */
  readonly missedBy: number
  /** No choice of so many balls, in whatever order, misses less. Proven; 0 where nothing better is known. */
  readonly noneBelow: number
  readonly everyChoiceTried: boolean
}

/** What any choice in any order leaves. No `least` where the largest balls do not even go in. */
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
 * For a given order, every ball that grows makes the gap smaller, as long as the others cover half the ring: with φ and a
 * of `unequal-balls.ts` the gap g between p and q is where  Σ φ + asin √((r_p + g/2)(r_q + g/2) / (a_p a_q)) = π,  and each
 * term grows with each r. So put the Z largest, by rank, in the places of any choice: no choice in any order leaves less
 * than the Z largest in their worst order, nor more than the Z smallest in theirs (`gapOverOrders`). That is the reach;
 * an aim outside it is missed by its distance at least. A small lot is tried to the last choice, and each bounded over
 * its orders. In a large one exchanges come so near that the miss itself says how little is left to gain. For the
 * groove, the least miss of the gap is divided by the steepest slope between here and there. The least spread is exact:
 * it is that of neighbours in the sorted lot, of several such the choice that comes nearest to the aim.
 *
 * @param task some choice can be laid, and each covers half the ring (`gapOverOrders` of the Z smallest says so); no
 *   ball below 2/3 of another
 */
export function chooseBalls(task: ChoiceTask, goal: SelectionGoal): BallChoice {
  const { places, missedBy, noneBelow, everyChoiceTried } = CHOOSERS[goal](task)
  const balls = task.order.flatMap((rank) => task.lot[places[places.length - 1 - rank] ?? -1] ?? [])
  return { balls, missedBy, noneBelow: Math.min(missedBy, noneBelow), everyChoiceTried }
}

interface Chosen extends Omit<BallChoice, 'balls'> {
  /** In the sorted lot. */
  readonly places: Places
}

const CHOOSERS: Readonly<Record<SelectionGoal, (task: ChoiceTask) => Chosen>> = {
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

/** Gap above the aim: it falls as the balls grow. */
function gapMiss(task: ChoiceTask): Miss {
  const lay = layer(task)
  return (places) => unequalBallGap(task.bottomRadius, lay(places)) - task.aim
}

/** By how much the groove is too wide for the balls: it falls as they grow. */
function grooveMiss(task: ChoiceTask): Miss {
  const lay = layer(task)
  return (places) => task.bottomRadius - closingRadius(lay(places), task.aim)
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

const diametersOf = (balls: readonly MeasuredBall[]): readonly Mm[] => balls.map(({ diameter }) => diameter)

/** By how much every choice in every order misses the gap aimed at, at least. */
function leastGapMiss(task: ChoiceTask, everyChoiceTried: boolean): number {
  const { bottomRadius, aim, lot, ballCount } = task
  const { least = Number.NEGATIVE_INFINITY, most } = reachOf(task)
  const outsideReach = beside(aim, { least, most })
  if (outsideReach > 0 || !everyChoiceTried) return outsideReach
  const lay = layer(task)
  let nearest = Number.POSITIVE_INFINITY
  for (const places of everyChoice(lot.length, ballCount)) {
    nearest = Math.min(nearest, beside(aim, gapOverOrders(bottomRadius, lay(places))))
    if (nearest === 0) break
  }
  return nearest
}

const beside = (aim: number, { least, most }: { readonly least: number; readonly most: number }): number =>
  Math.max(0, least - aim, aim - most)

/** What any choice in any order leaves: see `chooseBalls`. */
export function reachOf({ bottomRadius, lot, ballCount }: Omit<ChoiceTask, 'order' | 'aim'>): Reach {
  const largest = diametersOf(lot.slice(-ballCount))
  const { least } = gapOverOrders(bottomRadius, largest)
  const { most } = gapOverOrders(bottomRadius, diametersOf(lot.slice(0, ballCount)))
  // Where they overlap all round, nothing can be laid, and nothing is proven about what others leave.
  return least > -(largest[0] ?? 0) ? { least, most } : { most }
}

/** What one choice leaves in any order. */
export const overOrders = ({ bottomRadius }: ChoiceTask, balls: readonly MeasuredBall[]): GapOverOrders =>
  gapOverOrders(bottomRadius, diametersOf(balls))

/**
 * No gap opens faster with the groove's radius, within `change` of it, than
 * √((a₁ + a_Z)² / (a₁ a_Z) + a₁ a_Z (Σ tan φ (1/aᵢ + 1/aⱼ))²):
 * the two parts of `gapPerBottomRadius` go with sin H and cos H, and sin H over the span is 1 / (2 √(a₁ a_Z)) at most.
 * Each is largest for the largest ball in the tightest groove.
 */
function steepest({ bottomRadius, lot, ballCount }: ChoiceTask, change: number): number {
  const [small, large] = [(lot[0]?.diameter ?? 0) / 2, (lot.at(-1)?.diameter ?? 0) / 2]
  const tightest = Math.max(bottomRadius - change, 2 * large)
  const [near, far] = [tightest - large, tightest - small]
  const tangent = large / Math.sqrt(tightest * (tightest - 2 * large))
  const turn = (far * (ballCount - 1) * tangent * 2) / near
  return Math.sqrt(far / near + near / far + 2 + turn * turn)
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
    if (!((spreads[start] ?? 0) <= spread + same) || (start > 0 && at(start) === at(start - 1))) continue
    const end = lot.findLastIndex(({ diameter }) => diameter <= at(start) + spread + same)
    const run: ChoiceTask = { ...task, lot: lot.slice(start, end + 1) }
    const nearest = nearestIn(run, gapMiss(run))
    if (best !== undefined && !(nearest.missedBy < best.missedBy)) continue
    best = { ...nearest, places: nearest.places.map((place) => place + start), noneBelow: spread }
  }
  if (best === undefined) throw new RangeError(`lot must hold ${ballCount} balls at least, got ${lot.length}`)
  return { ...best, missedBy: spread, everyChoiceTried: true }
}
