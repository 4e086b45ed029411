import { describe, expect, test } from 'vitest'
import type { Check } from '#shared/questions/tolerance/checked.ts'
import { type GoodLine, jointShare } from '#shared/questions/tolerance/joint-share.ts'
import { reachOf } from '#shared/questions/tolerance/reach.ts'
import { extremeBalls, farthest } from '#shared/questions/tolerance/worst-ends.ts'
import type { Distribution } from '#shared/statistics/distribution.ts'
import { normalCdf } from '#shared/statistics/normal.ts'

/** Three balls of 16 mm. */
const checkOf = (ballDiameter?: Distribution) =>
  ({
    differences: new Map(ballDiameter && [['ballDiameter', ballDiameter]]),
    bearing: { resolved: { ballDiameter: 16, input: { balls: { count: 3 } } } },
  }) as unknown as Check

describe('the worst of a contributor', () => {
  const normal: Distribution = { kind: 'normal', mean: 0.1, standardDeviation: 0.2 }

  test('three deviations of what has no ends, or as many as are asked for; its own ends; nothing where it does not differ', () => {
    const { least, most } = farthest(checkOf(normal), 'ballDiameter')
    expect([least, most].map((end) => Math.round(1e9 * end) / 1e9)).toEqual([-0.5, 0.7])
    expect(farthest(checkOf(normal), 'ballDiameter', 5).most).toBeWithin(1e-12, 1.1)
    expect(farthest(checkOf({ kind: 'uniform', mean: 0, halfWidth: 0.3 }), 'ballDiameter')).toEqual({
      least: -0.3,
      most: 0.3,
    })
    expect(farthest(checkOf(), 'ballDiameter')).toEqual({ least: 0, most: 0 })
    expect([reachOf({ least: -3, most: 2 }), reachOf({ least: -1, most: 2 })]).toEqual([3, 2])
  })

  test('every ball at its end, the larger the tighter', () => {
    const spread = checkOf({ kind: 'triangular', mean: 0, halfWidth: 0.25 })
    expect(extremeBalls(spread, 'tight')).toEqual([16.25, 16.25, 16.25])
    expect(extremeBalls(spread, 'loose')).toEqual([15.75, 15.75, 15.75])
  })

  test('of a list as many of the largest or of the smallest as go in, by size', () => {
    const lot = checkOf({ kind: 'discrete', values: [0.25, -0.5, 0, 0.5, -0.25] })
    expect(extremeBalls(lot, 'tight')).toEqual([16.5, 16.25, 16])
    expect(extremeBalls(lot, 'loose')).toEqual([15.5, 15.75, 16])
  })
})

describe('the share that has two sums between their ends, where both are all but one', () => {
  const REACH = 6
  const BINS = 6000
  const at = (edge: number) => -REACH + (2 * REACH * edge) / BINS
  const shares = Float64Array.from({ length: BINS }, (_, bin) => normalCdf(at(bin + 1)) - normalCdf(at(bin)))
  const line = (lows: readonly number[], high: number): GoodLine => ({ lows, high, shares, reach: REACH })
  const between = (low: number, high: number) => Math.max(0, normalCdf(high) - normalCdf(low))
  /** The second is the first times a lean. */
  const joint = (one: GoodLine, other: GoodLine, lean: number, own = 0) =>
    jointShare(
      [],
      { variances: [0, 0], covariance: 0 },
      { variances: [1, lean * lean + own * own], covariance: lean },
      [one, other],
    )

  test.each([
    ['the first decides below, the second above', line([-1], 2), line([-0.7], 0.8), 0.5, between(-1, 1.6)],
    ['the second alone', line([-3], 3), line([-0.2], 0.1), 0.5, between(-0.4, 0.2)],
    ['one falls as the other rises', line([-1], 2), line([-0.5], 0.8), -0.5, between(-1, 1)],
    ['nothing is in both', line([1], 2), line([-2], -1), 1, 0],
    ['all', line([-9], 9), line([-9], 9), 1, 1],
    ['a lower end that is one of two', line([-1, 0.5], 2), line([-9], 9), 1, (between(-1, 2) + between(0.5, 2)) / 2],
  ])('%s', (_what, one, other, lean, share) => {
    const found = joint(one, other, lean)
    expect(found?.value).toBeWithin(1e-6, share)
    expect(found?.standardError).toBeWithin(1e-12, 0)
  })

  test('with a little of its own the second is spread by it: half of what that changes is the error', () => {
    const [one, other] = [line([-9], 9), line([0], 9)]
    const own = 0.04
    const found = joint(one, line([1], 9), 1, own)
    expect(found?.value).toBeWithin(1e-5, 1 - normalCdf(1 / Math.hypot(1, own)))
    const without = joint(one, line([1], 9), 1)
    expect(found?.standardError).toBeWithin(
      1e-9,
      Math.abs((found?.value ?? Number.NaN) - (without?.value ?? Number.NaN)) / 2,
    )
    // about the middle it makes no difference
    expect(joint(one, other, 1, own)?.value).toBeWithin(1e-6, 0.5)
  })

  test('two sums with more of their own go the other way: Sheppard, 1/4 + asin ρ / 2π', () => {
    const lean = 0.8
    const found = jointShare([], { variances: [1, 1], covariance: lean }, { variances: [1, 1], covariance: lean }, [
      line([0], 6),
      line([0], 6),
    ])
    expect(found?.value).toBeWithin(1e-6, 1 / 4 + Math.asin(lean) / (2 * Math.PI))
    expect(found?.standardError).toBe(0)
  })
})
