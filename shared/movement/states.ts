import { USUAL_TEMPERATURE } from '#shared/bearing/whole-year.ts'
import type { SpeciesId } from '#shared/data/species.ts'
import { MOVEMENT } from '#shared/data/wood-movement.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import {
  type Air,
  equilibriumMoisture,
  knownTemperature,
  relativeHumidityFor,
  TEMPERATURES,
} from '#shared/wood/equilibrium-moisture.ts'
import { FIBRE_SATURATION } from '#shared/wood/moisture-movement.ts'
import type { SeasonRefusal } from './refusal.ts'
import { type Climate, type Range, speciesOf, type Today, type Woods } from './year.ts'

/** The air and the wood at one time, the wood at rest with the air. */
export interface WoodState {
  readonly name: string
  /** [degrees C] */
  readonly temperature: number
  /** [%]; absent where even saturated air would not give so much moisture. */
  readonly relativeHumidity?: number
  /** Moisture over dry mass [%]. */
  readonly moistureContent: number
}

export interface Season {
  readonly today: WoodState
  /** The ends of the ranges, the driest first, or the months. */
  readonly states: readonly WoodState[]
}

/** From a hard frost in an unheated workshop (common practice, no source) to the hottest that the moisture of wood is known for [degrees C]. */
const SERVED_TEMPERATURES = { least: -30, most: TEMPERATURES.most } as const

/**
 * Today and the states of the year, each with the moisture content that the wood comes to. From ranges of the air these
 * are the driest corner (least humidity, highest temperature) and the dampest. Air may be as damp as it likes: above fibre
 * saturation wood keeps its size. A stated moisture content may not, for it would be that of green wood.
 *
 * @returns all faults at once
 */
export function seasonOf(climate: Climate, today: Today, woods: Woods): Result<Season, readonly SeasonRefusal[]> {
  const faults = [
    ...rangesOf(climate).flatMap(([path, range]) => reversed(path, range)),
    ...airsOf(climate, today).flatMap(([path, air]) => outside(path, air)),
  ]
  if (faults.length > 0) return fail(faults)
  const named = statesOf(climate)
  const now: Placed = {
    path: '/climate/today',
    state: today.kind === 'air' ? inAir('today', today.air) : atMoisture('today', today.moistureContent),
  }
  const stated = [...(today.kind === 'moisture' ? [now] : []), ...(climate.kind === 'moisture' ? named : [])]
  const wet = stated.flatMap(({ path, state }) => tooWet(path, state, saturations(woods)))
  return wet.length > 0 ? fail(wet) : ok({ today: now.state, states: named.map(({ state }) => state) })
}

interface Placed {
  readonly path: string
  readonly state: WoodState
}

function statesOf(climate: Climate): readonly Placed[] {
  switch (climate.kind) {
    case 'air': {
      const { temperature, relativeHumidity } = climate
      const driest = { temperature: temperature.max, relativeHumidity: relativeHumidity.min }
      const dampest = { temperature: temperature.min, relativeHumidity: relativeHumidity.max }
      return [
        { path: '/climate/relativeHumidity/min', state: inAir('driest', driest) },
        { path: '/climate/relativeHumidity/max', state: inAir('dampest', dampest) },
      ]
    }
    case 'moisture':
      return [
        { path: '/climate/moistureContent/min', state: atMoisture('driest', climate.moistureContent.min) },
        { path: '/climate/moistureContent/max', state: atMoisture('dampest', climate.moistureContent.max) },
      ]
    case 'months':
      return climate.months.map(({ name, ...air }, i) => ({ path: `/climate/months/${i}`, state: inAir(name, air) }))
    default:
      return climate satisfies never
  }
}

/** The state of wood at rest with such air; colder than the equation reaches, as at the coldest that it does. */
export const inAir = (name: string, { temperature, relativeHumidity }: Air): WoodState => ({
  name,
  temperature,
  relativeHumidity,
  moistureContent: equilibriumMoisture({ temperature: knownTemperature(temperature), relativeHumidity }),
})

/** Whether the moisture is that of a known temperature, and not of the nearest. */
export const isBeyondKnown = ({ temperature }: WoodState): boolean => temperature !== knownTemperature(temperature)

function atMoisture(name: string, moistureContent: number): WoodState {
  const relativeHumidity = relativeHumidityFor(moistureContent, USUAL_TEMPERATURE)
  const state = { name, temperature: USUAL_TEMPERATURE, moistureContent }
  return relativeHumidity === undefined ? state : { ...state, relativeHumidity }
}

function rangesOf(climate: Climate): readonly (readonly [path: string, range: Range])[] {
  if (climate.kind === 'months') return []
  if (climate.kind === 'moisture') return [['/climate/moistureContent', climate.moistureContent]]
  return [
    ['/climate/temperature', climate.temperature],
    ['/climate/relativeHumidity', climate.relativeHumidity],
  ]
}

const reversed = (path: string, { min, max }: Range): readonly SeasonRefusal[] =>
  min <= max ? [] : [{ code: 'range-reversed', path, low: min, high: max }]

function airsOf(climate: Climate, today: Today): readonly (readonly [path: string, temperature: number])[] {
  return [
    ...(today.kind === 'air' ? [['/climate/today/temperature', today.air.temperature] as const] : []),
    ...(climate.kind === 'air'
      ? [
          ['/climate/temperature/min', climate.temperature.min] as const,
          ['/climate/temperature/max', climate.temperature.max] as const,
        ]
      : []),
    ...(climate.kind === 'months'
      ? climate.months.map(({ temperature }, i) => [`/climate/months/${i}/temperature`, temperature] as const)
      : []),
  ]
}

function outside(path: string, given: number): readonly SeasonRefusal[] {
  const { least, most } = SERVED_TEMPERATURES
  return given >= least && given <= most ? [] : [{ code: 'temperature-outside', path, given, least, most }]
}

/** The moisture content at which each wood of the bearing stops moving, the lowest first. */
function saturations(woods: Woods): readonly { readonly species: SpeciesId; readonly limit: number }[] {
  return speciesOf(woods)
    .map(([species]) => ({ species, limit: MOVEMENT[species]?.saturation ?? FIBRE_SATURATION }))
    .sort((one, other) => one.limit - other.limit)
}

function tooWet(
  path: string,
  { moistureContent: moisture }: WoodState,
  limits: ReturnType<typeof saturations>,
): readonly SeasonRefusal[] {
  const [lowest] = limits
  const saturation = Math.min(FIBRE_SATURATION, lowest?.limit ?? FIBRE_SATURATION)
  if (moisture <= saturation) return []
  const code = 'above-fibre-saturation'
  return lowest === undefined || lowest.limit === FIBRE_SATURATION
    ? [{ code, path, moisture, saturation }]
    : [{ code, path, moisture, saturation, species: lowest.species }]
}
