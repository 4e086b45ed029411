import { setTimeout as sleep } from 'node:timers/promises'
import { describe, expect, test } from 'vitest'
import type { Config } from '#src/config.ts'
import { type Answered, ask, faultsIn, post, problemIn } from '#tests/support/ask.ts'
import { eventually } from '#tests/support/eventually.ts'
import { inMaking } from '#tests/support/in-making.ts'
import { numberLeaves } from '#tests/support/number-leaves.ts'
import { sharedApp, startedApp, testedApp } from '#tests/support/started-app.ts'

/** An invented bearing, and an invented shop. */
const DESIGN = {
  units: 'mm',
  balls: { count: 12, diameter: 16, material: 'glass' },
  bore: 12,
  ballGap: 0.8,
  minBallGap: 0,
  maxBallGap: 2,
}
const CONTRIBUTORS = {
  ballDiameter: { kind: 'normal', standardDeviation: 0.1 },
  ballLotMean: { kind: 'normal', standardDeviation: 0.05 },
  outerGrooveBottomRadius: { kind: 'uniform', plusMinus: 0.1 },
  innerGrooveBottomRadius: { kind: 'triangular', plusMinus: '0.1 mm' },
  finishFilm: { kind: 'normal', mean: 0.01, standardDeviation: 0.005 },
}
const REQUEST = { design: DESIGN, contributors: CONTRIBUTORS, trials: 20_000 }
/** For balls that do not differ. */
const ALIKE = { kind: 'normal', standardDeviation: 0 }

type Chances = {
  readonly tooTight: number
  readonly fits: number
  readonly tooLoose: number
  readonly standardError: { readonly fits: number }
}
type Figure = {
  readonly nominal: number
  readonly worstCase: { readonly min: number; readonly max: number }
  readonly rss: { readonly mean: number; readonly standardDeviation: number }
  readonly monteCarlo: {
    readonly mean: number
    readonly standardDeviation: number
    readonly percentiles: readonly {
      readonly percent: number
      readonly value: number
      readonly standardError: number
    }[]
    readonly shortest95: { readonly min: number; readonly max: number }
    readonly standardError: { readonly mean: number }
  }
  readonly probability: Chances
  readonly histogram: { readonly edges: readonly number[]; readonly counts: readonly number[] }
}
type Point = { readonly grooveDepth: number; readonly deeper: number; readonly outcomes: Chances }
type Checked = {
  readonly units: string
  readonly input: { readonly trials: number | 'auto' | 'when-needed'; readonly seed: number }
  readonly assumed: readonly { readonly path: string }[]
  readonly summary: string
  readonly method: {
    readonly kind: string
    readonly residualShare?: { readonly ballGap: number; readonly radialInternalClearance: number }
    readonly message: string
  }
  readonly trials: number
  readonly converged: boolean
  readonly ballGap: Figure
  readonly radialInternalClearance: Figure
  readonly jointFits: number
  readonly sensitivities: readonly {
    readonly contributor: string
    readonly ballGap: { readonly slope: number; readonly shareOfVariance: number }
    readonly message: string
  }[]
  readonly aim: {
    readonly atNominal: Point
    readonly bestYield: Point
    readonly limitedRisk?: Point
    readonly message: string
  }
  readonly notes: readonly string[]
  readonly sources: readonly { readonly title: string }[]
}

/** The last digit of a length that is answered: 1e-6 mm, 1e-7 in. */
const MM_STEP = 1e-6
const IN_STEP = 1e-7

/** The same answer to the byte, but that nothing was assumed of what the echo of the first one states. */
function expectSame(again: Answered, first: Answered): void {
  const { assumed }: Checked = JSON.parse(first.text)
  const repeated: Checked = JSON.parse(again.text)
  expect(repeated.assumed).toEqual([])
  expect(JSON.stringify({ ...repeated, assumed })).toBe(first.text)
}

const address = async (config?: Partial<Config>) =>
  `${await (config === undefined ? sharedApp() : startedApp({ config }))}/v1/tolerance-check`

async function checked(url: string, request: object): Promise<Checked> {
  const answer = await post(url, request)
  expect(answer.status, answer.text).toBe(200)
  return JSON.parse(answer.text)
}

describe('twelve glass balls in a shop that is not perfect', () => {
  test('gap and play, by squares and by trials, the chances, and where to aim', async () => {
    const answer = await checked(await address(), REQUEST)
    expect(answer).toMatchObject({ units: 'mm', trials: 20_000, input: { seed: 1, trials: 20_000 } })
    for (const figure of [answer.ballGap, answer.radialInternalClearance]) {
      const { monteCarlo, rss, probability, histogram, worstCase } = figure
      expect(monteCarlo.mean).toBeWithin(0.02 * rss.standardDeviation + 0.005, rss.mean)
      expect(monteCarlo.standardDeviation / rss.standardDeviation).toBeWithin(0.03, 1)
      expect(probability.tooTight + probability.fits + probability.tooLoose).toBeWithin(1e-12, 1)
      expect(probability.standardError.fits).toBeWithin(
        1e-3,
        Math.sqrt((probability.fits * (1 - probability.fits)) / 20_000),
      )
      expect(histogram.edges.length).toBe(histogram.counts.length + 1)
      expect(histogram.counts.reduce((sum, count) => sum + count, 0)).toBe(20_000)
      expect(worstCase.min).toBeLessThan(monteCarlo.shortest95.min)
      expect(worstCase.max).toBeGreaterThan(monteCarlo.shortest95.max)
      const values = monteCarlo.percentiles.map(({ value }) => value)
      expect(values).toEqual(values.toSorted((one, other) => one - other))
      for (const { standardError } of monteCarlo.percentiles) expect(standardError).toBeGreaterThan(0)
    }
    expect(answer.jointFits).toBeGreaterThan(
      answer.ballGap.probability.fits * answer.radialInternalClearance.probability.fits,
    )
    const { bestYield, limitedRisk, atNominal } = answer.aim
    expect(bestYield.outcomes.fits).toBeGreaterThanOrEqual(atNominal.outcomes.fits)
    expect(limitedRisk?.outcomes.tooLoose).toBeLessThanOrEqual(0.05 + 1e-9)
    expect(bestYield.grooveDepth - atNominal.grooveDepth).toBeWithin(1.5 * MM_STEP, bestYield.deeper)
    for (const [path, number] of numberLeaves(answer)) expect(Number.isFinite(number), path).toBe(true)
  })

  test('says what decides, and what to do about it', async () => {
    const url = await address()
    const lot = await checked(url, REQUEST)
    expect(lot.sensitivities[0]?.contributor).toBe('ballLotMean')
    expect(lot.summary).toMatch(/the ball lot matters more than your cutting/)
    const rough = {
      ...REQUEST,
      contributors: { ...CONTRIBUTORS, outerGrooveBottomRadius: { kind: 'uniform', plusMinus: 0.6 } },
    }
    expect((await checked(url, rough)).summary).toMatch(/your cutting matters more than the balls/)
    const contributors = { ballDiameter: ALIKE, outOfRound: { kind: 'uniform', plusMinus: 0.1 } }
    const alone = await checked(url, { ...REQUEST, contributors })
    expect(alone.ballGap.rss.standardDeviation).toBe(0)
    expect(alone.radialInternalClearance.rss.standardDeviation).toBeGreaterThan(0.05)
    expect(alone.notes.join()).toMatch(/`ballLotMean` was not given/)
  })

  test('balls that are not named differ as the design says; the echo names them', async () => {
    const url = await address()
    const design = { ...DESIGN, balls: { ...DESIGN.balls, standardDeviation: 0.07 } }
    const { ballDiameter: _, ...others } = CONTRIBUTORS
    const unnamed = await checked(url, { ...REQUEST, design, contributors: others })
    const named = { kind: 'normal', mean: 0, standardDeviation: 0.07 }
    expect(unnamed.input).toMatchObject({ contributors: { ballDiameter: named } })
    const paths = unnamed.assumed.map(({ path }) => path)
    expect(paths).toEqual(
      expect.arrayContaining(['kind', 'standardDeviation'].map((of) => `/contributors/ballDiameter/${of}`)),
    )
    const { assumed: _a, ...answer } = unnamed
    const { assumed: _b, ...same } = await checked(url, {
      ...REQUEST,
      design,
      contributors: { ballDiameter: named, ...others },
    })
    expect(same).toEqual(answer)
    expect((await checked(url, { ...REQUEST, design, contributors: {} })).sensitivities[0]?.contributor).toBe(
      'ballDiameter',
    )
  })

  test('the echo sent again is the same answer; another seed is another', async () => {
    const url = await address()
    const first = await post(url, REQUEST)
    const { input }: { input: object } = JSON.parse(first.text)
    expectSame(await post(url, input), first)
    const other = await checked(url, { ...REQUEST, seed: 2 })
    const one: Checked = JSON.parse(first.text)
    expect(other.ballGap.monteCarlo.mean).not.toBe(one.ballGap.monteCarlo.mean)
    expect(other.ballGap.rss).toEqual(one.ballGap.rss)
  })

  test('in inches it is the same bearing', async () => {
    const url = await address()
    const inches = {
      design: {
        ...DESIGN,
        units: 'in',
        balls: { count: 12, diameter: '16 mm', material: 'glass' },
        bore: '12 mm',
        ballGap: '0.8 mm',
        maxBallGap: '2 mm',
      },
      contributors: {
        ballDiameter: { kind: 'normal', standardDeviation: '0.1 mm' },
        outerGrooveBottomRadius: { kind: 'uniform', plusMinus: '0.1 mm' },
      },
      trials: 5000,
    }
    const { ballDiameter, outerGrooveBottomRadius } = CONTRIBUTORS
    const inMm = await checked(url, {
      ...REQUEST,
      trials: 5000,
      contributors: { ballDiameter, outerGrooveBottomRadius },
    })
    const inIn = await checked(url, inches)
    expect(inIn.ballGap.monteCarlo.mean * 25.4).toBeWithin(
      MM_STEP / 2 + (25.4 * IN_STEP) / 2,
      inMm.ballGap.monteCarlo.mean,
    )
    expect(inIn.ballGap.probability).toEqual(inMm.ballGap.probability)
    expect(inIn.aim.message).toMatch(/ in deep/)
  })

  test("the maker's own list of balls", async () => {
    const diameters = [16.02, 15.94, 16.11, 15.87, 16.05, 15.98, 16.2, 15.9, 16, 16.08, 15.79, 16.15, 16.03, 15.96]
    const url = await address()
    const answer = await checked(url, { ...REQUEST, contributors: { ballDiameter: { kind: 'measured', diameters } } })
    expect(answer.ballGap.monteCarlo.standardDeviation).toBeGreaterThan(0.1)
    const twelve = await checked(url, {
      ...REQUEST,
      contributors: { ballDiameter: { kind: 'measured', diameters: diameters.slice(0, 12) } },
    })
    expect(twelve.ballGap.monteCarlo.standardDeviation).toBeLessThan(0.01)
  })

  test('auto stops by itself, at figures that stand still', async () => {
    const answer = await checked(await address(), { ...REQUEST, trials: 'auto', significantDigits: 1 })
    expect(answer).toMatchObject({ converged: true, input: { trials: 'auto', significantDigits: 1 } })
    expect(answer.trials).toBeLessThan(2_000_000)
  })
})

describe('without trials', () => {
  const { trials: _, ...WITHOUT } = REQUEST

  test('nearly linear: says so, with what is left, and is surer than what trials of the default tell', async () => {
    const url = await address()
    const near = await checked(url, WITHOUT)
    const made = await checked(url, { ...REQUEST, trials: 100_000 })
    expect(near.method).toMatchObject({ kind: 'nearly-linear', message: expect.stringMatching(/2000 bearings/) })
    expect(near.method.residualShare?.ballGap).toBeGreaterThan(0)
    expect(near.method.residualShare?.ballGap).toBeLessThan(1e-4)
    expect(near).toMatchObject({ trials: 2000, converged: true })
    expect(made.method).toMatchObject({ kind: 'trials', message: expect.stringMatching(/as requested/) })
    expect(made.method).not.toHaveProperty('residualShare')
    for (const name of ['ballGap', 'radialInternalClearance'] as const) {
      near[name].monteCarlo.percentiles.forEach(({ value, standardError }, place) => {
        const trial = made[name].monteCarlo.percentiles[place]
        expect(standardError).toBeLessThan(trial?.standardError ?? 0)
        expect(value).toBeWithin(5 * (trial?.standardError ?? 0), trial?.value ?? Number.NaN)
      })
      expect(near[name].histogram.counts.reduce((sum, count) => sum + count, 0)).toBe(100_000)
    }
    for (const [path, number] of numberLeaves(near)) expect(Number.isFinite(number), path).toBe(true)
  })

  test('the echo asks for none either, and is the same answer on any number of threads', async () => {
    const first = await post(await address(), WITHOUT)
    const { input }: { input: object } = JSON.parse(first.text)
    expect(input).toMatchObject({ trials: 'when-needed' })
    const three = await sharedApp({ config: { workerThreads: 3 } })
    expectSame(await post(`${three}/v1/tolerance-check`, input), first)
  })

  test('where it does not hold, a hundred thousand trials, and why', async () => {
    const contributors = { ballDiameter: ALIKE, innerGrooveBottomRadius: { kind: 'normal', standardDeviation: 0.05 } }
    const answer = await checked(await address(), { ...WITHOUT, contributors })
    expect(answer).toMatchObject({ trials: 100_000, method: { kind: 'trials' } })
    expect(answer.method.message).toMatch(/does not change/)
    expect(answer.input.trials).toBe('when-needed')
  })

  test('drawn, it does not speak of chance', async () => {
    const drawn = await post(await address(), WITHOUT, { accept: 'image/svg+xml' })
    expect(drawn.status).toBe(200)
    expect(drawn.text).toContain('distribution over all bearings')
    expect(drawn.text).not.toMatch(/random bearings|Seed/)
  })
})

describe('the weather as a contributor', () => {
  const MAPLE = { construction: 'flat-sawn', species: 'maple-sugar' }
  const WOODS = { outerRing: MAPLE, innerRing: MAPLE }
  const CLIMATE = { today: { relativeHumidity: 50 }, relativeHumidity: { min: 30, max: 65 } }
  const measured = { ...CONTRIBUTORS, ballLotMean: { kind: 'normal', standardDeviation: 0.01 } }
  const YEAR = inMaking({ ...REQUEST, contributors: measured, woods: WOODS, climate: CLIMATE })

  test('says that it decides, with its share, and what it rests on', async () => {
    const { summary, sensitivities, notes, sources } = await checked(await address(), YEAR)
    expect(sensitivities[0]).toMatchObject({ contributor: 'climate' })
    expect(sensitivities[0]?.message).toMatch(/wood is higher by 1 %, the ball gap changes by 0\.\d+ mm/)
    expect(sensitivities.reduce((sum, { ballGap }) => sum + ballGap.shareOfVariance, 0)).toBeWithin(1e-8, 1)
    expect(summary).toMatch(/comes from the weather; .* the weather matters more than your cutting/)
    expect(notes.join()).toMatch(/equally likely/)
    expect(notes.join()).not.toMatch(/`climate` was not given/)
    expect(sources.map(({ title }) => title).join()).toMatch(/Wood Handbook.*13-3/)
  })

  test('the echo sent again is the same answer, in inches and degrees F too', async () => {
    const url = await address()
    const first = await post(url, YEAR)
    const { input }: { input: object } = JSON.parse(first.text)
    expect(input).toMatchObject({
      design: { making: { climate: { temperatureScale: 'celsius', today: { temperature: 20 } } } },
    })
    expectSame(await post(url, input), first)
    const fahrenheit = { ...CLIMATE, temperatureScale: 'fahrenheit', temperature: { min: 68, max: 68 } }
    const other = await checked(url, { ...YEAR, design: { ...DESIGN, making: { woods: WOODS, climate: fahrenheit } } })
    const one: Checked = JSON.parse(first.text)
    expect(other.ballGap.monteCarlo.mean).toBeWithin(MM_STEP, one.ballGap.monteCarlo.mean)
    const inches = {
      ...DESIGN,
      units: 'in',
      balls: { count: 12, diameter: '16 mm', material: 'glass' },
      bore: '12 mm',
      ballGap: '0.8 mm',
    }
    const making = { woods: WOODS, climate: CLIMATE }
    const design = { ...inches, minBallGap: 0, maxBallGap: '2 mm', making }
    const inIn = await checked(url, { ...YEAR, design, contributors: { ballDiameter: ALIKE } })
    const inMm = await checked(url, { ...YEAR, contributors: { ballDiameter: ALIKE } })
    const slope = ({ sensitivities }: Checked) => sensitivities[0]?.ballGap.slope ?? Number.NaN
    expect((slope(inIn) * 25.4) / slope(inMm)).toBeWithin(1e-8, 1)
    expect(inIn.ballGap.probability).toEqual(inMm.ballGap.probability)
  })

  test.each([
    [{ climate: CLIMATE }, 400, '/design/making/woods: The climate acts on wood: give the wood of each part as well.'],
    [{ woods: WOODS, climate: { today: {} } }, 400, '/design/making/climate: must state the year'],
    [
      { woods: { ...WOODS, balls: { species: 'maple-sugar' } }, climate: CLIMATE },
      400,
      '/design/making/woods/balls: does not apply unless',
    ],
    [
      { woods: { ...WOODS, innerRing: { species: 'mapel-sugar' } }, climate: CLIMATE },
      400,
      '/design/making/woods/innerRing/species',
    ],
    [
      { woods: WOODS, climate: { ...CLIMATE, relativeHumidity: { min: 60, max: 30 } } },
      422,
      '/design/making/climate/relativeHumidity: The low end, 60, is above',
    ],
    [
      { woods: WOODS, climate: { today: { moistureContent: 40 }, moistureContent: { min: 6, max: 9 } } },
      422,
      '/design/making/climate/today: A moisture content of 40 %',
    ],
    [
      { woods: WOODS, climate: CLIMATE, design: { ...DESIGN, balls: { count: 12, diameter: 16, material: 'wood' } } },
      422,
      '/design/making/woods/balls: The balls are of wood. Name it',
    ],
    [
      { woods: WOODS, climate: CLIMATE, design: { ...DESIGN, arrangement: 'thrust' } },
      400,
      '/design/making/woods: "plates" is missing',
    ],
  ])('%o: %i', async (more, status, expected) => {
    const problem = problemIn(await post(await address(), inMaking({ ...REQUEST, ...more })), status)
    const said = problem.errors?.map(({ path, message }) => `${path}: ${message}`).join('\n') ?? ''
    expect(said).toContain(expected)
  })
})

test('one thread or three: the same bytes', async () => {
  const edges = { ...DESIGN, groove: { conformity: 0.46 } }
  const requests = [
    { ...REQUEST, trials: 30_001 },
    { ...REQUEST, trials: 'auto', significantDigits: 1 },
    inMaking({
      ...REQUEST,
      trials: 12_000,
      woods: { outerRing: { species: 'maple-sugar' }, innerRing: { construction: 'cross-laminated-ply' } },
      climate: { today: { moistureContent: 8 }, moistureContent: { min: 6, max: 10 } },
    }),
    {
      ...REQUEST,
      design: edges,
      trials: 12_000,
      contributors: { ...CONTRIBUTORS, outOfRound: { kind: 'uniform', plusMinus: 0.05 } },
    },
  ]
  const answers: string[][] = []
  for (const workerThreads of [1, 3]) {
    const url = `${await sharedApp({ config: { workerThreads } })}/v1/tolerance-check`
    // All at once, so that their parts are mixed.
    const texts = await Promise.all(requests.map((request) => post(url, request)))
    answers.push(texts.map(({ status, text }) => `${status} ${text}`))
  }
  expect(answers[0]?.map((text) => text.slice(0, 3))).toEqual(['200', '200', '200', '200'])
  expect(answers[1]).toEqual(answers[0])
})

describe('more than can be worked out', () => {
  /** Sixty balls on the edges of a groove out of round: tens of seconds of a core. */
  const HEAVY = {
    design: { ...DESIGN, balls: { count: 60, diameter: 16 }, groove: { conformity: 0.46 } },
    contributors: {
      ballDiameter: { kind: 'normal', standardDeviation: 0.01 },
      outOfRound: { kind: 'uniform', plusMinus: 0.05 },
    },
    trials: 2_000_000,
  }

  test('more work than fits into the deadline: 422 at once, without a task begun, which says what to narrow', async () => {
    const app = await testedApp({ config: { taskDeadlineMs: 3_000 } })
    const answer = await app.inject({ method: 'POST', url: '/v1/tolerance-check', payload: HEAVY })
    expect(answer.statusCode).toBe(422)
    expect(answer.json().errors).toEqual([{ path: '/trials', message: expect.stringMatching(/fewer trials/) }])
    expect(app.taskLoad()).toMatchObject({ done: 0, late: 0, refused: { 'too-much-work': 1, busy: 0 } })
    const light = { ...REQUEST, trials: 1000 }
    // On a busy machine not at once: to start a thread can take longer than the deadline of this test.
    const asked = () => app.inject({ method: 'POST', url: '/v1/tolerance-check', payload: light })
    await eventually(async () => expect((await asked()).statusCode).toBe(200))
  })

  // Found under a load of equals: they took turns, and not one was ready in its time.
  test('of many large ones at once the first is ready long before the last', async () => {
    const app = await testedApp({ config: { workerThreads: 1, taskDeadlineMs: 60_000 } })
    const ask = (seed: number) => ({ url: '/v1/tolerance-check', payload: { ...REQUEST, trials: 40_000, seed } })
    const answers = [1, 2, 3, 4, 5, 6].map((seed) => app.inject({ method: 'POST', ...ask(seed) }))
    await Promise.any(answers)
    const doneByThen = app.taskLoad().done
    for (const { statusCode } of await Promise.all(answers)) expect(statusCode).toBe(200)
    expect(doneByThen).toBeLessThan(app.taskLoad().done / 2)
  })

  test('too many at once: some are told to come back, the others are answered', async () => {
    const url = await address({ workerThreads: 1 })
    const answers = await Promise.all(Array.from({ length: 30 }, () => post(url, { ...REQUEST, trials: 15_000 })))
    const refused = answers.filter(({ status }) => status === 503)
    expect(refused.length).toBeGreaterThan(0)
    for (const answer of refused) expect(answer.headers['retry-after']).toBe('1')
    expect(answers.filter(({ status }) => status === 200).length).toBe(30 - refused.length)
    expect(refused.length).toBeLessThan(30)
  })

  test('whoever leaves is not worked for any more: as many as there is room for leave, and there is room again', async () => {
    const url = await address({ workerThreads: 1, taskDeadlineMs: 600_000 })
    const light = { ...REQUEST, trials: 1000 }
    await checked(url, light)
    await Promise.all(
      Array.from({ length: 17 }, async () => {
        const gone = new AbortController()
        const left = fetch(url, {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify(HEAVY),
          signal: gone.signal,
        }).catch(() => 'left')
        await sleep(200)
        gone.abort()
        expect(await left).toBe('left')
      }),
    )
    // The one part of each that was on its way comes to its end first. All of one alone would take longer than this waits.
    await expect.poll(async () => (await post(url, light)).status, { timeout: 25_000, interval: 200 }).toBe(200)
  })
})

describe('refused in words, with the place', () => {
  test('what is not of the schema: 400 with everything at once', async () => {
    const url = await address()
    const faults = faultsIn(
      await post(url, {
        design: { ...DESIGN, making: { climate: {} } },
        contributors: { ballDiameter: { kind: 'gauss' }, outOfRound: { kind: 'uniform' }, humidity: {} },
        trials: 10,
        seed: 1.5,
        limits: { minBallGap: -1 },
      }),
    ).join('\n')
    expect(faults).toMatch(/\/contributors\/ballDiameter\/kind: must be one of "normal"/)
    expect(faults).toMatch(/\/contributors\/outOfRound\/plusMinus: "plusMinus" is missing/)
    expect(faults).toMatch(/\/contributors\/humidity: /)
    expect(faults).toMatch(
      /\/trials: must be a whole number from 1000 to 2000000, or one of "auto" or "when-needed"; 10 was given/,
    )
    expect(faults).toMatch(/\/seed: /)
    expect(faults).toMatch(/\/limits\/minBallGap: /)
    expect(faults).toMatch(/\/design\/making\/climate\/today: "today" is missing/)
  })

  test.each([
    [{ trials: 'automatic' }, '/trials'],
    [{ trials: 2_000_001 }, '/trials'],
    [{ trials: null }, '/trials'],
    [{ seed: -1 }, '/seed'],
    [{ seed: 4_294_967_296 }, '/seed'],
    [
      { contributors: { ballDiameter: { kind: 'normal', standardDeviation: -0.1 } } },
      '/contributors/ballDiameter/standardDeviation',
    ],
    [{ contributors: { outOfRound: { kind: 'measured', diameters: [1, 2, 3] } } }, '/contributors/outOfRound/kind'],
    [
      {
        contributors: {
          ballDiameter: { kind: 'measured', diameters: Array.from({ length: 12 }, () => 16) },
          ballLotMean: { kind: 'normal', standardDeviation: 0.1 },
        },
      },
      '/contributors/ballLotMean',
    ],
    [{ overshootRisk: 0 }, '/overshootRisk'],
  ])('%o: 400', async (more, path) => {
    const problem = problemIn(await post(await address(), inMaking({ ...REQUEST, ...more })), 400)
    expect(problem.errors?.map((error) => error.path)).toEqual([path])
  })

  test.each([
    [
      { contributors: { ballLotMean: { kind: 'normal', mean: 16, standardDeviation: 0.1 } } },
      '/contributors/ballLotMean',
      /not the size/,
    ],
    [
      { contributors: { outerGrooveBottomRadius: { kind: 'uniform', plusMinus: 10_000 } } },
      '/contributors/outerGrooveBottomRadius',
      /no depth/,
    ],
    [
      { contributors: { ballDiameter: { kind: 'measured', diameters: [16, 16, 16] } } },
      '/contributors/ballDiameter/diameters',
      /3 measured .* 12/,
    ],
    [{ limits: { minBallGap: 3 } }, '/limits/minBallGap', /3 mm, is above the largest, 2 mm/],
    [{ design: { ...DESIGN, bore: 60 } }, '/design/bore', /60 mm/],
  ])('%o: 422', async (more, path, message) => {
    const problem = problemIn(await post(await address(), inMaking({ ...REQUEST, ...more })), 422)
    expect(problem.errors).toMatchObject([{ path, message: expect.stringMatching(message) }])
  })

  test('only POST, only JSON', async () => {
    const url = await address()
    expect((await ask(url)).status).toBe(405)
    expect((await post(url, REQUEST, { accept: 'text/csv' })).status).toBe(406)
  })
})

test('as a picture: the same figures in words, limits and aims marked, for whom it is and in its units', async () => {
  const at = await sharedApp()
  const drawn = await post(`${at}/v1/tolerance-check`, REQUEST, { accept: 'image/svg+xml' })
  const told = JSON.parse((await post(`${at}/v1/tolerance-check`, REQUEST)).text) as { ballGap: Figure }
  expect(drawn.headers).toMatchObject({ 'content-type': 'image/svg+xml', vary: 'Accept' })
  expect(drawn.text).toMatch(/^<svg xmlns="http:\/\/www.w3.org\/2000\/svg" role="img" width="180mm"/)
  const share = Number((told.ballGap.probability.fits * 100).toFixed(1))
  for (const words of [
    `fits: ${share} %`,
    'A: smallest good gap, if the last ball goes in: 0 mm',
    'B: largest good gap: 2 mm',
    'ball gap (mm)',
  ])
    expect(drawn.text).toContain(words)
  expect(drawn.text).toContain('† common practice, no source.')
  expect((await post(`${at}/v1/tolerance-check`, REQUEST, { accept: 'image/png' })).status).toBe(406)
})

test.each([
  ['even balls', { outerGrooveBottomRadius: 0.3, innerGrooveBottomRadius: 0.3 }, 'cut the inner groove last'],
  ['uneven balls', { ballDiameter: 0.25, outerGrooveBottomRadius: 0.01 }, 'sort the balls'],
])('an inner ring that binds for %s is freed by what makes it bind', async (_, scatters, remedy) => {
  const contributors = Object.fromEntries(
    Object.entries(scatters).map(([name, standardDeviation]) => [name, { kind: 'normal', standardDeviation }]),
  )
  const { text } = await post(`${await sharedApp()}/v1/tolerance-check`, { design: DESIGN, contributors })
  const [warning, ...more] = JSON.parse(text).warnings
  expect(more).toEqual([])
  expect(warning.message).toContain(`Design more play at \`/v1/design\`, or ${remedy}`)
})
