import { lengthOf, type Units } from '#shared/units/length.ts'
import type { JobSheet, SheetOperation } from '#src/api/job-sheet/schema.ts'
import type { Drawing } from '#src/drawings/model.ts'
import { PAPER_SIZES, type Paper } from '#src/drawings/papers.ts'
import { type Block, type Row, textPages } from '#src/drawings/sheets/text-pages.ts'
import { VERSION } from '#src/version.ts'
import { cautionSentence } from '#src/words/caution.ts'
import { imprint } from '#src/words/drawing.ts'
import { figure } from '#src/words/figure.ts'
import { goesTo, SHEET } from '#src/words/job-sheet/sheet.ts'
import { TERMS } from '#src/words/terms.ts'

/** The job sheet on paper. */
export function toPages(
  { title, arrangement, units, name, code, operations }: JobSheet,
  paper: Paper,
): readonly Drawing[] {
  return textPages(
    title,
    cautionSentence('light-use-only', TERMS[arrangement]),
    operations.map((operation) => block(operation, units)),
    imprint({ name, code, version: VERSION }),
    PAPER_SIZES[paper],
  )
}

function block(operation: SheetOperation, units: Units): Block {
  const { number, title, tool, how, sizes, check, mistake, cautions, readings } = operation
  const paragraph = (lead: string, words: string): Row => ({ kind: 'paragraph', lead, words })
  return {
    title: `${number}. ${title}`,
    rows: [
      ...cautions.map(({ message }): Row => ({ kind: 'paragraph', lead: SHEET.caution, words: message, marked: true })),
      paragraph(SHEET.tools, tool),
      paragraph(SHEET.how, how),
      ...sizeRows(sizes, units),
      paragraph(SHEET.check, check),
      paragraph(SHEET.mistake, mistake.looksLike),
      paragraph(SHEET.cost, mistake.costs),
      ...readings.map((reading): Row => ({ kind: 'blank', words: reading.name, note: goesTo(reading) })),
    ],
  }
}

function sizeRows(sizes: SheetOperation['sizes'], units: Units): readonly Row[] {
  if (sizes.length === 0) return []
  const say = (value: number): string => figure(lengthOf(value, units), units)
  const stops = sizes.some(({ stopAt }) => stopAt !== undefined)
  const head: Row = {
    kind: 'cells',
    cells: ['', SHEET.size, SHEET.exact, SHEET.onTheRule, stops ? SHEET.stopAt : ''],
    bold: true,
  }
  const rows = sizes.map(
    ({ symbol = '', name, value, shop, stopAt }): Row => ({
      kind: 'cells',
      cells: [symbol, name, say(value), shop, stopAt === undefined ? '' : say(stopAt)],
    }),
  )
  return [head, ...rows]
}
