import type { Units } from '#shared/units/length.ts'
import type { Form, JobSheet, SheetOperation } from '#src/api/job-sheet/schema.ts'
import type { Drawing } from '#src/drawings/model.ts'
import { PAPER_SIZES, type Paper } from '#src/drawings/papers.ts'
import { qrCode } from '#src/drawings/qr-code.ts'
import { type Block, type Row, type ShortRow, shortPages, textPages } from '#src/drawings/sheets/text-pages.ts'
import { VERSION } from '#src/version.ts'
import { cautionSentence } from '#src/words/caution.ts'
import { imprint } from '#src/words/drawing.ts'
import { blankName, SHEET, speedSentence } from '#src/words/job-sheet/sheet.ts'
import { tickList, toolGroups } from '#src/words/job-sheet/tools.ts'
import { placeOfReading } from '#src/words/kiosk/lathe.ts'
import { signMeanings } from '#src/words/standing.ts'
import { TERMS } from '#src/words/terms.ts'
import { allCautions, cautionsAt, gravely, shortFacts, sizeCells } from './sheet-text.ts'

/**
 * The job sheet on paper, whole or as short as two pages.
 *
 * @param address leads back to the bearing, where that has one
 */
export function toPages(
  sheet: JobSheet,
  paper: Paper,
  form: Form = 'full',
  address?: string | undefined,
): readonly Drawing[] {
  const { title, arrangement, name, code, tools } = sheet
  const use = cautionSentence('light-use-only', TERMS[arrangement])
  const words = (texts: readonly string[]) => ({
    heading: title,
    lead: use,
    imprint: [imprint({ name, code, version: VERSION }), ...signMeanings(texts), SHEET.notToScale].join(', '),
    code: address === undefined ? undefined : qrCode(address),
  })
  if (form === 'short') {
    const rows = shortRows(sheet)
    const texts = rows.map((row) => row.words)
    return shortPages(words(texts), rows, PAPER_SIZES[paper])
  }
  const blocks = [
    ...warned(sheet),
    {
      title: SHEET.allTools,
      rows: toolGroups(tools).map(
        (group): Row => ({ kind: 'paragraph', lead: group.name, words: tickList(group.tools) }),
      ),
    } satisfies Block,
    ...sheet.operations.map((operation, index) => block(sheet, operation, index)),
  ]
  const texts = blocks.flatMap(({ rows }) => rows.flatMap(textsOf))
  return textPages(words(texts), blocks, PAPER_SIZES[paper])
}

const textsOf = (row: Row): readonly string[] => (row.kind === 'cells' ? row.cells : [row.words])

/** Before anything else: what the design warns of. */
function warned(sheet: JobSheet): readonly Block[] {
  const rows = gravely(sheet).map((words): Row => ({ kind: 'paragraph', lead: SHEET.warning, words, marked: true }))
  return rows.length === 0 ? [] : [{ title: SHEET.warnings, rows }]
}

function block(sheet: JobSheet, operation: SheetOperation, index: number): Block {
  const { number, title, tool, counted, how, sizes, check, mistake, readings, speed } = operation
  const paragraph = (lead: string, words: string): Row => ({ kind: 'paragraph', lead, words })
  return {
    title: `${number}. ${title}`,
    rows: [
      ...cautionsAt(sheet, index).map(
        (words): Row => ({ kind: 'paragraph', lead: SHEET.caution, words, marked: true }),
      ),
      paragraph(SHEET.tools, tool),
      ...(speed ? [paragraph(SHEET.speed, speedSentence(speed))] : []),
      ...(counted === undefined ? [] : [paragraph(SHEET.counted, counted)]),
      paragraph(SHEET.how, how),
      ...sizeRows(sizes, sheet.units),
      paragraph(SHEET.check, check),
      paragraph(SHEET.mistake, mistake.looksLike),
      paragraph(SHEET.cost, mistake.costs),
      paragraph(SHEET.remedy, mistake.remedy),
      ...readings.map(
        (reading): Row => ({
          kind: 'blank',
          words: blankName(reading),
          note: placeOfReading(reading, TERMS[sheet.arrangement]),
        }),
      ),
    ],
  }
}

function sizeRows(sizes: SheetOperation['sizes'], units: Units): readonly Row[] {
  if (sizes.length === 0) return []
  const stops = sizes.some(({ stopAt }) => stopAt !== undefined)
  const head: Row = {
    kind: 'cells',
    cells: ['', SHEET.size, SHEET.exact, SHEET.onTheRule, stops ? SHEET.stopAt : ''],
    bold: true,
  }
  return [head, ...sizes.map((size): Row => ({ kind: 'cells', cells: sizeCells(size, units) }))]
}

/** The cautions once and the tools, then one line for each operation with its sizes, its check and its blanks. */
function shortRows(sheet: JobSheet): readonly ShortRow[] {
  const steps = sheet.operations.map((operation, index) => {
    const { number, title, check, readings } = operation
    const facts = shortFacts(sheet, operation, index)
    const sentences = [
      facts.length === 0 ? `${number}. ${title}.` : `${number}. ${title}: ${facts.join('; ')}.`,
      check,
      ...readings.map((reading) => `${blankName(reading)}: ________`),
    ]
    return { words: sentences.join(' '), isStep: true }
  })
  const first = [
    SHEET.readFull,
    ...gravely(sheet).map((words) => `${SHEET.warning}: ${words}`),
    ...allCautions(sheet),
    ...toolGroups(sheet.tools).map((group) => `${group.name}: ${tickList(group.tools)}`),
  ]
  return [...first.map((words) => ({ words, isStep: false })), ...steps]
}
