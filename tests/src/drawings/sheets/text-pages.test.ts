import fc from 'fast-check'
import { expect, test } from 'vitest'
import { toJobSheet } from '#src/api/job-sheet/present.ts'
import { PAPER_SIZES } from '#src/drawings/papers.ts'
import { textPages } from '#src/drawings/sheets/text-pages.ts'
import { operationsFor } from '#src/job-sheet/operations.ts'
import { toPages } from '#src/job-sheet/pages.ts'
import { cautionsAt, sizeCells } from '#src/job-sheet/sheet-text.ts'
import { validOfAny } from '#tests/support/designed.ts'
import { likelyInput, likelyPlates, likelyRollers } from '#tests/support/inputs.ts'
import { LARGEST_ADDRESS } from '#tests/support/largest-code.ts'
import { sheetFaults, textsOn } from '#tests/support/sheet-faults.ts'
import { withMaking } from '#tests/support/with-making.ts'

test.each([
  ['balls in grooves', likelyInput],
  ['rollers', likelyRollers],
  ['plates', likelyPlates],
])('%s, whatever the machines: no text of a job sheet meets another or leaves a page', (_name, inputs) => {
  const method = fc.constantFrom('saw-and-lathe', 'lathe-only', 'router-and-lathe')
  fc.assert(
    fc.property(validOfAny(inputs), method, fc.constantFrom('a4', 'letter'), (made, machines, paper) => {
      const ours = withMaking(made, { method: machines })
      const pages = toPages(toJobSheet(ours, { units: ours.bearing.resolved.input.units }), paper)
      expect(pages.flatMap(sheetFaults)).toEqual([])
      expect(toPages(toJobSheet(ours, { units: 'mm' }), paper, 'full', LARGEST_ADDRESS).flatMap(sheetFaults)).toEqual(
        [],
      )
      const titles = operationsFor(ours).length
      const numbered = pages.flatMap(textsOn).filter(({ text, bold }) => bold === true && /^\d+\. /.test(text))
      expect(numbered).toHaveLength(titles)
    }),
    { numRuns: 40 },
  )
})

test('a block is not torn apart: it begins on a new page where it does not fit', () => {
  const rows = Array.from(
    { length: 20 },
    (_, index) => ({ kind: 'paragraph', lead: 'Row', words: `row ${index}` }) as const,
  )
  const pages = textPages(
    { heading: 'Heading', lead: 'lead', imprint: 'code ABC123' },
    [
      { title: 'A', rows },
      { title: 'B', rows },
      { title: 'C', rows },
    ],
    PAPER_SIZES.a4,
  )
  for (const page of pages) {
    const counted = textsOn(page).filter(({ text }) => /^row \d/.test(text))
    expect(counted.length % 20).toBe(0)
  }
})

test.each([
  ['balls in grooves', likelyInput],
  ['rollers', likelyRollers],
  ['plates', likelyPlates],
])('%s: the short sheet has at most two pages, with every step and every caution once', (_name, inputs) => {
  fc.assert(
    fc.property(validOfAny(inputs), fc.constantFrom('a4', 'letter'), (made, paper) => {
      const sheet = toJobSheet(made, { units: made.bearing.resolved.input.units })
      const pages = toPages(sheet, paper, 'short', LARGEST_ADDRESS)
      expect(pages.length).toBeLessThanOrEqual(2)
      expect(pages.flatMap(sheetFaults)).toEqual([])
      const lines = pages.flatMap(textsOn).map(({ text }) => text)
      expect(lines.filter((text) => /^\d+\. /.test(text)).length).toBeGreaterThanOrEqual(sheet.operations.length)
      const codes = new Set(sheet.operations.flatMap(({ cautions }) => cautions.map(({ code }) => code)))
      expect(lines.filter((text) => text.startsWith('⚠'))).toHaveLength(codes.size - 1)
    }),
    { numRuns: 30 },
  )
})

test('each caution is whole the first time, and is called by its name after that', () => {
  fc.assert(
    fc.property(validOfAny(likelyInput), (made) => {
      const sheet = toJobSheet(made, { units: made.bearing.resolved.input.units })
      const said = sheet.operations.flatMap((_, index) => cautionsAt(sheet, index))
      const codes = new Set(sheet.operations.flatMap(({ cautions }) => cautions.map(({ code }) => code)))
      expect(said.filter((words) => !words.endsWith(': as above.'))).toHaveLength(codes.size)
      expect(new Set(said.filter((words) => !words.endsWith(': as above.'))).size).toBe(codes.size)
    }),
    { numRuns: 20 },
  )
})

test('blanks are numbered through, every tool is on the list, and no rule is offered where its rounding counts', () => {
  fc.assert(
    fc.property(validOfAny(likelyInput), (made) => {
      const { operations, tools } = toJobSheet(made, { units: made.bearing.resolved.input.units })
      const numbers = operations.flatMap(({ readings }) => readings.map(({ number }) => number))
      expect(numbers).toEqual(numbers.map((_, index) => index + 1))
      for (const machine of ['lathe', 'drill press', 'caliper']) expect(tools).toContain(machine)
      for (const size of operations.flatMap(({ sizes }) => sizes).filter(({ symbol }) => symbol === 'Dgo'))
        expect(sizeCells(size, 'mm')[3]).toBe('by caliper')
    }),
    { numRuns: 20 },
  )
})
