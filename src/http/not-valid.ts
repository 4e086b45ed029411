import { FaultList } from './fault-list.ts'
import { findFaults } from './faults.ts'
import { notValid, type ProblemError } from './problem.ts'
import type { JsonSchema, SchemaNames } from './schema.ts'

/** An error of the validator, as far as it is told. */
type ValidatorError = { readonly instancePath?: string; readonly message?: string }

/**
 * The 400 with every fault of an input that its validator refused.
 *
 * @param schema what the input was held to; without it only the validator's own words are left
 */
export function notValidBy(
  [first]: readonly ValidatorError[],
  input: unknown,
  schema: JsonSchema | undefined,
  names: SchemaNames,
): ProblemError {
  const found = new FaultList()
  if (schema !== undefined) findFaults(found, input, schema, names)
  // The validator has the last word: what it alone finds is told in its own words.
  if (found.isEmpty) found.add(() => ({ path: first?.instancePath ?? '', message: first?.message ?? 'is not valid' }))
  return notValid(found.told(), found.more)
}
