import { GENERAL_TOLERANCES } from '#shared/data/general-tolerances.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { type Design, isCaged, isOfPlates, isOfRollers } from './arrangements.ts'
import type { DimensionKey } from './dimensions.ts'

/** What keeps one part free of another. */
export type ClearanceName = 'rollersBetweenCheeks' | 'cheekHole' | 'cageToLands' | 'pockets' | 'lands' | 'plates'

/** A clearance that the general tolerance of its sizes could close: these sizes are cut to one another instead. */
export interface ClearanceToFit {
  readonly name: ClearanceName
  /** As designed [mm]: of round parts in diameter. */
  readonly size: Mm
}

/** The general tolerance may take this share of a clearance at the most. Common practice, no source. */
const MOST_TAKEN = 1 / 2

/** Sizes that make a clearance, each with the number of times it counts. */
interface Chain extends ClearanceToFit {
  readonly sizes: readonly (readonly [DimensionKey, number])[]
}

/**
 * The clearances of a design that its sizes could close if each of them was off by the general tolerance, all in the worse
 * direction. The play between the tracks and the ball gap are not among them: they have limits of their own.
 */
export function clearancesToFit(design: Design): readonly ClearanceToFit[] {
  const worst = ({ sizes }: Chain): number =>
    sizes.reduce((sum, [key, times]) => sum + times * generalTolerance(sizeOf(design, key)), 0)
  const closed = chainsOf(design).filter((chain) => worst(chain) > MOST_TAKEN * chain.size)
  return closed
    .filter(({ name }, index) => closed.findIndex((other) => other.name === name) === index)
    .map(({ name, size }) => ({ name, size }))
}

/** How far a size without limits of its own may be off, either way [mm] (ISO 2768-1, class c). */
function generalTolerance(size: Mm): Mm {
  const { rows } = GENERAL_TOLERANCES
  return (rows.find(({ upTo }) => size <= upTo) ?? itemAt(rows, rows.length - 1)).plusMinus
}

function sizeOf({ dimensions }: Design, key: DimensionKey): Mm {
  const row = dimensions.find((dimension) => dimension.key === key)
  if (row === undefined) throw new RangeError(`key must be that of a dimension, got ${key}`)
  return row.value
}

function chainsOf(design: Design): readonly Chain[] {
  if (isOfPlates(design)) return [{ name: 'plates', size: design.bearing.plateGap, sizes: [['plates.grooveDepth', 2]] }]
  const between = (name: ClearanceName, outer: DimensionKey, inner: DimensionKey): Chain => ({
    name,
    size: mm(sizeOf(design, outer) - sizeOf(design, inner)),
    sizes: [
      [outer, 1],
      [inner, 1],
    ],
  })
  if (isCaged(design)) {
    const pocket = 'cage.pocketDiameter'
    const { ballDiameter } = design.bearing.resolved
    return [
      between('cageToLands', 'outerRing.landDiameter', 'cage.outsideDiameter'),
      between('cageToLands', 'cage.boreDiameter', 'innerRing.landDiameter'),
      { name: 'pockets', size: mm(sizeOf(design, pocket) - ballDiameter), sizes: [[pocket, 1]] },
    ]
  }
  return isOfRollers(design)
    ? [
        between('rollersBetweenCheeks', 'outerRing.width', 'rollerLength'),
        between('rollersBetweenCheeks', 'outerRing.width', 'innerRing.width'),
        between('cheekHole', 'cheeks.holeDiameter', 'innerRing.boreDiameter'),
        between('cheekHole', 'innerRing.trackDiameter', 'cheeks.holeDiameter'),
      ]
    : [between('lands', 'outerRing.landDiameter', 'innerRing.landDiameter')]
}
