import { describe, expect, test } from 'vitest'
import { ask, faultsIn, post, problemIn } from '#tests/support/ask.ts'
import { numberLeaves } from '#tests/support/number-leaves.ts'
import { sharedApp } from '#tests/support/started-app.ts'

/** An invented bearing. */
const DESIGN = { units: 'mm', balls: { count: 14, diameter: 14, material: 'glass' }, bore: 10, ballGap: 0.7 }

type Ring = {
  readonly finishCircle: number
  readonly roughCircle: number
  readonly pieces: number
  readonly boards: readonly { readonly nominalThickness: string; readonly planing: number }[]
  readonly segments?: { readonly miter: number }
}
type Answer = {
  readonly input: { readonly making?: Readonly<Record<string, unknown>> }
  readonly outerRing: { readonly outsideDiameter: number }
  readonly making?: {
    readonly outerRing: Ring
    readonly innerRing: Ring
    readonly nesting: { readonly nests: boolean; readonly largestAllowance?: number; readonly message: string }
    readonly split?: { readonly screws?: { readonly size: string; readonly count: number } }
  }
  readonly warnings: readonly {
    readonly code: string
    readonly path: string
    readonly suggestion?: { readonly path: string; readonly value: number }
  }[]
}

async function designed(url: string, request: object): Promise<Answer> {
  const answer = await post(`${url}/v1/design`, request)
  expect(answer.status, answer.text).toBe(200)
  return JSON.parse(answer.text)
}

describe('making in the answer of a design', () => {
  test('is there for who asks for it, and for nobody else', async () => {
    const url = await sharedApp()
    const plain = await designed(url, DESIGN)
    expect(plain.making).toBeUndefined()
    expect(plain.input.making).toBeUndefined()
    const { making, outerRing, ...asked } = await designed(url, { ...DESIGN, making: {} })
    expect(making?.outerRing).toMatchObject({
      finishCircle: outerRing.outsideDiameter,
      roughCircle: outerRing.outsideDiameter + 12,
      pieces: 1,
    })
    expect(asked.input.making).toMatchObject({ lumber: 'hardwood', allowances: { turning: 6 }, boardLength: 2400 })
  })

  test('what is echoed, sent again, gives the same answer', async () => {
    const url = await sharedApp()
    const making = {
      woods: { outerRing: { segments: { count: 12 } } },
      screws: { count: 6 },
      chuck: { min: 40, max: '4 in' },
      swing: 250,
    }
    const first = await designed(url, { ...DESIGN, making })
    const again = await designed(url, first.input)
    expect(again.input).toEqual(first.input)
    expect(again.making).toEqual(first.making)
    expect(first.making?.outerRing.segments?.miter).toBe(15)
  })

  test('by query', async () => {
    const query =
      'units=mm&balls.count=14&balls.diameter=14&bore=10&making.lumber=softwood&making.woods.innerRing.segments.count=8'
    const answer = await ask(`${await sharedApp()}/v1/design?${query}`)
    expect(answer.status, answer.text).toBe(200)
    const { making }: Answer = JSON.parse(answer.text)
    expect(making?.innerRing.segments?.miter).toBe(22.5)
  })

  test('a screw for which there is no wood: the suggestion clears it', async () => {
    const url = await sharedApp()
    const thin = { ...DESIGN, bore: 36, width: 24, making: {} }
    const warning = (await designed(url, thin)).warnings.find(({ code }) => code === 'wall-too-thin-for-screws')
    expect(warning?.suggestion?.path).toBe('/bore')
    const { making, warnings } = await designed(url, { ...thin, bore: warning?.suggestion?.value })
    expect(warnings.map(({ code }) => code)).not.toContain('wall-too-thin-for-screws')
    expect(making?.split?.screws?.size).toBe('3 mm')
  })

  test('and for an outer ring in halves, however its outside was said', async () => {
    const url = await sharedApp()
    const common = { ...DESIGN, split: 'outer-ring', width: 24, making: {} }
    for (const outerRing of [{ wall: 4, roundOutsideDiameterTo: null }, { outsideDiameter: 86 }]) {
      const isOfScrews = ({ code }: Answer['warnings'][number]) => code === 'wall-too-thin-for-screws'
      const { warnings } = await designed(url, { ...common, outerRing })
      const { path, value } = warnings.find(isOfScrews)?.suggestion ?? { path: '', value: 0 }
      const [, name = ''] = /^\/outerRing\/(\w+)$/.exec(path) ?? []
      const mended = await designed(url, { ...common, outerRing: { ...outerRing, [name]: value } })
      expect(mended.warnings.filter(isOfScrews)).toEqual([])
    }
  })

  test('every number is finite, for small rings and large ones, in both units', async () => {
    const url = await sharedApp()
    for (const units of ['in', 'mm']) {
      for (const [count, diameter, bore] of [
        [3, 0.05, 0.001],
        [200, 40, 100],
        [12, 1000, 1],
      ]) {
        const answer = await designed(url, { units, balls: { count, diameter }, bore, making: { lumber: 'softwood' } })
        expect(numberLeaves(answer).every(([, value]) => Number.isFinite(value))).toBe(true)
        expect(answer.making?.nesting.message).not.toMatch(/NaN|undefined|Infinity/)
      }
    }
  })

  test.each<readonly [object, string]>([
    [{ lumber: 'oak' }, '/making/lumber'],
    [{ allowances: { turning: -1 } }, '/making/allowances/turning'],
    [{ woods: { outerRing: { segments: { count: 2 } } } }, '/making/woods/outerRing/segments/count'],
    [{ woods: { outerRing: { segments: { count: 12.5 } } } }, '/making/woods/outerRing/segments/count'],
    [{ screws: { gauge: 5 } }, '/making/screws/gauge'],
    [{ screws: { count: 1e9 } }, '/making/screws/count'],
    [{ chuck: { min: 40 } }, '/making/chuck/max'],
    [{ kerf: 3 }, '/making/kerf'],
    [{ chuck: { min: 50, max: '2 mm' } }, '/making/chuck/min'],
    [{ swing: '1/0' }, '/making/swing'],
    [{ boardLength: 0 }, '/making/boardLength'],
    [{ boardLength: 900, boards: [{ thickness: 27, width: 150, length: 900 }] }, '/making/boardLength'],
    [{ allowances: { miterKerf: 3 } }, '/making/allowances/miterKerf'],
    [{ allowances: { entryHole: 8 }, method: 'lathe-only' }, '/making/allowances/entryHole'],
    [
      { allowances: { entryHole: 8 }, woods: { outerRing: { segments: { count: 8 } } } },
      '/making/allowances/entryHole',
    ],
    [
      {
        allowances: { sawKerf: 2 },
        woods: { outerRing: { segments: { count: 8 } }, innerRing: { segments: { count: 8 } } },
      },
      '/making/allowances/sawKerf',
    ],
  ])('%j is turned away', async (making, path) => {
    const faults = faultsIn(await post(`${await sharedApp()}/v1/design`, { ...DESIGN, making }))
    expect(
      faults.some((fault) => fault.startsWith(`${path}:`)),
      faults.join(),
    ).toBe(true)
  })
})

test('what would change nothing is left out of a plan that is filled in, and comes back where it counts', async () => {
  const filledIn = async (making: object) => {
    const { text } = await post(`${await sharedApp()}/v1/design`, { ...DESIGN, making })
    return JSON.parse(text).input.making
  }
  expect((await filledIn({})).allowances).not.toHaveProperty('miterKerf')
  const glued = await filledIn({ woods: { innerRing: { segments: { count: 8 } } }, allowances: { miterKerf: 3 } })
  expect(glued.allowances.miterKerf).toBe(3)
  expect(await filledIn({ boards: [{ thickness: 27, width: 150, length: 900 }] })).not.toHaveProperty('boardLength')
})

test('fractions of a rule do not apply in millimetres', async () => {
  const answer = await post(`${await sharedApp()}/v1/design`, { ...DESIGN, shopDenominator: 32 })
  expect(faultsIn(answer)).toEqual(['/shopDenominator: does not apply in millimetres: remove it'])
})

describe('making of the sisters', () => {
  const asked = async (arrangement: string, making: object = {}) => {
    const url = await sharedApp()
    const answer = await post(`${url}/v1/design`, {
      units: 'mm',
      arrangement,
      balls: { count: 9, diameter: 16 },
      bore: 12,
      making,
    })
    return { status: answer.status, said: JSON.parse(answer.text) }
  }

  test('rollers: the inner ring is as wide as the rollers are long, and two cheeks are as large as the outer ring', async () => {
    const { said } = await asked('roller', { allowances: { turning: 5 } })
    const { making, outerRing, cheeks, rollerLength } = said
    expect(making.innerRing).toMatchObject({ thickness: rollerLength, pieces: 1 })
    expect(making.outerRing.thickness).toBe(outerRing.width)
    expect(making.cheeks).toMatchObject({
      finishCircle: outerRing.outsideDiameter,
      finishHole: cheeks.holeDiameter,
      roughCircle: outerRing.outsideDiameter + 10,
      thickness: cheeks.thickness,
      pieces: 2,
    })
    expect(said.input.making.allowances.turning).toBe(5)
  })

  test('a cage: of two rings, each half as thick, or of one where a ring is split', async () => {
    const { said } = await asked('caged')
    const { making, cage } = said
    expect(making.cage).toMatchObject({ finishCircle: cage.outsideDiameter, finishHole: cage.boreDiameter, pieces: 2 })
    expect(making.cage.thickness).toBe(cage.width / 2)
    expect(making.cage.boards.length).toBeGreaterThan(0)
    expect(making.outerRing.pieces).toBe(1)
  })

  test('plates: two alike, and nothing that nests in anything', async () => {
    const { said } = await asked('thrust')
    const { making, plates } = said
    expect(making.plates).toMatchObject({
      finishCircle: plates.lower.outsideDiameter,
      finishHole: 12,
      thickness: plates.lower.thickness,
      pieces: 2,
    })
    expect(making).not.toHaveProperty('nesting')
    // A wooden stub fills the bore, and the bolt through it leaves as much wood as it takes.
    expect(making.mandrel).toEqual({ bolt: 'M6', diameter: 6, bush: 3 })
    const segments = await asked('thrust', { woods: { outerRing: { segments: { count: 8 } } } })
    expect(segments.status).toBe(400)
    expect(segments.said.errors.map(({ path }: { path: string }) => path)).toEqual(['/making/woods/outerRing'])
    const housed = await asked('radial', { mounting: { turns: 'outer-ring', housing: { thickness: 20 } } })
    expect(housed.said.errors.map(({ path }: { path: string }) => path)).toEqual(['/making/mounting/housing'])
    const driven = await asked('radial', { mounting: { turns: 'inner-ring', drive: 'crank' } })
    expect(driven.said.errors.map(({ path }: { path: string }) => path)).toEqual(['/making/mounting/drive'])
    const whole = { ...DESIGN, split: 'none', making: { screws: { count: 4 } } }
    expect(faultsIn(await post(`${await sharedApp()}/v1/design`, whole))).toEqual([
      '/making/screws: does not apply unless a ring is split: remove it, or state `split`',
    ])
    const caged = await asked('caged', { screws: { count: 4 } })
    expect(caged.said.errors.map(({ path }: { path: string }) => path)).toEqual(['/making/screws'])
    const ofRings = await asked('thrust', {
      mounting: { turns: 'inner-ring', shaft: { hold: 'keyed' }, housing: { hold: 'pressed', species: 'ash-white' } },
    })
    expect(ofRings.status).toBe(422)
    expect(ofRings.said.errors.map(({ path }: { path: string }) => path)).toEqual([
      '/making/mounting/turns',
      '/making/mounting/housing/species',
      '/making/mounting/shaft/hold',
      '/making/mounting/housing/hold',
    ])
  })

  test('plates: screwed to their boards clear of the groove, on a pin that the upper plate never touches', async () => {
    const { said } = await asked('thrust', { woods: { plates: { species: 'maple-sugar' } }, screws: { count: 3 } })
    const { shaft, boards } = said.making.mounting
    const { wall, outsideDiameter, thickness } = said.plates.lower
    expect(boards).toMatchObject({ hold: 'screwed', thickness })
    const { count, screwCircle, length, headDiameter } = boards.screws
    expect(count).toBe(3)
    // In the wood outside of the groove.
    expect(screwCircle / 2 - headDiameter / 2).toBeGreaterThan(outsideDiameter / 2 - wall)
    expect(screwCircle / 2 + headDiameter / 2).toBeLessThan(outsideDiameter / 2)
    expect(length).toBeGreaterThan(thickness)
    expect(length).toBeLessThan(2 * thickness)
    expect(shaft.shaftDiameter).toBe(12)
    expect(shaft.upperPlay.min).toBeGreaterThanOrEqual(1 - 1e-6)
    expect(shaft.upperHole).toBeGreaterThan(shaft.shaftDiameter + 1 - 1e-6)
    expect(shaft.wood).toBeGreaterThan(shaft.leastWood)
    expect(shaft.length).toBeLessThan(said.height)
    const again = await asked('thrust', said.input.making)
    expect(again.said.making).toEqual(said.making)
    const bolted = await asked('thrust', { mounting: { shaft: { hold: 'retained' } } })
    expect(bolted.said.making.mounting.shaft.length).toBeGreaterThan(said.height + thickness)
    const thin = await asked('thrust', { mounting: { housing: { thickness: 2, hold: 'screwed' } } })
    expect(thin.said.warnings.map(({ code }: { code: string }) => code)).toContain('no-plate-screws')
  })

  test('plates: a profile, a depth block and a circle of the groove are its gauges', async () => {
    const { said } = await asked('thrust')
    const { gauges } = said.making
    const { grooveDepth, grooveRadius, grooveCircleDiameter, boreDiameter } = said.plates.lower
    expect(gauges.profile).toEqual({ radius: grooveRadius, depth: grooveDepth })
    expect(gauges.depthBlock).toEqual({ step: grooveDepth })
    expect(gauges.circle.fromBore).toBeCloseTo((grooveCircleDiameter - boreDiameter) / 2, 5)
    expect(gauges.plugs.map(({ kind }: { kind: string }) => kind)).toEqual(['go', 'no-go'])
  })
})

describe('a bearing that cannot be made in a year that is not known', () => {
  const MAPLE = { species: 'maple-sugar' }
  const FROST = {
    today: { relativeHumidity: 50 },
    relativeHumidity: { min: 35, max: 60 },
    temperature: { min: -60, max: 0 },
  }
  const making = { woods: { outerRing: MAPLE, innerRing: MAPLE }, climate: FROST }
  const design = { units: 'mm', balls: DESIGN.balls, bore: 10, finishAllowance: 5, making }

  test.each([
    ['/v1/design', '', design],
    ['/v1/drawings/assembly.svg', '', design],
    ['/v1/job-sheet', '', design],
    ['/v1/seasonal-fit', '/design', { design }],
    ['/v1/load-check', '/design', { design, radialLoad: 10 }],
  ])('%s: every fault points to its place in the request', async (path, at, request) => {
    const answer = await post((await sharedApp()) + path, request)
    expect(new Set(problemIn(answer, 422).errors?.map((fault) => fault.path))).toEqual(
      new Set([`${at}/finishAllowance`, `${at}/making/climate/temperature/min`]),
    )
  })
})
