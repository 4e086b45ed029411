import { expect, test } from 'vitest'
import { believe, type Evidence, expectation, type Prior } from '#shared/statistics/belief.ts'
import { estimate } from '#shared/statistics/estimate.ts'
import { logAbove, logReading, readingReach } from '#shared/statistics/likelihood.ts'
import { normalCdf, normalDensity } from '#shared/statistics/normal.ts'

const PRIOR: Prior = { x: { from: 0, to: 100 }, y: { mean: 16, standardDeviation: 0.2 } }

/** A reading of a figure that is linear in x and y. */
function reads(
  value: number,
  standardUncertainty: number,
  truth: (x: number, y: number) => number,
  graduation = 0,
): Evidence {
  const error = { graduation, standardUncertainty }
  const logLikelihood = (x: number, y: number): number => logReading(value, truth(x, y), error)
  if (truth(1, 0) === truth(0, 0)) return { logLikelihood }
  const xFor = (figure: number, y: number): number => (figure - truth(0, y)) / (truth(1, y) - truth(0, y))
  const reach = readingReach(error)
  return { logLikelihood, within: (y) => ({ from: xFor(value - reach, y), to: xFor(value + reach, y) }) }
}

const ofX = (x: number): number => x
const ofY = (_x: number, y: number): number => y

test('one normal reading under a flat prior is its own posterior', () => {
  const belief = believe(PRIOR, [{ evidence: [reads(40, 0.1, ofX)] }])
  if (belief === undefined) throw new Error('no belief')
  const { value, standardUncertainty, interval95 } = estimate(belief, ofX)
  expect(value).toBeWithin(1e-4, 40)
  expect(standardUncertainty).toBeWithin(1e-4, 0.1)
  expect(interval95.low).toBeWithin(2e-3, 40 - 0.196)
  expect(interval95.high).toBeWithin(2e-3, 40 + 0.196)
})

test('readings, a cut and more readings: the conjugate normal case in closed form', () => {
  // x₀ from two readings; y from its prior and one reading; then x = x₀ + cut, read once more through x − 2.4 y.
  const belief = believe(PRIOR, [
    {
      evidence: [reads(40, 0.1, ofX), reads(40.2, 0.2, ofX), reads(16.1, 0.1, ofY)],
      thenCut: { mean: 1, standardDeviation: 0.08 },
    },
    { evidence: [reads(2.5, 0.05, (x, y) => x - 2.4 * y)] },
  ])
  if (belief === undefined) throw new Error('no belief')
  const x0 = { mean: (40 / 0.01 + 40.2 / 0.04) / (1 / 0.01 + 1 / 0.04), variance: 1 / (1 / 0.01 + 1 / 0.04) }
  const y0 = { mean: (16 / 0.04 + 16.1 / 0.01) / (1 / 0.04 + 1 / 0.01), variance: 1 / (1 / 0.04 + 1 / 0.01) }
  const x1 = { mean: x0.mean + 1, variance: x0.variance + 0.08 ** 2 }
  const predicted = x1.variance + 2.4 ** 2 * y0.variance + 0.05 ** 2
  const surprise = 2.5 - (x1.mean - 2.4 * y0.mean)
  const expected = {
    x: x1.mean + (x1.variance / predicted) * surprise,
    y: y0.mean - ((2.4 * y0.variance) / predicted) * surprise,
    deviationOfX: Math.sqrt(x1.variance - x1.variance ** 2 / predicted),
    deviationOfY: Math.sqrt(y0.variance - (2.4 * y0.variance) ** 2 / predicted),
  }
  const [x, y] = [estimate(belief, ofX), estimate(belief, ofY)]
  expect(x.value).toBeWithin(5e-4, expected.x)
  expect(y.value).toBeWithin(5e-4, expected.y)
  expect(x.standardUncertainty).toBeWithin(0.01 * expected.deviationOfX, expected.deviationOfX)
  expect(y.standardUncertainty).toBeWithin(0.01 * expected.deviationOfY, expected.deviationOfY)
})

test('one-sided and rounded readings: the same posterior as from a million trials', () => {
  const truth = (x: number, y: number): number => 6.2 * (x - 39) - 15 * (y - 16)
  const prior: Prior = { x: { from: 38, to: 40 }, y: { mean: 16, standardDeviation: 0.1 } }
  const belief = believe(prior, [
    { evidence: [reads(1, 0.2, truth, 0.5), { logLikelihood: (x) => logAbove(x, 39.1, 0.05) }] },
  ])
  if (belief === undefined) throw new Error('no belief')
  // The brute force road: draw from the prior, weight by the likelihood written out once more.
  let [sum, mean, square] = [0, 0, 0]
  const points = 1000
  for (let i = 0; i < points; i++) {
    for (let j = 0; j < points; j++) {
      const x = 38 + (2 * (i + 0.5)) / points
      const y = 15.5 + (j + 0.5) / points
      const there = truth(x, y)
      const rounded = normalCdf((1.25 - there) / 0.2) - normalCdf((0.75 - there) / 0.2)
      const weight = normalDensity((y - 16) / 0.1) * rounded * normalCdf((x - 39.1) / 0.05)
      sum += weight
      mean += weight * x
      square += weight * x * x
    }
  }
  const x = estimate(belief, ofX)
  expect(x.value).toBeWithin(1e-4, mean / sum)
  expect(x.standardUncertainty).toBeWithin(1e-3, Math.sqrt(square / sum - (mean / sum) ** 2))
})

test('a cut never puts wood back', () => {
  const belief = believe(PRIOR, [
    { evidence: [reads(40, 0.001, ofX)], thenCut: { mean: 0.1, standardDeviation: 0.3 } },
    { evidence: [] },
  ])
  if (belief === undefined) throw new Error('no belief')
  expect(expectation(belief, (x) => (x < 39.99 ? 1 : 0))).toBeLessThan(1e-6)
})

test('a cut that is finer than the grid still moves the belief by its depth', () => {
  const belief = believe(PRIOR, [
    { evidence: [reads(40, 0.5, ofX)], thenCut: { mean: 0.25, standardDeviation: 1e-4 } },
    { evidence: [] },
  ])
  if (belief === undefined) throw new Error('no belief')
  expect(expectation(belief, ofX)).toBeWithin(0.02, 40.25)
})

test('readings that nothing could give leave no belief', () => {
  const never: Evidence = { logLikelihood: () => Number.NEGATIVE_INFINITY }
  expect(believe(PRIOR, [{ evidence: [never] }])).toBeUndefined()
})
