import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { SPECIES_IDS } from '#shared/data/species.ts'

/** Values of the contract with a hyphen that a maker says in just this way. */
const ENGLISH = ['flat-sawn', 'quarter-sawn', 'no-go', 'run-out', 'yellow-poplar', 'tension-across-grain']

const DOCUMENT = join(import.meta.dirname, '../../openapi/openapi.json')

/** Every value of the contract, and every wood, that has a hyphen. */
const IDENTIFIERS: ReadonlySet<string> = new Set(
  [...valuesIn(JSON.parse(readFileSync(DOCUMENT, 'utf8'))), ...SPECIES_IDS].filter(
    (value) => value.includes('-') && !ENGLISH.includes(value),
  ),
)

function valuesIn(schema: unknown): readonly string[] {
  if (Array.isArray(schema)) return schema.flatMap(valuesIn)
  if (typeof schema !== 'object' || schema === null) return []
  return Object.entries(schema).flatMap(([name, inner]) =>
    name === 'enum' && Array.isArray(inner) ? inner.filter((value) => typeof value === 'string') : valuesIn(inner),
  )
}

/** camelCase, dotted.paths, /paths/with/strokes, JSON pointers, snake_case, and anything in backquotes. */
const FORMS =
  /`[^`]*`|\b[a-z]+\d*[A-Z]\w*|\b[a-z]\w*(?:\.[a-z]\w*)+|(?<![\w)])\/[a-z]\w*|\b[a-z]+(?:-[a-z]+)+\/\w+|\b[a-z]+_\w+/g
const HYPHENED = /[a-z]+(?:-[a-z]+)+/g

/** A number below 0 as a program has it: makers have a minus sign. */
const HYPHEN_FOR_MINUS = /(?<![\w.)])-\.?\d[\d.]*/g

/** What in a text is a name for programs, or a number of theirs: makers have words and signs. */
export const programNames = (text: string): readonly string[] => [
  ...(text.match(HYPHEN_FOR_MINUS) ?? []),
  ...(text.match(FORMS) ?? []),
  ...(text.match(HYPHENED) ?? []).filter((word) => IDENTIFIERS.has(word)),
]
