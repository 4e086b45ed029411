import type { Refused } from '#shared/bearing/refusal.ts'
import { bindsIn, type Fit, fitOf, type Trouble, troublesOf } from '#shared/movement/fit.ts'
import { type MovingBearing, movingBearing } from '#shared/movement/moving-bearing.ts'
import type { SeasonRefusal } from '#shared/movement/refusal.ts'
import type { Snapshot } from '#shared/movement/snapshot.ts'
import type { WoodState } from '#shared/movement/states.ts'
import { ok, type Result } from '#shared/result.ts'
import { type Advice, adviceFor } from './advice.ts'
import { type Chances, chancesOf, type Needs } from './chances.ts'
import { SEASONAL_FIT, type SeasonalFitInput } from './input.ts'
import { type RunningBand, runningBand } from './running-band.ts'
import { openJoints, type SegmentsOfYear, segmentsOfYear } from './segments.ts'

/** One time of the year: the air, the wood, the shape that the bearing has come to, and what it does. */
export interface FitAtState {
  readonly state: WoodState
  readonly snapshot: Snapshot
  readonly fit: Fit
  readonly troubles: readonly Trouble[]
}

/** A bearing through its year, without what to do about it. */
export interface YearOf {
  readonly moving: MovingBearing
  /** Today first. */
  readonly year: readonly FitAtState[]
  readonly chances: Chances
  readonly needs: Needs
}

export interface SeasonalFit extends Pick<MovingBearing, 'input' | 'bearing'> {
  readonly today: FitAtState
  readonly states: readonly FitAtState[]
  readonly chances: Chances
  /** Absent where it does not even run today. */
  readonly band?: RunningBand
  readonly advice: Advice
  /** Only of parts that are glued up of segments. */
  readonly segments?: SegmentsOfYear
  readonly openJoints: SegmentsOfYear['worst']
}

/**
 * Will the bearing that runs today run all year? What each part becomes at each moisture, and with it gap, play and room; the
 * chance that it runs, and what to change.
 *
 * @param input humidities from 0 to 100 %, moisture contents from 0 up; the bearing round and right today
 * @returns the answer, or every fault of the input
 */
export function seasonalFit(input: SeasonalFitInput): Result<SeasonalFit, Refused<SeasonRefusal>> {
  const through = throughYear(input)
  if (!through.ok) return through
  const { moving, year, chances } = through.value
  const [today, ...states] = year
  if (today === undefined) throw new RangeError('a year must have a today')
  const { bearing, season } = moving
  const segments = segmentsOfYear(input, year, (changed) => {
    const other = movingBearing(changed, SEASONAL_FIT)
    return other.ok ? statesOf(other.value) : []
  })
  const band = runningBand(season.today, (state) => stopsIn(moving, state))
  return ok({
    input,
    bearing,
    today,
    states,
    chances,
    ...(band === undefined ? {} : { band }),
    ...(segments === undefined ? {} : { segments }),
    openJoints: openJoints(year),
    advice: adviceFor(through.value, throughYear, sketchedYear),
  })
}

/** A bearing through its year, or every fault of the input. */
export function throughYear(input: SeasonalFitInput): Result<YearOf, Refused<SeasonRefusal>> {
  const moving = movingBearing(input, SEASONAL_FIT)
  if (!moving.ok) return moving
  const year = statesOf(moving.value)
  return ok({ moving: moving.value, year, ...chancesOf(moving.value, year) })
}

/** Chances from enough bearings to choose by, without the exact gap. */
export function sketchedYear(input: SeasonalFitInput): Result<Omit<YearOf, 'year'>, Refused<SeasonRefusal>> {
  const moving = movingBearing(input, SEASONAL_FIT)
  if (!moving.ok) return moving
  const { season } = moving.value
  const year = [season.today, ...season.states].map((state) => ({ state }))
  return ok({ moving: moving.value, ...chancesOf(moving.value, year, SKETCHED) })
}
const SKETCHED = 64

const statesOf = (moving: MovingBearing): readonly FitAtState[] =>
  [moving.season.today, ...moving.season.states].map((state) => fitIn(moving, state))

function fitIn({ snapshotIn, bearing, band }: MovingBearing, state: WoodState): FitAtState {
  const snapshot = snapshotIn(state)
  const fit = fitOf(snapshot, bearing.resolved.input.balls.count)
  return { state, snapshot, fit, troubles: troublesOf(fit, band) }
}

const stopsIn = ({ snapshotIn, bearing, band }: MovingBearing, state: WoodState): readonly Trouble[] =>
  bindsIn(snapshotIn(state), bearing.resolved.input.balls.count, band)
