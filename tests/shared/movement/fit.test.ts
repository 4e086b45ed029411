import { describe, expect, test } from 'vitest'
import { gapRangeOnEllipse } from '#shared/geometry/ring-of-balls-on-ellipse.ts'
import { bindsIn, fitOf, gapOnCircle, outOfRound, stops, type Trouble, troublesOf } from '#shared/movement/fit.ts'
import type { BallSize, Raceway } from '#shared/movement/moving-wood.ts'
import type { Snapshot } from '#shared/movement/snapshot.ts'
import { mm } from '#shared/units/length.ts'

const COUNT = 12
const equal = (diameter: number): BallSize => ({
  least: mm(diameter),
  mean: mm(diameter),
  most: mm(diameter),
  turned: mm(0),
  length: 1,
})
const BALL = equal(14)
const circle = (radius: number): Raceway => ({ along: mm(radius), across: mm(radius) })
const lobed = (radius: number, count: number): Raceway => ({
  ...circle(radius),
  segments: { count, inward: mm(0.2), outward: mm(0.3), pull: 0, strength: 1 },
})
const on = (bottom: Raceway, ball = BALL): Snapshot => ({ raceways: {}, ball, bottom, rooms: {} })
const BAND = { minBallGap: mm(0), maxBallGap: mm(2) }

/** The last gap of balls laid one beside another round a circle: what their angles leave, as a chord. */
function chordLeft(bottomRadius: number, diameter: number, count = COUNT): number {
  const radius = bottomRadius - diameter / 2
  const left = 2 * Math.PI - (count - 1) * 2 * Math.asin(diameter / 2 / radius)
  return 2 * radius * Math.sin(left / 2) - diameter
}

describe('the gap of a full ring', () => {
  test.each([34.1, 34.3, 36])('on a bottom of radius %s is the chord that the others leave', (radius) => {
    expect(gapOnCircle(radius, mm(14), COUNT)).toBeWithin(1e-9, chordLeft(radius, 14))
    const { ballGap, ballGapOfLargest } = fitOf(on(circle(radius)), COUNT)
    expect(ballGap?.least).toBeWithin(1e-9, chordLeft(radius, 14))
    expect(ballGap?.most).toBe(ballGap?.least)
    expect(ballGapOfLargest).toBe(ballGap?.least)
  })

  test('is less than nothing by a ball where not even the others go in', () => {
    expect(gapOnCircle(24, mm(14), COUNT)).toBe(-14)
    expect(fitOf(on(circle(24)), COUNT).ballGap).toEqual({ least: -14, most: -14 })
  })

  test('of balls of wood is that of their mean, and of their largest diameter', () => {
    const { ballGap, ballGapOfLargest } = fitOf(on(circle(34.3), { ...BALL, most: mm(14.1), least: mm(13.8) }), COUNT)
    expect(ballGap?.least).toBeWithin(1e-9, chordLeft(34.3, 14))
    expect(ballGapOfLargest).toBeWithin(1e-9, chordLeft(34.3, 14.1))
  })

  test('in an ellipse is that of all places of the first ball', () => {
    const bottom = { along: mm(34.4), across: mm(34) }
    const { ballGap, ballGapOfLargest } = fitOf(on(bottom, { ...BALL, most: mm(14.02) }), COUNT)
    const range = (ballDiameter: number) =>
      gapRangeOnEllipse({ bottom, ballDiameter: mm(ballDiameter), ballCount: COUNT })
    expect(ballGap).toEqual(range(14))
    expect(ballGapOfLargest).toBe(range(14.02).least)
  })

  test.each([12, 24])('feels %s lobes, as many for each ball, at their least and their most', (count) => {
    const { ballGap } = fitOf(on(lobed(34.3, count)), COUNT)
    expect(ballGap?.least).toBeWithin(1e-9, chordLeft(34.1, 14))
    expect(ballGap?.most).toBeWithin(1e-9, chordLeft(34.6, 14))
  })

  test.each([6, 8, 11, 18])('feels of %s lobes the mean', (count) => {
    const { ballGap } = fitOf(on(lobed(34.3, count)), COUNT)
    expect(ballGap?.least).toBeWithin(1e-9, chordLeft(34.3, 14))
    expect(ballGap?.most).toBe(ballGap?.least)
  })

  test('is none where there is no full ring; play and rooms are handed on', () => {
    const play = { worst: mm(-0.1), best: mm(0.2) }
    const rooms = { leastLandGap: mm(0.3) }
    expect(fitOf({ raceways: {}, ball: BALL, play, rooms }, COUNT)).toEqual({ play, rooms })
    expect(fitOf({ raceways: {}, ball: BALL, rooms: {} }, COUNT)).toEqual({ rooms: {} })
  })
})

test('a raceway is out of round by its longer radius less its shorter, and by its lobes', () => {
  expect(outOfRound({ along: mm(30), across: mm(30.5) })).toBe(0.5)
  expect(outOfRound({ along: mm(30.5), across: mm(30) })).toBe(0.5)
  expect(outOfRound(lobed(30, 8))).toBeWithin(1e-12, 0.5)
  expect(outOfRound(circle(30))).toBe(0)
})

describe('trouble', () => {
  const gap = (least: number, most = least) => ({ rooms: {}, ballGap: { least: mm(least), most: mm(most) } })
  const HAIR = 0.9e-5
  const MORE = 1.1e-5

  test('begins where the gap leaves the band, but for a hundredth of a micrometre', () => {
    const band = { minBallGap: mm(0.1), maxBallGap: mm(2) }
    const of = (least: number, most?: number) => troublesOf(gap(least, most), band)
    expect([of(0.1), of(0.1 - HAIR), of(0.1 - MORE)]).toEqual([[], [], ['balls-bind']])
    expect([of(2), of(2 + HAIR), of(2 + MORE)]).toEqual([[], [], ['balls-knock']])
    expect(of(0, 3)).toEqual(['balls-bind', 'balls-knock'])
    expect(of(Number.NaN)).toEqual(['balls-bind', 'balls-knock'])
    expect(troublesOf(gap(-1, 9), undefined)).toEqual([])
    expect(troublesOf({ rooms: {} }, band)).toEqual([])
  })

  test('begins where the play or a room is used up', () => {
    const of = (worst: number) => troublesOf({ rooms: {}, play: { worst: mm(worst), best: mm(1) } }, BAND)
    expect([of(0), of(-HAIR), of(-MORE), of(Number.NaN)]).toEqual([[], [], ['rings-bind'], ['rings-bind']])
    const room = (left: number) => troublesOf({ rooms: { endPlay: mm(left), leastLandGap: mm(1) } }, undefined)
    expect([room(0), room(-HAIR), room(-MORE), room(Number.NaN)]).toEqual([[], [], ['ends-bind'], ['ends-bind']])
  })

  test('is said in the order of how it is felt', () => {
    const rooms = {
      leastLandGap: mm(-1),
      endPlay: mm(-1),
      cageClearance: mm(-1),
      pocketClearance: mm(-1),
      flankRoom: mm(-1),
    }
    const all = troublesOf({ ...gap(-1, 9), play: { worst: mm(-1), best: mm(1) }, rooms }, BAND)
    expect(all).toEqual([
      'balls-bind',
      'rings-bind',
      'lands-rub',
      'ends-bind',
      'cage-rubs',
      'pockets-bind',
      'balls-climb',
      'balls-knock',
    ] satisfies Trouble[])
    expect(all.filter((trouble) => !stops(trouble))).toEqual(['balls-climb', 'balls-knock'])
  })
})

describe('what stops it, told without the work of an ellipse where that cannot matter', () => {
  const stopping = (snapshot: Snapshot, band: typeof BAND | undefined) =>
    troublesOf(fitOf(snapshot, COUNT), band).filter(stops)
  // Radii round the one at which the gap is just what it must be, by more and by less than the ring is out of round.
  const RADII = Array.from({ length: 41 }, (_, step) => 34 + 0.02 * (step - 20))

  test.each([0, 0.01, 0.1, -0.1, 0.3])('a ring %s out of round is stopped where its gap is too small', (out) => {
    const told = RADII.map((radius) => {
      const snapshot = on({ along: mm(radius + out / 2), across: mm(radius - out / 2) })
      expect(bindsIn(snapshot, COUNT, BAND)).toEqual(stopping(snapshot, BAND))
      return bindsIn(snapshot, COUNT, BAND).length
    })
    // both are among them
    expect(new Set(told)).toEqual(new Set([0, 1]))
  })

  test('lobes count too', () => {
    for (const radius of RADII) {
      const snapshot = on(lobed(radius, COUNT))
      expect(bindsIn(snapshot, COUNT, BAND)).toEqual(stopping(snapshot, BAND))
    }
  })

  test('play and rooms stop it with and without a ring of balls, a gap only with its band', () => {
    const used = { play: { worst: mm(-1), best: mm(0) }, rooms: { cageClearance: mm(-1), flankRoom: mm(-1) } }
    expect(bindsIn({ ...on(circle(36)), ...used }, COUNT, BAND)).toEqual(['rings-bind', 'cage-rubs'])
    expect(bindsIn({ raceways: {}, ball: BALL, ...used }, COUNT, undefined)).toEqual(['rings-bind', 'cage-rubs'])
    expect(bindsIn({ ...on(circle(30)), ...used }, COUNT, BAND)).toEqual(['balls-bind', 'rings-bind', 'cage-rubs'])
    expect(bindsIn(on(circle(30)), COUNT, undefined)).toEqual([])
  })
})
