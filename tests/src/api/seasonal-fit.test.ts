import { describe, expect, test } from 'vitest'
import { faultsIn, post, problemIn } from '#tests/support/ask.ts'
import { numberLeaves } from '#tests/support/number-leaves.ts'
import { startedApp } from '#tests/support/started-app.ts'

/** An invented bearing in an invented house. */
const DESIGN = { units: 'mm', balls: { count: 14, diameter: 14, material: 'glass' }, bore: 10, ballGap: 0.7 }
const MAPLE = { construction: 'flat-sawn', species: 'maple-sugar' }
const REQUEST = {
  design: DESIGN,
  woods: { outerRing: MAPLE, innerRing: MAPLE },
  climate: { today: { relativeHumidity: 50 }, relativeHumidity: { min: 30, max: 65 } },
}

type State = {
  readonly name: string
  readonly temperature: number
  readonly relativeHumidity?: number
  readonly moistureContent: number
  readonly outerRing: { readonly alongGrain: number; readonly acrossGrain: number; readonly outOfRound: number }
  readonly ballDiameter: { readonly min: number; readonly mean: number; readonly max: number }
  readonly ballGap: { readonly min: number; readonly max: number }
  readonly radialInternalClearance: { readonly min: number; readonly max: number }
  readonly worstRotation?: number
  readonly troubles: readonly string[]
  readonly message: string
}
type Season = {
  readonly units: string
  readonly input: { readonly design: object; readonly woods: object; readonly climate: object }
  readonly assumed: readonly { readonly path: string }[]
  readonly runsAllYear: boolean
  readonly today: State
  readonly states: readonly State[]
  readonly band?: {
    readonly temperature: number
    readonly min: { readonly relativeHumidity: number }
    readonly max: { readonly relativeHumidity: number }
    readonly message: string
  }
  readonly buildIn: {
    readonly ballGap: number
    readonly ballGapRange: { readonly min: number }
    readonly radialInternalClearance: number
    readonly message: string
  }
  readonly warnings: readonly { readonly code: string; readonly path: string }[]
  readonly notes: readonly string[]
  readonly sources: readonly { readonly id: string }[]
}

const address = async () => `${await startedApp()}/v1/seasonal-fit`

async function season(url: string, request: object): Promise<Season> {
  const answer = await post(url, request)
  expect(answer.status, answer.text).toBe(200)
  return JSON.parse(answer.text)
}

describe('a house between 30 and 65 % of humidity', () => {
  test('flat-sawn maple binds, and says what to build in; built so, it runs', async () => {
    const url = await address()
    const asDesigned = await season(url, REQUEST)
    expect(asDesigned.runsAllYear).toBe(false)
    expect(asDesigned.states.map(({ name }) => name)).toEqual(['driest', 'dampest'])
    expect(asDesigned.warnings.map(({ code }) => code)).toContain('rings-bind')
    expect(asDesigned.today.troubles).toEqual([])
    const { ballGap, radialInternalClearance } = asDesigned.buildIn
    const built = { ...DESIGN, ballGap, radialInternalClearance, maxBallGap: 4 }
    expect((await season(url, { ...REQUEST, design: built })).runsAllYear).toBe(true)
  })

  test('what is echoed, sent again, gives the same answer', async () => {
    const url = await address()
    const first = await season(url, REQUEST)
    expect(first.input.climate).toMatchObject({ temperatureScale: 'celsius', today: { temperature: 20 } })
    const { assumed, ...again } = await season(url, first.input)
    expect({ ...again, assumed: first.assumed }).toEqual(first)
    expect(assumed).toEqual([])
  })

  test('ply runs all year; the same bearing in inches gives the same sizes', async () => {
    const url = await address()
    const ply = { construction: 'cross-laminated-ply' }
    const woods = { outerRing: ply, innerRing: ply }
    const inMillimetres = await season(url, { ...REQUEST, woods })
    const inInches = await season(url, {
      ...REQUEST,
      woods,
      design: {
        units: 'in',
        balls: { count: 14, diameter: '14 mm', material: 'glass' },
        bore: '10 mm',
        ballGap: '0.7 mm',
        outerRing: { roundOutsideDiameterTo: '5 mm' },
      },
    })
    expect(inMillimetres.runsAllYear).toBe(true)
    // Half the last digit of either answer: 1e-7 in and 1e-6 mm.
    for (const [i, { ballGap }] of inInches.states.entries())
      expect(ballGap.min * 25.4).toBeWithin(12.7e-7 + 0.5e-6, inMillimetres.states[i]?.ballGap.min ?? Number.NaN)
  })

  test('in degrees F as in degrees C', async () => {
    const url = await address()
    const climate = {
      ...REQUEST.climate,
      temperature: { min: 15, max: 25 },
      today: { temperature: 20, relativeHumidity: 50 },
    }
    const celsius = await season(url, { ...REQUEST, climate })
    const fahrenheit = await season(url, {
      ...REQUEST,
      climate: {
        ...climate,
        temperatureScale: 'fahrenheit',
        temperature: { min: 59, max: 77 },
        today: { temperature: 68, relativeHumidity: 50 },
      },
    })
    expect(fahrenheit.today.temperature).toBeWithin(1e-9, 68)
    expect(fahrenheit.band?.temperature).toBeWithin(1e-9, 68)
    for (const [i, { moistureContent }] of celsius.states.entries())
      expect(fahrenheit.states[i]?.moistureContent).toBeWithin(1e-9, moistureContent)
  })

  test('a table of months comes back month by month', async () => {
    const months = ['January', 'April', 'July'].map((name, i) => ({
      name,
      temperature: 18 + i,
      relativeHumidity: 35 + 10 * i,
    }))
    const { states } = await season(await address(), { ...REQUEST, climate: { today: { moistureContent: 8 }, months } })
    expect(states.map(({ name }) => name)).toEqual(['January', 'April', 'July'])
  })

  test('every number is finite, and nobody needs digits behind the figures of a sentence', async () => {
    const answer = await season(await address(), {
      ...REQUEST,
      design: { ...DESIGN, balls: { count: 14, diameter: 14 } },
      woods: { ...REQUEST.woods, balls: { species: 'birch-paper' } },
    })
    expect(numberLeaves(answer).every(([, value]) => Number.isFinite(value))).toBe(true)
    for (const { message } of [answer.today, ...answer.states]) expect(message).not.toMatch(/\d\.\d{3,}|NaN|undefined/)
    expect(answer.today.ballDiameter.min).toBe(answer.today.ballDiameter.max)
    expect(answer.states[0]?.ballDiameter.min).toBeLessThan(answer.states[0]?.ballDiameter.max ?? Number.NaN)
  })

  test('a wood from memory says so', async () => {
    const teak = { construction: 'quarter-sawn', species: 'teak' }
    const { warnings, sources } = await season(await address(), {
      ...REQUEST,
      woods: { outerRing: teak, innerRing: MAPLE },
    })
    expect(warnings).toContainEqual(
      expect.objectContaining({ code: 'movement-from-memory', path: '/woods/outerRing/species' }),
    )
    expect(sources.map(({ id }) => id)).toEqual(expect.arrayContaining(['fpl-13-5-memory', 'fpl-13-5', 'fpl-4-5']))
  })
})

const woodsWith = (outerRing: object) => ({ ...REQUEST, woods: { outerRing, innerRing: MAPLE } })
const climateWith = (climate: object) => ({ ...REQUEST, climate: { ...REQUEST.climate, ...climate } })

describe('not valid', () => {
  test.each<readonly [string, object, string]>([
    [
      'an unknown wood',
      woodsWith({ species: 'mapel' }),
      '/woods/outerRing/species: Unknown species "mapel". The nearest are "maple-',
    ],
    ['no wood', woodsWith({}), '/woods/outerRing: "species" is missing'],
    [
      'the wood of ply',
      woodsWith({ construction: 'cross-laminated-ply', species: 'maple-sugar' }),
      '/woods/outerRing/species: makes no difference to cross-laminated ply',
    ],
    [
      'humidity above 100 %',
      climateWith({ today: { relativeHumidity: 101 } }),
      '/climate/today/relativeHumidity: must be a number from 0 to 100; 101 was given',
    ],
    [
      'humidity below 0',
      climateWith({ relativeHumidity: { min: -1, max: 60 } }),
      '/climate/relativeHumidity/min: must be a number from 0 to 100',
    ],
    [
      'two ways to say the year',
      climateWith({ moistureContent: { min: 6, max: 9 } }),
      '/climate: give either "relativeHumidity" or "moistureContent", not both',
    ],
    ['no year', { ...REQUEST, climate: { today: { relativeHumidity: 50 } } }, '/climate: must state the year'],
    ['no today', climateWith({ today: {} }), '/climate/today: must state how damp it is today'],
    ['a misspelt field', climateWith({ humidity: 5 }), '/climate/humidity: Unknown name "humidity"'],
    ['a half range', climateWith({ relativeHumidity: { min: 30 } }), '/climate/relativeHumidity/max: "max" is missing'],
    [
      'the wood of glass',
      { ...REQUEST, woods: { ...REQUEST.woods, balls: { species: 'maple-sugar' } } },
      '/woods/balls: does not apply unless',
    ],
    [
      'no months',
      { ...REQUEST, climate: { today: { relativeHumidity: 50 }, months: [] } },
      '/climate/months: must have at least 1 entry',
    ],
    [
      'a nameless month',
      {
        ...REQUEST,
        climate: { today: { relativeHumidity: 50 }, months: [{ name: '', temperature: 20, relativeHumidity: 40 }] },
      },
      '/climate/months/0/name',
    ],
    ['a prototype', woodsWith({ species: '__proto__' }), '/woods/outerRing/species: Unknown species "__proto__"'],
    [
      'text for a number',
      climateWith({ today: { relativeHumidity: '50' } }),
      '/climate/today/relativeHumidity: must be a number',
    ],
  ])('%s', async (_what, request, expected) => {
    const faults = faultsIn(await post(await address(), request))
    expect(
      faults.some((fault) => fault.startsWith(expected)),
      faults.join('\n'),
    ).toBe(true)
  })
})

describe('cannot exist', () => {
  test.each<readonly [string, object, string, string]>([
    [
      'moisture above fibre saturation',
      climateWith({ today: { moistureContent: 35 } }),
      '/climate/today',
      'above the fibre saturation of wood (30 %)',
    ],
    [
      'wetter than teak holds',
      {
        ...woodsWith({ species: 'teak' }),
        climate: { today: { moistureContent: 10 }, moistureContent: { min: 5, max: 25 } },
      },
      '/climate/moistureContent/max',
      'Teak',
    ],
    [
      'a wood whose movement is not known',
      woodsWith({ species: 'purpleheart' }),
      '/woods/outerRing/species',
      'is not known',
    ],
    [
      'a range the wrong way round',
      climateWith({ relativeHumidity: { min: 65, max: 30 } }),
      '/climate/relativeHumidity',
      'above the high end',
    ],
    [
      'frost',
      climateWith({ temperature: { min: -20, max: 20 } }),
      '/climate/temperature/min',
      'from -1.1 °C to 71.1 °C',
    ],
    [
      'wooden balls of no wood',
      { ...REQUEST, design: { ...DESIGN, balls: { count: 14, diameter: 14 } } },
      '/woods/balls',
      'of wood',
    ],
    ['no such bearing', { ...REQUEST, design: { ...DESIGN, bore: 60 } }, '/design/bore', 'cuts into'],
  ])('%s', async (_what, request, path, words) => {
    const { errors = [] } = problemIn(await post(await address(), request), 422)
    expect(errors.find((error) => error.path === path)?.message).toContain(words)
  })
})

test('three balls, and two hundred, in any weather', async () => {
  const url = await address()
  for (const count of [3, 200]) {
    const design = { ...DESIGN, balls: { ...DESIGN.balls, count }, bore: 0.5, ballGap: 1 }
    const { states } = await season(url, {
      ...REQUEST,
      design,
      climate: { today: { relativeHumidity: 100 }, relativeHumidity: { min: 0, max: 100 } },
    })
    expect(states).toHaveLength(2)
  }
})
