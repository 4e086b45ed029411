import { Type } from 'typebox'
import { isSpecies, SPECIES_IDS, type SpeciesId } from '#shared/data/species.ts'
import { nearestNames } from '#src/http/nearest-name.ts'
import type { Fault } from '#src/http/problem.ts'
import { quote } from '#src/http/quote.ts'
import { unknownSpecies } from '#src/words/problem.ts'

const LONGEST_NAME = 60

/** The name of a wood, as a caller writes it. There are too many names for the schema, so they are checked after it. */
export const speciesName = (description: string) =>
  Type.String({
    minLength: 1,
    maxLength: LONGEST_NAME,
    description: `${description} /v1/materials lists the names.`,
  })

/** A known name, or the fault of one that is not known. */
export function readSpecies(name: string, path: string): SpeciesId | Fault {
  if (isSpecies(name)) return name
  return { path, message: unknownSpecies(quote(name), nearestNames(name, SPECIES_IDS)) }
}
