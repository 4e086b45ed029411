import type { ArrangementName, FullRingDesign, ThrustDesign } from '#shared/bearing/arrangements.ts'
import { goodGaps } from '#shared/bearing/ball-ring.ts'
import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import type { Dimension } from '#shared/bearing/dimensions.ts'
import { GENERAL_TOLERANCES } from '#shared/data/general-tolerances.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { inches, inUnits, type Mm, mm, type Units } from '#shared/units/length.ts'
import { at, type Drawing, type NarrowPart, type Point, polar, type Shape } from '#src/drawings/model.ts'
import { PAPER_SIZES, type Paper, projectionFor } from '#src/drawings/papers.ts'
import { codeAt, type QrCode } from '#src/drawings/qr-code.ts'
import { type Scale, scaleUpTo } from '#src/drawings/scales.ts'
import { box, circle, line, placed, text } from '#src/drawings/shapes.ts'
import type { SheetMark } from '#src/drawings/sheet-mark.ts'
import { wrapped } from '#src/drawings/text-width.ts'
import * as words from '#src/words/drawing.ts'
import { signMeanings } from '#src/words/standing.ts'
import { TERMS, termsOf } from '#src/words/terms.ts'
import { arrowHead, fittedText, leader, leaderInto, SMALL_TEXT_HEIGHT, TEXT_HEIGHT } from './annotations.ts'
import { ballAngles, gapAngle, holePlaces, type Placed, type SeenHoles } from './face.ts'
import type { Room } from './side-labels.ts'
import { type Columns, columnsBeside, columnsRoom } from './size-columns.ts'
import { sizeTable } from './size-table.ts'
import { type SizeText, sizeTextFor, tradeSign } from './size-text.ts'
import { titleBlock } from './title-block.ts'

/*
 * The sheet, in millimetres of paper: half section, face view and the enlarged groove side by side, the view from one side
 * beside the section as both projections have it for what is alike on both sides; below them the table of sizes and the title
 * block, and above that the notes.
 */
const MARGIN = 8
const STRIP_HEIGHT = 36
const TITLE_WIDTH = 92
/** Between the table and the title block, its own quiet zone round it. */
const CODE_SIDE = 30
/** The notes stand below the enlarged groove, which is never narrower: as wide as the largest scale of the views leaves it. */
const COLUMNS = [75, 67, 60]
/** The scale bar's words stand beside it in so wide a column, else above it. */
const BAR_AND_WORDS = 75
/** Below so little height the enlarged groove tells nothing. */
const LEAST_DETAIL_HEIGHT = 45
/** Share of the enlarged groove in the room that the chosen scale leaves over; the face view takes the rest. */
const DETAIL_SHARE = 0.9
const LEAST_FACE_WIDTH = 56
const BETWEEN_ZONES = 2
const CAPTION_HEIGHT = 9
/** The tails of arrows reach past the enlarged groove, above and below. */
const BESIDE_DETAIL = 12
/** Above and below the face view, for the labels of the balls, and for those of holes. */
const FACE_LABELS = 9
const HOLES_LABEL = 4.5
/** Below the half section, for the width and a piece of it. */
const BELOW_SECTION = 17
const HATCH_SPACING = 1.6
/** Wide lines would make a black band of smaller balls. */
const LEAST_WIDE_BALL = 4
/** Centre lines run so far past what they are the centre of. */
const OVERHANG = 4
const NOTE_ROW = 3.1
const SCALE_BAR: Readonly<Record<Units, Mm>> = { mm: mm(50), in: inches(2) }
const GRAIN_ARROW = 12
/** The caption of the section has so much room at least. */
const SECTION_CAPTION = 44

type Layout = {
  readonly width: number
  readonly height: number
  readonly scale: Scale
  readonly detail: Scale
  readonly section: Point
  readonly face: Point
  readonly faceWidth: number
  readonly groove: Point
  readonly grooveRoom: Room
  readonly captions: number
  readonly notes: readonly string[]
  /** Width of the notes. */
  readonly column: number
}

/** The views of a bearing of any arrangement, in full size round the origin, and their words. */
export type Assembled = {
  readonly arrangement: ArrangementName
  readonly ring: Placed
  readonly dimensions: readonly Dimension[]
  readonly outside: Mm
  /** Width of the whole bearing, along the axis. */
  readonly wide: number
  /** The enlarged part: its middle along the axis, on the pitch circle, and its reach. */
  readonly marked: { readonly along: number; readonly reach: number }
  readonly section: (hatchSpacing: number, overhang: number) => readonly Shape[]
  readonly columns: (say: SizeText, factor: number) => Columns
  readonly face: (overhang: number, ballRole: 'outline' | 'hatch') => readonly Shape[]
  readonly enlarged: {
    /** By how much it may be enlarged to fit a room. */
    readonly most: (say: SizeText, room: Room) => number
    readonly draw: (say: SizeText, scale: Pick<Scale, 'factor'>, room: Room) => readonly Shape[]
  }
  /** Caption of the face view. */
  readonly faceCaption: string
  /** Symbol and size of the space between the last ball and the first. */
  readonly between: (say: SizeText) => string
  readonly bore: Mm
  /** Holes on the face view: those of what holds it together, then those of what turns it. */
  readonly holes: readonly SeenHoles[]
  readonly notes: Pick<
    words.NoteFacts,
    | 'gap'
    | 'fits'
    | 'play'
    | 'split'
    | 'screws'
    | 'dowels'
    | 'hasPinnedCheeks'
    | 'isCageCrossed'
    | 'mounting'
    | 'plateMounting'
  >
}

/** The wood, as the sheet states it. */
export type SheetWood = words.NoteFacts['wood']

/** Which gaps are good, for the note. */
export const gapToNote = ({ bearing: { resolved } }: FullRingDesign | ThrustDesign) => ({
  ...goodGaps(resolved),
  terms: termsOf(resolved.input),
})

/** How a sheet is issued: whose it is, of which wood, and on which paper. */
export type Issue = {
  readonly mark: SheetMark
  readonly wood: SheetWood
  readonly paper: Paper
  /** Not for a machine, which knows no paper. */
  readonly isPrinted: boolean
  readonly code?: QrCode | undefined
}

/**
 * A bearing as an engineering drawing (ISO 128, ISO 129-1, ISO 5456-2, ISO 7200): half section, face view, and the groove enlarged, with every
 * size of the design, the nearest figure of the rule, and the scale.
 */
export function assemblySheet(assembled: Assembled, issue: Issue): Drawing {
  const { mark } = issue
  const say = sizeTextFor(assembled.ring)
  const layout = layoutOf(assembled, issue, say)
  const { width, height, scale } = layout
  const shapes = [
    ...placed(sectionZone(assembled, say, scale.factor), 1, layout.section),
    ...placed(faceZone(assembled, say, { ...layout, hasArrow: issue.wood.hasArrow }), 1, layout.face),
    ...placed(assembled.enlarged.draw(say, layout.detail, layout.grooveRoom), 1, layout.groove),
    ...captions(assembled, layout),
    ...noteBox(layout, issue, assembled.ring.resolved.input.units),
    ...strip(assembled, say, layout, issue),
  ]
  return {
    title: `${words.TITLES.assembly} ${mark.code}`,
    description: `${words.assemblyDescription(assembled.arrangement, factsOf(assembled), say)} ${words.imprint(mark)}.`,
    width: mm(width / scale.factor),
    height: mm(height / scale.factor),
    scale: scale.factor,
    shapes: placed(shapes, 1 / scale.factor),
  }
}

/** Of a screen in one hand: text as high as on paper can be read where so many millimetres fill its width. */
export const NARROW_WIDTH = 92
const NARROW_DETAIL = 60
/** Arrows that point at a short line from outside, and lines of broken wood, reach so far past a view. */
const BESIDE_NARROW = 3
/** Of a size with its deviations, from the axis down. */
const LONGEST_SIZE = 48

/**
 * The views of the same below one another, each as wide as a narrow screen, and in words what else its sheet says. No scale is
 * true on a screen, so each view is as large as it can be.
 */
export function narrowAssembly(assembled: Assembled, wood: SheetWood): readonly NarrowPart[] {
  const { outside, wide, enlarged, columns, dimensions, arrangement } = assembled
  const { units } = assembled.ring.resolved.input
  const say = sizeTextFor(assembled.ring)
  const { left, right } = columnsRoom(columns(say, 1))
  const section = Math.min((NARROW_WIDTH - left - right - 2 * BESIDE_NARROW) / wide, NARROW_WIDTH / outside)
  const face = (NARROW_WIDTH - 2 * OVERHANG - 2 * BESIDE_NARROW) / outside
  const room = { width: NARROW_WIDTH - 2 * BESIDE_NARROW, height: NARROW_DETAIL }
  const detail = { factor: enlarged.most(say, room) }
  const part = (title: string, height: number, origin: Point, shapes: readonly Shape[]): NarrowPart => ({
    title,
    drawing: {
      title,
      description: title,
      width: mm(NARROW_WIDTH),
      height: mm(height),
      scale: 1,
      shapes: placed(shapes, 1, origin),
    },
    words: [],
  })
  const over = (NARROW_WIDTH - left - right - wide * section) / 2
  const radius = (outside / 2) * section
  // Sizes hang from the axis, and may be longer than the ring is high.
  const below = Math.max(radius, LONGEST_SIZE) + BELOW_SECTION
  const detailHeight = room.height + BESIDE_DETAIL
  const faceHeight = outside * face + 2 * (OVERHANG + FACE_LABELS + HOLES_LABEL * Math.max(1, assembled.holes.length))
  return [
    part(
      words.CAPTIONS.section,
      below + radius + CAPTION_HEIGHT,
      at(over + left + (wide * section) / 2, below),
      sectionZone(assembled, say, section),
    ),
    part(
      assembled.faceCaption,
      faceHeight,
      at(NARROW_WIDTH / 2, faceHeight / 2),
      faceZone(assembled, say, { scale: { factor: face }, faceWidth: NARROW_WIDTH, hasArrow: wood.hasArrow }),
    ),
    {
      ...part(
        words.CAPTIONS.detail,
        detailHeight,
        at(NARROW_WIDTH / 2, detailHeight / 2),
        enlarged.draw(say, detail, room),
      ),
      sizes: dimensions.map(({ key, value }) => words.sizeLine(key, TERMS[arrangement], `${say(value)} ${units}`)),
      words: noteSentences(assembled, wood, say),
    },
  ]
}

/** Labels of a bearing as a whole. */
function factsOf({ ring: { resolved }, outside, bore }: Assembled) {
  const { units, balls } = resolved.input
  const { count, material = BALL_MATERIAL } = balls
  return { count, material, ballDiameter: resolved.ballDiameter, outside, bore, units }
}

const viewHeight = (height: number): number => height - 2 * MARGIN - STRIP_HEIGHT - CAPTION_HEIGHT

/** Notes, signs and the bar, in the corner above the title block. */
const notesHeight = ({ notes, column }: Pick<Layout, 'notes' | 'column'>, isPrinted: boolean): number =>
  NOTE_ROW * notes.length + 3 + (isPrinted ? (column < BAR_AND_WORDS ? 8 : 5) : 0)

/** The widest notes among those that let the views be largest. */
const layoutOf = (assembled: Assembled, issue: Issue, say: SizeText): Layout =>
  COLUMNS.map((column) => layoutWith(column, assembled, issue, say)).reduce((best, next) =>
    next.scale.factor > best.scale.factor && next.grooveRoom.height >= LEAST_DETAIL_HEIGHT ? next : best,
  )

function layoutWith(column: number, assembled: Assembled, { wood, paper, isPrinted }: Issue, say: SizeText): Layout {
  const { outside, wide, enlarged, columns, holes } = assembled
  const { long: width, short: height } = PAPER_SIZES[paper]
  const notes = noteLines(assembled, wood, say, column)
  const { left: leftOf, right: rightOf } = columnsRoom(columns(say, 1))
  const above = FACE_LABELS + OVERHANG
  const below = Math.max(above + HOLES_LABEL * holes.length, BELOW_SECTION)
  const free = width - 2 * MARGIN - column - 2 * BETWEEN_ZONES - leftOf - rightOf
  const scale = scaleUpTo(
    Math.min(
      (viewHeight(height) - above - below) / outside,
      (free - 2 * OVERHANG) / (outside + wide),
      (free - LEAST_FACE_WIDTH) / wide,
    ),
  )
  const sectionWidth = wide * scale.factor
  const faceNeeds = Math.max(LEAST_FACE_WIDTH, outside * scale.factor + 2 * OVERHANG)
  const over = free - sectionWidth - faceNeeds
  const faceWidth = faceNeeds + (1 - DETAIL_SHARE) * over
  const belowDetail = notesHeight({ notes, column }, isPrinted)
  const grooveRoom = {
    width: column + DETAIL_SHARE * over,
    height: viewHeight(height) - belowDetail - BESIDE_DETAIL,
  }
  const centre = MARGIN + STRIP_HEIGHT + viewHeight(height) / 2
  const middle = centre + (below - above) / 2
  const sectionLeft = MARGIN + leftOf
  const faceLeft = sectionLeft + sectionWidth + rightOf + BETWEEN_ZONES
  return {
    width,
    height,
    scale,
    detail: scaleUpTo(enlarged.most(say, grooveRoom)),
    section: at(sectionLeft + sectionWidth / 2, middle),
    face: at(faceLeft + faceWidth / 2, middle),
    faceWidth,
    groove: at(width - MARGIN - grooveRoom.width / 2, centre + belowDetail / 2),
    grooveRoom,
    captions: height - MARGIN - CAPTION_HEIGHT + 3,
    notes,
    column,
  }
}

/** Everything that no view can say, with the meaning of the signs last; and the same broken into lines. */
const noteLines = (assembled: Assembled, wood: SheetWood, say: SizeText, column: number): readonly string[] =>
  noteSentences(assembled, wood, say).flatMap((sentence) => wrapped(sentence, SMALL_TEXT_HEIGHT, column - 3))

function noteSentences(
  { ring, dimensions, outside, notes }: Assembled,
  wood: SheetWood,
  say: SizeText,
): readonly string[] {
  const rows = GENERAL_TOLERANCES.rows.filter((_, index, all) => index === 0 || (all[index - 1]?.upTo ?? 0) < outside)
  const sentences = words.assemblyNotes({ ...notes, wood, general: rows, units: ring.resolved.input.units }, say)
  const inTable = dimensions.map(({ key }) => tradeSign(key, ring))
  return [...sentences, ...signMeanings([...sentences, ...inTable])]
}

function noteBox({ width, notes, column }: Layout, { isPrinted }: Issue, units: Units): readonly Shape[] {
  const left = width - MARGIN - column + 1
  const bottom = MARGIN + STRIP_HEIGHT
  const first = bottom + notesHeight({ notes, column }, isPrinted) - 3
  return [
    ...notes.map((content, index) => text(content, at(left, first - index * NOTE_ROW), SMALL_TEXT_HEIGHT, 'start')),
    ...(isPrinted ? scaleBar(at(left, bottom + 2), column, units) : []),
  ]
}

/** So long on paper, where the sheet has its scale. */
function scaleBar({ x: left, y }: Point, column: number, units: Units): readonly Shape[] {
  const long = SCALE_BAR[units]
  const right = left + long
  const isBeside = column >= BAR_AND_WORDS
  return [
    line('mark', at(left, y), at(right, y)),
    ...[left, left + long / 2, right].map((x) => line('mark', at(x, y - 1), at(x, y + 1))),
    fittedText(
      words.scaleBar(inUnits(long, units), units),
      isBeside ? at(right + 1.5, y - SMALL_TEXT_HEIGHT / 2) : at(left, y + 1.6),
      isBeside ? column - long - 4 : column - 3,
      'start',
      { height: SMALL_TEXT_HEIGHT },
    ),
  ]
}

function sectionZone(
  { ring: { pitchRadius }, outside, marked, section, columns }: Assembled,
  say: SizeText,
  factor: number,
): readonly Shape[] {
  const ring = marked.reach * factor + 2
  const centre = at(marked.along * factor, pitchRadius * factor)
  const top = Math.max((outside / 2) * factor, centre.y + ring)
  return [
    ...placed(section(HATCH_SPACING / factor, OVERHANG / factor), factor),
    ...columnsBeside(columns(say, factor), say, factor),
    circle('dimension', centre, ring),
    line('dimension', at(centre.x, centre.y + ring), at(centre.x, top + 2)),
    fittedText('X', at(centre.x, top + 3), 10, 'middle'),
  ]
}

/** The room of a face view, on paper, and how large the bearing is in it. */
type FaceSpace = Pick<Layout, 'faceWidth'> & Pick<SheetWood, 'hasArrow'> & { readonly scale: Pick<Scale, 'factor'> }

function faceZone(
  assembled: Assembled,
  say: SizeText,
  { scale: { factor }, faceWidth, hasArrow }: FaceSpace,
): readonly Shape[] {
  const { arrangement, ring, outside, face, between, holes } = assembled
  const { pitchRadius, resolved } = ring
  const radius = (outside / 2) * factor
  const high = radius + OVERHANG
  const inGap = polar(at(0, 0), pitchRadius * factor, gapAngle(ring))
  const angles = ballAngles(ring)
  const isSmall = resolved.ballDiameter * factor < LEAST_WIDE_BALL
  const ballAngle = itemAt(angles, Math.floor(angles.length * 0.6))
  const inBall = polar(at(0, 0), pitchRadius * factor, ballAngle)
  const [above, below] = [at(4, high + 3), at(-4, -high - 3)]
  return [
    ...placed(face(OVERHANG / factor, isSmall ? 'hatch' : 'outline'), factor),
    ...leader(above, inGap),
    fittedText(between(say), at(5, high + 2), faceWidth / 2 - 5, 'start'),
    ...(hasArrow ? grainArrow(at(-faceWidth / 2 + 1, high + 2 + TEXT_HEIGHT / 2)) : []),
    ...holes.flatMap((each, row) => holesNote(each, say, { factor, faceWidth, high, row, rows: holes.length })),
    ...leaderInto(below, inBall),
    fittedText(
      words.rollingLabel(arrangement, factsOf(assembled), say),
      // Beside it lines run down to the labels of holes.
      at(holes.length === 1 ? 3 : 0, -high - 4 - TEXT_HEIGHT),
      faceWidth - (holes.length > 0 ? 6 : 0),
      'middle',
    ),
  ]
}

/** Along the board, above the face view on the left. */
function grainArrow({ x, y }: Point): readonly Shape[] {
  const right = at(x + GRAIN_ARROW, y)
  return [
    line('dimension', at(x, y), right),
    arrowHead(at(x, y), 180),
    arrowHead(right, 0),
    text(words.GRAIN, at(right.x + 1.5, y - TEXT_HEIGHT / 2), TEXT_HEIGHT, 'start'),
  ]
}

interface FaceRoom {
  readonly factor: number
  readonly faceWidth: number
  readonly high: number
  /** Of the label, and how many there are. */
  readonly row: number
  readonly rows: number
}

/**
 * The note of holes, below everything, with a line up past the label of the balls to the lowest hole: on the left for the first
 * row, and on the right for the second.
 */
function holesNote(
  holes: SeenHoles,
  say: SizeText,
  { factor, faceWidth, high, row, rows }: FaceRoom,
): readonly Shape[] {
  const side = row === 0 ? -1 : 1
  const x = side * (faceWidth / 2 - 1)
  const y = -high - 4 - TEXT_HEIGHT - HOLES_LABEL * (row + 1)
  const places = holePlaces(holes).map((place) => at(place.x * factor, place.y * factor))
  const lowest = places.toSorted((a, b) => a.y - b.y - side * (a.x - b.x))
  const elbow = at(x, -high - 1)
  // Of two labels the lower one's line runs up on the right.
  const room = faceWidth - (rows > 1 && row === 0 ? 6 : 3)
  return [
    line('dimension', at(x, y + TEXT_HEIGHT / 2), elbow),
    ...leader(elbow, itemAt(lowest, 0)),
    fittedText(holes.label(say), at(x - side * 1.5, y), room, row === 0 ? 'start' : 'end'),
  ]
}

function captions(
  { faceCaption }: Assembled,
  { section, face, groove, grooveRoom, captions: y, scale, detail, faceWidth }: Layout,
): readonly Shape[] {
  const caption = (view: string, { text }: Scale, x: number, room: number): Shape =>
    fittedText(words.caption(view, text), at(x, y), room, 'middle', { bold: true })
  return [
    caption(words.CAPTIONS.section, scale, Math.max(section.x, MARGIN + 1 + SECTION_CAPTION / 2), SECTION_CAPTION),
    caption(faceCaption, scale, face.x, faceWidth),
    caption(words.CAPTIONS.detail, detail, groove.x, grooveRoom.width),
  ]
}

function strip(
  assembled: Assembled,
  say: SizeText,
  { width, height, scale }: Layout,
  { mark, paper, isPrinted, code }: Issue,
): readonly Shape[] {
  const { arrangement, ring, dimensions } = assembled
  const { resolved } = ring
  const { units } = resolved.input
  const [left, right, bottom, top] = [MARGIN, width - MARGIN, MARGIN, MARGIN + STRIP_HEIGHT]
  const between = right - TITLE_WIDTH
  const tableEnd = code === undefined ? between : between - CODE_SIDE
  return [
    box('frame', MARGIN, MARGIN, width - MARGIN, height - MARGIN),
    line('frame', at(left, top), at(right, top)),
    ...[...new Set([tableEnd, between])].map((x) => line('frame', at(x, bottom), at(x, top))),
    ...codeAt(code, tableEnd, (bottom + top - CODE_SIDE) / 2, CODE_SIDE),
    ...sizeTable({ arrangement, dimensions, resolved }, say, { left, bottom, right: tableEnd, top }),
    ...titleBlock(
      {
        ...words.titles(arrangement, factsOf(assembled), { units, name: mark.name }, say),
        projection: projectionFor(units),
        facts: [
          [words.FACTS.code, mark.code],
          [words.FACTS.scale, scale.text],
          [words.FACTS.units, units],
          ...(isPrinted ? [[words.FACTS.paper, PAPER_SIZES[paper].name] as const] : []),
          [words.FACTS.sheet, words.sheetOf(1, 1)],
          [words.FACTS.finish, words.finishFact(resolved.finishAllowance, units, say)],
        ],
        people: [
          [words.PEOPLE.creator, words.CREATOR(mark.version)],
          [words.PEOPLE.approved, ''],
          [words.PEOPLE.date, ''],
          [words.PEOPLE.owner, ''],
        ],
        note: words.LIGHT_USE_NOTE,
      },
      { left: between, bottom, right, top },
    ),
  ]
}
