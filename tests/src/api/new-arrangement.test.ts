import { cpSync, readFileSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { type Static, Type } from 'typebox'
import { describe, expect, test } from 'vitest'
import { ARRANGEMENTS, type Arrangements, design } from '#shared/bearing/arrangements.ts'
import { designOf } from '#shared/bearing/design.ts'
import { answerUnion } from '#src/api/answer.ts'
import { answerOf } from '#src/api/design/arrangements/all.ts'
import { RadialDesignResponse } from '#src/api/design/arrangements/radial.ts'
import { designRequests, fieldSchemas, inputBy, type RequestsOf, toDesignInput } from '#src/api/design-input.ts'
import { buildApp } from '#src/app.ts'
import { DEFAULTS } from '#src/config.ts'
import { computingRoute } from '#src/http/computing-route.ts'
import { refTo } from '#src/http/schema.ts'
import { type Answered, ask, faultsIn, post } from '#tests/support/ask.ts'
import { FootstepResponse, toFootstepResponse } from '#tests/support/footstep/answer.ts'
import { FOOTSTEP } from '#tests/support/footstep/footstep.ts'
import { projectCopy } from '#tests/support/project-copy.ts'
import { run } from '#tests/support/run.ts'
import { sharedApp } from '#tests/support/started-app.ts'

/* A new arrangement is its folder (`tests/support/footstep/`) and this line. */
const WITH_FOOTSTEP = { ...ARRANGEMENTS, footstep: FOOTSTEP } as const satisfies Arrangements

type Requests = RequestsOf<typeof WITH_FOOTSTEP>
type AnyRequest = Requests[keyof Requests]

const known = new Set(fieldSchemas(ARRANGEMENTS).map((schema) => Reflect.get(schema, '$id')))
const ToyResponse = answerUnion('ToyResponse', 'A bearing.', RadialDesignResponse, FootstepResponse)

/** A path that serves every arrangement and a footstep; of those of the service it answers the radial one. */
const toyRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/bearing',
    get: true,
    schema: {
      operationId: 'toy',
      tags: ['bearing'],
      summary: 'A bearing, a footstep among them',
      body: Type.Unsafe<AnyRequest>(Type.Ref('ToyRequest')),
      response: { 200: refTo<typeof ToyResponse>('ToyResponse') },
    },
    handler: (body): Static<typeof ToyResponse> => {
      if (body.arrangement === 'footstep') {
        const made = designOf(FOOTSTEP, inputBy(FOOTSTEP.fields, body))
        if (made.ok) return toFootstepResponse(made.value)
      } else {
        const made = design(toDesignInput(body))
        const answer = made.ok ? answerOf(made.value) : undefined
        if (answer?.arrangement === 'radial') return answer
      }
      throw new Error('this test asks for no other')
    },
  })
}

const schemas = [
  ...fieldSchemas(WITH_FOOTSTEP).filter((schema) => !known.has(Reflect.get(schema, '$id'))),
  ...designRequests('Toy', 'A bearing.', {}, WITH_FOOTSTEP),
  FootstepResponse,
  ToyResponse,
]

const started = () => sharedApp({ route: toyRoute, schemas })

const FOOT = { units: 'mm', arrangement: 'footstep', balls: { count: 6, diameter: 16 }, bore: 10, ballGap: 0 } as const

function answerIn({ status, text }: Answered) {
  expect(status, text).toBe(200)
  return JSON.parse(text)
}

describe('an arrangement of one folder and one line', () => {
  test('is validated by the schema that its rows make', async () => {
    const at = `${await started()}/test/bearing`
    const faults = async (body: object) => faultsIn(await post(at, body))
    expect(await faults({ ...FOOT, cup: { flor: 8 } })).toEqual([expect.stringMatching(/^\/cup\/flor: .*"floor"/)])
    expect(await faults({ ...FOOT, cup: { floor: 20_000 } })).toEqual([expect.stringMatching(/^\/cup\/floor: /)])
    expect(await faults({ ...FOOT, balls: { count: 6 } })).toEqual([expect.stringMatching(/^\/balls\/diameter: /)])
  })

  test('has names that no other arrangement has, and not those of the others', async () => {
    const at = `${await started()}/test/bearing`
    const faults = async (body: object) => faultsIn(await post(at, body))
    expect(await faults({ ...FOOT, split: 'none' })).toEqual([expect.stringMatching(/^\/split: /)])
    expect(await faults({ ...FOOT, arrangement: 'radial', cup: {} })).toEqual([expect.stringMatching(/^\/cup: /)])
    expect(answerIn(await post(at, { units: 'mm', balls: FOOT.balls, bore: 10 }))).toMatchObject({
      arrangement: 'radial',
    })
  })

  test('is answered with its own sizes: six touching balls fill a cup of three ball diameters', async () => {
    // As seven equal circles lie: six round one, all touching.
    const answer = answerIn(await post(`${await started()}/test/bearing`, FOOT))
    expect(answer).toMatchObject({ arrangement: 'footstep', units: 'mm', height: 24, warnings: [] })
    expect(answer.cup.insideDiameter).toBeWithin(1e-9, 48)
    expect(answer.cup.boreDiameter).toBe(10)
    expect(answer.dimensions).toHaveLength(3)
    expect(answer.dimensions[0].value).toBeWithin(1e-9, 32)
    expect(answer.cautions.length).toBeGreaterThan(0)
  })

  test('says what it assumed, each with its reason, and echoes what gives the same answer', async () => {
    const at = `${await started()}/test/bearing`
    const { assumed, ...answer } = answerIn(await post(at, { ...FOOT, cup: { wall: 9 } }))
    const rows = assumed as readonly { readonly path: string; readonly value: unknown; readonly reason: string }[]
    expect(rows.find(({ path }) => path === '/cup/floor')).toMatchObject({ value: 8, reason: expect.any(String) })
    expect(rows.map(({ path }) => path)).not.toContain('/cup/wall')
    expect(answerIn(await post(at, answer.input))).toEqual({ ...answer, assumed: [] })
  })

  test('has its warnings, with suggestions that were tried', async () => {
    const at = `${await started()}/test/bearing`
    const thin = { ...FOOT, balls: { count: 5, diameter: 16 }, bore: 5, cup: { wall: 2 } }
    const { warnings } = answerIn(await post(at, thin))
    expect(warnings).toMatchObject([
      { code: 'few-balls', suggestion: { path: '/balls/count', value: 6 } },
      // The first remedy that it names leaves the wall too thin: it was tried, and is not offered.
      { code: 'outer-wall-thin', suggestion: { path: '/cup/wall' } },
    ])
    const wall = warnings[1].suggestion.value
    expect(answerIn(await post(at, { ...FOOT, cup: { wall } })).warnings).toEqual([])
  })

  test('cannot be made where its own geometry says so', () => {
    const input = inputBy(FOOTSTEP.fields, { ...FOOT, bore: 17 })
    const refusal = { path: '/bore', given: 17, below: expect.closeTo(16, 9) }
    expect(designOf(FOOTSTEP, input)).toEqual({ ok: false, error: [expect.objectContaining(refusal)] })
  })

  test('is asked by a query too, in inches if that is what the caller writes', async () => {
    const query = 'units=in&arrangement=footstep&balls.count=6&balls.diameter=5/8&bore=3/8&ballGap=0&cup.floor=1/4'
    const answer = answerIn(await ask(`${await started()}/test/bearing?${query}`))
    expect(answer).toMatchObject({ units: 'in', input: { cup: { floor: 0.25 } }, height: 0.875 })
  })

  test('stands in the document beside the others', async () => {
    const app = await buildApp({
      config: { ...DEFAULTS, logLevel: 'silent' },
      routes: [{ route: toyRoute, prefix: '/test', schemas }],
    })
    await app.ready()
    const { components } = JSON.parse(JSON.stringify(app.swagger()))
    await app.close()
    const variants = components.schemas.ToyRequest.anyOf.map(({ $ref }: { readonly $ref: string }) => $ref)
    expect(variants).toHaveLength(Object.keys(ARRANGEMENTS).length + 1)
    expect(components.schemas.ToyResponse.discriminator.mapping).toMatchObject({
      footstep: '#/components/schemas/FootstepResponse',
    })
    expect(components.schemas.FootstepToyRequest.required).toContain('arrangement')
    expect(components.schemas.CupRequest.properties.floor.description).toMatch(/Default: half a ball diameter\.$/)
  })
})

describe('a field', () => {
  const FOLDER = 'tests/support/footstep'
  const ROW = "  lip: nonNegativeLength('Height of the lip.', fields.plain('0', 'no lip')),\n"

  /** The compiler's verdict on the footstep with a few texts of its files replaced. */
  async function compiled(...changes: readonly (readonly [file: string, from: string, to: string])[]) {
    const root = projectCopy()
    cpSync(FOLDER, join(root, FOLDER), { recursive: true })
    cpSync('tsconfig.json', join(root, 'tsconfig.json'))
    for (const [file, from, to] of changes) {
      const path = join(root, FOLDER, file)
      const text = readFileSync(path, 'utf8')
      if (!text.includes(from)) throw new Error(`${file} must have ${from}`)
      writeFileSync(path, text.replace(from, to))
    }
    const config = { extends: './tsconfig.json', files: [`${FOLDER}/answer.ts`, `${FOLDER}/footstep.ts`], include: [] }
    writeFileSync(join(root, 'tsconfig.footstep.json'), JSON.stringify(config))
    const tsc = resolve('node_modules/typescript/bin/tsc')
    return run(process.execPath, [tsc, '--project', 'tsconfig.footstep.json'], { cwd: root })
  }

  const row = [
    ['input.ts', '  wall: length(', `${ROW}  wall: length(`],
    ['input.ts', 'length }', 'length, nonNegativeLength }'],
  ] as const

  test('that is filled in nowhere does not compile, and the compiler names it', async () => {
    expect(await compiled()).toMatchObject({ code: 0 })
    const forgotten = await compiled(...row)
    expect(forgotten?.code).not.toBe(0)
    expect(forgotten?.out).toContain('forgotten: "cup.lip"')
  })

  test('is one row, and its default in one place', async () => {
    const filledIn = [
      'resolve.ts',
      '  const cup = {\n',
      '  const cup = {\n    lip: input.cup?.lip ?? mm(0),\n',
    ] as const
    expect(await compiled(...row, filledIn)).toEqual({ code: 0, out: '', err: '' })
  })
})
