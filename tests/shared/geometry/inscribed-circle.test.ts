import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { solve } from 'yalps'
import { emptyCircle, type HalfPlanes, halfPlanes, inscribeCircle } from '#shared/geometry/inscribed-circle.ts'
import { normals, uniforms } from '#tests/support/chance.ts'
import { between } from '#tests/support/inputs.ts'

function planesOf(angles: readonly number[], reaches: readonly number[]): HalfPlanes {
  const planes = halfPlanes(angles.length)
  planes.normalX.set(angles.map(Math.cos))
  planes.normalY.set(angles.map(Math.sin))
  planes.reach.set(reaches)
  return planes
}

/** Another program: the same maximum by a general simplex method, unknowns split in two parts that are not below 0. */
function byLinearProgram({ normalX, normalY, reach }: HalfPlanes): number {
  const rows = Array.from(reach, (_, row) => row)
  const column = (of: (row: number) => number): Record<string, number> =>
    Object.fromEntries(rows.map((row) => [`plane${row}`, of(row)]))
  const { result, status } = solve(
    {
      direction: 'maximize',
      objective: 'level',
      constraints: Object.fromEntries(rows.map((row) => [`plane${row}`, { max: reach[row] ?? Number.NaN }])),
      variables: {
        up: { level: 1, ...column(() => 1) },
        down: { level: -1, ...column(() => -1) },
        right: column((row) => normalX[row] ?? Number.NaN),
        left: column((row) => -(normalX[row] ?? Number.NaN)),
        forth: column((row) => normalY[row] ?? Number.NaN),
        back: column((row) => -(normalY[row] ?? Number.NaN)),
      },
    },
    { precision: 1e-13 },
  )
  expect(status).toBe('optimal')
  return result
}

describe('the largest circle in a polygon', () => {
  test('2000 random bearings: what a linear program says, to 1e-9', () => {
    const uniform = uniforms(71)
    const normal = normals(uniform)
    for (let bearing = 0; bearing < 2000; bearing++) {
      const count = 3 + Math.floor(bearing % 2 === 0 ? 14 * uniform() : 60 * uniform())
      // spacing as unequal balls have it, or as it comes as long as no half turn is free
      const uneven = uniform() < 0.5 ? 0.02 : 0.9
      const angles = Array.from(
        { length: count },
        (_, ball) => ((ball + (uneven * uniform()) / 2) * 2 * Math.PI) / count,
      )
      const [mean, scatter] = [0.2 * (uniform() - 0.5), 0.1 * uniform()]
      const planes = planesOf(
        angles,
        angles.map(() => mean + scatter * normal()),
      )
      const circle = emptyCircle()
      const found = inscribeCircle(planes, circle, 1e-15)
      if (!found) {
        // three or four balls so uneven leave half a turn
        expect(count).toBeLessThan(5)
        continue
      }
      expect(circle.radius).toBeWithin(1e-9, byLinearProgram(planes))
    }
  })

  test('a rectangle 4 by 6, a triangle, and planes without a common point', () => {
    const circle = emptyCircle()
    const square = [0, 1, 2, 3].map((side) => (side * Math.PI) / 2)
    expect(inscribeCircle(planesOf(square, [3, 1, 1, 5]), circle, 0)).toBe(true)
    expect(circle.radius).toBeWithin(1e-15, 2)
    // three planes at the same distance all round
    expect(inscribeCircle(planesOf([0, (2 * Math.PI) / 3, (4 * Math.PI) / 3], [1, 1, 1]), circle, 0)).toBe(true)
    expect(circle).toMatchObject({ x: expect.closeTo(0, 14), y: expect.closeTo(0, 14), radius: expect.closeTo(1, 14) })
    expect(inscribeCircle(planesOf(square, [-3, 1, 2, 1]), circle, 0)).toBe(true)
    expect(circle.radius).toBeWithin(1e-15, -0.5)
  })

  test('no circle is the largest where half a turn is free', () => {
    fc.assert(
      fc.property(between(0, 6), fc.array(between(0.01, 3.1), { minLength: 3, maxLength: 9 }), (from, angles) => {
        const planes = planesOf(
          [...new Set(angles)].map((angle) => from + angle),
          [...new Set(angles)].map(() => 1),
        )
        const circle = emptyCircle()
        expect(inscribeCircle(planes, circle, 1e-15)).toBe(false)
        expect(circle).toEqual(emptyCircle())
      }),
    )
  })

  test('a warm start comes to the same circle', () => {
    const uniform = uniforms(5)
    for (let round = 0; round < 500; round++) {
      const count = 4 + Math.floor(12 * uniform())
      const angles = Array.from({ length: count }, (_, ball) => (ball * 2 * Math.PI) / count)
      const [warm, cold] = [emptyCircle(), emptyCircle()]
      const draw = (): HalfPlanes =>
        planesOf(
          angles,
          angles.map(() => uniform()),
        )
      inscribeCircle(draw(), warm, 1e-15)
      const planes = draw()
      expect(inscribeCircle(planes, warm, 1e-15, true) && inscribeCircle(planes, cold, 1e-15)).toBe(true)
      expect(warm.radius).toBeWithin(1e-13, cold.radius)
    }
  })
})
