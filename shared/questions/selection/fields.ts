import { length } from '#shared/bearing/field.ts'
import { plain } from '#shared/bearing/fields.ts'

const asDesigned = (raceway: string) => plain("the design's own", `the ${raceway} is cut as designed`)

/** The size of the groove as it is, under the name that the bearing has for it: one row each. */
export const GROOVE_FIELDS = {
  grooveBottomDiameter: length("Across the bottoms of the outer ring's groove, as it is.", asDesigned('groove')),
  trackDiameter: length(
    "Across the outer ring's track, which rollers have in place of a groove, as it is.",
    asDesigned('track'),
  ),
  grooveCircleDiameter: length(
    'Across the circle in which the groove of a plate is deepest, as it is.',
    asDesigned('groove'),
  ),
}
export type GrooveField = keyof typeof GROOVE_FIELDS
export const GROOVE_FIELD_NAMES = Object.keys(GROOVE_FIELDS) as readonly GrooveField[]
