import { SAW_BLADES } from '#shared/data/saw-blades.ts'
import { inches, type Mm, mm } from '#shared/units/length.ts'
import type { Blank } from './blanks.ts'
import type { ResolvedMaking } from './defaults.ts'

/** Widths of band-saw blades that turn a circle, the narrowest first, as the trade names them in inches. */
export const bladesFor = (diameter: Mm): readonly string[] =>
  SAW_BLADES.filter(({ leastRadius }) => inches(leastRadius) <= diameter / 2).map(({ width }) => width)

/** The hole through which the saw enters: bored in the waste, clear of the saw line. */
export interface EntryHole {
  readonly diameter: Mm
  /** From the middle of the ring to the middle of the hole. */
  readonly fromCentre: Mm
  /** Whether the hole would cut into the blank of an inner ring that nests in the core. */
  readonly cutsInnerBlank: boolean
}

/** Wood between the hole and the line to saw by, and from the centre, where the chuck's screw goes: common practice, no source. */
const OFF_LINE = mm(1)
const OFF_CENTRE = mm(4)

/** @returns undefined where nothing is sawn out, or the core has no room for the hole beside its centre */
export function entryHole(
  outer: Blank,
  inner: Blank,
  { allowances: { entryHole: diameter } }: ResolvedMaking,
): EntryHole | undefined {
  if (outer.roughHole === undefined) return undefined
  const fromCentre = (outer.roughHole - diameter) / 2 - OFF_LINE
  if (!(fromCentre - diameter / 2 >= OFF_CENTRE)) return undefined
  return { diameter, fromCentre: mm(fromCentre), cutsInnerBlank: fromCentre - diameter / 2 < inner.roughCircle / 2 }
}
