// Descartes' circle theorem for three circles that touch one another inside a fourth, curvatures k = 1/r, the fourth
// negative: (k1 + k2 + k3 + k4)² = 2 (k1² + k2² + k3² + k4²), k4 = k1 + k2 + k3 − 2 √(k1 k2 + k2 k3 + k3 k1).
// The Apollonian packing (−1, 2, 2, 3) and the root quadruple (−6, 11, 14, 15) of an integral packing: both from memory,
// recomputed. Three balls that close in a groove are such circles. Tolerance: 1e-10.
import { describe, expect, test } from 'vitest'
import { closingRadius, unequalBallGap } from '#shared/geometry/unequal-balls.ts'
import { mm } from '#shared/units/length.ts'

const QUADRUPLES = [
  { packing: '(−1, 2, 2, 3)', outer: -1, inner: [2, 2, 3] },
  { packing: '(−6, 11, 14, 15)', outer: -6, inner: [11, 14, 15] },
] as const

/** Both ways round and each place of the gap. */
const orders = ([one, two, three]: readonly [number, number, number]) => [
  [one, two, three],
  [one, three, two],
  [two, one, three],
  [two, three, one],
  [three, one, two],
  [three, two, one],
]

describe.each(QUADRUPLES)('Descartes $packing', ({ outer, inner }) => {
  const [k1, k2, k3] = inner

  test('is one: as copied, the curvatures satisfy the theorem', () => {
    const sum = outer + k1 + k2 + k3
    expect(sum * sum).toBe(2 * (outer * outer + k1 * k1 + k2 * k2 + k3 * k3))
    expect(k1 + k2 + k3 - 2 * Math.sqrt(k1 * k2 + k2 * k3 + k3 * k1)).toBeWithin(1e-12, outer)
  })

  test.each(orders(inner))('balls of curvatures %s, %s, %s close in the groove that encloses them', (...curvatures) => {
    const diameters = curvatures.map((curvature) => 2 / curvature)
    expect(closingRadius(diameters)).toBeWithin(1e-10, -1 / outer)
    // two of curvature 2 fill the groove right across: there the gap moves by the root of the radius
    expect(unequalBallGap(mm(-1 / outer), diameters)).toBeWithin(outer === -1 ? 1e-7 : 1e-14, 0)
  })
})

test('any three balls that close in one groove satisfy the theorem', () => {
  for (const [one, two, three] of [
    [1, 1, 1],
    [1, 0.9, 0.8],
    [16, 15, 13],
    [0.75, 0.7, 0.74],
  ] as const) {
    const curvatures = [2 / one, 2 / two, 2 / three, -1 / closingRadius([one, two, three])]
    const sum = curvatures.reduce((total, curvature) => total + curvature, 0)
    const squares = curvatures.reduce((total, curvature) => total + curvature * curvature, 0)
    expect(sum * sum).toBeWithin(1e-12 * squares, 2 * squares)
  }
})
