import { itemAt } from '#shared/numbers/item-at.ts'
import { type Distribution, type Moments, meanOf, varianceOf } from '#shared/statistics/distribution.ts'
import { unevenLoss } from '#shared/statistics/play-of-random-balls.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { COPIES, type FigureName, type Slopes } from './check-model.ts'
import type { Check } from './checked.ts'
import { type ClimateChange, isOutOfRound } from './climate-movement.ts'
import type { CauseName, ContributorName } from './input.ts'
import { momentsTogether } from './lobes.ts'
import { modelOf } from './model-of.ts'

/*
 * The law of propagation of uncertainty (JCGM 100:2008, 5.1.2): gap and play as straight lines in what differs, by slopes
 * worked out on paper. Nothing is taken from trials.
 */

/** The effect of one contributor on one figure. */
export interface Sensitivity {
  /**
   * mm of the figure per mm of the contributor; of `ballDiameter` per mm of one ball, on the mean over the ring; of
   * `climate` per % of moisture content, by least squares over its states.
   */
  readonly slope: number
  /** Shift of the figure by the contributor's mean [mm]. */
  readonly shift: number
  /** [mm²] */
  readonly variance: number
  /** Share of the figure's variance; 0 if nothing varies. */
  readonly share: number
}

export interface LinearLaw {
  readonly mean: Mm
  readonly standardDeviation: Mm
  readonly sensitivities: ReadonlyMap<CauseName, Sensitivity>
}

export function linearLaw(check: Check, figure: FigureName): LinearLaw {
  const { slopes: slopesOf, nominal: nominals } = modelOf(check)
  const lobes = lobesOf(check)
  const [slopes, nominal] = [amongBalls(slopesOf[figure], check, lobes), nominals[figure]]
  const weather = weatherEffects(check, slopes, lobes)
  const effects = [
    ...Array.from(check.differences, ([name, distribution]) =>
      name === 'outOfRound' ? effectOfLobes(slopes.of[name], lobes, check) : effectOf(name, distribution, slopes),
    ),
    ...(check.climate === undefined ? [] : [weatherEffect(check.climate.states, weather)]),
  ]
  const variance = effects.reduce<number>((sum, effect) => sum + effect.variance, 0)
  return {
    mean: mm(effects.reduce<number>((sum, { shift }) => sum + shift, nominal)),
    standardDeviation: mm(Math.sqrt(variance)),
    sensitivities: new Map(
      effects.map(({ name, ...effect }) => [name, { ...effect, share: variance > 0 ? effect.variance / variance : 0 }]),
    ),
  }
}

interface Effect extends Omit<Sensitivity, 'share'> {
  readonly name: CauseName
}

function effectOf(
  name: Exclude<ContributorName, 'outOfRound'>,
  distribution: Distribution,
  { eachBall, of, perUnevenness }: Slopes,
): Effect {
  if (name === 'ballDiameter')
    return unevenEffect(effectOfBalls(distribution, eachBall), distribution, perUnevenness, eachBall.length)
  const slope = of[name]
  const copies = COPIES[name]
  return {
    name,
    slope,
    shift: copies * slope * meanOf(distribution),
    variance: copies * slope * slope * varianceOf(distribution),
  }
}

/** Mean and variance of the lobes of a groove together with those that the weather gives it. */
type Lobes = (other: number) => Moments

/** Each takes an integral and is needed twice, for its variance and for its mean: so it is kept. */
function lobesOf({ differences }: Check): Lobes {
  const own: Distribution = differences.get('outOfRound') ?? { kind: 'uniform', mean: 0, halfWidth: 0 }
  const known = new Map<number, Moments>()
  return (other) => {
    const moments = known.get(other) ?? momentsTogether(own, other)
    known.set(other, moments)
    return moments
  }
}

/**
 * Lobes among unequal balls do not take all that they take among equal ones: the ring moves aside for both at once. To the
 * balls lobes C cos 2ψ are a scatter of C / √2, and scatters add up by their squares.
 */
function amongBalls(slopes: Slopes, { differences, climate }: Check, lobes: Lobes): Slopes {
  const balls = differences.get('ballDiameter')
  const { outOfRound } = slopes.of
  if (balls === undefined || slopes.perUnevenness === 0) return slopes
  const states = climate?.states ?? [{ outerOutOfRound: 0, innerOutOfRound: 0 }]
  const squares = states.map(({ outerOutOfRound, innerOutOfRound }) => {
    const [outer, inner] = [lobes(outerOutOfRound), lobes(innerOutOfRound)]
    return outer.variance + inner.variance + (outer.mean + inner.mean) * (outer.mean + inner.mean)
  })
  const ofLobes = meanOf({ kind: 'discrete', values: squares }) / 2
  if (!(ofLobes > 0)) return slopes
  const scatter = slopes.perUnevenness * sampleDeviation(balls)
  const share = (Math.sqrt(scatter * scatter + ofLobes) - scatter) / Math.sqrt(ofLobes)
  return { ...slopes, of: { ...slopes.of, outOfRound: outOfRound * share } }
}

/** Two grooves, each with lobes of its own, and either sign of an amplitude binds alike. */
function effectOfLobes(slope: number, lobes: Lobes, check: Check): Effect {
  const name = 'outOfRound'
  if (slope === 0) return { name, slope, shift: 0, variance: 0 }
  return { name, slope, shift: 2 * slope * lobes(0).mean, variance: slope * slope * lobesVariance(lobes, check) }
}

/**
 * The variance from the lobes of both grooves in each state of the year: the part that is left when the state is known.
 * The scatter of the states' means is the weather's part (the law of total variance), so the two add up.
 */
function lobesVariance(lobes: Lobes, { climate }: Check): number {
  const variance = (other: number): number => lobes(other).variance
  const states = climate?.states ?? []
  if (!states.some(isOutOfRound)) return 2 * variance(0)
  return (
    states.reduce((sum, { outerOutOfRound, innerOutOfRound }) => {
      return sum + variance(outerOutOfRound) + variance(innerOutOfRound)
    }, 0) / states.length
  )
}

/** The mean of the play without what lobes and unequal balls take of it. */
export function roundPlayMean(check: Check): number {
  const { slopes, nominal } = modelOf(check)
  const { play } = slopes
  const ofOne = { ...play, perUnevenness: 0 }
  const shifts = Array.from(check.differences, ([name, distribution]) =>
    name === 'outOfRound' ? 0 : effectOf(name, distribution, ofOne).shift,
  )
  const weather = movedByWeather(check, 'play')
  if (weather.length > 0) shifts.push(momentsOf(weather).mean)
  return shifts.reduce((sum, shift) => sum + shift, nominal.play)
}

/** The effect of each state of the year on a figure, without that of lobes; empty without a year. */
export function movedByWeather(check: Check, figure: FigureName): readonly number[] {
  const slopes = modelOf(check).slopes[figure]
  return weatherEffects(check, { ...slopes, of: { ...slopes.of, outOfRound: 0 } }, lobesOf(check))
}

/** The effect of each state of the year on a figure. Lobes count by how much the weather enlarges them. */
function weatherEffects({ climate }: Check, { of, ofRing }: Slopes, lobes: Lobes): readonly number[] {
  const larger = (other: number): number => (of.outOfRound === 0 ? 0 : lobes(other).mean - lobes(0).mean)
  return (climate?.states ?? []).map(
    (state) =>
      ofRing.outer * state.outerGrooveBottomRadius +
      ofRing.inner * state.innerGrooveBottomRadius +
      of.ballLotMean * state.ballLotMean +
      COPIES.grooveCircleRadius * of.grooveCircleRadius * state.grooveCircleRadius +
      of.outOfRound * (larger(state.outerOutOfRound) + larger(state.innerOutOfRound)),
  )
}

function weatherEffect(states: readonly ClimateChange[], effects: readonly number[]): Effect {
  const moistures = states.map(({ moistureContent }) => moistureContent)
  const [moisture, effect] = [momentsOf(moistures), momentsOf(effects)]
  const covariance = momentsOf(effects.map((each, state) => each * (itemAt(moistures, state) - moisture.mean))).mean
  return {
    name: 'climate',
    slope: moisture.variance > 0 ? covariance / moisture.variance : 0,
    shift: effect.mean,
    variance: effect.variance,
  }
}

/** Moments of equally likely values. */
function momentsOf(values: readonly number[]): Moments {
  const any: Distribution = { kind: 'discrete', values }
  return { mean: meanOf(any), variance: varianceOf(any) }
}

/**
 * Balls on their own: the squares of their slopes add up. Balls of a list, none twice, hang together: with N on the list
 * the variance is σ² N / (N − 1) (Σ c² − (Σ c)² / N), 0 where all of it goes in and all slopes c are the same.
 */
function effectOfBalls(distribution: Distribution, slopes: readonly number[]): Effect {
  const sum = slopes.reduce((total, slope) => total + slope, 0)
  const squares = slopes.reduce((total, slope) => total + slope * slope, 0)
  const listed = distribution.kind === 'discrete' ? distribution.values.length : 0
  const kept = listed > 1 ? Math.max(0, squares - (sum * sum) / listed) * (listed / (listed - 1)) : squares
  return {
    name: 'ballDiameter',
    slope: sum / slopes.length,
    shift: sum * meanOf(distribution),
    variance: kept * varianceOf(distribution),
  }
}

/**
 * With what unequal balls take of the play beside their mean, as for normal balls: those of other distributions, and of a
 * list, differ from it by little.
 */
function unevenEffect(effect: Effect, balls: Distribution, perUnevenness: number, ballCount: number): Effect {
  if (perUnevenness === 0) return effect
  const scatter = perUnevenness * sampleDeviation(balls)
  const { mean, variance } = unevenLoss(ballCount)
  return { ...effect, shift: effect.shift - scatter * mean, variance: effect.variance + scatter * scatter * variance }
}

/** Standard deviation of balls drawn; a list's ball is never drawn twice, so they differ by more than the list does. */
function sampleDeviation(balls: Distribution): number {
  const listed = balls.kind === 'discrete' ? balls.values.length : 0
  return Math.sqrt(varianceOf(balls) * (listed > 1 ? listed / (listed - 1) : 1))
}
