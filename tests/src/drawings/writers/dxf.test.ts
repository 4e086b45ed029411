import reader from 'dxf-parser'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { mm } from '#shared/units/length.ts'
import { at, type Drawing, type Shape } from '#src/drawings/model.ts'
import { drawingOf } from '#src/drawings/views.ts'
import { toDxf } from '#src/drawings/writers/dxf.ts'
import { anyLetter } from '#tests/support/any-letter.ts'
import { designed, valid } from '#tests/support/designed.ts'
import { likelyInput, PLAIN } from '#tests/support/inputs.ts'

const drawing = (shapes: readonly Shape[]): Drawing => ({
  title: 'A test',
  description: 'Shapes',
  width: mm(100),
  height: mm(60),
  scale: 1,
  shapes,
})

/** The package's types say that the class is its `default`; what it has is the class. */
const DxfParser = reader as unknown as typeof reader.default

/** What a reader of ours has of an entity, by whatever names it has them. */
type Entity = {
  readonly type: string
  readonly layer: string
  readonly radius?: number
  readonly center?: { readonly x: number; readonly y: number }
  readonly text?: string
  readonly shape?: boolean
  readonly vertices?: readonly { readonly x: number; readonly y: number; readonly bulge?: number }[]
}

function read(text: string) {
  const dxf = new DxfParser().parseSync(text)
  if (dxf === null) throw new RangeError('the reader must find a drawing')
  return { header: dxf.header, layers: dxf.tables.layer.layers, entities: dxf.entities as unknown as readonly Entity[] }
}

describe('read back by another program', () => {
  test('its unit is the millimetre, and circles are circles of the design, on layers named for their purpose', () => {
    fc.assert(
      fc.property(valid(likelyInput), (made) => {
        const { header, entities } = read(toDxf(drawingOf('templates', made, 'a4')))
        expect(header).toMatchObject({ $ACADVER: 'AC1009', $INSUNITS: 4, $MEASUREMENT: 1 })
        const finish = entities.filter(({ type, layer }) => type === 'CIRCLE' && layer === 'FINISH')
        const cut = (key: string): number => made.dimensions.find((row) => row.key === key)?.cutTo ?? Number.NaN
        const wanted = [
          'outerRing.outsideDiameter',
          'outerRing.landDiameter',
          'innerRing.landDiameter',
          'innerRing.boreDiameter',
        ]
        expect(finish).toHaveLength(wanted.length)
        for (const [index, key] of wanted.entries()) expect(finish[index]?.radius).toBeWithin(1e-6, cut(key) / 2)
      }),
      { numRuns: 50 },
    )
  })

  test('a profile is one closed line whose nose is an arc', () => {
    const { entities } = read(toDxf(drawingOf('gauges', designed(PLAIN), 'a4')))
    const closed = entities.filter(
      ({ type, layer, shape }) => type === 'POLYLINE' && layer === 'FINISH' && shape === true,
    )
    const arcs = closed.map(({ vertices = [] }) => vertices.filter(({ bulge = 0 }) => bulge !== 0).length)
    // Two profiles, four set-blocks and three edges.
    expect(arcs).toEqual([1, 1, 0, 0, 0, 0, 1, 1, 1])
  })

  test('the assembly is full size, whatever its scale on paper', () => {
    const made = designed({ ...PLAIN, balls: { count: 40, diameter: mm(16) } })
    const sheet = drawingOf('assembly', made, 'a4')
    expect(sheet.scale).toBeLessThan(1)
    const radii = read(toDxf(sheet)).entities.flatMap(({ type, radius }) =>
      type === 'CIRCLE' && radius ? [radius] : [],
    )
    expect(radii.some((radius) => Math.abs(radius - made.bearing.outerRing.outsideDiameter / 2) < 1e-6)).toBe(true)
  })

  test('every layer is declared', () => {
    const { layers, entities } = read(toDxf(drawingOf('assembly', designed(PLAIN), 'a4')))
    expect(entities.filter(({ layer }) => layers[layer] === undefined)).toEqual([])
  })
})

// The text is written between line breaks: one of its own would begin new entities.
test('no text gets out of its entity, whatever it says', () => {
  fc.assert(
    fc.property(fc.string({ unit: anyLetter, maxLength: 60 }), (text) => {
      const words: Shape = { role: 'dimension', kind: 'text', text, at: at(1, 1), height: mm(3), anchor: 'start' }
      const dxf = toDxf(drawing([words]))
      expect(dxf).toMatch(/^[\x20-\x7e\r\n]*$/)
      expect(dxf.split('\r\n')).toHaveLength(toDxf(drawing([{ ...words, text: 'x' }])).split('\r\n').length)
    }),
  )
  const injected = '1\r\n0\r\nCIRCLE\r\n8\r\nFINISH'
  const words: Shape = { role: 'dimension', kind: 'text', text: injected, at: at(1, 1), height: mm(3), anchor: 'start' }
  expect(read(toDxf(drawing([words]))).entities.map(({ type }) => type)).toEqual(['TEXT'])
})

test('numbers have six digits at the most, no exponent, and CRLF ends every line', () => {
  const dxf = toDxf(drawing([{ role: 'finish', kind: 'line', from: at(1e-15, 1 / 3), to: at(123_456_789, -1e-9) }]))
  expect(dxf).toContain('\r\n10\r\n0.0\r\n20\r\n0.333333\r\n')
  expect(dxf).toContain('\r\n11\r\n123456789.0\r\n21\r\n0.0\r\n')
  expect(dxf).not.toMatch(/\de[+-]?\d/)
  expect(dxf.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
})

test.each([Number.NaN, -1, 0])('%d is no radius', (radius) => {
  expect(() => toDxf(drawing([{ role: 'finish', kind: 'circle', centre: at(0, 0), radius: mm(radius) }]))).toThrow(
    RangeError,
  )
})

test('the same drawing gives the same bytes', () => {
  expect(toDxf(drawingOf('gauges', designed(PLAIN), 'a4'))).toBe(toDxf(drawingOf('gauges', designed(PLAIN), 'a4')))
})
