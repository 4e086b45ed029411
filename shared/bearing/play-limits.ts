import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { rounded } from '#shared/units/rounded.ts'

/** A ring runs as long as it does not bind, and still well with twice the design's play: common practice, no source. */
export const playLimits = (play: Mm, units: Units): { readonly min: Mm; readonly max: Mm } => ({
  min: mm(0),
  max: rounded(mm(2 * play), units),
})
