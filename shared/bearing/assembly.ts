import type { WaysIn } from '#shared/geometry/ways-in.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { Split } from './fields.ts'

/** How the last ball gets in, and what gap that takes. */
export interface Assembly {
  /** Least ball gap by the easiest way that is open. An estimate: rigid balls, and wood gives. */
  readonly assemblyGap: Mm
  readonly easiestWay: 'from-inside' | 'over-land' | 'open-side'
  readonly waysIn: WaysIn
}

/** Plain rings stand open at both sides until the cheeks are on: the last roller slides in along the axis, whatever the gap. */
export const openAtItsSides = (ways: WaysIn): Assembly => ({
  assemblyGap: mm(0),
  easiestWay: 'open-side',
  waysIn: ways,
})

/**
 * The easiest way in. A split outer ring is open at its side while the balls are laid in, so any closed ring will do;
 * a one-piece outer ring is filled from inside or over its land, before the inner ring goes in.
 */
export function assemblyOf(ways: WaysIn, split: Split): Assembly {
  if (split === 'outer-ring') return { assemblyGap: mm(0), easiestWay: 'open-side', waysIn: ways }
  return ways.overLand < ways.fromInside
    ? { assemblyGap: ways.overLand, easiestWay: 'over-land', waysIn: ways }
    : { assemblyGap: ways.fromInside, easiestWay: 'from-inside', waysIn: ways }
}
