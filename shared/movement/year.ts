import type { DesignInput } from '#shared/bearing/arrangements.ts'
import { PART_NAMES, type WoodPart } from '#shared/bearing/wood-parts.ts'
import type { SpeciesId } from '#shared/data/species.ts'
import type { Construction } from '#shared/wood/construction.ts'
import type { Air } from '#shared/wood/equilibrium-moisture.ts'

/** The wood of ply does not matter. */
export type RingWood =
  | {
      readonly construction: Exclude<Construction, 'cross-laminated-ply'>
      readonly species: SpeciesId
      /** Only of a segmented part: the number of straight pieces in a layer. */
      readonly segments?: { readonly count: number }
    }
  | { readonly construction: 'cross-laminated-ply' }

/** The wood of each part that an arrangement has. */
export type Woods = { readonly [Part in WoodPart]?: RingWood } & {
  /** Only of wooden balls. */
  readonly balls?: SpeciesId
}

/** Each wood of a bearing, with its path in the request. */
export function speciesOf(woods: Woods): readonly (readonly [SpeciesId, string])[] {
  const ofParts = PART_NAMES.flatMap((part) => {
    const wood = woods[part]
    return wood !== undefined && 'species' in wood ? [[wood.species, `/woods/${part}/species`] as const] : []
  })
  return woods.balls === undefined ? ofParts : [...ofParts, [woods.balls, '/woods/balls/species']]
}

/** The constructions of a bearing's parts. */
export const constructionsOf = (woods: Woods): readonly Construction[] =>
  PART_NAMES.flatMap((part) => woods[part]?.construction ?? [])

export interface Range {
  readonly min: number
  readonly max: number
}

interface Month extends Air {
  readonly name: string
}

/** The climate of the year: ranges of the air, or of the wood's moisture content [%], or a table. */
export type Climate =
  | { readonly kind: 'air'; readonly temperature: Range; readonly relativeHumidity: Range }
  | { readonly kind: 'moisture'; readonly moistureContent: Range }
  | { readonly kind: 'months'; readonly months: readonly Month[] }

/** The day on which the bearing is made and measured. */
export type Today =
  | { readonly kind: 'air'; readonly air: Air }
  | { readonly kind: 'moisture'; readonly moistureContent: number }

/** A bearing made on one day, and the year through which it is to run. */
export interface BearingInYear {
  readonly design: DesignInput
  readonly woods: Woods
  readonly climate: Climate
  readonly today: Today
}

/** The year and the woods. `woods.balls` counts only for wooden balls. */
export type Year = Omit<BearingInYear, 'design'>
