import { SPECIES, type SpeciesId } from '#shared/data/species.ts'
import type { SeasonRefusal } from '#shared/movement/refusal.ts'
import { toDecimals } from '#shared/numbers/decimals.ts'
import { inScale, type Scale } from '#shared/units/temperature.ts'
import { withMinus } from './figure.ts'
import type { Terms } from './terms.ts'
import { nameInSentence } from './wood-name.ts'

/* Sentences about the year, for every question that takes one. */

const toTenths = (value: number): string => withMinus(String(toDecimals(value, 1)))
export const percentFigure = (value: number): string => `${toTenths(value)} %`
export const degrees = (celsius: number, scale: Scale): string =>
  `${toTenths(inScale(celsius, scale))} ${scale === 'celsius' ? '°C' : '°F'}`

/** Why there is no answer for a year. */
export function seasonRefusalSentence(refusal: SeasonRefusal, scale: Scale, { element }: Terms): string {
  switch (refusal.code) {
    case 'range-reversed':
      return `The low end, ${toTenths(refusal.low)}, is above the high end, ${toTenths(refusal.high)}.`
    case 'temperature-outside':
      return `Temperatures may be from ${degrees(refusal.least, scale)} to ${degrees(refusal.most, scale)}; ${degrees(refusal.given, scale)} was given.`
    case 'above-fibre-saturation':
      return `A moisture content of ${percentFigure(refusal.moisture)} is above the fibre saturation of ${refusal.species === undefined ? 'wood' : nameInSentence(SPECIES[refusal.species].name)} (${percentFigure(refusal.saturation)}): such wood is green, and neither shrinks nor swells. Dry it first, or give the humidity of the air, which may be as damp as you like.`
    case 'movement-unknown':
      return `The movement of ${nameInSentence(SPECIES[refusal.species].name)} with moisture is not known. Choose another wood: \`/v1/materials\` says whose movement is known.`
    case 'balls-without-wood':
      return `The ${element.many} are of wood. Name it, as "balls": { "species": … }, or choose ${element.many} of another material.`
    default:
      return refusal satisfies never
  }
}

export const memorySentence = (species: SpeciesId): string =>
  `The movement of ${nameInSentence(SPECIES[species].name)} is a figure that was not checked in print. Treat it as a guess.`

/* Faults of a request that its schema does not find. */

export const PLY_WITH_SPECIES = 'does not apply to `cross-laminated-ply`: remove it'
export const SEGMENTS_OF_SEGMENTED =
  'Only a segmented part has segments: leave `construction` out, or make it segmented.'
export const SPECIES_MISSING = '"species" is missing: only `cross-laminated-ply` needs none'
export const partMissing = (part: string): string => `"${part}" is missing`
export const partOfOthers = ({ bearings }: Terms): string => `does not apply to ${bearings}: remove it`
export const SHAFT_NOT_OF_WOOD = 'does not apply unless `material` is "wood": remove it'
export const NO_HOUSING = 'does not apply where the outer ring turns: remove it'
export const NO_SCREWS = 'does not apply unless a ring is split: remove it, or state `split`'
export const NO_SHARED_GROOVE = 'does not apply where each ring has a `groove` of its own: remove it'
export const NO_FRACTIONS = 'does not apply in millimetres: remove it'
export const NO_SEGMENTS = 'does not apply unless a part is of segments: remove it'
export const NO_CORE = 'does not apply where no saw cuts a core out of a ring: remove it'
export const NO_CIRCLES =
  'does not apply where every part is of segments, for no circles are sawn side by side: remove it'
export const NO_LUMBER = 'does not apply beside `boards` where the wood is stated and nothing is screwed: remove it'
export const BOARDS_HAVE_LENGTHS = 'does not apply beside `boards`, which have lengths of their own: remove it'
export const NO_DRIVE = 'does not apply unless `turns` is "outer-ring": remove it'
export const WOODS_MISSING = 'The climate acts on wood: give the wood of each part as well.'
export const CLIMATE_MISSING = 'Wood moves with the climate: give the climate as well.'
export const CLIMATE_EMPTY = 'must state the year: "relativeHumidity", "moistureContent" or "months"'
export const TODAY_EMPTY = 'must state how damp it is today: "relativeHumidity" or "moistureContent"'
export const NO_WOODEN_BALLS = 'does not apply unless `balls.material` is "wood": remove it'
