import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { piecesOf, segmentsOf, stripLength } from '#shared/geometry/segments.ts'
import { mm } from '#shared/units/length.ts'
import { between } from '#tests/support/inputs.ts'

const ring = (outerRadius: number, innerRadius: number, count: number) => ({
  outerRadius: mm(outerRadius),
  innerRadius: mm(innerRadius),
  count,
})

/** Corners of one piece, symmetric about the y axis, its strip lying along x: as the miter saw leaves it. */
function corners(of: ReturnType<typeof segmentsOf>, innerApothem: number) {
  return [
    [-of.innerEdge / 2, innerApothem],
    [of.innerEdge / 2, innerApothem],
    [of.outerEdge / 2, innerApothem + of.stripWidth],
    [-of.outerEdge / 2, innerApothem + of.stripWidth],
  ] as const
}

describe('laid round by coordinates', () => {
  const rings = [between(20, 300), between(0, 0.95), fc.integer({ min: 3, max: 96 })] as const

  test('the pieces meet edge to edge, the whole way round', () => {
    fc.assert(
      fc.property(...rings, (outer, share, count) => {
        const of = segmentsOf(ring(outer, outer * share, count))
        const innerApothem = outer * share * Math.cos(Math.PI / count)
        const turn = (2 * Math.PI) / count
        const [, innerRight, outerRight] = corners(of, innerApothem)
        const [innerLeft, , , outerLeft] = corners(of, innerApothem)
        // The next piece to the right is this one turned by the angle of a piece: its left flank is our right one.
        for (const [[x, y], [u, v]] of [
          [innerLeft, innerRight],
          [outerLeft, outerRight],
        ] as const) {
          expect(x * Math.cos(turn) + y * Math.sin(turn)).toBeWithin(1e-9 * outer, u)
          expect(-x * Math.sin(turn) + y * Math.cos(turn)).toBeWithin(1e-9 * outer, v)
        }
      }),
    )
  })

  test('the round ring lies wholly inside, and touches', () => {
    fc.assert(
      fc.property(...rings, (outer, share, count) => {
        const of = segmentsOf(ring(outer, outer * share, count))
        const innerApothem = outer * share * Math.cos(Math.PI / count)
        // outside: nearest to the middle is the long edge's own middle; inside: farthest from it is a corner
        expect(innerApothem + of.stripWidth).toBeWithin(1e-9 * outer, outer)
        expect(Math.hypot(of.innerEdge / 2, innerApothem)).toBeWithin(1e-9 * outer, outer * share)
      }),
    )
  })

  test('the flank leans by the miter', () => {
    fc.assert(
      fc.property(...rings, (outer, share, count) => {
        const of = segmentsOf(ring(outer, outer * share, count))
        const lean = Math.atan2((of.outerEdge - of.innerEdge) / 2, of.stripWidth)
        expect((lean * 180) / Math.PI).toBeWithin(1e-6, of.miter)
      }),
    )
  })

  test('the strip is as long as the pieces laid out in it, turned over in turn, need with their cuts', () => {
    fc.assert(
      fc.property(...rings, between(0, 4), (outer, share, count, kerf) => {
        const of = segmentsOf(ring(outer, outer * share, count))
        const area = ((of.outerEdge + of.innerEdge) / 2) * of.stripWidth
        const slant = of.stripWidth * Math.tan(Math.PI / count)
        // A parallelogram or a trapezoid as a whole: its area over its width, half a slant at each end, and the kerfs.
        const cuts = ((count + 1) * kerf) / Math.cos(Math.PI / count)
        const length = stripLength(of, count, mm(kerf))
        expect(length).toBeWithin(1e-9 * length, (count * area) / of.stripWidth + slant + cuts)
        // There and back: so many pieces come from it, and one fewer from less.
        expect(piecesOf(of, length, mm(kerf))).toBe(count)
        expect(piecesOf(of, mm(length * (1 - 1e-6)), mm(kerf))).toBe(count - 1)
      }),
    )
  })
})

// Regular polygon, any handbook of mathematics: side = 2 R sin(180/n) = 2 a tan(180/n), apothem = R cos(180/n).
test.each([
  [3, 60, 3.4641],
  [4, 45, 2],
  [6, 30, 1.1547],
  [8, 22.5, 0.8284],
  [12, 15, 0.5359],
])('%s pieces round a circle of radius 1: miter %s degrees, long edge %s', (count, miter, edge) => {
  const of = segmentsOf(ring(1, 0.5, count))
  expect(of.miter).toBe(miter)
  expect(of.outerEdge).toBeWithin(5e-5, edge)
  expect(of.innerEdge).toBeWithin(1e-12, Math.sin(Math.PI / count))
})

test('many pieces: strip and edges of the round ring itself', () => {
  const of = segmentsOf(ring(100, 60, 2000))
  expect(of.stripWidth).toBeWithin(1e-3, 40)
  expect(2000 * of.outerEdge).toBeWithin(1e-2, 2 * Math.PI * 100)
})

test.each([
  [10, 10, 6],
  [10, 11, 6],
  [0, 0, 6],
  [10, 5, 2],
  [10, 5, 6.5],
  [Number.NaN, 5, 6],
])('%s, %s, %s pieces: a bug of ours', (outer, inner, count) => {
  expect(() => segmentsOf(ring(outer, inner, count))).toThrow(RangeError)
})
