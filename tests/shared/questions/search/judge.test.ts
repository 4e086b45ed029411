import { describe, expect, test } from 'vitest'
import { closedPitchRadius, ballGap as gapOfRing } from '#shared/geometry/ring-of-balls.ts'
import type { Year } from '#shared/movement/year.ts'
import { loadCheck } from '#shared/questions/load/load-check.ts'
import { playChance, spreadOf } from '#shared/questions/search/chance.ts'
import { type DesignSearchInput, resolveSearch } from '#shared/questions/search/input.ts'
import { boundWith, type Judged, judge, proved, throughSeason } from '#shared/questions/search/judge.ts'
import { scoreOf } from '#shared/questions/search/score.ts'
import { chanceOfSeason, chanceThroughYear } from '#shared/questions/search/year.ts'
import { normalCdf } from '#shared/statistics/normal.ts'
import { mm } from '#shared/units/length.ts'

/** One candidate: twelve balls of 16 mm on a bolt of 8 mm. */
const ONE: DesignSearchInput = {
  units: 'mm',
  outsideDiameter: { max: mm(200) },
  bore: { min: mm(8), max: mm(8) },
  counts: { min: 12, max: 12 },
  balls: [{ diameter: mm(16), material: 'glass' }],
}
const FIRST = { ball: 0, choice: 0, count: 0, bore: 0 }
const judged = (more: Partial<DesignSearchInput> = {}) => judge(resolveSearch({ ...ONE, ...more }), FIRST)
function good(more: Partial<DesignSearchInput> = {}): Judged {
  const found = judged(more)
  if (typeof found === 'string') throw new Error(`dropped: ${found}`)
  return found
}
const bored = (bore: number) => ({ bore: { min: mm(bore), max: mm(bore) } })

describe('a limit holds at its own figure, and not a hair beyond', () => {
  const { sizes } = good()
  const { outsideDiameter, innerWall, landGap = mm(Number.NaN) } = sizes
  const HAIR = 1e-5

  test('outside diameter', () => {
    expect(judged({ outsideDiameter: { max: outsideDiameter } })).toMatchObject({ board: outsideDiameter })
    expect(judged({ outsideDiameter: { max: mm(outsideDiameter - HAIR) } })).toBe('outside-diameter')
    expect(judged({ outsideDiameter: { min: outsideDiameter, max: mm(200) } })).toMatchObject({ sizes })
    expect(judged({ outsideDiameter: { min: mm(outsideDiameter + HAIR), max: mm(200) } })).toBe('outside-diameter')
  })

  test('balls on hand', () => {
    const of = (quantity: number) => judged({ balls: [{ diameter: mm(16), material: 'glass', quantity }] })
    expect(of(12)).toMatchObject({ sizes })
    expect(of(11)).toBe('too-few-balls')
  })

  test('wood beside the bore: a third of a ball', () => {
    const largest = 8 + 2 * (innerWall - 16 / 3)
    expect(judged(bored(largest))).toMatchObject({ sizes: { outsideDiameter } })
    expect(judged(bored(largest + HAIR))).toBe('bore-too-large')
  })

  test('boards: the narrowest that holds the outer ring, or one as wide where none is stated', () => {
    expect(good().board).toBe(outsideDiameter)
    expect(good({ boardWidths: [mm(300), outsideDiameter, mm(20)] }).board).toBe(outsideDiameter)
    expect(judged({ boardWidths: [mm(outsideDiameter - HAIR)] })).toBe('no-board')
  })

  test('nesting: the parting tool passes between the lands', () => {
    expect(good({ partingWidth: landGap })).toMatchObject({ isNested: true, marks: { nesting: 1 } })
    expect(good({ partingWidth: mm(landGap + HAIR) })).toMatchObject({ isNested: false, marks: { nesting: 0 } })
  })
})

test('what is far off is told without working it out: balls that close outside, a bore wider than a ring of one ball more', () => {
  const closed = 2 * closedPitchRadius(mm(16), 12)
  expect(judged({ outsideDiameter: { max: mm(closed - 1) } })).toBe('outside-diameter')
  const wider = 2 * closedPitchRadius(mm(16), 13)
  expect(judged(bored(wider + 1))).toBe('bore-too-large')
})

describe('marks', () => {
  test('wall: half of it at a third of a ball; seat: on the bottom of a groove of 0.53; no load, no mark for it', () => {
    const { innerWall, outerWall } = good().sizes
    const thin = good(bored(8 + 2 * (innerWall - 16 / 3)))
    expect(outerWall).toBeGreaterThan(16 / 3)
    expect(thin.marks.wall).toBeWithin(1e-6, 0.5)
    expect(thin.marks).toMatchObject({ seat: 1 })
    expect(thin.marks).not.toHaveProperty('load')
  })

  test('material: rings over boards', () => {
    const { sizes, materialUsed, board } = good({ partingWidth: mm(100) })
    const [outer, inner] = sizes.discs
    if (outer === undefined || inner === undefined || typeof outer.hole !== 'number') throw new Error('no rings')
    const rings = outer.outside ** 2 - outer.hole ** 2 + inner.outside ** 2 - 8 ** 2
    expect(materialUsed).toBeWithin(1e-12, ((Math.PI / 4) * rings) / (board ** 2 + inner.outside ** 2))
  })

  test('on hand: the drill of the bore, a plug from go to no-go; half where one of both is there, all where none is asked for', () => {
    const { bearing } = good()
    if (!('gauge' in bearing)) throw new Error('no gauge')
    const { goDiameter, noGoDiameter } = bearing.gauge
    const onHand = (drills: readonly number[] | undefined, plugs?: readonly number[]) =>
      good({
        ...(drills && { drillDiameters: drills.map(mm) }),
        ...(plugs && { plugDiameters: plugs.map(mm) }),
      }).marks.onHand
    expect([onHand(undefined), onHand([6, 8]), onHand([7.99, 8.01])]).toEqual([1, 1, 0])
    expect(
      [goDiameter, noGoDiameter, goDiameter - 0.01, noGoDiameter + 0.01].map((d) => onHand(undefined, [d])),
    ).toEqual([1, 1, 0, 0])
    expect([onHand([8], [goDiameter]), onHand([8], [1]), onHand([9], [noGoDiameter])]).toEqual([1, 0.5, 0.5])
  })
})

describe('cut to the nearest figure of the rule', () => {
  /** Gaps of which the groove is cut a little too deep when its bottom is cut to the nearest tenth of a millimetre. */
  const off = (gap: number) => {
    const { bearing } = good({ ballGap: mm(gap) })
    if (!('outerRing' in bearing) || !('grooveBottomDiameter' in bearing.outerRing)) throw new Error('no groove')
    const bottom = bearing.outerRing.grooveBottomDiameter
    return (Math.round(10 * bottom) / 10 - bottom) / 2
  }
  const gap = Array.from({ length: 40 }, (_, i) => 0.8 + 0.01 * i).find((each) => off(each) > 0.01) ?? Number.NaN

  test('the gap is that of the ring whose groove is as much deeper', () => {
    const { bearing, gapAtShop } = good({ ballGap: mm(gap) })
    if (!('pitchRadius' in bearing)) throw new Error('no pitch')
    expect(gapAtShop).toBeWithin(1e-9, gapOfRing(mm(bearing.pitchRadius + off(gap)), mm(16), 12))
    expect(gapAtShop).toBeGreaterThan(gap)
  })

  test('only those in the band, where that is asked for', () => {
    const { gapAtShop = Number.NaN } = good({ ballGap: mm(gap) })
    const within = (maxBallGap: number, onlyOnRule: boolean) =>
      judged({ ballGap: mm(gap), maxBallGap: mm(maxBallGap), onlyOnRule })
    const between = (gap + gapAtShop) / 2
    expect(within(gapAtShop + 1e-6, true)).toMatchObject({ gapAtShop })
    expect(within(between, true)).toBe('not-on-rule')
    expect(within(between, false)).toMatchObject({ gapAtShop })
  })
})

test('plugs that cannot tell are no risk of the bearing, for a rule can', () => {
  const { findings, isRisky } = good({ balls: [{ diameter: mm(16), material: 'glass', standardDeviation: mm(0.2) }] })
  const risks = findings.filter(({ severity }) => severity === 'risk').map(({ facts }) => facts.code)
  expect(isRisky).toBe(risks.some((code) => code !== 'plugs-cannot-tell'))
})

describe('a larger bore', () => {
  const search = resolveSearch({ ...ONE, drillDiameters: [mm(20)] })

  test('by its bound is no worse than it is, and no better where nothing else hangs on it', () => {
    const narrow = good({ drillDiameters: [mm(20)] })
    const wide = good({ ...bored(20), drillDiameters: [mm(20)] })
    const bound = boundWith(search, narrow, mm(20))
    expect(bound).toBeGreaterThanOrEqual(wide.score - 1e-12)
    if (wide.isRisky === narrow.isRisky) expect(bound).toBeWithin(1e-12, wide.score)
    expect(narrow.marks.onHand).toBe(0)
    expect(wide.marks.onHand).toBe(1)
  })

  test('that leaves less than a third of a ball of wood is none', () => {
    const narrow = good()
    const largest = 8 + 2 * (narrow.sizes.innerWall - 16 / 3)
    expect(boundWith(search, narrow, mm(largest))).toEqual(expect.any(Number))
    expect(boundWith(search, narrow, mm(largest + 1e-5))).toBe('bore-too-large')
  })
})

describe('a load', () => {
  const checked = loadCheck({ design: good().bearing.resolved.input, radialLoad: 1 })
  if (!checked.ok) throw new RangeError('the bearing must carry a load')
  const { workingLoad, ruin } = checked.value
  const working = workingLoad.loads.slowHand.load

  test.each([
    [1 / 3, 0.75],
    [1, 0.5],
    [3, 0.25],
  ])('of %s of what leaves no mark has a mark of %s', (share, mark) => {
    const { marks, margin, score, isRisky } = provedOf({ load: { radialLoad: share * working } })
    expect(margin).toBeWithin(1e-9, 1 / share)
    expect(marks.load).toBeWithin(1e-9, mark)
    expect(score).toBe(scoreOf(marks, resolveSearch({ ...ONE, load: { radialLoad: share * working } }), isRisky))
  })

  test('that ruins it leaves none', () => {
    const at = (share: number) => proved(resolveSearch({ ...ONE, load: { radialLoad: share * ruin.load } }), good())
    expect(at(1)).toHaveProperty('margin')
    expect(at(1.001)).toBe('dents-deeper')
  })

  test('that is not asked for changes nothing', () => {
    expect(proved(resolveSearch(ONE), good())).toEqual(good())
  })
})

function provedOf(more: Partial<DesignSearchInput>): Judged {
  const found = proved(resolveSearch({ ...ONE, ...more }), good(more))
  if (typeof found === 'string') throw new Error(`dropped: ${found}`)
  return found
}

describe('a year', () => {
  const MAPLE = { construction: 'quarter-sawn', species: 'maple-sugar' } as const
  const at = (min: number, max: number): Year => ({
    woods: { outerRing: MAPLE, innerRing: MAPLE },
    climate: { kind: 'moisture', moistureContent: { min, max } },
    today: { kind: 'moisture', moistureContent: 9 },
  })
  const ROOMY = { ballGap: mm(1.2), radialInternalClearance: mm(0.8) }
  const { bearing, spread } = good(ROOMY)

  test('that is one day has the chances of that day: the gap stays open and the rings have play, each by itself', () => {
    const open = normalCdf(1.2 / spread.gap)
    expect(chanceThroughYear(at(9, 9), bearing, spread)).toBeWithin(1e-9, open * playChance(spread, 0.8))
  })

  test('is as good as its worst day, whichever end that is', () => {
    const [dry, damp, both] = [at(6, 9), at(9, 12), at(6, 12)].map((year) => chanceThroughYear(year, bearing, spread))
    expect(both).toBe(Math.min(dry ?? Number.NaN, damp ?? Number.NaN))
    expect(both).toBeLessThanOrEqual(chanceThroughYear(at(9, 9), bearing, spread))
  })

  test('in which it stops is none', () => {
    const flat = {
      ...at(3, 9),
      woods: { outerRing: { ...MAPLE, construction: 'flat-sawn' }, innerRing: MAPLE },
    } as const
    expect(chanceThroughYear(flat, bearing, spread)).toBe(0)
    const search = resolveSearch({ ...ONE, ...ROOMY, year: flat })
    expect(proved(search, good(ROOMY))).toBe('not-all-year')
  })

  test('lowers the mark of running to its own chance, and the whole season by another', () => {
    const year = at(7.5, 10)
    const search = resolveSearch({ ...ONE, ...ROOMY, year })
    const before = good(ROOMY)
    const after = provedOf({ ...ROOMY, year })
    const chance = chanceThroughYear(year, before.bearing, before.spread)
    expect(after.marks.running).toBe(Math.min(before.marks.running ?? Number.NaN, chance))
    const whole = throughSeason(search, after)
    const season = chanceOfSeason(year, before.bearing)
    expect(season).toBeGreaterThan(0)
    expect(whole.marks.running).toBe((after.marks.running ?? Number.NaN) * season)
    expect(whole.score).toBe(scoreOf(whole.marks, search, whole.isRisky))
    expect(throughSeason(resolveSearch(ONE), after)).toBe(after)
  })
})

describe('how a finished bearing scatters', () => {
  const { bearing, sizes } = good()
  const exact = good({ balls: [{ diameter: mm(16), material: 'glass', standardDeviation: mm(0) }] }).bearing

  test('equal balls: the gap by its slope, the play by both grooves, and half of its variance in common', () => {
    const { gap, play, correlation, playLost } = spreadOf(exact, sizes, mm(0.1))
    expect(gap).toBeWithin(1e-12, 0.1 * sizes.gapPerCut)
    expect(play).toBeWithin(1e-12, 0.2 * Math.SQRT2)
    expect(correlation).toBeWithin(1e-12, Math.SQRT1_2)
    expect(playLost).toBeWithin(1e-12, 0)
  })

  test('true grooves: the gap by the scatter of the mean of the balls', () => {
    if (!('gapPerBallDiameter' in bearing)) throw new Error('no gap')
    const { gap, playLost } = spreadOf(bearing, sizes, mm(0))
    const scatter = bearing.resolved.ballScatter
    expect(gap).toBeWithin(1e-12, (Math.abs(bearing.gapPerBallDiameter) * scatter) / Math.sqrt(12))
    expect(playLost).toBeGreaterThan(scatter)
  })

  test('nothing is made exactly: a deviation is above 0', () => {
    expect(spreadOf(exact, sizes, mm(0))).toMatchObject({ gap: 1e-6, play: 1e-6 })
  })

  test('the chance of play at each gap, over all gaps, is that of play alone', () => {
    const spread = { gap: 1, play: 0.3, correlation: 0.6, playLost: 0.1 }
    const STEP = 0.01
    let all = 0
    for (let z = -6; z <= 6; z += STEP)
      all += (playChance(spread, 0.4, z) * Math.exp((-z * z) / 2) * STEP) / Math.sqrt(2 * Math.PI)
    expect(all).toBeWithin(1e-6, playChance(spread, 0.4))
    expect(playChance(spread, 0.4)).toBeWithin(1e-12, normalCdf(1))
    expect(playChance(spread, 0.4, 2)).toBeGreaterThan(playChance(spread, 0.4, 0))
  })
})
