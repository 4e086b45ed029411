import fc from 'fast-check'
import { expect, test } from 'vitest'
import { gapOnPath } from '#shared/geometry/balls-on-a-path.ts'
import { gapsOnPaths, roomForPaths } from '#shared/geometry/balls-on-paths-in-blocks.ts'
import { closedPitchRadius } from '#shared/geometry/ring-of-balls.ts'
import { mm } from '#shared/units/length.ts'
import { uniforms } from '#tests/support/chance.ts'
import { ballCount, between } from '#tests/support/inputs.ts'

const RINGS = 50

/** Rings that differ in everything: balls, seats and lobes; and what `gapOnPath` says of each. */
function gapsOf(count: number, diameter: number, part: number, lobe: number, seed: number) {
  const uniform = uniforms(seed)
  const path = closedPitchRadius(mm(diameter), count) * part
  const all = (value: () => number) => Float64Array.from({ length: count * RINGS }, value)
  const each = (value: () => number) => Float64Array.from({ length: RINGS }, value)
  const directions = each(() => 2 * Math.PI * uniform())
  const block = {
    ballCount: count,
    rings: RINGS,
    centres: all(() => path + 0.01 * diameter * (uniform() - 0.5)),
    diameters: all(() => diameter * (1 + 0.02 * (uniform() - 0.5))),
    lobes: {
      amplitude: each(() => 2 * lobe * path * (uniform() - 0.5)),
      cosine: directions.map(Math.cos),
      sine: directions.map(Math.sin),
    },
  }
  const gaps = new Float64Array(RINGS)
  gapsOnPaths(block, roomForPaths(RINGS), gaps)
  const expected = each(() => 0).map((_, ring) =>
    gapOnPath(
      count,
      (ball) => block.centres[ball * RINGS + ring] ?? Number.NaN,
      (ball) => (block.diameters[ball * RINGS + ring] ?? Number.NaN) / 2,
      {
        amplitude: block.lobes.amplitude[ring] ?? 0,
        cosine: block.lobes.cosine[ring] ?? 0,
        sine: block.lobes.sine[ring] ?? 0,
      },
    ),
  )
  return { gaps, expected, path }
}

test('the same gaps as one ring at a time, lobed or round, too tight or wide', () => {
  fc.assert(
    fc.property(
      ballCount,
      between(1, 50),
      between(0.97, 1.05),
      fc.oneof(fc.constant(0), between(0, 0.03)),
      fc.integer({ min: 1, max: 1000 }),
      (count, diameter, part, lobe, seed) => {
        const { gaps, expected, path } = gapsOf(count, diameter, part, lobe, seed)
        gaps.forEach((gap, ring) => {
          expect(gap).toBeWithin(1e-11 * count * path, expected[ring] ?? Number.NaN)
        })
      },
    ),
  )
})

test('lobes of a few hundredths of a millimetre: within a millionth of a micrometre', () => {
  const { gaps, expected } = gapsOf(14, 14, 1.004, 0.002, 7)
  gaps.forEach((gap, ring) => {
    expect(gap).toBeWithin(1e-9, expected[ring] ?? Number.NaN)
  })
})
