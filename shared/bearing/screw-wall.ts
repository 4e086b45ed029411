import { METRIC_WOOD_SCREWS } from '#shared/data/metric-wood-screws.ts'
import { WOOD_SCREWS } from '#shared/data/wood-screws.ts'
import { inches, type Mm, mm, type Units } from '#shared/units/length.ts'

/** Smaller screws shear off in a split ring: common practice, no source. */
export const SMALLEST_GAUGE = 4

/**
 * The wood across which a screw stands [mm]: its head between the shanks of wood that it needs on either side, which is wider than
 * the thread with its own. As much wood beside a screw as its shank is thick is common practice, no source.
 *
 * @param head diameter of the head [mm]
 */
export const screwWall = ({ shank, head }: { readonly shank: Mm; readonly head: Mm }): Mm => mm(head + 2 * shank)

/** The thinnest wall that takes a screw of those that are sold where sizes are in these units. */
export const leastScrewWall = (units: Units): Mm => LEAST[units]

const LEAST: Readonly<Record<Units, Mm>> = {
  in: mm(
    Math.min(
      ...WOOD_SCREWS.flatMap(({ gauge, diameter, head }) =>
        gauge < SMALLEST_GAUGE || head === undefined
          ? []
          : [screwWall({ shank: inches(diameter), head: inches(head) })],
      ),
    ),
  ),
  mm: mm(
    Math.min(...METRIC_WOOD_SCREWS.map(({ diameter, head }) => screwWall({ shank: mm(diameter), head: mm(head) }))),
  ),
}
