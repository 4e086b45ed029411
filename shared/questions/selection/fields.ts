import { length } from '#shared/bearing/field.ts'
import { plain } from '#shared/bearing/fields.ts'

const AS_DESIGNED = plain("the design's own", 'the groove is cut as designed')

/** The size of the groove as it is, under the name that the bearing has for it: one row each. */
export const GROOVE_FIELDS = {
  grooveBottomDiameter: length("Across the bottoms of the outer ring's groove, as it is.", AS_DESIGNED),
  trackDiameter: length("Of rollers: the outer ring's track, as it is.", AS_DESIGNED),
  grooveCircleDiameter: length('Of plates: across the circle in which the groove is deepest, as it is.', AS_DESIGNED),
}
export type GrooveField = keyof typeof GROOVE_FIELDS
export const GROOVE_FIELD_NAMES = Object.keys(GROOVE_FIELDS) as readonly GrooveField[]
