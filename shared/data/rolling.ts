import type { Bounds } from '#shared/bearing/field.ts'
import type { BallMaterial } from '#shared/bearing/fields.ts'
import type { SourceId } from './sources.ts'

/**
 * Rolling resistance of a ball on wood, as a lever arm f [mm]: the moment f Q holds it back. Tables of it differ by more than
 * tenfold, so each is a range: from a smooth ball in a clean groove to a rough one in dust.
 */
export const LEVER_ARM: Readonly<Record<BallMaterial, Bounds & { readonly source: SourceId }>> = {
  glass: { min: 0.05, max: 0.5, source: 'load-trade' },
  steel: { min: 0.05, max: 0.5, source: 'load-trade' },
  acrylic: { min: 0.05, max: 0.5, source: 'load-trade' },
  wood: { min: 0.1, max: 1.5, source: 'rolling-ballpark' },
}

/** Coefficient of friction of dry balls on one another or on a cage. Common practice, no source. */
export const RUBBING: Bounds = { min: 0.2, max: 0.5 }
