import type { Lumber } from '#shared/bearing/making-input.ts'
import {
  BOARD_THICKNESSES,
  BOARD_WIDTHS,
  DIMENSION_THICKNESSES,
  DIMENSION_WIDTHS,
  type DressedSize,
  HARDWOOD_THICKNESSES,
} from '#shared/data/lumber.ts'
import {
  METRIC_HARDWOOD_THICKNESSES,
  METRIC_PLANING,
  METRIC_SOFTWOOD_THICKNESSES,
  METRIC_SOFTWOOD_WIDTHS,
} from '#shared/data/metric-lumber.ts'
import { piecesOf, type Segments, stripLength } from '#shared/geometry/segments.ts'
import { inches, type Mm, mm, type Units } from '#shared/units/length.ts'
import type { Blank } from './blanks.ts'
import type { ResolvedMaking } from './defaults.ts'

/** A size of lumber that a blank comes from, and what is planed off it. */
export interface BoardOption {
  readonly kind: 'softwood-board' | 'softwood-dimension' | 'hardwood' | 'on-hand'
  readonly nominalThickness: string
  readonly dressedThickness: Mm
  /** Boards glued face to face, where none is thick enough. */
  readonly layers: number
  /** All that is planed off a blank of so many layers. */
  readonly planing: Mm
  /** Nominal width of softwood. Hardwood comes in random widths, and all from the rough circle, or the strip, up will do. */
  readonly nominalWidth?: string
  readonly dressedWidth: Mm
  /** Boards glued edge to edge, where none is wide enough. */
  readonly across: number
  /** Along the grain, for all that the ring needs: every piece of it, every layer, every board across. */
  readonly length: Mm
  /** Boards of the usual length for one ring. Absent where a board is shorter than the circle, or than one segment. */
  readonly boards?: number
}

/** The segments of one layer of a ring. */
export type GluedUp = Segments & { readonly count: number }

/** So many are shown, the least planing first. */
const MOST_OPTIONS = 3

/** Hardwood wider than this is seldom sold [in]: common practice, no source. */
const WIDEST_HARDWOOD = 8

interface Thickness {
  readonly kind: BoardOption['kind']
  readonly nominal: string
  readonly dressed: Mm
  /** Ascending; hardwood comes in any width. */
  readonly widths: readonly BoardWidth[] | undefined
  readonly boardLength?: Mm
}

interface BoardWidth {
  readonly nominal: string
  readonly dressed: Mm
}

const softwood = (
  kind: Thickness['kind'],
  rows: readonly DressedSize[],
  widths: readonly DressedSize[],
): readonly Thickness[] => {
  const sold = widths.map(({ nominal, dry }) => ({ nominal, dressed: inches(dry) }))
  return rows.map(({ nominal, dry }) => ({ kind, nominal, dressed: inches(dry), widths: sold }))
}

const IN_INCHES: Readonly<Record<Lumber, readonly Thickness[]>> = {
  softwood: [
    ...softwood('softwood-board', BOARD_THICKNESSES, BOARD_WIDTHS),
    ...softwood('softwood-dimension', DIMENSION_THICKNESSES, DIMENSION_WIDTHS),
  ],
  hardwood: HARDWOOD_THICKNESSES.map(({ nominal, surfaced }) => ({
    kind: 'hardwood',
    nominal,
    dressed: inches(surfaced),
    widths: undefined,
  })),
}

/** As it is sawn, and what is left of it dry and planed. */
const sawn = (size: number): BoardWidth => ({ nominal: `${size} mm`, dressed: mm(size - METRIC_PLANING) })

const IN_MILLIMETRES: Readonly<Record<Lumber, readonly Thickness[]>> = {
  softwood: METRIC_SOFTWOOD_THICKNESSES.map((size) => ({
    kind: 'softwood-board',
    ...sawn(size),
    widths: METRIC_SOFTWOOD_WIDTHS.map(sawn),
  })),
  hardwood: METRIC_HARDWOOD_THICKNESSES.map((size) => ({ kind: 'hardwood', ...sawn(size), widths: undefined })),
}

/** The boards that the maker has, or else those that are sold where sizes are in these units. */
function sizesOf({ boards, lumber, boardLength }: ResolvedMaking, units: Units): readonly Thickness[] {
  if (boards === undefined)
    return { in: IN_INCHES, mm: IN_MILLIMETRES }[units][lumber].map((size) => ({ ...size, boardLength }))
  return boards.map(({ thickness, width, length }, i) => ({
    kind: 'on-hand',
    nominal: `board ${i + 1}`,
    dressed: thickness,
    widths: [{ nominal: `board ${i + 1}`, dressed: width }],
    boardLength: length,
  }))
}

/** A board that is too thin only by rounding is thick enough. */
const WITHIN = 1e-9

/**
 * Which dressed sizes give a blank, those with the least planing first: of as few layers as will do.
 *
 * @param blank circles and thickness above 0 [mm]
 * @param glued where the ring is glued up of segments: they, and not the whole circle, come from the board
 */
export function boardOptions(
  blank: Blank,
  stock: ResolvedMaking,
  units: Units,
  glued?: GluedUp,
): readonly BoardOption[] {
  const sizes = sizesOf(stock, units)
  const thickest = Math.max(...sizes.map(({ dressed }) => dressed))
  const layers = Math.ceil(blank.thickness / thickest - WITHIN)
  const planingOf = ({ dressed }: Thickness): number => layers * dressed - blank.thickness
  return sizes
    .filter((size) => planingOf(size) >= -WITHIN * blank.thickness)
    .sort((one, other) => planingOf(one) - planingOf(other))
    .slice(0, MOST_OPTIONS)
    .map((size) => optionOf(size, layers, mm(Math.max(0, planingOf(size))), blank, stock, glued))
}

function optionOf(
  { kind, nominal, dressed, widths, boardLength }: Thickness,
  layers: number,
  planing: Mm,
  { roughCircle, pieces }: Blank,
  stock: ResolvedMaking,
  glued: GluedUp | undefined,
): BoardOption {
  const making = { ...stock, boardLength: boardLength ?? stock.boardLength }
  const width = widthFor(glued?.stripWidth ?? roughCircle, widths)
  const rows = pieces * layers * width.across
  const { length, boards } = glued === undefined ? discs(rows, roughCircle, making) : strips(rows, glued, making)
  return {
    kind,
    nominalThickness: nominal,
    dressedThickness: dressed,
    layers,
    planing,
    ...width,
    length,
    ...(boards === undefined ? {} : { boards }),
  }
}

type Cut = Pick<BoardOption, 'length' | 'boards'>

function discs(count: number, roughCircle: Mm, { allowances: { sawKerf }, boardLength }: ResolvedMaking): Cut {
  const perBoard = Math.floor((boardLength + sawKerf) / (roughCircle + sawKerf))
  const length = mm(count * roughCircle + (count - 1) * sawKerf)
  return perBoard > 0 ? { length, boards: Math.ceil(count / perBoard) } : { length }
}

/** Each row of segments is a strip of its own. */
function strips(rows: number, glued: GluedUp, { allowances: { miterKerf }, boardLength }: ResolvedMaking): Cut {
  const perBoard = piecesOf(glued, boardLength, miterKerf)
  const length = mm(rows * stripLength(glued, glued.count, miterKerf))
  return perBoard > 0 ? { length, boards: Math.ceil((rows * glued.count) / perBoard) } : { length }
}

function widthFor(
  needed: Mm,
  widths: readonly BoardWidth[] | undefined,
): Pick<BoardOption, 'nominalWidth' | 'dressedWidth' | 'across'> {
  if (widths === undefined) {
    const across = Math.ceil(needed / inches(WIDEST_HARDWOOD) - WITHIN)
    return { dressedWidth: mm(needed / across), across }
  }
  const widest = Math.max(...widths.map(({ dressed }) => dressed))
  const across = Math.ceil(needed / widest - WITHIN)
  const narrowest = widths.find(({ dressed }) => across * dressed >= needed * (1 - WITHIN))
  if (narrowest === undefined) throw new RangeError(`needed must be within what the boards give, got ${needed} mm`)
  return { nominalWidth: narrowest.nominal, dressedWidth: narrowest.dressed, across }
}
