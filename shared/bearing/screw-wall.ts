import { WOOD_SCREWS } from '#shared/data/wood-screws.ts'
import { inches, type Mm, mm } from '#shared/units/length.ts'

/** Smaller screws shear off in a split ring: common practice, no source. */
export const SMALLEST_GAUGE = 4

/**
 * The wood across which a screw stands [mm]: its head between the shanks of wood that it needs on either side, which is wider than
 * the thread with its own. As much wood beside a screw as its shank is thick is common practice, no source.
 *
 * @param head diameter of the head [mm]
 */
export const screwWall = ({ shank, head }: { readonly shank: Mm; readonly head: Mm }): Mm => mm(head + 2 * shank)

/** The thinnest wall that takes a screw at all. */
export const LEAST_SCREW_WALL = mm(
  Math.min(
    ...WOOD_SCREWS.flatMap(({ gauge, diameter, head }) =>
      gauge < SMALLEST_GAUGE || head === undefined ? [] : [screwWall({ shank: inches(diameter), head: inches(head) })],
    ),
  ),
)
