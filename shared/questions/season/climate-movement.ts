import type { Refused } from '#shared/bearing/refusal.ts'
import { type Ellipse, longer, shorter } from '#shared/geometry/ellipse.ts'
import { ok, type Result } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { Climate, SeasonalFitInput } from './input.ts'
import type { SeasonRefusal } from './refusal.ts'
import { movingBearing } from './seasonal-fit.ts'
import type { Shape } from './shape.ts'
import type { Season, WoodState } from './states.ts'

/** What the weather has done to the bearing since the day it was made: all of one cause, so all of it together. */
export interface ClimateChange {
  readonly moistureContent: number
  /** Of the mean radius of the groove's bottom. */
  readonly outerGrooveBottomRadius: Mm
  readonly innerGrooveBottomRadius: Mm
  /** Amplitude of the two-lobed error: half the difference of the half axes. */
  readonly outerOutOfRound: Mm
  readonly innerOutOfRound: Mm
  /** Of the mean diameter of all balls alike. */
  readonly ballLotMean: Mm
}

/** The distribution of what the weather does to a bearing, for whoever draws chance. */
export interface ClimateMovement {
  /** All equally likely. Draw one and take all its changes together: they have one cause. */
  readonly states: readonly ClimateChange[]
  /** The farthest that it goes: the driest, the dampest and, where it lies between, the day of making, when all is round; or the months. */
  readonly ends: readonly ClimateChange[]
}

/** How finely a range of moisture is divided: its parts are equally likely. */
const PARTS = 64

/** From a range the states are the middles of equal parts of it (moisture uniform), from a table its months. */
export function climateMovement(input: SeasonalFitInput): Result<ClimateMovement, Refused<SeasonRefusal>> {
  const moving = movingBearing(input)
  if (!moving.ok) return moving
  const { season, shapeIn } = moving.value
  const made = shapeIn(season.today)
  const change = (state: WoodState): ClimateChange => changeOf(state.moistureContent, made, shapeIn(state))
  return ok({
    states: drawnStates(input.climate, season.states).map(change),
    ends: endStates(input.climate, season).map(change),
  })
}

function drawnStates(climate: Climate, states: readonly WoodState[]): readonly WoodState[] {
  const [driest, dampest] = states
  if (climate.kind === 'months' || driest === undefined || dampest === undefined) return states
  const between = (low: number, high: number, part: number): number => low + ((part + 0.5) / PARTS) * (high - low)
  const humidities = [driest.relativeHumidity ?? 100, dampest.relativeHumidity ?? 100] as const
  return Array.from({ length: PARTS }, (_, part) => ({
    name: '',
    temperature: between(driest.temperature, dampest.temperature, part),
    relativeHumidity: between(...humidities, part),
    moistureContent: between(driest.moistureContent, dampest.moistureContent, part),
  }))
}

function endStates(climate: Climate, { today, states }: Season): readonly WoodState[] {
  const moistures = states.map(({ moistureContent }) => moistureContent)
  const isBetween = today.moistureContent > Math.min(...moistures) && today.moistureContent < Math.max(...moistures)
  return climate.kind !== 'months' && isBetween ? [...states, today] : states
}

const meanRadius = ({ along, across }: Ellipse): number => (along + across) / 2
const lobes = (ellipse: Ellipse): Mm => mm((longer(ellipse) - shorter(ellipse)) / 2)

function changeOf(moistureContent: number, made: Shape, shape: Shape): ClimateChange {
  return {
    moistureContent,
    outerGrooveBottomRadius: mm(meanRadius(shape.outerBottom) - meanRadius(made.outerBottom)),
    innerGrooveBottomRadius: mm(meanRadius(shape.innerBottom) - meanRadius(made.innerBottom)),
    outerOutOfRound: lobes(shape.outerBottom),
    innerOutOfRound: lobes(shape.innerBottom),
    ballLotMean: mm(shape.ball.mean - made.ball.mean),
  }
}
