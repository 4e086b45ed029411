import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

/*
 * Writes down what callers may rely on from now on: the document without its examples. A test holds every later one to
 * it. Run at a release, or for a change that breaks callers and is meant to.
 */
const FOLDER = join(import.meta.dirname, '../../openapi')

const document = JSON.parse(readFileSync(join(FOLDER, 'openapi.json'), 'utf8'), (_name, value: unknown) =>
  isMedia(value) ? { schema: value.schema } : value,
)
writeFileSync(join(FOLDER, 'promised.json'), `${JSON.stringify(document)}\n`)

function isMedia(value: unknown): value is { readonly schema: unknown } {
  return typeof value === 'object' && value !== null && 'schema' in value && 'examples' in value
}
