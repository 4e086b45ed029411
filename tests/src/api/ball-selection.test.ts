import { describe, expect, test } from 'vitest'
import { ask, faultsIn, post, problemIn } from '#tests/support/ask.ts'
import { numberLeaves } from '#tests/support/number-leaves.ts'
import { sharedApp } from '#tests/support/started-app.ts'

/** An invented bearing and an invented lot. */
const DESIGN = {
  units: 'mm',
  balls: { count: 12, diameter: 16, material: 'glass' },
  bore: 12,
  ballGap: 0.8,
  radialInternalClearance: 0.32,
  minBallGap: 0,
  maxBallGap: 2,
}
const MEASURED = [16.02, 15.94, 16.11, 15.87, 16.05, 15.98, 16.2, 15.9, 16, 16.08, 15.79, 16.15, 16.03, 15.96]
const REQUEST = { design: DESIGN, measured: MEASURED, goal: 'close-groove' }

/** Each of three figures of an answer is rounded to a millionth of a millimetre. */
const ROUNDING = 1.5e-6

type Ordered = {
  readonly order: readonly number[]
  readonly ballGap: number
  readonly radialInternalClearance: number
  readonly runOut: number
}

type Selection = {
  readonly units: string
  readonly input: { readonly goal: string; readonly grooveBottomDiameter: number }
  readonly summary: string
  readonly chosen: readonly { readonly index: number; readonly diameter: number }[]
  readonly leftOver: readonly number[]
  readonly ballGap: number
  readonly lastBallGoesIn: number
  readonly runOut: number
  readonly innerRing: {
    readonly raceway: number
    readonly wanted: number
    readonly change: { readonly radial: number; readonly diametral: number }
  }
  readonly choices: readonly (Ordered & { readonly goal: string })[]
  readonly mean: number
  readonly spread: number
  readonly grooveChange: { readonly radial: number; readonly diametral: number }
  readonly bounds: {
    readonly of: string
    readonly missedBy: number
    readonly noneBelow: number
    readonly atMostFromBest: number
    readonly message: string
  }
  readonly orderEffect: {
    readonly ballGap: { readonly min: number; readonly max: number }
    readonly orders: readonly (Ordered & { readonly aim: string })[]
    readonly message: string
  }
  readonly warnings: readonly {
    readonly code: string
    readonly path: string
    readonly message: string
    readonly suggestion?: { readonly path: string; readonly value: number }
  }[]
  readonly cautions: readonly { readonly code: string }[]
}

const address = async () => `${await sharedApp()}/v1/ball-selection`

async function selected(url: string, request: object): Promise<Selection> {
  const answer = await post(url, request)
  expect(answer.status, answer.text).toBe(200)
  return JSON.parse(answer.text)
}

describe('a lot of fourteen for a ring of twelve', () => {
  test.each([
    ['best-bearing', 'run-out'],
    ['close-groove', 'ball-gap'],
    ['least-groove-change', 'groove-radius'],
    ['least-spread', 'spread'],
  ])('%s: twelve of them, what they leave, and how near to the best that is', async (goal, of) => {
    const answer = await selected(await address(), { ...REQUEST, goal })
    expect(answer).toMatchObject({ units: 'mm', input: { goal }, bounds: { of } })
    expect(answer.chosen.length).toBe(12)
    for (const { index, diameter } of answer.chosen) expect(diameter).toBe(MEASURED[index])
    const indices = [...answer.chosen.map(({ index }) => index), ...answer.leftOver]
    expect(indices.toSorted((one, other) => one - other)).toEqual([...MEASURED.keys()])
    expect(answer.bounds.noneBelow).toBeLessThanOrEqual(answer.bounds.missedBy)
    expect(answer.bounds.atMostFromBest).toBeWithin(ROUNDING, answer.bounds.missedBy - answer.bounds.noneBelow)
    expect(answer.orderEffect.ballGap.min).toBeLessThanOrEqual(answer.ballGap)
    expect(answer.orderEffect.ballGap.max).toBeGreaterThanOrEqual(answer.ballGap)
    expect(answer.orderEffect.message).toMatch(/very little/)
    expect(answer.grooveChange.diametral).toBeWithin(ROUNDING, 2 * answer.grooveChange.radial)
    expect(answer.cautions.map(({ code }) => code)).toContain('glass-balls')
    const [advised, ...others] = answer.orderEffect.orders
    expect(advised).toMatchObject({ aim: 'advised', order: answer.chosen.map(({ index }) => index) })
    expect(others.map(({ aim }) => aim)).toEqual(['most-play', 'least-run-out', 'least-play'])
    const plays = answer.orderEffect.orders.map(({ radialInternalClearance }) => radialInternalClearance)
    expect(Math.max(...plays)).toBe(plays[1])
    expect(Math.min(...plays)).toBe(plays[3])
    const same = answer.choices.filter((choice) => choice.goal === goal)
    expect(same).toMatchObject([{ ballGap: answer.ballGap, runOut: answer.runOut, order: advised?.order }])
    const { raceway, wanted, change } = answer.innerRing
    expect(change.diametral).toBeWithin(ROUNDING, raceway - wanted)
    expect(answer.lastBallGoesIn).toBe(1)
    const laid = answer.chosen.map(({ index, diameter }) => `${index + 1} (${diameter})`).join(', ')
    expect(answer.summary).toContain(`counted from 1, and its size in mm: ${laid}.`)
    for (const [path, number] of numberLeaves(answer)) expect(Number.isFinite(number), path).toBe(true)
  })

  test("without a groove it reckons with the design's own, and the same balls in either unit are the same choice", async () => {
    const url = await address()
    const [inMm, designed] = [await selected(url, REQUEST), await post(url.replace('ball-selection', 'design'), DESIGN)]
    const { outerRing }: { outerRing: { grooveBottomDiameter: number } } = JSON.parse(designed.text)
    expect(inMm.input.grooveBottomDiameter).toBe(outerRing.grooveBottomDiameter)
    const inches = await selected(url, {
      design: {
        ...DESIGN,
        units: 'in',
        balls: { count: 12, diameter: '16 mm' },
        bore: '12 mm',
        ballGap: '0.8 mm',
        radialInternalClearance: '0.32 mm',
        maxBallGap: '2 mm',
      },
      measured: MEASURED.map((diameter) => `${diameter} mm`),
      goal: 'close-groove',
    })
    expect(inches.units).toBe('in')
    expect(inches.chosen.map(({ index }) => index)).toEqual(inMm.chosen.map(({ index }) => index))
    // The groove is the design's, rounded to a ten-millionth of an inch: half of that is 1.3e-6 mm, and the gap grows by three times that.
    expect(inches.ballGap * 25.4).toBeWithin(1e-5, inMm.ballGap)
    expect(inches.summary).toMatch(/ in\b/)
  })

  test('a groove cut too shallow: the groove that lets them run, which clears the warning when it is taken', async () => {
    const url = await address()
    const request = { ...REQUEST, grooveBottomDiameter: 77.5 }
    const tight = await selected(url, request)
    expect(tight.warnings.map(({ code, path }) => [code, path])).toEqual([['does-not-close', '/measured']])
    expect(tight.grooveChange.radial).toBeGreaterThan(0)
    expect(tight.summary).toMatch(/cut another .* mm of depth/)
    const { path, value } = tight.warnings[0]?.suggestion ?? {}
    expect(path).toBe('/grooveBottomDiameter')
    expect((await selected(url, { ...request, grooveBottomDiameter: value })).warnings).toEqual([])
  })

  test('no goal is the best bearing; an inner ring that binds is warned of with the size that frees it', async () => {
    const url = await address()
    const { goal: _, ...request } = REQUEST
    const best = await selected(url, request)
    expect(best).toEqual({
      ...(await selected(url, { ...request, goal: 'best-bearing' })),
      assumed: expect.arrayContaining([expect.objectContaining({ path: '/goal', value: 'best-bearing' })]),
    })
    const innerGrooveBottomDiameter = best.innerRing.raceway + 0.6
    const tight = await selected(url, { ...request, innerGrooveBottomDiameter })
    const [warning] = tight.warnings
    expect(warning).toMatchObject({ code: 'binds', severity: 'fault', path: '/innerGrooveBottomDiameter' })
    expect(tight.summary).toMatch(/the inner ring binds by .* turn the inner ring's groove down to/)
    const freed = await selected(url, { ...request, innerGrooveBottomDiameter: warning?.suggestion?.value })
    expect(freed.warnings).toEqual([])
  })

  test('a gap that the last ball may not pass is said with its chance', async () => {
    const url = await address()
    const { outerRing } = JSON.parse((await post(url.replace('ball-selection', 'design'), DESIGN)).text)
    const measured = MEASURED.slice(0, 12).map(() => 16)
    const grooveBottomDiameter = outerRing.grooveBottomDiameter - 0.22
    const doubtful = await selected(url, { design: DESIGN, measured, grooveBottomDiameter })
    expect(doubtful.lastBallGoesIn).toBeGreaterThan(0)
    expect(doubtful.lastBallGoesIn).toBeLessThan(1)
    expect(doubtful.summary).toMatch(/the last ball goes in with a chance of [\d.]+ %/)
    expect(doubtful.warnings.map(({ code }) => code)).toEqual(['gap-below-assembly-gap', 'little-play'])
    const [gap] = doubtful.warnings
    const cut = await selected(url, { design: DESIGN, measured, grooveBottomDiameter: gap?.suggestion?.value })
    expect(cut.lastBallGoesIn).toBe(1)
    expect(cut.warnings).toEqual([])
  })

  test('a groove cut too deep: the largest balls, and how deep it is for them', async () => {
    const deep = await selected(await address(), { ...REQUEST, grooveBottomDiameter: '79.2 mm' })
    expect(deep.leftOver).toEqual([3, 10])
    expect(deep.grooveChange.radial).toBeLessThan(0)
    expect(deep.summary).toMatch(/too deep by/)
    expect(deep.warnings).toMatchObject([
      { code: 'gap-above-band', path: '/design/maxBallGap' },
      // the inner ring as designed is then too small, and may still be made larger
      { code: 'much-play', path: '/innerGrooveBottomDiameter', suggestion: { value: deep.innerRing.wanted } },
    ])
    expect(deep.bounds.message).toMatch(/a gap between 3\.\d+ mm and/)
  })
})

describe('refused in words, with the place', () => {
  test('a lot smaller than the ring takes, a ball of another size, a groove for no ball of them: 422', async () => {
    const url = await address()
    const small = problemIn(await post(url, { ...REQUEST, measured: MEASURED.slice(0, 11) }), 422)
    expect(small.errors).toMatchObject([
      { path: '/measured', message: expect.stringMatching(/12 balls, but only 11 /) },
    ])
    const slip = problemIn(await post(url, { ...REQUEST, measured: [...MEASURED, 161, 1.6] }), 422)
    expect(slip.errors?.map(({ path }) => path)).toEqual(['/measured/14', '/measured/15'])
    expect(slip.errors?.[0]?.message).toMatch(/161 mm/)
    for (const grooveBottomDiameter of [0.001, 30, 60, 600, 10_000]) {
      const groove = problemIn(await post(url, { ...REQUEST, grooveBottomDiameter }), 422)
      expect(groove.errors?.[0]?.path).toBe('/grooveBottomDiameter')
    }
  })

  test('a bearing that cannot be made: its own reason, at its place in the request', async () => {
    const refused = problemIn(await post(await address(), { ...REQUEST, design: { ...DESIGN, bore: 60 } }), 422)
    expect(refused.errors).toMatchObject([{ path: '/design/bore', message: expect.stringMatching(/60 mm/) }])
  })

  test('what is not of the schema: 400 with everything at once, and the next request is served', async () => {
    const url = await address()
    const faults = faultsIn(await post(url, { measured: [16, '16,1'], goal: 'closegroove', groove: 1 })).join('\n')
    expect(faults).toMatch(/\/design: "design" is missing/)
    expect(faults).toMatch(/\/measured: must have at least 3 entries/)
    expect(faults).toMatch(/\/goal: .*Did you mean "close-groove"/)
    expect(faults).toMatch(/\/groove: /)
    const many = Array.from({ length: 501 }, () => 16)
    expect(faultsIn(await post(url, { ...REQUEST, measured: many })).join()).toMatch(/at most 500/)
    expect(faultsIn(await post(url, { ...REQUEST, measured: [-1, 0, null, '', {}] })).length).toBe(5)
    expect(await selected(url, REQUEST)).toMatchObject({ input: { goal: 'close-groove' } })
  })

  test('GET is not offered', async () => {
    expect(problemIn(await ask(await address()), 405).status).toBe(405)
  })
})

test('five hundred balls in any shape and a ring of two hundred are answered', async () => {
  const url = await address()
  const measured = Array.from({ length: 500 }, (_, ball) => 16 + ((ball * 37) % 101) / 500 - 0.1)
  for (const goal of ['close-groove', 'least-groove-change', 'least-spread']) {
    const design = { ...DESIGN, balls: { count: 200, diameter: 16 } }
    const answer = await selected(url, { design, measured, goal })
    expect(answer.chosen.length).toBe(200)
    expect(answer.leftOver.length).toBe(300)
  }
})
