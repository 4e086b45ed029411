import { describe, expect, test } from 'vitest'
import { unequalBallGap } from '#shared/geometry/unequal-balls.ts'
import { FIGURES } from '#shared/questions/tolerance/check-model.ts'
import type { Contributors } from '#shared/questions/tolerance/input.ts'
import { prepareTrials, toleranceCheck } from '#shared/questions/tolerance/tolerance-check.ts'
import { normalCdf, normalQuantile } from '#shared/statistics/normal.ts'
import { inches, mm } from '#shared/units/length.ts'
import { choicesOf, ordersOf } from '#tests/support/orders.ts'
import { reasonsIn } from '#tests/support/refused.ts'
import { checked, DESIGN, normal, ON_EDGES, triangular, uniform } from '#tests/support/tolerance.ts'

const SHOP: Contributors = {
  ballDiameter: normal(0.1),
  ballLotMean: normal(0.04),
  outerGrooveBottomRadius: uniform(0.1),
  innerGrooveBottomRadius: triangular(0.1),
  finishFilm: uniform(0.01),
}

describe('in the linear limit trials are the law of propagation', () => {
  const TINY = 1e-4
  test.each([
    ['on the bottom', DESIGN],
    ['on the edges', ON_EDGES],
  ])('%s: mean, deviation, percentiles and chances', (_, design) => {
    const contributors: Contributors = {
      ballDiameter: normal(TINY),
      ballLotMean: normal(TINY / 3),
      outerGrooveBottomRadius: normal(TINY, TINY / 2),
      innerGrooveBottomRadius: normal(TINY),
      finishFilm: normal(TINY / 2),
    }
    const limits = { minBallGap: mm(0.8 - TINY), maxBallGap: mm(0.8 + 5 * TINY) }
    const { figures } = checked(contributors, { design, limits, trials: 200_000 })
    for (const name of FIGURES) {
      const { rss, trials, percentiles } = figures[name]
      expect(trials.mean).toBeWithin(4 * trials.standardError.mean, rss.mean)
      expect(trials.standardDeviation).toBeWithin(4 * trials.standardError.standardDeviation, rss.standardDeviation)
      for (const { percent, value, standardError } of percentiles) {
        const expected = rss.mean + rss.standardDeviation * normalQuantile(percent / 100)
        expect(value).toBeWithin(4.5 * standardError, expected)
      }
    }
    const { rss, outcomes } = figures.ballGap
    const under = (limit: number) => normalCdf((limit - rss.mean) / rss.standardDeviation)
    expect(outcomes.tooTight.value).toBeWithin(4 * outcomes.tooTight.standardError, under(limits.minBallGap))
    expect(outcomes.tooLoose.value).toBeWithin(4 * outcomes.tooLoose.standardError, 1 - under(limits.maxBallGap))
  })
})

test('gap and play share their causes: that both fit is not the product of the chances', () => {
  const { figures, jointFits } = checked(SHOP)
  const [gap, play] = [figures.ballGap.outcomes, figures.play.outcomes]
  expect(jointFits.value - gap.fits.value * play.fits.value).toBeGreaterThan(20 * jointFits.standardError)
  expect(jointFits.value).toBeLessThanOrEqual(Math.min(gap.fits.value, play.fits.value))
  for (const { tooTight, fits, tooLoose } of [gap, play]) {
    expect(tooTight.value + fits.value + tooLoose.value).toBeWithin(1e-12, 1)
  }
})

test('every trial lies within the worst case, which for bounded contributors is what can be reached', () => {
  const contributors: Contributors = {
    ballLotMean: uniform(0.05),
    outerGrooveBottomRadius: uniform(0.1),
    innerGrooveBottomRadius: triangular(0.1),
    finishFilm: uniform(0.01),
    outOfRound: uniform(0.05),
  }
  for (const design of [DESIGN, ON_EDGES]) {
    const { figures } = checked(contributors, { design, trials: 50_000 })
    for (const name of FIGURES) {
      const { worstCase, seen, nominal } = figures[name]
      expect(seen.least).toBeGreaterThanOrEqual(worstCase.min - 1e-9)
      expect(seen.most).toBeLessThanOrEqual(worstCase.max + 1e-9)
      // With four or five causes hardly any trial comes near the corner, but some come half way.
      expect(seen.least - nominal).toBeLessThan(0.5 * (worstCase.min - nominal))
    }
  }
})

test('the worst case of the gap is the exact closure of the largest balls in the tightest groove', () => {
  const { figures, check } = checked(
    { ballDiameter: uniform(0.1), outerGrooveBottomRadius: normal(0.02), finishFilm: uniform(0.01) },
    { trials: 1000 },
  )
  const bottom = check.bearing.outerRing.grooveBottomDiameter / 2
  const gap = (off: number, diameter: number) =>
    unequalBallGap(
      mm(bottom + off),
      Array.from({ length: 12 }, () => diameter),
    )
  // Three standard deviations stand for the end of a normal distribution, and the film lies on the bottom.
  expect(figures.ballGap.worstCase.min).toBeWithin(1e-12, gap(-0.06 - 0.01, 16.1))
  expect(figures.ballGap.worstCase.max).toBeWithin(1e-12, gap(0.06 + 0.01, 15.9))
})

describe('measured balls', () => {
  const LOT = [15.9, 16.05, 16.1, 15.95].map(mm)
  const design = { ...DESIGN, balls: { count: 3, diameter: mm(16) }, bore: mm(1), ballGap: mm(0.8) }

  test('a tiny lot: every choice and every order counted out', () => {
    const { figures, check } = checked({ ballDiameter: { kind: 'measured', diameters: LOT } }, { design })
    const bottom = mm(check.bearing.outerRing.grooveBottomDiameter / 2)
    const gaps = choicesOf(LOT, 3).flatMap((choice) => ordersOf(choice).map((order) => unequalBallGap(bottom, order)))
    expect(gaps.length).toBe(24)
    const mean = gaps.reduce<number>((sum, gap) => sum + gap, 0) / 24
    const deviation = Math.sqrt(gaps.reduce<number>((sum, gap) => sum + (gap - mean) * (gap - mean), 0) / 24)
    const { trials, seen } = figures.ballGap
    expect(trials.mean).toBeWithin(4 * trials.standardError.mean, mean)
    expect(trials.standardDeviation).toBeWithin(4 * trials.standardError.standardDeviation, deviation)
    expect(seen.least).toBeWithin(1e-12, Math.min(...gaps))
    expect(seen.most).toBeWithin(1e-12, Math.max(...gaps))
  })

  test('its deviation by the law of propagation, and none to speak of where all of the lot go in', () => {
    const four = checked({ ballDiameter: { kind: 'measured', diameters: LOT } }, { design }).figures.ballGap
    expect(four.rss.standardDeviation / four.trials.standardDeviation).toBeWithin(0.02, 1)
    const three = { ballDiameter: { kind: 'measured', diameters: LOT.slice(0, 3) } } as const
    const all = checked(three, { design }).figures.play
    expect(all.rss.standardDeviation).toBe(0)
    expect(all.trials.standardDeviation).toBeLessThan(1e-9)
    // The mean of these three is 16.0167 mm: the play is twice that less, but for the square of what they differ by over the
    // pitch diameter.
    expect(all.trials.mean - all.nominal).toBeWithin((0.15 * 0.15) / 18, -2 * (48.05 / 3 - 16))
  })
})

describe('out of round by two lobes', () => {
  test('the gap hardly moves, the play does: by twice the amplitude of either groove where balls lie at its lobes', () => {
    const { figures, check } = checked({ outOfRound: normal(0, 0.1) }, { trials: 20_000 })
    const { ballGap, play } = figures
    // The nearest of twelve balls is up to 15° off a lobe, and the cosine of twice that is what counts, on the mean.
    const mean = Math.sin(Math.PI / 6) / (Math.PI / 6)
    expect(play.trials.mean - play.nominal).toBeWithin(0.004 * 0.4, -4 * 0.1 * mean)
    expect(play.seen.least - play.nominal).toBeWithin(0.01 * 0.4, -4 * 0.1)
    expect(play.rss.mean - play.nominal).toBeWithin(1e-9, -4 * 0.1)
    expect(Math.abs(ballGap.trials.mean - ballGap.nominal)).toBeLessThan(0.005)
    expect(ballGap.rss).toMatchObject({ mean: check.bearing.ballGap, standardDeviation: 0 })
  })

  test('of second order: half the amplitude moves the mean gap a quarter as far', () => {
    const moved = (amplitude: number) => {
      const { trials, nominal } = checked({ outOfRound: normal(0, amplitude) }, { trials: 20_000 }).figures.ballGap
      return trials.mean - nominal
    }
    expect(moved(0.2) / moved(0.1)).toBeWithin(0.1, 4)
  })
})

// Once a 500: the square of such a spread is 0, and was divided by.
test.each([
  ['normal', normal],
  ['uniform', uniform],
  ['triangular', triangular],
])('a %s spread of a size that nothing has does nothing, whatever it is of, with trials and without', (_, spread) => {
  const others = { outerGrooveBottomRadius: normal(0.05), innerGrooveBottomRadius: uniform(0.05) }
  const figuresOf = (contributors: Contributors, trials: { readonly trials?: number }) => {
    const result = toleranceCheck({ design: DESIGN, contributors, ...trials })
    if (!result.ok) throw new Error(JSON.stringify(result.error))
    return result.value.figures
  }
  const SIZES = [5e-324, 1e-300, 1e-160, 1e-14]
  for (const [trials, sizes] of [
    [{}, SIZES],
    [{ trials: 2_000 }, [5e-324, 1e-14]],
  ] as const) {
    const plain = figuresOf(others, trials)
    for (const name of ['ballDiameter', 'ballLotMean', 'outOfRound', 'finishFilm'] as const) {
      for (const size of sizes) {
        const figures = figuresOf({ ...others, [name]: spread(size) }, trials)
        for (const figure of FIGURES) {
          const [{ rss, trials: tried }, same] = [figures[figure], plain[figure]]
          expect(rss.mean, `${name} ${size}`).toBeWithin(1e-12, same.rss.mean)
          expect(rss.standardDeviation, `${name} ${size}`).toBeWithin(1e-12, same.rss.standardDeviation)
          // Other numbers are drawn, or the same in another order: seven standard errors of two thousand trials.
          expect(tried.mean, `${name} ${size}`).toBeWithin(
            (7 * rss.standardDeviation) / Math.sqrt(2_000),
            same.trials.mean,
          )
        }
      }
    }
  }
})

describe('aim', () => {
  const NORMAL: Contributors = { ...SHOP, outerGrooveBottomRadius: normal(0.05) }
  const { aim, check } = checked(NORMAL)

  test('its chances are those of new trials in a groove so much deeper, with the same random numbers', () => {
    for (const point of [aim.bestYield, aim.limitedRisk]) {
      if (point === undefined) return expect.fail()
      const shifted = { ...NORMAL, outerGrooveBottomRadius: normal(0.05, point.deeper) }
      const { outcomes } = checked(shifted).figures.ballGap
      for (const name of ['tooTight', 'fits', 'tooLoose'] as const) {
        // Bins are 1/512 of a standard deviation: between two of them the trials are taken as evenly spread. A bin has at
        // most 80 of the hundred thousand, so at either limit a chance is off by a few of them.
        expect(point.outcomes[name].value).toBeWithin(3e-4, outcomes[name].value)
      }
    }
  })

  test('no depth does better, and none deeper keeps the accepted chance', () => {
    const { bestYield, limitedRisk, atNominal } = aim
    expect(bestYield.outcomes.fits.value).toBeGreaterThanOrEqual(atNominal.outcomes.fits.value)
    for (const off of [-0.03, 0.03]) {
      const moved = { ...NORMAL, outerGrooveBottomRadius: normal(0.05, bestYield.deeper + off) }
      const { fits } = checked(moved).figures.ballGap.outcomes
      expect(fits.value).toBeLessThanOrEqual(bestYield.outcomes.fits.value)
    }
    expect(limitedRisk?.outcomes.tooLoose.value).toBeWithin(1e-6, check.input.overshootRisk)
    expect(limitedRisk?.deeper).toBeLessThan(bestYield.deeper)
    expect(atNominal.deeper).toBe(0)
  })

  test('a narrow scatter has a flat top: the middle of it, where the band is as far off on either side', () => {
    const { aim: narrow, check: round } = checked({ ballDiameter: normal(0.002) }, { trials: 20_000 })
    const middle = ((round.gapLimits.lows?.at(-1) ?? Number.NaN) + 2) / 2
    expect(narrow.bestYield.outcomes.fits.value).toBe(1)
    // From the gap that takes any ball to 2, over the slope.
    expect(narrow.bestYield.deeper).toBeWithin(0.003, (middle - 0.8) / 6.19)
    expect(narrow.limitedRisk).toEqual(narrow.bestYield)
  })

  test('on the edges of a groove the depth goes through the seat', () => {
    const { aim: edges, check: onEdges } = checked(
      { ballDiameter: normal(0.002) },
      { design: ON_EDGES, trials: 20_000 },
    )
    const slope = onEdges.bearing.gapPerGrooveDepth
    const [low = Number.NaN] = onEdges.gapLimits.lows?.slice(-1) ?? []
    expect(edges.bestYield.deeper).toBeWithin(0.005, ((low + 2) / 2 - 0.8) / slope)
  })

  test('balls far too small for any groove: no aim keeps the chance', () => {
    const { aim: hopeless } = checked(
      { ballLotMean: normal(0.001, -0.9) },
      { trials: 2000, limits: { maxBallGap: mm(0.01) } },
    )
    expect(hopeless.limitedRisk === undefined || hopeless.limitedRisk.deeper < 0).toBe(true)
  })
})

test('auto stops when the figures stand still, at a round of blocks', () => {
  const { trials, isConverged, figures } = checked(SHOP, { trials: 'auto', significantDigits: 1 })
  expect(isConverged).toBe(true)
  expect(trials % 100_000).toBe(0)
  expect(trials).toBeLessThan(1_000_000)
  expect(figures.ballGap.trials.standardError.mean).toBeLessThan(0.01)
})

test('in inches it is the same bearing', () => {
  const shared = { trials: 5000, seed: 3 } as const
  const one = checked(SHOP, shared)
  // Defaults are rounded in the units of the answer: the law is one of whole inputs.
  const { design, limits } = one.check.input
  const whole = checked(SHOP, { ...shared, design, limits })
  const other = checked(SHOP, { ...shared, design: { ...design, units: 'in' }, limits })
  expect(other.figures.play).toEqual(whole.figures.play)
})

describe('refused', () => {
  const reasons = (contributors: Contributors, more = {}) =>
    reasonsIn(prepareTrials({ design: DESIGN, contributors, ...more }))

  test.each<[string, Contributors, string]>([
    ['balls that are none', { ballDiameter: normal(2) }, 'contributor-too-wide /contributors/ballDiameter'],
    ['a mean that is a diameter', { ballLotMean: normal(0.1, 16) }, 'contributor-too-wide /contributors/ballLotMean'],
    [
      'a groove of no depth',
      { outerGrooveBottomRadius: uniform(4) },
      'contributor-too-wide /contributors/outerGrooveBottomRadius',
    ],
    [
      'an inner groove of no depth',
      { innerGrooveBottomRadius: uniform(7) },
      'contributor-too-wide /contributors/innerGrooveBottomRadius',
    ],
    ['lobes as large as the ring', { outOfRound: normal(1) }, 'contributor-too-wide /contributors/outOfRound'],
    [
      'too few measured',
      { ballDiameter: { kind: 'measured', diameters: [mm(16)] } },
      'too-few-measured /contributors/ballDiameter/diameters',
    ],
  ])('%s', (_, contributors, expected) => {
    expect(reasons(contributors)).toEqual([expected])
  })

  test('limits the wrong way round, and a design that cannot be', () => {
    const limits = { minBallGap: mm(1), maxBallGap: mm(0.5), minRadialInternalClearance: mm(3) }
    expect(reasons(SHOP, { limits })).toEqual([
      'limits-reversed /limits/minBallGap',
      'limits-reversed /limits/minRadialInternalClearance',
    ])
    expect(reasons(SHOP, { design: { ...DESIGN, bore: inches(3) } })).toEqual(['bore-meets-groove /design/bore'])
    expect(toleranceCheck({ design: { ...DESIGN, bore: inches(3) }, contributors: SHOP }).ok).toBe(false)
  })
})
