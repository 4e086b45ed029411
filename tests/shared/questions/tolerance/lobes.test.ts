import fc from 'fast-check'
import { expect, test } from 'vitest'
import { lobesOf, momentsTogether, together } from '#shared/questions/tolerance/lobes.ts'
import { type Distribution, momentsOfSize } from '#shared/statistics/distribution.ts'
import { normalQuantile } from '#shared/statistics/normal.ts'
import { between } from '#tests/support/inputs.ts'

/** A lobed radius A cos 2(ψ − ψ₀), written out. */
const radiusAt = (amplitude: number, turn: number, angle: number): number =>
  amplitude * Math.cos(2 * angle - 2 * Math.PI * turn)

test('two pairs of lobes are one: the radii add up in every direction', () => {
  const turn = fc.integer({ min: 0, max: 1023 }).map((place) => place / 1024)
  fc.assert(
    fc.property(between(-1, 1), turn, between(0, 1), turn, between(0, 7), (one, atOne, other, atOther, angle) => {
      const sum = together(lobesOf(one, atOne), lobesOf(other, atOther))
      const found = sum.amplitude * (sum.cosine * Math.cos(2 * angle) + sum.sine * Math.sin(2 * angle))
      expect(found).toBeWithin(1e-12, radiusAt(one, atOne, angle) + radiusAt(other, atOther, angle))
      expect(sum.amplitude).toBeGreaterThanOrEqual(0)
    }),
  )
})

/** Quantiles of many equal parts. */
const PARTS = 2000
const quantiles = {
  normal: (p: number) => 0.2 + 0.3 * normalQuantile(p),
  uniform: (p: number) => 0.2 + 0.5 * (2 * p - 1),
  triangular: (p: number) => 0.2 + 0.5 * (p < 0.5 ? Math.sqrt(2 * p) - 1 : 1 - Math.sqrt(2 - 2 * p)),
}
const DISTRIBUTIONS: readonly Exclude<Distribution, { kind: 'discrete' }>[] = [
  { kind: 'normal', mean: 0.2, standardDeviation: 0.3 },
  { kind: 'uniform', mean: 0.2, halfWidth: 0.5 },
  { kind: 'triangular', mean: 0.2, halfWidth: 0.5 },
]

test.each(DISTRIBUTIONS)('$kind amplitudes with given ones: against sums over all directions', (distribution) => {
  for (const given of [0.01, 0.2, 1]) {
    let [first, second] = [0, 0]
    for (let part = 0; part < PARTS; part++) {
      const amplitude = quantiles[distribution.kind]((part + 0.5) / PARTS)
      for (let turn = 0; turn < 64; turn++) {
        const angle = (2 * Math.PI * (turn + 0.5)) / 64
        const square = amplitude * amplitude + given * given + 2 * amplitude * given * Math.cos(angle)
        first += Math.sqrt(square)
        second += square
      }
    }
    const count = 64 * PARTS
    const { mean, variance } = momentsTogether(distribution, given)
    expect(mean).toBeWithin(1e-4, first / count)
    expect(variance).toBeWithin(3e-4, second / count - (first / count) * (first / count))
  }
})

test('limits: none given, and none of their own', () => {
  for (const distribution of DISTRIBUTIONS) {
    expect(momentsTogether(distribution, 0)).toEqual(momentsOfSize(distribution))
    expect(momentsTogether(distribution, 1e-9).mean).toBeWithin(1e-8, momentsOfSize(distribution).mean)
  }
  const none = momentsTogether({ kind: 'normal', mean: 0, standardDeviation: 0 }, 0.3)
  expect(none.mean).toBeWithin(1e-15, 0.3)
  expect(none.variance).toBeWithin(1e-15, 0)
  // |a + b| in any direction for a = b: 4/π of either, known of the mean chord of a circle of radius 1.
  expect(momentsTogether({ kind: 'discrete', values: [1] }, 1).mean).toBeWithin(1e-15, 4 / Math.PI)
})
