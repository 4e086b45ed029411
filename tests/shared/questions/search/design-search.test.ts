import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { ARRANGEMENT_NAMES, type ArrangementName } from '#shared/bearing/arrangements.ts'
import { BALL_MATERIALS } from '#shared/bearing/fields.ts'
import { bindsIn } from '#shared/movement/fit.ts'
import { movingBearing } from '#shared/movement/moving-bearing.ts'
import type { Year } from '#shared/movement/year.ts'
import { SEARCHED } from '#shared/questions/search/arrangements/all.ts'
import {
  beginSearch,
  concludeSearch,
  type DesignSearch,
  designSearch,
  furtherSearch,
} from '#shared/questions/search/design-search.ts'
import { effortToProve, expectedEffort } from '#shared/questions/search/effort.ts'
import { SHOWN } from '#shared/questions/search/fields.ts'
import { candidateAt, gridSize } from '#shared/questions/search/grid.ts'
import { candidatesIn, DESIGN_SEARCH, type DesignSearchInput, resolveSearch } from '#shared/questions/search/input.ts'
import { judge, proved, throughSeason } from '#shared/questions/search/judge.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { ballCount, between, magnitude, units } from '#tests/support/inputs.ts'

/** What Larkmoor (invented) has on hand for a shelf turntable of 200 mm. */
const LARKMOOR: DesignSearchInput = {
  units: 'mm',
  outsideDiameter: { min: mm(80), max: mm(200) },
  bore: { min: mm(6), max: mm(24) },
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

const READ_BY = { rings: 'radialLoad', plates: 'axialLoad' } as const

/** Searches of up to some hundred candidates: likely ones, of which most find something, and any at all. */
const searchesOf = (likely: boolean, arrangement: ArrangementName): fc.Arbitrary<DesignSearchInput> =>
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
      max: magnitude(likely ? 150 : 60, 600),
      minShare: between(0, likely ? 0.3 : 1),
      bore: fc.record({
        min: magnitude(3, likely ? 12 : 40).map(mm),
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
      fewest: likely ? fc.integer({ min: 6, max: 20 }) : ballCount,
      counts: fc.integer({ min: 0, max: 8 }),
      load: fc.option(magnitude(1, likely ? 200 : 20_000), { nil: undefined, freq: 3 }),
      rest: some({
        cutterDiameters: lengths(likely ? 10 : 4, likely ? 30 : 60, 3),
        outerEngagements: list(between(likely ? 0.15 : 0.05, likely ? 0.3 : 0.5), 3),
        innerEngagements: list(between(likely ? 0.25 : 0.05, likely ? 0.45 : 0.6), 2),
        engagements: list(between(likely ? 0.2 : 0.05, likely ? 0.4 : 0.6), 3),
        boardWidths: lengths(likely ? 150 : 60, 500, 3),
        drillDiameters: lengths(3, 40, 4),
        plugDiameters: lengths(20, 300, 8),
        partingWidth: between(1, 20).map(mm),
        tools: fc.record({ grooveError: between(0, 0.3).map(mm) }),
        riskDeduction: between(0, 0.3),
        weights: some({ running: between(0, 5), load: between(0, 5), wall: between(0, 5), onHand: between(0, 5) }),
        onlyOnRule: fc.boolean(),
        show: fc.constantFrom(...SHOWN),
        offset: fc.integer({ min: 0, max: 5 }),
        limit: fc.integer({ min: 1, max: 8 }),
      }),
    })
    .map(({ shared, max, minShare, bore, balls, fewest, counts, load, rest }) => ({
      ...shared,
      arrangement,
      outsideDiameter: { min: mm(max * minShare), max: mm(max) },
      bore: { min: bore.min, max: mm(bore.min + bore.more), step: bore.step },
      balls,
      counts: { min: fewest, max: Math.min(200, fewest + counts) },
      ...(load === undefined ? {} : { load: { [arrangement === 'thrust' ? READ_BY.plates : READ_BY.rings]: load } }),
      ...withoutForeign(rest, arrangement),
    }))
const LISTS = ['cutterDiameters', 'outerEngagements', 'innerEngagements', 'engagements', 'plugDiameters', 'onlyOnRule']
const withoutForeign = <T extends object>(fields: T, arrangement: ArrangementName): Partial<T> =>
  Object.fromEntries(
    Object.entries(fields).filter(
      ([name]) =>
        !LISTS.includes(name) ||
        [...SEARCHED[arrangement].has, ...Object.keys(SEARCHED[arrangement].depths)].some((own) => own === name),
    ),
  ) as Partial<T>
const searchesBy = (arrangement: ArrangementName) =>
  fc.oneof(
    { weight: 3, arbitrary: searchesOf(true, arrangement) },
    { weight: 1, arbitrary: searchesOf(false, arrangement) },
  )
const searches = fc.oneof(...ARRANGEMENT_NAMES.map(searchesBy))

/** All candidates worked out, ranked, of each ring the best where that is asked: the page by no clever way. */
function byForce(input: DesignSearchInput): readonly (readonly [index: number, score: number])[] {
  const search = resolveSearch(input)
  const all = Array.from(
    { length: gridSize(search) },
    (_, index) => [index, judge(search, candidateAt(search, index))] as const,
  )
  const ranked = all
    .flatMap(([index, judged]) => (typeof judged === 'string' ? [] : [[index, proved(search, judged)] as const]))
    .flatMap(([index, found]) => (typeof found === 'string' ? [] : [[index, found] as const]))
    .sort(([one, better], [other, worse]) => worse.score - better.score || one - other)
  const seen = new Set<string>()
  const shown = ranked.filter(([index]) => {
    const { ball, count } = candidateAt(search, index)
    const ring = search.input.show === 'all' ? String(index) : `${ball}/${count}`
    return seen.size < seen.add(ring).size
  })
  return shown
    .slice(search.input.offset, search.input.offset + search.input.limit)
    .map(([index, found]) => [index, throughSeason(search, found).score] as const)
    .sort(([one, better], [other, worse]) => worse - better || one - other)
}

function searched(input: DesignSearchInput): DesignSearch {
  const found = designSearch(input)
  if (!found.ok) throw new Error(JSON.stringify(found.error))
  return found.value
}

const shownBy = (input: DesignSearchInput) => searched(input).ranked.map(({ index, score }) => [index, score] as const)

describe('complete: the page is that of trying every candidate', () => {
  test.each(ARRANGEMENT_NAMES)('%s: over random grids, of which many hold something', (arrangement) => {
    let found = 0
    fc.assert(
      fc.property(searchesBy(arrangement), (input) => {
        const page = shownBy(input)
        expect(page).toEqual(byForce(input))
        if (page.length > 0) found++
      }),
      { numRuns: 40 },
    )
    expect(found).toBeGreaterThan(12)
  })

  test.each(SHOWN)('for Larkmoor, %s', (show) => {
    const input = { ...LARKMOOR, counts: { min: 6, max: 20 }, show, limit: 15 }
    expect(shownBy(input)).toEqual(byForce(input))
  })

  test.each([50, 1500, 1e5])('under a load of %s N', (radialLoad) => {
    const input = { ...LARKMOOR, counts: { min: 10, max: 14 }, load: { radialLoad }, limit: 5 }
    expect(shownBy(input)).toEqual(byForce(input))
  })

  test('through a year', () => {
    const input = { ...LARKMOOR, counts: { min: 8, max: 11 }, cutterDiameters: [mm(16)], year: YEAR, limit: 5 }
    expect(shownBy(input)).toEqual(byForce(input))
  })

  test('page by page it is one list', () => {
    const few = { ...LARKMOOR, counts: { min: 8, max: 19 } }
    const all = shownBy({ ...few, limit: 30 })
    const pages = [0, 10, 20].flatMap((offset) => shownBy({ ...few, offset, limit: 10 }))
    expect(pages).toEqual(all)
    expect(searched({ ...few, limit: 10 }).more).toBe(true)
    expect(searched({ ...few, offset: 200, limit: 10 })).toMatchObject({ ranked: [], more: false })
  })
})

test('a load and a year only lower a score, and every candidate is accounted for', () => {
  fc.assert(
    fc.property(searches, (input) => {
      const search = resolveSearch(input)
      const reasons = { early: 0, proving: 0 }
      for (let index = 0; index < gridSize(search); index++) {
        const judged = judge(search, candidateAt(search, index))
        if (typeof judged === 'string') reasons.early++
        else {
          const found = proved(search, judged)
          if (typeof found === 'string') reasons.proving++
          else expect(found.score).toBeLessThanOrEqual(judged.score)
        }
      }
      const { candidates, dropped } = searched(input)
      const told = Object.values(dropped).reduce((sum, number) => sum + number, 0)
      expect(candidates).toBe(candidatesIn(input))
      expect(told).toBeGreaterThanOrEqual(reasons.early)
      expect(told).toBeLessThanOrEqual(reasons.early + reasons.proving)
    }),
    { numRuns: 40 },
  )
})

describe('what is shown', () => {
  test('keeps the limits, has no fault, and is the design that its own input gives', () => {
    for (const { sizes, findings, design, board, score } of searched({ ...LARKMOOR, limit: 40 }).ranked) {
      expect(sizes.outsideDiameter).toBeGreaterThanOrEqual(80)
      expect(sizes.outsideDiameter).toBeLessThanOrEqual(Math.min(200, board))
      expect([100, 140, 190]).toContain(board)
      expect(findings.filter(({ severity }) => severity === 'fault')).toEqual([])
      expect(design.bore).toBeGreaterThanOrEqual(6)
      expect(design.bore).toBeLessThanOrEqual(24)
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
    const weights = { running: 1, wall: 0, nesting: 0, seat: 0, material: 0 }
    const { ranked } = searched({ ...LARKMOOR, weights, riskDeduction: 0 })
    for (const { score, marks } of ranked) expect(score).toBe(marks.running)
  })

  test('on the rule only: each groove, cut to the nearest tenth, leaves a gap in its band', () => {
    const strict = {
      ...LARKMOOR,
      ballGap: mm(0.4),
      minBallGap: mm(0.35),
      maxBallGap: mm(0.45),
    }
    const found = searched({ ...strict, onlyOnRule: true, limit: 40 })
    expect(found.ranked.length).toBeGreaterThan(0)
    for (const { gapAtShop } of found.ranked) {
      expect(gapAtShop).toBeGreaterThanOrEqual(0.35 - 1e-9)
      expect(gapAtShop).toBeLessThanOrEqual(0.45 + 1e-9)
    }
  })

  test('nothing within the limits: no page, and why', () => {
    const none = searched({ ...LARKMOOR, outsideDiameter: { max: mm(30) } })
    expect(none).toMatchObject({ ranked: [], more: false })
    expect(none.dropped['outside-diameter']).toBeGreaterThan(0)
  })
})

describe('a warning of severity `risk`', () => {
  test('never leads a clean design by less than the deduction, and its score is stated with it', () => {
    let risky = 0
    fc.assert(
      fc.property(searches, (input) => {
        const { ranked, search } = searched({ ...input, offset: 0, limit: 50, show: 'all', riskDeduction: 0.05 })
        const meanOf = (marks: (typeof ranked)[number]['marks']): number => {
          const whole = search.weights.reduce((sum, [, weight]) => sum + weight, 0)
          return whole > 0
            ? search.weights.reduce((sum, [name, weight]) => sum + weight * (marks[name] ?? 0), 0) / whole
            : 0
        }
        for (const { marks, score, findings, isRisky } of ranked) {
          // What the plugs cannot tell is the lot's fault, and the same for every design of it.
          const risks = findings.filter(
            ({ severity, facts }) => severity === 'risk' && facts.code !== 'plugs-cannot-tell',
          )
          expect(isRisky).toBe(risks.length > 0)
          expect(score).toBeWithin(1e-12, meanOf(marks) * (isRisky ? 0.95 : 1))
          if (isRisky) risky++
        }
        const first = ranked.find(({ isRisky }) => !isRisky)
        for (const { isRisky, marks } of ranked.slice(0, first === undefined ? 0 : ranked.indexOf(first)))
          if (isRisky && first !== undefined)
            expect(meanOf(marks) * 0.95).toBeGreaterThanOrEqual(meanOf(first.marks) - 1e-12)
      }),
      { numRuns: 30 },
    )
    expect(risky).toBeGreaterThan(0)
  })
})

test('drills and plugs on hand: a bore without its drill has a lower mark', () => {
  const input = { ...LARKMOOR, counts: { min: 12, max: 12 }, drillDiameters: [mm(10)], show: 'all' as const, limit: 40 }
  for (const { design, marks } of searched(input).ranked) expect(marks.onHand).toBe(design.bore === 10 ? 1 : 0)
  const [first] = searched({ ...input, weights: { onHand: 10 } }).ranked
  expect(first?.design.bore).toBe(10)
})

test('an inner ring that comes out of the hole of the outer one is nested: as far as the saw needs no more than is between them', () => {
  const one = { ...LARKMOOR, counts: { min: 12, max: 12 }, limit: 3 }
  for (const { isNested, marks, sizes } of searched({ ...one, partingWidth: mm(0.5) }).ranked) {
    expect(sizes.landGap).toBeGreaterThan(0.5)
    expect([isNested, marks.nesting]).toEqual([true, 1])
  }
  for (const { isNested, marks } of searched({ ...one, partingWidth: mm(50) }).ranked)
    expect([isNested, marks.nesting]).toEqual([false, 0])
})

describe('a year', () => {
  const RANGE = { kind: 'air', temperature: { min: 20, max: 20 }, relativeHumidity: { min: 5, max: 90 } } as const

  test('what is shown runs all year: asked one by one', () => {
    const { ranked } = searched({ ...LARKMOOR, year: YEAR, limit: 5 })
    expect(ranked.length).toBe(5)
    for (const { design } of ranked) {
      const moving = movingBearing({ ...YEAR, design }, DESIGN_SEARCH)
      if (!moving.ok) throw new Error(JSON.stringify(moving.error))
      const { snapshotIn, band, season } = moving.value
      const stops = [season.today, ...season.states].map((at) => bindsIn(snapshotIn(at), design.balls.count, band))
      expect(stops.flat()).toEqual([])
    }
  })

  test('one that none of them bears: nothing is shown, and why; where too many would have to be tried, that is said', () => {
    const woods = {
      outerRing: { construction: 'flat-sawn', species: 'beech-american' },
      innerRing: { construction: 'flat-sawn', species: 'beech-american' },
    } as const
    const few = { ...LARKMOOR, counts: { min: 12, max: 13 }, cutterDiameters: [mm(16)], limit: 3 }
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
      { numRuns: 30 },
    )
  })

  test('through a year, and where hardly any runs through it', () => {
    const wooden = {
      ...YEAR,
      woods: { ...YEAR.woods, outerRing: { species: 'maple-sugar' as const, construction: 'flat-sawn' as const } },
    }
    for (const year of [YEAR, wooden]) {
      const input: DesignSearchInput = { ...LARKMOOR, counts: { min: 9, max: 14 }, year, limit: 3 }
      for (const mostStopped of [3, 1000]) {
        const { found, steps } = inSteps(input, 300, mostStopped)
        expect(found).toEqual(designSearch(input, mostStopped))
        expect(steps).toBeGreaterThan(1)
      }
    }
  })

  test('no step does more than it may and one candidate', () => {
    const input: DesignSearchInput = {
      ...LARKMOOR,
      counts: { min: 9, max: 14 },
      load: { radialLoad: 1500 },
      year: YEAR,
    }
    const begun = beginSearch(input)
    if (!begun.ok) throw new Error('the search does not begin')
    const largest = 3 + effortToProve(input, 40)
    for (let progress = begun.value; !progress.isOver; ) {
      const next = furtherSearch({ input, progress, mostEffort: 100 })
      expect(next.effort - progress.effort).toBeLessThanOrEqual(100 + largest)
      progress = next
    }
  })

  test('what is expected of it beforehand is of the order of what it takes, and no more than a few times that', () => {
    for (const more of [{}, { load: { radialLoad: 50 } }, { year: YEAR }]) {
      const input: DesignSearchInput = { ...LARKMOOR, counts: { min: 9, max: 14 }, ...more }
      const effort = inSteps(input, 500).progress?.effort ?? Number.NaN
      expect(expectedEffort(input) / effort).toBeWithin(0.95, 1)
    }
  })
})
