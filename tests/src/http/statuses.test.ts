import { Readable } from 'node:stream'
import { describe, expect, test } from 'vitest'
import { ask, faultsIn, post, problemIn } from '#tests/support/ask.ts'
import { BUG_BORE, IMPOSSIBLE_BORE, PROBE, probeRoute } from '#tests/support/probe-route.ts'
import { inPackets, raw } from '#tests/support/raw.ts'
import { sharedApp, startedApp } from '#tests/support/started-app.ts'

describe('400', () => {
  test.each([
    ['no body', undefined, /no body/],
    ['an empty body', '', /empty/],
    ['blanks', '  \n', /empty/],
    ['half a body', '{"units": "mm",', /not JSON/],
    ['a fraction without quotes', '{"units":"in","balls":{"count":12,"diameter":5/8}}', /double quotes/],
    ['NaN', '{"bore": NaN}', /not JSON/],
    ['Infinity', '{"bore": -Infinity}', /not JSON/],
    ['__proto__', '{"__proto__": {"units": "mm"}}', /__proto__/],
    ['__proto__, escaped', '{"\\u005f_proto__": {"units": "mm"}}', /__proto__/],
    ['constructor.prototype', '{"constructor": {"prototype": {"units": "mm"}}}', /constructor/],
    ['a list', '[]', /must be an object/],
    ['null', 'null', /must be an object/],
    ['10,000 nested lists', '['.repeat(10_000) + ']'.repeat(10_000), /nested deeper than 64 levels/],
    ['10,000 nested objects', `${'{"balls":'.repeat(10_000)}1${'}'.repeat(10_000)}`, /nested deeper than 64 levels/],
    ['2,001 objects', `[${'{},'.repeat(2_000)}0]`, /more than 2000 lists and objects/],
    ['1,999 objects and a list', `[${'{},'.repeat(1_998)}{}]`, /must be an object/],
    ['brackets in a text', `{"bore": "\\"${'['.repeat(10_000)}"}`, /^\/balls: "balls" is missing$/m],
    ['ten nested lists', '['.repeat(10) + ']'.repeat(10), /must be an object/],
  ])('%s', async (_name, body, message) => {
    const at = await sharedApp({ route: probeRoute })
    const answer = await ask(`${at}/test/probe`, {
      method: 'POST',
      ...(body !== undefined && { headers: { 'content-type': 'application/json' }, body }),
    })
    const problem = problemIn(answer, 400)
    expect(problem.type).toBe('/problems/not-valid')
    expect(faultsIn(answer).join('\n')).toMatch(message)
    expect((await post(`${at}/test/probe`, PROBE)).status).toBe(200)
  })

  test('where a text stops being JSON', async () => {
    const at = await sharedApp({ route: probeRoute })
    const text = JSON.stringify(PROBE, null, 2).replace('"bore": 12', '"bore": 12,')
    expect(faultsIn(await post(`${at}/test/probe`, text)).join()).toMatch(/at line 8, column 1/)
  })

  test('an address with a % that stands for nothing', async () => {
    const at = await sharedApp()
    expect(problemIn(await ask(`${at}/%zz`), 400).detail).toMatch(/%/)
  })

  test('no Host header', async () => {
    const at = await sharedApp()
    expect(await raw(at, 'GET /health/live HTTP/1.1\r\nconnection: close\r\n\r\n')).toMatch(/^HTTP\/1.1 400 .*Host/s)
  })

  test('what is no HTTP at all', async () => {
    const at = await sharedApp()
    const answer = await raw(at, 'what must I cut?\r\n\r\n')
    expect(answer).toMatch(/^HTTP\/1.1 400 Bad Request\r\nContent-Type: application\/problem\+json\r\n/)
    const [, body = ''] = answer.split('\r\n\r\n')
    expect(JSON.parse(body)).toMatchObject({ status: 400, title: 'Bad Request' })
  })
})

describe('404', () => {
  test('an unknown path', async () => {
    const at = await sharedApp()
    expect(problemIn(await ask(`${at}/wheels`), 404).detail).toMatch(/\/openapi.json/)
  })

  test('a path with a slip of the finger', async () => {
    const at = await sharedApp({ route: probeRoute })
    expect(problemIn(await post(`${at}/test/prboe`, PROBE), 404).detail).toMatch('Did you mean /test/probe?')
  })

  test('comes before a body is read', async () => {
    const at = await sharedApp()
    problemIn(await post(`${at}/wheels`, '{"half'), 404)
    problemIn(await post(`${at}/wheels`, 'x', { 'content-type': 'text/plain' }), 404)
  })

  test('a file of the page that is not there', async () => {
    const at = await sharedApp()
    problemIn(await ask(`${at}/docs/static/none.css`), 404)
  })
})

describe('405', () => {
  test.each([
    ['PUT', '/test/probe', 'GET, HEAD, OPTIONS, POST'],
    ['DELETE', '/health/live', 'GET, HEAD, OPTIONS'],
    ['POST', '/test/assembly.svg', 'GET, HEAD, OPTIONS'],
  ] as const)('%s %s', async (method, path, allow) => {
    const at = await sharedApp({ route: probeRoute })
    const answer = await ask(`${at}${path}`, { method, headers: { 'content-type': 'text/plain' }, body: 'x' })
    problemIn(answer, 405)
    expect(answer.headers['allow']).toBe(allow)
  })

  test('a method that only other services have', async () => {
    const at = await sharedApp()
    const answer = await raw(at, 'PROPFIND /health/live HTTP/1.1\r\nhost: a\r\nconnection: close\r\n\r\n')
    expect(answer).toMatch(/^HTTP\/1.1 405 .*allow: GET, HEAD, OPTIONS/s)
  })
})

describe('OPTIONS', () => {
  test('tells the methods', async () => {
    const at = await sharedApp({ route: probeRoute })
    const answer = await ask(`${at}/test/probe`, { method: 'OPTIONS' })
    expect(answer.status).toBe(204)
    expect(answer.headers['allow']).toBe('GET, HEAD, OPTIONS, POST')
    problemIn(await ask(`${at}/wheels`, { method: 'OPTIONS' }), 404)
    const ofServer = await raw(at, 'OPTIONS * HTTP/1.1\r\nhost: a\r\nconnection: close\r\n\r\n')
    expect(ofServer).toMatch(/^HTTP\/1.1 204 .*allow: GET, HEAD, OPTIONS, POST\r/s)
  })
})

test('HEAD is GET without its body', async () => {
  const at = await sharedApp()
  const get = await ask(`${at}/health/live`)
  const head = await ask(`${at}/health/live`, { method: 'HEAD' })
  expect(head).toMatchObject({ status: 200, text: '' })
  expect(head.headers['content-length']).toBe(String(get.text.length))
})

describe('406', () => {
  test.each([
    'application/json; charset=utf-8',
    'application/json;charset="utf-8";q=0.5',
    'text/html, application/json; profile="a, b; q=0"; version=1',
    'application/json; indent',
    '*/*; charset=utf-8',
  ])('a parameter that is not known here is ignored: %s', async (accept) => {
    const at = await sharedApp({ route: probeRoute })
    expect((await post(`${at}/test/probe`, PROBE, { accept })).status).toBe(200)
  })

  test('a weight still counts beside such a parameter', async () => {
    const at = await sharedApp({ route: probeRoute })
    const accept = 'application/json; charset=utf-8; q=0.2, text/csv; header=present; q=0.9'
    const answer = await post(`${at}/test/table`, PROBE, { accept })
    expect(answer.headers['content-type']).toBe('text/csv; charset=utf-8')
    const refused = { accept: 'application/json; charset=utf-8; q=0' }
    problemIn(await post(`${at}/test/probe`, PROBE, refused), 406)
  })

  test.each(['text/html', 'application/pdf, image/*', 'application/json;q=0'])('%s', async (accept) => {
    const at = await sharedApp({ route: probeRoute })
    expect(problemIn(await post(`${at}/test/probe`, PROBE, { accept }), 406).detail).toMatch('application/json')
  })
})

describe('408', () => {
  test('headers that do not end', async () => {
    const at = await startedApp({ config: { headersTimeoutMs: 200, requestTimeoutMs: 400 } })
    expect(await raw(at, 'GET /health/live HTTP/1.1\r\nhost: a\r\n')).toMatch(/^HTTP\/1.1 408 .*problem\+json/s)
  })

  test('a body that does not come', async () => {
    const at = await startedApp({ route: probeRoute, config: { headersTimeoutMs: 200, requestTimeoutMs: 400 } })
    const head = 'POST /test/probe HTTP/1.1\r\nhost: a\r\ncontent-type: application/json\r\ncontent-length: 99\r\n\r\n'
    expect(await raw(at, head, '{"units":')).toMatch(/^HTTP\/1.1 408 .*problem\+json/s)
  })
})

describe('413', () => {
  const megabytes = Buffer.alloc(10_000_000, ' ')

  test('ten megabytes', async () => {
    const at = await sharedApp({ route: probeRoute })
    const headers = { 'content-type': 'application/json' }
    const answer = await ask(`${at}/test/probe`, { method: 'POST', headers, body: megabytes })
    expect(problemIn(answer, 413).detail).toMatch('131072 bytes')
    expect((await post(`${at}/test/probe`, PROBE)).status).toBe(200)
  })

  test('ten megabytes in pieces, not announced', async () => {
    const at = await sharedApp({ route: probeRoute })
    const headers = { 'content-type': 'application/json' }
    const pieces = Readable.from(Array(100).fill(megabytes.subarray(0, 100_000)))
    const answer = await ask(`${at}/test/probe`, { method: 'POST', headers, body: pieces })
    expect(problemIn(answer, 413).detail).toMatch('131072 bytes')
  })
})

describe('414', () => {
  test.each([9_000, 60_000])('an address of %i characters', async (length) => {
    const at = await sharedApp()
    const answer = await ask(`${at}/health/live?${'x'.repeat(length)}`)
    expect(problemIn(answer, 414).detail).toMatch(/POST/)
  })

  test('an address that comes in many packets, as over any network', async () => {
    const at = await sharedApp()
    const begin = `GET /health/live?${'x'.repeat(500)}`
    const answer = await inPackets(at, [
      begin,
      ...Array(90).fill('x'.repeat(500)),
      ' HTTP/1.1\r\nhost: a\r\nconnection: close\r\n\r\n',
    ])
    expect(answer).toMatch(/^HTTP\/1.1 414 .*problem\+json.*POST/s)
  })
})

describe('415', () => {
  test.each([
    'text/plain',
    'application/xml',
    'application/x-www-form-urlencoded',
    'nonsense',
    'multipart/form-data; boundary=a',
  ])('%s', async (type) => {
    const at = await sharedApp({ route: probeRoute })
    const answer = await post(`${at}/test/probe`, PROBE, { 'content-type': type })
    expect(problemIn(answer, 415).detail).toMatch('application/json')
    expect(answer.headers['accept']).toBe('application/json')
  })

  test('a compressed body', async () => {
    const at = await sharedApp({ route: probeRoute })
    problemIn(await post(`${at}/test/probe`, PROBE, { 'content-encoding': 'gzip' }), 415)
  })
})

test('422: what cannot exist, with its reasons', async () => {
  const at = await sharedApp({ route: probeRoute })
  const problem = problemIn(await post(`${at}/test/probe`, { ...PROBE, bore: IMPOSSIBLE_BORE }), 422)
  expect(problem).toMatchObject({
    type: '/problems/cannot-exist',
    title: 'Cannot exist',
    errors: [{ path: '/bore', message: 'a bore of 13 brings bad luck' }],
  })
})

describe('431', () => {
  const HEAD = 'GET /health/live HTTP/1.1\r\nhost: a\r\nconnection: close\r\n'

  test.each([
    ['one that is too long', `x-long: ${'x'.repeat(17_000)}\r\n`, '16384 bytes'],
    ['too long together', `x: ${'y'.repeat(900)}\r\n`.repeat(20), '16384 bytes'],
    ['too many', 'x: y\r\n'.repeat(1_001), '1000 lines'],
    ['without an end', `x-long: ${'x'.repeat(100_000)}\r\n`, '65536 bytes'],
  ])('headers, %s', async (_name, headers, limit) => {
    const answer = await raw(await sharedApp(), `${HEAD}${headers}\r\n`)
    expect(answer).toMatch(/^HTTP\/1.1 431 .*problem\+json/s)
    expect(answer).toContain(limit)
  })

  test('headers that come in many packets', async () => {
    const at = await sharedApp()
    const answer = await inPackets(at, [`${HEAD}x-long: `, ...Array(40).fill('x'.repeat(500)), '\r\n\r\n'])
    expect(answer).toMatch(/^HTTP\/1.1 431 .*16384 bytes/s)
  })

  test('what is allowed is served', async () => {
    const headers = `x: ${'y'.repeat(990)}\r\n`.repeat(16)
    expect(await raw(await sharedApp(), `${HEAD}${headers}\r\n`)).toMatch(/^HTTP\/1.1 200 /)
  })
})

test('500: a bug of ours is in the log, not in the answer', async () => {
  const logLines: string[] = []
  const at = await startedApp({ route: probeRoute, logLines })
  const answer = await post(`${at}/test/probe`, { ...PROBE, bore: BUG_BORE }, { 'x-request-id': 'bug-1' })
  const problem = problemIn(answer, 500)
  expect(answer.text).not.toMatch(/secret/)
  expect(problem.errors).toBeUndefined()
  const line = logLines.find((text) => text.includes('the secret 14'))
  expect(JSON.parse(line ?? '{}')).toMatchObject({ reqId: 'bug-1', level: 50 })
})
