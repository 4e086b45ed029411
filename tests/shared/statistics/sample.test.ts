import { expect, test } from 'vitest'
import { forEachOf, sampleOf } from '#shared/statistics/sample.ts'
import { normals, uniforms } from '#tests/support/chance.ts'

/** Sum, mean and variance of what a sample gives back. */
function momentsOf(values: Float64Array) {
  let [all, mean, square] = [0, 0, 0]
  forEachOf(sampleOf(values), (value, share) => {
    all += share
    mean += share * value
    square += share * value * value
  })
  return { all, mean, variance: square - mean * mean }
}

test('counted values keep their mean, and their variance to 1e-4 of it', () => {
  const normal = normals(uniforms(3))
  const values = Float64Array.from({ length: 20_000 }, () => 3 + 0.2 * normal())
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length
  const counted = momentsOf(values)
  expect(counted.all).toBeWithin(1e-12, 1)
  expect(counted.mean).toBeWithin(1e-12, mean)
  expect(counted.variance / variance).toBeWithin(1e-4, 1)
})

test('values that are all the same are one value', () => {
  expect(momentsOf(new Float64Array(5).fill(2.5))).toEqual({ all: 1, mean: 2.5, variance: 0 })
})
