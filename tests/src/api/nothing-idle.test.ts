import { expect, test } from 'vitest'
import { OPERATIONS, type Schema, schemaAt } from '#tests/fuzz/document.ts'
import { isObject, variantOf } from '#tests/fuzz/valid.ts'
import { post } from '#tests/support/ask.ts'
import { sharedApp } from '#tests/support/started-app.ts'

/*
 * No field is accepted and changes nothing but the echo. Of requests with everything filled in, each value is replaced by
 * others, some of them far off, until one is accepted and the answer differs. A field whose every other value is refused is no
 * lie either. A design is one object for all paths: its fields count in its own answer or on its job sheet.
 */

type Json = Record<string, unknown>

const CLIMATE = { today: { relativeHumidity: 50 }, relativeHumidity: { min: 35, max: 60 } }
const RINGS = ['outerRing', 'innerRing']
const woods = (parts: readonly string[], wood: Json) => Object.fromEntries(parts.map((part) => [part, wood]))
const SEGMENTS = { species: 'maple-sugar', segments: { count: 12 } }
const BOARD = { thickness: 40, width: 150, length: 700 }
const BALLS = { count: 14, diameter: 14, material: 'glass' }
const RADIAL = { units: 'mm', arrangement: 'radial', balls: BALLS, bore: 10 }
const ROLLER = { units: 'mm', arrangement: 'roller', balls: { count: 14, diameter: 12 }, bore: 16 }
const CAGED = { units: 'mm', arrangement: 'caged', balls: { ...BALLS, count: 9 }, bore: 20 }
const THRUST = { units: 'mm', arrangement: 'thrust', balls: { ...BALLS, count: 24 }, bore: 60 }
const RICH = {
  chuck: { min: 30, max: 120 },
  swing: 300,
  name: 'Tide clock',
  mounting: { shaft: { material: 'wood', species: 'maple-sugar', hold: 'pressed' }, housing: { thickness: 20 } },
}

const DESIGNS: readonly Json[] = [
  {
    ...RADIAL,
    making: {
      ...RICH,
      chuck: { min: 60, max: 120 },
      woods: woods(RINGS, { species: 'maple-sugar' }),
      climate: CLIMATE,
    },
  },
  { ...RADIAL, making: { woods: woods(RINGS, SEGMENTS), boards: [BOARD], mounting: { turns: 'outer-ring' } } },
  { ...RADIAL, split: 'none', making: { woods: woods(RINGS, { species: 'maple-sugar' }), boards: [BOARD] } },
  { ...ROLLER, making: { ...RICH, woods: { ...woods(RINGS, SEGMENTS), balls: { species: 'birch-yellow' } } } },
  { ...CAGED, making: { method: 'lathe-only', woods: woods([...RINGS, 'cage'], { species: 'maple-sugar' }) } },
  { ...CAGED, making: { woods: woods([...RINGS, 'cage'], SEGMENTS) } },
  {
    ...THRUST,
    making: {
      ...RICH,
      chuck: { min: 100, max: 250 },
      woods: { plates: { species: 'maple-sugar' } },
      screws: { count: 6 },
    },
  },
  { ...THRUST, making: { woods: { plates: SEGMENTS }, boards: [BOARD] } },
]

/** Fields that count only where a question, a sheet or a limit does that these requests do not reach. */
const COUNTS_ELSEWHERE: Readonly<Record<string, string>> = {
  '/making/kerf': 'moves the lines of templates and gauges for a machine',
  '/balls/standardDeviation': 'with a cage and a stated play: in a fit correction and in a load check',
  '/riskDeduction': 'for designs that have a risk',
  '/plugDiameters/0': 'for designs that this plug fits',
  '/onlyOnRule': 'for designs that a rule spoils',
  '/shopDenominator': 'for designs in inches',
}

const TAGS = ['units', 'arrangement', 'kind']
const FACTORS = [1.1, 0.9, 2, 0.6, 0.02, 50]

function othersThan(value: unknown, schema: Schema): readonly unknown[] {
  const variants = (schema.anyOf ?? schema.oneOf ?? [schema]).map(schemaAt)
  const choices = variants.flatMap((variant) => variant.enum ?? [])
  if (choices.length > 0 && typeof value !== 'number') return choices.filter((choice) => choice !== value)
  if (typeof value === 'boolean') return [!value]
  if (typeof value === 'string') return ['cherry-black', 'birch-yellow']
  if (typeof value !== 'number') return []
  const isWhole = variants.some(({ type }) => type === 'integer')
  const scaled = value === 0 ? [0.1, 1, 20] : FACTORS.map((factor) => factor * value)
  const numbers = isWhole ? [value + 1, value - 1, ...scaled.map(Math.round)] : scaled
  return [...numbers, ...choices].filter((number) => number !== value)
}

/** Each value of a request, and the request once for each other value in its place. */
function* changed(
  schema: Schema,
  value: unknown,
  put: (value: unknown) => unknown = (whole) => whole,
  path = '',
): Generator<readonly [path: string, requests: readonly unknown[]]> {
  const at = variantOf(schema, value)
  if (isObject(value)) {
    for (const [name, inner] of Object.entries(value))
      if (!TAGS.includes(name))
        yield* changed(at.properties?.[name] ?? {}, inner, (one) => put({ ...value, [name]: one }), `${path}/${name}`)
  } else if (Array.isArray(value)) {
    const [first, ...rest] = value
    if (first !== undefined) yield* changed(at.items ?? {}, first, (one) => put([one, ...rest]), `${path}/0`)
  } else yield [path, othersThan(value, at).map(put)]
}

/** Without the echo, the marks of what nobody stated, and the code of the input. */
const told = (answer: unknown): string =>
  JSON.stringify(answer, (name, value) =>
    ['input', 'assumed', 'counted', 'isTrade', 'isFromMemory', 'code'].includes(name) ? undefined : value,
  )

type Told = readonly [status: number, text: string, input: Json]

async function asking() {
  const at = await sharedApp()
  return async (url: string, payload: unknown): Promise<Told> => {
    const { status, text } = await post(at + url, payload)
    const body = JSON.parse(text)
    expect(status, text).toBeLessThan(500)
    return [status, told(body), body.input]
  }
}

/**
 * Fields that can be changed, and none of their other values that are taken changes an answer.
 *
 * @param counting those that are known to count, and are not tried again; what is found here is added
 */
async function idleIn(
  ask: (request: unknown) => Promise<Told>,
  schema: Schema,
  whole: Json,
  counting = new Set<string>(),
): Promise<string[]> {
  const [, before] = await ask(whole)
  const idle: string[] = []
  for (const [path, requests] of changed(schema, whole)) {
    if (path in COUNTS_ELSEWHERE || counting.has(path)) continue
    let isTaken = false
    for (const request of requests) {
      const [status, after] = await ask(request)
      isTaken ||= status === 200
      if (status !== 200 || after === before) continue
      counting.add(path)
      break
    }
    if (isTaken && !counting.has(path)) idle.push(path)
  }
  return idle
}

test.each(DESIGNS.map((request) => [request['arrangement'], request]))(
  'a %s design on its sheets',
  async (_, request) => {
    const ask = await asking()
    const body = OPERATIONS.find(({ operationId }) => operationId === 'design')?.body ?? {}
    const [status, text, whole] = await ask('/v1/design', request)
    expect(status, text).toBe(200)
    const [, sheetBefore] = await ask('/v1/job-sheet', whole)
    const onBoth = async (one: unknown): Promise<Told> => {
      const [state, answer, input] = await ask('/v1/design', one)
      if (state !== 200 || answer !== text) return [state, answer, input]
      const [, sheet] = await ask('/v1/job-sheet', one)
      return [state, sheet === sheetBefore ? answer : sheet, input]
    }
    expect(await idleIn(onBoth, body, whole)).toEqual([])
  },
)

/** What makes an example cheap: its fields stay as they are. */
const CHEAPER: Readonly<Record<string, Json>> = {
  toleranceCheck: { trials: 1_000 },
  designSearch: { counts: { min: 9, max: 10 }, bore: { min: 8, max: 10 }, outsideDiameter: { max: 200 } },
}
const QUESTIONS = OPERATIONS.filter(
  ({ method, operationId }) =>
    method === 'POST' &&
    /^(toleranceCheck|fitCorrection|ballSelection|loadCheck|designSearch|sizeTable)$/.test(operationId),
)

test.each(QUESTIONS)('$operationId: every field of the question counts in one of its examples', async (operation) => {
  const ask = await asking()
  const counting = new Set<string>()
  const idle: string[] = []
  for (const example of operation.examples as readonly Json[]) {
    const { making: _, ...design } = (example['design'] ?? {}) as Json
    const asked = (own: unknown) => ask(operation.path, { ...(own as Json), ...('design' in example && { design }) })
    const [status, , whole] = await asked({ ...example, ...CHEAPER[operation.operationId] })
    if (status !== 200) continue
    const { design: __, ...own } = whole
    const schema = variantOf(operation.body ?? {}, whole)
    idle.push(...(await idleIn(asked, schema, own, counting)))
  }
  expect(counting.size).toBeGreaterThan(0)
  expect(idle.filter((path) => !counting.has(path))).toEqual([])
})

const FIT = { design: THRUST, readings: [] }
const STROKES = { strokes: 10, ballGapBefore: 0, ballGapAfter: 1, radialInternalClearanceAfter: 1 }
const GROOVE = { conformity: 0.53 }
test.each<readonly [string, Json, string]>([
  ['fit-correction', { ...FIT, target: { finishAllowance: 0.1 } }, '/target/finishAllowance'],
  [
    'fit-correction',
    { ...FIT, design: RADIAL, ring: 'outer', removalHistory: [STROKES] },
    '/removalHistory/0/radialInternalClearanceAfter',
  ],
  [
    'design-search',
    {
      units: 'mm',
      outsideDiameter: { max: 99 },
      bore: { min: 8, max: 9 },
      balls: [{ diameter: 9 }],
      weights: { load: 1 },
    },
    '/weights/load',
  ],
  ['design', { ...RADIAL, groove: GROOVE, outerRing: { groove: GROOVE }, innerRing: { groove: GROOVE } }, '/groove'],
])('%s: %j is refused', async (path, request, pointer) => {
  const { status, text } = await post(`${await sharedApp()}/v1/${path}`, request)
  expect([status, JSON.parse(text).errors.map((error: { path: string }) => error.path)]).toEqual([400, [pointer]])
})

test('a load rests on the wood that is planned: on the softest where parts differ', async () => {
  const ask = await asking()
  const making = { woods: { outerRing: { species: 'red-oak-commercial' }, innerRing: { species: 'yellow-poplar' } } }
  const [, planned, input] = await ask('/v1/load-check', { design: { ...RADIAL, making }, radialLoad: 10 })
  expect(input['wood']).toBe('yellow-poplar')
  const [, stated] = await ask('/v1/load-check', {
    design: { ...RADIAL, making },
    radialLoad: 10,
    wood: 'yellow-poplar',
  })
  expect(planned).toBe(stated)
})

test('a wood of which not all figures are known is counted as the next softer one, and the answer says so', async () => {
  const at = await sharedApp()
  const of = async (rings: string, balls: string) => {
    const woods = { outerRing: { species: 'maple-sugar' }, innerRing: { species: rings }, balls: { species: balls } }
    const { text } = await post(`${at}/v1/load-check`, {
      design: { ...RADIAL, balls: { count: 12, diameter: 16, material: 'wood' }, making: { woods } },
      radialLoad: 10,
    })
    const { input, summary } = JSON.parse(text)
    return { wood: input.wood, ballWood: input.ballWood, summary }
  }
  // Wood Handbook Table 5-3b: sweet birch 1,470 lbf, and the next softer of the list sugar maple with 1,450.
  expect(await of('birch-sweet', 'birch-yellow')).toMatchObject({ wood: 'maple-sugar', ballWood: 'birch-yellow' })
  // Black cottonwood 350 lbf: softer than any of the list, as is balsa, of which no hardness is printed there.
  for (const soft of ['cottonwood-black', 'balsa', 'oak-european']) {
    const { wood, ballWood, summary } = await of('maple-sugar', soft)
    expect([wood, ballWood]).toEqual(['maple-sugar', 'basswood-american'])
    expect(summary).toMatch(/is counted as American basswood, the softest wood .* it carries less\./)
  }
  expect((await of('maple-sugar', 'birch-yellow')).summary).not.toContain('counted as')
})
