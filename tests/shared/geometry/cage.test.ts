import fc from 'fast-check'
import { expect, test } from 'vitest'
import { ballSpacing, boreRadiusForWeb, webAtBore } from '#shared/geometry/cage.ts'
import { closedPitchRadius } from '#shared/geometry/ring-of-balls.ts'
import { mm } from '#shared/units/length.ts'
import { between, magnitude } from '#tests/support/inputs.ts'

const pocketed = fc
  .record({ ballCount: fc.integer({ min: 3, max: 60 }), diameter: magnitude(1, 60), web: between(0, 3) })
  .map(({ ballCount, diameter, web }) => ({
    pockets: { pocketDiameter: mm(diameter), ballCount },
    web: mm(web * diameter),
  }))

test('by coordinates: the web is the least distance between the edges of two neighbouring holes in the ring', () => {
  fc.assert(
    fc.property(pocketed, between(0, 0.5), ({ pockets, web }, thicker) => {
      const { pocketDiameter, ballCount } = pockets
      const bore = boreRadiusForWeb(web, pockets)
      const turn = (2 * Math.PI) / ballCount
      // A hole's edge beside the ray at angle t: Dp/2 aside of it, at the radius r.
      const edge = (t: number, side: 1 | -1, r: number) => {
        const along = Math.sqrt(r * r - (pocketDiameter * pocketDiameter) / 4)
        const aside = (side * pocketDiameter) / 2
        return [along * Math.cos(t) - aside * Math.sin(t), along * Math.sin(t) + aside * Math.cos(t)] as const
      }
      const apartAt = (r: number): number => {
        const [x, y] = edge(0, 1, r)
        const [u, v] = edge(turn, -1, r)
        return Math.hypot(u - x, v - y)
      }
      const within = 1e-9 * (pocketDiameter + web)
      expect(apartAt(bore)).toBeWithin(within, web)
      expect(webAtBore(bore, pockets)).toBeWithin(within, web)
      expect(apartAt(bore * (1 + thicker))).toBeGreaterThanOrEqual(web - within)
    }),
  )
})

test('six pockets without wood between them: their edges meet on a circle as large across as two of them', () => {
  // The edges of neighbours, 60° apart, cross where each lies Dp/2 beside its own ray: r sin 30° = Dp/2.
  expect(boreRadiusForWeb(mm(0), { pocketDiameter: mm(10), ballCount: 6 })).toBeWithin(1e-12, 10)
  expect(webAtBore(mm(10), { pocketDiameter: mm(10), ballCount: 6 })).toBeWithin(1e-12, 0)
})

test('balls spaced evenly touch on the closed ring, and stand apart by a chord less a ball elsewhere', () => {
  expect(ballSpacing(closedPitchRadius(mm(16), 12), mm(16), 12)).toBeWithin(1e-12, 0)
  // Six chords of a circle are its radius long.
  expect(ballSpacing(mm(40), mm(16), 6)).toBeWithin(1e-12, 24)
})

test('out of range', () => {
  expect(() => webAtBore(mm(4), { pocketDiameter: mm(10), ballCount: 6 })).toThrow(RangeError)
  expect(() => webAtBore(mm(4), { pocketDiameter: mm(0), ballCount: 6 })).toThrow(RangeError)
  expect(() => ballSpacing(mm(40), mm(16), 1)).toThrow(RangeError)
  expect(() => boreRadiusForWeb(mm(1), { pocketDiameter: mm(10), ballCount: 1.5 })).toThrow(RangeError)
})
