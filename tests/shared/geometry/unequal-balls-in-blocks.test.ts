import fc from 'fast-check'
import { expect, test } from 'vitest'
import { ballGap, closedPitchRadius } from '#shared/geometry/ring-of-balls.ts'
import { closingRadius, unequalBallGap } from '#shared/geometry/unequal-balls.ts'
import { unequalBallGaps } from '#shared/geometry/unequal-balls-in-blocks.ts'
import { mm } from '#shared/units/length.ts'
import { uniforms } from '#tests/support/chance.ts'
import { ballCount, between } from '#tests/support/inputs.ts'

function gapsOf(
  bottomRadii: readonly number[],
  balls: readonly (readonly number[])[],
  larger: readonly number[] = balls.map(() => 0),
): readonly number[] {
  const [ballCount = 0] = balls.map(({ length }) => length)
  const rings = balls.length
  const diameters = new Float64Array(rings * ballCount)
  for (const [ring, own] of balls.entries()) {
    for (const [ball, diameter] of own.entries()) diameters[ball * rings + ring] = diameter
  }
  const gaps = new Float64Array(rings)
  const block = { bottomRadii: Float64Array.from(bottomRadii), larger: Float64Array.from(larger) }
  unequalBallGaps({ ballCount, rings, diameters, ...block }, gaps)
  return Array.from(gaps)
}

/** The plain way: the law of cosines and an arc cosine for each pair, the angles added up. */
function byArcCosines(bottomRadius: number, balls: readonly number[]): number {
  const centres = balls.map((diameter) => bottomRadius - diameter / 2)
  let total = 0
  for (let ball = 1; ball < balls.length; ball++) {
    const [a, b] = [centres[ball - 1] ?? 0, centres[ball] ?? 0]
    const touching = ((balls[ball - 1] ?? 0) + (balls[ball] ?? 0)) / 2
    total += Math.acos((a * a + b * b - touching * touching) / (2 * a * b))
  }
  const [first, last] = [centres[0] ?? 0, centres.at(-1) ?? 0]
  const span = Math.sqrt(first * first + last * last - 2 * first * last * Math.cos(total))
  return span - ((balls[0] ?? 0) + (balls.at(-1) ?? 0)) / 2
}

test.each([
  [10, 16, 3e-14],
  [24, 16, 5e-13],
  [200, 10, 1e-9],
])('%d balls of %d mm that scatter by 1 %: within %d mm of the arc cosines', (count, diameter, tolerance) => {
  const uniform = uniforms(count)
  const bottom = closedPitchRadius(mm(diameter), count) + diameter / 2 + 0.1
  const rings = Array.from({ length: 250 }, () =>
    Array.from({ length: count }, () => diameter * (1 + 0.02 * (uniform() - 0.5))),
  )
  const bottoms = rings.map(() => bottom + 0.1 * uniform())
  gapsOf(bottoms, rings).forEach((gap, ring) => {
    expect(gap).toBeWithin(20 * tolerance, byArcCosines(bottoms[ring] ?? 0, rings[ring] ?? []))
  })
})

test('the same gaps as one ring at a time, from rings that do not close to rings with room for another ball', () => {
  fc.assert(
    fc.property(
      ballCount.chain((count) => fc.array(between(1, 1.3), { minLength: count, maxLength: count })),
      between(-0.5, 0.9),
      (balls, gap) => {
        const bottom = closingRadius(balls, mm(gap))
        const [found = Number.NaN] = gapsOf([bottom], [balls])
        expect(found).toBeWithin((1e-15 * balls.length * bottom * bottom) / (gap + 1), unequalBallGap(bottom, balls))
      },
    ),
  )
})

test('balls that are all larger by some length are larger balls', () => {
  const uniform = uniforms(4)
  const each = (length: number, value: () => number) => Array.from({ length }, value)
  const rings = each(7, () => 0).map(() => each(9, () => 16 + 0.2 * uniform()))
  const larger = each(7, () => 0.1 * uniform())
  const bottoms = each(7, () => 32 + 0.1 * uniform())
  const largerRings = rings.map((ring, place) => ring.map((diameter) => diameter + (larger[place] ?? 0)))
  expect(gapsOf(bottoms, rings, larger)).toEqual(gapsOf(bottoms, largerRings))
})

test('however many rings, each is what it is alone', () => {
  const uniform = uniforms(9)
  for (let count = 4; count <= 13; count++) {
    const rings = Array.from({ length: count }, () => Array.from({ length: 5 }, () => 16 + uniform()))
    const bottoms = rings.map(() => 24 + uniform())
    expect(gapsOf(bottoms, rings)).toEqual(rings.map((ring, place) => gapsOf([bottoms[place] ?? 0], [ring])[0]))
  }
})

test('equal balls are the closed ring', () => {
  for (let count = 3; count <= 200; count++) {
    const closed = closedPitchRadius(mm(16), count)
    const [found = Number.NaN] = gapsOf([closed + 8.1], [Array.from({ length: count }, () => 16)])
    expect(found).toBeWithin(1e-15 * closed * closed * count, ballGap(mm(closed + 0.1), mm(16), count))
  }
})

test('a row that reaches round more than once goes on falling, and is no ring with a gap', () => {
  const balls = Array.from({ length: 20 }, () => 16)
  const bottoms = [0.6, 0.7, 0.8, 0.9, 0.95, 1].map((part) => closedPitchRadius(mm(16), 20) * part + 8)
  // 0.8 of the closed ring is reached round 5/4 times: below, no block may go.
  const allowed = bottoms.slice(3)
  const gaps = gapsOf(
    allowed,
    allowed.map(() => balls),
  )
  gaps.forEach((gap, ring) => {
    expect(gap).toBeWithin(1e-9, unequalBallGap(mm(allowed[ring] ?? 0), balls))
  })
  expect(Array.from(gaps)).toEqual(Array.from(gaps).toSorted((one, other) => one - other))
  expect(gaps[0]).toBeLessThan(-16)
})
