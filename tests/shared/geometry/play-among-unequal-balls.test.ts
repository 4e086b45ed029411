import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { playInBlocks } from '#shared/geometry/play-among-unequal-balls-in-blocks.ts'
import { playInEllipse } from '#shared/geometry/play-in-ellipse.ts'
import type { BallPlaces, GapPlace } from '#shared/geometry/unequal-ball-places.ts'
import { closingRadius } from '#shared/geometry/unequal-balls.ts'
import { drawNormals } from '#shared/statistics/normal-cells.ts'
import { randomStream } from '#shared/statistics/random.ts'
import { mm } from '#shared/units/length.ts'
import { normals, uniforms } from '#tests/support/chance.ts'
import { distanceToEllipse } from '#tests/support/ellipse-by-points.ts'
import { ballCount, between, magnitude } from '#tests/support/inputs.ts'
import { placesOnCircle, placesOnEllipse, playAmongBalls } from '#tests/support/play-among-balls.ts'

const gapPlace = fc.constantFrom<GapPlace>('whole', 'spread')

const balls = ballCount.chain((count) => fc.array(between(0.97, 1.03), { minLength: count, maxLength: count }))

const at = (row: Float64Array, ball: number): number => row.at(ball) ?? Number.NaN

/** The room at a place that a list of balls leaves, as Pythagoras has it. */
const roomAt = (places: BallPlaces, inner: number, x: number, y: number): number =>
  Math.min(
    ...Array.from(
      places.radius,
      (radius, ball) => Math.hypot(at(places.x, ball) - x, at(places.y, ball) - y) - radius - inner,
    ),
  )

/**
 * Another road: the circle that touches three balls (Apollonius) has its centre where p² − s² and the three distances
 * agree, which is linear in the centre and in p² − s², s being its radius. Of all triples the largest circle near the
 * middle that no fourth ball cuts is the largest among the balls; no search, and no linear program.
 */
function byAllTriples(places: BallPlaces, near: number): number {
  const count = places.radius.length
  let best = Number.NEGATIVE_INFINITY
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) {
      for (let k = j + 1; k < count; k++) {
        for (const [x, y, s] of circlesTouching(places, i, j, k)) {
          if (s > best && Math.hypot(x, y) < near && roomAt(places, s, x, y) > -1e-11) best = s
        }
      }
    }
  }
  return best
}

function circlesTouching(
  { x, y, radius }: BallPlaces,
  i: number,
  j: number,
  k: number,
): readonly (readonly [number, number, number])[] {
  const power = (ball: number): number => at(x, ball) ** 2 + at(y, ball) ** 2 - at(radius, ball) ** 2
  // (cⱼ − cᵢ) · p + (rⱼ − rᵢ) s = (power of j − power of i) / 2, and the same for k
  const [a, b, e, g] = [
    at(x, j) - at(x, i),
    at(y, j) - at(y, i),
    at(radius, j) - at(radius, i),
    (power(j) - power(i)) / 2,
  ]
  const [c, d, f, h] = [
    at(x, k) - at(x, i),
    at(y, k) - at(y, i),
    at(radius, k) - at(radius, i),
    (power(k) - power(i)) / 2,
  ]
  const whole = a * d - b * c
  const [x0, x1] = [(g * d - b * h) / whole, -(e * d - b * f) / whole]
  const [y0, y1] = [(a * h - g * c) / whole, -(a * f - e * c) / whole]
  const [u, v] = [x0 - at(x, i), y0 - at(y, i)]
  const [A, B, C] = [x1 * x1 + y1 * y1 - 1, u * x1 + v * y1 - at(radius, i), u * u + v * v - at(radius, i) ** 2]
  const root = Math.sqrt(B * B - A * C)
  // of the quadratic's two roots in the form that loses no digits
  const q = B > 0 ? -B - root : -B + root
  return [q / A, C / q].filter((s) => s > 0).map((s) => [x0 + x1 * s, y0 + y1 * s, s] as const)
}

describe('equal balls', () => {
  test('have the clearance of the design, whatever their count and gap', () => {
    fc.assert(
      fc.property(
        ballCount,
        magnitude(0.5, 100),
        between(0, 0.03),
        between(-0.02, 0.05),
        gapPlace,
        (count, diameter, wider, play, gap) => {
          const sizes = Array.from({ length: count }, () => diameter)
          const outer = mm(closingRadius(sizes) * (1 + (count < 5 ? 0 : wider / count)))
          const inner = mm(outer - diameter - (play * diameter) / 2)
          if (!(inner > 0)) return
          const found = playAmongBalls(placesOnCircle(outer, sizes, gap), inner)
          expect(found?.radialInternalClearance).toBeWithin(1e-12 * outer, 2 * outer - 2 * inner - 2 * diameter)
          expect(found?.runOut).toBeWithin(1e-10 * outer, 0)
        },
      ),
    )
  })
})

describe('unequal balls', () => {
  test.each([3, 4, 5, 6, 8, 9, 14, 15])('%i of them: the largest of all circles that touch three', (count) => {
    const uniform = uniforms(count)
    const normal = normals(uniform)
    for (let bearing = 0; bearing < (count > 9 ? 60 : 300); bearing++) {
      const scatter = bearing % 3 === 0 ? 0.4 : 0.1
      const sizes = Array.from({ length: count }, () => 14 + scatter * normal())
      const outer = mm(closingRadius(sizes) + 0.3 * uniform())
      const places = placesOnCircle(outer, sizes, bearing % 2 === 0 ? 'whole' : 'spread')
      const inner = mm(Math.max(1, outer - 14 - 0.14))
      const found = playAmongBalls(places, inner)
      if (found === undefined) throw new Error('the balls hold the ring')
      const { radialInternalClearance, centre, runOut, supports } = found
      expect(radialInternalClearance).toBeWithin(1e-9, 2 * (byAllTriples(places, 5) - inner))
      expect(roomAt(places, inner, centre.x, centre.y)).toBeWithin(1e-12, radialInternalClearance / 2)
      for (const ball of supports) {
        const away = Math.hypot(at(places.x, ball) - centre.x, at(places.y, ball) - centre.y)
        expect(away - at(places.radius, ball) - inner).toBeWithin(1e-12, radialInternalClearance / 2)
      }
      expect(runOut).toBeWithin(1e-14, 2 * Math.hypot(centre.x, centre.y))
    }
  })

  test('no place near the middle has more room, looked at on a grid', () => {
    fc.assert(
      fc.property(balls, gapPlace, (sizes, gap) => {
        const outer = closingRadius(sizes)
        const places = placesOnCircle(outer, sizes, gap)
        const inner = mm(Math.max(outer - 1.01, 0.05))
        const found = playAmongBalls(places, inner)
        const steps = [-4, -3, -2, -1, 0, 1, 2, 3, 4].map((step) => step * 0.01)
        const grid = steps.flatMap((x) => steps.map((y) => roomAt(places, inner, x, y)))
        expect(Math.max(...grid)).toBeLessThanOrEqual(
          (found?.radialInternalClearance ?? Number.NaN) / 2 + 1e-13 * outer,
        )
      }),
      { numRuns: 150 },
    )
  })

  test('two large balls opposite one another: the better side of them is found', () => {
    // Off their line the ring has more room, towards the smaller of the two balls across; by symmetry x is as large as
    // that room allows.
    const sizes = [14.4, 14, 14, 13.9, 14, 14, 14.4, 14, 14, 13.7, 14, 14]
    for (const turn of [sizes, [...sizes].reverse(), [...sizes.slice(5), ...sizes.slice(0, 5)]]) {
      const places = placesOnCircle(mm(closingRadius(turn) + 0.01), turn, 'spread')
      const found = playAmongBalls(places, mm(20))
      expect(found?.radialInternalClearance).toBeWithin(1e-10, 2 * (byAllTriples(places, 3) - 20))
    }
  })

  test('a size more is a size more: units do not matter, and all larger together by the same', () => {
    fc.assert(
      fc.property(balls, magnitude(0.01, 100), (sizes, scale) => {
        const outer = closingRadius(sizes)
        const inner = Math.max(outer - 1.01, 0.05)
        const one = playAmongBalls(placesOnCircle(outer, sizes, 'whole'), mm(inner))
        const scaled = sizes.map((size) => size * scale)
        const other = playAmongBalls(placesOnCircle(mm(outer * scale), scaled, 'whole'), mm(inner * scale))
        const clearance = one?.radialInternalClearance ?? Number.NaN
        expect(other?.radialInternalClearance).toBeWithin(1e-11 * outer * scale, clearance * scale)
      }),
    )
  })

  test('balls that leave half a turn free hold no ring', () => {
    expect(playAmongBalls(placesOnCircle(mm(60), [10, 10, 11, 10], 'whole'), mm(49))).toBeUndefined()
    expect(() => playAmongBalls(placesOnCircle(mm(60), [10, 10, 10], 'whole'), mm(-1))).toThrow(RangeError)
  })
})

describe('rings that are ellipses', () => {
  test('a circle written as an ellipse is the circle, however it is turned', () => {
    fc.assert(
      fc.property(balls, between(0, 6), (sizes, turn) => {
        const outer = closingRadius(sizes)
        const places = placesOnCircle(outer, sizes, 'whole')
        const inner = mm(Math.max(outer - 1.01, 0.05))
        const circle = playAmongBalls(places, inner)
        const ellipse = playAmongBalls(places, { bottom: { along: inner, across: inner }, turn })
        expect(ellipse?.radialInternalClearance).toBeWithin(
          1e-12 * outer,
          circle?.radialInternalClearance ?? Number.NaN,
        )
      }),
    )
  })

  test('by coordinates: the best place by a search that knows only the distance from a point to an ellipse', () => {
    const uniform = uniforms(9)
    const normal = normals(uniform)
    for (let bearing = 0; bearing < 12; bearing++) {
      const sizes = Array.from({ length: 9 }, () => 14 + 0.1 * normal())
      const wide = closingRadius(sizes) + 0.4
      const outer = { along: mm(wide + 0.2 * uniform()), across: mm(wide + 0.2 * uniform()) }
      const inner = { along: mm(wide - 14.1 + 0.2 * uniform()), across: mm(wide - 14.1 + 0.2 * uniform()) }
      const places = placesOnEllipse(outer, sizes, 6 * uniform())
      if (places === undefined) throw new Error('there is room')
      const turn = 3 * uniform()
      const room = (x: number, y: number): number =>
        Math.min(
          ...Array.from(places.radius, (radius, ball) => {
            const [dx, dy] = [at(places.x, ball) - x, at(places.y, ball) - y]
            const point = [
              dx * Math.cos(turn) + dy * Math.sin(turn),
              dy * Math.cos(turn) - dx * Math.sin(turn),
            ] as const
            return distanceToEllipse(point, inner.along, inner.across) - radius
          }),
        )
      const found = playAmongBalls(places, { bottom: inner, turn })
      if (found === undefined) throw new Error('the balls hold the ring')
      const level = found.radialInternalClearance / 2
      expect(room(found.centre.x, found.centre.y)).toBeWithin(1e-9, level)
      for (let step = 0; step < 24; step++) {
        for (const away of [1e-4, 0.01, 0.1]) {
          const [x, y] = [away * Math.cos((step * Math.PI) / 12), away * Math.sin((step * Math.PI) / 12)]
          expect(room(found.centre.x + x, found.centre.y + y)).toBeLessThan(level + 1e-9)
        }
      }
    }
  })

  test('many equal balls come to the play by supporting lines', () => {
    const sizes = Array.from({ length: 120 }, () => 4)
    const outer = { along: mm(78.9), across: mm(78.7) }
    const inner = { along: mm(74.6), across: mm(74.5) }
    const places = placesOnEllipse(outer, sizes, 0)
    if (places === undefined) throw new Error('there is room')
    const { best, worst } = playInEllipse(outer, inner, mm(4))
    // Between two balls the curves part by some (π / Z)² of what they differ by.
    expect(playAmongBalls(places, { bottom: inner, turn: 0 })?.radialInternalClearance).toBeWithin(1e-3, best)
    expect(playAmongBalls(places, { bottom: inner, turn: Math.PI / 2 })?.radialInternalClearance).toBeWithin(
      1e-3,
      worst,
    )
  })
})

describe('blocks of rings', () => {
  const [rings, count] = [40, 11]
  const columns = (mean: number, scatter: number, length: number, stream: number): Float64Array => {
    const drawn = new Float64Array(length)
    drawNormals({ mean, standardDeviation: scatter }, randomStream(8, stream), drawn, length)
    return drawn
  }
  const [outers, inners] = [columns(33.2, 0.05, rings, 1), columns(19.05, 0.05, rings, 2)]
  const diameters = columns(14, 0.1, rings * count, 3)
  const block = {
    rings,
    diameters,
    centres: diameters.map((diameter, place) => at(outers, place % rings) - diameter / 2),
    standOffs: diameters.map((diameter, place) => at(inners, place % rings) + diameter / 2),
  }
  const own = (ring: number): readonly number[] =>
    Array.from({ length: count }, (_, ball) => at(diameters, ball * rings + ring))

  test.each(['whole', 'spread'] as const)('each is what it is alone, its gap %s', (gap) => {
    const [clearances, runOuts] = [new Float64Array(rings), new Float64Array(rings)]
    playInBlocks(count, gap)(block, clearances, runOuts)
    for (let ring = 0; ring < rings; ring++) {
      const places = placesOnCircle(mm(at(outers, ring)), own(ring), gap)
      const alone = playAmongBalls(places, mm(at(inners, ring)))
      expect(clearances[ring]).toBeWithin(1e-13, alone?.radialInternalClearance ?? Number.NaN)
      expect(runOuts[ring]).toBeWithin(1e-9, alone?.runOut ?? Number.NaN)
    }
  })

  test('on edges each ball stands at its own distance: a ring laid by the law of cosines', () => {
    const [centres, standOffs] = [columns(26.2, 0.1, rings * count, 7), columns(26.05, 0.1, rings * count, 8)]
    const clearances = new Float64Array(rings)
    playInBlocks(count, 'whole')({ ...block, centres, standOffs }, clearances)
    for (let ring = 0; ring < rings; ring++) {
      const places = { x: new Float64Array(count), y: new Float64Array(count), radius: new Float64Array(count) }
      let angle = 0
      for (let ball = 0; ball < count; ball++) {
        const away = at(centres, ball * rings + ring)
        if (ball > 0) {
          const before = at(centres, (ball - 1) * rings + ring)
          const touching = ((own(ring)[ball] ?? 0) + (own(ring)[ball - 1] ?? 0)) / 2
          angle += Math.acos((before * before + away * away - touching * touching) / (2 * before * away))
        }
        places.x[ball] = away * Math.cos(angle)
        places.y[ball] = away * Math.sin(angle)
        places.radius[ball] = at(standOffs, ball * rings + ring) - 10
      }
      const alone = playAmongBalls(places, mm(10))
      expect(clearances[ring]).toBeWithin(1e-11, alone?.radialInternalClearance ?? Number.NaN)
    }
  })

  test('two lobes: balls stand farther out or nearer by them', () => {
    const [cosine, sine] = [columns(0, 0.1, rings, 5), columns(0, 0.1, rings, 6)]
    const lobes = { amplitude: new Float64Array(rings).fill(1), cosine, sine }
    const clearances = new Float64Array(rings)
    playInBlocks(count, 'whole')({ ...block, lobes }, clearances)
    for (let ring = 0; ring < rings; ring++) {
      const round = placesOnCircle(mm(at(outers, ring)), own(ring), 'whole')
      const [x, y] = [new Float64Array(count), new Float64Array(count)]
      for (let ball = 0; ball < count; ball++) {
        const angle = Math.atan2(at(round.y, ball), at(round.x, ball))
        const away =
          Math.hypot(at(round.x, ball), at(round.y, ball)) +
          at(cosine, ring) * Math.cos(2 * angle) +
          at(sine, ring) * Math.sin(2 * angle)
        x[ball] = away * Math.cos(angle)
        y[ball] = away * Math.sin(angle)
      }
      const alone = playAmongBalls({ x, y, radius: round.radius }, mm(at(inners, ring)))
      expect(clearances[ring]).toBeWithin(1e-12, alone?.radialInternalClearance ?? Number.NaN)
    }
  })

  test('a ring that nothing holds has endless play', () => {
    const clearances = new Float64Array(1)
    const four = (value: number): Float64Array => new Float64Array(4).fill(value)
    playInBlocks(4, 'whole')({ rings: 1, diameters: four(10), centres: four(55), standOffs: four(54) }, clearances)
    expect(clearances[0]).toBe(Number.POSITIVE_INFINITY)
  })
})
