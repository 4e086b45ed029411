import { describe, expect, test } from 'vitest'
import { gapOnPath } from '#shared/geometry/balls-on-a-path.ts'
import { seatIn } from '#shared/geometry/seat.ts'
import { gapSlopes, playSlopes } from '#shared/questions/tolerance/arrangements/ring-slopes.ts'
import type { FigureName } from '#shared/questions/tolerance/check-model.ts'
import { CONTRIBUTORS_OF, type ContributorName } from '#shared/questions/tolerance/input.ts'
import { linearLaw } from '#shared/questions/tolerance/linear-law.ts'
import { inches, mm } from '#shared/units/length.ts'
import { checked, DESIGN, normal, ON_EDGES, resolvedCheck, uniform } from '#tests/support/tolerance.ts'

const EVERY = { ballDiameter: normal(0.1) }
const DESIGNS = [
  ['on the bottom', DESIGN],
  ['on the edges', ON_EDGES],
  ['seven balls on the edges', { ...ON_EDGES, balls: { count: 7, diameter: mm(40) }, bore: mm(1) }],
  ['forty balls', { ...DESIGN, balls: { count: 40, diameter: mm(10) } }],
] as const

/** What differs, all else being as designed; balls one by one. */
interface Off {
  readonly balls?: readonly number[]
  readonly outer?: number
  readonly inner?: number
  readonly film?: number
}

describe.each(DESIGNS)('slopes against central differences: %s', (_, design) => {
  const check = resolvedCheck(EVERY, design)
  const { outerRing, innerRing, resolved } = check.bearing
  const count = design.balls.count

  /** Seats by `seatIn`, which the slopes do not use; a film is a groove and a land closer to the ball all round. */
  const seatHeight = (groove: { radius: number; depth: number }, diameter: number, film: number): number => {
    const seat = seatIn({ radius: mm(groove.radius), depth: mm(groove.depth) }, mm(diameter + 2 * film))
    return seat.depth - diameter / 2 - film
  }
  const diameters = ({ balls = [] }: Off) =>
    Array.from({ length: count }, (_, ball) => resolved.ballDiameter + (balls[ball] ?? 0))
  const gap = (off: Off): number => {
    const groove = { radius: outerRing.grooveRadius, depth: outerRing.grooveDepth + (off.outer ?? 0) }
    const all = diameters(off)
    return gapOnPath(
      count,
      (ball) => outerRing.landDiameter / 2 + seatHeight(groove, all[ball] ?? 0, off.film ?? 0),
      (ball) => (all[ball] ?? 0) / 2,
    )
  }
  const play = (off: Off): number => {
    const mean = diameters(off).reduce((sum, each) => sum + each, 0) / count
    const film = off.film ?? 0
    const outer = { radius: outerRing.grooveRadius, depth: outerRing.grooveDepth + (off.outer ?? 0) }
    const inner = { radius: innerRing.grooveRadius, depth: innerRing.grooveDepth - (off.inner ?? 0) }
    const outside = outerRing.landDiameter / 2 + seatHeight(outer, mean, film)
    return 2 * (outside - (innerRing.landDiameter / 2 - seatHeight(inner, mean, film)))
  }
  const STEP = 1e-4
  const slope = (of: (off: Off) => number, off: (by: number) => Off) => (of(off(STEP)) - of(off(-STEP))) / (2 * STEP)
  const all = (by: number): Off => ({ balls: Array.from({ length: count }, () => by) })
  const one =
    (ball: number) =>
    (by: number): Off => ({ balls: Array.from({ length: count }, (_, other) => (other === ball ? by : 0)) })

  test('nothing off is the design', () => {
    expect(gap({})).toBeWithin(1e-9, check.bearing.ballGap)
    expect(play({})).toBeWithin(1e-9, check.bearing.radialInternalClearance)
  })

  test.each([
    ['ball gap', gap, gapSlopes(check)],
    ['play', play, playSlopes(check)],
  ] as const)('of the %s', (_name, of, { eachBall, of: by }) => {
    expect(by.ballLotMean).toBeWithin(1e-5, slope(of, all))
    expect(by.outerGrooveBottomRadius).toBeWithin(
      1e-5,
      slope(of, (outer) => ({ outer })),
    )
    expect(by.innerGrooveBottomRadius).toBeWithin(
      1e-5,
      slope(of, (inner) => ({ inner })),
    )
    expect(by.finishFilm).toBeWithin(
      1e-5,
      slope(of, (film) => ({ film })),
    )
    eachBall.forEach((found, ball) => {
      expect(found).toBeWithin(1e-5, slope(of, one(ball)))
    })
  })
})

test('at exact closure: 2 Z sin(π/Z) per groove radius, −(1 + sin(π/Z)) per ball', () => {
  for (let count = 7; count <= 60; count++) {
    const check = resolvedCheck(EVERY, { ...DESIGN, balls: { count, diameter: mm(16) }, bore: mm(1), ballGap: mm(0) })
    const sine = Math.sin(Math.PI / count)
    const { eachBall, of } = gapSlopes(check)
    expect(of.outerGrooveBottomRadius).toBeWithin(1e-9, 2 * count * sine)
    for (const slope of eachBall) expect(slope).toBeWithin(1e-9, -(1 + sine))
  }
})

// Common practice, no source: a groove 1/16 in too deep for ten 3/4 in balls opens about 3/8 in.
test('trade: a groove 1/16 in too deep opens the gap of ten 3/4 in balls by 3/8 in, and it is the mean of the balls that moves it most', () => {
  const design = {
    units: 'in',
    balls: { count: 10, diameter: inches(0.75) },
    bore: inches(0.5),
    ballGap: mm(0),
  } as const
  const { figures } = checked({ outerGrooveBottomRadius: normal(0, inches(1 / 16)) }, { design, trials: 1000 })
  expect((figures.ballGap.rss.mean - figures.ballGap.nominal) / 25.4).toBeWithin(0.02, 3 / 8)
  expect((figures.ballGap.trials.mean - figures.ballGap.nominal) / 25.4).toBeWithin(0.02, 3 / 8)
  const { of } = gapSlopes(resolvedCheck(EVERY, design))
  expect(of.ballLotMean / of.outerGrooveBottomRadius).toBeWithin(0.2, -2)
})

test('two contributors: the squares add up, and each has its share', () => {
  const contributors = { ballLotMean: normal(0.03), outerGrooveBottomRadius: uniform(0.1) }
  const check = resolvedCheck(contributors)
  const { bearing } = check
  const law = linearLaw(check, 'ballGap')
  const [balls, groove] = [bearing.gapPerBallDiameter * 0.03, (bearing.gapPerGrooveDepth * 0.1) / Math.sqrt(3)]
  expect(law.mean).toBe(0.8)
  expect(law.standardDeviation).toBeWithin(1e-12, Math.sqrt(balls * balls + groove * groove))
  expect(law.sensitivities.get('ballLotMean')?.share).toBeWithin(
    1e-12,
    (balls * balls) / (balls * balls + groove * groove),
  )
})

test.each<FigureName>(['ballGap', 'play'])('the shares of the %s add up to 1, whatever varies', (figure) => {
  for (const name of CONTRIBUTORS_OF.rings) {
    const others = CONTRIBUTORS_OF.rings.filter((each): each is ContributorName => each !== name)
    const law = linearLaw(resolvedCheck(Object.fromEntries(others.map((each) => [each, normal(0.02)]))), figure)
    expect([...law.sensitivities.values()].reduce((sum, { share }) => sum + share, 0)).toBeWithin(1e-12, 1)
  }
  const still = linearLaw(resolvedCheck({ ballDiameter: normal(0) }), figure)
  expect(still.sensitivities.get('ballDiameter')?.share).toBe(0)
})
