import type { BallMaterial } from '#shared/bearing/fields.ts'
import type { SourceId } from '#shared/data/sources.ts'
import type { SpeciesId } from '#shared/data/species.ts'
import { MOVEMENT } from '#shared/data/wood-movement.ts'
import { constructionsOf, speciesOf, type Woods } from '#shared/movement/year.ts'

/** The woods whose movement is quoted from memory, each with its path in the request. */
export const guessedWoods = (woods: Woods): readonly (readonly [SpeciesId, string])[] =>
  speciesOf(woods).filter(([species]) => MOVEMENT[species]?.source === 'fpl-13-5-memory')

/** The sources of a year's figures: the moisture of wood in air, and the movement of each material. */
export function seasonSources(woods: Woods, material: BallMaterial | undefined): readonly SourceId[] {
  const constructions = constructionsOf(woods)
  const woodsMove = speciesOf(woods).flatMap(([species]) => MOVEMENT[species]?.source ?? [])
  const used: readonly SourceId[] = [
    'fpl-4-5',
    'fpl-13-3',
    'fpl-variation',
    'sorption-hysteresis',
    ...woodsMove,
    ...(woodsMove.length > 0 ? (['fpl-4-longitudinal'] as const) : []),
    ...(constructions.some((construction) => construction.startsWith('segmented'))
      ? (['segmented-ring', 'fpl-5-1', 'fpl-5-3b', 'fpl-5-11'] as const)
      : []),
    ...(constructions.includes('cross-laminated-ply') ? (['fpl-plywood', 'fpl-plywood-thickness'] as const) : []),
    ...(material === 'acrylic' ? (['acrylic-humidity'] as const) : []),
  ]
  return [...new Set(used)]
}
