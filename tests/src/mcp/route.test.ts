import { Client, StreamableHTTPClientTransport } from '@modelcontextprotocol/client'
import { describe, expect, onTestFinished, test } from 'vitest'
import { ask, post, problemIn } from '#tests/support/ask.ts'
import { sharedApp, startedApp, testedApp } from '#tests/support/started-app.ts'

const DESIGN = {
  units: 'mm',
  balls: { count: 14, diameter: 14, material: 'glass', standardDeviation: 0.1 },
  bore: 10,
  ballGap: 0.7,
}

/** The official client, in the version of the protocol that both settle on, or in the one before. */
async function connected(at: string, mode: 'auto' | 'legacy' = 'auto'): Promise<Client> {
  const client = new Client({ name: 'larkmoor', version: '1.0.0' }, { versionNegotiation: { mode } })
  await client.connect(new StreamableHTTPClientTransport(new URL(`${at}/mcp`)))
  onTestFinished(() => client.close())
  return client
}

type Said = { readonly text: string; readonly isError: boolean }
async function said(client: Client, name: string, args: Record<string, unknown>): Promise<Said> {
  const { content, isError = false } = await client.callTool({ name, arguments: args })
  const [first] = content
  return { text: first?.type === 'text' ? first.text : '', isError }
}

test.each(['auto', 'legacy'] as const)('the official client lists and calls the tools (%s)', async (mode) => {
  const client = await connected(await sharedApp(), mode)
  const { tools } = await client.listTools()
  expect(tools.map(({ name }) => name)).toEqual([
    'design',
    'will_it_run',
    'fit',
    'season',
    'sheets',
    'search',
    'look_up',
  ])
  expect((await said(client, 'design', DESIGN)).text).toContain('groove bottom diameter (De): 77.14 mm, by caliper')
})

test('the list is small, and everything in it is described', async () => {
  const client = await connected(await sharedApp())
  const { tools } = await client.listTools()
  expect(JSON.stringify(tools).length).toBeLessThan(20_000)
  type Schema = { description?: string; properties?: Record<string, Schema>; items?: Schema }
  const undescribed = ({ description, properties, items }: Schema, path: string): readonly string[] => [
    ...(description === undefined && properties === undefined && items === undefined ? [path] : []),
    ...Object.entries(properties ?? {}).flatMap(([name, field]) => undescribed(field, `${path}.${name}`)),
    ...(items === undefined ? [] : undescribed(items, path)),
  ]
  expect(tools.flatMap(({ name, inputSchema }) => undescribed(inputSchema as Schema, name))).toEqual([])
})

describe('each tool answers shortly, with the sizes, the cautions and a link to the whole answer', () => {
  const scatter = { ballDiameter: { kind: 'normal', standardDeviation: 0.1 } }
  const making = {
    woods: { outerRing: { species: 'maple-sugar' }, innerRing: { species: 'maple-sugar' } },
    climate: { today: { relativeHumidity: 50 }, relativeHumidity: { min: 30, max: 65 } },
  }
  const limits = {
    units: 'mm',
    outsideDiameter: { max: 150 },
    bore: { min: 8, max: 12 },
    balls: [{ diameter: 14, material: 'glass' }],
    counts: { min: 8, max: 16 },
  }
  const opening = { kind: 'last-ball-opening', value: 10.5, graduation: 0.5 }

  test.each([
    ['will_it_run', { design: DESIGN, contributors: scatter }, /of 100 such bearings/, 'POST AT/v1/tolerance-check'],
    [
      'fit',
      { design: DESIGN, ring: 'outer', readings: [opening] },
      /of depth .* stop when it measures [\d.]+ mm more/,
      'POST AT/v1/fit-correction',
    ],
    ['season', { design: { ...DESIGN, making } }, /driest: /, 'POST AT/v1/seasonal-fit'],
    ['search', limits, /^1\. 1\d × 14 mm/m, 'POST AT/v1/design-search'],
    ['sheets', { ...DESIGN, paper: 'letter' }, /^1\. Choose 14 balls$/m, 'GET AT/v1/job-sheet?'],
  ])('%s', async (name, args, expected, link) => {
    const at = await sharedApp()
    const { text, isError } = await said(await connected(at), name, args)
    expect(isError, text).toBe(false)
    expect(text).toMatch(expected)
    expect(text).toContain('Never use it to carry people')
    expect(text).toContain(`Full answer: ${link.replace('AT', at)}`)
    expect(text.length).toBeLessThan(4_000)
  })

  test('every link of the sheets leads to a PDF', async () => {
    const at = await sharedApp()
    const { text } = await said(await connected(at), 'sheets', { ...DESIGN, paper: 'letter' })
    const links = Array.from(text.matchAll(/^- [a-z ]+: (http\S+)$/gm), ([, link = '']) => link)
    expect(links).toHaveLength(4)
    for (const link of links)
      expect(await ask(link)).toMatchObject({ status: 200, headers: { 'content-type': 'application/pdf' } })
  })

  test.each([
    [{ table: 'woods' }, '"species":"alder-red"', /and \d+ more rows/],
    [
      { table: 'sizes', units: 'in', diameters: ['5/8'], counts: [10, 12] },
      '"pitchDiameter":2.0360961',
      /size-table\?/,
    ],
    [{ table: 'screws', units: 'in', gauge: 8 }, '"gauge":8', /fasteners\?units=in&gauge=8/],
  ])('look_up %j', async (args, row, more) => {
    const { text } = await said(await connected(await sharedApp()), 'look_up', args)
    expect(text).toContain(row)
    expect(text).toMatch(more)
  })
})

test('a link to the whole answer gives the answer', async () => {
  const at = await sharedApp()
  const { text } = await said(await connected(at), 'design', DESIGN)
  const [, link = ''] = /Full answer: GET (\S+)/.exec(text) ?? []
  expect(JSON.parse((await ask(link)).text)).toMatchObject({ pitchDiameter: 63.140402 })
})

test.each([
  ['design', { ...DESIGN, bor: 1 }, /^The arguments have errors:\n- \/bor: Unknown name "bor"/],
  ['design', { ...DESIGN, bore: 60 }, /^This has no answer:\n- \/bore: A bore of 60 mm/],
  ['design', {}, /units/],
  ['will_it_run', {}, /design/],
  ['look_up', { table: '__proto__' }, /Unknown table "__proto__"/],
  ['look_up', {}, /Unknown table nothing/],
  ['toString', {}, /There is no tool "toString"/],
])('%s of %j is refused in words', async (name, args, expected) => {
  const { text, isError } = await said(await connected(await sharedApp()), name, args)
  expect(isError).toBe(true)
  expect(text).toMatch(expected)
})

test('what is no message of the protocol is refused, and never with a 500', async () => {
  const at = `${await startedApp({ config: { bodyLimitBytes: 2_048 } })}/mcp`
  const call = (params: unknown) => ({ jsonrpc: '2.0', id: 1, method: 'tools/call', params })
  const bodies = [
    {},
    { jsonrpc: '1.0' },
    call('x'),
    call({ name: 1 }),
    call({ name: 'design', arguments: [] }),
    { id: {} },
  ]
  for (const body of bodies) expect((await post(at, body)).status, JSON.stringify(body)).toBeLessThan(500)
  for (const body of ['[]', 'null', '"x"', '{']) problemIn(await post(at, body), 400)
  problemIn(await post(at, call({ name: 'x'.repeat(3_000) })), 413)
  problemIn(await ask(at), 405)
  problemIn(await ask(at, { method: 'POST', body: 'x', headers: { 'content-type': 'text/plain' } }), 415)
})

test('no stream stays open', async () => {
  const at = `${await sharedApp()}/mcp`
  const _meta = {
    'io.modelcontextprotocol/protocolVersion': '2026-07-28',
    'io.modelcontextprotocol/clientInfo': { name: 'larkmoor', version: '1' },
    'io.modelcontextprotocol/clientCapabilities': {},
  }
  const listen = { jsonrpc: '2.0', id: 1, method: 'subscriptions/listen', params: { notifications: {}, _meta } }
  const headers = { 'mcp-protocol-version': '2026-07-28', 'mcp-method': 'subscriptions/listen' }
  expect((await post(at, listen, headers)).text).toContain('Subscription limit reached')
})

test('calls are counted by the rate limit', async () => {
  const at = await startedApp({ config: { rateLimitPerMinute: 1 } })
  const list = { jsonrpc: '2.0', id: 1, method: 'tools/list' }
  expect((await post(`${at}/mcp`, list)).status).toBe(200)
  problemIn(await post(`${at}/mcp`, list), 429)
})

test('work that no thread can take in time is refused as on its path', async () => {
  const app = await testedApp({ config: { taskDeadlineMs: 100, workerThreads: 1 } })
  const args = {
    design: DESIGN,
    contributors: { ballDiameter: { kind: 'normal', standardDeviation: 0.1 } },
    trials: 2_000_000,
  }
  const call = { jsonrpc: '2.0', id: 1, method: 'tools/call', params: { name: 'will_it_run', arguments: args } }
  const { body, statusCode } = await app.inject({ method: 'POST', url: '/mcp', payload: call })
  expect(statusCode).toBe(200)
  expect(body).toMatch(/"isError":true/)
  expect(body).toMatch(/trials/)
})
