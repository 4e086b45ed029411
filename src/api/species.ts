import { Type } from 'typebox'
import { isSpecies, SPECIES_IDS, type SpeciesId } from '#shared/data/species.ts'
import { given } from '#src/http/given.ts'
import { nearestNames } from '#src/http/nearest-name.ts'
import type { Fault } from '#src/http/problem.ts'
import { unknownSpecies } from '#src/words/season-refusal.ts'

const LONGEST_NAME = 60

/** A species by its name. The names are too many for the schema, so `readSpecies` checks them. */
export const speciesName = (description: string) =>
  Type.String({
    minLength: 1,
    maxLength: LONGEST_NAME,
    description: `${description} /v1/materials lists the names.`,
  })

/** The species of a name, or the fault of an unknown name. */
export function readSpecies(name: string, path: string): SpeciesId | Fault {
  if (isSpecies(name)) return name
  return { path, message: unknownSpecies(given(name), nearestNames(name, SPECIES_IDS)) }
}
