import { describe, expect, test } from 'vitest'
import { ask, faultsIn, post, problemIn } from '#tests/support/ask.ts'
import { numberLeaves } from '#tests/support/number-leaves.ts'
import { sharedApp } from '#tests/support/started-app.ts'

/** What Larkmoor (invented) has on hand for a shelf turntable. */
const REQUEST = {
  units: 'mm',
  outsideDiameter: { max: 200 },
  bore: { min: 8, max: 12 },
  balls: [
    { diameter: 14, material: 'glass', quantity: 30 },
    { diameter: 16, material: 'glass', quantity: 16 },
    { diameter: 25, quantity: 12 },
  ],
  cutterDiameters: [15, 17, 26],
  outerEngagements: [0.18, 0.22],
  boardWidths: [140, 190],
  limit: 6,
}

type Ranked = {
  readonly rank: number
  readonly score: number
  readonly criteria: readonly {
    readonly name: string
    readonly mark: number
    readonly weight: number
    readonly message: string
  }[]
  readonly design: { readonly units: string; readonly balls: { readonly count: number; readonly diameter: number } }
  readonly outsideDiameter: number
  readonly cutDiameter: number
  readonly ballGap: number
  readonly board?: number
  readonly warnings: readonly { readonly code: string; readonly severity: string; readonly message: string }[]
}
type Found = {
  readonly units: string
  readonly ranked: readonly Ranked[]
  readonly more: boolean
  readonly candidates: number
  readonly dropped: readonly { readonly reason: string; readonly count: number; readonly message: string }[]
}

const address = async () => `${await sharedApp()}/v1/design-search`

async function found(url: string, request: object): Promise<Found> {
  const answer = await post(url, request)
  expect(answer.status, answer.text).toBe(200)
  return JSON.parse(answer.text)
}

describe('what can be made of what is on hand', () => {
  test('ranked, each mark with its weight and its reason, and every figure finite', async () => {
    const { ranked, candidates, more, ...rest } = await found(await address(), REQUEST)
    expect(candidates).toBe(3 * 3 * 2 * 35 * 3)
    expect(more).toBe(true)
    expect(ranked.map(({ rank }) => rank)).toEqual([1, 2, 3, 4, 5, 6])
    for (const [place, { score, criteria, outsideDiameter, board, warnings }] of ranked.entries()) {
      if (place > 0) expect(score).toBeLessThanOrEqual(ranked[place - 1]?.score ?? 0)
      const weights = criteria.reduce((sum, { weight }) => sum + weight, 0)
      const marks = criteria.reduce((sum, { weight, mark }) => sum + weight * mark, 0)
      const isRisky = warnings.some(({ code, severity }) => severity === 'risk' && code !== 'plugs-cannot-tell')
      expect((marks / weights) * (isRisky ? 0.95 : 1)).toBeWithin(1e-9, score)
      expect(criteria.every(({ message }) => message.length > 10)).toBe(true)
      expect(outsideDiameter).toBeLessThanOrEqual(board ?? 0)
    }
    for (const [path, number] of numberLeaves({ ranked, rest })) expect(Number.isFinite(number), path).toBe(true)
  })

  test('the design of an answer, sent on, is the bearing that was promised', async () => {
    const url = await address()
    for (const promised of (await found(url, REQUEST)).ranked) {
      const answer = await post(url.replace('design-search', 'design'), promised.design)
      expect(answer.status, answer.text).toBe(200)
      const made: {
        readonly ballGap: number
        readonly outerRing: { readonly outsideDiameter: number; readonly grooveBottomDiameter: number }
        readonly warnings: readonly { readonly code: string }[]
      } = JSON.parse(answer.text)
      expect(made.outerRing.outsideDiameter).toBe(promised.outsideDiameter)
      expect(made.outerRing.grooveBottomDiameter).toBe(promised.cutDiameter)
      expect(made.ballGap).toBe(promised.ballGap)
      expect(made.warnings.map(({ code }) => code)).toEqual(promised.warnings.map(({ code }) => code))
    }
  })

  test('the same request, the same bytes; pages that join', async () => {
    const url = await address()
    expect((await post(url, REQUEST)).text).toBe((await post(url, REQUEST)).text)
    const [one, two] = [
      await found(url, { ...REQUEST, limit: 3 }),
      await found(url, { ...REQUEST, offset: 3, limit: 3 }),
    ]
    expect([...one.ranked, ...two.ranked]).toEqual((await found(url, REQUEST)).ranked)
  })

  test('inches', async () => {
    const { units, ranked } = await found(await address(), {
      units: 'in',
      outsideDiameter: { min: '3', max: '8' },
      bore: { min: '1/4', max: '1/2' },
      balls: [{ diameter: '5/8', material: 'glass' }],
      cutterDiameters: ['3/4'],
      shopDenominator: 32,
    })
    expect(units).toBe('in')
    expect(ranked.length).toBe(10)
    for (const { outsideDiameter, design, criteria } of ranked) {
      expect(outsideDiameter).toBeLessThanOrEqual(8)
      expect(design.balls.diameter).toBe(0.625)
      expect(criteria[0]?.message).toMatch(/gap of [\d.]+ in, give or take/)
    }
  })

  test('a load that none bears: nothing, and why; a weight moves the order', async () => {
    const url = await address()
    const few = { ...REQUEST, counts: { min: 8, max: 12 } }
    const none = await found(url, { ...few, load: { radialLoad: 100_000 } })
    expect(none).toMatchObject({ ranked: [], more: false })
    expect(none.dropped.map(({ reason }) => reason)).toContain('dents-deeper')
    const only = await found(url, {
      ...few,
      weights: { running: 0, wall: 0, nesting: 0, seat: 0, material: 1 },
      riskDeduction: 0,
    })
    expect(only.ranked[0]?.score).toBe(only.ranked[0]?.criteria.find(({ name }) => name === 'material')?.mark)
  })
})

describe('every arrangement', () => {
  const LIMITS = {
    units: 'mm',
    outsideDiameter: { max: 180 },
    bore: { min: 8, max: 12 },
    balls: [{ diameter: 12, material: 'glass' }, { diameter: 16 }],
    limit: 4,
  }
  const LOADS = {
    radial: { radialLoad: 40 },
    roller: { radialLoad: 40 },
    caged: { radialLoad: 40 },
    thrust: { axialLoad: 40, offset: 5 },
  }

  test.each(Object.entries(LOADS))(
    '%s: the design of an answer, sent on, is that bearing; its input, sent again, gives the same answer',
    async (arrangement, load) => {
      const url = await address()
      const request = { ...LIMITS, arrangement, load, drillDiameters: [10] }
      const text = (await post(url, request)).text
      const { input, ranked } = JSON.parse(text) as { readonly input: object } & Found
      expect(ranked.length).toBe(4)
      for (const { design } of ranked) {
        const answer = await post(url.replace('design-search', 'design'), design)
        expect(answer.status, answer.text).toBe(200)
      }
      const again = JSON.parse((await post(url, input)).text) as Found
      expect(again.ranked).toEqual(ranked)
    },
  )

  test.each([
    [
      'roller',
      'roller bearings',
      { cutterDiameters: [16], outerEngagements: [0.2], split: 'none', weights: { seat: 1 } },
    ],
    [
      'thrust',
      'turntables',
      { width: 20, partingWidth: 3, outerEngagements: [0.2], weights: { nesting: 1 }, load: { radialLoad: 3 } },
    ],
    ['caged', 'caged bearings', { ballGap: 1, onlyOnRule: true, plugDiameters: [50], engagements: [0.3] }],
    ['radial', 'radial bearings', { engagements: [0.3], load: { axialLoad: 3 } }],
  ])('%s: a limit that it has not is refused by name', async (arrangement, bearings, more) => {
    const { errors = [] } = problemIn(await post(await address(), { ...LIMITS, arrangement, ...more }), 400)
    const foreign = errors.filter(({ message }) => message === `does not apply to ${bearings}: remove it`)
    expect(foreign.length).toBe(Object.keys(more).length)
    const rest = errors.filter((error) => !foreign.includes(error))
    for (const { message } of rest) expect(message).toMatch(/Load" is missing/)
  })
})

describe('a year that it must run through', () => {
  const YEAR = {
    woods: {
      outerRing: { construction: 'segmented', species: 'maple-sugar' },
      innerRing: { construction: 'cross-laminated-ply' },
    },
    climate: { today: { relativeHumidity: 50 }, relativeHumidity: { min: 30, max: 65 } },
  }
  const GLASS = { ...REQUEST, balls: REQUEST.balls.slice(0, 2), cutterDiameters: [17], limit: 2 }

  /** The chance of running all year, which no mark for running may exceed. */
  async function holdToSeasonalFit(url: string, ranked: Found['ranked'], making: object): Promise<void> {
    for (const { design, criteria } of ranked) {
      const season = await post(url.replace('design-search', 'seasonal-fit'), { design: { ...design, making } })
      expect(season.status, season.text).toBe(200)
      const { probability }: { probability: { runsAllYear: number } } = JSON.parse(season.text)
      const running = criteria.find(({ name }) => name === 'running')?.mark
      expect(running).toBeGreaterThan(0)
      expect(running).toBeLessThanOrEqual(probability.runsAllYear)
    }
  }

  test('with no better chance than seasonal fit gives each', async () => {
    const url = await address()
    const { ranked } = await found(url, { ...GLASS, year: YEAR })
    expect(ranked.length).toBe(2)
    await holdToSeasonalFit(url, ranked, YEAR)
  })

  const PLY = { construction: 'cross-laminated-ply' }
  test.each([
    ['roller', { outerRing: PLY, innerRing: PLY }],
    ['thrust', { plates: { species: 'maple-sugar' } }],
    ['caged', { outerRing: PLY, innerRing: PLY, cage: { species: 'maple-sugar', construction: 'quarter-sawn' } }],
  ])('of a %s bearing, with the woods of its own parts', async (arrangement, woods) => {
    const url = await address()
    const year = { ...YEAR, woods }
    const { units, outsideDiameter, bore } = REQUEST
    const balls = [{ diameter: 16, material: 'steel' }]
    const { ranked } = await found(url, { units, outsideDiameter, bore, arrangement, balls, year, limit: 2 })
    expect(ranked.length).toBe(2)
    await holdToSeasonalFit(url, ranked, year)
    const without = { units, outsideDiameter, bore, arrangement, balls, year: { ...year, woods: {} } }
    expect(faultsIn(await post(url, without)).join()).toMatch(/"\w+" is missing/)
  })

  test('what is wrong with it, with its place: 400 for words, 422 for what cannot be', async () => {
    const url = await address()
    const words = faultsIn(
      await post(url, {
        ...GLASS,
        year: {
          woods: { outerRing: { species: 'mapel-sugar' }, innerRing: {}, balls: { species: 'maple-sugar' } },
          climate: { today: {} },
        },
      }),
    ).join('\n')
    for (const path of ['/year/woods/outerRing/species', '/year/woods/innerRing', '/year/climate', '/year/woods/balls'])
      expect(words).toContain(`${path}: `)
    const turned = { ...YEAR, climate: { ...YEAR.climate, relativeHumidity: { min: 65, max: 30 } } }
    const refused = problemIn(await post(url, { ...GLASS, year: turned }), 422)
    expect(refused.errors?.map(({ path }) => path)).toEqual(['/year/climate/relativeHumidity'])
    const wooden = problemIn(await post(url, { ...GLASS, balls: [{ diameter: 16 }], year: YEAR }), 422)
    expect(wooden.errors?.map(({ path }) => path)).toEqual(['/year/woods/balls'])
  })
})

describe('refused in words, with the place', () => {
  test('limits the wrong way round, and a grid that is too large: 400', async () => {
    const url = await address()
    const turned = faultsIn(
      await post(url, {
        ...REQUEST,
        outsideDiameter: { min: 300, max: 200 },
        bore: { min: 12, max: 8 },
        counts: { min: 20, max: 10 },
      }),
    ).join('\n')
    expect(turned).toMatch(/\/outsideDiameter\/min: The smallest, 300 mm, is above/)
    expect(turned).toMatch(/\/bore\/min: /)
    expect(turned).toMatch(/\/counts\/min: /)
    const large = { ...REQUEST, bore: { min: 0.001, max: 10_000, step: 0.001 } }
    expect(faultsIn(await post(url, large)).join()).toMatch(/combinations, but a search takes at most 100000/)
    const loaded = { ...REQUEST, bore: { min: 1, max: 100, step: 1 }, load: { radialLoad: 10 } }
    expect(faultsIn(await post(url, loaded)).join()).toMatch(/a search with a load or a year takes at most 40000/)
  })

  test('what is not of the schema: 400 with everything at once, and the next request is served', async () => {
    const url = await address()
    const faults = faultsIn(
      await post(url, {
        ...REQUEST,
        balls: [],
        show: 'best',
        weights: { run: 1 },
        load: {},
        limit: 0,
        boards: [1],
      }),
    ).join('\n')
    for (const path of ['/balls', '/show', '/weights/run', '/load/radialLoad', '/limit', '/boards']) {
      expect(faults).toContain(`${path}: `)
    }
    for (const odd of ['', '{}', '[]', 'null', '{"units":"mm","balls":[{}]}']) problemIn(await post(url, odd), 400)
    expect((await found(url, REQUEST)).ranked.length).toBe(6)
  })

  test('limits that nothing can keep are answered: no page', async () => {
    const url = await address()
    for (const [min, max] of [
      [0.001, 0.001],
      [9000, 10_000],
    ]) {
      const none = await found(url, { ...REQUEST, outsideDiameter: { min, max } })
      expect(none.ranked).toEqual([])
      expect(none.dropped.reduce((sum, { count }) => sum + count, 0)).toBe(none.candidates)
    }
    const five = await found(url, { ...REQUEST, counts: { max: 5 } })
    expect(five.ranked.every(({ design }) => design.balls.count <= 5)).toBe(true)
  })

  test('GET is not offered', async () => {
    expect(problemIn(await ask(await address()), 405).status).toBe(405)
  })
})

test('while a large search runs, others are served; a hundred thousand combinations are no trouble', async () => {
  const url = await address()
  const large = {
    ...REQUEST,
    balls: Array.from({ length: 12 }, (_, place) => ({ diameter: 10 + place })),
    bore: { min: 6, max: 40 },
  }
  const [search, design] = await Promise.all([
    found(url, large),
    post(url.replace('design-search', 'design'), { units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12 }),
  ])
  expect(design.status).toBe(200)
  expect(search.candidates).toBeGreaterThan(40_000)
})
