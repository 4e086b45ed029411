import { expect, test } from 'vitest'
import { closingRadius, unequalBallGap } from '#shared/geometry/unequal-balls.ts'
import { mm } from '#shared/units/length.ts'

// Descartes' circle theorem, k4 = k1 + k2 + k3 ± 2 √(k1 k2 + k2 k3 + k3 k1): three circles that touch one another inside a
// fourth. Apollonian packing (-1, 2, 2, 3) and the integral root quadruple (-6, 11, 14, 15); from memory, recomputed.
test.each([
  { inner: [2, 2, 3], outer: -1 },
  { inner: [11, 14, 15], outer: -6 },
])('Descartes $inner inside $outer: the groove in which three unequal balls close', ({ inner, outer }) => {
  const diameters = inner.map((curvature) => 2 / curvature)
  // (2, 2, 3) close in a half turn between the two largest, which then touch across the middle: their angle is π.
  expect(unequalBallGap(mm(-1 / outer), diameters)).toBeWithin(1e-7, 0)
  expect(closingRadius(diameters)).toBeWithin(1e-10, -1 / outer)
})
