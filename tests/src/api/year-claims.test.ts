// A radial bearing that we show begins with its wood and its place, and says of its year what a seasonal fit answers for it.
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readBearing } from '#src/kiosk/job/bearing.ts'
import { EXAMPLE_JOB, FIRST_JOB } from '#src/kiosk/job/job.ts'
import { ask, post } from '#tests/support/ask.ts'
import { sharedApp } from '#tests/support/started-app.ts'

type Shown = readonly [name: string, design: object]

/** Those that show something else. */
const NO_YEAR: Readonly<Record<string, string>> = {
  'design-warned.json': 'how warnings look, in a bearing that nobody should make',
  'loadCheck-edges.json': 'balls that ride on edges',
  'toleranceCheck-nearlyLinear.json': 'a check without trials, which the weather needs',
}

const isRadial = (design: object): boolean =>
  'balls' in design && !Array.isArray(design.balls) && !('arrangement' in design)

const designIn = (request: object): object => Object(Reflect.get(request, 'design') ?? request)

const EXAMPLES: readonly Shown[] = readdirSync('openapi/examples')
  .filter((file) => !file.includes('-refused') && NO_YEAR[file] === undefined)
  .map((file) => [file, designIn(JSON.parse(readFileSync(`openapi/examples/${file}`, 'utf8')).request)] as const)
  .filter(([, design]) => isRadial(design))

const README = readFileSync('README.md', 'utf8')
const BODIES: readonly Shown[] = Array.from(README.matchAll(/ -d '\n(\{.*?\n\})'/gs), ([, body = '{}'], i) => [
  `body ${i + 1} of the README`,
  designIn(JSON.parse(body)),
])
const QUERIES = Array.from(
  README.matchAll(/(?:bearing='|\?)(units=[^"'\s]+)["'](\nbearing\+=.*?\n(?=curl))?/gs),
  ([, start = '', more = '']) => [start, ...Array.from(more.matchAll(/'([^']*)'/g), ([, text = '']) => text)].join(''),
).filter((query) => !query.includes('arrangement='))

const PAGES: readonly Shown[] = [
  ['the first bearing of the page', readBearing(FIRST_JOB.bearing).request ?? {}],
  ['the example of the page', readBearing(EXAMPLE_JOB.bearing).request ?? {}],
]

/** The one whose year stops it, to show what is then said. */
const STOPPED = ['body 3 of the README', 'seasonalFit.json', 'toleranceCheck-climate.json']

async function designed(design: object) {
  const answer = await post(`${await sharedApp()}/v1/design`, design)
  expect(answer.status, answer.text).toBe(200)
  return JSON.parse(answer.text)
}

describe('a radial bearing that is shown', () => {
  test('comes from everywhere', () => {
    expect([EXAMPLES.length > 8, BODIES.length, QUERIES.length]).toEqual([true, 3, 3])
  })

  test.each([...EXAMPLES, ...BODIES, ...PAGES])('%s: its year is that of the seasonal fit', async (name, design) => {
    const { input, making, warnings } = await designed(design)
    const { runsAllYear, probability } = JSON.parse(
      (await post(`${await sharedApp()}/v1/seasonal-fit`, { design: input })).text,
    )
    expect(making.season).toMatchObject({ runsAllYear, probability })
    if (STOPPED.includes(name) && !runsAllYear)
      expect(warnings).toContainEqual(expect.objectContaining({ code: 'season-asks-for-more' }))
    else expect(runsAllYear).toBe(true)
  })

  test.each(QUERIES)('query %#: it runs all year', async (query) => {
    const answer = await ask(`${await sharedApp()}/v1/design?${query}`)
    expect(JSON.parse(answer.text)).toMatchObject({ making: { season: { runsAllYear: true } } })
  })
})
