import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Ellipse } from '#shared/geometry/ellipse.ts'
import { playInEllipse } from '#shared/geometry/play-in-ellipse.ts'
import { mm } from '#shared/units/length.ts'
import { between } from '#tests/support/inputs.ts'

const ellipse = (along: number, across: number): Ellipse => ({ along: mm(along), across: mm(across) })

test('round rings: the play of the design', () => {
  expect(playInEllipse(ellipse(40, 40), ellipse(29.9, 29.9), mm(10))).toEqual({
    worst: expect.closeTo(0.2, 9),
    best: expect.closeTo(0.2, 9),
  })
})

test('two rings cut alike and turned alike keep more room than across one another', () => {
  const { worst, best } = playInEllipse(ellipse(40, 40.4), ellipse(29.9, 30.2), mm(10))
  // Across: the long axis of the inner ring on the short one of the outer; together: each on its own.
  expect(worst).toBeWithin(1e-9, 2 * (40 - 30.2 - 10))
  expect(best).toBeWithin(1e-9, 0.2)
})

/**
 * By coordinates: how far the inner ring goes to either side before one of many balls round it is squeezed, over all
 * directions. A ball of radius r between the two: its centre is r from the outer bottom, along that bottom's normal, and
 * must be r from the inner one; both curves are taken as 720 points.
 */
function tightestByPoints(outer: Ellipse, inner: Ellipse, ballDiameter: number, turn: number): number {
  const normals = Array.from({ length: 120 }, (_, i) => (i * Math.PI) / 60)
  const reach = ({ along, across }: Ellipse, direction: number): number =>
    Math.max(
      ...Array.from({ length: 720 }, (_, i) => {
        const angle = (i * Math.PI) / 360
        return along * Math.cos(angle) * Math.cos(direction) + across * Math.sin(angle) * Math.sin(direction)
      }),
    )
  const outerReach = normals.map((n) => reach(outer, n))
  const innerReach = normals.map((n) => reach(inner, n - turn))
  const room = normals.map((_, i) => (outerReach[i] ?? 0) - (innerReach[i] ?? 0) - ballDiameter)
  return 2 * Math.min(...room)
}

test('by coordinates, over all turns of the inner ring', () => {
  const axes = [between(39.5, 40.5), between(39.5, 40.5), between(29, 30), between(29, 30)] as const
  fc.assert(
    fc.property(...axes, (a, b, c, d) => {
      const [outer, inner] = [ellipse(a, b), ellipse(c, d)]
      const found = Array.from({ length: 13 }, (_, i) => tightestByPoints(outer, inner, 9.8, (i * Math.PI) / 12))
      const { worst, best } = playInEllipse(outer, inner, mm(9.8))
      expect(Math.min(...found)).toBeWithin(2e-3, worst)
      expect(Math.max(...found)).toBeWithin(2e-3, best)
    }),
    { numRuns: 3 },
  )
})

test('the level point between the axes counts too', () => {
  // Outer nearly round, inner clearly not, and yet tightest in between: by a fine walk over the directions.
  const [outer, inner] = [ellipse(50, 44), ellipse(40, 33)]
  const walk = Array.from({ length: 100_001 }, (_, i) => {
    const sine = Math.sin((i * Math.PI) / 200_000) ** 2
    return Math.sqrt(2500 + (1936 - 2500) * sine) - Math.sqrt(1600 + (1089 - 1600) * sine)
  })
  expect(playInEllipse(outer, inner, mm(5)).best).toBeWithin(1e-6, 2 * (Math.min(...walk) - 5))
})
