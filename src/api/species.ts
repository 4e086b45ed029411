import { Type } from 'typebox'
import { isSpecies, SPECIES_IDS, type SpeciesId } from '#shared/data/species.ts'
import { given } from '#src/http/given.ts'
import { nearestNames } from '#src/http/nearest-name.ts'
import type { Fault } from '#src/http/problem.ts'

const LONGEST_NAME = 60

/** A wood by its name, as a caller writes it. Which names there are is checked beside the schema: they are too many. */
export const speciesName = (description: string) =>
  Type.String({
    minLength: 1,
    maxLength: LONGEST_NAME,
    description: `${description} The names stand in /v1/materials.`,
  })

/** A name that is known, or what to say of one that is not. */
export function readSpecies(name: string, path: string): SpeciesId | Fault {
  if (isSpecies(name)) return name
  const nearest = nearestNames(name, SPECIES_IDS)
  const hint =
    nearest.length > 0 ? `nearest are ${nearest.map((id) => `"${id}"`).join(', ')}` : 'all stand in /v1/materials'
  return { path, message: `${given(name)} is no wood that is known here: ${hint}` }
}
