import { DIMENSION_SYMBOLS, type DimensionKey } from '#shared/bearing/dimensions.ts'
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
/** The dimension line of the width stands so far below everything else. */
const WIDTH_BELOW = 7
/** A text beside arrows that point inward begins here, past their tails. */
const BESIDE = 6.5
/** Where the extension line of a groove bottom, or of a ball's centre, begins. */
export const MID_GROOVE = 0

/** What the columns take beside the view on either side. */
export const COLUMNS_LEFT = FIRST_COLUMN + 2 * COLUMNS_APART + 5
export const COLUMNS_RIGHT = FIRST_COLUMN + 3 * COLUMNS_APART + 3

type Column = { readonly key: DimensionKey; readonly size: Mm; readonly from: number }

/** Labels round a half section, on paper: half of what the view is wide, and whose sizes stand on which side. */
export type Columns = {
  readonly half: number
  readonly outside: { readonly key: DimensionKey; readonly size: Mm }
  readonly left: readonly Column[]
  readonly right: readonly Column[]
  readonly width: { readonly key: DimensionKey; readonly size: Mm }
}

/** Of rings. */
export function sizeColumns(bearing: DrawnRings, say: SizeText, factor: number): readonly Shape[] {
  const { outerRing: outer, resolved } = bearing
  const half = overallHalf(bearing) * factor
  const columns: Columns = {
    half,
    outside: { key: 'outerRing.outsideDiameter', size: outer.outsideDiameter },
    ...columnsOf(bearing, half),
    // Rings with a groove are as wide as one another.
    width: { key: resolved.traits.raceway === 'groove' ? 'innerRing.width' : 'outerRing.width', size: resolved.width },
  }
  return columnsBeside(columns, say, factor)
}

/**
 * Diameters and width round the half section, whose middle is the origin, on paper. What only the cut half shows has one
 * arrow, and a line that runs past the axis (ISO 129-1); its text stands there, clear of every extension line. Each size
 * has a column of its own, the smaller ones nearer, so that no text meets another.
 */
export function columnsBeside(columns: Columns, say: SizeText, factor: number): readonly Shape[] {
  const { half, outside: whole, left, right } = columns
  const outside = -half - FIRST_COLUMN - 2 * COLUMNS_APART
  const radius = (whole.size / 2) * factor
  const words = `${DIMENSION_SYMBOLS[whole.key]} Ø${say(whole.size)}`
  const inside = textWidth(words, TEXT_HEIGHT) < 2 * radius - BELOW_AXIS
  const halves = [
    ...left.map((column, index) => ({ column, x: -half - FIRST_COLUMN - index * COLUMNS_APART })),
    ...right.map((column, index) => ({ column, x: half + FIRST_COLUMN + index * COLUMNS_APART })),
  ]
  return [
    ...halves.flatMap(({ column, x }) => halfColumn(column, x, say, factor)),
    levelExtension(radius, -half, outside),
    levelExtension(-radius, -half, outside),
    ...uprightLine(outside, -radius, radius),
    inside
      ? fittedText(words, at(outside - 1, 0), TEXT_ROOM, 'middle', { turned: 90 })
      : fittedText(words, at(outside - 1, -radius - BELOW_AXIS), TEXT_ROOM, 'end', { turned: 90 }),
    ...width(columns, say, factor, Math.max(...halves.map(({ column }) => BELOW_AXIS + lengthOf(column, say)))),
  ]
}

/** What stands left and right of the view, the smaller sizes first. */
function columnsOf(
  { outerRing: outer, innerRing: inner, cheeks, resolved, pitchRadius }: DrawnRings,
  half: number,
): { readonly left: readonly Column[]; readonly right: readonly Column[] } {
  const bore: Column = { key: 'innerRing.boreDiameter', size: inner.boreDiameter, from: half }
  const pitch: Column = { key: 'pitchDiameter', size: mm(2 * pitchRadius), from: MID_GROOVE }
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

const wordsOf = ({ key, size }: Column, say: SizeText): string => `${DIMENSION_SYMBOLS[key]} Ø${say(size)}`
const lengthOf = (column: Column, say: SizeText): number =>
  Math.min(textWidth(wordsOf(column, say), TEXT_HEIGHT), TEXT_ROOM)

function halfColumn(column: Column, x: number, say: SizeText, factor: number): readonly Shape[] {
  const radius = (column.size / 2) * factor
  return [
    levelExtension(radius, column.from, x),
    line('dimension', at(x, -BELOW_AXIS - lengthOf(column, say)), at(x, radius)),
    arrowHead(at(x, radius), 90),
    fittedText(wordsOf(column, say), at(x - 1, -BELOW_AXIS), TEXT_ROOM, 'end', { turned: 90 }),
  ]
}

/** Below everything else, its text between the arrows or, where there is no room, beside them. */
function width({ width: whole, outside }: Columns, say: SizeText, factor: number, columns: number): readonly Shape[] {
  const half = (whole.size / 2) * factor
  const bottom = (outside.size / 2) * factor
  const y = -Math.max(bottom, columns) - WIDTH_BELOW
  const words = `${DIMENSION_SYMBOLS[whole.key]} ${say(whole.size)}`
  const inside = textWidth(words, TEXT_HEIGHT) < 2 * half - 1
  return [
    uprightExtension(-half, -bottom, y),
    uprightExtension(half, -bottom, y),
    ...levelLine(y, -half, half),
    inside
      ? fittedText(words, at(0, y + 1), 2 * half, 'middle')
      : fittedText(words, at(half + BESIDE, y - TEXT_HEIGHT / 2), COLUMNS_RIGHT - BESIDE, 'start'),
  ]
}
