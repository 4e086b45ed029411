import { describe, expect, test } from 'vitest'
import { ask, faultsIn, post, problemIn } from '#tests/support/ask.ts'
import { sharedApp } from '#tests/support/started-app.ts'

type Materials = {
  readonly woods: readonly {
    readonly species: string
    readonly group: string
    readonly movement?: { readonly tangential: number; readonly source: string }
    readonly strength?: { readonly sideHardness?: number }
  }[]
  readonly balls: readonly { readonly material: string }[]
  readonly sources: readonly { readonly id: string; readonly standing: string }[]
}
type Sizes = {
  readonly sizes: readonly { readonly kind: string; readonly nominal: string; readonly dressed: number }[]
}
type Screws = { readonly screws: readonly { readonly size: string; readonly headDiameter?: number }[] }

async function got<T>(path: string): Promise<T> {
  const answer = await ask(`${await sharedApp()}/v1/${path}`)
  expect(answer.status, answer.text).toBe(200)
  return JSON.parse(answer.text)
}

describe('/v1/materials', () => {
  test('all of them, and the source of every figure with them', async () => {
    const { woods, balls, sources } = await got<Materials>('materials')
    expect(woods.length).toBeGreaterThan(150)
    expect(balls.map(({ material }) => material)).toEqual(['wood', 'glass', 'acrylic', 'steel'])
    const ids = sources.map(({ id }) => id)
    for (const { movement } of woods) if (movement !== undefined) expect(ids).toContain(movement.source)
  })

  test('one wood alone', async () => {
    const { woods, balls } = await got<Materials>('materials?species=maple-sugar')
    expect(balls).toEqual([])
    // Wood Handbook, Tables 13-5 and 5-3a.
    expect(woods).toMatchObject([{ species: 'maple-sugar', movement: { tangential: 0.00353, source: 'fpl-13-5' } }])
    expect(woods[0]?.strength?.sideHardness).toBeWithin(50, 6400)
  })

  test('filters leave what they say', async () => {
    const asked = 'group=softwood&minSideHardness=3000&maxTangentialMovement=0.0027'
    const { woods } = await got<Materials>(`materials?${asked}`)
    expect(woods.length).toBeGreaterThan(0)
    for (const { group, movement, strength } of woods) {
      expect(group).toBe('softwood')
      expect(movement?.tangential).toBeLessThanOrEqual(0.0027)
      expect(strength?.sideHardness).toBeGreaterThanOrEqual(3000)
    }
  })

  test.each([
    ['sugar maple', '"maple-sugar"'],
    ['mapel-sugar', '"maple-sugar"'],
    ['walnut', '"walnut-black"'],
    ['OAK', '"oak-black"'],
  ])('an unknown wood, %s, is told the nearest', async (name, nearest) => {
    const answer = await ask(`${await sharedApp()}/v1/materials?species=${encodeURIComponent(name)}`)
    const [fault] = faultsIn(answer)
    expect(fault).toContain('/species')
    expect(fault).toContain(nearest)
  })

  test.each(['constructor', '__proto__', '🪵', '%00', 'x'.repeat(60)])('a name of no wood: %s', async (name) => {
    const [fault] = faultsIn(await ask(`${await sharedApp()}/v1/materials?species=${encodeURIComponent(name)}`))
    expect(fault).toContain('Unknown species')
  })

  test.each([
    ['species=', '/species'],
    [`species=${'x'.repeat(61)}`, '/species'],
    ['kind=stone', '/kind'],
    ['minSideHardness=-1', '/minSideHardness'],
    ['minSideHardness=hard', '/minSideHardness'],
    ['spcies=maple-sugar', '/spcies'],
    ['species=teak&species=oak', '/species'],
  ])('?%s is turned away', async (query, path) => {
    const faults = faultsIn(await ask(`${await sharedApp()}/v1/materials?${query}`))
    expect(faults.some((fault) => fault.startsWith(path))).toBe(true)
  })
})

describe('/v1/stock-sizes', () => {
  test('in either unit the same board', async () => {
    const inInches = await got<Sizes>('stock-sizes?units=in&system=inch&kind=softwood-board&measure=thickness')
    const inMillimetres = await got<Sizes>('stock-sizes?units=mm&system=inch&kind=softwood-board&measure=thickness')
    // PS 20: nominal 1 in is 3/4 in dry.
    expect(inInches.sizes).toContainEqual(expect.objectContaining({ nominal: '1', dressed: 0.75 }))
    for (const [i, { dressed }] of inInches.sizes.entries())
      expect(inMillimetres.sizes[i]?.dressed).toBeWithin(1e-9, dressed * 25.4)
  })

  test('no more and no less than asked', async () => {
    const { sizes } = await got<Sizes>('stock-sizes?units=in&min=1&max=1%201/2')
    expect(sizes.length).toBeGreaterThan(3)
    for (const { dressed } of sizes) expect(dressed >= 1 && dressed <= 1.5).toBe(true)
  })

  test('a metric board is as sawn, 5 mm more than planed', async () => {
    const { sizes, sources } = await got<Sizes & Materials>('stock-sizes?units=mm&system=metric&kind=hardwood')
    // EN 1313-2, from memory; the planing is common practice.
    expect(sizes.map(({ nominal }) => nominal)).toContain('32 mm')
    for (const { nominal, dressed } of sizes) expect(`${dressed + 5} mm`).toBe(nominal)
    expect(sources.map(({ standing }) => standing)).toEqual(['from memory', 'common practice, no source'])
  })

  test('units are asked for', async () => {
    expect(faultsIn(await ask(`${await sharedApp()}/v1/stock-sizes`))).toEqual(['/units: "units" is missing'])
  })
})

describe('/v1/fasteners', () => {
  test('a No. 8 screw, in millimetres', async () => {
    const { screws } = await got<Screws>('fasteners?units=mm&gauge=8')
    // ASME B18.6.1: 0.164 in; clearance 11/64 in.
    expect(screws).toMatchObject([
      { gauge: 8, diameter: expect.closeTo(4.1656, 9), clearanceHole: { drill: '11/64 in' } },
    ])
  })

  test('a metric screw by its diameter', async () => {
    const { screws } = await got<Screws>('fasteners?units=in&metricDiameter=4')
    // A drill for the core of 2.8 mm: 70 % of it in softwood, 90 % in hardwood.
    expect(screws).toMatchObject([
      {
        size: '4 mm',
        system: 'metric',
        softwoodPilot: { drill: '2 mm', diameter: expect.closeTo(2 / 25.4, 6) },
        hardwoodPilot: { drill: '2.5 mm' },
      },
    ])
  })

  test('no head larger than asked', async () => {
    const { screws } = await got<Screws>('fasteners?units=in&maxHeadDiameter=1/4')
    expect(screws.map(({ size }) => size)).toEqual(['No. 1', 'No. 2', 'No. 3', 'No. 4', '3 mm'])
  })

  test.each(['gauge=25', 'gauge=1.5', 'maxHeadDiameter=1/0'])('%s is turned away', async (query) => {
    problemIn(await ask(`${await sharedApp()}/v1/fasteners?units=in&${query}`), 400)
  })
})

describe('/v1/sources', () => {
  test('those from memory say so', async () => {
    const asked = `sources?standing=${encodeURIComponent('from memory')}`
    const { sources } = await got<Materials>(asked)
    expect(sources.map(({ id }) => id)).toContain('fpl-13-5-memory')
  })

  test('one alone, and the nearest to one that is not known', async () => {
    expect((await got<Materials>('sources?id=ps-20')).sources).toMatchObject([{ id: 'ps-20', standing: 'quoted' }])
    const [fault] = faultsIn(await ask(`${await sharedApp()}/v1/sources?id=ps-30`))
    expect(fault).toContain('Did you mean "ps-20"?')
  })
})

test.each(['materials', 'stock-sizes?units=in', 'fasteners?units=in', 'sources'])(
  '/v1/%s may be kept, and is not sent twice',
  async (path) => {
    const address = `${await sharedApp()}/v1/${path}`
    const { headers } = await ask(address)
    expect(headers['cache-control']).toContain('public')
    const again = await ask(address, { headers: { 'if-none-match': String(headers['etag']) } })
    expect(again).toMatchObject({ status: 304, text: '' })
  },
)

describe('the tables have what a plan for making asks for', () => {
  const lumbers = ['softwood', 'hardwood'] as const
  test.each(lumbers.flatMap((lumber) => [['mm', lumber] as const, ['in', lumber] as const]))(
    'in %s, of %s',
    async (units, lumber) => {
      const system = units === 'mm' ? 'metric' : 'inch'
      const { sizes } = await got<Sizes>(`stock-sizes?units=${units}&system=${system}`)
      const { screws } = await got<Screws>(`fasteners?units=${units}&system=${system}`)
      for (const inMillimetres of [16, 25, 40]) {
        const diameter = units === 'mm' ? inMillimetres : inMillimetres / 25.4
        const asked = { units, balls: { count: 14, diameter }, bore: diameter / 2, making: { lumber } }
        const answer = await post(`${await sharedApp()}/v1/design`, asked)
        const { making } = JSON.parse(answer.text)
        for (const { kind, nominalThickness, dressedThickness } of making.outerRing.boards)
          expect(sizes).toContainEqual(
            expect.objectContaining({ kind, nominal: nominalThickness, dressed: dressedThickness }),
          )
        const { size, headDiameter, clearanceHole, pilotHole } = making.split.screws
        expect(screws).toContainEqual(
          expect.objectContaining({
            size,
            headDiameter,
            clearanceHole: expect.objectContaining({ drill: clearanceHole }),
            [`${lumber}Pilot`]: expect.objectContaining({ drill: pilotHole }),
          }),
        )
      }
    },
  )
})

test('what is only shown takes no POST', async () => {
  const answer = await ask(`${await sharedApp()}/v1/materials`, { method: 'POST', body: '{}' })
  expect(problemIn(answer, 405).detail).toContain('GET')
})
