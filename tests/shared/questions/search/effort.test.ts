import { expect, test } from 'vitest'
import { beginSearch, furtherSearch } from '#shared/questions/search/design-search.ts'
import type { DesignSearchInput } from '#shared/questions/search/input.ts'
import type { SearchProgress } from '#shared/questions/search/progress.ts'
import { mm } from '#shared/units/length.ts'

const WOOD = { construction: 'flat-sawn', species: 'maple-sugar' } as const

/** Two dozen months whose humidity swings by so much to either side. */
const monthsOf = (swing: number) =>
  Array.from({ length: 24 }, (_, index) => ({
    name: `month ${index + 1}`,
    temperature: 15,
    relativeHumidity: Math.round(50 + swing * Math.sin(index)),
  }))

/** Rings through a year: a list that takes a while to fill, and as long again to surpass. */
const throughYear = (swing: number, more: Partial<DesignSearchInput>): DesignSearchInput => ({
  units: 'mm',
  outsideDiameter: { max: mm(2000) },
  bore: { min: mm(8), max: mm(20), step: mm(2) },
  balls: Array.from({ length: 12 }, (_, index) => ({ diameter: mm(10 + 2 * index) })),
  counts: { min: 10, max: 60 },
  show: 'all',
  year: {
    woods: { outerRing: WOOD, innerRing: WOOD, balls: 'maple-sugar' },
    climate: { kind: 'months', months: monthsOf(swing) },
    today: { kind: 'air', air: { temperature: 20, relativeHumidity: 50 } },
  },
  ...more,
})

const PART = 250

function inParts(input: DesignSearchInput): readonly SearchProgress[] {
  const begun = beginSearch(input)
  if (!begun.ok) throw new Error(JSON.stringify(begun.error))
  const steps = [begun.value]
  for (let progress = begun.value; !progress.isOver; steps.push(progress))
    progress = furtherSearch({ input, progress, mostEffort: PART })
  return steps
}

test.each([
  ['the best twenty', throughYear(3, { limit: 20 })],
  ['the best forty of all', throughYear(3, { limit: 40 })],
  ['a later page', throughYear(3, { limit: 10, offset: 20 })],
  ['of each ring the best', throughYear(3, { limit: 30, show: 'best-of-each-ring' })],
  ['few balls', throughYear(3, { limit: 30, balls: [10, 11, 12].map((size) => ({ diameter: mm(size) })) })],
  ['a year in which hardly any runs', throughYear(12, { limit: 30 })],
])('what a search still takes is known within a factor of two from its first third on: %s', (_what, input) => {
  const steps = inParts(input)
  const all = steps.at(-1)?.effort ?? 0
  const early = steps.filter(({ effort, proved }) => effort <= all / 3 && proved >= 8)
  expect(early.length).toBeGreaterThan(0)
  for (const { effort, effortLeft } of early) {
    expect((effort + effortLeft) / all).toBeGreaterThan(0.5)
    expect((effort + effortLeft) / all).toBeLessThan(2)
  }
  expect(steps.at(-1)?.effortLeft).toBe(0)
})
