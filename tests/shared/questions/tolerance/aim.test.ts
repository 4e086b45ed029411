import { describe, expect, test } from 'vitest'
import { aimOf, type GapSpread } from '#shared/questions/tolerance/aim.ts'
import type { RingCheck } from '#shared/questions/tolerance/checked.ts'
import type { Band } from '#shared/statistics/monte-carlo.ts'
import { countIn, emptyHistogram } from '#shared/statistics/streaming-histogram.ts'
import { normal, resolvedCheck } from '#tests/support/tolerance.ts'

/*
 * Gaps spread evenly between two ends have closed forms: a ring whose balls run x further out turns a gap g into g(R(g) + x), so of such
 * gaps those are too tight that lie below g(R(min) − x), and those too loose that lie above g(R(max) − x).
 */

const [COUNT, DIAMETER] = [12, 16]
/** The chord that eleven balls leave on a circle of centres, less a ball. */
const gapAt = (radius: number): number =>
  2 * radius * Math.sin(Math.PI - (COUNT - 1) * Math.asin(DIAMETER / 2 / radius)) - DIAMETER
function radiusAt(gap: number): number {
  let [low, high] = [28.4, 35]
  for (let round = 0; round < 60; round++) {
    const middle = (low + high) / 2
    if (gapAt(middle) < gap) low = middle
    else high = middle
  }
  return low
}

const BASE = resolvedCheck({ ballDiameter: normal(0.01) })
const within = (gapLimits: Band, overshootRisk = 0.05): RingCheck => ({
  ...BASE,
  gapLimits,
  input: { ...BASE.input, overshootRisk },
})

/** As many gaps, evenly between two ends; a chance is as sure as said. */
function evenly(least: number, most: number, standardError = 0): GapSpread & { asked: unknown[] } {
  const count = 200_000
  const histogram = emptyHistogram((least + most) / 2, 1)
  countIn(
    histogram,
    Float64Array.from({ length: count }, (_, at) => least + ((at + 0.5) / count) * (most - least)),
    count,
  )
  const asked: unknown[] = []
  const chance: GapSpread['chance'] = (value, lows, highs) => {
    asked.push([lows.length, highs.length])
    return { value, standardError }
  }
  return { histogram, mean: (least + most) / 2, chance, asked }
}
const sure = (value: number) => ({ value, standardError: 0 })
const NOMINAL = { tooTight: sure(0.1), fits: sure(0.7), tooLoose: sure(0.2) }
const aim = (check: RingCheck, gaps: GapSpread) => aimOf(check, gaps, NOMINAL)

/** A histogram is a grid of its bins. */
const BIN = 2 / 8192

test('the design as it is has the chances that were counted', () => {
  expect(aim(within({ min: 0, max: 2 }), evenly(0.6, 1)).atNominal).toEqual({
    grooveDepth: BASE.bearing.outerRing.grooveDepth,
    grooveBottomDiameter: BASE.bearing.outerRing.grooveBottomDiameter,
    deeper: 0,
    ballGap: 0.8,
    outcomes: NOMINAL,
  })
})

describe('the best yield', () => {
  // A range of shifts is looked through in 400 steps.
  const STEP = 0.002

  test('of gaps that all fit is the middle between where the first is too tight and the last too loose', () => {
    const { bestYield } = aim(within({ min: 0, max: 2 }), evenly(0.6, 1))
    const shift = (radiusAt(0) - radiusAt(0.6) + radiusAt(2) - radiusAt(1)) / 2
    expect(bestYield.deeper).toBeWithin(STEP, shift)
    expect(bestYield.outcomes).toEqual({ tooTight: sure(0), fits: sure(1), tooLoose: sure(0) })
    expect(bestYield.ballGap).toBeWithin(1e-9, gapAt(radiusAt(0.8) + bestYield.deeper))
  })

  test('of gaps that do not all fit has as many too tight as lie below, and too loose as lie above', () => {
    const gaps = evenly(0.4, 1.4)
    const { bestYield } = aim(within({ min: 0.5, max: 1 }), gaps)
    const share = (limit: number) => gapAt(radiusAt(limit) - bestYield.deeper) - 0.4
    expect(bestYield.outcomes.tooTight.value).toBeWithin(BIN, share(0.5))
    expect(bestYield.outcomes.tooLoose.value).toBeWithin(BIN, 1 - share(1))
    expect(bestYield.outcomes.fits.value).toBeWithin(BIN, share(1) - share(0.5))
    // each is asked for how sure it is between its own limits
    expect(gaps.asked.slice(-6, -3)).toEqual([
      [1, 0],
      [1, 1],
      [0, 1],
    ])
  })

  test('of a limit that is one of several each counts for as much as the others', () => {
    const { bestYield } = aim(within({ min: 0, max: 1.2, lows: [0.3, 0.5, 0.9] }), evenly(0.4, 1.4))
    const share = (limit: number) => Math.max(0, Math.min(1, gapAt(radiusAt(limit) - bestYield.deeper) - 0.4))
    expect(bestYield.outcomes.tooTight.value).toBeWithin(BIN, (share(0.3) + share(0.5) + share(0.9)) / 3)
  })

  test('is no surer than its error: as far as that the top counts as flat', () => {
    const [low, high, error] = [0.6, 1, 0.1]
    const { bestYield } = aim(within({ min: 0, max: 2, lows: [0, 0.3] }), evenly(low, high, error))
    // of two lower limits each stops half of those that it stops: the lower ends where a tenth is lost
    const first = radiusAt(0.3) - radiusAt(low + 2 * error * (high - low))
    const last = radiusAt(2) - radiusAt(high - error * (high - low))
    expect(bestYield.deeper).toBeWithin(STEP, (first + last) / 2)
  })
})

describe('the accepted risk of too deep', () => {
  test.each([0.001, 0.05, 0.3])('%s: the deepest groove that keeps it', (risk) => {
    const { bestYield, limitedRisk } = aim(within({ min: 0.9, max: 1 }, risk), evenly(0.4, 1.4))
    expect(limitedRisk?.deeper).toBeWithin(1e-4, radiusAt(1) - radiusAt(1.4 - risk))
    expect(limitedRisk?.outcomes.tooLoose.value).toBeWithin(1e-9, risk)
    expect(limitedRisk?.deeper).toBeLessThan(bestYield.deeper)
  })

  test('what the best yield keeps is no limit', () => {
    for (const risk of [0.6, 1]) {
      const { bestYield, limitedRisk } = aim(within({ min: 0.5, max: 1 }, risk), evenly(0.4, 1.4))
      expect(limitedRisk).toEqual(bestYield)
    }
  })

  test('less than of any groove: none', () => {
    // The shallowest that is looked at leaves a thousandth of the gaps above the least.
    const least = (risk: number) => aim(within({ min: 0.5, max: 0.5 }, risk), evenly(0.6, 1.4)).limitedRisk
    expect(least(0.0006)).toBeUndefined()
    expect(least(0.0012)?.outcomes.tooLoose.value).toBeWithin(1e-9, 0.0012)
  })
})

describe('where hardly a ball is missing from the ring, or none would close it, the curve is a straight line', () => {
  const slopeAt = (gap: number) => (gapAt(radiusAt(gap) + 1e-5) - gapAt(radiusAt(gap) - 1e-5)) / 2e-5

  test.each([
    [1.1, 0.95],
    [-1, -0.9],
  ])('a mean gap of %s balls moves by the slope of %s', (balls, end) => {
    const middle = balls * DIAMETER
    const { bestYield } = aim(within({ min: middle, max: middle + 0.4 }), evenly(middle - 0.1, middle + 0.1))
    expect(bestYield.ballGap - middle).toBeWithin(1e-4, slopeAt(end * DIAMETER) * bestYield.deeper)
    expect(bestYield.ballGap).toBeWithin(0.02, middle + 0.2)
  })
})
