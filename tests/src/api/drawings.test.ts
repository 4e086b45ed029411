import { describe, expect, test } from 'vitest'
import { ENGINE } from '#src/engine.ts'
import { ask, faultsIn, post, problemIn } from '#tests/support/ask.ts'
import { sharedApp, startedApp } from '#tests/support/started-app.ts'

const QUERY = 'units=mm&balls.count=12&balls.diameter=16&bore=12'
const BODY = { units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12 }

test('a drawing for an <img>: by its address alone, from any page, to be kept', async () => {
  const at = `${await sharedApp()}/v1/drawings/assembly.svg?${QUERY}`
  const answer = await ask(at, {
    headers: { accept: 'image/avif,image/webp,image/*,*/*;q=0.8', origin: 'https://courses.example' },
  })
  expect(answer.status).toBe(200)
  expect(answer.headers).toMatchObject({
    'content-type': expect.stringMatching(/^image\/svg\+xml/),
    'cross-origin-resource-policy': 'cross-origin',
    'access-control-allow-origin': '*',
    'cache-control': 'public, max-age=86400, stale-while-revalidate=604800',
  })
  expect(answer.text).toMatch(/^<svg [^>]*width="297mm" height="210mm"/)
  const again = await ask(at, { headers: { 'if-none-match': String(answer.headers['etag']) } })
  expect(again.status).toBe(304)
})

test('POST gives the same drawing', async () => {
  const at = await sharedApp()
  const byQuery = await ask(`${at}/v1/drawings/assembly.svg?${QUERY}`)
  const byBody = await post(`${at}/v1/drawings/assembly.svg`, BODY)
  expect(byBody.text).toBe(byQuery.text)
})

test('it may be kept for ever only where the address names the engine that answers', async () => {
  const at = `${await sharedApp()}/v1/drawings/assembly.svg?${QUERY}`
  const engine = String((await ask(at)).headers['x-engine'])
  expect(engine).toBe(ENGINE)
  const named = await ask(`${at}&engine=${engine}`)
  expect(named.headers['cache-control']).toBe('public, max-age=31536000, immutable')
  // Of another build, and of the version that addresses named before there were builds.
  for (const wrong of ['0123456789ab', '0.1.0']) {
    const other = await ask(`${at}&engine=${wrong}`)
    expect(other.headers['cache-control']).toBe('public, no-cache')
    expect(other.text).toBe(named.text)
  }
  expect(faultsIn(await ask(`${at}&engine=newest`))).toHaveLength(1)
})

test('paper is letter for inches and a4 for millimetres, unless it is said', async () => {
  const at = `${await sharedApp()}/v1/drawings/assembly.svg`
  const widthOf = async (query: string) => /width="([^"]+)"/.exec((await ask(`${at}?${query}`)).text)?.[1]
  expect(await widthOf(QUERY)).toBe('297mm')
  expect(await widthOf(`${QUERY}&paper=letter`)).toBe('279.4mm')
  expect(await widthOf('units=in&balls.count=10&balls.diameter=5/8&bore=1/2')).toBe('279.4mm')
})

test.each(['assembly', 'templates', 'gauges'])('%s for a machine that cuts', async (view) => {
  const answer = await ask(`${await sharedApp()}/v1/drawings/${view}.dxf?${QUERY}`)
  expect(answer.status).toBe(200)
  expect(answer.headers['content-type']).toMatch(/^image\/vnd\.dxf/)
  expect(answer.text).toMatch(/^0\r\nSECTION\r\n.*\r\n0\r\nEOF\r\n$/s)
})

test.each(['assembly', 'templates', 'gauges'])('%s to print, the same bytes each time', async (view) => {
  const at = `${await sharedApp()}/v1/drawings/${view}.pdf?${QUERY}`
  const [one, other] = [await ask(at), await ask(at)]
  expect(one.status).toBe(200)
  expect(one.headers['content-type']).toBe('application/pdf')
  expect(one.text).toMatch(/^%PDF-/)
  expect(other.text).toBe(one.text)
})

describe('a figure for a frame', () => {
  test.each([
    ['*' as const, '*'],
    [false as const, "'none'"],
    [['https://courses.example', 'https://larkmoor.example'], 'https://courses.example https://larkmoor.example'],
  ])('frame ancestors %s', async (frameAncestors, policy) => {
    const at = await startedApp({ config: { frameAncestors } })
    const { headers, text } = await ask(`${at}/v1/drawings/assembly.html?${QUERY}`)
    expect(headers['content-type']).toBe('text/html; charset=utf-8')
    expect(headers['content-security-policy']).toMatch(/^default-src 'none'; style-src 'sha256-/)
    expect(String(headers['content-security-policy']).endsWith(`frame-ancestors ${policy}`)).toBe(true)
    expect(text).toMatch(/<figure><div class="wide(?: from-\d+)?"><svg [^>]*viewBox="0 0 297 210"/)
    expect(text).not.toMatch(/<script|<link|https?:\/\/(?!www\.w3\.org)/)
  })

  test('has the same lines as the drawing', async () => {
    const at = `${await sharedApp()}/v1/drawings/assembly`
    const lines = (text: string) => text.split('<div class="narrow">')[0]?.match(/<(path|circle|text) [^>]*>/g)
    expect(lines((await ask(`${at}.html?${QUERY}`)).text)).toEqual(lines((await ask(`${at}.svg?${QUERY}`)).text))
  })
})

test.each(['assembly', 'templates', 'gauges'])(
  'no line in the lists of the %s ends between a figure and its unit',
  async (view) => {
    const { text } = await ask(`${await sharedApp()}/v1/drawings/${view}.html?${QUERY}`)
    const items = [...text.matchAll(/<li>([^<]*)/g)].map(([, line = '']) => line)
    expect(items.some((line) => /\d\u00a0(?:in|mm)/.test(line))).toBe(true)
    expect(items.filter((line) => /\d (?:in|mm)(?![\w/])/.test(line))).toEqual([])
  },
)

describe('what cannot be drawn', () => {
  test.each(['/v1/drawings/wheels.svg', '/v1/drawings/assembly.bmp', '/v1/drawings/assembly'])(
    '%s is not there',
    async (path) => {
      const at = await sharedApp()
      problemIn(await ask(`${at}${path}?${QUERY}`), 404)
      problemIn(await post(`${at}${path}`, BODY), 404)
    },
  )

  test('a bearing that cannot exist', async () => {
    const at = await sharedApp()
    const answer = await ask(`${at}/v1/drawings/assembly.svg?units=mm&balls.count=12&balls.diameter=16&bore=50`)
    expect(problemIn(answer, 422).errors?.[0]?.path).toBe('/bore')
    expect(answer.headers['etag']).toBeUndefined()
  })

  test('what would take more paper than anyone prints', async () => {
    const at = `${await sharedApp()}/v1/drawings/templates`
    const query = 'units=mm&balls.count=100&balls.diameter=300&bore=100'
    expect(problemIn(await ask(`${at}.pdf?${query}`), 422).errors?.[0]?.message).toMatch(/\d+ sheets of a4/)
    expect((await ask(`${at}.svg?${query}`)).status).toBe(200)
  })

  test('a query that is not valid', async () => {
    const at = await sharedApp()
    expect(faultsIn(await ask(`${at}/v1/drawings/assembly.svg?${QUERY}&paper=a5&bore2=1`))).toHaveLength(2)
  })

  test('for a caller who takes no SVG', async () => {
    const at = await sharedApp()
    problemIn(await ask(`${at}/v1/drawings/assembly.svg?${QUERY}`, { headers: { accept: 'application/json' } }), 406)
  })
})
