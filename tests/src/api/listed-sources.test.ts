// Every answer lists exactly the sources from which one of its figures was taken, by what it was asked.
import { describe, expect, test } from 'vitest'
import { post } from '#tests/support/ask.ts'
import { sharedApp } from '#tests/support/started-app.ts'

async function listed(path: string, request: object): Promise<readonly string[]> {
  const answer = await post(`${await sharedApp()}/v1/${path}`, request)
  expect(answer.status, answer.text).toBe(200)
  const { sources } = JSON.parse(answer.text) as { readonly sources: readonly { readonly id: string }[] }
  return sources.map(({ id }) => id).toSorted()
}

const DESIGN = { units: 'mm', balls: { count: 12, diameter: 16, material: 'steel' }, bore: 12 }
const WHOLE = { ...DESIGN, split: 'none' }
const WOODEN = { ...WHOLE, balls: { ...DESIGN.balls, material: 'wood' } }
const PLATES = { ...DESIGN, arrangement: 'thrust', bore: 20 }
const ROLLERS = { units: 'mm', arrangement: 'roller', balls: { count: 12, diameter: 12, length: 20 }, bore: 20 }

describe('a load check', () => {
  const ANY = [
    'astm-d143',
    'fpl-5-3b',
    'fpl-5-6',
    'wood-fatigue',
    'madison-curve',
    'harris-rolling',
    'load-derived',
    'load-trade',
    'rotating-disc',
  ]
  const ELASTIC = ['hertz', 'koczan']
  test.each([
    {
      of: 'steel balls on the bottom of their grooves, a wood with all its figures',
      request: { design: WHOLE, radialLoad: 20, wood: 'ash-white' },
      uses: [...ANY, ...ELASTIC, 'sjovall', 'fpl-5-1-species', 'bearing-steel'],
    },
    {
      of: 'a wood whose ratios are those of its group',
      request: { design: WHOLE, radialLoad: 20, wood: 'beech-american' },
      uses: [...ANY, ...ELASTIC, 'sjovall', 'fpl-5-1', 'bearing-steel'],
    },
    {
      of: 'wooden balls',
      request: { design: WOODEN, radialLoad: 20, wood: 'ash-white' },
      uses: [...ANY, ...ELASTIC, 'sjovall', 'fpl-5-1-species', 'rolling-ballpark'],
    },
    {
      of: 'balls on edges, which are crushed and do not spring',
      request: { design: { ...WOODEN, groove: { conformity: 0.45 } }, radialLoad: 5, wood: 'ash-white' },
      uses: [...ANY, 'sjovall', 'rolling-ballpark'],
    },
    {
      of: 'a turntable, whose load is not across the axis',
      request: { design: PLATES, axialLoad: 20, wood: 'ash-white' },
      uses: [...ANY, ...ELASTIC, 'fpl-5-1-species', 'bearing-steel'],
    },
    {
      of: 'rollers',
      request: { design: ROLLERS, radialLoad: 20, wood: 'ash-white' },
      uses: [...ANY, ...ELASTIC, 'sjovall', 'fpl-5-1-species', 'rolling-ballpark'],
    },
  ])('of $of', async ({ request, uses }) => {
    expect(await listed('load-check', request)).toEqual(uses.toSorted())
  })
})

test('a load on a split ring: what its screws hold too', async () => {
  const load = (split: string) => listed('load-check', { design: { ...DESIGN, split }, radialLoad: 20 })
  expect(await load('inner-ring')).toContain('screw-withdrawal')
  expect(await load('none')).not.toContain('screw-withdrawal')
})

describe('a design', () => {
  test('of rollers or of plates: nothing of conformity, end play or screws', async () => {
    const shared = ['derived', 'iso-5593', 'machinerys-handbook-chords', 'trade']
    // where no wood is named, one sentence says what flat-sawn wood would do, from the tables of woods
    const sizes = async (design: object) => (await listed('design', design)).filter((id) => !id.startsWith('fpl-'))
    expect(await sizes(ROLLERS)).toEqual([...shared, 'iso-1938-1'].toSorted())
    expect(await sizes(PLATES)).toEqual([...shared, 'circular-segment'].toSorted())
  })

  test('of one-piece rings: no screws; of a split inner ring the head of its screw', async () => {
    expect(await listed('design', { ...DESIGN, split: 'none' })).not.toContain('asme-b18.6.1')
    expect(await listed('design', { ...DESIGN, split: 'inner-ring' })).toContain('asme-b18.6.1')
  })
})

test('a size table has no inner ring, so nothing of end play or screws', async () => {
  const used = await listed('size-table', { units: 'mm', diameters: [16], counts: [12] })
  expect(used).toEqual(expect.arrayContaining(['iso-1938-1', 'machinerys-handbook-chords', 'derived']))
  expect(used).not.toContain('harris')
  expect(used).not.toContain('asme-b18.6.1')
})

test('a search: what dents only where there is a load, the weather only where there is a year', async () => {
  const search = {
    units: 'mm',
    outsideDiameter: { max: 150 },
    bore: { min: 10, max: 12 },
    balls: [{ diameter: 16 }],
    counts: { min: 12, max: 12 },
  }
  const plain = await listed('design-search', search)
  expect(plain).not.toContain('hertz')
  expect(plain.filter((id) => id.startsWith('fpl'))).toEqual([])
  const loaded = await listed('design-search', { ...search, load: { radialLoad: 20, wood: 'ash-white' } })
  expect(loaded.filter((id) => !plain.includes(id))).toEqual(
    ['astm-d143', 'fpl-5-1-species', 'fpl-5-3b', 'hertz', 'koczan', 'load-derived', 'load-trade', 'sjovall'].toSorted(),
  )
})
