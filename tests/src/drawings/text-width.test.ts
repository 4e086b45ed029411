import { expect, test } from 'vitest'
import { fittedHeight, textWidth, wrapped } from '#src/drawings/text-width.ts'
import { inkWidth } from '#tests/support/raster.ts'

const ASCII = Array.from({ length: 95 }, (_, index) => String.fromCharCode(32 + index))
const OTHERS = Array.from('Ø×·±≤≥−–—½¼¾⅛→°′″')
const TEXTS = [
  'Dpw Ø63.14',
  '14 balls, glass, Dw Ø14',
  '1 57/64 in',
  'half section 1:200000',
  'wood behind it',
  '0123456789.-',
]

// The ink as a rasteriser sets it in DejaVu Sans: repeated, so that what stands over either end hardly counts.
test.each([false, true])('no sign is wider than the table says, bold: %s', (bold) => {
  const tooWide = [...ASCII, ...OTHERS]
    .filter((sign) => sign !== ' ')
    .filter((sign) => inkWidth(sign.repeat(20), 10, bold) > textWidth(sign.repeat(20), 10, bold) * 1.01)
  expect(tooWide).toEqual([])
})

test.each(TEXTS)('the bound of "%s" holds and is no more than a twelfth too wide', (text) => {
  const ink = inkWidth(text, 10, false)
  expect(textWidth(text, 10)).toBeGreaterThan(ink)
  expect(textWidth(text, 10)).toBeLessThan(ink * (1 + 1 / 12))
})

test('no line begins with the sign of a word or the unit of a figure', () => {
  const words = 'held on 5 in of 12.5 mm, glued †. In two halves ‡'
  for (let room = 1; room < 100; room += 0.5) {
    const lines = wrapped(words, 1.8, room)
    expect(lines.join(' ')).toBe(words)
    for (const line of lines) expect(line).not.toMatch(/^([†‡]|in\b|mm\b)/)
  }
})

test('a text that is too long for its room is made as much smaller', () => {
  expect(fittedHeight('D Ø100', 2.5, 1000)).toBe(2.5)
  const height = fittedHeight('D Ø100', 2.5, 5)
  expect(textWidth('D Ø100', height)).toBeWithin(1e-12, 5)
})
