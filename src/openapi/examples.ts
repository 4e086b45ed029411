import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/** A request with its answer, as a file of `openapi/examples/` has it: tests run it, the document shows it. */
export type Example = {
  readonly name: string
  readonly summary: string
  readonly request: unknown
  /** The status that the answer has; 200 when the file does not say. */
  readonly status: number
  readonly response: unknown
}

/** From `src/openapi/` and from the bundle in `dist/server/` alike, two folders up. */
const FOLDER = join(import.meta.dirname, '../../openapi/examples')

/** The examples of an operation: `design.json` first, then whatever more follows a sign, as in `design-inches.json`. */
export function examplesOf(operationId: string): readonly Example[] {
  return files()
    .filter((file) => file === `${operationId}.json` || /^[-.]/.test(file.slice(operationId.length)))
    .filter((file) => file.startsWith(operationId))
    .sort((one, other) => one.length - other.length || (one < other ? -1 : 1))
    .map((file) => read(file))
}

function files(): readonly string[] {
  return readdirSync(FOLDER)
    .filter((file) => file.endsWith('.json'))
    .sort()
}

function read(file: string): Example {
  const example: unknown = JSON.parse(readFileSync(join(FOLDER, file), 'utf8'))
  if (!isExample(example)) throw new Error(`an example needs summary, request and response: ${file}`)
  return { status: 200, ...example, name: file.slice(0, -'.json'.length) }
}

function isExample(value: unknown): value is Pick<Example, 'summary' | 'request' | 'response'> {
  return typeof value === 'object' && value !== null && 'summary' in value && 'request' in value && 'response' in value
}
