import {
  BOARD_THICKNESSES,
  BOARD_WIDTHS,
  DIMENSION_THICKNESSES,
  DIMENSION_WIDTHS,
  type DressedSize,
  HARDWOOD_THICKNESSES,
} from '#shared/data/lumber.ts'
import { piecesOf, type Segments, stripLength } from '#shared/geometry/segments.ts'
import { inches, type Mm, mm } from '#shared/units/length.ts'
import type { Blank } from './blanks.ts'
import type { ResolvedMaking } from './defaults.ts'

/** A size of lumber that a blank comes from, and what is planed off it. */
export interface BoardOption {
  readonly kind: 'softwood-board' | 'softwood-dimension' | 'hardwood'
  readonly nominalThickness: string
  readonly dressedThickness: Mm
  /** Boards glued face to face, where none is thick enough. */
  readonly layers: number
  /** All that is planed off a blank of so many layers. */
  readonly planing: Mm
  /** Of softwood. Hardwood comes in random widths: then any from the rough circle, or the strip, up. */
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
  readonly widths: readonly DressedSize[] | undefined
}

const softwood = (
  kind: Thickness['kind'],
  rows: readonly DressedSize[],
  widths: readonly DressedSize[],
): readonly Thickness[] => rows.map(({ nominal, dry }) => ({ kind, nominal, dressed: inches(dry), widths }))

const THICKNESSES: Readonly<Record<ResolvedMaking['lumber'], readonly Thickness[]>> = {
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

/** What differs by no more than rounding is thick enough. */
const WITHIN = 1e-9

/**
 * Which dressed sizes give a blank, those with the least planing first: of as few layers as will do.
 *
 * @param blank circles and thickness above 0 [mm]
 * @param glued where the ring is glued up of segments: they, and not the whole circle, come from the board
 */
export function boardOptions(blank: Blank, stock: ResolvedMaking, glued?: GluedUp): readonly BoardOption[] {
  const sizes = THICKNESSES[stock.lumber]
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
  { kind, nominal, dressed, widths }: Thickness,
  layers: number,
  planing: Mm,
  { roughCircle, pieces }: Blank,
  stock: ResolvedMaking,
  glued: GluedUp | undefined,
): BoardOption {
  const width = widthFor(glued?.stripWidth ?? roughCircle, widths)
  const rows = pieces * layers * width.across
  const { length, boards } = glued === undefined ? discs(rows, roughCircle, stock) : strips(rows, glued, stock)
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
  widths: readonly DressedSize[] | undefined,
): Pick<BoardOption, 'nominalWidth' | 'dressedWidth' | 'across'> {
  if (widths === undefined) {
    const across = Math.ceil(needed / inches(WIDEST_HARDWOOD) - WITHIN)
    return { dressedWidth: mm(needed / across), across }
  }
  const widest = Math.max(...widths.map(({ dry }) => dry))
  const across = Math.ceil(needed / inches(widest) - WITHIN)
  const narrowest = widths.find(({ dry }) => across * inches(dry) >= needed * (1 - WITHIN))
  if (narrowest === undefined) throw new RangeError(`needed must be within what the boards give, got ${needed} mm`)
  return { nominalWidth: narrowest.nominal, dressedWidth: inches(narrowest.dry), across }
}
