import { expect, test } from 'vitest'
import {
  BOARD_THICKNESSES,
  BOARD_WIDTHS,
  DIMENSION_THICKNESSES,
  DIMENSION_WIDTHS,
  HARDWOOD_THICKNESSES,
} from '#shared/data/lumber.ts'
import { SAW_BLADES } from '#shared/data/saw-blades.ts'
import { inches } from '#shared/units/length.ts'
import { parseLength } from '#shared/units/parse-length.ts'

const TABLES = { BOARD_THICKNESSES, BOARD_WIDTHS, DIMENSION_THICKNESSES, DIMENSION_WIDTHS }

const inchesOf = (text: string): number => {
  const parsed = parseLength(text, 'in')
  if (!parsed.ok) throw new Error(`not a length: ${text}`)
  return parsed.value / inches(1)
}

const isRising = (values: readonly number[]): boolean =>
  values.every((value, i) => i === 0 || value > (values[i - 1] ?? 0))

test.each(Object.entries(TABLES))('%s: nominal above green above dry, and every column rises', (_name, rows) => {
  for (const { nominal, green, dry } of rows) {
    expect(inchesOf(nominal)).toBeGreaterThan(green)
    expect(green).toBeGreaterThan(dry)
  }
  expect(isRising(rows.map(({ dry }) => dry))).toBe(true)
  expect(isRising(rows.map(({ green }) => green))).toBe(true)
})

// PS 20, Table 3, as it prints millimetres: 25.4 times the inches, rounded to 1 mm. Pairs that were read.
test.each([
  ['3', 64],
  ['4', 89],
  ['6', 140],
  ['8', 184],
])('PS 20: a board of nominal width %s in is %s mm', (nominal, millimetres) => {
  const row = BOARD_WIDTHS.find((width) => width.nominal === nominal)
  expect(Math.round(inches(row?.dry ?? Number.NaN))).toBe(millimetres)
})

test('PS 20: nominal 1 in is 19 mm', () => {
  const row = BOARD_THICKNESSES.find(({ nominal }) => nominal === '1')
  expect(Math.round(inches(row?.dry ?? Number.NaN))).toBe(19)
})

test('PS 20: what is taken off a width is 1/2 in below 8 in nominal and 3/4 in from there on', () => {
  for (const { nominal, dry } of BOARD_WIDTHS) {
    expect(inchesOf(nominal) - dry, nominal).toBeWithin(1e-12, inchesOf(nominal) < 8 ? 0.5 : 0.75)
  }
})

test('boards and dimension lumber of one nominal width are one size', () => {
  for (const { nominal, dry, green } of DIMENSION_WIDTHS) {
    const board = BOARD_WIDTHS.find((width) => width.nominal === nominal)
    if (board !== undefined) expect([nominal, dry, green]).toEqual([nominal, board.dry, board.green])
  }
})

test('NHLA: surfacing takes 3/16 in up to 1 1/2 in rough, and 1/4 in above', () => {
  expect(HARDWOOD_THICKNESSES.length).toBe(13)
  for (const { rough, surfaced } of HARDWOOD_THICKNESSES) {
    expect(rough - surfaced, String(rough)).toBe(rough <= 1.5 ? 3 / 16 : 1 / 4)
  }
})

test('NHLA: a name is the rough thickness, from an inch up in quarters', () => {
  for (const { nominal, rough } of HARDWOOD_THICKNESSES) {
    const [above = '', below = ''] = nominal.split('/')
    expect(Number(above) / Number(below)).toBe(rough)
    expect(rough < 1 || below === '4', nominal).toBe(true)
  }
})

test('the wider the blade, the wider its circle, at least its own width', () => {
  expect(isRising(SAW_BLADES.map(({ width }) => inchesOf(width)))).toBe(true)
  expect(isRising(SAW_BLADES.map(({ leastRadius }) => leastRadius))).toBe(true)
  for (const { width, leastRadius } of SAW_BLADES) expect(leastRadius).toBeGreaterThan(inchesOf(width))
})
