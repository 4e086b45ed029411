import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { ARRANGEMENT_NAMES } from '#shared/bearing/arrangements.ts'
import { mm } from '#shared/units/length.ts'
import { leavesFor } from '#src/kiosk/job/bearing.ts'
import { fieldName, onThePage } from '#src/words/kiosk/bearing.ts'
import { gapNow, playNow, readingLine } from '#src/words/kiosk/lathe.ts'
import { PAGE } from '#src/words/kiosk/page.ts'
import { unknownSpecies } from '#src/words/problem.ts'
import { TERMS } from '#src/words/terms.ts'

const HTML = readFileSync(join(import.meta.dirname, '../../../src/kiosk/page.html'), 'utf8')

test('the page has every word of the catalogue, and no text of its own but its name', () => {
  const named = new Set(Array.from(HTML.matchAll(/\{\{(\w+)\}\}/g), ([, name]) => name))
  expect(named).toEqual(new Set(Object.keys(PAGE)))
  const texts = Array.from(HTML.matchAll(/>([^<]+)</g), ([, text = '']) => text.replaceAll(/\{\{\w+\}\}/g, '').trim())
  expect(new Set(texts.filter((text) => text !== ''))).toEqual(new Set(['Racewright']))
})

test('a gap and a play are said as finely as anyone can measure them', () => {
  const size = { value: mm(0.8), low: mm(-0.2), high: mm(1.8) }
  expect(gapNow(size, 'mm', TERMS.radial)).toContain('about 0.8 mm')
  expect(gapNow(size, 'in', TERMS.radial)).toContain('between -0.008 in and 0.071 in')
  expect(playNow(size, 'mm')).toContain('play is now about 0.8 mm')
})

test('a reading in a list has its figures as they were typed', () => {
  const reading = { value: '1 3/16', second: '2', result: undefined, terms: TERMS.radial }
  expect(readingLine({ ...reading, kind: 'last-ball-opening' })).toMatch(/: 1 3\/16, 2 balls left out$/)
  expect(readingLine({ ...reading, kind: 'plug', second: undefined, result: 'refuses' })).toMatch(/does not enter$/)
  expect(readingLine({ ...reading, kind: 'binds', value: undefined, second: undefined })).not.toContain(':')
})

test.each(ARRANGEMENT_NAMES)('every field of a %s bearing has a name of its own that a maker knows', (arrangement) => {
  const names = leavesFor(arrangement).map(({ names: path }) => fieldName(path.join('.'), TERMS[arrangement]))
  expect(names).not.toContain(undefined)
  expect(new Set(names).size).toBe(names.length)
  if (arrangement === 'roller') expect(names.join()).not.toMatch(/ball/i)
})

test('a sentence of the service names what stands on the page, with a capital where it begins', () => {
  expect(onThePage('It is too deep. `rescue` lists the ways out.')).toBe(
    'It is too deep. The list below lists the ways out.',
  )
  expect(onThePage('They do not agree (see `agreement`).')).toBe('They do not agree (see below).')
  expect(onThePage('Widen `ballGap`.')).toBe('Widen “Gap to aim for”.')
  expect(onThePage(unknownSpecies('"zz"', []))).toBe('Unknown species "zz". “Wood and place” lists them all.')
})
