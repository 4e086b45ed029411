import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { BALL_MATERIALS } from '#shared/bearing/fields.ts'
import { boundsOf } from '#shared/questions/search/bound.ts'
import {
  beginSearch,
  concludeSearch,
  type DesignSearch,
  designSearch,
  furtherSearch,
} from '#shared/questions/search/design-search.ts'
import { effortOfYear, expectedEffort, SEARCH_EFFORT } from '#shared/questions/search/effort.ts'
import { candidateAt, designOf, gridSize } from '#shared/questions/search/grid.ts'
import { candidatesIn, type DesignSearchInput, resolveSearch, SHOWN } from '#shared/questions/search/input.ts'
import { bears, judge, runsInYear } from '#shared/questions/search/judge.ts'
import type { Year } from '#shared/questions/season/input.ts'
import { yearRun } from '#shared/questions/season/seasonal-fit.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { ballCount, between, magnitude, units } from '#tests/support/inputs.ts'

/** What Larkmoor (invented) has on hand for a shelf turntable of 200 mm. */
const LARKMOOR: DesignSearchInput = {
  shared: { units: 'mm' },
  outsideDiameter: { least: mm(80), most: mm(200) },
  bore: { least: mm(6), most: mm(24) },
  balls: [12, 14, 16, 20].map((diameter) => ({ diameter: mm(diameter), material: 'glass' })),
  cutterDiameters: [13, 16, 20].map(mm),
  outerEngagements: [0.18, 0.2, 0.25],
  boardWidths: [100, 140, 190].map(mm),
}

/** A heated house, and woods that bear it. */
const YEAR: Year = {
  woods: {
    outerRing: { construction: 'segmented', species: 'maple-sugar' },
    innerRing: { construction: 'cross-laminated-ply' },
  },
  climate: {
    kind: 'air',
    temperature: { min: 18, max: 22 },
    relativeHumidity: { min: 30, max: 65 },
  },
  today: { kind: 'air', air: { temperature: 20, relativeHumidity: 50 } },
}

const list = <T>(of: fc.Arbitrary<T>, most: number) => fc.array(of, { minLength: 1, maxLength: most })
const lengths = (least: number, most: number, count: number): fc.Arbitrary<readonly Mm[]> =>
  list(magnitude(least, most).map(mm), count)
const some = <T extends object>(fields: { [Name in keyof T]: fc.Arbitrary<T[Name]> }) =>
  fc.record(fields, { requiredKeys: [] })

/** Searches of up to some hundred candidates: likely ones, of which most find something, and any at all. */
const searchesOf = (likely: boolean): fc.Arbitrary<DesignSearchInput> =>
  fc
    .record({
      shared: fc.record(
        {
          units,
          ballGap: between(0, likely ? 1 : 4).map(mm),
          maxBallGap: between(likely ? 1 : 0.5, 4).map(mm),
          radialInternalClearance: between(0, 1).map(mm),
          width: between(likely ? 20 : 8, 60).map(mm),
          split: fc.constantFrom('inner-ring' as const, 'outer-ring' as const, 'none' as const),
        },
        { requiredKeys: ['units'] },
      ),
      most: magnitude(likely ? 150 : 60, 600),
      leastShare: between(0, likely ? 0.3 : 1),
      bore: fc.record({
        least: magnitude(3, likely ? 12 : 40).map(mm),
        more: between(0, 30),
        step: between(4, 20).map(mm),
      }),
      balls: list(
        fc.record(
          {
            diameter: magnitude(likely ? 8 : 5, likely ? 20 : 40).map(mm),
            material: fc.constantFrom(...BALL_MATERIALS),
            standardDeviation: between(0, 1).map(mm),
            quantity: fc.integer({ min: likely ? 12 : 3, max: 60 }),
          },
          { requiredKeys: ['diameter'] },
        ),
        3,
      ),
      least: likely ? fc.integer({ min: 6, max: 20 }) : ballCount,
      counts: fc.integer({ min: 0, max: 8 }),
      rest: some({
        cutterDiameters: lengths(likely ? 10 : 4, likely ? 30 : 60, 3),
        outerEngagements: list(between(likely ? 0.15 : 0.05, likely ? 0.3 : 0.5), 3),
        innerEngagements: list(between(likely ? 0.25 : 0.05, likely ? 0.45 : 0.6), 2),
        boardWidths: lengths(likely ? 150 : 60, 500, 3),
        partingWidth: between(1, 20).map(mm),
        weights: some({ closure: between(0, 5), wall: between(0, 5), material: between(0, 5), nesting: between(0, 5) }),
        onlyOnRule: fc.boolean(),
        show: fc.constantFrom(...SHOWN),
        offset: fc.integer({ min: 0, max: 5 }),
        limit: fc.integer({ min: 1, max: 8 }),
      }),
    })
    .map(({ shared, most, leastShare, bore, balls, least, counts, rest }) => ({
      shared,
      outsideDiameter: { least: mm(most * leastShare), most: mm(most) },
      bore: { least: bore.least, most: mm(bore.least + bore.more), step: bore.step },
      balls,
      counts: { least, most: Math.min(200, least + counts) },
      ...rest,
    }))
const searches = fc.oneof({ weight: 3, arbitrary: searchesOf(true) }, { weight: 1, arbitrary: searchesOf(false) })

/** All candidates worked out, ranked, of each ring the best where that is asked: the page by no clever way. */
function byForce(input: DesignSearchInput): readonly (readonly [index: number, score: number])[] {
  const search = resolveSearch(input)
  const all = Array.from(
    { length: gridSize(search) },
    (_, index) => [index, judge(search, candidateAt(search, index))] as const,
  )
  const ranked = all
    .flatMap(([index, judged]) =>
      typeof judged === 'string' ||
      !bears(search, judged.bearing) ||
      !runsInYear(search, designOf(search, candidateAt(search, index))).runs
        ? []
        : [[index, judged.score] as const],
    )
    .sort(([one, better], [other, worse]) => worse - better || one - other)
  const seen = new Set<string>()
  const shown = ranked.filter(([index]) => {
    const { ball, count } = candidateAt(search, index)
    const ring = search.show === 'all' ? String(index) : `${ball}/${count}`
    return seen.size < seen.add(ring).size
  })
  return shown.slice(search.offset, search.offset + search.limit)
}

function searched(input: DesignSearchInput): DesignSearch {
  const found = designSearch(input)
  if (!found.ok) throw new Error(JSON.stringify(found.error))
  return found.value
}

const shownBy = (input: DesignSearchInput) => searched(input).ranked.map(({ index, score }) => [index, score] as const)

describe('complete: the page is that of trying every candidate', () => {
  test('over random grids, of which many hold something', () => {
    let found = 0
    fc.assert(
      fc.property(searches, (input) => {
        const page = shownBy(input)
        expect(page).toEqual(byForce(input))
        if (page.length > 0) found++
      }),
      { numRuns: 200 },
    )
    expect(found).toBeGreaterThan(80)
  })

  test.each(SHOWN)('for Larkmoor, %s', (show) => {
    const input = { ...LARKMOOR, counts: { least: 6, most: 20 }, show, limit: 15 }
    const found = searched(input)
    expect(found.ranked.map(({ index, score }) => [index, score])).toEqual(byForce(input))
    expect(found.workedOut).toBeLessThan(found.candidates / 5)
  })

  test.each([50, 1500, 1e5])('under a load of %s N', (radialLoad) => {
    const input = { ...LARKMOOR, counts: { least: 10, most: 14 }, load: { radialLoad }, limit: 5 }
    expect(shownBy(input)).toEqual(byForce(input))
  })

  test('through a year', () => {
    const input = { ...LARKMOOR, counts: { least: 8, most: 11 }, cutterDiameters: [mm(16)], year: YEAR, limit: 5 }
    expect(shownBy(input)).toEqual(byForce(input))
  })

  test('page by page it is one list', () => {
    const all = shownBy({ ...LARKMOOR, limit: 30 })
    const pages = [0, 10, 20].flatMap((offset) => shownBy({ ...LARKMOOR, offset, limit: 10 }))
    expect(pages).toEqual(all)
    expect(searched({ ...LARKMOOR, limit: 10 }).more).toBe(true)
    expect(searched({ ...LARKMOOR, offset: 400, limit: 10 })).toMatchObject({ ranked: [], more: false })
  })
})

test('no candidate scores above its bound, and one that its bound drops is dropped when it is worked out', () => {
  fc.assert(
    fc.property(searches, (input) => {
      const search = resolveSearch(input)
      const boundOf = boundsOf(search)
      for (let index = 0; index < gridSize(search); index++) {
        const at = candidateAt(search, index)
        const [bound, judged] = [boundOf(at), judge(search, at)]
        if (typeof bound === 'string') expect(typeof judged, `${bound} ${index}`).toBe('string')
        else if (typeof judged !== 'string') expect(judged.score).toBeLessThanOrEqual(bound + 1e-12)
      }
    }),
    { numRuns: 150 },
  )
})

test('every candidate is accounted for: shown or ranked lower, dropped, or told by a bound', () => {
  fc.assert(
    fc.property(searches, (input) => {
      const { candidates, workedOut, outranked, dropped } = searched(input)
      const early = candidates - workedOut - outranked
      const reasons = Object.values(dropped).reduce((sum, number) => sum + number, 0)
      expect(candidates).toBe(candidatesIn(input))
      expect(reasons).toBeGreaterThanOrEqual(early)
      expect(reasons).toBeLessThanOrEqual(early + workedOut)
    }),
  )
})

describe('what is shown', () => {
  test('keeps the limits, has no fault, and is the design that its own input gives', () => {
    for (const { bearing, findings, design, board, score } of searched({ ...LARKMOOR, limit: 40 }).ranked) {
      expect(bearing.outerRing.outsideDiameter).toBeGreaterThanOrEqual(80)
      expect(bearing.outerRing.outsideDiameter).toBeLessThanOrEqual(Math.min(200, board))
      expect([100, 140, 190]).toContain(board)
      expect(findings.filter(({ severity }) => severity === 'fault')).toEqual([])
      expect(bearing.innerRing.boreDiameter).toBe(design.bore)
      expect(score).toBeGreaterThan(0)
      expect(score).toBeLessThanOrEqual(1)
    }
  })

  test('of each ring of balls one, unless all are asked for', () => {
    const rings = searched({ ...LARKMOOR, limit: 40 }).ranked.map(
      ({ design: { balls } }) => `${balls.count} x ${balls.diameter}`,
    )
    expect(new Set(rings).size).toBe(rings.length)
  })

  test('no more balls than there are', () => {
    const few = searched({ ...LARKMOOR, balls: [{ diameter: mm(14), quantity: 12 }], limit: 40 })
    expect(Math.max(...few.ranked.map(({ design: { balls } }) => balls.count))).toBe(12)
    expect(few.dropped['too-few-balls']).toBeGreaterThan(0)
  })

  test('a weight that is all: the score is that mark', () => {
    const weights = { closure: 0, wall: 0, nesting: 0, seat: 0, sensitivity: 1, material: 0 }
    const { ranked } = searched({ ...LARKMOOR, weights })
    for (const { score, marks } of ranked) expect(score).toBe(marks.sensitivity)
  })

  test('on the rule only: each groove, cut to the nearest tenth, leaves a gap in its band', () => {
    const strict = {
      ...LARKMOOR,
      shared: { units: 'mm' as const, ballGap: mm(0.4), minBallGap: mm(0.35), maxBallGap: mm(0.45) },
    }
    const found = searched({ ...strict, onlyOnRule: true, limit: 40 })
    expect(found.ranked.length).toBeGreaterThan(0)
    for (const { gapAtShop } of found.ranked) {
      expect(gapAtShop).toBeGreaterThanOrEqual(0.35 - 1e-9)
      expect(gapAtShop).toBeLessThanOrEqual(0.45 + 1e-9)
    }
  })

  test('nothing within the limits: no page, and why', () => {
    const none = searched({ ...LARKMOOR, outsideDiameter: { most: mm(30) } })
    expect(none).toMatchObject({ ranked: [], more: false, workedOut: 0 })
    expect(none.dropped['outside-diameter']).toBeGreaterThan(0)
  })
})

describe('a year', () => {
  const RANGE = { kind: 'air', temperature: { min: 20, max: 20 }, relativeHumidity: { min: 5, max: 90 } } as const

  test('what is shown runs all year: asked one by one', () => {
    const { ranked } = searched({ ...LARKMOOR, year: YEAR, limit: 5 })
    expect(ranked.length).toBe(5)
    for (const { design } of ranked) expect(yearRun({ ...YEAR, design }).runs).toBe(true)
  })

  test('one that none of them bears: nothing is shown, and why; where too many would have to be tried, that is said', () => {
    const woods = {
      outerRing: { construction: 'flat-sawn', species: 'beech-american' },
      innerRing: { construction: 'flat-sawn', species: 'beech-american' },
    } as const
    const few = { ...LARKMOOR, counts: { least: 12, most: 13 }, cutterDiameters: [mm(16)], limit: 3 }
    const found = searched({ ...few, year: { ...YEAR, woods, climate: RANGE } })
    expect(found.ranked).toEqual([])
    expect(found.dropped['not-all-year']).toBeGreaterThan(0)
    expect(designSearch({ ...few, year: { ...YEAR, woods, climate: RANGE } }, 3)).toEqual({
      ok: false,
      error: [{ code: 'hardly-any-runs', path: '/year' }],
    })
  })

  test('unknown woods, a range the wrong way round, wooden balls without their wood: every fault with its place', () => {
    const year: Year = {
      woods: {
        outerRing: { construction: 'flat-sawn', species: 'ash-blue' },
        innerRing: { construction: 'cross-laminated-ply' },
      },
      climate: { ...RANGE, relativeHumidity: { min: 60, max: 30 } },
      today: YEAR.today,
    }
    const refused = designSearch({ ...LARKMOOR, balls: [{ diameter: mm(16) }], year })
    expect(refused).toMatchObject({
      ok: false,
      error: [
        { code: 'balls-without-wood', path: '/year/woods/balls' },
        { code: 'movement-unknown', path: '/year/woods/outerRing/species' },
        { code: 'range-reversed', path: '/year/climate/relativeHumidity' },
      ],
    })
  })
})

describe('in parts', () => {
  /** Each step by a thread of its own, as far as data goes, with so much work in it; and how many there were. */
  function inSteps(input: DesignSearchInput, mostEffort: number, mostStopped?: number) {
    const limit = mostStopped === undefined ? {} : { mostStopped }
    const begun = beginSearch(input)
    if (!begun.ok) return { found: begun, steps: 0 }
    let progress = begun.value
    let steps = 0
    for (; !progress.isOver; steps++) {
      progress = furtherSearch(structuredClone({ input, progress, mostEffort, ...limit }))
    }
    return { found: concludeSearch(structuredClone({ input, progress, ...limit })), steps, progress }
  }

  test('the answer is that of a search in one go, however it is cut', () => {
    fc.assert(
      fc.property(searches, magnitude(0.05, 500), (input, mostEffort) => {
        expect(inSteps(input, mostEffort).found).toEqual(designSearch(input))
      }),
      { numRuns: 60 },
    )
  })

  test('through a year, and where hardly any runs through it', () => {
    const wooden = {
      ...YEAR,
      woods: { ...YEAR.woods, outerRing: { species: 'maple-sugar' as const, construction: 'flat-sawn' as const } },
    }
    for (const year of [YEAR, wooden]) {
      const input: DesignSearchInput = { ...LARKMOOR, year, limit: 3 }
      for (const mostStopped of [3, 1000]) {
        const { found, steps } = inSteps(input, 50, mostStopped)
        expect(found).toEqual(designSearch(input, mostStopped))
        expect(steps).toBeGreaterThan(1)
      }
    }
  })

  test('no step does more than it may and one candidate', () => {
    const input: DesignSearchInput = { ...LARKMOOR, load: { radialLoad: 1500 }, year: YEAR }
    const begun = beginSearch(input)
    if (!begun.ok) throw new Error('the search does not begin')
    const largest = SEARCH_EFFORT.bound + SEARCH_EFFORT.judgement + SEARCH_EFFORT.load + effortOfYear(3, 40)
    for (let progress = begun.value; !progress.isOver; ) {
      const next = furtherSearch({ input, progress, mostEffort: 100 })
      expect(next.effort - progress.effort).toBeLessThanOrEqual(100 + largest)
      progress = next
    }
  })

  test('what is expected of it beforehand is of the order of what it takes, and no more than a few times that', () => {
    for (const more of [{}, { load: { radialLoad: 50 } }, { year: YEAR }]) {
      const input: DesignSearchInput = { ...LARKMOOR, ...more }
      const effort = inSteps(input, 500).progress?.effort ?? Number.NaN
      expect(expectedEffort(input) / effort).toBeWithin(0.95, 1)
    }
  })
})
