import type { WaysIn } from '#shared/geometry/ways-in.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { Split } from './fields.ts'

/** How the last ball gets in, and what gap that takes. */
export interface Assembly {
  /** Least ball gap by the easiest way that is open. An estimate: rigid balls, and wood gives. */
  readonly assemblyGap: Mm
  readonly easiestWay: 'from-inside' | 'over-land' | 'open-side'
}

/** A ring that lies open at its side or from above while it is filled: the last ball goes in whatever the gap. */
export const OPEN_SIDE: Assembly = { assemblyGap: mm(0), easiestWay: 'open-side' }

/**
 * The easiest way in. A split outer ring is open at its side while the balls are laid in, so any closed ring will do;
 * a one-piece outer ring is filled from inside or over its land, before the inner ring goes in.
 */
export function assemblyOf({ fromInside, overLand }: WaysIn, split: Split): Assembly {
  if (split === 'outer-ring') return OPEN_SIDE
  return overLand < fromInside
    ? { assemblyGap: overLand, easiestWay: 'over-land' }
    : { assemblyGap: fromInside, easiestWay: 'from-inside' }
}
