import { ARRANGEMENT_NAMES } from '#shared/bearing/arrangements.ts'
import { fieldName } from '#src/words/kiosk/bearing.ts'
import { TERMS } from '#src/words/terms.ts'

/**
 * What people call the place of a fault, for the bearing that a query asks for; undefined where it has no such name.
 *
 * @param path a JSON pointer into the input
 */
export function faultName(path: string, query: unknown): string | undefined {
  const { arrangement }: { readonly arrangement?: unknown } = Object(query)
  const known = ARRANGEMENT_NAMES.find((name) => name === arrangement)
  return fieldName(path.slice(1).replaceAll('/', '.'), TERMS[known ?? 'radial'])
}
