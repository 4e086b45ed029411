import { fail, ok, type Result } from '#shared/result.ts'
import { mm } from '#shared/units/length.ts'
import { clipped, type Window } from '#src/drawings/clip.ts'
import { at, type Drawing, type Point, type Shape } from '#src/drawings/model.ts'
import type { PaperSize } from '#src/drawings/papers.ts'
import { codeAt, type QrCode } from '#src/drawings/qr-code.ts'
import { circle, cross, placed, text } from '#src/drawings/shapes.ts'
import { fittedHeight, textWidth } from '#src/drawings/text-width.ts'
import { pageFooting, tileNote } from '#src/words/drawing.ts'
import { SMALL_TEXT_HEIGHT } from './annotations.ts'
import { BAR_WIDTH, CHECK_BAR_HEIGHT, CHECK_BAR_WIDTH, checkBar } from './check-bar.ts'

/** Shapes round the origin, and how far they reach from it. */
export type Figure = {
  readonly shapes: readonly Shape[]
  readonly left: number
  readonly right: number
  readonly bottom: number
  readonly top: number
}

/** A line of text below a figure, and what it points to, if to anything. */
export type Label = { readonly words: string; readonly tip?: Point }

/** Something to be cut by, full size, its lower left corner at 0. No two of a set have one title. */
export type Item = {
  readonly title: string
  readonly shapes: readonly Shape[]
  readonly width: number
  readonly height: number
  /** Without its words, and those apart: for a screen on which no text of it could be read. */
  readonly bare: { readonly figure: Figure; readonly labels: readonly Label[] }
  /** Printed instead where it is larger than a page: it is made without its outline. */
  readonly instead?: Item
}

export type Words = {
  readonly title: string
  readonly description: string
  readonly imprint: string
  /** For the lower right corner of each page. */
  readonly code?: QrCode | undefined
}

/** More paper than this is not glued together by anyone. */
const MOST_PAGES = 60

export type TooManyPages = { readonly pages: number; readonly most: number }

const MARGIN = 8
const BETWEEN = 8
/** Neighbouring pages show this much of each other, with the marks to lay them over one another in the middle of it. */
const OVERLAP = 12
const MARK_RADIUS = 2

type Spot = { readonly item: Item; readonly x: number; readonly y: number }

/** Below the items: the bar to measure, whose sheet it is, and what is free between that and the items. */
const IMPRINT_HEIGHT = 6
const IMPRINT_ABOVE = 1.2
const FOOT_HEIGHT = CHECK_BAR_HEIGHT + IMPRINT_HEIGHT

/** Everything on one sheet as large as it takes: for screens with the bar to measure, for machines that cut without it. */
export function oneSheet(items: readonly Item[], words: Words, paper: PaperSize, isPrinted: boolean): Drawing {
  const room = Math.max(paper.short - 2 * MARGIN, CHECK_BAR_WIDTH, ...items.map(({ width }) => width))
  const shelves = shelvesOf(items, room, Number.POSITIVE_INFINITY)[0] ?? { spots: [], height: 0 }
  const foot = isPrinted ? FOOT_HEIGHT : IMPRINT_HEIGHT
  const height = shelves.height + foot + 2 * MARGIN
  const { title, description, imprint, code } = words
  const beside = isPrinted ? besideOf(code) : 0
  return {
    title,
    description,
    width: mm(room + 2 * MARGIN),
    height: mm(height),
    scale: 1,
    shapes: [
      ...onPage(shelves.spots, height - MARGIN),
      ...(isPrinted ? [...checkBar(MARGIN, MARGIN), ...inCorner(code, MARGIN + room)] : []),
      imprinted(imprint, MARGIN + foot - IMPRINT_HEIGHT, room - beside),
    ],
  }
}

/** The same on pages of a printer: what fits stays whole, what is larger is spread over several. */
export function pagesOf(
  items: readonly Item[],
  words: Words,
  paper: PaperSize,
): Result<readonly Drawing[], TooManyPages> {
  const width = paper.short - 2 * MARGIN
  const height = paper.long - 2 * MARGIN - FOOT_HEIGHT
  const fits = (item: Item): boolean => item.width <= width && item.height <= height
  const printed = items.map((item) => (fits(item) ? item : (item.instead ?? item)))
  const large = printed.filter((item) => !fits(item))
  const whole = shelvesOf(printed.filter(fits), width, height)
  const pages =
    whole.length + large.reduce((sum, item) => sum + countOf(item.width, width) * countOf(item.height, height), 0)
  if (pages > MOST_PAGES) return fail({ pages, most: MOST_PAGES })
  const contents = [
    ...whole.map(({ spots }) => ({ shapes: onPage(spots, paper.long - MARGIN), note: '' })),
    ...large.flatMap((item) => tilesOf(item, width, height)),
  ]
  return ok(
    contents.map(({ shapes, note }, index): Drawing => {
      const footing = pageFooting(words.title, index + 1, contents.length, paper.name)
      const right = paper.short - MARGIN - besideOf(words.code)
      return {
        title: words.title,
        description: words.description,
        width: paper.short,
        height: paper.long,
        scale: 1,
        shapes: [
          ...shapes,
          ...checkBar(MARGIN, MARGIN),
          ...inCorner(words.code, paper.short - MARGIN),
          ...(note === '' ? [] : [besideBar(note, right, right - MARGIN)]),
          imprinted(
            words.imprint,
            MARGIN + CHECK_BAR_HEIGHT,
            right - MARGIN - textWidth(footing, SMALL_TEXT_HEIGHT) - 4,
          ),
          text(footing, at(right, MARGIN + CHECK_BAR_HEIGHT + IMPRINT_ABOVE), SMALL_TEXT_HEIGHT, 'end', {
            role: 'mark',
          }),
        ],
      }
    }),
  )
}

/** As wide as the longer bar leaves it. */
const besideBar = (note: string, right: number, width: number): Shape =>
  text(note, at(right, MARGIN + 15), fittedHeight(note, SMALL_TEXT_HEIGHT, width - BAR_WIDTH - 4), 'end', {
    role: 'mark',
  })

/** The code takes the height of the foot, and so much of its width with what parts it from the words. */
const besideOf = (code: QrCode | undefined): number => (code === undefined ? 0 : FOOT_HEIGHT + 2)

const inCorner = (code: QrCode | undefined, right: number): readonly Shape[] =>
  codeAt(code, right - FOOT_HEIGHT, MARGIN, FOOT_HEIGHT)

const imprinted = (imprint: string, y: number, room: number): Shape =>
  text(imprint, at(MARGIN, y + IMPRINT_ABOVE), fittedHeight(imprint, SMALL_TEXT_HEIGHT, room), 'start', {
    role: 'mark',
  })

type Shelves = { readonly spots: readonly Spot[]; readonly height: number }

/** Side by side in rows, and rows below one another, y down from the top; a new page where a row does not fit. */
function shelvesOf(items: readonly Item[], width: number, height: number): readonly Shelves[] {
  const pages: { spots: Spot[]; height: number }[] = []
  let [x, y, row] = [0, 0, 0]
  for (const item of items) {
    if (x > 0 && x + item.width > width) [x, y, row] = [0, y + row + BETWEEN, 0]
    const page = pages.at(-1)
    const isNew = page === undefined || y + item.height > height
    if (isNew) [x, y, row] = [0, 0, 0]
    const on = isNew ? { spots: [], height: 0 } : page
    if (isNew) pages.push(on)
    on.spots.push({ item, x, y })
    row = Math.max(row, item.height)
    on.height = Math.max(on.height, y + item.height)
    x += item.width + BETWEEN
  }
  return pages
}

const onPage = (spots: readonly Spot[], top: number): readonly Shape[] =>
  spots.flatMap(({ item, x, y }) => placed(item.shapes, 1, at(MARGIN + x, top - y - item.height)))

/** How many pages of a room cover a length, each over the edge of the last. */
const countOf = (length: number, room: number): number =>
  length <= room ? 1 : Math.ceil((length - OVERLAP) / (room - OVERLAP))

type Tile = { readonly shapes: readonly Shape[]; readonly note: string }

function tilesOf(item: Item, width: number, height: number): readonly Tile[] {
  const columns = countOf(item.width, width)
  const rows = countOf(item.height, height)
  // In the middle of the paper that it takes.
  const left = (item.width - columns * (width - OVERLAP) - OVERLAP) / 2
  const bottom = (item.height - rows * (height - OVERLAP) - OVERLAP) / 2
  return Array.from({ length: rows * columns }, (_, index) => {
    const [row, column] = [Math.floor(index / columns), index % columns]
    const x = left + column * (width - OVERLAP)
    const y = bottom + (rows - 1 - row) * (height - OVERLAP)
    const window = { left: x, bottom: y, right: x + width, top: y + height }
    const shapes = [...clipped(item.shapes, window).map((shape) => heldIn(shape, window)), ...registration(window)]
    return {
      shapes: placed(shapes, 1, at(MARGIN - x, MARGIN + FOOT_HEIGHT - y)),
      note: tileNote(item.title, nameOf(row, column), rows * columns),
    }
  })
}

/** A text that runs over the edge of its page moves back into it, and one that is longer than the page is made smaller. */
function heldIn(shape: Shape, { left, right }: Window): Shape {
  if (shape.kind !== 'text') return shape
  const height = mm(fittedHeight(shape.text, shape.height, right - left, shape.bold))
  const width = textWidth(shape.text, height, shape.bold)
  const before = { start: 0, middle: width / 2, end: width }[shape.anchor]
  const x = Math.min(Math.max(shape.at.x - before, left), right - width) + before
  return { ...shape, height, at: at(x, shape.at.y) }
}

/** `B3`: second row from the top, third page of it. */
const nameOf = (row: number, column: number): string => `${String.fromCharCode(65 + row)}${column + 1}`

/** A ring with a cross in the middle of each overlap's corner: the same mark on every page that shows it. */
function registration({ left, bottom, right, top }: Window): readonly Shape[] {
  const inset = OVERLAP / 2
  const corners = [left + inset, right - inset].flatMap((x) => [bottom + inset, top - inset].map((y) => at(x, y)))
  return corners.flatMap((corner) => [circle('mark', corner, MARK_RADIUS), ...cross('mark', corner, 2 * MARK_RADIUS)])
}
