import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { emptyCircle, halfPlanes, inscribeCircle } from '#shared/geometry/inscribed-circle.ts'
import { normalCdf } from '#shared/statistics/normal.ts'
import { PLAY_LOSS } from '#shared/statistics/play-loss.ts'
import { playMoments, playQuantile, unevenLoss } from '#shared/statistics/play-of-random-balls.ts'
import { mm } from '#shared/units/length.ts'
import { normals, uniforms } from '#tests/support/chance.ts'
import { between } from '#tests/support/inputs.ts'
import { bindingChance, chancePlayBelow } from '#tests/support/play-chance.ts'

const count = fc.integer({ min: 3, max: 200 })

/** Trials of the linear program with numbers from another generator than the table's. */
function losses(ballCount: number, trials: number): readonly number[] {
  const normal = normals(uniforms(ballCount))
  const planes = halfPlanes(ballCount)
  for (let ball = 0; ball < ballCount; ball++) {
    planes.normalX[ball] = Math.cos((2 * Math.PI * ball) / ballCount)
    planes.normalY[ball] = Math.sin((2 * Math.PI * ball) / ballCount)
  }
  const circle = emptyCircle()
  return Array.from({ length: trials }, () => {
    for (let ball = 0; ball < ballCount; ball++) planes.reach[ball] = -normal()
    inscribeCircle(planes, circle, 1e-13)
    return -2 * circle.radius
  })
}

describe('exact cases', () => {
  test('three balls share the ring alike: play is normal about the nominal, with 2 σ / √3', () => {
    fc.assert(
      fc.property(between(-1, 1), between(0.01, 0.5), (play, scatter) => {
        const expected = normalCdf(-play / ((2 * scatter) / Math.sqrt(3)))
        expect(bindingChance({ play: mm(play), scatter: mm(scatter), ballCount: 3 })).toBeWithin(1e-6, expected)
      }),
    )
  })

  test('four balls hold the ring by the larger of two opposite pairs: Φ(w / √2)²', () => {
    for (const loss of [-2, -1, 0, 0.5, 1, 2, 3, 4]) {
      const chance = chancePlayBelow({ play: mm(loss), scatter: mm(1), ballCount: 4, limit: mm(0) })
      expect(chance).toBeWithin(0.001, 1 - normalCdf(loss / Math.SQRT2) ** 2)
    }
    // the larger of two normal numbers has its mean at σ / √π
    expect(playMoments({ play: mm(0), scatter: mm(1), ballCount: 4 }).mean).toBeWithin(
      0.002,
      -Math.SQRT2 / Math.sqrt(Math.PI),
    )
  })
})

// V = W − 2 z̄, and V is independent of z̄: its variance is that of W less 4 / n.
test('what unequal balls take beyond their mean: nothing of three, of four the larger of two pairs less the mean', () => {
  expect(unevenLoss(3)).toEqual({ mean: 0, variance: 0, skewness: 0 })
  const { mean, variance } = unevenLoss(4)
  expect(mean).toBeWithin(0.002, Math.SQRT2 / Math.sqrt(Math.PI))
  expect(variance).toBeWithin(0.01, 2 * (1 - 1 / Math.PI) - 1)
  // the more balls there are, the more the tallest of them take
  const means = [4, 8, 16, 32, 64, 128].map((ballCount) => unevenLoss(ballCount).mean)
  expect(means).toEqual(means.toSorted((one, other) => one - other))
})

describe('against trials', () => {
  test.each([5, 6, 9, 14, 23, 33, 45, 70, 110, 180])('%i balls, of a row or between two', (ballCount) => {
    const trials = 20_000
    const drawn = losses(ballCount, trials)
    const ranked = [...drawn].sort((one, other) => one - other)
    // what the function states, and four standard errors
    for (const part of [0.02, 0.1, 0.3, 0.5, 0.7, 0.9, 0.98]) {
      const loss = ranked[Math.floor(part * trials)] ?? Number.NaN
      const chance = 1 - chancePlayBelow({ play: mm(loss), scatter: mm(1), ballCount, limit: mm(0) })
      expect(chance).toBeWithin(0.002 + 4 * Math.sqrt((part * (1 - part)) / trials), part)
    }
    const mean = drawn.reduce((sum, loss) => sum + loss, 0) / trials
    const variance = drawn.reduce((sum, loss) => sum + (loss - mean) ** 2, 0) / trials
    const moments = playMoments({ play: mm(0), scatter: mm(1), ballCount })
    expect(moments.mean).toBeWithin(0.003 + 4 * Math.sqrt(variance / trials), -mean)
    expect(moments.standardDeviation).toBeWithin(0.003 + 4 * Math.sqrt(variance / trials), Math.sqrt(variance))
  })
})

describe('laws', () => {
  test('quantile and chance are the way there and back', () => {
    fc.assert(
      fc.property(
        count,
        between(-1, 1),
        between(0.001, 0.5),
        between(1e-6, 1 - 1e-6),
        (ballCount, play, scatter, probability) => {
          const balls = { play: mm(play), scatter: mm(scatter), ballCount }
          const limit = playQuantile({ ...balls, probability })
          expect(chancePlayBelow({ ...balls, limit })).toBeWithin(1e-9, probability)
        },
      ),
    )
  })

  test('more play binds less, and more scatter costs play at every quantile up to the middle', () => {
    fc.assert(
      fc.property(count, between(0, 1), between(0.01, 0.3), between(0.01, 0.5), (ballCount, play, scatter, more) => {
        const balls = { play: mm(play), scatter: mm(scatter), ballCount }
        const chance = bindingChance(balls)
        expect(bindingChance({ ...balls, play: mm(play + more) })).toBeLessThanOrEqual(chance)
        const rougher = { ...balls, scatter: mm(scatter + more) }
        expect(playQuantile({ ...rougher, probability: more })).toBeLessThanOrEqual(
          playQuantile({ ...balls, probability: more }) + 1e-9,
        )
      }),
    )
  })

  test('the table rises with the count of balls of one parity, and stays in order between its ends', () => {
    PLAY_LOSS.forEach(([ballCount, middle = Number.NaN], row) => {
      const [before, beforeMiddle = Number.NaN] = PLAY_LOSS[row - 1] ?? [0, -1]
      expect(ballCount).toBeGreaterThan(before)
      expect(middle).toBeGreaterThan(beforeMiddle)
    })
  })

  test('balls without scatter have the play of the design', () => {
    const balls = { play: mm(0.3), scatter: mm(0), ballCount: 14 }
    expect(bindingChance(balls)).toBe(0)
    expect(bindingChance({ ...balls, play: mm(-0.1) })).toBe(1)
    expect(playQuantile({ ...balls, probability: 0.1 })).toBe(0.3)
    expect(playMoments(balls)).toEqual({ mean: 0.3, standardDeviation: 0 })
  })

  test('ranges', () => {
    const balls = { play: mm(0.3), scatter: mm(0.1), ballCount: 14 }
    expect(() => bindingChance({ ...balls, ballCount: 2 })).toThrow(RangeError)
    expect(() => bindingChance({ ...balls, ballCount: 201 })).toThrow(RangeError)
    expect(() => bindingChance({ ...balls, scatter: mm(-0.1) })).toThrow(RangeError)
    expect(() => playQuantile({ ...balls, probability: 1 })).toThrow(RangeError)
  })
})

/*
 * README's bearing, 14 balls with play 0.28 mm. A linear program of another program, with trials of its own, found at
 * a scatter of 0.1 mm 28 % bound, mean play 0.045 mm, 88 % below 0.14 mm; at 0.15 mm 71 % bound.
 */
test('the bearing of the README', () => {
  const balls = { play: mm(0.28), scatter: mm(0.1), ballCount: 14 }
  expect(bindingChance(balls)).toBeWithin(0.005, 0.28)
  expect(playMoments(balls).mean).toBeWithin(0.0005, 0.045)
  expect(chancePlayBelow({ ...balls, limit: mm(0.14) })).toBeWithin(0.005, 0.88)
  expect(bindingChance({ ...balls, scatter: mm(0.15) })).toBeWithin(0.005, 0.71)
})
