import fc from 'fast-check'
import { expect, test } from 'vitest'
import { ballGapOnCircle, type HeightOf } from '#shared/geometry/balls-on-a-circle.ts'
import { gapsOnCircles } from '#shared/geometry/balls-on-circles-in-blocks.ts'
import { pitchRadiusForGap } from '#shared/geometry/ring-of-balls.ts'
import { mm } from '#shared/units/length.ts'
import { ballCount, between, magnitude } from '#tests/support/inputs.ts'

const RINGS = 4

test('a block of rings gives what each ring gives by itself, on the bottom and on edges, closed or not', () => {
  fc.assert(
    fc.property(
      ballCount,
      magnitude(3, 60),
      between(-0.9, 0.8),
      between(0, 0.4),
      fc.infiniteStream(between(0.98, 1.02)),
      (count, diameter, gap, edges, parts) => {
        const radius = pitchRadiusForGap(mm(gap * diameter), mm(diameter), count)
        // Where hardly two balls fit across, unequal ones may not.
        fc.pre(radius > 0.53 * diameter)
        const diameters = Float64Array.from([...parts.take(count * RINGS)].map((part) => part * diameter))
        const radii = Float64Array.from([...parts.take(RINGS)].map((part) => radius * (1 + (part - 1) / 10)))
        const heightOf = (ring: number): HeightOf => {
          const halfWidth = (edges * diameter * ring) / RINGS
          return (own) => Math.sqrt((own * own) / 4 - halfWidth * halfWidth)
        }
        const gaps = new Float64Array(RINGS)
        gapsOnCircles({ ballCount: count, rings: RINGS, radii, diameters, heightOf }, gaps)
        gaps.forEach((found, ring) => {
          const own = Array.from({ length: count }, (_, ball) => diameters[ball * RINGS + ring] ?? 0)
          const expected = ballGapOnCircle(mm(radii[ring] ?? 0), own, heightOf(ring))
          // The span is a root: where it is nearly nothing, so is what is sure of it.
          expect(found).toBeWithin(1e-6 * radius, expected)
        })
      },
    ),
  )
})
