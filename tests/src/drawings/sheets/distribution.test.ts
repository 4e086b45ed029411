import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Shape } from '#src/drawings/model.ts'
import { distributionSheet, type Spread } from '#src/drawings/sheets/distribution.ts'
import { between, magnitude } from '#tests/support/inputs.ts'
import { sheetFaults } from '#tests/support/sheet-faults.ts'

const SPREAD: Spread = {
  title: 'Gap',
  description: 'How the gap is spread',
  edges: [-1, 0, 1, 2, 3],
  counts: [1, 4, 3, 2],
  min: 0.25,
  max: 2.5,
  marks: [
    { at: 0.25, role: 'hidden', text: 'smallest' },
    { at: 2.5, role: 'hidden', text: 'largest' },
    { at: 0.26, role: 'centre', text: 'aim' },
  ],
  regions: ['too tight', 'fits', 'too loose'],
  axis: 'gap (mm)',
  countAxis: '%',
  foot: ['seed 1'],
}

type Outline = Extract<Shape, { kind: 'polyline' }>
type Words = Extract<Shape, { kind: 'text' }>
type Line = Extract<Shape, { kind: 'line' }>

const outlines = (spread: Spread) =>
  distributionSheet(spread).shapes.filter((shape): shape is Outline => shape.kind === 'polyline')
const words = (spread: Spread) =>
  distributionSheet(spread).shapes.filter((shape): shape is Words => shape.kind === 'text')
const lines = (spread: Spread) =>
  distributionSheet(spread).shapes.filter((shape): shape is Line => shape.kind === 'line')
const corners = ({ points }: Outline) => {
  const [a, , c] = points
  return { left: a?.x ?? 0, bottom: a?.y ?? 0, right: c?.x ?? 0, top: c?.y ?? 0 }
}
const area = (bar: Outline) => {
  const { left, bottom, right, top } = corners(bar)
  return (right - left) * (top - bottom)
}
/** The bars, without the three boxes of the legend. */
const bars = (spread: Spread) => outlines(spread).slice(3)
/** Which way the lines go that hatch a bar; they stay inside it. */
const hatching = (spread: Spread, bar: Outline): 'rising' | 'falling' | 'none' => {
  const { left, bottom, right, top } = corners(bar)
  const inside = ({ from, to }: Line) =>
    [from, to].every(({ x, y }) => x >= left - 1e-9 && x <= right + 1e-9 && y >= bottom - 1e-9 && y <= top + 1e-9)
  const found = lines(spread).find((line) => line.role === 'hatch' && inside(line))
  return found === undefined ? 'none' : found.to.y > found.from.y ? 'rising' : 'falling'
}

describe('bars', () => {
  test('have areas as the counts, and are cut where a limit runs through one', () => {
    const total = bars(SPREAD).reduce((sum, bar) => sum + area(bar), 0)
    const share = (way: string) =>
      bars(SPREAD).reduce((sum, bar) => sum + (hatching(SPREAD, bar) === way ? area(bar) : 0), 0) / total
    expect(bars(SPREAD).length).toBe(6)
    expect(share('rising')).toBeWithin(1e-9, (1 + 4 * 0.25) / 10)
    expect(share('none')).toBeWithin(1e-9, (4 * 0.75 + 3 + 2 * 0.5) / 10)
    expect(share('falling')).toBeWithin(1e-9, (2 * 0.5) / 10)
  })

  test('of one value alone: one bar', () => {
    for (const value of [0, 1, 3]) {
      const one = bars({ ...SPREAD, edges: [value, value], counts: [7] })
      expect(one.length).toBe(1)
      expect(one.map(area).every((size) => size > 0)).toBe(true)
    }
  })
})

test('every mark has a letter and a line of words; lines that are close have letters at heights of their own', () => {
  const all = words(SPREAD).map(({ text }) => text)
  expect(all).toEqual(
    expect.arrayContaining([
      'A',
      'B',
      'C',
      'A: smallest',
      'B: largest',
      'C: aim',
      'seed 1',
      'too tight',
      'fits',
      'too loose',
      'gap (mm)',
      '%',
    ]),
  )
  const heights = words(SPREAD)
    .filter(({ text }) => /^[ABC]$/.test(text))
    .map(({ at }) => at.y)
  expect(new Set(heights).size).toBe(3)
})

test('a letter is crossed by no line, wherever the marks are', () => {
  const marks = fc.array(between(-1, 3), { minLength: 1, maxLength: 5 })
  fc.assert(
    fc.property(marks, (places) => {
      const spread = { ...SPREAD, marks: places.map((at) => ({ at, role: 'centre' as const, text: 'm' })) }
      const letters = words(spread).filter(({ text }) => /^[A-E]$/.test(text))
      expect(letters.length).toBe(places.length)
      for (const { at, height } of letters) {
        const crossing = lines(spread).filter(
          ({ role, from, to }) => role === 'centre' && from.x > at.x - height && from.x < at.x && to.y > at.y,
        )
        expect(crossing).toEqual([])
      }
    }),
  )
})

const ofWidth = (from: number, wide: number, limit: number): Spread => ({
  ...SPREAD,
  edges: [0, 1, 2, 3, 4].map((edge) => from + (edge * wide) / 4),
  min: limit,
  max: limit + 1,
  marks: [{ at: limit, role: 'hidden', text: 'limit' }],
})

test('everything stays on the sheet and off everything else, however narrow or far off the spread', () => {
  fc.assert(
    fc.property(between(-1000, 1000), magnitude(1e-20, 1000), between(-2000, 2000), (from, wide, limit) => {
      expect(sheetFaults(distributionSheet(ofWidth(from, wide, limit)))).toEqual([])
    }),
  )
})

// The picture of a ball gap of 9 mm, its spread a few units in the last place wide, once filled the memory with figures for
// its axis: a number that large has no next one to count on to.
test('ends that a double can hardly tell apart are drawn as one value', () => {
  for (const places of [1, 2, 3, 4, 5, 8, 16, 1000]) {
    const spread = ofWidth(9, places * Number.EPSILON * 8, 8)
    expect(sheetFaults(distributionSheet(spread))).toEqual([])
    for (const bar of bars(spread)) expect(corners(bar).right - corners(bar).left).toBeWithin(1e-6, 0.4)
  }
})

test('words too long for their room are set smaller', () => {
  const long = 'much more than there is room for, '.repeat(6)
  const spread: Spread = {
    ...SPREAD,
    title: long,
    axis: long,
    regions: [long, long, long],
    foot: [long],
    marks: [{ at: 1, role: 'hidden', text: long }],
  }
  expect(sheetFaults(distributionSheet(spread))).toEqual([])
})

test('ticks are round numbers', () => {
  const labels = words({ ...SPREAD, edges: [0.01, 0.02, 0.03, 0.04, 0.05], min: 0.01, max: 0.05, marks: [] }).map(
    ({ text }) => text,
  )
  expect(labels).toEqual(expect.arrayContaining(['0.01', '0.02', '0.05']))
  expect(words(SPREAD).map(({ text }) => text)).toEqual(expect.arrayContaining(['−1', '0', '3']))
})
