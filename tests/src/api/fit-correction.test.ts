import { expect, test } from 'vitest'
import { ballGap } from '#shared/geometry/ring-of-balls.ts'
import { mm } from '#shared/units/length.ts'
import { ask, faultsIn, post, problemIn } from '#tests/support/ask.ts'
import { startedApp } from '#tests/support/started-app.ts'
import { type Advice, advised, MAKER, makeRing } from '#tests/support/virtual-workshop.ts'

const DESIGN = {
  units: 'mm',
  balls: { count: 12, diameter: 16, material: 'glass', standardDeviation: 0.1 },
  bore: 12,
  ballGap: 0.8,
  minBallGap: 0,
  maxBallGap: 2,
}

test('an opening that the last ball does not fill: more to remove, by a cut that keeps to the risk', async () => {
  const answer = await post(`${await startedApp()}/v1/fit-correction`, {
    design: DESIGN,
    ring: 'outer',
    readings: [{ kind: 'last-ball-opening', value: 12, graduation: 0.5 }],
  })
  expect(answer.status, answer.text).toBe(200)
  const fit: {
    state: string
    nextStep: { radial: number }
    remaining: { radial: number }
    overshootProbability: number
  } = JSON.parse(answer.text)
  expect(fit.state).toBe('more-to-remove')
  expect(fit.nextStep.radial).toBeGreaterThan(0)
  expect(fit.nextStep.radial).toBeLessThan(fit.remaining.radial + 0.3)
  expect(fit.overshootProbability).toBeLessThanOrEqual(0.05)
})

test('a groove far too deep comes with every rescue in its order', async () => {
  const answer = await post(`${await startedApp()}/v1/fit-correction`, {
    design: DESIGN,
    ring: 'outer',
    readings: [{ kind: 'ball-gap', value: 4.5, graduation: 0.5 }],
    ballsOnHand: [{ diameter: 16.5, quantity: 20 }],
  })
  const fit: { state: string; rescue: { option: string }[] } = JSON.parse(answer.text)
  expect(fit.state).toBe('too-deep')
  expect(fit.rescue.map(({ option }) => option)).toEqual([
    'accept',
    'better-balls',
    'larger-balls',
    'mixed-balls',
    'spacers',
    'lining',
    'one-ball-more',
    'new-blank',
  ])
})

test('readings that contradict one another are named', async () => {
  const answer = await post(`${await startedApp()}/v1/fit-correction`, {
    design: DESIGN,
    ring: 'outer',
    readings: [
      { kind: 'ball-gap', value: 1, graduation: 0.5 },
      { kind: 'groove-bottom-diameter', value: 81 },
      { kind: 'ball-row', count: 12, value: 192, graduation: 0.5 },
    ],
  })
  const { agreement }: { agreement: { agrees: boolean; disagreements: { path: string }[] } } = JSON.parse(answer.text)
  expect(agreement.agrees).toBe(false)
  expect(agreement.disagreements.map(({ path }) => path)).toContain('/readings/1')
})

test('the inner ring speaks of its play, and of its mating faces', async () => {
  const answer = await post(`${await startedApp()}/v1/fit-correction`, {
    design: DESIGN,
    ring: 'inner',
    readings: [{ kind: 'radial-play', value: 0.1, standardUncertainty: 0.03 }],
  })
  expect(JSON.parse(answer.text)).toMatchObject({
    state: 'more-to-remove',
    radialInternalClearance: { value: expect.any(Number) },
    // A shim of more than an eighth of a ball: to cut is less work.
    adjustment: {
      matingFaces: expect.any(Number),
      worthwhile: false,
      message: expect.stringMatching(/cut the groove/),
    },
  })
})

test('a reading that no groove gives, and one of the other ring, are a 422 with their places', async () => {
  const address = `${await startedApp()}/v1/fit-correction`
  const impossible = await post(address, { design: DESIGN, ring: 'outer', readings: [{ kind: 'ball-gap', value: 60 }] })
  expect(problemIn(impossible, 422).errors?.[0]?.path).toBe('/readings/0')
  const other = await post(address, { design: DESIGN, ring: 'outer', readings: [{ kind: 'binds' }] })
  expect(problemIn(other, 422).errors?.[0]?.path).toBe('/readings/0')
})

test.each([
  {
    what: 'three measured balls of 1, 1 and 60 mm',
    balls: { count: 3, diameter: 20, diameters: [1, 1, 60] },
    status: 422,
  },
  { what: 'a scatter of half a ball', balls: { count: 12, diameter: 16, standardDeviation: 8 }, status: 422 },
  { what: 'a ball of 5 m to mix in', balls: DESIGN.balls, status: 200 },
])('once a 500: $what', async ({ balls, status }) => {
  const answer = await post(`${await startedApp()}/v1/fit-correction`, {
    design: { units: 'mm', balls, bore: 2 },
    ring: 'outer',
    readings: [{ kind: 'ball-gap', value: 4.5, graduation: 0.5 }],
    ballsOnHand: [{ diameter: 5000, quantity: 20 }],
  })
  expect(answer.status, answer.text).toBe(status)
})

const THREE = {
  units: 'mm',
  balls: { count: 3, diameter: 40 },
  bore: 1,
  ballGap: 12,
  radialInternalClearance: 0.1,
  innerRing: { engagement: 0.3 },
}

test('once a 500: three balls that cover less than half of the ring; spacers fill it to the aim all the same', async () => {
  const answer = await post(`${await startedApp()}/v1/fit-correction`, {
    design: THREE,
    ring: 'outer',
    readings: [{ kind: 'ball-gap', value: 32, graduation: 0.5 }],
  })
  expect(answer.status, answer.text).toBe(200)
  const fit: {
    pitchRadius: { value: number }
    ballDiameter: { value: number }
    rescue: { option: string; figures: { eachThickness: number } }[]
  } = JSON.parse(answer.text)
  const each = fit.rescue.find(({ option }) => option === 'spacers')?.figures.eachThickness ?? Number.NaN
  const larger = mm(fit.ballDiameter.value + each)
  expect(ballGap(mm(fit.pitchRadius.value), larger, 3)).toBeWithin(0.01, 12)
})

test('once a 500: of three balls the two in place touch, and an opening between them says nothing', async () => {
  const address = `${await startedApp()}/v1/fit-correction`
  const nothing = await post(address, {
    design: THREE,
    ring: 'outer',
    readings: [{ kind: 'last-ball-opening', value: 0.3 }],
  })
  expect(nothing.status, nothing.text).toBe(200)
  const wide = await post(address, {
    design: THREE,
    ring: 'outer',
    readings: [{ kind: 'last-ball-opening', value: 30 }],
  })
  expect(problemIn(wide, 422).errors?.[0]?.path).toBe('/readings/0')
})

test('once a 500: a scatter too small to reckon with', async () => {
  const answer = await post(`${await startedApp()}/v1/fit-correction`, {
    design: { ...DESIGN, balls: { count: 12, diameter: 16, standardDeviation: 1e-223 } },
    ring: 'outer',
    readings: [{ kind: 'ball-gap', value: 1 }],
  })
  expect(answer.status, answer.text).toBe(200)
})

test('once a 500: an inner groove as deep as its radius, which no cut deepens for the ball', async () => {
  const answer = await post(`${await startedApp()}/v1/fit-correction`, {
    design: { units: 'mm', balls: { count: 9, diameter: 25 }, bore: 2, groove: { conformity: 0.4 } },
    ring: 'inner',
    readings: [{ kind: 'radial-play', value: 0.2 }],
  })
  expect(problemIn(answer, 422).errors?.[0]?.path).toBe('/target')
})

test('once 22 seconds: cuts of metres, by tools that err by metres', async () => {
  const answer = await post(`${await startedApp()}/v1/fit-correction`, {
    design: DESIGN,
    ring: 'outer',
    readings: [{ kind: 'ball-gap', value: 1, graduation: 0, standardUncertainty: 0 }],
    earlier: [
      { readings: [{ kind: 'ball-gap', value: 0 }], thenRemoved: { with: 'sharp-tool', radial: 0.001 } },
      { readings: [], thenRemoved: { with: 'abrasive', radial: 10_000 } },
    ],
    tools: { sharpTool: { absolute: 10_000, relative: 1 } },
  })
  expect(problemIn(answer, 422).errors?.[0]?.path).toBe('/readings')
})

test('once a 500: balls so small that the groove is too deep for one more of them as well', async () => {
  const answer = await post(`${await startedApp()}/v1/fit-correction`, {
    design: { units: 'mm', balls: { count: 148, diameter: 7.227, standardDeviation: 0.2 }, bore: 96 },
    ring: 'outer',
    readings: [
      { kind: 'ball-row', count: 148, value: 1036, graduation: 0.5 },
      { kind: 'groove-bottom-diameter', value: 344.8 },
    ],
  })
  expect(answer.status, answer.text).toBe(200)
  const { state, rescue }: { state: string; rescue: { option: string; message: string }[] } = JSON.parse(answer.text)
  expect(state).toBe('too-deep')
  expect(rescue.find(({ option }) => option === 'one-ball-more')?.message).toMatch(/too deep for 149 balls as well/)
})

test('once a belief of no width at the end of what was thought possible: a gap into which more balls go is refused', async () => {
  const answer = await post(`${await startedApp()}/v1/fit-correction`, {
    design: { units: 'mm', balls: { count: 145, diameter: 39.2, standardDeviation: 1.176 }, bore: 100 },
    ring: 'outer',
    readings: [
      { kind: 'ball-gap', value: 151.6 },
      { kind: 'ball-gap', value: 151.3 },
    ],
  })
  const problem = problemIn(answer, 422)
  expect(problem.errors?.map(({ path }) => path)).toEqual(['/readings/0', '/readings/1'])
  expect(problem.errors?.[0]?.message).toMatch(/from 0 mm to 49 mm/)
})

test('with strokes counted, the abrasive comes in whole strokes, and the depth is theirs', async () => {
  const answer = await post(`${await startedApp()}/v1/fit-correction`, {
    design: DESIGN,
    ring: 'outer',
    readings: [{ kind: 'ball-gap', value: 0.3, standardUncertainty: 0.05 }],
    target: { ballGap: 1, minBallGap: 0.7 },
    tools: { sharpTool: { absolute: 1, relative: 0.5 } },
    removalHistory: [
      { strokes: 40, ballGapBefore: -0.6, ballGapAfter: -0.1 },
      { strokes: 30, ballGapBefore: -0.1, ballGapAfter: 0.28 },
    ],
  })
  const fit: {
    nextStep: { with: string; strokes: number; radial: number; diametral: number }
    removalPerStroke: { radial: number }
  } = JSON.parse(answer.text)
  const { strokes, radial, diametral } = fit.nextStep
  expect(fit.nextStep.with).toBe('abrasive')
  expect(Number.isInteger(strokes)).toBe(true)
  // 0.88 mm of gap in 70 strokes, six times and a little less what comes off the depth.
  expect(fit.removalPerStroke.radial).toBeWithin(0.0003, 0.88 / 70 / 6.2)
  expect(radial).toBeWithin(1e-12, strokes * fit.removalPerStroke.radial)
  expect(diametral).toBe(2 * radial)
})

test('too many readings, an unknown kind, a target of the other ring: 400, and the next request is served', async () => {
  const address = await startedApp()
  const fit = `${address}/v1/fit-correction`
  const many = Array.from({ length: 51 }, () => ({ kind: 'last-ball-refused' }))
  expect(faultsIn(await post(fit, { design: DESIGN, ring: 'outer', readings: many })).join()).toMatch(/\/readings/)
  expect(faultsIn(await post(fit, { design: DESIGN, ring: 'outer', readings: [{ kind: 'guess' }] })).join()).toMatch(
    /\/readings\/0/,
  )
  const [one] = many
  const earlier = Array.from({ length: 10 }, () => ({
    readings: [one, one, one, one, one],
    thenRemoved: { with: 'abrasive', radial: 0.1 },
  }))
  expect(faultsIn(await post(fit, { design: DESIGN, ring: 'outer', readings: [one], earlier }))).toEqual([
    '/earlier: must hold at most 50 readings in all, those of now included; 51 were given',
  ])
  const target = { radialInternalClearance: 1 }
  const wrong = await post(fit, { design: DESIGN, ring: 'outer', readings: [{ kind: 'last-ball-refused' }], target })
  expect(faultsIn(wrong).join()).toMatch(/\/target\/radialInternalClearance/)
  expect(await ask(`${address}/health/live`)).toMatchObject({ status: 200 })
})

test('forty simulated makers who follow the advice: nearly all first rings end in band, in four checks or fewer', async () => {
  const address = `${await startedApp()}/v1/fit-correction`
  const advise = async (request: object): Promise<Advice> => JSON.parse((await post(address, request)).text)
  const outcomes = []
  for (let seed = 1; seed <= 40; seed++) outcomes.push(await makeRing(seed, MAKER, advised(0.02, MAKER, advise)))
  const checks = outcomes.map((each) => each.checks).sort((a, b) => a - b)
  expect(outcomes.filter(({ end }) => end === 'in-band').length / outcomes.length).toBeGreaterThanOrEqual(0.97)
  expect(checks[checks.length / 2]).toBeLessThanOrEqual(4)
}, 120_000)
