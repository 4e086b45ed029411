import { expect, test } from 'vitest'
import { ARRANGEMENT_NAMES } from '#shared/bearing/arrangements.ts'
import { arrangementsOf, DOCUMENT, type Schema } from '#tests/fuzz/document.ts'

/* What the document says to a reader: nothing in it stands without a description. */

const SCHEMAS = Object.entries(DOCUMENT.components.schemas)
const OPERATIONS = Object.values(DOCUMENT.paths).flatMap((path) => Object.values(path))
/** The operations that answer a caller's question. */
const ANSWERING = Object.entries(DOCUMENT.paths)
  .filter(([path]) => path.startsWith('/v1/'))
  .flatMap(([, path]) => Object.values(path))

const isText = (text: string | undefined): boolean => text !== undefined && text.trim().length > 0

/** By words of its own, or by those of the schema that it is, or that each of its items is. */
function isDescribed({ $ref, description, items }: Schema): boolean {
  if (isText(description)) return true
  const named = DOCUMENT.components.schemas[$ref?.split('/').at(-1) ?? '']
  return (named !== undefined && isDescribed(named)) || (items?.$ref !== undefined && isDescribed(items))
}

/** Every property within a schema that nothing describes, as `Schema.property`. */
function undescribed(schema: Schema, at: string): readonly string[] {
  const inner = [...(schema.anyOf ?? []), ...(schema.oneOf ?? []), ...(schema.items ? [schema.items] : [])]
  return [
    ...Object.entries(schema.properties ?? {}).flatMap(([name, property]) => [
      ...(isDescribed(property) ? [] : [`${at}.${name}`]),
      ...undescribed(property, `${at}.${name}`),
    ]),
    ...inner.flatMap((each) => undescribed(each, at)),
  ]
}

/** Every description within a schema, with where it is. */
function descriptionsIn(schema: Schema, at: string): readonly { readonly at: string; readonly text: string }[] {
  const inner = [...(schema.anyOf ?? []), ...(schema.oneOf ?? []), ...(schema.items ? [schema.items] : [])]
  return [
    ...(schema.description === undefined ? [] : [{ at, text: schema.description }]),
    ...Object.entries(schema.properties ?? {}).flatMap(([name, each]) => descriptionsIn(each, `${at}.${name}`)),
    ...inner.flatMap((each) => descriptionsIn(each, at)),
  ]
}

test('every schema has a description, and every property of it', () => {
  expect(SCHEMAS.length).toBeGreaterThan(100)
  expect(SCHEMAS.filter(([, { description }]) => !isText(description)).map(([name]) => name)).toEqual([])
  expect(SCHEMAS.flatMap(([name, schema]) => undescribed(schema, name))).toEqual([])
})

test('a description of a schema says what it is of: it opens with a noun, and points at no other', () => {
  const headless = /^(Of|At|As|In|To|From|By|With|Where|There|That|Such|Twice|The same)\b/
  const texts = SCHEMAS.flatMap(([name, schema]) => descriptionsIn(schema, name))
  expect(texts.length).toBeGreaterThan(500)
  expect(texts.filter(({ text }) => headless.test(text)).map(({ at, text }) => `${at}: ${text}`)).toEqual([])
})

test('every parameter has a description', () => {
  const bare = OPERATIONS.flatMap(({ operationId, parameters = [] }) =>
    parameters
      .filter(({ description, schema }) => !isText(description) && !isDescribed(schema))
      .map(({ name }) => `${operationId} ${name}`),
  )
  expect(bare).toEqual([])
})

const sentencesIn = (text: string): number => text.match(/[.?!](?=\s|$)/g)?.length ?? 0

test('every operation has a summary of one line and a description, under /v1 of two to five sentences', () => {
  const summaries = OPERATIONS.map(({ operationId, summary = '' }) => [operationId, summary] as const)
  expect(summaries.filter(([, summary]) => !isText(summary) || summary.length > 72)).toEqual([])
  expect(OPERATIONS.filter(({ description }) => !isText(description)).map(({ operationId }) => operationId)).toEqual([])
  const counted = ANSWERING.map(({ operationId, description = '' }) => [operationId, sentencesIn(description)] as const)
  expect(counted.length).toBeGreaterThan(10)
  expect(counted.filter(([, sentences]) => sentences < 2 || sentences > 5)).toEqual([])
})

test('an operation whose answer has an arrangement says which it serves: those, and no other', () => {
  const served = ANSWERING.flatMap(({ operationId, description = '', responses }) => {
    const answered = arrangementsOf({ responses })
    const told = ARRANGEMENT_NAMES.filter((name) =>
      /It serves .*bearings\./.exec(description)?.[0].includes(`\`${name}\``),
    )
    return answered.length === 0 ? [] : [{ operationId, answered: answered.toSorted(), told: told.toSorted() }]
  })
  expect(served.length).toBeGreaterThan(5)
  for (const { operationId, answered, told } of served) expect(told, operationId).toEqual(answered)
})
