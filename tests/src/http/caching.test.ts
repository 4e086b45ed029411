import { describe, expect, test } from 'vitest'
import { ask, post } from '#tests/support/ask.ts'
import { IMPOSSIBLE_BORE, PROBE, probeRoute } from '#tests/support/probe-route.ts'
import { sharedApp, startedApp } from '#tests/support/started-app.ts'

const QUERY = 'units=mm&balls.count=12&balls.diameter=16&bore=12'
const KEPT = 'public, max-age=86400, stale-while-revalidate=604800'

async function tagOf(address: string, headers: Record<string, string> = {}): Promise<string> {
  return String((await ask(address, { headers })).headers['etag'])
}

test('an answer may be kept, and its tag confirms it', async () => {
  const at = `${await sharedApp({ route: probeRoute })}/test/probe?${QUERY}`
  const first = await ask(at)
  expect(first.headers).toMatchObject({ 'cache-control': KEPT, etag: expect.stringMatching(/^"[\w-]{27}"$/) })

  const again = await ask(at, { headers: { 'if-none-match': String(first.headers['etag']) } })
  expect(again).toMatchObject({ status: 304, text: '' })
  expect(again.headers).toMatchObject({ 'cache-control': KEPT, etag: first.headers['etag'] })
})

describe('If-None-Match', () => {
  test.each([
    ['weak', (tag: string) => `W/${tag}`, 304],
    ['in a list', (tag: string) => `"a", W/"b,c" ,${tag}`, 304],
    ['any', () => '*', 304],
    ['another', () => '"a"', 200],
    ['without quotes', (tag: string) => tag.replaceAll('"', ''), 200],
    ['empty', () => '', 200],
  ])('%s', async (_name, header, status) => {
    const at = `${await sharedApp({ route: probeRoute })}/test/probe?${QUERY}`
    const headers = { 'if-none-match': header(await tagOf(at)) }
    expect((await ask(at, { headers })).status).toBe(status)
    expect((await ask(at, { headers, method: 'HEAD' })).status).toBe(status)
  })
})

test('the tag depends on the input and the path, not on the order of the names', async () => {
  const at = await sharedApp({ route: probeRoute })
  const tag = await tagOf(`${at}/test/probe?${QUERY}`)
  expect(await tagOf(`${at}/test/probe?${QUERY.split('&').toReversed().join('&')}`)).toBe(tag)
  expect(await tagOf(`${at}/test/probe?${QUERY}3`)).not.toBe(tag)
  expect(await tagOf(`${at}/test/table?${QUERY}`)).not.toBe(tag)
})

test('each media type is kept on its own', async () => {
  const at = `${await sharedApp({ route: probeRoute })}/test/table?${QUERY}`
  const json = await ask(at, { headers: { accept: '*/*' } })
  const csv = await ask(at, { headers: { accept: 'text/csv, application/json;q=0.5' } })
  expect(json.headers).toMatchObject({
    vary: 'Accept, Accept-Encoding',
    'content-type': 'application/json; charset=utf-8',
  })
  expect(csv.headers).toMatchObject({ vary: 'Accept, Accept-Encoding', 'content-type': 'text/csv; charset=utf-8' })
  expect(csv.text).toBe('bore\r\n12\r\n')
  expect(csv.headers['etag']).not.toBe(json.headers['etag'])
})

describe('Vary', () => {
  test.each([
    ['GET', 200, {}, 'Origin, Accept, Accept-Encoding'],
    ['HEAD', 200, {}, 'Origin, Accept, Accept-Encoding'],
    ['GET', 304, { 'if-none-match': '*' }, 'Origin, Accept, Accept-Encoding'],
    ['GET', 406, { accept: 'image/png' }, 'Origin, Accept'],
  ] as const)(
    '%s answered %d names all that it depends on: the origin, where origins are listed, and what the caller accepts',
    async (method, status, headers, vary) => {
      const at = await startedApp({ route: probeRoute, config: { corsOrigin: ['https://courses.example'] } })
      const answer = await ask(`${at}/test/table?${QUERY}`, {
        method,
        headers: { origin: 'https://courses.example', ...headers },
      })
      expect(answer.status).toBe(status)
      expect(answer.headers['vary']).toBe(vary)
    },
  )
})

test('a POST and a problem are not kept', async () => {
  const at = await sharedApp({ route: probeRoute })
  const posted = await post(`${at}/test/probe`, PROBE, { 'if-none-match': '*' })
  expect(posted.status).toBe(200)
  expect(posted.headers).not.toHaveProperty('etag')
  for (const query of [QUERY.replace('bore=12', `bore=${IMPOSSIBLE_BORE}`), 'units=mm']) {
    const { headers } = await ask(`${at}/test/probe?${query}`)
    expect(headers).not.toHaveProperty('etag')
    expect(headers['cache-control']).toBe('no-store')
  }
})
