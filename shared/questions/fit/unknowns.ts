import { boughtMeanUncertainty } from '#shared/bearing/ball-lot.ts'
import { cutDeviation, type ToolError } from '#shared/making/tool-error.ts'
import { unevenLossBy } from '#shared/statistics/play-of-random-balls.ts'
import * as defaults from './defaults.ts'
import type { EarlierState, ToolName } from './reading.ts'
import { pitchRadius, radiusForGap, seatDepth, xForPitch } from './ring-law.ts'
import type { Subject } from './subject.ts'

/*
 * The unknowns of an unfinished bearing, as independent standard normal numbers ξ. Each ξ determines one quantity; every
 * cut adds one.
 */

export const OF_MEAN = 0
export const OF_START = 1
export const OF_HAND = 2
const OF_TOOL = 3
export const OF_LEFT_OUT = 4
export const OF_REDUCTION = 5
const OF_OUTER = 6

export type Tools = Readonly<Record<ToolName, ToolError>>

/** One bearing that might be: lengths in millimetres. Filled anew for each point, so that nothing is allocated. */
export interface Place {
  /** Mean of the balls in the ring, and their scatter. */
  mean: number
  scatter: number
  /** Radius of the outer groove. */
  outer: number
  /** How far the cut went: the outer groove's x, or the inner bottom radius taken negative, so that a cut adds to it. */
  cut: number
  /** The error that the hand adds to every reading of a rule. */
  hand: number
  /** How much more than the nominal cut comes off, over the nominal cut. */
  tool: number
  /** How far off the balls left out are, in standard deviations. */
  leftOut: number
  /** V of `unevenLoss`. */
  reduction: number
}

export interface Unknowns {
  readonly subject: Subject
  /** How many ξ there are. */
  readonly columns: number
  readonly states: number
  /** Computes the bearing at a point, with `times` the stated scatter; writes the cut at each state into `cuts`. */
  readonly unfold: (xi: Float64Array, at: number, times: number, place: Place, cuts: Float64Array) => void
  /** d(cut at a state)/dξ of every column. */
  readonly cutSlopes: (state: number) => Float64Array
}

export const emptyPlace = (): Place => ({
  mean: 0,
  scatter: 0,
  outer: 0,
  cut: 0,
  hand: 0,
  tool: 0,
  leftOut: 0,
  reduction: 0,
})

/** No cut comes out truer than this [mm]. Common practice, no source. */
const TRUEST_CUT = 1e-4

export function unknownsOf(subject: Subject, earlier: readonly EarlierState[], tools: Tools): Unknowns {
  const { balls, outer } = subject
  const reductionAt = unevenLossBy(balls.count)
  const nominal = earlier.map(({ thenRemoved }) => thenRemoved.radial)
  const spread = earlier.map(({ thenRemoved: { with: name, radial } }) =>
    Math.max(cutDeviation(tools[name], radial), TRUEST_CUT),
  )
  const [designed, depth] =
    subject.cuts === 'outer' ? [outer.x, outer.depth] : [-subject.inner.bottomRadius, subject.inner.depth]
  const start = designed - defaults.STARTS_SHORT_BY * depth
  const within = defaults.STARTS_WITHIN * depth
  const firstCut = subject.cuts === 'outer' ? OF_OUTER : OF_OUTER + 1
  const outerPlace = outerPlaceOf(subject)
  const states = earlier.length + 1
  return {
    subject,
    columns: firstCut + earlier.length,
    states,
    cutSlopes: (state) => {
      const slopes = new Float64Array(firstCut + earlier.length)
      slopes[OF_START] = within
      for (let cut = 0; cut < state; cut++) {
        slopes[OF_TOOL] = (slopes[OF_TOOL] ?? Number.NaN) + defaults.TOOL_BIAS * (nominal[cut] ?? Number.NaN)
        slopes[firstCut + cut] = spread[cut] ?? Number.NaN
      }
      return slopes
    },
    unfold: (xi, at, times, place, cuts) => {
      const value = (column: number): number => xi[at + column] ?? Number.NaN
      place.scatter = balls.scatter * times
      place.mean = balls.diameter + meanUncertainty(subject, times) * value(OF_MEAN)
      place.hand = defaults.HAND_BIAS * value(OF_HAND)
      place.tool = defaults.TOOL_BIAS * value(OF_TOOL)
      place.leftOut = value(OF_LEFT_OUT)
      place.reduction = reductionAt(value(OF_REDUCTION))
      let cut = start + within * value(OF_START)
      cuts[0] = cut
      for (let state = 1; state < states; state++) {
        cut +=
          (nominal[state - 1] ?? Number.NaN) * (1 + place.tool) +
          (spread[state - 1] ?? Number.NaN) * value(firstCut + state - 1)
        cuts[state] = cut
      }
      place.cut = cut
      place.outer = outerPlace === undefined ? cut : outerPlace(value(OF_OUTER), place.mean)
    },
  }
}

/** Standard uncertainty of the mean of the balls in the ring, for a lot with `times` the stated scatter. */
function meanUncertainty({ balls }: Subject, times: number): number {
  if (balls.meanUncertainty !== undefined) return balls.meanUncertainty
  return Math.max(boughtMeanUncertainty(times * balls.scatter, balls.count), 1e-6 * balls.diameter)
}

/** A finished outer ring: brought to its gap with the balls that are in it, or cut to its size without. */
function outerPlaceOf(subject: Subject): ((xi: number, mean: number) => number) | undefined {
  if (subject.cuts === 'outer') return undefined
  const { outer, outerKnown, balls } = subject
  if (outerKnown.by === 'groove') return (xi) => outer.x + outerKnown.deviation * xi
  if (outerKnown.isLeft === true)
    return (xi) => outer.x + (defaults.STARTS_WITHIN * xi - defaults.STARTS_SHORT_BY) * outer.depth
  const designed = radiusForGap(outerKnown.gap, balls.diameter, balls.count)
  const perGap =
    (radiusForGap(outerKnown.gap + outerKnown.deviation, balls.diameter, balls.count) -
      radiusForGap(outerKnown.gap - outerKnown.deviation, balls.diameter, balls.count)) /
    2
  // A ring of larger balls that leaves the same gap is larger in proportion.
  return (xi, mean) => xForPitch(outer.seat, designed * (mean / balls.diameter) + perGap * xi, mean)
}

/** The ring of balls round the axis: where the centres of balls of the mean size stand. */
const centres = ({ outer }: Subject, place: Place): number => pitchRadius(outer.seat, place.outer, place.mean)

/** On the circle of a plate larger balls stand no further out, so the disc inside them loses half of what it does in a ring. */
const perReduction = ({ outer }: Subject): number => (outer.seat.on === 'circle' ? 1 / 2 : 1)

/** The diameter of the largest disc inside the balls. */
export const insideBalls = (subject: Subject, place: Place): number =>
  2 * centres(subject, place) - place.mean - perReduction(subject) * place.scatter * place.reduction

/** The whole travel of the inner ring from side to side; below 0 it binds. */
export function playOf(subject: Subject & { readonly cuts: 'inner' }, place: Place): number {
  const { inner } = subject
  const depth = inner.landRadius + place.cut
  const seat = inner.arcOnEdges === undefined ? depth : seatDepth(inner.arcOnEdges, depth, place.mean)
  return insideBalls(subject, place) - 2 * (inner.landRadius - seat)
}
