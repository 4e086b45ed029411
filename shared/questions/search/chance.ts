import type { Bearing } from '#shared/bearing/arrangements.ts'
import { thresholdOf } from '#shared/bearing/entry-threshold.ts'
import { normalCdf, normalDensity } from '#shared/statistics/normal.ts'
import { playMoments } from '#shared/statistics/play-of-random-balls.ts'
import type { Mm } from '#shared/units/length.ts'
import type { Sizes } from './module.ts'

/** How far a finished bearing comes out from its design: standard deviations [mm], above 0. */
export interface Spread {
  readonly gap: number
  readonly play: number
  /** How gap and play hang together, from 0 to below 1: a deeper outer groove and smaller balls widen both. */
  readonly correlation: number
  /** The play that unequal balls lose against equal ones of their mean [mm]. */
  readonly playLost: number
}

/** So true nothing is made [mm]: keeps a deviation above 0. */
const LEAST_SPREAD = 1e-6
const MOST_CORRELATION = 0.99

/**
 * To first order. The gap moves with the radius of the circle that is cut, and with Z balls that vary on their own by √Z times
 * the slope of one: that of all together over Z. The play, from side to side, moves by twice the radius of either raceway, and
 * with the balls as `playMoments` has it: by −2 times their mean and by what they differ.
 *
 * @param grooveError standard deviation of the radius of a finished raceway [mm]
 */
export function spreadOf(bearing: Bearing, { gapPerCut }: Pick<Sizes, 'gapPerCut'>, grooveError: Mm): Spread {
  const { ballScatter: scatter, input } = bearing.resolved
  const { count } = input.balls
  const perBall = 'gapPerBallDiameter' in bearing ? bearing.gapPerBallDiameter : 0
  const gap = Math.max(LEAST_SPREAD, Math.hypot(gapPerCut * grooveError, (perBall / Math.sqrt(count)) * scatter))
  const ofBalls = playMoments({ play: NONE, scatter, ballCount: count })
  const play = Math.max(LEAST_SPREAD, Math.hypot(2 * Math.SQRT2 * grooveError, ofBalls.standardDeviation))
  const together = 2 * gapPerCut * grooveError * grooveError - (2 * perBall * scatter * scatter) / count
  const correlation = Math.min(MOST_CORRELATION, Math.max(0, together / (gap * play)))
  return { gap, play, correlation, playLost: -ofBalls.mean }
}

const NONE = 0 as Mm

/** Steps of the gap, and how many deviations to either side of it are looked at. */
const STEPS = 24
const REACH = 4

/**
 * The chance that a bearing made with these tools runs: the last ball goes in, at a gap that is not known beforehand
 * (`thresholdOf`), the gap is at most `maxBallGap`, and the inner ring turns among balls of unequal size. Gap and play are taken
 * as normal; within 0.03 of exact trials (`chance.test.ts`).
 */
export function chanceAsMade(bearing: Bearing, spread: Spread): number {
  const play = 'radialInternalClearance' in bearing ? bearing.radialInternalClearance : undefined
  if (!('ballGap' in bearing)) return play === undefined ? 1 : playChance(spread, play)
  const { ballGap, resolved } = bearing
  const { minBallGap, maxBallGap, ballDiameter } = resolved
  const threshold = thresholdOf('assembly' in resolved ? resolved.assembly.assemblyGap : 0, ballDiameter)
  const [from, to] = [minBallGap, maxBallGap].map((end) =>
    Math.min(REACH, Math.max(-REACH, (end - ballGap) / spread.gap)),
  ) as [number, number]
  const width = (to - from) / STEPS
  let chance = 0
  for (let step = 0; step < STEPS; step++) {
    const z = from + (step + 1 / 2) * width
    const goesIn = normalCdf((ballGap + z * spread.gap - threshold.mean) / threshold.deviation)
    chance += normalDensity(z) * width * goesIn * (play === undefined ? 1 : playChance(spread, play, z))
  }
  return Math.min(1, chance)
}

/**
 * The chance that two rings turn round their balls.
 *
 * @param play as designed, of equal balls
 * @param z of the gap, in its deviations; none where that is not known
 */
export function playChance({ play: deviation, playLost, correlation }: Spread, play: number, z?: number): number {
  const mean = play - playLost
  if (z === undefined) return normalCdf(mean / deviation)
  return normalCdf((mean + correlation * deviation * z) / (deviation * Math.sqrt(1 - correlation * correlation)))
}
