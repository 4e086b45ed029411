import type { SpeciesId } from '#shared/data/species.ts'

/** Why a year cannot be calculated, beside the refusals of the bearing itself. */
export type SeasonRefusal =
  | { readonly code: 'range-reversed'; readonly path: string; readonly low: number; readonly high: number }
  | {
      readonly code: 'temperature-outside'
      readonly path: string
      readonly given: number
      readonly least: number
      readonly most: number
    }
  | {
      readonly code: 'above-fibre-saturation'
      readonly path: string
      readonly moisture: number
      readonly saturation: number
      /** The wood with so low a saturation; absent for the limit of all woods. */
      readonly species?: SpeciesId
    }
  | { readonly code: 'movement-unknown'; readonly path: string; readonly species: SpeciesId }
  | { readonly code: 'balls-without-wood'; readonly path: string }
