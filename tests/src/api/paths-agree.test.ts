import fc from 'fast-check'
import { expect, test } from 'vitest'
import { testedApp } from '#tests/support/started-app.ts'

/*
 * One bearing, asked about on several paths: what one of them says another must not deny. Woods, climate and sizes are drawn,
 * some of them stated and others left open.
 */

interface Warned {
  readonly code: string
  readonly message: string
}
interface Reply {
  readonly status: number
  readonly summary: string
  readonly input: object
  readonly making?: { readonly season?: { readonly probability: object } }
  readonly warnings: readonly Warned[]
  readonly probability: { readonly runsAllYear: number; readonly goesTogether: number }
  readonly ballGap: { readonly probability: { readonly tooTight: number } }
  readonly jointFits: number
}

async function asking() {
  const app = await testedApp()
  return async (path: string, body: unknown): Promise<Reply> => {
    const answer = await app.inject({ method: 'POST', url: `/v1/${path}`, payload: body as object })
    return { status: answer.statusCode, ...answer.json() }
  }
}

const ring = fc.constantFrom(
  { species: 'maple-sugar' },
  { species: 'maple-sugar', construction: 'flat-sawn' },
  { species: 'red-oak-commercial', construction: 'quarter-sawn' },
  { species: 'birch-paper', construction: 'segmented', segments: { count: 12 } },
  { construction: 'cross-laminated-ply' },
)
const humidity = fc.integer({ min: 20, max: 85 })
const open = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(value, { nil: undefined })
const hundredths = (least: number, most: number) => fc.integer({ min: least, max: most }).map((whole) => whole / 100)

const anyDesign = fc
  .record({
    count: fc.integer({ min: 7, max: 20 }),
    diameter: fc.integer({ min: 8, max: 25 }),
    standardDeviation: hundredths(2, 15),
    outerRing: ring,
    innerRing: ring,
    humidities: fc.tuple(humidity, humidity),
    today: humidity,
    ballGap: open(hundredths(60, 200)),
    radialInternalClearance: open(hundredths(10, 250)),
  })
  .map(({ count, diameter, standardDeviation, outerRing, innerRing, humidities, today, ...sizes }) => ({
    units: 'mm',
    balls: { count, diameter, standardDeviation, material: 'glass' },
    bore: 6,
    ...sizes,
    making: {
      woods: { outerRing, innerRing },
      climate: {
        relativeHumidity: { min: Math.min(...humidities), max: Math.max(...humidities) },
        today: { relativeHumidity: today },
      },
    },
  }))

const SEASON_ASKS = 'season-asks-for-more'
const askedForMore = ({ warnings }: Reply): string | undefined =>
  warnings.find(({ code }) => code === SEASON_ASKS)?.message

const openJoints = ({ warnings }: Reply): readonly string[] =>
  warnings.filter(({ code }) => code === 'joints-open').map(({ message }) => message)

test('a design warns of the year exactly where a seasonal fit advises something, in the same words', async () => {
  const asked = await asking()
  const kinds = { left: 0, advised: 0 }
  await fc.assert(
    fc.asyncProperty(anyDesign, async (design) => {
      const designed = await asked('design', design)
      if (designed.status !== 200) return
      const season = await asked('seasonal-fit', { design })
      expect(season.status, season.summary).toBe(200)
      const advised = season.summary.startsWith('Leave it as designed') ? undefined : season.summary
      expect(askedForMore(designed)).toBe(advised)
      expect(openJoints(designed)).toEqual(openJoints(season))
      expect(designed.making?.season?.probability).toEqual(season.probability)
      kinds[advised === undefined ? 'left' : 'advised'] += 1
      // Sent again with all that was filled in, both say it again.
      const again = await asked('design', designed.input)
      expect(again.warnings).toEqual(designed.warnings)
      expect((await asked('seasonal-fit', { design: designed.input })).summary).toBe(season.summary)
    }),
    { numRuns: 24 },
  )
  expect(Math.min(kinds.left, kinds.advised)).toBeGreaterThan(2)
})

/** Wider than any gap or play that comes about. */
const NO_LIMIT = 1000

test('in a year that stands still, a seasonal fit and a tolerance check of the balls alone agree on how many run', async () => {
  const asked = await asking()
  await fc.assert(
    fc.asyncProperty(anyDesign, hundredths(700, 1200), async ({ making, ...sizes }, moistureContent) => {
      const climate = { moistureContent: { min: moistureContent, max: moistureContent }, today: { moistureContent } }
      const { bore, balls, units, ballGap = 1, radialInternalClearance = 0.4 } = sizes
      const design = { bore, balls, units, ballGap, radialInternalClearance }
      const season = await asked('seasonal-fit', { design: { ...design, making: { ...making, climate } } })
      const check = await asked('tolerance-check', {
        design,
        contributors: { ballDiameter: { kind: 'normal', standardDeviation: balls.standardDeviation } },
        limits: {
          maxBallGap: balls.diameter * 0.9,
          minRadialInternalClearance: 0,
          maxRadialInternalClearance: NO_LIMIT,
        },
      })
      if (season.status !== 200 || check.status !== 200) return
      // A season's chances are good to about 0.01 and counted over 256 bearings; the gap stays below what is limited here.
      expect(season.probability.goesTogether).toBeWithin(0.02, 1 - check.ballGap.probability.tooTight)
      expect(season.probability.runsAllYear).toBeWithin(0.03, check.jointFits)
    }),
    { numRuns: 30 },
  )
})
