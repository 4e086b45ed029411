import type { RadialBearing } from '#shared/bearing/arrangements.ts'
import { echoedBearingFor } from '#shared/bearing/arrangements.ts'
import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import type { Refused } from '#shared/bearing/refusal.ts'
import { MOVEMENT } from '#shared/data/wood-movement.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { type BuildIn, buildIn } from './build-in.ts'
import { type Fit, fitOf, type Trouble, troublesOf, whatBinds } from './fit.ts'
import { SEASONAL_FIT, type SeasonalFitInput, speciesOf, type Woods, type Year } from './input.ts'
import type { SeasonRefusal } from './refusal.ts'
import { type RunningBand, runningBand } from './running-band.ts'
import { type MadeSizes, madeSizes, type Shape, shapeAt } from './shape.ts'
import { type Season, seasonOf, type WoodState } from './states.ts'

/** One time of the year: the air, the wood, the shape that the bearing has come to, and what it does. */
export interface FitAtState {
  readonly state: WoodState
  readonly shape: Shape
  readonly fit: Fit
  readonly troubles: readonly Trouble[]
}

export interface SeasonalFit {
  readonly input: SeasonalFitInput
  readonly bearing: RadialBearing
  readonly today: FitAtState
  readonly states: readonly FitAtState[]
  /** Absent where it does not even run today. */
  readonly band?: RunningBand
  readonly buildIn: BuildIn
}

/** All that is needed to say what the bearing becomes in any state: checked, so that nothing in it is unknown. */
export interface MovingBearing {
  readonly bearing: RadialBearing
  readonly season: Season
  readonly made: MadeSizes
  readonly shapeIn: (state: WoodState) => Shape
}

/**
 * Will the bearing that runs today run all year? What each ring becomes at each moisture, and with it gap, play and lands.
 *
 * @param input humidities from 0 to 100 %, moisture contents from 0 up; the bearing round and right today
 * @returns the fit in each state, the band of humidity in which it runs, and what to build in today; or every reason at
 *   once why that cannot be said
 */
export function seasonalFit(input: SeasonalFitInput): Result<SeasonalFit, Refused<SeasonRefusal>> {
  const moving = movingBearing(input)
  if (!moving.ok) return moving
  const { bearing, season, made, shapeIn } = moving.value
  const { resolved } = bearing
  const at = (state: WoodState): FitAtState => {
    const shape = shapeIn(state)
    const fit = fitOf(shape, made)
    return { state, shape, fit, troubles: troublesOf(fit, resolved) }
  }
  const stops = (state: WoodState): readonly Trouble[] => whatBinds(fitOf(shapeIn(state), made), resolved)
  const band = runningBand(season.today, season.saturation, stops)
  const yearOf = (changed: MadeSizes): readonly Shape[] =>
    [season.today, ...season.states].map((state) => shapeAt(changed, input.woods, season.today, state))
  const asked = { ballGap: resolved.ballGap, play: resolved.radialInternalClearance }
  return ok({
    input,
    bearing,
    today: at(season.today),
    states: season.states.map(at),
    ...(band === undefined ? {} : { band }),
    buildIn: buildIn(made, yearOf, resolved, asked, resolved.input.units),
  })
}

/** The bearing as made today, and what it becomes in any state; or every reason at once why that cannot be said. */
export function movingBearing(input: SeasonalFitInput): Result<MovingBearing, Refused<SeasonRefusal>> {
  const { design, woods, climate, today } = input
  const designed = echoedBearingFor(SEASONAL_FIT, design)
  const unknown = [...unknownMovements(woods), ...ballsWithoutWood(input)]
  const season = seasonOf(climate, today, woods)
  if (!designed.ok || !season.ok || unknown.length > 0)
    return fail({
      ofDesign: designed.ok ? [] : designed.error,
      ofQuestion: [...unknown, ...(season.ok ? [] : season.error)],
    })
  const made = madeSizes(designed.value)
  const shapeIn = (state: WoodState): Shape => shapeAt(made, woods, season.value.today, state)
  return ok({ bearing: designed.value, season: season.value, made, shapeIn })
}

/** What a year and woods lack by themselves, whatever the bearing. */
export function yearFaults({ woods, climate, today }: Year): readonly SeasonRefusal[] {
  const season = seasonOf(climate, today, woods)
  return [...unknownMovements(woods), ...(season.ok ? [] : season.error)]
}

/** Whether a bearing runs all year, and after how many states of the year that was known. */
export interface YearRun {
  readonly runs: boolean
  readonly statesLookedAt: number
}

/**
 * Whether nothing stops the bearing, today or in any state of the year: balls may knock. Not where that is not known. The
 * states farthest from today's moisture are looked at first: most bearings that stop do so in one of them.
 */
export function yearRun(input: SeasonalFitInput): YearRun {
  const moving = movingBearing(input)
  if (!moving.ok) return { runs: false, statesLookedAt: 0 }
  const { bearing, season, made, shapeIn } = moving.value
  const { today } = season
  const moved = ({ moistureContent }: WoodState): number => Math.abs(moistureContent - today.moistureContent)
  const states = [...season.states.toSorted((one, other) => moved(other) - moved(one)), today]
  const stopsAt = states.findIndex((state) => whatBinds(fitOf(shapeIn(state), made), bearing.resolved).length > 0)
  return stopsAt < 0 ? { runs: true, statesLookedAt: states.length } : { runs: false, statesLookedAt: stopsAt + 1 }
}

const unknownMovements = (woods: Woods): readonly SeasonRefusal[] =>
  speciesOf(woods).flatMap(([species, path]) =>
    MOVEMENT[species] === undefined ? [{ code: 'movement-unknown', path, species }] : [],
  )

function ballsWithoutWood({ design, woods }: SeasonalFitInput): readonly SeasonRefusal[] {
  const isWood = (design.balls.material ?? BALL_MATERIAL) === 'wood'
  return isWood && woods.balls === undefined ? [{ code: 'balls-without-wood', path: '/woods/balls' }] : []
}
