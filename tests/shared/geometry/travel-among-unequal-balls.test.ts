import { describe, expect, test } from 'vitest'
import { playAmongBalls } from '#shared/geometry/play-among-unequal-balls.ts'
import { travelAmongBalls } from '#shared/geometry/travel-among-unequal-balls.ts'
import { type BallPlaces, placesOnCircle } from '#shared/geometry/unequal-ball-places.ts'
import { closingRadius } from '#shared/geometry/unequal-balls.ts'
import { mm } from '#shared/units/length.ts'
import { normals, uniforms } from '#tests/support/chance.ts'

const at = (row: Float64Array, ball: number): number => row.at(ball) ?? Number.NaN

type Point = readonly [x: number, y: number]

/** Another road: how far the ring goes from its best place in 1800 directions before it meets a ball, by halving. */
function outline(places: BallPlaces, inner: number, [x, y]: Point): readonly Point[] {
  const free = (u: number, v: number): boolean =>
    places.radius.every((radius, ball) => Math.hypot(at(places.x, ball) - u, at(places.y, ball) - v) >= radius + inner)
  return Array.from({ length: 1800 }, (_, step) => {
    const [cosine, sine] = [Math.cos((step * Math.PI) / 900), Math.sin((step * Math.PI) / 900)]
    let [low, high] = [0, 2]
    for (let round = 0; round < 40; round++) {
      const middle = (low + high) / 2
      if (free(x + middle * cosine, y + middle * sine)) low = middle
      else high = middle
    }
    return [x + low * cosine, y + low * sine] as const
  })
}

function reachesOf(points: readonly Point[], directions: number): readonly number[] {
  return Array.from({ length: directions }, (_, step) => {
    const [cosine, sine] = [Math.cos((step * 2 * Math.PI) / directions), Math.sin((step * 2 * Math.PI) / directions)]
    return Math.max(...points.map(([x, y]) => x * cosine + y * sine))
  })
}

describe('equal balls, evenly spaced: a regular polygon', () => {
  test.each([3, 4, 5, 6, 7, 13, 14, 40])('%i balls', (count) => {
    const [diameter, play] = [14, 1e-4]
    const outer = mm(closingRadius(Array.from({ length: count }, () => diameter)))
    const places = placesOnCircle(
      outer,
      Array.from({ length: count }, () => diameter),
      'spread',
    )
    const travel = travelAmongBalls(places, mm(outer - diameter - play / 2))
    // apothem play / 2; width across sides or from side to corner, longest diagonal, circumference over π
    const [apothem, corner] = [play / 2, play / 2 / Math.cos(Math.PI / count)]
    const even = count % 2 === 0
    expect(travel?.least).toBeWithin(1e-8, even ? 2 * apothem : apothem + corner)
    expect(travel?.most).toBeWithin(1e-8, even ? 2 * corner : 2 * corner * Math.cos(Math.PI / (2 * count)))
    expect(travel?.mean).toBeWithin(1e-8, (2 * count * apothem * Math.tan(Math.PI / count)) / Math.PI)
    expect(travel?.runOutUnderLoad).toBeWithin(1e-8, corner - apothem)
  })
})

describe('unequal balls', () => {
  test('by coordinates: the outline of all places of the ring', () => {
    const uniform = uniforms(31)
    const normal = normals(uniform)
    for (let bearing = 0; bearing < 4; bearing++) {
      const count = 5 + 3 * bearing
      const sizes = Array.from({ length: count }, () => 14 + 0.05 * normal())
      const places = placesOnCircle(mm(closingRadius(sizes) + 0.1), sizes, bearing % 2 === 0 ? 'whole' : 'spread')
      const inner = mm(closingRadius(sizes) - 14.3)
      const [play, travel] = [playAmongBalls(places, inner), travelAmongBalls(places, inner)]
      if (play === undefined || travel === undefined) throw new Error('the balls hold the ring')
      const reaches = reachesOf(outline(places, inner, [play.centre.x, play.centre.y]), 3600)
      const widths = reaches.slice(0, 1800).map((reach, step) => reach + (reaches[step + 1800] ?? Number.NaN))
      // Directions a tenth of a degree apart miss the least by the most travel times half of that; corners are missed
      // by some 1e-3.
      expect(travel.least).toBeWithin(2e-3, Math.min(...widths))
      expect(travel.most).toBeWithin(2e-3, Math.max(...widths))
      expect(travel.mean).toBeWithin(2e-3, widths.reduce((sum, width) => sum + width, 0) / widths.length)
      expect(travel.runOutUnderLoad).toBeWithin(2e-3, Math.max(...reaches) - Math.min(...reaches))
      expect(travel.least).toBeGreaterThanOrEqual(play.radialInternalClearance - 1e-12)
      expect(travel.mean).toBeGreaterThan(travel.least)
      expect(travel.most).toBeGreaterThan(travel.mean)
    }
  })

  test('a ring that binds travels nowhere; one that nothing holds has no travel', () => {
    const sizes = [14, 14.3, 13.9, 14, 14.2, 13.8, 14]
    const places = placesOnCircle(closingRadius(sizes), sizes, 'whole')
    const bound = mm(closingRadius(sizes) - 14)
    expect(playAmongBalls(places, bound)?.radialInternalClearance).toBeLessThan(0)
    expect(travelAmongBalls(places, bound)).toMatchObject({ least: 0, mean: 0, most: 0 })
    expect(travelAmongBalls(placesOnCircle(mm(60), [10, 10, 11, 10], 'whole'), mm(49))).toBeUndefined()
  })

  test('with hardly any play the run-out under load is that of the best place', () => {
    const sizes = [14, 14.3, 13.9, 14, 14.2, 13.8, 14]
    const places = placesOnCircle(closingRadius(sizes), sizes, 'whole')
    const start = mm(closingRadius(sizes) - 15)
    const room = playAmongBalls(places, start)?.radialInternalClearance ?? Number.NaN
    const inner = mm(start + room / 2 - 1e-6)
    const runOut = playAmongBalls(places, inner)?.runOut ?? Number.NaN
    expect(travelAmongBalls(places, inner)?.runOutUnderLoad).toBeWithin(1e-5, runOut)
  })
})
