import { ballGap as gapOfRing, gapPerPitchRadius, pitchRadiusForGap } from '#shared/geometry/ring-of-balls.ts'
import { endByHalving } from '#shared/numbers/halving.ts'
import { itemAt, lastOf } from '#shared/numbers/item-at.ts'
import { lowsOf } from '#shared/statistics/monte-carlo.ts'
import { accumulated, type Histogram, shareBelow } from '#shared/statistics/streaming-histogram.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { AimPlace } from './check-model.ts'
import type { Check } from './checked.ts'
import { modelOf } from './model-of.ts'

/*
 * The depth at which to stop cutting the outer groove. A groove cut deeper lets the same balls run further out, by the same in every trial,
 * and the gap opens along the curve of the closed ring, R → g(R). So the trials need not be run again: a gap g becomes
 * g(R(g) + x). That takes every trial's balls for the mean ones in the slope alone, where they count for 1e-3 of a
 * thousandth of a millimetre; the tests hold it to new trials of the deeper groove.
 */

/** A chance from trials. */
export interface Chance {
  readonly value: number
  readonly standardError: number
}

export interface Outcomes {
  readonly tooTight: Chance
  readonly fits: Chance
  readonly tooLoose: Chance
}

export interface AimPoint extends AimPlace {
  /** Mean of the gaps. */
  readonly ballGap: Mm
  readonly outcomes: Outcomes
}

export interface Aim {
  readonly atNominal: AimPoint
  /** The best yield. */
  readonly bestYield: AimPoint
  /** The best yield among the grooves whose chance of being too deep is accepted; none where every groove is too deep. */
  readonly limitedRisk: AimPoint | undefined
}

/** How finely depths are looked through. */
const STEPS = 400

/** The share of the gaps at either end that no aim needs to reach. Common practice, no source. */
const BEYOND_NOTICE = 1e-3

/** How the gaps of the grooves as designed are spread. */
export interface GapSpread {
  readonly histogram: Histogram
  readonly mean: number
  /** A share that has been found, and how sure it is: of the gaps between two ends, each one of several or none. */
  readonly chance: (share: number, lows: readonly number[], highs: readonly number[]) => Chance
}

/**
 * @param atNominal what came of the trials as they were run: counted, and not read off the histogram
 */
export function aimOf(check: Check, gaps: GapSpread, atNominal: Outcomes): Aim {
  const shift = shiftsOf(check, gaps)
  const { shifts, placeAt } = modelOf(check)
  const [from, to] = shifts(Math.min(shift.shallowest, 0), Math.max(shift.deepest, 0))
  const best = bestBetween(shift, from, to)
  const { overshootRisk } = check.input
  const limit = deepestWithin(shift, overshootRisk, from, to)
  const point = (further: number): AimPoint => ({
    ...placeAt(further),
    ballGap: mm(shift.meanAt(further)),
    outcomes: shift.outcomes(further),
  })
  return {
    atNominal: { ...placeAt(0), ballGap: mm(gaps.mean), outcomes: atNominal },
    bestYield: point(best),
    limitedRisk: limit === undefined ? undefined : point(Math.min(best, limit)),
  }
}

/** The gaps that come to lie at the limits, and the shares that they divide. */
interface Shares {
  readonly lows: readonly number[]
  readonly high: number
  readonly tooTight: number
  readonly fits: number
  readonly tooLoose: number
}

/** The outcome of the trials when the balls run further out by some length. */
interface Shifts {
  readonly shares: (further: number) => Shares
  /** The same with how sure it is, which takes longer. */
  readonly outcomes: (further: number) => Outcomes
  /** The mean after that. */
  readonly meanAt: (further: number) => number
  /** The shifts that bring the narrowest gap to the largest wanted, and the widest to the smallest. */
  readonly deepest: number
  readonly shallowest: number
}

function shiftsOf({ bearing, gapLimits }: Check, { histogram: gaps, mean, chance }: GapSpread): Shifts {
  const curve = gapCurve(bearing.resolved.ballDiameter, bearing.resolved.input.balls.count)
  const below = accumulated(gaps)
  const count = lastOf(below)
  const radiiAtLows = lowsOf(gapLimits).map(curve.radiusAt)
  const [radiusAtMin, radiusAtMax] = [itemAt(radiiAtLows, 0), curve.radiusAt(gapLimits.max)]
  const shares = (further: number): Shares => {
    const lows = radiiAtLows.map((radius) => curve.gapAt(radius - further))
    const high = curve.gapAt(radiusAtMax - further)
    const tooTight = lows.reduce((sum, low) => sum + shareBelow(gaps, below, low), 0) / lows.length
    const notLoose = shareBelow(gaps, below, high)
    return { lows, high, tooTight, fits: Math.max(0, notLoose - tooTight), tooLoose: 1 - notLoose }
  }
  const outcomes = (further: number): Outcomes => {
    const { lows, high, tooTight, fits, tooLoose } = shares(further)
    return {
      tooTight: chance(tooTight, lows, []),
      fits: chance(fits, lows, [high]),
      tooLoose: chance(tooLoose, [], [high]),
    }
  }
  const edge = (share: number): number => {
    const found = below.findIndex((reached) => reached >= share * count)
    return Math.min(Math.max(gaps.low + found * gaps.binWidth, gaps.least), gaps.most)
  }
  return {
    shares,
    outcomes,
    meanAt: (further) => curve.gapAt(curve.radiusAt(mean) + further),
    deepest: radiusAtMax - curve.radiusAt(edge(BEYOND_NOTICE)),
    shallowest: radiusAtMin - curve.radiusAt(edge(1 - BEYOND_NOTICE)),
  }
}

interface GapCurve {
  readonly radiusAt: (gap: number) => number
  readonly gapAt: (radius: number) => number
}

/** In ball diameters: beyond these gaps the curve is taken on as a straight line. */
const CURVE_FROM = -0.9
const CURVE_TO = 0.95

function gapCurve(ballDiameter: Mm, ballCount: number): GapCurve {
  const ends = [CURVE_FROM, CURVE_TO].map((part) => {
    const gap = mm(part * ballDiameter)
    const radius = pitchRadiusForGap(gap, ballDiameter, ballCount)
    return { gap, radius, slope: gapPerPitchRadius(radius, ballDiameter, ballCount) }
  })
  const endFor = (isBeyond: (end: (typeof ends)[number], index: number) => boolean) => ends.find(isBeyond)
  return {
    radiusAt: (gap) => {
      const end = endFor((each, index) => (index === 0 ? gap < each.gap : gap > each.gap))
      if (end !== undefined) return end.radius + (gap - end.gap) / end.slope
      return pitchRadiusForGap(mm(gap), ballDiameter, ballCount)
    },
    gapAt: (radius) => {
      const end = endFor((each, index) => (index === 0 ? radius < each.radius : radius > each.radius))
      if (end !== undefined) return end.gap + (radius - end.radius) * end.slope
      return gapOfRing(mm(radius), ballDiameter, ballCount)
    },
  }
}

/**
 * The shift of the best yield. Where the yield is flat within its own standard error, the middle of the flat: as far from too
 * tight as from too deep.
 */
function bestBetween({ shares, outcomes }: Shifts, from: number, to: number): number {
  const shifts = Array.from({ length: STEPS + 1 }, (_, step) => from + (step / STEPS) * (to - from))
  const yields = shifts.map((shift) => shares(shift).fits)
  const most = Math.max(...yields)
  const peak = yields.indexOf(most)
  const enough = most - outcomes(itemAt(shifts, peak)).fits.standardError
  let [first, last] = [peak, peak]
  while (first > 0 && itemAt(yields, first - 1) >= enough) first--
  while (last < STEPS && itemAt(yields, last + 1) >= enough) last++
  return (itemAt(shifts, first) + itemAt(shifts, last)) / 2
}

/** Halvings of the interval in which that shift is searched: to the last digits of a double. */
const HALVINGS = 50

/** The deepest shift whose chance of too deep is accepted: that chance grows with the depth. */
function deepestWithin({ shares }: Shifts, risk: number, from: number, to: number): number | undefined {
  if (shares(from).tooLoose > risk) return undefined
  if (shares(to).tooLoose <= risk) return to
  const [deepest] = endByHalving((shift) => shares(shift).tooLoose <= risk, from, to, HALVINGS)
  return deepest
}
