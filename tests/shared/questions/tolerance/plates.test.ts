import { describe, expect, test } from 'vitest'
import type { ThrustInput } from '#shared/bearing/arrangements/thrust/input.ts'
import { ballGapOnCircle } from '#shared/geometry/balls-on-a-circle.ts'
import { ballGap } from '#shared/geometry/ring-of-balls.ts'
import { riseOnLargest } from '#shared/questions/tolerance/arrangements/thrust.ts'
import { checkOf } from '#shared/questions/tolerance/check.ts'
import { FIGURES } from '#shared/questions/tolerance/check-model.ts'
import { type Check, isOfPlates, type PlateCheck } from '#shared/questions/tolerance/checked.ts'
import type { Contributors, ToleranceCheckInput } from '#shared/questions/tolerance/input.ts'
import { linearLaw } from '#shared/questions/tolerance/linear-law.ts'
import { modelOf } from '#shared/questions/tolerance/model-of.ts'
import { toleranceCheck } from '#shared/questions/tolerance/tolerance-check.ts'
import { mm } from '#shared/units/length.ts'
import { reasonsIn } from '#tests/support/refused.ts'
import { checkedAny, DESIGN, normal, triangular, uniform } from '#tests/support/tolerance.ts'

/** An invented turntable: twelve balls of 16 mm, their gap 0.8 mm. */
const PLATES: ThrustInput = { ...DESIGN, arrangement: 'thrust' }
/** The same with grooves tighter than the balls. */
const ON_EDGES: ThrustInput = { ...PLATES, groove: { conformity: 0.46 } }
const DESIGNS = [
  ['on the bottom', PLATES],
  ['on the edges', ON_EDGES],
] as const

const SHOP: Contributors = {
  ballDiameter: normal(0.08),
  ballLotMean: normal(0.03),
  grooveCircleRadius: uniform(0.12),
  grooveDepth: triangular(0.2),
}

function ofPlates(check: Check): PlateCheck {
  if (!isOfPlates(check)) throw new Error('the check must be one of plates')
  return check
}

function resolved(contributors: Contributors, design: ThrustInput): PlateCheck {
  const result = checkOf({ design, contributors })
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return ofPlates(result.value)
}

const checked = (contributors: Contributors, more: Partial<ToleranceCheckInput> = {}) =>
  checkedAny(contributors, { design: PLATES, ...more })

describe.each(DESIGNS)('%s', (_, design) => {
  const check = resolved({ ballDiameter: normal(0.1) }, design)
  const { pitchRadius, plate, plateGap, resolved: own } = check.bearing
  const { ballGap: gapSlopes, play: apartSlopes } = modelOf(check).slopes
  const ballRadius = own.ballDiameter / 2

  /** Half the space between the faces, by coordinates: what a ball rests on, in its plane through the axis. */
  const overFace = (radius: number, deeper: number): number => {
    const depth = plate.grooveDepth + deeper
    if (plate.seat === 'bottom') return radius - depth
    const halfWidth = Math.sqrt(depth * (2 * plate.grooveRadius - depth))
    return Math.sqrt(radius * radius - halfWidth * halfWidth)
  }

  test('the space between the faces is that of the ball over either', () => {
    expect(2 * overFace(ballRadius, 0)).toBeWithin(1e-12, plateGap)
  })

  test('slopes of the gap, against central differences of the closed ring', () => {
    const step = 1e-5
    const gapAt = (out: number, more: number) =>
      ballGap(mm(pitchRadius + out), mm(own.ballDiameter + more), own.input.balls.count)
    expect(gapSlopes.of.ballLotMean).toBeWithin(1e-4, (gapAt(0, step) - gapAt(0, -step)) / (2 * step))
    // One plate alone moves the balls by half of what it is off.
    expect(gapSlopes.of.grooveCircleRadius).toBeWithin(1e-4, (gapAt(step / 2, 0) - gapAt(-step / 2, 0)) / (2 * step))
    expect(gapSlopes.of.grooveDepth).toBe(0)
    expect(gapSlopes.eachBall.reduce((sum, slope) => sum + slope, 0)).toBeWithin(1e-9, gapSlopes.of.ballLotMean)
  })

  test('slopes of the space between the faces', () => {
    const step = 1e-5
    const perBall = 2 * (overFace(ballRadius + step / 4, 0) - overFace(ballRadius - step / 4, 0))
    expect(apartSlopes.of.ballLotMean).toBeWithin(1e-4, perBall / step)
    const perDepth = (overFace(ballRadius, step) - overFace(ballRadius, -step)) / 2
    expect(apartSlopes.of.grooveDepth).toBeWithin(1e-4, perDepth / step)
    expect(apartSlopes.of.grooveCircleRadius).toBe(0)
  })

  test('straight lines and trials tell of the same spread', () => {
    const { figures } = checked(SHOP, { design })
    for (const figure of FIGURES) {
      const { rss, trials, worstCase, seen } = figures[figure]
      const { standardDeviation } = trials
      expect(trials.mean).toBeWithin(0.05 * standardDeviation, rss.mean)
      expect(standardDeviation / rss.standardDeviation).toBeWithin(0.02, 1)
      // Three deviations of everything at once are farther than any of so many trials.
      expect(worstCase.min).toBeLessThan(seen.least)
      expect(worstCase.max).toBeGreaterThan(seen.most)
    }
  })
})

test('shares, ends and aims without trials are those of half a million of them', () => {
  const near = toleranceCheck({ design: PLATES, contributors: SHOP })
  if (!near.ok) throw new Error(JSON.stringify(near.error))
  expect(near.value.method.kind).toBe('nearly-linear')
  // A share of them is off by 0.0007 at most, and is compared to 0.003.
  const many = checked(SHOP, { trials: 500_000 })
  for (const figure of FIGURES) {
    const [one, other] = [near.value.figures[figure], many.figures[figure]]
    for (const outcome of ['tooTight', 'fits', 'tooLoose'] as const) {
      expect(one.outcomes[outcome].value).toBeWithin(0.003, other.outcomes[outcome].value)
    }
  }
  const furtherOut = (aim: typeof many.aim): number => aim.bestYield.deeper
  expect(furtherOut(near.value.aim)).toBeWithin(0.02, furtherOut(many.aim))
})

test('unequal balls of a list are closed on the circle in the order drawn: one order after the other, counted out', () => {
  const three: ThrustInput = {
    ...PLATES,
    balls: { count: 3, diameter: mm(16) },
    ballGap: mm(3),
    maxBallGap: mm(5),
    plates: { engagement: 0.2 },
    bore: mm(2),
  }
  const diameters = [15.5, 16, 16.5].map(mm)
  const { figures, check } = checked(
    { ballDiameter: { kind: 'measured', diameters } },
    { design: three, trials: 60_000 },
  )
  const orders = [
    [0, 1, 2],
    [0, 2, 1],
    [1, 0, 2],
  ].map((order) =>
    ballGapOnCircle(
      mm(check.bearing.pitchRadius),
      order.map((ball) => diameters[ball] ?? mm(0)),
    ),
  )
  const mean = orders.reduce((sum, gap) => sum + gap, 0) / orders.length
  expect(figures.ballGap.trials.mean).toBeWithin(0.002, mean)
  expect(figures.ballGap.seen.least).toBeWithin(0.002, Math.min(...orders))
  expect(figures.ballGap.seen.most).toBeWithin(0.002, Math.max(...orders))
})

test('the worst case by hand: circles 0.1 off in both plates, balls 0.05 off in all', () => {
  const { figures, check } = checked({
    ballLotMean: uniform(0.05),
    grooveCircleRadius: uniform(0.1),
    grooveDepth: uniform(0.2),
  })
  const { pitchRadius } = check.bearing
  expect(figures.ballGap.worstCase.min).toBeWithin(1e-9, ballGap(mm(pitchRadius - 0.1), mm(16.05), 12))
  expect(figures.ballGap.worstCase.max).toBeWithin(1e-9, ballGap(mm(pitchRadius + 0.1), mm(15.95), 12))
  // Grooves of 0.3 balls leave 16 − 2 × 4.8 = 6.4 mm; two of them deeper by 0.2, and balls smaller by 0.05.
  expect(figures.play.worstCase.min).toBeWithin(1e-9, 6.4 - 0.4 - 0.05)
  expect(figures.play.worstCase.max).toBeWithin(1e-9, 6.4 + 0.4 + 0.05)
})

test('a ball between two grooves off one another settles midway: there the plates are nearest', () => {
  const { plate, resolved: own } = resolved({ ballLotMean: normal(0.1) }, PLATES).bearing
  const off = 0.2
  const arc = plate.grooveRadius - own.ballDiameter / 2
  // How much higher than at its bottom a ball's centre lies in a groove, as it goes aside.
  const climbs = (aside: number): number => arc - Math.sqrt(arc * arc - aside * aside)
  const apart = (at: number): number => climbs(at) + climbs(off - at)
  const places = Array.from({ length: 2001 }, (_, step) => (step / 2000) * off)
  const resolvedAt = places.reduce((best, at) => (apart(at) < apart(best) ? at : best), 0)
  expect(resolvedAt).toBeWithin(off / 1000, off / 2)
})

test('uneven balls hold the plates further apart, on edges by more than they are larger', () => {
  // Twelve balls: the quantile of 1 − 3/24 is 1.1503 in any table of the normal distribution.
  expect(riseOnLargest(resolved({ ballDiameter: normal(0.08) }, PLATES))).toBeWithin(0.08 * 5e-5, 0.08 * 1.1503)
  expect(riseOnLargest(resolved({ ballDiameter: normal(0.08) }, ON_EDGES))).toBeGreaterThan(0.1)
  expect(riseOnLargest(resolved({ grooveCircleRadius: uniform(0.12) }, PLATES))).toBe(0)
})

test('two plates that scatter each on its own count as the root of the sum of their squares', () => {
  const check = resolved({ grooveCircleRadius: normal(0.1) }, PLATES)
  const { standardDeviation } = linearLaw(check, 'ballGap')
  expect(standardDeviation).toBeWithin(1e-9, (check.bearing.gapPerPitchRadius * 0.1) / Math.SQRT2)
})

describe('refused', () => {
  const refusals = (contributors: Contributors, more: Partial<ToleranceCheckInput> = {}) =>
    reasonsIn(checkOf({ design: PLATES, contributors, ...more }))

  test('what only rings have, and of rings what only plates have', () => {
    const ofRings = { outerGrooveBottomRadius: normal(0.1), finishFilm: normal(0.1) }
    expect(refusals(ofRings, { limits: { minRadialInternalClearance: mm(0.1) } })).toEqual([
      'not-of-arrangement /contributors/outerGrooveBottomRadius',
      'not-of-arrangement /contributors/finishFilm',
      'not-of-arrangement /limits/minRadialInternalClearance',
    ])
    expect(refusals({ grooveDepth: normal(0.1) }, { design: DESIGN })).toEqual([
      'not-of-arrangement /contributors/grooveDepth',
    ])
  })

  test.each([
    ['balls of all sizes', { ballLotMean: uniform(9) }, '/contributors/ballLotMean'],
    ['no groove left', { grooveDepth: uniform(4.9) }, '/contributors/grooveDepth'],
    ['balls in to their middle', { grooveDepth: uniform(3.3) }, '/contributors/grooveDepth'],
    ['no room for the balls', { grooveCircleRadius: uniform(12) }, '/contributors/grooveCircleRadius'],
  ] as const)('%s', (_, contributors, path) => {
    expect(refusals(contributors)).toEqual([`contributor-too-wide ${path}`])
  })

  test('limits the wrong way round', () => {
    const limits = { minPlateGap: mm(5), maxPlateGap: mm(4) }
    expect(refusals({ grooveDepth: normal(0.1) }, { limits })).toEqual(['limits-reversed /limits/minPlateGap'])
  })
})
