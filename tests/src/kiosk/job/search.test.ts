import fc from 'fast-check'
import { expect, test } from 'vitest'
import { ARRANGEMENT_NAMES } from '#shared/bearing/arrangements.ts'
import { sharedFields } from '#shared/questions/search/fields.ts'
import { readBearing, scopeOf } from '#src/kiosk/job/bearing.ts'
import { FIRST_JOB, withBearing } from '#src/kiosk/job/job.ts'
import { asArrangement } from '#src/kiosk/job/other-arrangement.ts'
import { bestPairs, searchFor } from '#src/kiosk/job/search.ts'
import { listOf, part } from '#src/kiosk/json.ts'
import { post } from '#tests/support/ask.ts'
import { sharedApp } from '#tests/support/started-app.ts'

/* The bearings are invented. */

const stated = fc.record(
  {
    'balls.material': fc.constantFrom('wood', 'glass', 'steel'),
    bore: fc.integer({ min: 8, max: 20 }).map(String),
    ballGap: fc.constantFrom('1', '1.3'),
    radialInternalClearance: fc.constantFrom('0.4', '0.7'),
    finishAllowance: fc.constantFrom('0.05', '0.1'),
    width: fc.constantFrom('26', '30'),
    'outerRing.wall': fc.constantFrom('9', '14'),
    'outerRing.engagement': fc.constantFrom('0.18', '0.3'),
    'plates.engagement': fc.constantFrom('0.25', '0.3'),
  },
  { requiredKeys: [] },
)

const LIMITS = { sizes: [14, 16, 20], counts: [9, 12], outside: 160 }

test.each(ARRANGEMENT_NAMES)(
  'a search for bearings like one of %s is taken, and asks for all that it can',
  async (to) => {
    const at = await sharedApp()
    const known = new Set(scopeOf(to).leaves.map(({ names }) => names.join('.')))
    const first = withBearing(FIRST_JOB, asArrangement(FIRST_JOB.bearing, scopeOf('radial'), scopeOf(to)).changes)
    await fc.assert(
      fc.asyncProperty(stated, async (texts) => {
        const changes = Object.fromEntries(Object.entries(texts).filter(([name]) => known.has(name)))
        const { request = {} } = readBearing(withBearing(first, changes).bearing)
        const search = searchFor(request, LIMITS)
        for (const name of Object.keys(sharedFields(to))) expect(part(search)[name], name).toEqual(part(request)[name])
        const { status, text } = await post(`${at}/v1/design-search`, search)
        expect([200, 422], text).toContain(status)
        for (const { count, diameter } of bestPairs(
          listOf(part(JSON.parse(text))['ranked']).map(part),
          LIMITS.counts,
        )) {
          expect(LIMITS.counts).toContain(count)
          expect(LIMITS.sizes).toContain(diameter)
        }
      }),
      { numRuns: 12 },
    )
  },
)

test('of a list of numbers only these are found, not all between them', () => {
  const ranked = [9, 10, 11, 12].map((count) => ({ design: { balls: { count, diameter: 16 } }, score: 0.8 }))
  expect(bestPairs(ranked, [10, 12]).map(({ count }) => count)).toEqual([10, 12])
  expect(bestPairs(ranked, [])).toHaveLength(4)
})
