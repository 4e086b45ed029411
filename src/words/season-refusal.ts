import { SPECIES, type SpeciesId } from '#shared/data/species.ts'
import type { SeasonRefusal } from '#shared/questions/season/refusal.ts'
import { inScale, type Scale } from '#src/api/climate.ts'

/* How the year is spoken of where a question has one. */

const whole = (value: number): string => String(Number(value.toFixed(1)))
export const percentFigure = (value: number): string => `${whole(value)} %`
export const degrees = (celsius: number, scale: Scale): string =>
  `${whole(inScale(celsius, scale))} ${scale === 'celsius' ? 'C' : 'F'}`

/** Why a year cannot be reckoned with. */
export function seasonRefusalSentence(refusal: SeasonRefusal, scale: Scale): string {
  switch (refusal.code) {
    case 'range-reversed':
      return `the low end, ${whole(refusal.low)}, is above the high end, ${whole(refusal.high)}`
    case 'temperature-outside':
      return `the moisture of wood is known from ${degrees(refusal.least, scale)} to ${degrees(refusal.most, scale)}; ${degrees(refusal.given, scale)} was given`
    case 'above-fibre-saturation':
      return `at a moisture content of ${percentFigure(refusal.moisture)} ${refusal.species === undefined ? 'wood' : SPECIES[refusal.species].name} is above fibre saturation (${percentFigure(refusal.saturation)}): it moves no more, and what it then does is not known here`
    case 'movement-unknown':
      return `how ${SPECIES[refusal.species].name} moves with moisture is not known here: take a wood that has "movement" in /v1/materials`
    case 'balls-without-wood':
      return 'the balls are of wood: name it, as "balls": { "species": … }, or take balls of another material'
    default:
      return refusal satisfies never
  }
}

export const memorySentence = (species: SpeciesId): string =>
  `how ${SPECIES[species].name} moves is quoted from memory, and nothing was at hand to check it by: treat it as a guess`
