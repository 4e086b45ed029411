import type { Bounds } from '#shared/bearing/field.ts'
import type { BallMaterial } from '#shared/bearing/fields.ts'
import type { SourceId } from './sources.ts'

/**
 * What a ball takes to roll on wood, as a lever arm f [mm]: it is held back by the moment f Q. Tables of it differ by more than
 * tenfold, so each is a range: from a smooth ball in a clean groove to a rough one in dust.
 */
export const LEVER_ARM: Readonly<Record<BallMaterial, Bounds & { readonly source: SourceId }>> = {
  glass: { least: 0.05, most: 0.5, source: 'load-trade' },
  steel: { least: 0.05, most: 0.5, source: 'load-trade' },
  acrylic: { least: 0.05, most: 0.5, source: 'load-trade' },
  wood: { least: 0.1, most: 1.5, source: 'rolling-ballpark' },
}

/** Coefficient of friction of dry balls on one another or on a cage. Common practice, no source. */
export const RUBBING: Bounds = { least: 0.2, most: 0.5 }
