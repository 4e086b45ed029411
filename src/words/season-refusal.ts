import { SPECIES, type SpeciesId } from '#shared/data/species.ts'
import type { SeasonRefusal } from '#shared/questions/season/refusal.ts'
import { inScale, type Scale } from '#shared/units/temperature.ts'

/* Sentences about the year, for every question that takes one. */

const toTenths = (value: number): string => String(Number(value.toFixed(1)))
export const percentFigure = (value: number): string => `${toTenths(value)} %`
export const degrees = (celsius: number, scale: Scale): string =>
  `${toTenths(inScale(celsius, scale))} ${scale === 'celsius' ? '°C' : '°F'}`

/** Why there is no answer for a year. */
export function seasonRefusalSentence(refusal: SeasonRefusal, scale: Scale): string {
  switch (refusal.code) {
    case 'range-reversed':
      return `the low end, ${toTenths(refusal.low)}, is above the high end, ${toTenths(refusal.high)}`
    case 'temperature-outside':
      return `the moisture of wood is known only from ${degrees(refusal.least, scale)} to ${degrees(refusal.most, scale)}; ${degrees(refusal.given, scale)} was given`
    case 'above-fibre-saturation':
      return `a moisture content of ${percentFigure(refusal.moisture)} is above the fibre saturation of ${refusal.species === undefined ? 'wood' : SPECIES[refusal.species].name} (${percentFigure(refusal.saturation)}): there are no figures for wood as wet as that`
    case 'movement-unknown':
      return `the movement of ${SPECIES[refusal.species].name} with moisture is not known: choose a wood that has "movement" in /v1/materials`
    case 'balls-without-wood':
      return 'the balls are of wood: name it, as "balls": { "species": … }, or choose balls of another material'
    default:
      return refusal satisfies never
  }
}

export const memorySentence = (species: SpeciesId): string =>
  `the movement of ${SPECIES[species].name} is quoted from memory and was not checked against a source: treat it as a guess`

/* Faults of a request that its schema does not find. */

export const PLY_WITH_SPECIES = 'makes no difference to cross-laminated ply: remove it'
export const SPECIES_MISSING = '"species" is missing: only a ring of cross-laminated ply needs none'
export const CLIMATE_EMPTY = 'must state the year: "relativeHumidity", "moistureContent" or "months"'
export const TODAY_EMPTY = 'must state how damp it is today: "relativeHumidity" or "moistureContent"'
export const NO_WOODEN_BALLS = 'does not apply, because none of the balls is of wood: remove it'

/** @param name as it was given, quoted */
export const unknownSpecies = (name: string, nearest: readonly string[]): string =>
  nearest.length > 0
    ? `Unknown species ${name}. The nearest names are ${nearest.map((id) => `"${id}"`).join(', ')}.`
    : `Unknown species ${name}. /v1/materials lists them all.`
