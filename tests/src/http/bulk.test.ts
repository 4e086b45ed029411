import { describe, expect, test } from 'vitest'
import { lazy } from '#shared/lazy.ts'
import { buildApp } from '#src/app.ts'
import { DEFAULTS } from '#src/config.ts'
import { threadMs } from '#src/workers/processor-time.ts'
import { type Bulk, bulkBodies, bulkQueries } from '#tests/fuzz/bulk.ts'
import { kindsOf, OPERATIONS, type Operation, type Schema, schemaAt } from '#tests/fuzz/document.ts'

/*
 * Whoever sends a body that is wrong in every place holds up nobody: to refuse it costs no more than to read a valid one
 * of the same size, but for a small factor. Held for every list, map, union and text of the document.
 */

/** As much as a body may have, less what a place with many commas adds. */
const BYTES = DEFAULTS.bodyLimitBytes - 100
/** As much as an address may have. */
const CHARACTERS = 8_192

/**
 * So much dearer may any other body of the largest size be than a valid one, byte for byte. Measured: 3, for queries of names
 * with a suggestion each; to let Ajv collect all errors cost up to 20,000.
 */
const MOST_TIMES_DEARER = 10
/** So many errors a problem lists. */
const MOST_ERRORS = 50
const LOOKS = 10

const POSTS = OPERATIONS.filter(({ method, body }) => method === 'POST' && body !== undefined)
const GETS = OPERATIONS.filter(({ method, parameters }) => method === 'GET' && parameters.some(isInQuery))
const seen = new Set<string>()

/** The service up to where an input has been found valid: such a request is answered with 204. */
const validator = lazy(async () => {
  const config = { ...DEFAULTS, logLevel: 'silent' } as const
  const app = await buildApp({ config })
  app.addHook('preHandler', async (_request, reply) => reply.code(204).send())
  const ask = (method: 'GET' | 'POST', url: string, body?: string) =>
    app.inject({ method, url, ...(body !== undefined && { body, headers: { 'content-type': 'application/json' } }) })
  /** What a request costs this thread [ms], over many, for the system counts by steps of 4 ms. */
  const cost = async (looks: number, ...request: Parameters<typeof ask>): Promise<number> => {
    const before = threadMs()
    for (let look = 0; look < looks; look += 1) await ask(...request)
    return (threadMs() - before) / looks
  }
  return { ask, cost }
})
type Validator = Awaited<ReturnType<typeof validator>>

/** A valid body of the largest size that anyone has a use for. */
const HONEST = JSON.stringify({
  design: { units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12 },
  ring: 'outer',
  readings: Array(50).fill({ kind: 'ball-gap', value: '1 3/16', graduation: 0.05, standardUncertainty: 0.02 }),
  earlier: Array(20).fill({ readings: [], thenRemoved: { with: 'abrasive', radial: 0.1 } }),
  ballsOnHand: Array(50).fill({ diameter: '5/8', quantity: 12 }),
})

/** The most that a body of the largest size may cost [ms], by what a valid one costs when all is warm. */
const mostMs = lazy(async () => {
  const { ask, cost } = await validator()
  const answer = await ask('POST', '/v1/fit-correction', HONEST)
  expect(answer.statusCode, answer.body).toBe(204)
  await cost(100, 'POST', '/v1/fit-correction', HONEST)
  return (MOST_TIMES_DEARER * (await cost(200, 'POST', '/v1/fit-correction', HONEST)) * BYTES) / HONEST.length
})

const urlOf = ({ path, parameters }: Operation): string =>
  parameters
    .filter((parameter) => parameter.in === 'path')
    .reduce((at, { name, schema }) => at.replace(`{${name}}`, String(schemaAt(schema).enum?.[0])), path)

function isInQuery(parameter: { readonly in: string }): boolean {
  return parameter.in === 'query'
}

/** Those that cost more than they may: by the clock at first, and where that says so by the processor, which others share. */
async function dearer(
  bulk: Iterable<Bulk>,
  request: (text: string) => Parameters<Validator['ask']>,
): Promise<readonly string[]> {
  const { ask, cost } = await validator()
  const most = await mostMs()
  const found: string[] = []
  for (const { what, text } of bulk) {
    const sent = request(text())
    const before = performance.now()
    const answer = await ask(...sent)
    const isQuick = performance.now() - before <= most
    expect([204, 400], `${what}: ${answer.body}`).toContain(answer.statusCode)
    // Some addresses are for frames, which are refused by a page.
    const isPage = String(answer.headers['content-type']).startsWith('text/html')
    if (answer.statusCode === 400 && !isPage) expect(answer.json().errors.length).toBeLessThanOrEqual(MOST_ERRORS)
    const ms = isQuick ? 0 : await cost(LOOKS, ...sent)
    if (ms > most) found.push(`${what}: ${(ms / most).toFixed(1)} times what it may cost`)
    if (found.length >= 3) break
  }
  return found
}

describe('a body that is wrong in bulk costs little more than a valid one', () => {
  test.each(POSTS)('$operationId', async (operation) => {
    const { body = {} } = operation
    const bodies = bulkBodies(body, BYTES, seen)
    expect(await dearer(bodies, (text) => ['POST', urlOf(operation), text])).toEqual([])
  })
})

describe('a query that is wrong in bulk costs little more than a valid body', () => {
  test.each(GETS)('$operationId', async (operation) => {
    const url = `${urlOf(operation)}?`
    const names = operation.parameters.filter(isInQuery).map(({ name }) => name)
    const queries = bulkQueries(names, CHARACTERS - url.length)
    expect(await dearer(queries, (text) => ['GET', url + text])).toEqual([])
  })
})

/** Places of a schema in which there may be any number of entries, of names or of letters. */
function unbounded(schema: Schema, path: string): readonly string[] {
  const at = schemaAt(schema)
  const { properties = {}, items, enum: choices, maxItems, maxLength, additionalProperties } = at
  const branches = at.oneOf ?? at.anyOf ?? []
  const kinds = kindsOf(at)
  const here: string[] = []
  if (kinds.includes('array') && maxItems === undefined) here.push(`${path} may have any number of entries`)
  if (kinds.includes('string') && choices === undefined && !('const' in at) && maxLength === undefined)
    here.push(`${path} may have any number of letters`)
  if (kinds.includes('object') && branches.length === 0 && additionalProperties !== false)
    here.push(`${path} may have any number of names`)
  return [
    ...here,
    ...branches.flatMap((branch) => unbounded(branch, path)),
    ...(items === undefined ? [] : unbounded(items, `${path}/*`)),
    ...Object.entries(properties).flatMap(([name, property]) => unbounded(property, `${path}/${name}`)),
  ]
}

test('every list and text of an input has a largest size, and every object knows its names', () => {
  expect(POSTS.flatMap(({ body = {}, operationId }) => unbounded(body, operationId))).toEqual([])
})
