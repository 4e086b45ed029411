import type { Role } from '#src/drawings/model.ts'

/** Capital letters of DejaVu Sans are 1493 of 2048 parts of the font size high (its OS/2 table). */
export const CAPITAL_HEIGHT = 1493 / 2048

/** Look of a line on paper, in millimetres. */
export type Look = { readonly width: number; readonly dashes?: readonly number[] }

/** Wide lines are twice the narrow ones (ISO 128-2). Lengths of dashes on paper, in millimetres. */
const WIDE = 0.5
const NARROW = 0.25
/** What is cut by: the thinnest line of ISO 128-2, for half a thicker one would be as much as a groove may be off. */
const HAIRLINE = 0.13
export const LOOKS: Readonly<Record<Role, Look>> = {
  outline: { width: WIDE },
  hidden: { width: NARROW, dashes: [2.4, 0.8] },
  centre: { width: NARROW, dashes: [6, 0.8, 0.4, 0.8] },
  dimension: { width: NARROW },
  hatch: { width: 0.18 },
  finish: { width: HAIRLINE },
  saw: { width: HAIRLINE, dashes: [3.2, 1.2] },
  hole: { width: HAIRLINE },
  layout: { width: HAIRLINE },
  frame: { width: 0.35 },
  mark: { width: 0.2 },
}
