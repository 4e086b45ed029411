import { expect, test } from 'vitest'
import { pace, paceOfOne, unitsOf } from '#src/workers/estimate.ts'

const FIT = {
  design: { units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12 },
  ring: 'outer',
  earlier: [],
  tools: {},
} as const

test('units are counted from the input: more readings, more units', () => {
  const reading = { kind: 'ball-gap', value: 1 }
  const of = (count: number) =>
    unitsOf('fitCorrection', JSON.parse(JSON.stringify({ ...FIT, readings: Array(count).fill(reading) })))
  expect(of(2)).toBe(of(2))
  expect(of(50)).toBeGreaterThan(of(2))
})

test('how long a unit takes is learned from what is done', () => {
  const { msFor, learn } = pace()
  const before = msFor('fitCorrection', 200)
  for (let task = 0; task < 200; task++) learn('fitCorrection', 200, 2 * before)
  expect(msFor('fitCorrection', 200) / before).toBeWithin(0.05, 2)
  expect(msFor('seasonalFit', 10)).toBe(pace().msFor('seasonalFit', 10))
})

test('what was learned in a slow hour is doubted until it no longer refuses', () => {
  const { msFor, learn, forgetSome } = pace()
  const before = msFor('fitCorrection', 200)
  for (let task = 0; task < 200; task++) learn('fitCorrection', 200, 3 * before)
  for (let refusal = 0; refusal < 50; refusal++) forgetSome('fitCorrection')
  expect(msFor('fitCorrection', 200) / before).toBeWithin(0.05, 1)
})

test('odd tasks move it no further than four times up or down', () => {
  const { msFor, learn } = pace()
  const before = msFor('fitCorrection', 200)
  for (let task = 0; task < 1000; task++) learn('fitCorrection', 1, 1e6)
  expect(msFor('fitCorrection', 200) / before).toBeWithin(1e-9, 4)
  for (let task = 0; task < 1000; task++) learn('fitCorrection', 1e9, 1)
  expect(msFor('fitCorrection', 200) / before).toBeWithin(1e-9, 1 / 4)
})

test('an answer tells its own pace once a good part of its work is done', () => {
  const { of, learn } = paceOfOne(300)
  learn('furtherSearch', 1000, 200)
  expect(of('furtherSearch')).toBeUndefined()
  learn('furtherSearch', 1000, 200)
  expect(of('furtherSearch')?.(500)).toBe(100)
})
