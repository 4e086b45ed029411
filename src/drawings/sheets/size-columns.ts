import { DIMENSION_SYMBOLS, type DimensionKey } from '#shared/bearing/dimensions.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { at, type Shape } from '#src/drawings/model.ts'
import { line } from '#src/drawings/shapes.ts'
import { textWidth } from '#src/drawings/text-width.ts'
import {
  arrowHead,
  fittedText,
  levelExtension,
  levelLine,
  TEXT_HEIGHT,
  uprightExtension,
  uprightLine,
} from './annotations.ts'
import { type DrawnRings, overallHalf } from './half-section.ts'
import type { SizeText } from './size-text.ts'

/** The first dimension line stands so far beside the view, the next ones so far apart. */
const FIRST_COLUMN = 7
const COLUMNS_APART = 6
const BELOW_AXIS = 2
/** Longer texts are made smaller. */
const TEXT_ROOM = 44
/** An upright text stands so far beside its dimension line, and an extension line so far from that text. */
const BESIDE_LINE = 1
const CLEAR_OF_TEXT = 0.8
/** The dimension line of the width stands so far below everything else. */
const WIDTH_BELOW = 7
/** A text beside arrows that point inward begins here, past their tails. */
const BESIDE = 6.5
/** Start of the extension line of a groove bottom, or of a ball's centre. */
export const MID_GROOVE = 0

/** Beside the outermost columns: a text that stands on its side, and the overhang of an arrow. */
const OUTSIDE_LEFT = 5
const OUTSIDE_RIGHT = 3
/** The width's text beside arrows that point inward still needs so much. */
const LEAST_RIGHT = 24

/** Room for the columns on either side of the view. */
export const columnsRoom = ({ left, right }: Pick<Columns, 'left' | 'right'>) => ({
  left: FIRST_COLUMN + left.length * COLUMNS_APART + OUTSIDE_LEFT,
  right: Math.max(LEAST_RIGHT, FIRST_COLUMN + (right.length - 1) * COLUMNS_APART + OUTSIDE_RIGHT),
})

/** `isAuxiliary`: it follows from others and stands in brackets (ISO 129-1). */
type Column = {
  readonly key: DimensionKey
  readonly size: Mm
  readonly from: number
  readonly isAuxiliary?: boolean
}

/** Labels round a half section, on paper: half of what the view is wide, and whose sizes stand on which side. */
export type Columns = {
  readonly half: number
  readonly outside: { readonly key: DimensionKey; readonly size: Mm }
  readonly left: readonly Column[]
  readonly right: readonly Column[]
  readonly width: { readonly key: DimensionKey; readonly size: Mm; readonly isAuxiliary?: boolean }
  /** A piece of the width with a size of its own, from one place along the axis to another, on paper. */
  readonly piece?: { readonly words: string; readonly from: number; readonly to: number }
  readonly deviations: Deviations
}

/** The limits printed after sizes that may not be off by as much as others. */
export type Deviations = Partial<Record<DimensionKey, string>>

/** Of rings. */
export function ringColumns(bearing: DrawnRings, deviations: Deviations, say: SizeText, factor: number): Columns {
  const { outerRing: outer, resolved } = bearing
  const half = overallHalf(bearing) * factor
  const halfRing = mm(resolved.width / 2)
  return {
    half,
    outside: { key: 'outerRing.outsideDiameter', size: outer.outsideDiameter },
    ...columnsOf(bearing, half),
    // Rings with a groove are as wide as one another.
    width: { key: resolved.traits.raceway === 'groove' ? 'innerRing.width' : 'outerRing.width', size: resolved.width },
    ...(resolved.split !== 'none' && {
      piece: { words: `${DIMENSION_SYMBOLS['innerRing.width']}/2 ${say(halfRing)}`, from: 0, to: halfRing * factor },
    }),
    deviations,
  }
}

/**
 * Diameters and width round the half section, whose middle is the origin, on paper. What only the cut half shows has one
 * arrow, and a line that runs past the axis (ISO 129-1); its text stands there, clear of every extension line. Each size
 * has a column of its own, the smaller ones nearer, so that no text meets another.
 */
export function columnsBeside(columns: Columns, say: SizeText, factor: number): readonly Shape[] {
  const { half, outside: whole, left, right, deviations } = columns
  const outside = -half - FIRST_COLUMN - left.length * COLUMNS_APART
  const radius = (whole.size / 2) * factor
  const words = `${DIMENSION_SYMBOLS[whole.key]} Ø${say(whole.size)}`
  const inside = textWidth(words, TEXT_HEIGHT) < 2 * radius - BELOW_AXIS
  const halves = [
    ...left.map((column, index) => ({ column, x: -half - FIRST_COLUMN - index * COLUMNS_APART })),
    ...right.map((column, index) => ({ column, x: half + FIRST_COLUMN + index * COLUMNS_APART })),
  ]
  return [
    ...halves.flatMap(({ column, x }) => halfColumn(column, wordsOf(column, deviations, say), x, factor)),
    levelExtension(radius, -half, outside),
    ...lowerExtension(columns, say, factor),
    ...uprightLine(outside, -radius, radius),
    inside
      ? fittedText(words, at(outside - BESIDE_LINE, 0), TEXT_ROOM, 'middle', { turned: 90 })
      : fittedText(words, at(outside - BESIDE_LINE, -radius - BELOW_AXIS), TEXT_ROOM, 'end', { turned: 90 }),
    ...width(
      columns,
      say,
      factor,
      Math.max(...halves.map(({ column }) => BELOW_AXIS + lengthOf(wordsOf(column, deviations, say)))),
    ),
  ]
}

/** Of the outside, below the view: it breaks off at each text that hangs down past it (ISO 129-1: no line runs through a text). */
function lowerExtension({ half, outside: whole, left, deviations }: Columns, say: SizeText, factor: number) {
  const y = (-whole.size / 2) * factor
  const xOf = (index: number): number => -half - FIRST_COLUMN - index * COLUMNS_APART
  const { from, to } = levelExtension(y, -half, xOf(left.length))
  const breaks = left.flatMap((column, index) =>
    -BELOW_AXIS - lengthOf(wordsOf(column, deviations, say)) < y
      ? [xOf(index), xOf(index) - BESIDE_LINE - TEXT_HEIGHT - CLEAR_OF_TEXT]
      : [],
  )
  const ends = [...breaks, to.x]
  return [from.x, ...breaks].flatMap((start, index) =>
    index % 2 === 0 ? [line('dimension', at(start, y), at(itemAt(ends, index), y))] : [],
  )
}

/** The sizes left and right of the view, the smaller ones first. */
function columnsOf(
  { outerRing: outer, innerRing: inner, cheeks, resolved, pitchRadius }: DrawnRings,
  half: number,
): { readonly left: readonly Column[]; readonly right: readonly Column[] } {
  const bore: Column = { key: 'innerRing.boreDiameter', size: inner.boreDiameter, from: half }
  const pitch: Column = { key: 'pitchDiameter', size: mm(2 * pitchRadius), from: MID_GROOVE, isAuxiliary: true }
  if (resolved.traits.raceway === 'groove') {
    return {
      left: [
        { key: 'outerRing.landDiameter', size: outer.landDiameter, from: -half },
        { key: 'outerRing.grooveBottomDiameter', size: outer.grooveBottomDiameter, from: MID_GROOVE },
      ],
      right: [
        bore,
        { key: 'innerRing.grooveBottomDiameter', size: inner.grooveBottomDiameter, from: MID_GROOVE },
        { key: 'innerRing.landDiameter', size: inner.landDiameter, from: half },
        pitch,
      ],
    }
  }
  const hole =
    cheeks === undefined ? [] : [{ key: 'cheeks.holeDiameter', size: cheeks.holeDiameter, from: half } as const]
  return {
    left: [{ key: 'outerRing.trackDiameter', size: outer.grooveBottomDiameter, from: MID_GROOVE }],
    right: [
      bore,
      ...hole,
      { key: 'innerRing.trackDiameter', size: inner.grooveBottomDiameter, from: MID_GROOVE },
      pitch,
    ],
  }
}

function wordsOf({ key, size, isAuxiliary = false }: Column, deviations: Deviations, say: SizeText): string {
  const words = `${DIMENSION_SYMBOLS[key]} Ø${say(size)}${deviations[key] ?? ''}`
  return isAuxiliary ? `(${words})` : words
}
const lengthOf = (words: string): number => Math.min(textWidth(words, TEXT_HEIGHT), TEXT_ROOM)

function halfColumn({ size, from }: Column, words: string, x: number, factor: number): readonly Shape[] {
  const radius = (size / 2) * factor
  return [
    levelExtension(radius, from, x),
    line('dimension', at(x, -BELOW_AXIS - lengthOf(words)), at(x, radius)),
    arrowHead(at(x, radius), 90),
    fittedText(words, at(x - BESIDE_LINE, -BELOW_AXIS), TEXT_ROOM, 'end', { turned: 90 }),
  ]
}

/** Below everything else, the piece nearer than the whole, each text between its arrows or, where there is no room, beside them. */
function width(columns: Columns, say: SizeText, factor: number, lowest: number): readonly Shape[] {
  const { width: whole, outside, piece } = columns
  const half = (whole.size / 2) * factor
  const bottom = (outside.size / 2) * factor
  const y = -Math.max(bottom, lowest) - WIDTH_BELOW
  const words = `${DIMENSION_SYMBOLS[whole.key]} ${say(whole.size)}`
  const all = { words: whole.isAuxiliary === true ? `(${words})` : words, from: -half, to: half }
  const between = ({ words: content, from, to }: NonNullable<Columns['piece']>, level: number): readonly Shape[] => [
    uprightExtension(from, -bottom, level),
    uprightExtension(to, -bottom, level),
    ...levelLine(level, from, to),
    textWidth(content, TEXT_HEIGHT) < to - from - 1
      ? fittedText(content, at((from + to) / 2, level + 1), to - from, 'middle')
      : fittedText(content, at(to + BESIDE, level - TEXT_HEIGHT / 2), LEAST_RIGHT - BESIDE, 'start'),
  ]
  return piece === undefined ? between(all, y) : [...between(piece, y), ...between(all, y - WIDTH_BELOW)]
}
