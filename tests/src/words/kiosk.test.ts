import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { ARRANGEMENT_NAMES, woodPartsOf } from '#shared/bearing/arrangements.ts'
import { mm } from '#shared/units/length.ts'
import { leavesFor, readBearing } from '#src/kiosk/job/bearing.ts'
import { FIRST_JOB } from '#src/kiosk/job/job.ts'
import { fieldName } from '#src/words/kiosk/bearing.ts'
import { CARE } from '#src/words/kiosk/care.ts'
import { gapNow, playNow, readingLine } from '#src/words/kiosk/lathe.ts'
import { faultOnThePage, onThePage } from '#src/words/kiosk/of-service.ts'
import { PAGE } from '#src/words/kiosk/page.ts'
import { notChosen, statedLine, statedName, WOOD_CHOICES } from '#src/words/kiosk/plan.ts'
import { RUN } from '#src/words/kiosk/run.ts'
import { countedOn } from '#src/words/kiosk/year.ts'
import { unknownSpecies } from '#src/words/problem.ts'
import { seasonRefusalSentence } from '#src/words/season-refusal.ts'
import { TERMS } from '#src/words/terms.ts'
import { post } from '#tests/support/ask.ts'
import { programNames } from '#tests/support/program-names.ts'
import { sharedApp } from '#tests/support/started-app.ts'

const HTML = readFileSync(join(import.meta.dirname, '../../../src/kiosk/page.html'), 'utf8')

test('the page has every word of the catalogue, and no text of its own but its name', () => {
  const named = new Set(Array.from(HTML.matchAll(/\{\{(\w+)\}\}/g), ([, name]) => name))
  expect(named).toEqual(new Set(Object.keys(PAGE)))
  const texts = Array.from(HTML.matchAll(/>([^<]+)</g), ([, text = '']) => text.replaceAll(/\{\{\w+\}\}/g, '').trim())
  expect(new Set(texts.filter((text) => text !== ''))).toEqual(new Set(['Racewright']))
})

test('a gap and a play are said as finely as anyone can measure them', () => {
  const size = { value: mm(0.8), low: mm(-0.2), high: mm(1.8) }
  expect(gapNow(size, 'mm')).toContain('about 0.8 mm')
  expect(gapNow(size, 'in')).toContain('between −0.008 in and 0.071 in')
  expect(playNow(size, { low: mm(0), high: mm(0.6) }, 'mm')).toMatch(
    /about 0.80 mm; .* between −0.20 mm and 1.80 mm.* above 0 and at most 0.6 mm is good/,
  )
})

test('a reading in a list has its figures as they were typed', () => {
  const reading = { value: '1 3/16', second: '2', result: undefined, units: 'in', terms: TERMS.radial } as const
  expect(readingLine({ ...reading, kind: 'last-ball-opening' })).toMatch(/: 1 3\/16 in, 2 balls left out$/)
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

/** What a link may state: the query of a design, as the document has it. */
const DOCUMENT = JSON.parse(readFileSync(join(import.meta.dirname, '../../../openapi/openapi.json'), 'utf8'))
const OF_MAKING: readonly string[] = DOCUMENT.paths['/v1/design'].get.parameters
  .map(({ name = '' }) => name)
  .filter((name: string) => name.startsWith('making.'))

describe.each(ARRANGEMENT_NAMES)('what a link states of a %s bearing', (arrangement) => {
  const terms = TERMS[arrangement]

  test('has words for its name and its value', () => {
    expect(OF_MAKING.length).toBeGreaterThan(40)
    for (const name of OF_MAKING) {
      expect(statedName(name, terms), name).toBeDefined()
      for (const text of ['3', '3/4', 'maple-sugar', 'outer-ring', 'saw-and-lathe', 'segmented-quarter-sawn'])
        expect(programNames(statedLine(name, text, 'in', terms)), name).toEqual([])
    }
    const names = OF_MAKING.map((name) => statedName(name, terms))
    expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([])
    if (arrangement === 'roller') expect(names.join()).not.toMatch(/ball/i)
  })

  test('is refused in words, with the label of its field', async () => {
    const at = await sharedApp()
    const { 'making.woods.outerRing.species': wood = '', ...first } = FIRST_JOB.bearing
    const woods = woodPartsOf({ arrangement }).map((part) => [`making.woods.${part}.species`, wood])
    const stated = { ...first, ...Object.fromEntries(woods), arrangement }
    const links = OF_MAKING.flatMap((name) =>
      ['zz', '-1', 'purpleheart', 'segmented'].map((text) => ({ ...stated, [name]: text })),
    )
    const requests = links.map((bearing) => readBearing(bearing).request).filter((request) => request !== undefined)
    const answers = await Promise.all(requests.map((request) => post(`${at}/v1/design`, request)))
    const faults = answers.flatMap(
      ({ text }): readonly { message: string; path: string }[] => JSON.parse(text).errors ?? [],
    )
    expect(faults.length).toBeGreaterThan(50)
    for (const { message, path } of faults) {
      const told = faultOnThePage(message, path, terms)
      expect(programNames(told), path).toEqual([])
      expect(told, path).toMatch(/^[A-Z]/)
    }
  })
})

test('a number that a link states has its unit', () => {
  const lineOf = (name: string, text: string) => statedLine(name, text, 'in', TERMS.radial)
  expect(lineOf('making.swing', '12 1/2')).toBe('Largest diameter over the bed: 12 1/2 in')
  expect(lineOf('making.screws.gauge', '8')).toBe('Gauge of the screws: 8')
  expect(lineOf('making.climate.today.moistureContent', '9')).toBe('Moisture content of the wood today: 9 %')
  expect(lineOf('making.mounting.shaft.species', 'ash-white')).toBe('Wood of the shaft: Ash, white')
  expect(lineOf('making.of.a.page.to.come', '1')).toBe('making.of.a.page.to.come: 1')
})

test('whose movement is not known is said in the list of woods to which a refusal sends', () => {
  const refusal = { code: 'movement-unknown', path: '', species: 'khaya' } as const
  expect(onThePage(seasonRefusalSentence(refusal, 'celsius', TERMS.radial))).toBe(
    'The movement of khaya with moisture is not known. Choose another wood: “Wood and place” says whose movement is known.',
  )
  const labelOf = (wood: string) => WOOD_CHOICES.find(({ value }) => value === wood)?.label
  expect(labelOf('khaya')).toBe('Khaya (movement not known)')
  expect(labelOf('maple-sugar')).toBe('Maple, sugar')
})

test('what the year needs is not called the usual', () => {
  expect(notChosen('flat-sawn')).toBe('usual: flat-sawn board')
  expect(notChosen('quarter-sawn', true)).toBe('counted on: quarter-sawn board, as the year needs')
  expect(notChosen(undefined, true)).toBe('not chosen')
})

describe('beside the chances of a year stands what they count on', () => {
  test.each(ARRANGEMENT_NAMES)(
    'of a %s bearing: the boards that nobody chose, and grooves as designed',
    (arrangement) => {
      const terms = TERMS[arrangement]
      const hasGap = arrangement !== 'caged'
      const [boards, cuts, ...more] = countedOn(terms, woodPartsOf({ arrangement }), hasGap)
      expect(more).toEqual([])
      expect(boards).toMatch(/quarter-sawn boards for the .*flat-sawn and move more\. Choose here how yours are cut/)
      expect(countedOn(terms, [], hasGap)).toEqual([cuts])
      expect(cuts).toMatch(
        hasGap ? /if the .* exactly to size .*: see “Will it run\?”/ : /Cutting errors are not counted/,
      )
    },
  )

  test('with a cage no chance counts cutting errors, and both steps say how to cut instead', () => {
    const remedy = 'Cut the inner groove last, and measure the play as you cut'
    expect(countedOn(TERMS.caged, [], false).join(' ')).toContain(remedy)
    expect(RUN.noGap).toContain(remedy)
    expect(RUN.noGap).toContain('“Wood and place” do not count it either')
  })
})

test('the care says which air to wait for only where that air frees the bearing', () => {
  expect(CARE.stiff(false, false)).toBeUndefined()
  expect(CARE.stiff(false, true)).toBe('Wait for drier air if it goes stiff in the damp season.')
  expect(CARE.stiff(true, false)).toBe('Wait for damper air if it goes stiff in the dry season.')
  expect(CARE.stiff(true, true)).toMatch(/damper air .* dry season, and for drier air .* damp season\.$/)
})
