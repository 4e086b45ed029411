// Turns and passings for each turn of the inner ring, outer ring still. The 6205 with its 9 balls of 0.3126 in on 1.537 in:
// Case Western Reserve University, Bearing Data Center, which prints 3.5848, 5.4152 and 4.7135 (twice the spin; from memory,
// as is its 0.39828 for the ball set, which is 0.00003 below what the geometry gives). The others: a bearing maker's
// catalogue, housed units, table A-9; the ratio of ball to pitch diameter is taken from the printed outer passing, so that
// column is no test of its own. Tolerance: half the last printed digit, for the spin what the ratio's last digit makes of it.
import { expect, test } from 'vitest'
import { plateTurnRatios } from '#shared/questions/load/arrangements/thrust.ts'
import { turnRatios } from '#shared/questions/load/speeds.ts'

const ratiosOf = (ballToPitch: number, balls: number) =>
  turnRatios({ outer: 1 + ballToPitch, pitch: 1, inner: 1 - ballToPitch }, balls, 'inner-ring')

test('6205: 3.5848 outer, 5.4152 inner, 0.3983 ball set, 4.7135 twice the spin', () => {
  const { outerPasses, innerPasses, ballSet, ballSpin } = ratiosOf(0.3126 / 1.537, 9)
  expect(outerPasses).toBeWithin(0.00005, 3.5848)
  expect(innerPasses).toBeWithin(0.00005, 5.4152)
  expect(ballSet).toBeWithin(0.00005, 0.3983)
  expect(2 * ballSpin).toBeWithin(0.0001, 4.7135)
  expect((outerPasses * 1800) / 60).toBeWithin(0.006, 107.54) // at 1800 turns a minute, as printed beside it
})

test.each([
  ['202K', 8, 0.2188, 0.391, 2.175, 3.125, 4.875],
  ['203K', 8, 0.2368, 0.382, 1.994, 3.053, 4.947],
  ['204K', 8, 0.237, 0.382, 1.992, 3.052, 4.948],
  ['205K', 9, 0.2058, 0.397, 2.328, 3.574, 5.426],
  ['206K', 9, 0.2071, 0.396, 2.311, 3.568, 5.432],
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: the printed figure is near ln 10 by chance
  ['207K', 9, 0.2078, 0.396, 2.303, 3.565, 5.435],
  ['208K', 9, 0.2118, 0.394, 2.256, 3.547, 5.453],
  ['209K', 9, 0.1953, 0.402, 2.461, 3.621, 5.379],
  ['210K', 10, 0.1814, 0.409, 2.665, 4.093, 5.907],
  ['211K', 10, 0.1844, 0.408, 2.62, 4.078, 5.922],
  ['9106', 11, 0.1658, 0.417, 2.933, 4.588, 6.412],
  ['303K', 7, 0.2729, 0.364, 1.696, 2.545, 4.455],
  ['318W', 12, 0.238, 0.381, 1.982, 4.572, 7.428],
] as const)('%s: %i balls, %s: %s, %s, %s, %s', (_, balls, ratio, set, spin, outer, inner) => {
  const { ballSet, ballSpin, outerPasses, innerPasses } = ratiosOf(ratio, balls)
  expect(ballSet).toBeWithin(0.001, set)
  expect(ballSpin / spin).toBeWithin(0.01, 1)
  expect(outerPasses).toBeWithin(0.001, outer)
  expect(innerPasses).toBeWithin(0.001, inner)
})

test('the catalogue, p. A-13: a ball set of 0.398 at 1200 turns a minute goes round 7.96 times a second', () => {
  expect((ratiosOf(1 - 2 * 0.398, 9).ballSet * 1200) / 60).toBeWithin(0.005, 7.96)
})

test('with the outer ring turning, the balls that pass both rings are still Z a turn, and seen from the set all is as before', () => {
  const radii = { outer: 1.2, pitch: 1, inner: 0.8 }
  const [inner, outer] = [turnRatios(radii, 9, 'inner-ring'), turnRatios(radii, 9, 'outer-ring')]
  expect(inner.outerPasses + inner.innerPasses).toBeWithin(1e-12, 9)
  expect(outer.outerPasses + outer.innerPasses).toBeWithin(1e-12, 9)
  expect(inner.ballSet + outer.ballSet).toBeWithin(1e-12, 1)
  expect(inner.ballSpin).toBeWithin(1e-12, outer.ballSpin)
})

// Contact at 90°: cos α = 0 in the same formulas, (1 − γ cos α)/2 of the ball set, Z (1 ∓ γ cos α)/2 passings, (1 − γ² cos² α)/2γ
// of the spin. The catalogue's identities hold: both passings are Z together, and the ball set is a passing over Z.
test('the balls of a 6205 between flat plates: half as fast as the plate, 4.5 passings, 2.4584 of the spin', () => {
  const { ballSet, ballSpin, passes } = plateTurnRatios(1.537 / 2, 0.3126 / 2, 9)
  expect(ballSet).toBe(0.5)
  expect(passes).toBe(4.5)
  expect(passes / 9).toBe(ballSet)
  expect(ballSpin).toBeWithin(0.00005, 2.4584)
})

test('rings ever larger round the same balls turn as plates do', () => {
  const [rings, plates] = [ratiosOf(1e-6, 9), plateTurnRatios(1, 1e-6, 9)]
  expect(rings.ballSet).toBeWithin(1e-6, plates.ballSet)
  expect(rings.outerPasses).toBeWithin(1e-5, plates.passes)
  expect(rings.innerPasses).toBeWithin(1e-5, plates.passes)
  expect(rings.ballSpin / plates.ballSpin).toBeWithin(1e-6, 1)
})
