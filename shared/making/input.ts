import { type DesignInput, nameOf, traitsOf } from '#shared/bearing/arrangements.ts'
import { lengthsBeyond } from '#shared/bearing/bounds.ts'
import { type Default, LENGTH, LENGTH_OR_NONE } from '#shared/bearing/field.ts'
import { plain, trade } from '#shared/bearing/fields.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
import { inches, type Mm, mm, type Units } from '#shared/units/length.ts'

export const LUMBERS = ['hardwood', 'softwood'] as const
/** Which tables of sizes and pilot holes count. */
export type Lumber = (typeof LUMBERS)[number]

/** A ring glued up of so many straight pieces a layer. */
export interface GluedWood {
  readonly segments: { readonly count: number }
}

/** What a maker says of the wood, the saw and the lathe. */
export interface StockInput {
  readonly lumber?: Lumber
  /** Left for the lathe on each cylinder that is turned, by radius. */
  readonly turningAllowance?: Mm
  /** Left on each side of a ring, along the axis. */
  readonly sideAllowance?: Mm
  /** Of the saw that cuts the circles. */
  readonly sawKerf?: Mm
  /** Of the saw that cuts miters. */
  readonly miterKerf?: Mm
  readonly entryHoleDiameter?: Mm
  readonly boardLength?: Mm
  /** How the rings are glued up. */
  readonly woods?: { readonly outerRing?: GluedWood; readonly innerRing?: GluedWood }
  /** Of the ring that comes apart, or of cheeks. */
  readonly screws?: { readonly count?: number; readonly gauge?: number }
  /** What the chuck grips, from the outside. */
  readonly chuck?: { readonly min: Mm; readonly max: Mm }
  /** Largest diameter that turns over the bed of the lathe. */
  readonly swing?: Mm
}

/** What has no usual size, or one that follows from the ring. */
type LeftOpen = 'woods' | 'screws' | 'chuck' | 'swing'

/** The same with all else filled in. */
export type ResolvedStock = Required<Omit<StockInput, LeftOpen>> & Pick<StockInput, LeftOpen>

/** Common practice, no source: a size in inches, and what one takes in millimetres. */
const USUAL: Readonly<Record<Units, Omit<ResolvedStock, 'lumber'>>> = {
  in: {
    turningAllowance: inches(1 / 4),
    sideAllowance: mm(0),
    sawKerf: inches(1 / 16),
    miterKerf: inches(1 / 8),
    entryHoleDiameter: inches(3 / 8),
    boardLength: inches(96),
  },
  mm: {
    turningAllowance: mm(6),
    sideAllowance: mm(0),
    sawKerf: mm(1.5),
    miterKerf: mm(3),
    entryHoleDiameter: mm(10),
    boardLength: mm(2400),
  },
}

/** Why each of them, by its JSON pointer. The screws' follow from the ring. */
export const STOCK_DEFAULTS = {
  '/lumber': trade('hardwood', 'most bearings are cut from hardwood'),
  '/turningAllowance': trade('1/4 in or 6 mm', 'enough to turn a sawn blank round'),
  '/sideAllowance': plain('0', 'the sides stay as planed'),
  '/sawKerf': trade('1/16 in or 1.5 mm', 'the kerf of a narrow blade that cuts circles'),
  '/miterKerf': trade('1/8 in or 3 mm', 'the kerf of a table saw'),
  '/entryHoleDiameter': trade('3/8 in or 10 mm', 'a scroll saw blade or jigsaw blade goes in'),
  '/boardLength': trade('96 in or 2400 mm', 'a usual length of board'),
  '/screws/count': trade('4, 6 or 8 by the size of the ring', 'the joint stays shut between the screws'),
  '/screws/gauge': trade(
    'the thickest for which there is wood',
    'the thickest screw that leaves enough wood beside it',
  ),
} as const satisfies Readonly<Record<string, Default>>

export const resolveStock = (input: StockInput, units: Units): ResolvedStock => ({
  lumber: 'hardwood',
  ...USUAL[units],
  ...input,
})

/** What a stock was given that bearings of this arrangement do not have: only rings are glued up or come apart. */
export function foreignToStock(design: DesignInput, { woods, screws }: StockInput): readonly Refusal[] {
  if (traitsOf(design).members === 'rings') return []
  const arrangement = nameOf(design)
  return Object.entries({ woods, screws })
    .filter(([, given]) => given !== undefined)
    .map(([name]) => ({ code: 'not-of-arrangement', path: `/stock/${name}`, arrangement }))
}

/** The lengths that nobody could send again in these units: a text in inches where the rest is in millimetres. */
export const stockBeyondBounds = (input: StockInput, units: Units): readonly Refusal[] =>
  lengthsBeyond(
    [
      ['/stock/turningAllowance', input.turningAllowance, LENGTH_OR_NONE],
      ['/stock/sideAllowance', input.sideAllowance, LENGTH_OR_NONE],
      ['/stock/sawKerf', input.sawKerf, LENGTH_OR_NONE],
      ['/stock/miterKerf', input.miterKerf, LENGTH_OR_NONE],
      ['/stock/entryHoleDiameter', input.entryHoleDiameter, LENGTH],
      ['/stock/boardLength', input.boardLength, LENGTH],
      ['/stock/chuck/min', input.chuck?.min, LENGTH],
      ['/stock/chuck/max', input.chuck?.max, LENGTH],
      ['/stock/swing', input.swing, LENGTH],
    ],
    units,
  )
