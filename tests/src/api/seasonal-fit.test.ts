import { describe, expect, test } from 'vitest'
import { namesIn, withValue } from '#shared/bearing/field.ts'
import { faultsIn, post, problemIn } from '#tests/support/ask.ts'
import { inMaking } from '#tests/support/in-making.ts'
import { numberLeaves } from '#tests/support/number-leaves.ts'
import { sharedApp } from '#tests/support/started-app.ts'

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
  readonly runs: number
  readonly troubles: readonly string[]
  readonly message: string
}
type Season = {
  readonly units: string
  readonly input: { readonly design: { readonly making: { readonly climate: object } } }
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
  readonly probability: { readonly goesTogether: number; readonly runsAllYear: number; readonly knocks: number }
  readonly buildIn: {
    readonly action: string
    readonly changes: readonly { readonly path: string; readonly value: unknown }[]
    readonly probability: Season['probability']
    readonly message: string
  }
  readonly warnings: readonly { readonly code: string; readonly path: string }[]
  readonly notes: readonly string[]
  readonly sources: readonly { readonly id: string }[]
}

/** The whole request of an answer with its advice taken, as a caller takes it. */
function changed({ input, buildIn }: Season): object {
  return buildIn.changes.reduce<object>((whole, { path, value }) => withValue(whole, namesIn(path), value), input)
}

const address = async () => `${await sharedApp()}/v1/seasonal-fit`

async function season(url: string, request: object): Promise<Season> {
  const answer = await post(url, inMaking(request))
  expect(answer.status, answer.text).toBe(200)
  return JSON.parse(answer.text)
}

describe('a house between 30 and 65 % of humidity', () => {
  test('flat-sawn maple binds, and says what to change; with that it has the chances that were promised', async () => {
    const url = await address()
    const asDesigned = await season(url, REQUEST)
    expect(asDesigned.runsAllYear).toBe(false)
    expect(asDesigned.states.map(({ name }) => name)).toEqual(['driest', 'dampest'])
    expect(asDesigned.warnings.map(({ code }) => code)).toContain('rings-bind')
    expect(asDesigned.today.troubles).toEqual([])
    expect(asDesigned.buildIn.changes).not.toEqual([])
    const again = await season(url, changed(asDesigned))
    expect(again.runsAllYear).toBe(true)
    expect(again.probability).toEqual(asDesigned.buildIn.probability)
    expect(again.buildIn).toMatchObject({ action: 'leave', changes: [] })
  })

  test('what is echoed, sent again, gives the same answer', async () => {
    const url = await address()
    const first = await season(url, REQUEST)
    expect(first.input.design.making.climate).toMatchObject({ temperatureScale: 'celsius', today: { temperature: 20 } })
    const { assumed, ...again } = await season(url, first.input)
    expect({ ...again, assumed: first.assumed }).toEqual(first)
    expect(assumed).toEqual([])
  })

  test('ply runs in every state; the same bearing in inches gives the same sizes', async () => {
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
    for (const { troubles } of inMillimetres.states) expect(troubles).toEqual([])
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

  test('a wood from memory says so in a design and in a search as well', async () => {
    const teak = { species: 'teak', construction: 'quarter-sawn' }
    const woods = { outerRing: teak, innerRing: MAPLE }
    const climate = { today: { relativeHumidity: 50 }, relativeHumidity: { min: 40, max: 60 } }
    const balls = { count: 12, diameter: 14, material: 'glass' }
    const notes = async (path: string, request: object) => {
      const answer = await post(`${await sharedApp()}/v1/${path}`, { units: 'mm', ...request })
      expect(answer.status, answer.text).toBe(200)
      const { warnings } = JSON.parse(answer.text) as { readonly warnings: readonly { code: string; path: string }[] }
      return warnings.filter(({ code }) => code === 'movement-from-memory').map((note) => note.path)
    }
    expect(await notes('design', { balls, bore: 10, making: { woods, climate } })).toEqual([
      '/making/woods/outerRing/species',
    ])
    const limits = { outsideDiameter: { max: 120 }, bore: { min: 10, max: 10 }, counts: { min: 12, max: 12 }, limit: 1 }
    const { count: _, ...stock } = balls
    expect(await notes('design-search', { ...limits, balls: [stock], year: { woods, climate } })).toEqual([
      '/year/woods/outerRing/species',
    ])
  })

  test('a wood from memory says so', async () => {
    const teak = { construction: 'quarter-sawn', species: 'teak' }
    const { warnings, sources } = await season(await address(), {
      ...REQUEST,
      woods: { outerRing: teak, innerRing: MAPLE },
    })
    expect(warnings).toContainEqual(
      expect.objectContaining({ code: 'movement-from-memory', path: '/design/making/woods/outerRing/species' }),
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
      '/design/making/woods/outerRing/species: Unknown species "mapel". The nearest are "maple-',
    ],
    ['no wood', woodsWith({}), '/design/making/woods/outerRing: "species" is missing'],
    ['no wood of a ring', { ...REQUEST, woods: { innerRing: MAPLE } }, '/design/making/woods: "outerRing" is missing'],
    [
      'the wood of another arrangement',
      { ...REQUEST, woods: { ...REQUEST.woods, plates: MAPLE } },
      '/design/making/woods/plates: does not apply to radial bearings: remove it',
    ],
    [
      'the wood of ply',
      woodsWith({ construction: 'cross-laminated-ply', species: 'maple-sugar' }),
      '/design/making/woods/outerRing/species: does not apply to `cross-laminated-ply`: remove it',
    ],
    [
      'humidity above 100 %',
      climateWith({ today: { relativeHumidity: 101 } }),
      '/design/making/climate/today/relativeHumidity: must be a number from 0 to 100; 101 was given',
    ],
    [
      'humidity below 0',
      climateWith({ relativeHumidity: { min: -1, max: 60 } }),
      '/design/making/climate/relativeHumidity/min: must be a number from 0 to 100',
    ],
    [
      'two ways to say the year',
      climateWith({ moistureContent: { min: 6, max: 9 } }),
      '/design/making/climate: give either "relativeHumidity" or "moistureContent", not both',
    ],
    [
      'no year',
      { ...REQUEST, climate: { today: { relativeHumidity: 50 } } },
      '/design/making/climate: must state the year',
    ],
    ['no today', climateWith({ today: {} }), '/design/making/climate/today: must state how damp it is today'],
    ['a misspelt field', climateWith({ humidity: 5 }), '/design/making/climate/humidity: Unknown name "humidity"'],
    [
      'a half range',
      climateWith({ relativeHumidity: { min: 30 } }),
      '/design/making/climate/relativeHumidity/max: "max" is missing',
    ],
    [
      'the wood of glass',
      { ...REQUEST, woods: { ...REQUEST.woods, balls: { species: 'maple-sugar' } } },
      '/design/making/woods/balls: does not apply unless',
    ],
    [
      'no months',
      { ...REQUEST, climate: { today: { relativeHumidity: 50 }, months: [] } },
      '/design/making/climate/months: must have at least 1 entry',
    ],
    [
      'a nameless month',
      {
        ...REQUEST,
        climate: { today: { relativeHumidity: 50 }, months: [{ name: '', temperature: 20, relativeHumidity: 40 }] },
      },
      '/design/making/climate/months/0/name',
    ],
    [
      'a prototype',
      woodsWith({ species: '__proto__' }),
      '/design/making/woods/outerRing/species: Unknown species "__proto__"',
    ],
    [
      'text for a number',
      climateWith({ today: { relativeHumidity: '50' } }),
      '/design/making/climate/today/relativeHumidity: must be a number',
    ],
  ])('%s', async (_what, request, expected) => {
    const faults = faultsIn(await post(await address(), inMaking(request)))
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
      '/design/making/climate/today',
      'above the fibre saturation of wood (30 %)',
    ],
    [
      'wetter than teak holds',
      {
        ...woodsWith({ species: 'teak' }),
        climate: { today: { moistureContent: 10 }, moistureContent: { min: 5, max: 25 } },
      },
      '/design/making/climate/moistureContent/max',
      'fibre saturation of teak',
    ],
    [
      'a wood whose movement is not known',
      woodsWith({ species: 'purpleheart' }),
      '/design/making/woods/outerRing/species',
      'is not known',
    ],
    [
      'a range the wrong way round',
      climateWith({ relativeHumidity: { min: 65, max: 30 } }),
      '/design/making/climate/relativeHumidity',
      'above the high end',
    ],
    [
      'a frost as at a pole',
      climateWith({ temperature: { min: -40, max: 20 } }),
      '/design/making/climate/temperature/min',
      'from −30 °C to 71.1 °C',
    ],
    [
      'wooden balls of no wood',
      { ...REQUEST, design: { ...DESIGN, balls: { count: 14, diameter: 14 } } },
      '/design/making/woods/balls',
      'of wood',
    ],
    ['no such bearing', { ...REQUEST, design: { ...DESIGN, bore: 60 } }, '/design/bore', 'cuts into'],
  ])('%s', async (_what, request, path, words) => {
    const { errors = [] } = problemIn(await post(await address(), inMaking(request)), 422)
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

test('an unheated workshop: frost has an answer, and a note of what is not known', async () => {
  const { states, notes, band } = await season(await address(), {
    ...REQUEST,
    climate: {
      today: { temperature: 15, relativeHumidity: 60 },
      temperature: { min: -10, max: 30 },
      relativeHumidity: { min: 40, max: 100 },
    },
  })
  expect(states.map(({ temperature }) => temperature)).toEqual([30, -10])
  expect(notes).toContainEqual(expect.stringContaining('colder than −1.1 °C'))
  expect(band?.max.relativeHumidity).toBeLessThanOrEqual(100)
})

test('teak stops swelling at 22 %, however damp the air', async () => {
  const teak = { construction: 'flat-sawn', species: 'teak' }
  const inAir = async (max: number) =>
    season(await address(), {
      ...REQUEST,
      woods: { outerRing: teak, innerRing: teak },
      climate: { today: { relativeHumidity: 50 }, relativeHumidity: { min: 50, max } },
    })
  const [damp, saturated] = [await inAir(95), await inAir(100)]
  expect(saturated.states[1]?.outerRing).toEqual(damp.states[1]?.outerRing)
})

/** Bearings of Larkmoor's (invented), with their woods and what only they answer. */
const ARRANGED = [
  ['radial', DESIGN, { outerRing: MAPLE, innerRing: MAPLE }, ['ballGap', 'radialInternalClearance', 'leastLandGap']],
  [
    'roller',
    { units: 'mm', arrangement: 'roller', balls: { count: 14, diameter: 12, material: 'steel' }, bore: 16 },
    { outerRing: MAPLE, innerRing: MAPLE },
    ['ballGap', 'radialInternalClearance', 'endPlay'],
  ],
  [
    'thrust',
    { units: 'in', arrangement: 'thrust', balls: { count: 24, diameter: '5/8', material: 'glass' }, bore: 2.5 },
    { plates: MAPLE },
    ['plates', 'ballGap', 'flankRoom'],
  ],
  [
    'caged',
    { units: 'mm', arrangement: 'caged', balls: { count: 9, diameter: 16, material: 'glass' }, bore: 20 },
    { outerRing: MAPLE, innerRing: MAPLE, cage: MAPLE },
    ['cage', 'radialInternalClearance', 'cageClearance', 'pocketClearance'],
  ],
] as const

test.each(ARRANGED)(
  '%s: an answer of its own, and advice that keeps its promise',
  async (name, design, woods, fields) => {
    const url = await address()
    const answer = await season(url, { ...REQUEST, design, woods })
    expect(answer).toMatchObject({ arrangement: name })
    for (const field of fields) expect(answer.states[0]).toHaveProperty(field)
    const foreign = ARRANGED.flatMap(([, , , other]) => other).filter((field) => !fields.some((own) => own === field))
    for (const field of foreign) if (!OF_ALL_RINGS.has(field)) expect(answer.states[0]).not.toHaveProperty(field)
    const again = await season(url, changed(answer))
    expect(again.probability).toEqual(answer.buildIn.probability)
  },
)
/** Fields that are checked above, of one arrangement and of others. */
const OF_ALL_RINGS: ReadonlySet<string> = new Set(['leastLandGap'])
