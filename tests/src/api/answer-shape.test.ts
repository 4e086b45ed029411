import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { ARRANGEMENTS, type ArrangementName } from '#shared/bearing/arrangements.ts'
import { leavesOf, valueAt } from '#shared/bearing/field.ts'
import { post } from '#tests/support/ask.ts'
import { numberLeaves } from '#tests/support/number-leaves.ts'
import { sharedApp } from '#tests/support/started-app.ts'

type Json = { readonly [name: string]: unknown }
interface Answer extends Json {
  readonly arrangement: ArrangementName
  readonly input: Json
  readonly assumed: readonly { readonly path: string; readonly value: unknown; readonly reason: string }[]
  readonly summary: string
}

const FOLDER = join(import.meta.dirname, '../../../openapi/examples')
const COMPUTING =
  /^(design|sizeTable|toleranceCheck|ballSelection|seasonalFit|loadCheck|designSearch|jobSheet)(?=[-.])(?!.*refused)/
const EXAMPLES = readdirSync(FOLDER)
  .filter((file) => COMPUTING.test(file))
  .map((file) => {
    const { request }: { readonly request: Json } = JSON.parse(readFileSync(join(FOLDER, file), 'utf8'))
    return { file, request }
  })

/** The service, asked what a file's operation is asked; undefined where it refuses. */
async function ask(file: string, payload: Json): Promise<Answer | undefined> {
  const path = file.replace(/[-.].*$/, '').replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)
  const { status, text } = await post(`${await sharedApp()}/v1/${path}`, payload)
  expect(status, text).toBeLessThan(500)
  return status === 200 ? (JSON.parse(text) as Answer) : undefined
}

const LENGTHS = fc.constantFrom('1/3', '5/8', '0.55 in', '14 mm')
const kept = { arbitrary: fc.constant((value: unknown) => value), weight: 40 }

/** Requests near one: a number larger or smaller, a length as text, a field left out. Many are refused, and skipped. */
function near(value: unknown): fc.Arbitrary<unknown> {
  if (Array.isArray(value)) return fc.tuple(...value.map(near))
  if (typeof value === 'object' && value !== null) {
    const fields = Object.entries(value).map(([name, inner]) =>
      fc.tuple(fc.constant(name), near(inner), fc.integer({ min: 0, max: 9 })),
    )
    return fc
      .tuple(...fields)
      .map((all) => Object.fromEntries(all.flatMap(([name, inner, draw]) => (draw === 0 ? [] : [[name, inner]]))))
  }
  if (typeof value !== 'number') return fc.constant(value)
  const scaled = fc
    .double({ min: 0.8, max: 1.25, noNaN: true })
    .map((factor) => () => (Number.isInteger(value) ? Math.round(value * factor) : value * factor))
  return fc
    .oneof(kept, { arbitrary: scaled, weight: 8 }, { arbitrary: LENGTHS.map((text) => () => text), weight: 1 })
    .map((change) => change(value))
}

/** What a job sheet says of fields that are among `assumed`, which an input sent again leaves empty. */
const withoutMarks = (answer: object): unknown =>
  JSON.parse(
    JSON.stringify(answer, (name, value) =>
      ['isTrade', 'isFromMemory', 'counted'].includes(name) ? undefined : value,
    ),
  )

const HEAD = ['arrangement', 'units', 'input', 'assumed', 'summary']
const FOOT = ['warnings', 'cautions', 'sources']

/** What of a whole input the request did not state, with its value. */
function unstated(asked: unknown, whole: unknown, at = ''): readonly (readonly [path: string, value: unknown])[] {
  if (typeof whole !== 'object' || whole === null) return asked === undefined ? [[at, whole]] : []
  return Object.entries(whole).flatMap(([name, value]) => unstated(valueAt(asked, [name]), value, `${at}/${name}`))
}

const isRounded = (value: number): boolean =>
  value === Number(value.toFixed(7)) || value === Number(value.toPrecision(9))

function heldToItsShape(request: Json, answer: Answer): void {
  const names = Object.keys(answer)
  expect(names.slice(0, HEAD.length)).toEqual(HEAD)
  expect(names.slice(-FOOT.length)).toEqual(FOOT)
  expect(answer.summary).toMatch(/^[A-Z\d].*\.$/s)
  // A caller's own numbers come back as they were sent, however many digits they have.
  const sent = numberLeaves(request).map(([, value]) => value)
  const texts = JSON.stringify(request).match(/"\d[^"]*"/g) ?? []
  const isSent = (path: string, value: number): boolean =>
    (texts.length > 0 && ECHOED.test(path)) || sent.some((each) => Math.abs(each - value) <= 1e-15 * Math.abs(each))
  const unrounded = numberLeaves(answer).filter(([path, value]) => !isRounded(value) && !isSent(path, value))
  expect(unrounded).toEqual([])
}
/** Where a length that was sent as text can come back as a number. */
const ECHOED = /^\/input\/|^\/ranked\/\d+\/design\//

function heldToItsInput(request: Json, { input, assumed }: Answer): void {
  // The arrangement is filled in before anyone looks at the request.
  const filled = unstated(request, input).filter(([path]) => !path.endsWith('/arrangement'))
  // The rest are rules, for what is not one value in every row.
  const values = assumed.filter(({ path }) => valueAt(input, path.slice(1).split('/')) !== undefined)
  expect(values.map(({ path, value }) => [path, value]).toSorted()).toEqual(filled.toSorted())
  for (const { reason } of assumed) expect(reason).not.toBe('')
}

describe.each(EXAMPLES)('$file', ({ file, request }) => {
  test('head, figures and foot in their order, every number rounded, every default named; sent again, it is the same; so near it', async () => {
    /** Whether there is an answer, which keeps the law. */
    const law = async (asked: Json): Promise<boolean> => {
      const first = await ask(file, asked)
      if (first === undefined) return false
      heldToItsShape(asked, first)
      heldToItsInput(asked, first)
      const again = await ask(file, first.input)
      const { assumed: _, ...figures } = first
      const { assumed, ...same } = again ?? { assumed: [] }
      expect(withoutMarks(same)).toEqual(withoutMarks(figures))
      expect(assumed.filter(({ path }) => valueAt(first.input, path.slice(1).split('/')) !== undefined)).toEqual([])
      return true
    }
    expect(await law(request)).toBe(true)
    await fc.assert(
      fc.asyncProperty(near(request), async (asked) => void (await law(asked as Json))),
      { numRuns: 8 },
    )
  })
})

test.each(EXAMPLES.filter(({ file }) => file.startsWith('design') && !file.startsWith('designSearch')))(
  '$file: a row of dimensions has the key of the place where its value stands',
  async ({ file, request }) => {
    const answer = await ask(file, request)
    const rows = (answer?.['dimensions'] ?? []) as readonly { readonly key: string; readonly value: number }[]
    expect(rows.length).toBeGreaterThan(10)
    for (const { key, value } of rows) {
      const place = key.replace(/^plates\./, 'plates.lower.').split('.')
      expect(valueAt(answer, place), key).toBe(value)
    }
  },
)

test('every default of a design says why, and how sure it is', () => {
  for (const { fields } of Object.values(ARRANGEMENTS)) {
    for (const { path, field } of leavesOf(fields.fields)) {
      if (field.byDefault === undefined) continue
      expect(field.byDefault.reason, path).not.toBe('')
      expect(['common practice, no source', 'the plain case']).toContain(field.byDefault.standing)
    }
  }
})
