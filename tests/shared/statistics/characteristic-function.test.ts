import { describe, expect, test } from 'vitest'
import { characteristicOf } from '#shared/statistics/characteristic-function.ts'
import { type Distribution, densityOf, endsOf, meanOf } from '#shared/statistics/distribution.ts'

const DISTRIBUTIONS: readonly Exclude<Distribution, { kind: 'discrete' }>[] = [
  { kind: 'normal', mean: 0, standardDeviation: 0.7 },
  { kind: 'uniform', mean: 0, halfWidth: 1.3 },
  { kind: 'triangular', mean: 0, halfWidth: 0.8 },
]
const ANGLES = [0, 1e-5, 0.1, 1, 3.7, 12]

/** E cos and E sin of t (x − middle), summed over the density in many narrow pieces. */
function summed(distribution: (typeof DISTRIBUTIONS)[number], t: number, of: (x: number) => number, middle: number) {
  const { least, most } = endsOf(distribution, 9)
  const density = densityOf(distribution)
  const pieces = 40_000
  const width = (most - least) / pieces
  let [real, imaginary] = [0, 0]
  for (let piece = 0; piece < pieces; piece++) {
    const x = least + (piece + 0.5) * width
    real += density(x) * width * Math.cos(t * (of(x) - middle))
    imaginary += density(x) * width * Math.sin(t * (of(x) - middle))
  }
  return { real, imaginary }
}

describe.each(DISTRIBUTIONS)('$kind: the sum over its density', (distribution) => {
  test('of itself, wherever its mean is', () => {
    for (const mean of [0, 2.5]) {
      const found = characteristicOf({ ...distribution, mean })
      for (const t of ANGLES) {
        expect(found.real(t)).toBeWithin(1e-7, summed(distribution, t, (x) => x, 0).real)
      }
    }
  })
})

test('a list of values', () => {
  const list: Distribution = { kind: 'discrete', values: [-1, 2, 2.5] }
  const found = characteristicOf(list)
  const average = (of: (value: number) => number) => (of(-1) + of(2) + of(2.5)) / 3
  const mean = meanOf(list)
  expect(found.real(1.2)).toBeWithin(
    1e-15,
    average((value) => Math.cos(1.2 * (value - mean))),
  )
  expect(found.imaginary?.(1.2)).toBeWithin(
    1e-15,
    average((value) => Math.sin(1.2 * (value - mean))),
  )
})
