import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect } from 'vitest'
import { inches, mm } from '#shared/units/length.ts'
import type { Drawing } from '#src/drawings/model.ts'
import type { View } from '#src/drawings/view.ts'
import { pagesOfView } from '#src/drawings/views.ts'
import { toPdf } from '#src/drawings/writers/pdf.ts'
import { designed } from '#tests/support/designed.ts'
import { PLAIN } from '#tests/support/inputs.ts'
import { linesInRow, type Raster } from '#tests/support/raster.ts'
import { textsOn } from '#tests/support/sheet-faults.ts'
import { outputOf, testsThatNeed } from './needed.ts'

const { describe, test } = testsThatNeed('pdftoppm', 'pdftotext', 'qpdf')

const INCHED = { units: 'in', balls: { count: 10, diameter: inches(0.625) }, bore: inches(0.5) } as const

function pages(view: View, input: Parameters<typeof designed>[0], paper: 'a4' | 'letter'): readonly Drawing[] {
  const made = pagesOfView(view, designed(input), paper)
  if (!made.ok) throw new RangeError('a usual bearing must fit a few pages')
  return made.value
}

const DOTS_PER_INCH = 300

/** The first page in pixels, by Poppler: a program that is not ours. */
async function rasterised(drawings: readonly Drawing[]): Promise<Raster> {
  const pdf = Buffer.from(await toPdf(drawings))
  const pgm = outputOf('pdftoppm', ['-r', String(DOTS_PER_INCH), '-gray', '-singlefile', '-'], pdf)
  const header = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.toString('latin1', 0, 40))
  if (header === null) throw new RangeError('pdftoppm must give a grey picture')
  const [width, height, start] = [Number(header[1]), Number(header[2]), header[0].length]
  const ink = (x: number, y: number): number =>
    x >= 0 && y >= 0 && x < width && y < height ? 1 - (pgm[start + y * width + x] ?? 255) / 255 : 0
  return { width, height, pixelsPerMm: DOTS_PER_INCH / 25.4, ink, png: Buffer.alloc(0) }
}

describe('rasterised at 300 dots per inch', () => {
  // A dot is 0.085 mm: the middle of a line is found to one.
  const DOT = 0.09

  test.each([
    ['a4', 210, 297],
    ['letter', 215.9, 279.4],
  ] as const)('%s is so large', async (paper, width, height) => {
    const raster = await rasterised(pages('templates', PLAIN, paper))
    expect(raster.width / raster.pixelsPerMm).toBeWithin(DOT, width)
    expect(raster.height / raster.pixelsPerMm).toBeWithin(DOT, height)
  })

  test('the check bars are 100 mm and 4 in long', async () => {
    const [page, ...more] = pages('templates', PLAIN, 'a4')
    if (page === undefined) throw new RangeError('there must be a page')
    const raster = await rasterised([page, ...more])
    const rowAt = (fromBottom: number) => linesInRow(raster, Math.round((297 - fromBottom) * raster.pixelsPerMm))
    // Across the ticks, half a millimetre over each bar.
    const millimetres = rowAt(18.7).slice(0, 11)
    expect((millimetres.at(-1) ?? 0) - (millimetres[0] ?? 0)).toBeWithin(DOT, 100)
    const inched = rowAt(11.7).slice(0, 9)
    expect((inched.at(-1) ?? 0) - (inched[0] ?? 0)).toBeWithin(DOT, 4 * 25.4)
  })

  test.each([
    ['mm', PLAIN, 100],
    ['in', INCHED, 3.5 * 25.4],
  ] as const)(
    'the circle to turn the outer ring to, in %s, is as wide as its outside',
    async (_units, input, diameter) => {
      const [page, ...more] = pages('templates', input, 'letter')
      const circle = page?.shapes.find((shape) => shape.kind === 'circle' && shape.role === 'finish')
      if (page === undefined || circle?.kind !== 'circle') throw new RangeError('there must be a circle')
      const raster = await rasterised([page, ...more])
      const up = 11
      const row = linesInRow(raster, Math.round((page.height - circle.centre.y - up) * raster.pixelsPerMm))
      const reach = Math.sqrt((diameter / 2) * (diameter / 2) - up * up)
      for (const x of [circle.centre.x - reach, circle.centre.x + reach])
        expect(row.some((middle) => Math.abs(middle - x) <= 2 * DOT)).toBe(true)
    },
  )
})

test('every text is there, with its signs', async () => {
  const drawings = pages('assembly', PLAIN, 'a4')
  const words = outputOf('pdftotext', ['-layout', '-', '-'], Buffer.from(await toPdf(drawings))).toString()
  const squeezed = words.replace(/\s+/g, '')
  // Texts that stand upright come out in pieces.
  for (const { text, turned = 0 } of drawings.flatMap(textsOn))
    if (turned === 0) expect(squeezed).toContain(text.replace(/\s+/g, ''))
})

test('whoever prints it is told not to fit it to the paper, and it is sound', async () => {
  const file = join(mkdtempSync(join(tmpdir(), 'pdf-')), 'gauges.pdf')
  writeFileSync(file, await toPdf(pages('gauges', PLAIN, 'a4')))
  expect(outputOf('qpdf', ['--check', file]).toString()).toContain('No syntax or stream encoding errors found')
  expect(outputOf('qpdf', ['--json', file]).toString()).toMatch(/"\/PrintScaling": "\/None"/)
})

test('a page of a bearing of another size has its own scale', async () => {
  const huge = await rasterised(pages('assembly', { ...PLAIN, balls: { count: 40, diameter: mm(40) } }, 'a4'))
  expect(huge.width / huge.pixelsPerMm).toBeWithin(0.09, 297)
})
