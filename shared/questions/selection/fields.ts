import { length } from '#shared/bearing/field.ts'
import { plain } from '#shared/bearing/fields.ts'

const AS_DESIGNED = plain("the design's own", 'the groove is cut as designed')

/** The size of the groove as it is, under the name that the bearing has for it: one row each. */
export const GROOVE_FIELDS = {
  grooveBottomDiameter: length("Across the bottoms of the outer ring's groove, as it is.", AS_DESIGNED),
  trackDiameter: length("Roller bearings only: present diameter of the outer ring's track.", AS_DESIGNED),
  grooveCircleDiameter: length('Turntables only: present diameter of the groove circle.', AS_DESIGNED),
}
export type GrooveField = keyof typeof GROOVE_FIELDS
export const GROOVE_FIELD_NAMES = Object.keys(GROOVE_FIELDS) as readonly GrooveField[]
