import { itemAt } from '#shared/numbers/item-at.ts'
import { at, type Drawing, type Shape } from '#src/drawings/model.ts'
import type { PaperSize } from '#src/drawings/papers.ts'
import { codeAt, type QrCode } from '#src/drawings/qr-code.ts'
import { box, line, placed, text } from '#src/drawings/shapes.ts'
import { fittedHeight, wrapped } from '#src/drawings/text-width.ts'
import { pageNumber, SHEET } from '#src/words/job-sheet/sheet.ts'

/** A paragraph with a word before it, a row of a table, or a blank to write in. */
export type Row =
  | { readonly kind: 'paragraph'; readonly lead: string; readonly words: string; readonly marked?: boolean }
  | { readonly kind: 'cells'; readonly cells: readonly string[]; readonly bold?: boolean }
  | { readonly kind: 'blank'; readonly words: string; readonly note: string }

/** A block that stays together on a page, with a box to tick before its title. */
export type Block = { readonly title: string; readonly rows: readonly Row[] }

const MARGIN = 14
const FOOT_HEIGHT = 6
const BODY = 2
const TITLE = 2.8
const HEADING = 3.6
const LINE = 4.1
const LEAD_WIDTH = 24
const BETWEEN_BLOCKS = 5
/** Left edges of the cells of a table, as parts of the width: symbol, name, and three figures set to the right. */
const CELLS = [0, 0.08, 0.62, 0.8, 1] as const
/** How much of the width each may take, so that none meets its neighbour. */
const ROOMS = [0.07, 0.36, 0.17, 0.17, 0.19] as const
const CODE_SIDE = 28
/** Of that, what reaches into the margin: its own light edge. */
const CODE_ABOVE = 4
/** Beside a blank. */
const NOTE = 1.7
const NOTE_LINE = 3
const BLANK_FROM = 0.4
const BLANK_TO = 0.58

type Placed = { readonly shapes: readonly Shape[]; readonly height: number }

/** The words above a sheet, and below each of its pages. */
export type SheetWords = {
  readonly heading: string
  readonly lead: string
  readonly imprint: string
  /** For the upper right corner of the first page. */
  readonly code?: QrCode | undefined
}

/**
 * A text on pages of paper: a heading, a line that counts for all of it, and blocks that are not torn apart, each with a
 * box to tick. Lines are broken by an upper bound of their width, so that nothing leaves the page.
 */
export function textPages(
  { heading, lead, imprint, code }: SheetWords,
  blocks: readonly Block[],
  paper: PaperSize,
  rows: readonly Placed[] = [],
): readonly Drawing[] {
  const width = paper.short - 2 * MARGIN
  const room = paper.long - 2 * MARGIN - FOOT_HEIGHT
  const between = rows.length > 0 ? 0 : BETWEEN_BLOCKS
  const parts = [
    headingOf({ heading, lead, code }, width, between === 0 ? BETWEEN_BLOCKS / 2 : 0),
    ...blocks.map((block) => blockOf(block, width)),
    ...rows,
  ]
  const pages: Placed[][] = [[]]
  let used = 0
  for (const part of parts) {
    if (used > 0 && used + part.height > room) {
      pages.push([])
      used = 0
    }
    pages.at(-1)?.push(part)
    used += part.height + between
  }
  return pages.map((page, index) =>
    pageOf(page, between, { heading, imprint, number: pageNumber(index + 1, pages.length) }, paper),
  )
}

/** A row of a short sheet: a step with its box, or something to read first. */
export type ShortRow = { readonly words: string; readonly isStep: boolean }

/** Text heights of a short sheet: it takes the largest with which it fits. */
const SHORT_HEIGHTS = [2, 1.9, 1.8, 1.7, 1.6, 1.5, 1.4, 1.3, 1.2, 1] as const
const SHORT_PAGES = 2

/** Rows with a box before each, on two pages at the most: the smaller the more there is to say. */
export function shortPages(words: SheetWords, rows: readonly ShortRow[], paper: PaperSize): readonly Drawing[] {
  const tries = SHORT_HEIGHTS.map((height) =>
    textPages(
      words,
      [],
      paper,
      rows.map((row) => shortRow(row, height, paper)),
    ),
  )
  // A little smaller is better than a second page for a line or two.
  const onOne = tries.slice(0, 2).find((pages) => pages.length === 1)
  return onOne ?? tries.find((pages) => pages.length <= SHORT_PAGES) ?? itemAt(tries, tries.length - 1)
}

function shortRow({ words, isStep }: ShortRow, height: number, paper: PaperSize): Placed {
  const room = paper.short - 2 * MARGIN - SHORT_INDENT
  const apart = height * 1.75
  const lines = wrapped(words, height, room)
  const shapes = lines.map((content, index) =>
    text(content, at(SHORT_INDENT, -height - index * apart), fittedHeight(content, height, room), 'start'),
  )
  const marks = isStep ? [box('mark', 0, -height - 0.3, height + 0.6, 0.3)] : []
  return { shapes: [...marks, ...shapes], height: lines.length * apart + 0.8 }
}

const SHORT_INDENT = 5

type PageWords = { readonly heading: string; readonly imprint: string; readonly number: string }

function pageOf(
  parts: readonly Placed[],
  between: number,
  { heading, imprint, number }: PageWords,
  paper: PaperSize,
): Drawing {
  let y = paper.long - MARGIN
  const shapes = parts.flatMap((part) => {
    const here = placed(part.shapes, 1, at(MARGIN, y))
    y -= part.height + between
    return here
  })
  return {
    title: SHEET.name,
    description: `${heading}. ${imprint}.`,
    width: paper.short,
    height: paper.long,
    scale: 1,
    shapes: [
      ...shapes,
      text(imprint, at(MARGIN, MARGIN - 2), fittedHeight(imprint, BODY, (paper.short - 2 * MARGIN) * 0.7), 'start', {
        role: 'mark',
      }),
      text(number, at(paper.short - MARGIN, MARGIN - 2), BODY, 'end', { role: 'mark' }),
    ],
  }
}

/** From its upper left corner at 0 downward. */
function headingOf({ heading, lead, code }: Omit<SheetWords, 'imprint'>, all: number, free: number): Placed {
  const width = code === undefined ? all : all - CODE_SIDE - 2
  const titles = wrapped(heading, HEADING, width, true)
  const shapes = titles.map((words, index) =>
    text(words, at(0, -HEADING - index * HEADING * 1.7), HEADING, 'start', { bold: true }),
  )
  const below = titles.length * HEADING * 1.7 + 2
  const paragraph = paragraphOf(SHEET.use, lead, width, true)
  const height = Math.max(below + paragraph.height, code === undefined ? 0 : CODE_SIDE - CODE_ABOVE)
  const inCorner = codeAt(code, all - CODE_SIDE, CODE_ABOVE - CODE_SIDE, CODE_SIDE)
  return { shapes: [...shapes, ...placed(paragraph.shapes, 1, at(0, -below)), ...inCorner], height: height + free }
}

function blockOf({ title, rows }: Block, width: number): Placed {
  const titles = wrapped(title, TITLE, width - 7, true)
  const shapes: Shape[] = [
    line('hatch', at(0, 0), at(width, 0)),
    box('frame', 0, -5.4, 3.6, -1.8),
    ...titles.map((words, index) => text(words, at(6, -5 - index * TITLE * 1.7), TITLE, 'start', { bold: true })),
  ]
  let y = 7 + (titles.length - 1) * TITLE * 1.7
  for (const row of rows) {
    const part = rowOf(row, width)
    shapes.push(...placed(part.shapes, 1, at(0, -y)))
    y += part.height
  }
  return { shapes, height: y }
}

function rowOf(row: Row, width: number): Placed {
  if (row.kind === 'paragraph') return paragraphOf(row.lead, row.words, width, row.marked === true)
  return row.kind === 'cells' ? cellsOf(row.cells, row.bold === true, width) : blankOf(row.words, row.note, width)
}

function paragraphOf(lead: string, words: string, width: number, marked: boolean): Placed {
  const lines = wrapped(words, BODY, width - LEAD_WIDTH, false)
  const height = lines.length * LINE + 1
  return {
    height,
    shapes: [
      // A bar beside what can hurt someone.
      ...(marked ? [line('outline', at(-2, -0.8), at(-2, -height + 0.8))] : []),
      text(lead, at(0, -LINE + 1), BODY, 'start', { bold: true }),
      ...lines.map((content, index) => text(content, at(LEAD_WIDTH, -LINE + 1 - index * LINE), BODY, 'start')),
    ],
  }
}

function cellsOf(cells: readonly string[], bold: boolean, width: number): Placed {
  const inner = width - LEAD_WIDTH
  const placeOf = (index: number): number => LEAD_WIDTH + itemAt(CELLS, index) * inner
  const shapes = cells.map((content, index) => {
    const isFigure = index > 1
    const room = inner * itemAt(ROOMS, index)
    return text(
      content,
      at(placeOf(index), -LINE + 1),
      fittedHeight(content, BODY, room, bold),
      isFigure ? 'end' : 'start',
      {
        bold,
      },
    )
  })
  return { height: LINE, shapes: [...shapes, line('hatch', at(LEAD_WIDTH, -LINE), at(width, -LINE))] }
}

function blankOf(words: string, note: string, width: number): Placed {
  const inner = width - LEAD_WIDTH
  const from = LEAD_WIDTH + BLANK_FROM * inner
  const to = LEAD_WIDTH + BLANK_TO * inner
  const notes = wrapped(note, NOTE, width - to - 2, false)
  const height = Math.max(LINE * 1.8, notes.length * NOTE_LINE + 1.5)
  return {
    height,
    shapes: [
      text(words, at(LEAD_WIDTH, -height + 1.5), fittedHeight(words, BODY, from - LEAD_WIDTH - 1), 'start'),
      line('frame', at(from, -height + 1), at(to, -height + 1)),
      ...notes.map((content, index) =>
        text(content, at(to + 2, -height + 1.5 + (notes.length - 1 - index) * NOTE_LINE), NOTE, 'start'),
      ),
    ],
  }
}
