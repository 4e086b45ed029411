import type { ClimateChange } from '#shared/bearing/seasonal-fit/climate-movement.ts'
import { type Distribution, type Moments, meanOf, varianceOf } from '#shared/statistics/distribution.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { Check } from './check.ts'
import type { CauseName, ContributorName } from './input.ts'
import { momentsTogether } from './lobes.ts'
import { innerOf, outerOf, type SeatSlopes, seatSlopes } from './seats.ts'

/*
 * The law of propagation of uncertainty (JCGM 100:2008, 5.1.2): gap and play as straight lines in what differs, by slopes
 * worked out on paper. Nothing is taken from trials.
 */

export const FIGURES = ['ballGap', 'radialInternalClearance'] as const
export type FigureName = (typeof FIGURES)[number]

/** What one contributor does to one figure. */
export interface Sensitivity {
  /**
   * mm of the figure per mm of the contributor; of `ballDiameter` per mm of one ball, on the mean over the ring; of
   * `climate` per % of moisture content, by least squares over its states.
   */
  readonly slope: number
  /** What its own mean moves the figure by [mm]. */
  readonly shift: number
  /** [mm²] */
  readonly variance: number
  /** Of the variance of the figure; 0 where nothing varies. */
  readonly share: number
}

export interface LinearLaw {
  readonly mean: Mm
  readonly standardDeviation: Mm
  readonly sensitivities: ReadonlyMap<CauseName, Sensitivity>
}

/** Slopes of a figure: one for each ball by diameter in their order round the ring, one for each other contributor. */
export interface Slopes {
  readonly eachBall: readonly number[]
  readonly of: Readonly<Record<Exclude<ContributorName, 'ballDiameter'>, number>>
  /** For a ring that grows as a whole, its groove and its land alike: by the radius. */
  readonly ofRing: { readonly outer: number; readonly inner: number }
}

export function linearLaw(check: Check, figure: FigureName): LinearLaw {
  const slopes = figure === 'ballGap' ? gapSlopes(check) : playSlopes(check)
  const nominal = figure === 'ballGap' ? check.bearing.ballGap : check.bearing.radialInternalClearance
  const weather = weatherEffects(check, slopes)
  const effects = [
    ...Array.from(check.differences, ([name, distribution]) => effectOf(name, distribution, slopes, check)),
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

function effectOf(name: ContributorName, distribution: Distribution, { eachBall, of }: Slopes, check: Check): Effect {
  if (name === 'ballDiameter') return effectOfBalls(distribution, eachBall)
  const slope = of[name]
  // Two grooves, each with lobes of its own, and either sign of an amplitude binds alike.
  if (name === 'outOfRound') {
    const { mean } = momentsTogether(distribution, 0)
    return { name, slope, shift: 2 * slope * mean, variance: slope * slope * lobesVariance(distribution, check) }
  }
  return { name, slope, shift: slope * meanOf(distribution), variance: slope * slope * varianceOf(distribution) }
}

/**
 * Of the lobes of both grooves, as they are in each state of the year: the variance that is left when the state is known.
 * What the states' means scatter is the weather's part (the law of total variance), so the two add up.
 */
function lobesVariance(distribution: Distribution, { climate }: Check): number {
  const variance = (given: number): number => momentsTogether(distribution, given).variance
  const states = climate?.states ?? []
  if (!states.some(hasLobes)) return 2 * variance(0)
  return (
    states.reduce((sum, { outerOutOfRound, innerOutOfRound }) => {
      return sum + variance(outerOutOfRound) + variance(innerOutOfRound)
    }, 0) / states.length
  )
}

const hasLobes = ({ outerOutOfRound, innerOutOfRound }: ClimateChange): boolean =>
  outerOutOfRound > 0 || innerOutOfRound > 0

/** What each state of the year does to a figure. Of the lobes it does what they are larger by than without the weather. */
function weatherEffects({ climate, differences }: Check, { of, ofRing }: Slopes): readonly number[] {
  const own: Distribution = differences.get('outOfRound') ?? { kind: 'uniform', mean: 0, halfWidth: 0 }
  const size = (given: number): number => momentsTogether(own, given).mean
  const round = of.outOfRound === 0 ? 0 : size(0)
  const larger = (given: number): number => (of.outOfRound === 0 ? 0 : size(given) - round)
  return (climate?.states ?? []).map(
    (state) =>
      ofRing.outer * state.outerGrooveBottomRadius +
      ofRing.inner * state.innerGrooveBottomRadius +
      of.ballLotMean * state.ballLotMean +
      of.outOfRound * (larger(state.outerOutOfRound) + larger(state.innerOutOfRound)),
  )
}

function weatherEffect(states: readonly ClimateChange[], effects: readonly number[]): Effect {
  const moistures = states.map(({ moistureContent }) => moistureContent)
  const [moisture, effect] = [momentsOf(moistures), momentsOf(effects)]
  const covariance = momentsOf(effects.map((each, state) => each * ((moistures[state] ?? 0) - moisture.mean))).mean
  return {
    name: 'climate',
    slope: moisture.variance > 0 ? covariance / moisture.variance : 0,
    shift: effect.mean,
    variance: effect.variance,
  }
}

/** Of values that are equally likely. */
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
 * Slopes of the ball gap at the design, all balls alike, whatever they sit on. Centres at R, α = asin(Dw / 2R), half the
 * row H = (Z − 1) α. A ball with n neighbours in the row (1 at either end, e = 1, else 2) has
 *
 *   ∂g/∂a = e sin H − n cos H tan α      ∂g/∂r = n cos H / cos α − e
 *
 * from g = 2 R sin H − Dw: where a centre stands turns the row by −tan α / R for each neighbour, a radius by 1 / (R cos α).
 * On the bottom, at exact closure: −(1 + sin(π/Z)) per ball diameter, and 2 Z sin(π/Z) per groove radius.
 */
export function gapSlopes({ bearing }: Check): Slopes {
  const { ballDiameter, input } = bearing.settled
  const { count } = input.balls
  const alpha = Math.asin(ballDiameter / (2 * bearing.pitchRadius))
  const [sine, cosine] = [Math.sin((count - 1) * alpha), Math.cos((count - 1) * alpha)]
  const { perSeatRadius, perDepth } = outerSlopes(bearing)
  const balls = Array.from({ length: count }, (_, ball) => {
    const ends = ball === 0 || ball === count - 1 ? 1 : 0
    const neighbours = 2 - ends
    return {
      perCentre: ends * sine - neighbours * cosine * Math.tan(alpha),
      perRadius: (neighbours * cosine) / Math.cos(alpha) - ends,
    }
  })
  const perCentre = balls.reduce((sum, ball) => sum + ball.perCentre, 0)
  const eachBall = balls.map((ball) => (ball.perRadius - ball.perCentre * perSeatRadius) / 2)
  return {
    eachBall,
    of: {
      ballLotMean: eachBall.reduce((sum, slope) => sum + slope, 0),
      outerGrooveBottomRadius: perCentre * perDepth,
      innerGrooveBottomRadius: 0,
      // Of second order: on the mean over the ring the path stays where it is.
      outOfRound: 0,
      finishFilm: -perCentre * perSeatRadius,
    },
    ofRing: { outer: perCentre, inner: 0 },
  }
}

/** Slopes of the play, 2 (where centres stand in the outer ring − in the inner ring), less twice the lobes of each. */
export function playSlopes({ bearing }: Check): Slopes {
  const { count } = bearing.settled.input.balls
  const [outer, inner] = [outerSlopes(bearing), seatSlopes(innerOf(bearing), bearing.settled.ballDiameter / 2)]
  const perSeatRadius = -2 * (outer.perSeatRadius + inner.perSeatRadius)
  return {
    eachBall: Array.from({ length: count }, () => perSeatRadius / 2 / count),
    of: {
      ballLotMean: perSeatRadius / 2,
      outerGrooveBottomRadius: 2 * outer.perDepth,
      innerGrooveBottomRadius: -2 * inner.perDepth,
      outOfRound: -2,
      finishFilm: perSeatRadius,
    },
    ofRing: { outer: 2, inner: -2 },
  }
}

const outerSlopes = (bearing: Check['bearing']): SeatSlopes =>
  seatSlopes(outerOf(bearing), bearing.settled.ballDiameter / 2)
