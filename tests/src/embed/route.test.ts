import { hash } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import { ask } from '#tests/support/ask.ts'
import { sharedApp, startedApp } from '#tests/support/started-app.ts'

const BEARING = 'units=mm&balls.count=14&balls.diameter=14&balls.material=glass&bore=10'

/** What a page may run, by its digest, and what it runs. */
const scriptOf = (page: string): string => /<script>([\s\S]*)<\/script>/.exec(page)?.[1] ?? ''

describe('a page for a frame', () => {
  test.each([
    ['bearing', '<form>'],
    ['assembly', '<title>Assembly'],
    ['templates', '<svg'],
    ['gauges', '<svg'],
    ['job-sheet', 'class="step"'],
  ])('shows %s, and its policy allows its own script and style alone', async (view, expected) => {
    const at = await startedApp({ config: { frameAncestors: ['https://courses.example'] } })
    const { status, headers, text } = await ask(`${at}/embed/${view}?${BEARING}&theme=dark`)
    expect(status).toBe(200)
    expect(text).toContain(expected)
    expect(text).toContain('data-theme="dark"')
    const policy = String(headers['content-security-policy'])
    expect(policy).toContain('frame-ancestors https://courses.example')
    expect(policy).toContain(`script-src 'sha256-${hash('sha256', scriptOf(text), 'base64')}'`)
    expect(text.match(/<script|<style/g)).toEqual(['<style', '<script'])
  })

  test.each([
    ['/embed/bearing?units=mm', 400, 'balls'],
    [`/embed/bearing?${BEARING.replace('bore=10', 'bore=1,5')}`, 400, '<b>Bore:</b> '],
    [
      `/embed/bearing?arrangement=roller&${BEARING.replace('diameter=14', 'diameter=x')}`,
      400,
      '<b>Roller diameter:</b> ',
    ],
    [`/embed/assembly?${BEARING}&bore=11`, 400, 'bore'],
    [`/embed/assembly?${BEARING.replace('bore=10', 'bore=90')}`, 422, 'A bore of 90 mm'],
    [`/embed/wheel?${BEARING}`, 404, 'bearing'],
    [`/embed/bearing?${BEARING}&theme=%22%3E%3Cscript%3E`, 400, '&quot;&gt;&lt;script&gt;'],
    [`/v1/drawings/assembly.html?${BEARING.replace('bore=10', 'bore=90')}`, 422, 'A bore of 90 mm'],
    [`/v1/job-sheet?format=html&${BEARING.replace('bore=10', 'bore=90')}`, 422, 'A bore of 90 mm'],
  ])('says in words, in the frame, why %s is refused', async (path, status, expected) => {
    const at = await sharedApp()
    const answer = await ask(at + path, { headers: { accept: 'text/html' } })
    expect(answer.status).toBe(status)
    expect(answer.headers).toMatchObject({ 'content-type': 'text/html; charset=utf-8', 'cache-control': 'no-store' })
    expect(answer.headers['content-security-policy']).toContain('frame-ancestors *')
    expect(answer.text).toContain(expected)
    expect(answer.text).not.toContain('"><script>')
  })

  test.each([
    ['radial', 'mm', '16', ['Balls', 'Ball diameter (mm)', 'Bore (mm)']],
    ['roller', 'in', '5/8', ['Rollers', 'Roller diameter (in)', 'Bore (in)']],
  ])(
    'the fields of a bearing of kind %s in %s are called as what they are',
    async (arrangement, units, size, labels) => {
      const query = `units=${units}&arrangement=${arrangement}&balls.count=12&balls.diameter=${size}&bore=${size}`
      const { text } = await ask(`${await sharedApp()}/embed/bearing?${query}`)
      expect([...text.matchAll(/<label>([^<]*)</g)].map(([, label]) => label)).toEqual(labels)
    },
  )

  test('its fields are what it was asked, and nothing in them is markup', async () => {
    const at = await sharedApp()
    const { text } = await ask(`${at}/embed/bearing?${BEARING.replace('bore=10', 'bore=3/8%22')}&ballGap=0.7`)
    expect(text).toContain('name="bore" value="3/8&quot;"')
    expect(text).toContain('type="hidden" name="ballGap" value="0.7"')
  })
})

describe('a bearing in a frame', () => {
  const framed = async (config: { publicUrl?: string }, query: string) =>
    (await ask(`${await startedApp({ config })}/embed/bearing?${query}`)).text

  test.each([
    [{}, '/#'],
    [{ publicUrl: 'https://bearings.example' }, 'https://bearings.example/#'],
  ])('leads with %j to the whole page with this very bearing, in a window of its own', async (config, start) => {
    const text = await framed(config, `${BEARING}&ballGap=0.7&theme=dark`)
    const [, href = ''] = /<a href="([^"]*)" target="_blank" rel="noopener">/.exec(text) ?? []
    expect(href.startsWith(start)).toBe(true)
    const told = Object.fromEntries(new URLSearchParams(href.slice(start.length).replaceAll('&amp;', '&')))
    expect(told).toMatchObject({ v: '1', ...Object.fromEntries(new URLSearchParams(BEARING)), ballGap: '0.7' })
    expect(told).not.toHaveProperty('theme')
  })

  test.each([
    BEARING,
    'units=mm&balls.count=12&balls.diameter=16&bore=12&width=14',
    'units=mm&balls.count=12&balls.diameter=16&bore=12&outerRing.wall=3',
    'units=mm&arrangement=thrust&balls.count=24&balls.diameter=16&balls.material=glass&bore=40',
    'units=mm&arrangement=caged&balls.count=8&balls.diameter=16&bore=12',
    'units=in&arrangement=roller&balls.count=12&balls.diameter=5/8&bore=1/2',
  ])('warns of %s as its job sheet does, and calls the rest good to know', async (query) => {
    const at = await sharedApp()
    const grave = (text: string) => text.match(/<p class="caution"><b>Warning\.<\/b> .*?<\/p>/g) ?? []
    const [frame, sheet, design] = await Promise.all(
      [`/embed/bearing?${query}`, `/embed/job-sheet?${query}`, `/v1/design?${query}`].map(
        async (path) => (await ask(at + path)).text,
      ),
    )
    for (const warning of grave(frame ?? '')) expect(sheet).toContain(warning)
    const { warnings } = JSON.parse(design ?? '') as { readonly warnings: readonly { readonly severity: string }[] }
    expect(grave(frame ?? '')).toHaveLength(warnings.filter(({ severity }) => severity !== 'note').length)
    expect(frame?.includes('Good to know')).toBe(warnings.some(({ severity }) => severity === 'note'))
  })
})

test('a program still gets a problem document', async () => {
  const at = await sharedApp()
  const { headers } = await ask(`${at}/v1/job-sheet?units=mm`)
  expect(headers['content-type']).toBe('application/problem+json')
})

test.each(['svg', 'pdf'])('a drawing as %s may be framed by whom the setting names', async (format) => {
  const at = await startedApp({ config: { frameAncestors: ['https://courses.example'] } })
  const { headers } = await ask(`${at}/v1/drawings/assembly.${format}?${BEARING}`)
  expect(headers['content-security-policy']).toBe(
    "default-src 'none'; object-src 'self'; frame-ancestors https://courses.example",
  )
})

test('the element is one file, whose attributes are the names of the query', async () => {
  const at = await sharedApp()
  const { status, headers, text } = await ask(`${at}/embed/racewright-1.js`)
  expect(status).toBe(200)
  expect(headers['content-type']).toBe('text/javascript; charset=utf-8')
  expect(headers['etag']).toBeDefined()
  expect(text).toMatch(/NAMES = 'units arrangement balls\.count .*\btheme\b.*'/)
  expect(text).not.toContain('{{')
})

test.each([
  ['radial', 'balls.count=12&balls.diameter=16&balls.material=wood&bore=12', ['outerRing', 'innerRing', 'balls']],
  ['caged', 'balls.count=8&balls.diameter=16&bore=12', ['outerRing', 'innerRing', 'cage', 'balls']],
  ['roller', 'balls.count=14&balls.diameter=12&bore=20', ['outerRing', 'innerRing', 'balls']],
  ['thrust', 'balls.count=24&balls.diameter=16&bore=40', ['plates', 'balls']],
])(
  'of a %s bearing with woods and a climate a frame shows the figures that every path does',
  async (kind, balls, parts) => {
    const at = await sharedApp()
    const woods = parts.map(
      (part) => `making.woods.${part}.species=${part === 'balls' ? 'birch-yellow' : 'maple-sugar'}`,
    )
    const air = ['today.relativeHumidity=50', 'relativeHumidity.min=35', 'relativeHumidity.max=60']
    const place = [...woods, ...air.map((each) => `making.climate.${each}`)].join('&')
    const query = `units=mm&arrangement=${kind}&${balls}&${place}`
    const words = (text: string): string =>
      text
        .replaceAll(/<[^>]*>/g, '')
        .replaceAll('&#39;', "'")
        .replaceAll(/\s+/g, ' ')
    const { summary, dimensions } = JSON.parse((await ask(`${at}/v1/design?${query}`)).text)
    const frame = words((await ask(`${at}/embed/bearing?${query}`)).text)
    expect(frame).toContain(words(summary))
    for (const { name, value } of dimensions)
      expect(frame).toMatch(new RegExp(`${name.replaceAll(/[()]/g, '.')}.*${value.toFixed(2)}`))
    for (const view of ['assembly', 'templates', 'gauges'])
      expect(words((await ask(`${at}/embed/${view}?${query}`)).text)).toContain(
        words(
          (await ask(`${at}/v1/drawings/${view}.html?${query}`)).text.match(/<figure>[\s\S]*<\/figure>/)?.[0] ??
            'no figure',
        ),
      )
    const steps = /<ol>[\s\S]*<\/ol>/
    const sheet = (await ask(`${at}/v1/job-sheet?${query}&format=html`)).text.match(steps)?.[0]
    expect((await ask(`${at}/embed/job-sheet?${query}`)).text.match(steps)?.[0]).toBe(sheet ?? 'no steps')
  },
)
