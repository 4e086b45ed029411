import { describe, expect, test } from 'vitest'
import { ballGap } from '#shared/geometry/ring-of-balls.ts'
import { mm } from '#shared/units/length.ts'
import { ask, faultsIn, post, problemIn } from '#tests/support/ask.ts'
import { sharedApp } from '#tests/support/started-app.ts'

/** An invented bearing. Its last ball needs 0.31 mm of gap, and its groove measures 77.14 mm across the bottoms. */
const DESIGN = {
  units: 'mm',
  balls: { count: 14, diameter: 14, material: 'glass', standardDeviation: 0.1 },
  bore: 10,
  ballGap: 0.7,
  maxBallGap: 2.31,
}

const asked = async (body: object) =>
  post(`${await sharedApp()}/v1/fit-correction`, { design: DESIGN, ring: 'outer', ...body })

interface Estimate {
  readonly value: number
  readonly standardUncertainty: number
  readonly interval95: { readonly min: number; readonly max: number }
}
interface Answer {
  readonly arrangement: string
  readonly input: Record<string, unknown>
  readonly assumed: readonly { readonly path: string; readonly value: unknown; readonly standing: string }[]
  readonly summary: string
  readonly action: string
  readonly state: string
  readonly reason?: string
  readonly probability: { readonly tooTight: number; readonly inBand: number; readonly tooDeep: number }
  readonly ballGap: Estimate
  readonly ballDiameter: Estimate
  readonly pitchRadius: Estimate
  readonly radialInternalClearance: Estimate
  readonly remaining: { readonly radial: number; readonly diametral: number }
  readonly nextStep?: {
    readonly with: string
    readonly radial: number
    readonly diametral: number
    readonly until: Record<string, number>
    readonly isSizeKnown: boolean
    readonly strokes?: number
    readonly overshootProbability: number
  }
  readonly nextReading?: { readonly kind: string; readonly why: string; readonly message: string }
  readonly askedReading?: { readonly kind: string; readonly ballsLeftOut?: number }
  readonly agreement: { readonly agrees: boolean; readonly disagreements: readonly { readonly path: string }[] }
  readonly learnt: { readonly removalPerStroke?: { readonly radial: number } }
  readonly rescue?: readonly { readonly option: string; readonly possible: boolean; readonly [name: string]: unknown }[]
  readonly warnings: readonly { readonly code: string; readonly path: string; readonly message: string }[]
  readonly sources: readonly { readonly id: string }[]
}

async function answered(body: object): Promise<Answer> {
  const answer = await asked(body)
  expect(answer.status, answer.text).toBe(200)
  return JSON.parse(answer.text)
}

/** The circle inside the balls is 28 mm smaller than the groove: plugs for the gap at assembly, and for the widest. */
const GO = { kind: 'plug', diameter: 49.05, result: 'enters' }
const NO_GO = { kind: 'plug', diameter: 49.55, result: 'refuses' }
const gap = (value: number) => ({ kind: 'ball-gap', value, graduation: 0.5 })
const opening = (value: number, ballsLeftOut?: number) => ({
  kind: 'last-ball-opening',
  value,
  graduation: 0.5,
  ...(ballsLeftOut === undefined ? {} : { ballsLeftOut }),
})

describe('cut, measure or stop', () => {
  test.each([
    ['nothing', []],
    ['a row of balls alone', [{ kind: 'ball-row', count: 14, value: 196 }]],
  ])('from an unread groove, %s: measure, and no verdict', async (_, readings) => {
    const answer = await answered({ readings })
    expect(answer).toMatchObject({ action: 'measure', state: 'unread', nextReading: { why: 'groove-unread' } })
    expect(answer.summary).toMatch(/^Do not cut yet: the groove has not been measured\./)
  })

  test('a go plug that enters, alone: not too deep, and a question that decides', async () => {
    const answer = await answered({ readings: [GO] })
    expect(answer.action).toBe('measure')
    expect(answer.state).not.toBe('too-deep')
    expect(answer).not.toHaveProperty('rescue')
  })

  test('go enters, no-go refuses, and the last ball goes in: nothing more is cut', async () => {
    const answer = await answered({ readings: [GO, NO_GO, { kind: 'last-ball-in' }, gap(1)] })
    expect(answer).toMatchObject({ action: 'stop', reason: 'in-band', state: 'in-band' })
    expect(answer.summary).toMatch(/^Stop: the ball gap is in its band/)
  })

  test('a bare refusal: measure first, and not the gap that there is not', async () => {
    const answer = await answered({ readings: [{ kind: 'last-ball-refused' }] })
    expect(answer).toMatchObject({
      action: 'measure',
      nextReading: { kind: 'last-ball-opening', why: 'refusal-has-no-figure' },
    })
  })

  test('never in band against the last ball, whatever the caliper says', async () => {
    const across = { kind: 'groove-bottom-diameter', value: 77.3, standardUncertainty: 0.01 }
    const answer = await answered({ readings: [across, { kind: 'last-ball-refused' }] })
    expect(answer.reason).not.toBe('in-band')
    expect(answer.state).not.toBe('in-band')
  })

  test('an opening of one ball: a cut within the risk, short of the aim, that ends so much deeper than now', async () => {
    const { nextStep, remaining, summary, state } = await answered({ readings: [opening(12)] })
    if (nextStep === undefined) throw new Error('a cut was expected')
    expect(state).toBe('more-to-remove')
    expect(nextStep.radial).toBeGreaterThan(0)
    expect(nextStep.radial).toBeLessThanOrEqual(remaining.radial)
    expect(nextStep.diametral).toBeWithin(1e-9, 2 * nextStep.radial)
    expect(nextStep.overshootProbability).toBeLessThanOrEqual(0.05)
    // The opening tells where the balls stand; how large they are, and so the groove, it does not tell.
    expect(nextStep.isSizeKnown).toBe(false)
    expect(summary).toMatch(new RegExp(`^(Cut|Sand) ${nextStep.radial.toFixed(2).replace(/0$/, '')} mm of depth`))
    expect(summary).not.toContain(nextStep.until['grooveBottomDiameter']?.toFixed(2))
    expect(summary).toMatch(/Then try the last ball and measure again \(.+ chance of ending too deep\)\.$/)
  })

  test('with a caliper on the groove the cut ends at a size to measure', async () => {
    const bottoms = { kind: 'groove-bottom-diameter', value: 76.5 }
    const { nextStep, summary } = await answered({ readings: [opening(12), bottoms] })
    expect(nextStep?.isSizeKnown).toBe(true)
    expect(summary).toContain(`until the groove measures ${nextStep?.until['grooveBottomDiameter']?.toFixed(2)} mm`)
  })

  test('two balls left out, for one will not do: readable, and a cut', async () => {
    // The other twelve of 14 mm leave 12 mm: the centres of the first and the last are 26 mm apart, those of neighbours 14.
    const answer = await answered({ readings: [opening(12, 2)] })
    expect(answer).toMatchObject({ action: 'cut', state: 'more-to-remove' })
    expect(answer.ballGap.value).toBeLessThan(0)
  })

  test('a groove that is far too deep: every option, with its figures and how it runs', async () => {
    const {
      state,
      rescue = [],
      summary,
    } = await answered({
      readings: [gap(3.5)],
      ballsOnHand: [
        { diameter: 14.2, quantity: 20 },
        { diameter: 16, quantity: 20 },
      ],
    })
    expect(state).toBe('too-deep')
    expect(summary).toMatch(/`rescue`/)
    expect(rescue.map(({ option }) => option).toSorted()).toEqual([
      'accept',
      'balls-on-hand',
      'larger-balls',
      'lining',
      'mixed-balls',
      'new-blank',
      'one-ball-more',
      'spacers',
    ])
    for (const each of rescue.filter(({ possible }) => possible)) {
      expect(each['livingWithIt'], each.option).toMatch(/\.$/)
      expect(each['ballGap'], each.option).toEqual(expect.any(Number))
    }
    // Three figures, each rounded for itself, would not agree.
    expect(rescue.find(({ option }) => option === 'accept')?.['message']).toMatch(
      /^Leave it: the ball gap of [\d.]+ mm is more than the [\d.]+ mm allowed\. Turn the inner ring's land/,
    )
    // One of 16 mm among those of 14 mm stands 2 mm further in: it is not offered.
    const mixed = rescue.find(({ option }) => option === 'mixed-balls')
    expect(mixed).toMatchObject({ possible: true, diameter: 14.2, innerRing: { landGap: expect.any(Number) } })
  })

  test('a reading of another groove is named, and warned of', async () => {
    const { agreement, warnings, summary } = await answered({
      readings: [gap(1), { kind: 'groove-bottom-diameter', value: 78.74 }],
    })
    expect(agreement.agrees).toBe(false)
    expect(agreement.disagreements.map(({ path }) => path)).toContain('/readings/1')
    expect(warnings).toContainEqual(expect.objectContaining({ code: 'reading-disagrees', path: '/readings/1' }))
    expect(summary).toMatch(/^Do not cut\. Check the readings: they do not fit/)
  })

  test('an opening that a ball goes through is no cut: it is checked, or read another way', async () => {
    const { action, nextReading, askedReading, warnings, summary } = await answered({ readings: [opening(17)] })
    expect({ action, why: nextReading?.why }).toEqual({ action: 'measure', why: 'readings-disagree' })
    expect(summary).toMatch(
      /^Do not cut\. Check the reading: it .* Try the last ball: if it goes in, .* If the last ball does stay out, /,
    )
    expect(warnings[0]?.message).toMatch(/does not fit the plan of this bearing\. Likely causes: .*goes in after all/)
    // The likeliest is what the form opens at.
    expect(askedReading).toEqual({ kind: 'ball-gap' })
  })

  test('an opening that no ball stays out of is refused with what to do', async () => {
    const wide = await asked({ readings: [opening(21)] })
    expect(wide.status).toBe(422)
    expect(wide.text).toContain(
      'Do not cut. An opening of 21 mm is wider than the last ball, which must go in there: put it in',
    )
    // Cut in between, and the cut not entered.
    const cut = await asked({ readings: [opening(6), gap(3)] })
    expect(cut.status).toBe(422)
    expect(cut.text).toContain(
      'The last ball cannot both stay out and be in. If you cut or sanded between them, that is',
    )
    // No cut makes a groove shallower.
    expect((await asked({ readings: [gap(3), opening(6)] })).text).not.toContain('If you cut')
  })

  test('a reading alone is one reading, and readings of before a cut are to be removed', async () => {
    const alone = await answered({ readings: [opening(17)] })
    expect(alone.summary).not.toContain('If you cut')
    const several = await answered({ readings: [opening(12), { kind: 'groove-bottom-diameter', value: 79 }] })
    expect(several.summary).toMatch(
      /^Do not cut\. Check the readings: they do .* If you cut or sanded between them, .*`earlier`/,
    )
    // What was read of the outer ring holds, however often the inner one is cut.
    const ofBoth = await answered({
      ring: 'inner',
      readings: [gap(1.6), { kind: 'groove-bottom-diameter', value: 52 }],
    })
    expect(ofBoth.summary).not.toContain('If you cut')
  })

  test('a word on the last ball that a cut explains is told so', async () => {
    const { agreement, summary } = await answered({ readings: [opening(12.2), { kind: 'last-ball-in' }] })
    expect(agreement.agrees).toBe(false)
    expect(summary).toMatch(/^Do not cut\. .* If you cut or sanded between them, that is the cause/)
  })

  test('a row that does not fit is measured again, and no groove is read by other balls', async () => {
    const row = { kind: 'ball-row', count: 7, value: 104 }
    for (const readings of [[row], [opening(12), row]]) {
      const { action, askedReading, summary } = await answered({ readings })
      expect({ action, kind: askedReading?.kind }).toEqual({ action: 'measure', kind: 'ball-row' })
      expect(summary).toMatch(/Measure the row again, and count the balls in it\..*`\/v1\/ball-selection`/)
      expect(summary).not.toMatch(/opening between|Leave out/)
    }
  })

  test('the inner ring takes the gap as the outer ring took it', async () => {
    for (const value of [3.5, 4.5]) {
      const outer = await answered({ readings: [gap(value)] })
      expect({ state: outer.state, agrees: outer.agreement.agrees }).toEqual({ state: 'too-deep', agrees: true })
      const inner = await answered({ ring: 'inner', readings: [gap(value), { kind: 'radial-play', value: 0.1 }] })
      expect(inner.agreement.agrees).toBe(true)
    }
    // What the outer ring doubts the inner one doubts as well.
    const { agreement } = await answered({ ring: 'inner', readings: [gap(15)] })
    expect(agreement.agrees).toBe(false)
  })

  test('a gap as wide as a ball is more likely the opening for one that is out', async () => {
    const { askedReading, warnings, summary } = await answered({ readings: [gap(15)] })
    expect(summary).toMatch(/^Do not cut\. Check the reading: .* Count the balls: if one is still out/)
    expect(summary).not.toContain('rescue')
    expect(warnings[0]?.message).toMatch(/Likely causes: a ball that was left out/)
    expect(askedReading).toEqual({ kind: 'last-ball-opening', ballsLeftOut: 1 })
  })

  test('an opening that is too narrow was not of a ball that goes in', async () => {
    const { askedReading, warnings } = await answered({
      readings: [opening(10), { kind: 'groove-bottom-diameter', value: 77.6 }],
    })
    expect(warnings[0]?.message).toMatch(/does not fit the other readings\. Likely causes: balls not pushed together/)
    expect(askedReading?.kind).not.toBe('ball-gap')
  })

  test('cuts heavier than asked are learnt from the states before', async () => {
    const earlier = [
      { readings: [opening(9)], thenRemoved: { with: 'sharp-tool', radial: 0.4 } },
      { readings: [opening(12)], thenRemoved: { with: 'sharp-tool', radial: 0.2 } },
    ]
    // 6 mm of opening in 1 mm of depth, and a little more: 0.6 mm asked for took off about 0.8.
    const heavy = await answered({ readings: [opening(14)], earlier })
    const light = await answered({ readings: [opening(11)], earlier })
    const bias = ({ learnt }: Answer) => (learnt as unknown as { toolBias: Estimate }).toolBias.value
    expect(bias(heavy)).toBeGreaterThan(bias(light))
  })

  test('counted strokes: the abrasive comes in whole strokes, rounded down', async () => {
    const { nextStep, learnt } = await answered({
      readings: [opening(13.5)],
      removalHistory: [
        { strokes: 40, ballGapBefore: -0.6, ballGapAfter: -0.1 },
        { strokes: 30, ballGapBefore: -0.1, ballGapAfter: 0.28 },
      ],
    })
    if (nextStep?.strokes === undefined) throw new Error('strokes were expected')
    // 0.88 mm of gap in 70 strokes, 2 · 14 sin(π/14) = 6.23 times the depth that came off.
    expect(learnt.removalPerStroke?.radial).toBeWithin(0.0003, 0.88 / 70 / 6.23)
    // Both are rounded to a millionth of a millimetre, one of them before it is multiplied.
    const rounding = (nextStep.strokes + 1) * 0.5e-6
    expect(nextStep.radial).toBeWithin(rounding, nextStep.strokes * (learnt.removalPerStroke?.radial ?? Number.NaN))
  })
})

describe('what once cost makers their rings', () => {
  test('a caliper at the nominal size, without a word on the last ball: no cut, but a question', async () => {
    const answer = await answered({ readings: [{ kind: 'groove-bottom-diameter', value: 77.2 }] })
    expect(answer).toMatchObject({ action: 'measure', nextReading: { why: 'no-word-on-last-ball' } })
  })

  test('the same figure read again on the same rule says nothing new', async () => {
    const [once, thrice] = await Promise.all([
      answered({ readings: [gap(1)] }),
      answered({ readings: [gap(1), gap(1), gap(1)] }),
    ])
    expect(thrice.ballGap).toEqual(once.ballGap)
    expect(thrice.probability).toEqual(once.probability)
  })

  test('refused again and again: one ball more is left out each time, and not for ever', async () => {
    const refused = (times: number) => Array.from({ length: times }, () => ({ kind: 'last-ball-refused' }))
    for (const times of [1, 2, 3])
      expect((await answered({ readings: refused(times) })).nextReading).toMatchObject({
        kind: 'last-ball-opening',
        ballsLeftOut: times,
      })
    expect(await answered({ readings: refused(12) })).toMatchObject({ action: 'stop', reason: 'cannot-be-told' })
  })

  test('an inner ring by caliper alone: its play is not known that well, and a plug is asked for', async () => {
    const answer = await answered({ ring: 'inner', readings: [{ kind: 'groove-bottom-diameter', value: 49.4 }] })
    expect(answer.radialInternalClearance.standardUncertainty).toBeGreaterThan(0.35)
    expect(answer).toMatchObject({ action: 'measure', nextReading: { kind: 'plug' } })
  })

  test('one ball of 16 mm among 14 mm is refused; a gap of 62 % of a ball is not one to live with', async () => {
    const { rescue = [] } = await answered({ readings: [gap(3.5)], ballsOnHand: [{ diameter: 16, quantity: 1 }] })
    const mixed = rescue.find(({ option }) => option === 'mixed-balls')
    expect(mixed).toMatchObject({ possible: false, obstacle: 'rides-on-edges' })
    const { rescue: tooFar = [] } = await answered({ readings: [gap(8.7)] })
    expect(tooFar[0]?.possible).toBe(true)
    const accept = tooFar.find(({ option }) => option === 'accept')
    expect(accept).toMatchObject({ possible: false, life: 'ball-short' })
  })
})

describe('the other ring, and the other arrangements', () => {
  test.each([
    ['radial', {}],
    ['roller', { material: undefined }],
    ['caged', { count: 9 }],
  ])('%s: an inner ring with too much play: typed options, each with its figures', async (arrangement, balls) => {
    const { summary, rescue = [] } = await answered({
      design: { units: 'mm', arrangement, balls: { ...DESIGN.balls, ...balls }, bore: 10 },
      ring: 'inner',
      readings: [{ kind: 'radial-play', value: 0.9 }],
    })
    expect(summary).toMatch(/`rescue`/)
    const accept = rescue.find(({ option }) => option === 'accept-play')
    expect(accept).toMatchObject({ possible: true, overMaxPlay: expect.any(Number) })
    for (const each of rescue.filter(({ possible }) => possible)) {
      expect(each['livingWithIt'], each.option).toMatch(/\.$/)
      expect(each['radialInternalClearance'], each.option).toEqual(expect.any(Number))
    }
    const sizes = arrangement === 'roller' ? ['trackDiameter'] : ['grooveBottomDiameter', 'landDiameter', 'landGap']
    const anew = rescue.find(({ option }) => option === 'new-inner-ring')
    expect(Object.keys(anew?.['innerRing'] ?? {}).sort()).toEqual(sizes)
  })

  test('an inner ring that binds: measure; its play: a cut in words of the play, and its mating faces', async () => {
    expect(await answered({ ring: 'inner', readings: [{ kind: 'binds' }] })).toMatchObject({
      action: 'measure',
      nextReading: { kind: 'groove-bottom-diameter' },
    })
    // What the outer ring says does not show how much an inner one must lose.
    const gap = { kind: 'ball-gap', value: 1 }
    expect(await answered({ ring: 'inner', readings: [gap, { kind: 'binds' }] })).toMatchObject({
      action: 'measure',
      nextReading: { kind: 'groove-bottom-diameter', why: 'refusal-has-no-figure' },
    })
    const play = await answered({ ring: 'inner', readings: [{ kind: 'radial-play', value: 0.05 }] })
    expect(play).not.toHaveProperty('ballGap')
    expect(play.radialInternalClearance.value).toBeWithin(0.05, 0.05)
    expect(play.summary).toMatch(/on the inner ring .* its groove measures .* Then measure the play again/)
  })

  test('a plug reads the circle that the inner ring runs in', async () => {
    const before = await answered({ ring: 'inner', readings: [{ kind: 'groove-bottom-diameter', value: 48.9 }] })
    const after = await answered({
      ring: 'inner',
      readings: [
        { kind: 'groove-bottom-diameter', value: 48.9 },
        { kind: 'plug', diameter: 49.2, result: 'snug' },
      ],
    })
    const spread = ({ radialInternalClearance }: Answer) => radialInternalClearance.standardUncertainty
    expect(spread(after)).toBeLessThan(spread(before))
  })

  test.each([
    ['roller', { units: 'mm', balls: { count: 14, diameter: 12 }, bore: 16 }, 'outer', 'trackDiameter', /groove|ball/],
    [
      'thrust',
      { units: 'mm', balls: { count: 14, diameter: 14 }, bore: 10 },
      undefined,
      'grooveCircleDiameter',
      /ring|land/,
    ],
  ])('%s: a cut until its own size, in its own words', async (arrangement, design, ring, size, foreign) => {
    const answer = await answered({ design: { ...design, arrangement }, ring, readings: [opening(10.5)] })
    expect(answer).toMatchObject({ arrangement, action: 'cut', [size]: { value: expect.any(Number) } })
    expect(Object.keys(answer.nextStep?.until ?? {})).toEqual([size])
    expect(answer.summary).not.toMatch(foreign)
  })

  test('caged: the inner ring alone, by its play', async () => {
    const design = { units: 'mm', arrangement: 'caged', balls: { count: 9, diameter: 16, material: 'glass' }, bore: 20 }
    const answer = await answered({ design, ring: 'inner', readings: [{ kind: 'radial-play', value: 0.05 }] })
    expect(answer).toMatchObject({ arrangement: 'caged', action: 'cut' })
    expect(answer).not.toHaveProperty('ballGap')
    const outer = await asked({ design, ring: 'outer', readings: [{ kind: 'groove-bottom-diameter', value: 98 }] })
    expect(problemIn(outer, 422).errors?.map(({ path }) => path)).toEqual(['/ring'])
  })
})

describe('one shape', () => {
  test('the input is whole, what was left open is said, and sent again it gives the same answer', async () => {
    const body = {
      readings: [
        { kind: 'last-ball-opening', value: 12 },
        { kind: 'plug', diameter: 48, result: 'enters' },
      ],
      earlier: [{ readings: [{ kind: 'last-ball-refused' }], thenRemoved: { with: 'sharp-tool', radial: 0.4 } }],
    }
    const { assumed, ...answer } = await answered(body)
    expect(answer.input).toMatchObject({
      ring: 'outer',
      readings: [
        { kind: 'last-ball-opening', ballsLeftOut: 1, graduation: 0.5, standardUncertainty: 0.15 },
        { kind: 'plug', graduation: 0, standardUncertainty: 0.05 },
      ],
      target: { ballGap: 0.7, minBallGap: 0, maxBallGap: 2.31, overshootRisk: 0.05, finishAllowance: 0 },
      tools: { sharpTool: { absolute: 0.2, relative: 0.1 }, abrasive: { absolute: 0.05, relative: 0.05 } },
    })
    const paths = assumed.map(({ path }) => path)
    for (const path of [
      '/design/finishAllowance',
      '/readings/0/ballsLeftOut',
      '/readings/0/graduation',
      '/readings/1/standardUncertainty',
      '/target/overshootRisk',
      '/tools/sharpTool/relative',
      '/tools',
    ]) {
      expect(paths).toContain(path)
    }
    const { assumed: _, ...again } = await answered(answer.input)
    expect(again).toEqual(answer)
    expect(answer.sources.map(({ id }) => id)).toContain('jcgm-101')
  })

  test('inches give what millimetres give', async () => {
    const inches = {
      design: {
        units: 'in',
        balls: { count: 14, diameter: '14 mm', material: 'glass', standardDeviation: '0.1 mm' },
        bore: '10 mm',
        ballGap: '0.7 mm',
        maxBallGap: '2.31 mm',
        outerRing: { roundOutsideDiameterTo: null },
      },
      readings: [{ kind: 'last-ball-opening', value: '12 mm', graduation: '0.5 mm', standardUncertainty: '0.15 mm' }],
    }
    const [one, other] = [
      await answered(inches),
      await answered({ readings: [opening(12)].map((each) => ({ ...each, standardUncertainty: 0.15 })) }),
    ]
    expect(one.remaining.radial * 25.4).toBeWithin(1e-6, other.remaining.radial)
    expect((one.nextStep?.radial ?? 0) * 25.4).toBeWithin(1e-6, other.nextStep?.radial ?? Number.NaN)
  })
})

describe('what has no answer', () => {
  test('figures of another bearing, and a reading of the other ring, are a 422 with their places', async () => {
    const impossible = await asked({ readings: [gap(60)] })
    expect(problemIn(impossible, 422).errors?.map(({ path }) => path)).toEqual(['/readings'])
    const other = await asked({ readings: [gap(1), { kind: 'binds' }] })
    expect(problemIn(other, 422).errors?.map(({ path }) => path)).toEqual(['/readings/1'])
    const left = await asked({ readings: [opening(3, 12)] })
    expect(problemIn(left, 422).errors?.map(({ path }) => path)).toEqual(['/readings/0/ballsLeftOut'])
  })

  test('a design whose whole input could not be sent again, found by the fuzzing', async () => {
    const balls = { count: 14, diameter: 12 }
    const design = { units: 'mm', arrangement: 'roller', balls, bore: 16, width: 0.001 }
    expect(problemIn(await asked({ design, readings: [] }), 422).errors?.[0]?.path).toMatch(/^\/design\//)
  })

  test('too many readings, an unknown kind, a target of the other ring: 400, and the next request is served', async () => {
    const many = Array.from({ length: 51 }, () => ({ kind: 'last-ball-refused' }))
    expect(faultsIn(await asked({ readings: many })).join()).toMatch(/\/readings/)
    expect(faultsIn(await asked({ readings: [{ kind: 'guess' }] })).join()).toMatch(/\/readings\/0/)
    const [one] = many
    const earlier = Array.from({ length: 10 }, () => ({
      readings: [one, one, one, one, one],
      thenRemoved: { with: 'abrasive', radial: 0.1 },
    }))
    expect(faultsIn(await asked({ readings: [one], earlier }))).toEqual([
      '/earlier: the request has 51 readings, those in `readings` included: give at most 50',
    ])
    const wrong = await asked({ readings: [one], target: { radialInternalClearance: 1 } })
    expect(faultsIn(wrong).join()).toMatch(/\/target\/radialInternalClearance/)
    expect(await ask(`${await sharedApp()}/health/live`)).toMatchObject({ status: 200 })
  })
})

/** Requests that once ended in a 500 or took very long: none may, whatever the answer is. */
const THREE = {
  units: 'mm',
  balls: { count: 3, diameter: 40 },
  bore: 1,
  ballGap: 12,
  radialInternalClearance: 0.1,
  innerRing: { engagement: 0.3 },
}
const OF = (balls: object) => ({ units: 'mm', balls, bore: 2 })
const HAND = [{ diameter: 5000, quantity: 20 }]
const DEEP = [gap(4.5)]

test.each([
  {
    what: 'three measured balls of 1, 1 and 60 mm',
    body: { design: OF({ count: 3, diameter: 20, diameters: [1, 1, 60] }), readings: DEEP, ballsOnHand: HAND },
    status: 422,
  },
  {
    what: 'a scatter of half a ball',
    body: { design: OF({ count: 12, diameter: 16, standardDeviation: 8 }), readings: DEEP, ballsOnHand: HAND },
    status: 422,
  },
  {
    what: 'a ball of 5 m to mix in',
    body: { design: OF({ count: 12, diameter: 16 }), readings: DEEP, ballsOnHand: HAND },
    status: 200,
  },
  {
    what: 'a scatter too small to count with',
    body: { design: OF({ count: 12, diameter: 16, standardDeviation: 1e-223 }), readings: [gap(1)] },
    status: 200,
  },
  {
    what: 'of three balls the two in place touch, and their opening says nothing',
    body: { design: THREE, readings: [opening(0.3)] },
    status: 422,
  },
  {
    what: 'an inner groove as deep as its radius, which no cut deepens for the ball',
    body: {
      design: { units: 'mm', balls: { count: 9, diameter: 25 }, bore: 2, groove: { conformity: 0.4 } },
      ring: 'inner',
      readings: [{ kind: 'radial-play', value: 0.2 }],
    },
    status: 200,
  },
  {
    what: 'cuts of metres, by tools that err by metres',
    body: {
      readings: [{ kind: 'ball-gap', value: 1, graduation: 0, standardUncertainty: 0 }],
      earlier: [
        { readings: [{ kind: 'ball-gap', value: 0 }], thenRemoved: { with: 'sharp-tool', radial: 0.001 } },
        { readings: [], thenRemoved: { with: 'abrasive', radial: 10_000 } },
      ],
      tools: { sharpTool: { absolute: 10_000, relative: 1 } },
    },
    status: 422,
  },
  {
    what: 'a gap into which more balls go',
    body: {
      design: { units: 'mm', balls: { count: 145, diameter: 39.2, standardDeviation: 1.176 }, bore: 100 },
      readings: [gap(151.6), gap(151.3)],
    },
    status: 200,
  },
])('once a 500, or very slow: $what', async ({ body, status }) => {
  const answer = await asked(body)
  expect(answer.status, answer.text).toBe(status)
})

test('three balls that cover less than half of the ring: spacers fill it to the aim all the same', async () => {
  const fit = await answered({ design: THREE, readings: [gap(32)] })
  const each = Number(fit.rescue?.find(({ option }) => option === 'spacers')?.['eachThickness'])
  expect(ballGap(mm(fit.pitchRadius.value), mm(fit.ballDiameter.value + each), 3)).toBeWithin(0.01, 12)
})
