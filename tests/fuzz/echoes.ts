import fc from 'fast-check'
import { JSON_TYPE } from '#src/http/media-type.ts'
import { post } from '#tests/support/ask.ts'
import type { Operation, Schema } from './document.ts'
import { isObject, near, variantOf, withoutConflicts } from './valid.ts'

/** Where a length can stand in an input: names, and places in lists. */
type Place = readonly string[]

/** What a length may be at its limits, in the units of the input and in the others; some of it is refused. */
const EXTREMES = [
  0,
  0.001,
  10_000,
  '10000',
  '10000 mm',
  '393.7 in',
  '394 in',
  '10000 in',
  '0.001 mm',
  '0.001 in',
  '0.0254 mm',
  '254000 mm',
]

/** Inputs near those that are shown, some with a length at its very limit. */
function inputsOf({ body = {}, examples }: Operation): fc.Arbitrary<unknown> {
  const shown = fc.oneof(...examples.map((example) => near(example, body)))
  const stretched = fc
    .tuple(fc.constantFrom(...examples), fc.nat(), fc.constantFrom(...EXTREMES))
    .map(([example, at, length]) => {
      const places = [...placesOf(body, example)]
      return withLength(body, example, places[at % places.length] ?? [], length)
    })
  return fc.oneof(shown, stretched)
}

/** Every place of a length in an input: where one is stated, and where one could be. */
function* placesOf(schema: Schema, input: unknown): Generator<Place> {
  const at = variantOf(schema, input)
  if (at.format?.endsWith('length') === true) yield []
  for (const [name, inner] of Object.entries(at.properties ?? {}))
    for (const place of placesOf(inner, isObject(input) ? input[name] : undefined)) yield [name, ...place]
  if (at.items !== undefined && Array.isArray(input))
    for (const [index, item] of input.entries())
      for (const place of placesOf(at.items, item)) yield [String(index), ...place]
}

function withLength(schema: Schema, input: unknown, [name, ...rest]: Place, length: number | string): unknown {
  if (name === undefined) return length
  const at = variantOf(schema, input)
  if (Array.isArray(input))
    return input.map((item, index) => (String(index) === name ? withLength(at.items ?? {}, item, rest, length) : item))
  const { [name]: inner, ...others } = Object(input)
  return withoutConflicts({ ...others, [name]: withLength(at.properties?.[name] ?? {}, inner, rest, length) }, at)
}

/**
 * That an input which an answer gives back is taken again, and is answered alike. Not alike are only the marks of what nobody
 * stated: `assumed`, and the sign of a size that follows from a default.
 */
export const echoesOf = (operation: Operation, at: string, witness: () => void) =>
  fc.asyncProperty(inputsOf(operation), async (input) => {
    const asked = async (body: unknown) => {
      const { status, headers, text } = await post(at + operation.path, body)
      return { status, text, body: headers['content-type']?.includes(JSON_TYPE) ? JSON.parse(text) : undefined }
    }
    const first = await asked(input)
    if (first.status !== 200 || first.body?.input === undefined) return
    witness()
    const again = await asked(first.body.input)
    if (again.status !== 200) throw new Error(`an input that was given back is refused: ${again.text}`)
    const [one, other] = [stated(first.body), stated(again.body)]
    for (const name of new Set([...Object.keys(one), ...Object.keys(other)]))
      if (JSON.stringify(one[name]) !== JSON.stringify(other[name]))
        throw new Error(`${name} differs: ${JSON.stringify(one[name])} and ${JSON.stringify(other[name])}`)
  })

const stated = (answer: unknown): Record<string, unknown> =>
  JSON.parse(
    JSON.stringify(answer, (name, value) =>
      ['assumed', 'counted', 'isTrade', 'isFromMemory'].includes(name) ? undefined : value,
    ),
  )
