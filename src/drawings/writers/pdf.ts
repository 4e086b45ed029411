import { createRequire } from 'node:module'
import { join } from 'node:path'
import PDFDocument from 'pdfkit'
import { arcOfLeg, type Drawing, legsOf, type Point, polar, type Shape, type ShapeOf } from '#src/drawings/model.ts'
import { CAPITAL_HEIGHT, LOOKS } from './looks.ts'

type Document = PDFKit.PDFDocument

const POINTS_PER_MM = 72 / 25.4

/** The same drawing gives the same bytes: no file of ours says when it was written. */
const WRITTEN = new Date(0)

/**
 * The fonts stand in their package, and beside the bundled file in the container. The standard fonts of PDF lack signs
 * that we use, and drop them without a word.
 */
const font = (file: string): string =>
  import.meta.filename.endsWith('.ts')
    ? createRequire(import.meta.filename).resolve(`dejavu-fonts-ttf/ttf/${file}`)
    : join(import.meta.dirname, '../fonts', file)

/** Degrees of an arc that one curve stands for. */
const LONGEST_PIECE = 15

/**
 * Drawings as pages of a PDF, each on paper of its own size and at its own scale, told not to be shrunk by whoever prints
 * it. Dear to load and slow to set text: for a worker thread.
 */
export async function toPdf(pages: readonly Drawing[]): Promise<Uint8Array> {
  const document = new PDFDocument({
    autoFirstPage: false,
    font: '', // no standard font
    displayTitle: true,
    lang: 'en',
    info: { Title: pages[0]?.title ?? '', Creator: 'Racewright', Producer: 'Racewright', CreationDate: WRITTEN },
  })
  addFont(document, 'regular', 'DejaVuSans.ttf')
  addFont(document, 'bold', 'DejaVuSans-Bold.ttf')
  atFullSize(document)
  const written = collected(document)
  for (const page of pages) addPage(document, page)
  document.end()
  return written
}

/** A font as the library has it in a document, as far as documents can share it: nothing in these hangs on what a text was set for. */
type Shared = {
  /** The tables, read as they are needed. */
  readonly font: { createSubset(): unknown }
  /** The words that were set, each with its letters and their places. */
  readonly layoutCache: Readonly<Record<string, unknown>>
}

const sharedFonts = new Map<string, Shared>()

/** Texts hold figures and names without end. */
const MOST_WORDS = 5_000

/** To read tables and set words anew takes most of the time of a document. The library has no word for sharing them. */
function addFont(document: Document, name: string, file: string): void {
  document.registerFont(name, font(file)).font(name)
  const { _font: own } = document as unknown as { _font: Shared & { subset: unknown } }
  const shared = sharedFonts.get(file)
  if (shared === undefined || Object.keys(shared.layoutCache).length > MOST_WORDS)
    sharedFonts.set(file, { font: shared?.font ?? own.font, layoutCache: own.layoutCache })
  else Object.assign(own, { layoutCache: shared.layoutCache })
  if (shared !== undefined) Object.assign(own, { font: shared.font, subset: shared.font.createSubset() })
}

/** Says to a printing program that it must not fit the page to the paper. The library has no word for it. */
function atFullSize(document: Document): void {
  const { _root } = document as unknown as {
    _root: { data: { ViewerPreferences: { data: { PrintScaling?: string } } } }
  }
  _root.data.ViewerPreferences.data.PrintScaling = 'None'
}

async function collected(document: Document): Promise<Uint8Array> {
  const chunks: Uint8Array[] = []
  for await (const chunk of document) chunks.push(chunk)
  return Buffer.concat(chunks)
}

function addPage(document: Document, drawing: Drawing): void {
  const { width, height, scale, shapes } = drawing
  document.addPage({
    size: [width * scale * POINTS_PER_MM, height * scale * POINTS_PER_MM],
    margin: 0,
  })
  document.transform(POINTS_PER_MM, 0, 0, POINTS_PER_MM, 0, 0)
  const onPaper = (point: Point): Spot => ({ x: point.x * scale, y: (height - point.y) * scale })
  for (const shape of shapes) {
    if (shape.kind === 'text') write(document, shape, onPaper(shape.at), scale)
    else if (shape.kind === 'code') stamp(document, shape, onPaper(shape.at), scale)
    else draw(document, shape, onPaper, scale)
  }
}

/** Millimetres of paper, y down. */
type Spot = { readonly x: number; readonly y: number }
type OnPaper = (point: Point) => Spot

function draw(
  document: Document,
  shape: Exclude<Shape, { kind: 'text' | 'code' }>,
  onPaper: OnPaper,
  scale: number,
): void {
  const { width, dashes } = LOOKS[shape.role]
  document.lineWidth(width)
  if (dashes === undefined) document.undash()
  // The types know a single dash; the library takes a list, as a PDF does.
  else document.dash([...dashes] as unknown as number, {})
  trace(document, shape, onPaper, scale)
  const isFilled = (shape.kind === 'polyline' || shape.kind === 'circle') && shape.filled === true
  if (isFilled) document.fill('black')
  else document.stroke('black')
}

function trace(
  document: Document,
  shape: Exclude<Shape, { kind: 'text' | 'code' }>,
  onPaper: OnPaper,
  scale: number,
): void {
  const go = (point: Point): void => {
    const { x, y } = onPaper(point)
    document.moveTo(x, y)
  }
  const lineTo = (point: Point): void => {
    const { x, y } = onPaper(point)
    document.lineTo(x, y)
  }
  switch (shape.kind) {
    case 'line':
      go(shape.from)
      lineTo(shape.to)
      return
    case 'circle': {
      const { x, y } = onPaper(shape.centre)
      document.circle(x, y, shape.radius * scale)
      return
    }
    case 'arc':
      go(polar(shape.centre, shape.radius, shape.start))
      turn(document, shape, onPaper)
      return
    case 'polyline': {
      const [first] = shape.points
      if (first === undefined) return
      go(first)
      for (const { from, to } of legsOf(shape)) {
        if ((from.bulge ?? 0) === 0) lineTo(to)
        else turn(document, arcOfLeg(from, to), onPaper, (from.bulge ?? 0) < 0)
      }
      if (shape.closed === true) document.closePath()
      return
    }
    default:
      shape satisfies never
  }
}

type Turn = Pick<ShapeOf<'arc'>, 'centre' | 'radius' | 'start' | 'end'>

/**
 * On from the arc's start (or, backwards, from its end) by cubic curves: for a piece of angle θ the handles are
 * (4/3) tan(θ/4) radii long, which at 15° keeps to the circle within a hundred millionth of its radius.
 */
function turn(document: Document, { centre, radius, start, end }: Turn, onPaper: OnPaper, backwards = false): void {
  const span = end > start ? end - start : end - start + 360
  const pieces = Math.max(1, Math.ceil(span / LONGEST_PIECE))
  const step = ((backwards ? -1 : 1) * span) / pieces
  const handle = (4 / 3) * Math.tan((step * Math.PI) / 720) * radius
  for (let index = 0; index < pieces; index += 1) {
    const from = (backwards ? end : start) + index * step
    const to = from + step
    const [first, second, last] = [
      onPaper(polar(polar(centre, radius, from), handle, from + 90)),
      onPaper(polar(polar(centre, radius, to), -handle, to + 90)),
      onPaper(polar(centre, radius, to)),
    ]
    document.bezierCurveTo(first.x, first.y, second.x, second.y, last.x, last.y)
  }
}

function write(document: Document, shape: ShapeOf<'text'>, { x, y }: Spot, scale: number): void {
  const { text, height, anchor, turned = 0, bold } = shape
  document.font(bold === true ? 'bold' : 'regular').fontSize((height * scale) / CAPITAL_HEIGHT)
  // A text is set to be measured, which takes as long as to write it.
  const left = anchor === 'start' ? 0 : document.widthOfString(text) / (anchor === 'middle' ? -2 : -1)
  document.save().translate(x, y).rotate(-turned).fillColor('black')
  document.text(text, left, 0, { lineBreak: false, baseline: 'alphabetic' })
  document.restore()
}

function stamp(document: Document, { side, modules, path }: ShapeOf<'code'>, { x, y }: Spot, scale: number): void {
  document.save().translate(x, y - side * scale)
  document
    .scale((side * scale) / modules)
    .path(path)
    .fill('black')
  document.restore()
}
