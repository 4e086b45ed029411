import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { mm } from '#shared/units/length.ts'
import { FAULTS, FIT, FIT_HEADINGS, gapNow, PAGE, STANDING } from '#src/words/kiosk.ts'
import { foreignWords } from '#tests/support/trade-words.ts'

const HTML = readFileSync(join(import.meta.dirname, '../../../src/kiosk/page.html'), 'utf8')

test('the page has every word of the catalogue, and no text of its own but its name and its signs', () => {
  const named = new Set(Array.from(HTML.matchAll(/\{\{(\w+)\}\}/g), ([, name]) => name))
  expect(named).toEqual(new Set(Object.keys(PAGE)))
  const texts = Array.from(HTML.matchAll(/>([^<]+)</g), ([, text = '']) => text.replaceAll(/\{\{\w+\}\}/g, '').trim())
  expect(new Set(texts.filter((text) => text !== ''))).toEqual(new Set(['Racewright', '−', '+']))
  const labels = Array.from(HTML.matchAll(/aria-label="([^"]*)"/g), ([, label = '']) => label)
  expect(labels.filter((label) => !/^\{\{\w+\}\}$/.test(label))).toEqual([])
})

test('the page speaks of radial bearings alone', () => {
  const gap = { value: mm(0.8), low: mm(-0.2), high: mm(1.8) }
  const said = [
    ...Object.values(PAGE),
    ...Object.values(STANDING),
    ...Object.values(FIT_HEADINGS),
    ...Object.values(FIT),
    FAULTS.length,
    FAULTS.lengthBounds(1, 2, 'mm'),
    FAULTS.countBounds(3, 200),
    gapNow(gap, 'mm'),
    gapNow(gap, 'in'),
  ]
  expect(said.flatMap((sentence) => foreignWords('radial', sentence))).toEqual([])
  expect(gapNow(gap, 'mm')).toContain('about 0.8 mm')
  expect(gapNow(gap, 'in')).toContain('between -0.008 in and 0.071 in')
})
