import { expect, test } from 'vitest'
import { chanceBetween, chanceTaken, thresholdOf } from '#shared/bearing/entry-threshold.ts'
import { ballGap, gapPerPitchRadius } from '#shared/geometry/ring-of-balls.ts'
import { seatIn } from '#shared/geometry/seat.ts'
import { disagreements } from '#shared/questions/fit/agreement.ts'
import { estimateOf } from '#shared/questions/fit/estimate.ts'
import type { Evidence } from '#shared/questions/fit/evidence.ts'
import type { Prediction } from '#shared/questions/fit/proposal.ts'
import {
  depthForSeat,
  gapOf,
  gapSlope,
  pitchRadius,
  radiusForGap,
  seatDepth,
  xForPitch,
} from '#shared/questions/fit/ring-law.ts'
import { normalColumn, POINTS } from '#shared/statistics/normal-points.ts'
import { unevenLoss, unevenLossBy } from '#shared/statistics/play-of-random-balls.ts'
import { mm } from '#shared/units/length.ts'
import { normals, uniforms } from '#tests/support/chance.ts'

test.each([3, 4, 5, 14, 40, 200])('the law of %i balls is that of the ring of balls, there and back', (count) => {
  const ball = 14
  for (const share of [-0.9, -0.3, 0, 0.05, 0.3, 0.9]) {
    const gap = share * ball * (count === 3 ? 0.9 : 1)
    const radius = radiusForGap(gap, ball, count)
    expect(gapOf(radius, ball, count)).toBeWithin(1e-9 * radius, gap)
    expect(gapOf(radius, ball, count)).toBeWithin(1e-9, ballGap(mm(radius), mm(ball), count))
    expect(gapSlope(radius, ball, count)).toBeWithin(1e-8, gapPerPitchRadius(mm(radius), mm(ball), count))
  }
})

test('a ball on edges sits where the seat has it, there and back', () => {
  for (const depth of [0.5, 1.5, 3, 4.5]) {
    const seat = seatDepth(6.3, depth, 14)
    expect(seat).toBeWithin(1e-12, seatIn({ radius: mm(6.3), depth: mm(depth) }, mm(14)).depth)
    expect(depthForSeat(6.3, seat, 14)).toBeWithin(1e-9, depth)
    const law = { on: 'edges', landRadius: 35, arc: 6.3 } as const
    expect(xForPitch(law, pitchRadius(law, 35 + depth, 14), 14)).toBeWithin(1e-9, 35 + depth)
  }
})

/** V by search: the least clearance of a disc that may move is concave, so steps that halve find its top. */
function reductionOf(sizes: readonly number[]): number {
  const least = (a: number, b: number): number =>
    Math.min(
      ...sizes.map(
        (z, i) => a * Math.cos((2 * Math.PI * i) / sizes.length) + b * Math.sin((2 * Math.PI * i) / sizes.length) - z,
      ),
    )
  let [a, b, best] = [0, 0, least(0, 0)]
  for (let step = 2; step > 1e-4; ) {
    let moved = false
    for (let turn = 0; turn < 12; turn++) {
      const [x, y] = [a + step * Math.cos((Math.PI * turn) / 6), b + step * Math.sin((Math.PI * turn) / 6)]
      const there = least(x, y)
      if (there > best + 1e-3 * step) [a, b, best, moved] = [x, y, there, true]
    }
    if (!moved) step /= 2
  }
  return -2 * best
}

test.each([3, 4, 5, 9, 14, 25, 60])('V of %i balls has the mean and the spread of trials', (count) => {
  const trials = 400
  const normal = normals(uniforms(count))
  const found = Array.from({ length: trials }, () => {
    const z = Array.from({ length: count }, normal)
    const mean = z.reduce((sum, each) => sum + each, 0) / count
    return reductionOf(z.map((each) => each - mean))
  })
  const mean = found.reduce((sum, each) => sum + each, 0) / trials
  const deviation = Math.sqrt(found.reduce((sum, each) => sum + (each - mean) ** 2, 0) / trials)
  const law = unevenLoss(count)
  const lawDeviation = Math.sqrt(law.variance)
  expect(mean).toBeWithin(0.01 + (4 * lawDeviation) / Math.sqrt(trials), law.mean)
  expect(deviation).toBeWithin(0.01 + 0.18 * lawDeviation, lawDeviation)
  expect(unevenLossBy(count)(-6)).toBeGreaterThanOrEqual(0)
})

test('every column of points is standard normal, and no two lean on one another', () => {
  const columns = Array.from({ length: 14 }, (_, column) => normalColumn(column))
  columns.forEach((one, index) => {
    const mean = one.reduce((sum, each) => sum + each, 0) / POINTS
    const variance = one.reduce((sum, each) => sum + each * each, 0) / POINTS
    expect(mean).toBeWithin(2e-3, 0)
    expect(variance).toBeWithin(5e-3, 1)
    for (const other of columns.slice(0, index)) {
      const both = one.reduce((sum, each, point) => sum + each * (other[point] ?? 0), 0) / POINTS
      expect(both).toBeWithin(0.06, 0)
    }
  })
})

test('the shortest interval of a normal sample is 3.92 deviations long, of an exponential one it begins at 0', () => {
  const weights = new Float64Array(POINTS).fill(1 / POINTS)
  const normal = estimateOf(normalColumn(3), weights).interval95
  expect(normal.max - normal.min).toBeWithin(0.1, 3.92)
  const exponential = normalColumn(0).map((_, point) => -Math.log((point + 0.5) / POINTS))
  const { min, max } = estimateOf(exponential, weights).interval95
  expect(min).toBeWithin(0.1, 0)
  expect(max).toBeWithin(0.15, -Math.log(0.05))
})

test('a gap between one that refused the ball and one that took it takes it with a chance between 0 and 1', () => {
  const threshold = thresholdOf(0.3, 14)
  expect(chanceTaken(threshold, 0.1, 0.3, 0.05)).toBe(0)
  expect(chanceTaken(threshold, 0.1, 0.3, 0.3)).toBe(1)
  expect(chanceTaken(threshold, 0.1, 0.3, 0.2)).toBeGreaterThan(0.3)
  expect(chanceTaken(threshold, 0.1, 0.3, 0.2)).toBeLessThan(0.8)
})

test('words that contradict one another have hardly any chance, and the less the farther they are apart', () => {
  const threshold = thresholdOf(0.3, 14)
  const [near, far] = [chanceBetween(threshold, 0.2, 0.1), chanceBetween(threshold, 0.5, 0.1)]
  expect(near).toBeLessThan(1e-9)
  expect(far).toBeLessThan(near)
  expect(far).toBeGreaterThan(0)
})

test('only readings of the present state are held against what the others lead to expect', () => {
  const prediction: Prediction = { without: [1, 0.01], withAll: [1, 0.01], errorVariance: 0.01 }
  const figure = (index: number, state: number, value: number) => ({ says: 'figure', index, state, value }) as Evidence
  const evidence = [figure(0, 0, 3), figure(0, 1, 3), figure(1, 1, 1.1), figure(2, 1, 3)]
  const found = disagreements(evidence, [prediction, prediction, prediction], 1)
  expect(found.map(({ index }) => index)).toEqual([0])
  expect(found[0]?.expected?.value).toBe(1)
})

test('a smaller groove never has a larger gap, not even one in which no two balls find room', () => {
  for (const count of [3, 4, 5, 14, 60]) {
    const gaps = Array.from({ length: 400 }, (_, step) => gapOf(-20 + 0.5 * step, 14, count))
    gaps.forEach((each, index) => {
      expect(each).toBeGreaterThan(gaps[index - 1] ?? Number.NEGATIVE_INFINITY)
    })
  }
})
