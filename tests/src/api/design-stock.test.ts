import { describe, expect, test } from 'vitest'
import { ask, faultsIn, post } from '#tests/support/ask.ts'
import { numberLeaves } from '#tests/support/number-leaves.ts'
import { startedApp } from '#tests/support/started-app.ts'

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
  readonly input: { readonly stock?: Readonly<Record<string, unknown>> }
  readonly outerRing: { readonly outsideDiameter: number }
  readonly stock?: {
    readonly outerRing: Ring
    readonly innerRing: Ring
    readonly nesting: { readonly nests: boolean; readonly largestAllowance?: number; readonly message: string }
    readonly split?: { readonly screws?: { readonly gauge: number; readonly count: number } }
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

describe('stock in the answer of a design', () => {
  test('is there for who asks for it, and for nobody else', async () => {
    const url = await startedApp()
    const plain = await designed(url, DESIGN)
    expect(plain.stock).toBeUndefined()
    expect(plain.input.stock).toBeUndefined()
    const { stock, outerRing, ...asked } = await designed(url, { ...DESIGN, stock: {} })
    expect(stock?.outerRing).toMatchObject({
      finishCircle: outerRing.outsideDiameter,
      roughCircle: outerRing.outsideDiameter + 12,
      pieces: 1,
    })
    expect(asked.input.stock).toMatchObject({ lumber: 'hardwood', turningAllowance: 6, boardLength: 2400 })
  })

  test('what is echoed, sent again, gives the same answer', async () => {
    const url = await startedApp()
    const stock = {
      woods: { outerRing: { segments: { count: 12 } } },
      screws: { count: 6 },
      chuck: { min: 40, max: '4 in' },
      swing: 250,
    }
    const first = await designed(url, { ...DESIGN, stock })
    const again = await designed(url, first.input)
    expect(again.input).toEqual(first.input)
    expect(again.stock).toEqual(first.stock)
    expect(first.stock?.outerRing.segments?.miter).toBe(15)
  })

  test('by query', async () => {
    const query =
      'units=mm&balls.count=14&balls.diameter=14&bore=10&stock.lumber=softwood&stock.woods.innerRing.segments.count=8'
    const answer = await ask(`${await startedApp()}/v1/design?${query}`)
    expect(answer.status, answer.text).toBe(200)
    const { stock }: Answer = JSON.parse(answer.text)
    expect(stock?.innerRing.segments?.miter).toBe(22.5)
  })

  test('a screw for which there is no wood: the suggestion clears it', async () => {
    const url = await startedApp()
    const thin = { ...DESIGN, bore: 36, width: 24, stock: {} }
    const warning = (await designed(url, thin)).warnings.find(({ code }) => code === 'wall-too-thin-for-screws')
    expect(warning?.suggestion?.path).toBe('/bore')
    const { stock, warnings } = await designed(url, { ...thin, bore: warning?.suggestion?.value })
    expect(warnings.map(({ code }) => code)).not.toContain('wall-too-thin-for-screws')
    expect(stock?.split?.screws?.gauge).toBe(4)
  })

  test('and for an outer ring in halves, however its outside was said', async () => {
    const url = await startedApp()
    const common = { ...DESIGN, split: 'outer-ring', width: 24, stock: {} }
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
    const url = await startedApp()
    for (const units of ['in', 'mm']) {
      for (const [count, diameter, bore] of [
        [3, 0.05, 0.001],
        [200, 40, 100],
        [12, 1000, 1],
      ]) {
        const answer = await designed(url, { units, balls: { count, diameter }, bore, stock: { lumber: 'softwood' } })
        expect(numberLeaves(answer).every(([, value]) => Number.isFinite(value))).toBe(true)
        expect(answer.stock?.nesting.message).not.toMatch(/NaN|undefined|Infinity/)
      }
    }
  })

  test.each<readonly [object, string]>([
    [{ lumber: 'oak' }, '/stock/lumber'],
    [{ turningAllowance: -1 }, '/stock/turningAllowance'],
    [{ woods: { outerRing: { segments: { count: 2 } } } }, '/stock/woods/outerRing/segments/count'],
    [{ woods: { outerRing: { segments: { count: 12.5 } } } }, '/stock/woods/outerRing/segments/count'],
    [{ screws: { gauge: 5 } }, '/stock/screws/gauge'],
    [{ screws: { count: 1e9 } }, '/stock/screws/count'],
    [{ chuck: { min: 40 } }, '/stock/chuck/max'],
    [{ kerf: 3 }, '/stock/kerf'],
    [{ swing: '1/0' }, '/stock/swing'],
    [{ boardLength: 0 }, '/stock/boardLength'],
  ])('%j is turned away', async (stock, path) => {
    const faults = faultsIn(await post(`${await startedApp()}/v1/design`, { ...DESIGN, stock }))
    expect(
      faults.some((fault) => fault.startsWith(`${path}:`)),
      faults.join(),
    ).toBe(true)
  })
})

describe('stock of the sisters', () => {
  const asked = async (arrangement: string, stock: object = {}) => {
    const url = await startedApp()
    const answer = await post(`${url}/v1/design`, {
      units: 'mm',
      arrangement,
      balls: { count: 9, diameter: 16 },
      bore: 12,
      stock,
    })
    return { status: answer.status, said: JSON.parse(answer.text) }
  }

  test('rollers: the inner ring is as wide as the rollers are long, and two cheeks are as large as the outer ring', async () => {
    const { said } = await asked('roller', { turningAllowance: 5 })
    const { stock, outerRing, cheeks, rollerLength } = said
    expect(stock.innerRing).toMatchObject({ thickness: rollerLength, pieces: 1 })
    expect(stock.outerRing.thickness).toBe(outerRing.width)
    expect(stock.cheeks).toMatchObject({
      finishCircle: outerRing.outsideDiameter,
      finishHole: cheeks.holeDiameter,
      roughCircle: outerRing.outsideDiameter + 10,
      thickness: cheeks.thickness,
      pieces: 2,
    })
    expect(said.input.stock.turningAllowance).toBe(5)
  })

  test('a cage: of two rings, each half as thick, or of one where a ring is split', async () => {
    const { said } = await asked('caged')
    const { stock, cage } = said
    expect(stock.cage).toMatchObject({ finishCircle: cage.outsideDiameter, finishHole: cage.boreDiameter, pieces: 2 })
    expect(stock.cage.thickness).toBe(cage.width / 2)
    expect(stock.cage.boards.length).toBeGreaterThan(0)
    expect(stock.outerRing.pieces).toBe(1)
  })

  test('plates: two alike, and nothing that nests in anything', async () => {
    const { said } = await asked('thrust')
    const { stock, plates } = said
    expect(stock.plates).toMatchObject({
      finishCircle: plates.lower.outsideDiameter,
      finishHole: 12,
      thickness: plates.lower.thickness,
      pieces: 2,
    })
    expect(stock).not.toHaveProperty('nesting')
    expect(stock.mandrel).toEqual({ bolt: 'M12', diameter: 12, bush: 0 })
    const refused = await asked('thrust', { woods: { outerRing: { segments: { count: 8 } } }, screws: { count: 4 } })
    expect(refused.status).toBe(422)
    expect(refused.said.errors.map(({ path }: { path: string }) => path)).toEqual(['/stock/woods', '/stock/screws'])
  })
})
