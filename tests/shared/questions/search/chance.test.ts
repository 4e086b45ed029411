import { describe, expect, test } from 'vitest'
import { ARRANGEMENTS, type RadialBearing } from '#shared/bearing/arrangements.ts'
import { unequalBallGap } from '#shared/geometry/unequal-balls.ts'
import { chanceAsMade, spreadOf } from '#shared/questions/search/chance.ts'
import { mm } from '#shared/units/length.ts'
import { normals, uniforms } from '#tests/support/chance.ts'
import { placesOnCircle, playAmongBalls } from '#tests/support/play-among-balls.ts'

const bearingWith = (count: number, diameter: number, more: object): RadialBearing => {
  const balls = { count, diameter: mm(diameter), standardDeviation: mm(0.006 * diameter) }
  const made = ARRANGEMENTS.radial.bearingOf({ units: 'mm', balls, bore: mm(10), ...more })
  if (!made.ok) throw new Error(JSON.stringify(made.error))
  return made.value
}

const chanceOf = (bearing: RadialBearing, error: number): number =>
  chanceAsMade(bearing, spreadOf(bearing, { gapPerCut: bearing.gapPerGrooveDepth }, mm(error)))

/** By trials: grooves cut with an error, each ball with its own diameter, the exact gap and the exact play among them. */
function chanceByTrials(bearing: RadialBearing, error: number, trials: number): number {
  const { resolved, outerRing, innerRing } = bearing
  const { ballDiameter, ballScatter, assembly, minBallGap, maxBallGap, input } = resolved
  const normal = normals(uniforms(7))
  let runs = 0
  for (let trial = 0; trial < trials; trial++) {
    const outer = mm(outerRing.grooveBottomDiameter / 2 + error * normal())
    const inner = mm(innerRing.grooveBottomDiameter / 2 + error * normal())
    const diameters = Array.from({ length: input.balls.count }, () => ballDiameter + ballScatter * normal())
    const threshold = Math.max(0, assembly.assemblyGap * (0.65 + 0.2 * normal()))
    const gap = unequalBallGap(outer, diameters)
    if (!(gap >= Math.max(threshold, minBallGap) && gap <= maxBallGap)) continue
    const play = playAmongBalls(placesOnCircle(outer, diameters, 'spread'), inner)
    if (play !== undefined && play.radialInternalClearance > 0) runs++
  }
  return runs / trials
}

describe('the chance that a bearing runs is that of exact trials, to within what one order of errors leaves', () => {
  test.each([
    { count: 12, diameter: 16, error: 0.05, more: {} },
    { count: 12, diameter: 16, error: 0.15, more: {} },
    { count: 9, diameter: 20, error: 0.1, more: { radialInternalClearance: mm(0.6) } },
    { count: 20, diameter: 10, error: 0.05, more: { radialInternalClearance: mm(0.4), maxBallGap: mm(3) } },
    { count: 30, diameter: 12, error: 0.02, more: { ballGap: mm(1.5), maxBallGap: mm(4) } },
  ])('$count balls of $diameter mm, grooves to $error mm', ({ count, diameter, error, more }) => {
    const bearing = bearingWith(count, diameter, more)
    // Standard error of the trials 0.008.
    expect(chanceOf(bearing, error)).toBeWithin(0.03, chanceByTrials(bearing, error, 4000))
  })
})

test('truer tools never make a good design worse, and nothing uncertain leaves no doubt', () => {
  const bearing = bearingWith(14, 16, { ballGap: mm(1), maxBallGap: mm(2), radialInternalClearance: mm(0.8) })
  const chances = [0.4, 0.2, 0.1, 0.05, 0.02].map((error) => chanceOf(bearing, error))
  expect(chances).toEqual(chances.toSorted((one, other) => one - other))
  const exact = ARRANGEMENTS.radial.bearingOf({
    ...bearing.resolved.input,
    balls: { ...bearing.resolved.input.balls, standardDeviation: mm(0) },
  })
  expect(exact.ok && chanceOf(exact.value, 0)).toBeGreaterThan(0.99)
})
