import type { Question } from '#shared/bearing/arrangements.ts'
import type { Refused } from '#shared/bearing/refusal.ts'
import { type Ellipse, longer, shorter } from '#shared/geometry/ellipse.ts'
import { movingBearing } from '#shared/movement/moving-bearing.ts'
import { largestRadius, leastRadius } from '#shared/movement/moving-wood.ts'
import type { SeasonRefusal } from '#shared/movement/refusal.ts'
import type { Snapshot } from '#shared/movement/snapshot.ts'
import type { Season, WoodState } from '#shared/movement/states.ts'
import type { Climate } from '#shared/movement/year.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import type { SeasonalFitInput } from '#shared/questions/season/input.ts'
import { ok, type Result } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'

/** The change of the bearing since the day it was made: all of one cause, so all of it together. */
export interface ClimateChange {
  readonly moistureContent: number
  /** Change of the mean radius of the groove's bottom. */
  readonly outerGrooveBottomRadius: Mm
  readonly innerGrooveBottomRadius: Mm
  /** Amplitude of the two-lobed error: half the difference of the half axes. */
  readonly outerOutOfRound: Mm
  readonly innerOutOfRound: Mm
  /** Change of the mean diameter of all balls alike. */
  readonly ballLotMean: Mm
}

/** The distribution of what the weather does to a bearing, for whoever draws chance. */
export interface ClimateMovement {
  /** All equally likely. Draw one and take all its changes together: they have one cause. */
  readonly states: readonly ClimateChange[]
  /** The farthest that it goes: the driest, the dampest and, where it lies between, the day of making, when all is round; or the months. */
  readonly ends: readonly ClimateChange[]
}

const WEATHER = { name: 'tolerance-check with climate', serves: ['radial'] } as const satisfies Question

/** A range of moisture is calculated at the ends of so many equal parts. */
const PARTS = 64
/** Between them changes are straight lines, drawn at so many places each: a chance is then good to 1/4096. */
const PLACES = 32

/** From a range the states are evenly spread over it (moisture uniform), from a table its months. */
export function climateMovement(input: SeasonalFitInput): Result<ClimateMovement, Refused<SeasonRefusal>> {
  const moving = movingBearing(input, WEATHER)
  if (!moving.ok) return moving
  const { season, snapshotIn } = moving.value
  const made = snapshotIn(season.today)
  const change = (state: WoodState): ClimateChange => changeOf(state.moistureContent, made, snapshotIn(state))
  const states = season.states.map(change)
  return ok({
    states: input.climate.kind === 'months' ? states : spread(season.states, change),
    ends: endStates(input.climate, season).map(change),
  })
}

function spread([driest, dampest]: readonly WoodState[], change: (state: WoodState) => ClimateChange): ClimateChange[] {
  if (driest === undefined || dampest === undefined) return []
  if (driest.moistureContent === dampest.moistureContent && driest.relativeHumidity === dampest.relativeHumidity)
    return [change(driest)]
  const between = (low: number, high: number, part: number): number => low + part * (high - low)
  const humidities = [driest.relativeHumidity ?? 100, dampest.relativeHumidity ?? 100] as const
  const ends = Array.from({ length: PARTS + 1 }, (_, end) =>
    change({
      name: '',
      temperature: between(driest.temperature, dampest.temperature, end / PARTS),
      relativeHumidity: between(...humidities, end / PARTS),
      moistureContent: between(driest.moistureContent, dampest.moistureContent, end / PARTS),
    }),
  )
  return Array.from({ length: PARTS * PLACES }, (_, place) => {
    const part = Math.floor(place / PLACES)
    const [low, high] = [itemAt(ends, part), itemAt(ends, part + 1)]
    const at = (name: keyof ClimateChange) => mm(between(low[name], high[name], ((place % PLACES) + 0.5) / PLACES))
    return {
      moistureContent: at('moistureContent'),
      outerGrooveBottomRadius: at('outerGrooveBottomRadius'),
      innerGrooveBottomRadius: at('innerGrooveBottomRadius'),
      outerOutOfRound: at('outerOutOfRound'),
      innerOutOfRound: at('innerOutOfRound'),
      ballLotMean: at('ballLotMean'),
    }
  })
}

function endStates(climate: Climate, { today, states }: Season): readonly WoodState[] {
  const moistures = states.map(({ moistureContent }) => moistureContent)
  const isBetween = today.moistureContent > Math.min(...moistures) && today.moistureContent < Math.max(...moistures)
  return climate.kind !== 'months' && isBetween ? [...states, today] : states
}

const NOTHING: Ellipse = { along: mm(0), across: mm(0) }
const meanRadius = (ellipse: Ellipse): number => (longer(ellipse) + shorter(ellipse)) / 2

function changeOf(moistureContent: number, made: Snapshot, moved: Snapshot): ClimateChange {
  const [outer, inner] = [moved.raceways.outerRing ?? NOTHING, moved.raceways.innerRing ?? NOTHING]
  return {
    moistureContent,
    outerGrooveBottomRadius: mm(meanRadius(outer) - meanRadius(made.raceways.outerRing ?? NOTHING)),
    innerGrooveBottomRadius: mm(meanRadius(inner) - meanRadius(made.raceways.innerRing ?? NOTHING)),
    outerOutOfRound: mm(meanRadius(outer) - leastRadius(outer)),
    innerOutOfRound: mm(largestRadius(inner) - meanRadius(inner)),
    ballLotMean: mm(moved.ball.mean - made.ball.mean),
  }
}
