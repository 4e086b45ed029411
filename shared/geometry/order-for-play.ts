import { requireAboveZero, requireWhole, requireWithin } from '#shared/precondition.ts'
import { drawWords, randomStream } from '#shared/statistics/random.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { spreadOrder } from './order-round-the-ring.ts'
import { playAmongBalls, roundRoom, runOutOf, seeker } from './play-among-unequal-balls.ts'
import { FEWEST_BALLS, requireDiameters } from './ring-of-balls.ts'
import { ballPlaces, layOnCircle, placesOnCircle } from './unequal-ball-places.ts'
import { unequalBallGap } from './unequal-balls.ts'

/** The two grooves between which an order of balls is judged. */
export interface GroovePair {
  /** Ro [mm], at least the largest diameter: any two balls fit side by side. */
  readonly outerBottomRadius: Mm
  /** ri [mm], above 0. */
  readonly innerBottomRadius: Mm
}

/** What balls leave in one order round the ring. */
export interface PlayOfOrder {
  /** Between the last ball and the first, all others pushed together: `unequalBallGap`. */
  readonly ballGap: Mm
  /** As `PlayAmongBalls` has it, the gap spread evenly: as the balls go round it comes to lie between any two. */
  readonly radialInternalClearance: Mm
  readonly runOut: Mm
}

/**
 * What an order of the balls is chosen for:
 *
 * - `most-play`, whatever the run-out
 * - `least-run-out`, whatever the play, even where the ring then binds
 * - `playAtLeast`: least run-out among the orders with so much play; where none has it, most play. Play and run-out
 *   are had one for the other, about a hundredth for a hundredth, so a compromise needs to be told how much play is
 *   enough
 * - `least-play`: the order to avoid
 */
export type OrderAim = 'most-play' | 'least-run-out' | 'least-play' | { readonly playAtLeast: Mm }

/** The best order that was found. */
export interface BestOrder extends PlayOfOrder {
  /** For each place round the ring the ball's index in the list. */
  readonly order: readonly number[]
  /**
   * Whether every order was tried. Otherwise it is the best of a search that exchanges balls, which promises nothing.
   */
  readonly exhaustive: boolean
}

function requireRings({ outerBottomRadius, innerBottomRadius }: GroovePair, diameters: readonly number[]): void {
  requireDiameters(diameters)
  requireAboveZero('innerBottomRadius', innerBottomRadius)
  requireWithin('outerBottomRadius', outerBottomRadius, Math.max(...diameters), Number.MAX_VALUE)
}

/**
 * Gap, play and run-out of balls as they are ordered.
 *
 * @param diameters in their order round the ring [mm]
 * @returns undefined where they leave half a turn free, so that nothing holds the ring
 * @throws RangeError outside the ranges of `GroovePair`
 */
export function playOfOrder(rings: GroovePair, diameters: readonly number[]): PlayOfOrder | undefined {
  requireRings(rings, diameters)
  const { outerBottomRadius, innerBottomRadius } = rings
  const play = playAmongBalls(placesOnCircle(outerBottomRadius, diameters, 'spread'), innerBottomRadius)
  if (play === undefined) return undefined
  const { radialInternalClearance, runOut } = play
  return { ballGap: unequalBallGap(outerBottomRadius, diameters), radialInternalClearance, runOut }
}

/**
 * The most play that any order can leave, to first order: that of balls all of the mean size. At equal spacing the
 * directions add up to nothing, so equal shares λ = 1 / Z are within the dual of `inscribeCircle`, and Σ λ d is the
 * mean diameter in any order. Exact play may pass it by the square of the scatter over the pitch diameter, some
 * thousandths of a millimetre.
 */
export function mostPlayOfAnyOrder(
  { outerBottomRadius, innerBottomRadius }: GroovePair,
  diameters: readonly number[],
): Mm {
  const mean = diameters.reduce((sum, diameter) => sum + diameter, 0) / diameters.length
  return mm(2 * (outerBottomRadius - innerBottomRadius - mean))
}

/**
 * An order with the large balls on one side: the largest in the middle of it, the next two either side, and so on to
 * the smallest opposite. Sizes that rise and fall once in a turn only shift the inner ring, so it leaves nearly all of
 * the play, and costs the most run-out.
 *
 * @returns for each place round the ring the rank of its ball, 0 for the largest
 */
export function oneSidedOrder(ballCount: number): readonly number[] {
  requireWhole('ballCount', ballCount, FEWEST_BALLS)
  const order = Array.from({ length: ballCount }, () => 0)
  for (let rank = 1; rank < ballCount; rank++) {
    const beside = Math.ceil(rank / 2)
    order[rank % 2 === 1 ? beside : ballCount - beside] = rank
  }
  return order
}

/** Up to here every order is tried: of eight balls there are 2520, of nine 20160. */
const MOST_TRIED_THROUGH = 8
/**
 * Orders looked at for each ball, and in all: of 14 balls ten times as many bettered none of 45 lots by 0.0001 mm, and
 * they take a hundredth of a second.
 */
const EVALUATIONS_A_BALL = 400
const MOST_EVALUATIONS = 20_000
/** So that of many balls more than one start is tried. */
const MOST_OF_ONE_START = 0.25
/** Of a least run-out, what play is worth beside it: it decides where run-outs are alike. */
const PLAY_BESIDE_RUN_OUT = 1e-3

/**
 * The order of given balls that is best for an aim. Up to eight balls every order is tried; of more, the one-sided and
 * the spread orders and then drawn ones are bettered by exchanging two balls at a time as long as that helps, until so
 * many orders have been looked at.
 * `mostPlayOfAnyOrder` says how much more play there could be; run-out cannot be below 0. The same balls give the same
 * order.
 *
 * @param evaluations the most orders that are looked at where not all are
 * @returns undefined where nothing holds the ring
 * @throws RangeError outside the ranges of `GroovePair`
 */
export function bestOrder(
  rings: GroovePair,
  diameters: readonly number[],
  aim: OrderAim,
  evaluations = Math.min(MOST_EVALUATIONS, EVALUATIONS_A_BALL * diameters.length),
): BestOrder | undefined {
  requireRings(rings, diameters)
  const exhaustive = diameters.length <= MOST_TRIED_THROUGH
  const score = scoreFor(rings, diameters, aim)
  const order = exhaustive ? bestOfAll(score, diameters.length) : bestOfSearch(score, diameters, evaluations)
  const found = playOfOrder(
    rings,
    order.map((ball) => diameters[ball] ?? Number.NaN),
  )
  return found === undefined ? undefined : { ...found, order, exhaustive }
}

/** What an order is worth: the higher the better. */
type Score = (order: readonly number[]) => number

function worthFor(aim: OrderAim, outerRadius: number): (clearance: number, runOut: number) => number {
  if (typeof aim === 'object') {
    const wanted = aim.playAtLeast
    // no run-out is as large as the ring, so whatever has too little play is worth less than all that has enough
    return (clearance, runOut) =>
      clearance >= wanted ? PLAY_BESIDE_RUN_OUT * (clearance - wanted) - runOut : clearance - wanted - 4 * outerRadius
  }
  switch (aim) {
    case 'most-play':
      return (clearance) => clearance
    case 'least-play':
      return (clearance) => -clearance
    case 'least-run-out':
      return (clearance, runOut) => PLAY_BESIDE_RUN_OUT * clearance - runOut
    default:
      return aim satisfies never
  }
}

/** Orders are looked at by the thousand: nothing is allocated for one. */
function scoreFor(rings: GroovePair, diameters: readonly number[], aim: OrderAim): Score {
  const places = ballPlaces(diameters.length)
  const seek = seeker(
    places,
    roundRoom(places, () => rings.innerBottomRadius),
  )
  const worth = worthFor(aim, rings.outerBottomRadius)
  return (order) => {
    for (let place = 0; place < order.length; place++)
      places.radius[place] = (diameters[order[place] ?? Number.NaN] ?? Number.NaN) / 2
    layOnCircle(rings.outerBottomRadius, 'spread', places)
    const found = seek()
    return found === undefined ? Number.NEGATIVE_INFINITY : worth(2 * found.level, runOutOf(found))
  }
}

/**
 * The ball at place 0 stays, and of an order and its mirror image one is tried: with the gap spread they are the same
 * ring.
 */
function bestOfAll(score: Score, count: number): readonly number[] {
  const order = Array.from({ length: count }, (_, ball) => ball)
  let best: readonly number[] = [...order]
  let highest = Number.NEGATIVE_INFINITY
  const permute = (from: number): void => {
    if (from === count) {
      if ((order[1] ?? Number.NaN) > (order[count - 1] ?? Number.NaN)) return
      const own = score(order)
      if (own > highest) {
        highest = own
        best = [...order]
      }
      return
    }
    for (let place = from; place < count; place++) {
      exchange(order, from, place)
      permute(from + 1)
      exchange(order, from, place)
    }
  }
  permute(1)
  return best
}

function exchange(order: number[], one: number, other: number): void {
  const kept = order[one] ?? Number.NaN
  order[one] = order[other] ?? Number.NaN
  order[other] = kept
}

function bestOfSearch(score: Score, diameters: readonly number[], evaluations: number): readonly number[] {
  const count = diameters.length
  const sizeOf = (ball: number): number => diameters[ball] ?? Number.NaN
  const ranked = [...diameters.keys()].sort((one, other) => sizeOf(other) - sizeOf(one) || one - other)
  const laidOut = [oneSidedOrder(count), spreadOrder(count), spreadOrder(count, 3)]
  let best: readonly number[] = ranked
  let highest = Number.NEGATIVE_INFINITY
  let left = evaluations
  for (let start = 0; left > 0; start++) {
    const order = laidOut[start]?.map((rank) => ranked[rank] ?? Number.NaN) ?? shuffled(ranked, start)
    const { worth, spent } = bettered(score, order, Math.min(left, Math.ceil(evaluations * MOST_OF_ONE_START)))
    left -= spent
    if (worth > highest) {
      highest = worth
      best = order
    }
  }
  return best
}

/** Exchanges two balls of an order as long as that makes it better. */
function bettered(score: Score, order: number[], evaluations: number): { worth: number; spent: number } {
  let worth = score(order)
  let spent = 1
  for (let better = true; better; ) {
    better = false
    for (let one = 0; one < order.length - 1; one++) {
      for (let other = one + 1; other < order.length; other++) {
        if (spent >= evaluations) return { worth, spent }
        exchange(order, one, other)
        const next = score(order)
        spent++
        if (next > worth) {
          worth = next
          better = true
        } else exchange(order, one, other)
      }
    }
  }
  return { worth, spent }
}

/** Fisher and Yates; the seed is fixed, so that the same balls are always searched in the same way. */
function shuffled(balls: readonly number[], stream: number): number[] {
  const order = [...balls]
  const words = drawWords(randomStream(1, stream), order.length)
  for (let last = order.length - 1; last > 0; last--) {
    exchange(order, last, Math.floor(((words[last] ?? Number.NaN) / 2 ** 32) * (last + 1)))
  }
  return order
}
