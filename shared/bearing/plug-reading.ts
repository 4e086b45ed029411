import { ballGap, gapPerBallDiameterAtPitchRadius, gapPerPitchRadius } from '#shared/geometry/ring-of-balls.ts'
import { normalCdf, normalDensity } from '#shared/statistics/normal.ts'
import { unevenLoss } from '#shared/statistics/play-of-random-balls.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { boughtMeanUncertainty, measuredMeanUncertainty, scatterTimes } from './ball-lot.ts'
import type { BallRing } from './ball-ring.ts'
import { ENTRY_DEVIATION, ENTRY_MEAN } from './entry-gap.ts'

/*
 * The evidence of a plug about a ring of real balls. The plugs of a design are made for equal balls of its mean diameter Dw. A plug of
 * diameter D that just enters among unequal balls of mean m and scatter σ has them stand on
 *
 *   2 R = D + m + q σ V
 *
 * where V ≥ 0 is how much of the room unequal balls take beyond equal ones (`unevenLoss`), and q is 1 on the bottom of a ring's groove,
 * a half where balls lie between two alike (half of `insidePerBallDiameter`). So the gap g(R, m) is larger than the plug stands for, by about π q σ V, and it spreads with V,
 * with m, with the two balls at the ends of the row (not at exact closure) and with the feel of the plug. The tests hold all of
 * it to exact trials.
 */

/** The probability that a verdict on a groove needs. Common practice, no source. */
export const CONFIDENCE = 0.95

/** A turned plug felt for fit, standard uncertainty [mm]. Common practice, no source. */
export const FELT_FIT = 0.05

/** Ball gaps where a plug just enters. */
export interface GapSpread {
  readonly mean: Mm
  readonly standardDeviation: Mm
}

export interface PlugReading {
  readonly whenGoEnters: GapSpread
  /** The ring that just refuses the no-go plug: with a hair more, it enters. */
  readonly whenNoGoRefuses: GapSpread
  /**
   * How the groove is where go enters and no-go does not, nothing else being known of it. None where the plugs leave no room between
   * them.
   */
  readonly probability?: { readonly tooTight: number; readonly inBand: number; readonly tooDeep: number }
  /** Whether both plugs and a last ball that goes in are enough to call the groove finished. */
  readonly decides: boolean
}

/** Balls of one scatter, with the chance that it is that of the lot. */
interface Lot {
  readonly chance: number
  /** Scatter of single balls. */
  readonly scatter: number
  /** How much the room inside the balls is less than inside equal ones: mean and deviation. */
  readonly loss: { readonly mean: number; readonly deviation: number }
  readonly meanUncertainty: number
}

/** The ball gaps that go and no-go allow with the lot of this design, even if its balls scatter more than stated. */
export function plugReading(ring: BallRing): PlugReading {
  const { resolved, gauge } = ring
  const lots = lotsOf(ring)
  const atGo = lots.map((lot) => spreadAt(ring, gauge.goDiameter, lot))
  const atNoGo = lots.map((lot) => spreadAt(ring, gauge.noGoDiameter, lot))
  const spreads = { whenGoEnters: mixed(lots, atGo), whenNoGoRefuses: mixed(lots, atNoGo) }
  if (!(gauge.goDiameter < gauge.noGoDiameter)) return { ...spreads, decides: false }
  const { minBallGap, maxBallGap, assembly } = resolved
  let [taken, tooDeep] = [0, 0]
  lots.forEach(({ chance }, index) => {
    const [from, to] = [atGo[index], atNoGo[index]]
    if (from === undefined || to === undefined) return
    const above = (gap: number, deviation: number): number => chance * shareAbove(from, to, gap, deviation)
    tooDeep += above(maxBallGap, 0)
    taken += Math.min(
      above(ENTRY_MEAN * assembly.assemblyGap, ENTRY_DEVIATION * assembly.assemblyGap),
      above(minBallGap, 0),
    )
  })
  const good = Math.max(taken, tooDeep)
  const inBand = good - tooDeep
  return { ...spreads, probability: { tooTight: 1 - good, inBand, tooDeep }, decides: inBand >= CONFIDENCE * good }
}

function lotsOf({ resolved, insidePerBallDiameter }: BallRing): readonly Lot[] {
  const { input, ballScatter } = resolved
  const { count, diameters } = input.balls
  const { mean, variance } = unevenLoss(count)
  const perLoss = insidePerBallDiameter / 2
  return scatterTimes(resolved).map(([times, chance]) => {
    const scatter = times * ballScatter
    return {
      chance,
      scatter,
      loss: {
        mean: perLoss * scatter * mean,
        deviation: perLoss * scatter * Math.sqrt(variance),
      },
      meanUncertainty:
        diameters === undefined
          ? boughtMeanUncertainty(scatter, count)
          : measuredMeanUncertainty(scatter, count, diameters.length),
    }
  })
}

/** The gap where a plug just enters. */
function spreadAt({ resolved, insidePerBallDiameter }: BallRing, plug: Mm, lot: Lot): GapSpread {
  const { ballDiameter: ball } = resolved
  const { count } = resolved.input.balls
  const radius = mm((plug + ball + lot.loss.mean) / 2)
  const gap = ballGap(radius, ball, count)
  const perRadius = gapPerPitchRadius(radius, ball, count)
  const perBall = gapPerBallDiameterAtPitchRadius(radius, ball, count)
  const perRadiusOfBall = (1 - insidePerBallDiameter) / 2
  const ends = endsDeviation(count, (gap + ball) / (2 * radius), perRadiusOfBall, perBall + perRadius * perRadiusOfBall)
  const variance =
    (perRadius / 2) ** 2 * (lot.loss.deviation ** 2 + FELT_FIT * FELT_FIT) +
    ((perBall + perRadius / 2) * lot.meanUncertainty) ** 2 +
    (ends * lot.scatter) ** 2
  return { mean: gap, standardDeviation: mm(Math.sqrt(variance)) }
}

/**
 * What single balls do to the gap beside their mean, over their scatter. A ball within the row moves it by −2u, one at its end by
 * ρ s − u − 1/2, and all together by S = −2 (Z − 1) u + 2 ρ s − 1, which gives u. The two slopes are one at exact closure.
 *
 * @param s sine of half the angle that the row leaves open
 * @param perRadius ρ: how far a ball's centre stands further out per diameter
 * @param perBall S: slope of the gap for all balls together, the groove staying as it is
 */
function endsDeviation(count: number, s: number, perRadius: number, perBall: number): number {
  const u = (2 * perRadius * s - 1 - perBall) / (2 * (count - 1))
  return Math.abs(perRadius * s - 1 / 2 + u) * Math.sqrt((2 * (count - 2)) / count)
}

/** Mean and deviation over all lots that may be. */
function mixed(lots: readonly Lot[], spreads: readonly GapSpread[]): GapSpread {
  let [mean, square] = [0, 0]
  spreads.forEach(({ mean: own, standardDeviation }, index) => {
    const chance = lots[index]?.chance ?? Number.NaN
    mean += chance * own
    square += chance * (own * own + standardDeviation * standardDeviation)
  })
  return { mean: mm(mean), standardDeviation: mm(Math.sqrt(Math.max(0, square - mean * mean))) }
}

/**
 * The share of grooves from one plug to the other whose gap is above a limit, itself uncertain. Among grooves of which nothing is
 * known the plug that just enters is as likely anywhere between the two, whatever the balls; its gap runs evenly from one mean to the
 * other. Mean of Φ over a stretch: ∫ Φ(z) dz = z Φ(z) + φ(z).
 */
function shareAbove(from: GapSpread, to: GapSpread, limit: number, deviation: number): number {
  const own = (from.standardDeviation + to.standardDeviation) / 2
  const spread = Math.sqrt(own * own + deviation * deviation)
  const [low, high] = [(from.mean - limit) / spread, (to.mean - limit) / spread]
  if (!(high > low)) return normalCdf(low)
  const upTo = (z: number): number => z * normalCdf(z) + normalDensity(z)
  return Math.min(1, Math.max(0, (upTo(high) - upTo(low)) / (high - low)))
}
