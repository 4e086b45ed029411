import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { axialPlay, sidewaysTravel, tilt } from '#shared/geometry/axial-play.ts'
import type { Groove } from '#shared/geometry/groove.ts'
import { seatIn } from '#shared/geometry/seat.ts'
import { mm } from '#shared/units/length.ts'
import { between, magnitude } from '#tests/support/inputs.ts'

const groove = (conformity: number, engagement: number, ball = 1): Groove => ({
  radius: mm(conformity * ball),
  depth: mm(Math.min(conformity, engagement) * ball),
})
const round = fc.tuple(between(0.5, 1.2), between(0.02, 0.5))
const tight = fc.tuple(between(0.3, 0.5), between(0.02, 0.5))
const any = fc.oneof(round, tight).map(([conformity, engagement]) => groove(conformity, engagement))
const most = (outer: Groove, inner: Groove) => 2 * Math.min(seatIn(outer, mm(1)).depth, seatIn(inner, mm(1)).depth)

/**
 * How far a ball's centre may stand aside when it is `drop` away from its seat: outward steps, ever smaller, and at
 * each the distances to points set along the arc and at the edges. No formula of seats or contact angles.
 */
function farthestAside({ radius, depth }: Groove, drop: number): number {
  const POINTS = 4000
  const halfWidth = Math.sqrt(radius ** 2 - (radius - depth) ** 2)
  const lean = Math.asin(Math.min(1, halfWidth / radius))
  // y = 0 at the land, wood above; the arc's centre at depth − radius
  const points = Array.from({ length: POINTS + 1 }, (_, i) => {
    const angle = -lean + (2 * lean * i) / POINTS
    return [radius * Math.sin(angle), depth - radius + radius * Math.cos(angle)] as const
  })
  const isFree = (x: number, y: number) => points.every(([px, py]) => Math.hypot(x - px, y - py) >= 0.5 - 1e-9)
  const seat = radius >= 0.5 ? depth - 0.5 : -Math.sqrt(0.25 - halfWidth ** 2)
  let aside = 0
  for (let step = 0.25; step > 1e-7; step /= 2) if (isFree(aside + step, seat - drop)) aside += step
  return aside
}

/** The play by trying how the balls may share their freedom between both grooves. */
function playBySearch(outer: Groove, inner: Groove, clearance: number): number {
  const SHARES = 48
  const drop = clearance / 2
  const shares = Array.from({ length: SHARES + 1 }, (_, i) => drop * Math.sin((Math.PI * i) / (2 * SHARES)) ** 2)
  return 2 * Math.max(...shares.map((share) => farthestAside(outer, share) + farthestAside(inner, drop - share)))
}

describe('axial play', () => {
  const SEARCHED: readonly (readonly [outer: Groove, inner: Groove, clearance: number])[] = [
    [groove(0.53, 0.2), groove(0.53, 0.4), 0.02],
    [groove(0.53, 0.2), groove(0.53, 0.4), 0.1],
    [groove(0.53, 0.2), groove(0.53, 0.4), 0.3],
    [groove(0.53, 0.2), groove(0.6, 0.1), 0.15],
    [groove(0.505, 0.3), groove(0.55, 0.3), 0.2],
    [groove(0.5, 0.2), groove(0.5, 0.4), 0.05],
    [groove(0.45, 0.2), groove(0.53, 0.4), 0.05],
    [groove(0.53, 0.2), groove(0.45, 0.4), 0.2],
    [groove(0.45, 0.2), groove(0.4, 0.3), 0.1],
    [groove(1.1, 0.1), groove(0.51, 0.3), 0.1],
    [groove(0.7, 0.5), groove(0.7, 0.5), 0.9],
  ]
  test.each(SEARCHED)('a search for all places where the balls can be: %o, %o, play %s', (outer, inner, clearance) => {
    const play = axialPlay({ outer, inner }, mm(1), mm(clearance))
    const found = playBySearch(outer, inner, clearance)
    expect(found).toBeLessThan(play + 1e-4)
    expect(found).toBeGreaterThan(play * 0.997 - 1e-4)
  })

  test('no share between the grooves gives more, and one gives as much', () => {
    const SHARES = 400
    // Close together near both ends, where the best share may be a thousandth of all.
    const parts = Array.from({ length: SHARES + 1 }, (_, i) => Math.sin((Math.PI * i) / (2 * SHARES)) ** 4)
    fc.assert(
      fc.property(any, any, between(0, 1), (outer, inner, part) => {
        const clearance = part * most(outer, inner)
        const drop = clearance / 2
        const aside = (share: number) =>
          sidewaysTravel(outer, mm(1), mm(share)) + sidewaysTravel(inner, mm(1), mm(drop - share))
        const shares = parts.flatMap((share) => [share * drop, drop - share * drop])
        const best = 2 * Math.max(...shares.map(aside))
        const play = axialPlay({ outer, inner }, mm(1), mm(clearance))
        expect(play).toBeGreaterThanOrEqual(best - 1e-12)
        expect(play).toBeLessThanOrEqual(best * 1.001 + 1e-9)
      }),
    )
  })

  // Harris, Rolling Bearing Analysis, free contact angle and end play: from memory
  test('is Harris’s end play while both contacts are on the arcs: 2 A sin α with cos α = 1 − Gr / 2A', () => {
    fc.assert(
      fc.property(round, round, between(0, 1), ([f, h], [g, k], part) => {
        const [outer, inner] = [groove(f, h), groove(g, k)]
        const arcDrop = ({ radius, depth }: Groove) => ((radius - 0.5) * depth) / radius
        const clearance = 2 * part * Math.min(arcDrop(outer), arcDrop(inner))
        const centres = outer.radius + inner.radius - 1
        const angle = centres > 0 ? Math.acos(1 - clearance / (2 * centres)) : 0
        expect(axialPlay({ outer, inner }, mm(1), mm(clearance))).toBeWithin(1e-7, 2 * centres * Math.sin(angle))
      }),
    )
  })

  test('none without clearance', () => {
    fc.assert(
      fc.property(any, any, (outer, inner) => {
        expect(axialPlay({ outer, inner }, mm(1), mm(0))).toBeWithin(1e-7, 0)
      }),
    )
  })

  test('grows with the clearance, and is the same with the grooves exchanged', () => {
    fc.assert(
      fc.property(any, any, between(0, 1), between(0, 1), (outer, inner, one, other) => {
        const at = (part: number) => axialPlay({ outer, inner }, mm(1), mm(part * most(outer, inner)))
        expect(at(Math.max(one, other))).toBeGreaterThanOrEqual(at(Math.min(one, other)) - 1e-8)
        const exchanged = axialPlay({ outer: inner, inner: outer }, mm(1), mm(one * most(outer, inner)))
        expect(exchanged).toBeWithin(1e-8, at(one))
      }),
    )
  })

  test('no step where a ball leaves the arc for the edge', () => {
    const [outer, inner] = [groove(0.53, 0.2), groove(0.53, 0.4)]
    const leaves = (2 * 0.03 * 0.2) / 0.53
    const at = (clearance: number) => axialPlay({ outer, inner }, mm(1), mm(clearance))
    expect(at(leaves + 1e-9)).toBeWithin(1e-6, at(leaves - 1e-9))
  })

  test('never more than both grooves are wide, which a ball that climbs out has', () => {
    fc.assert(
      fc.property(any, any, between(0, 1), (outer, inner, part) => {
        const halfWidth = ({ radius, depth }: Groove) => Math.sqrt(depth * (2 * radius - depth))
        const play = axialPlay({ outer, inner }, mm(1), mm(part * most(outer, inner)))
        expect(play).toBeLessThanOrEqual(2 * (halfWidth(outer) + halfWidth(inner)) + 1e-9)
      }),
    )
  })

  test('scales', () => {
    fc.assert(
      fc.property(any, any, between(0, 1), magnitude(0.001, 10_000), (outer, inner, part, ball) => {
        const clearance = part * 0.999 * most(outer, inner)
        const scaled = ({ radius, depth }: Groove): Groove => ({
          radius: mm(radius * ball),
          depth: mm(Math.min(depth * ball, radius * ball)),
        })
        const large = axialPlay({ outer: scaled(outer), inner: scaled(inner) }, mm(ball), mm(clearance * ball))
        expect(large / ball).toBeWithin(1e-6, axialPlay({ outer, inner }, mm(1), mm(clearance)))
      }),
    )
  })

  test.each([-1e-9, 0.5, Number.NaN])(
    'a clearance of %s is refused: the balls would climb out of a groove 0.2 deep',
    (clearance) => {
      const grooves = { outer: groove(0.53, 0.2), inner: groove(0.53, 0.4) }
      expect(() => axialPlay(grooves, mm(1), mm(clearance))).toThrow(RangeError)
    },
  )
})

describe('tilt', () => {
  test('half the axial play each way, seen over the pitch diameter', () => {
    expect(tilt(mm(2), mm(50))).toBeWithin(1e-12, (Math.atan(0.02) * 180) / Math.PI)
    expect(tilt(mm(0), mm(50))).toBe(0)
  })

  test('is Harris’s free angle of misalignment to 2 % where both arcs are alike and the play is small', () => {
    // Harris, Rolling Bearing Analysis, from memory: the lean of each ring from its own contact, the two added.
    // cos θi = 1 − Pd (2 ri − D − Pd/4) / (2 dm (dm + 2 ri − D − Pd/2)), θo with ro and the signs of the sum exchanged.
    fc.assert(
      fc.property(between(0.51, 0.6), between(0.001, 0.01), between(2, 20), (conformity, play, pitchRadius) => {
        const [dm, reach] = [2 * pitchRadius, 2 * conformity - 1]
        fc.pre(play / 2 < ((conformity - 0.5) * 0.3) / conformity)
        const inner = Math.acos(1 - (play * (reach - play / 4)) / (2 * dm * (dm + reach - play / 2)))
        const outer = Math.acos(1 - (play * (reach - play / 4)) / (2 * dm * (dm - reach + play / 2)))
        const both = { outer: groove(conformity, 0.3), inner: groove(conformity, 0.3) }
        const harris = ((inner + outer) * 180) / Math.PI
        expect(tilt(axialPlay(both, mm(1), mm(play)), mm(pitchRadius))).toBeWithin(0.02 * harris, harris)
      }),
    )
  })
})
