import fc from 'fast-check'
import { expect, test } from 'vitest'
import { toJobSheet } from '#src/api/job-sheet/present.ts'
import { PAPER_SIZES } from '#src/drawings/papers.ts'
import { textPages } from '#src/drawings/sheets/text-pages.ts'
import { operationsFor } from '#src/job-sheet/operations.ts'
import { toPages } from '#src/job-sheet/pages.ts'
import { validOfAny } from '#tests/support/designed.ts'
import { likelyInput, likelyPlates, likelyRollers } from '#tests/support/inputs.ts'
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
      const titles = operationsFor(ours).length
      const numbered = pages.flatMap(textsOn).filter(({ text, bold }) => bold === true && /^\d+\. /.test(text))
      expect(numbered).toHaveLength(titles)
    }),
    { numRuns: 60 },
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
