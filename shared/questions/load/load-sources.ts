import type { BallMaterial } from '#shared/bearing/fields.ts'
import type { Traits } from '#shared/bearing/traits.ts'
import { BALL_SUBSTANCES } from '#shared/data/ball-materials.ts'
import { type ContactWoodId, hasOwnRatios, substitutesFor } from '#shared/data/contact-woods.ts'
import type { SourceId } from '#shared/data/sources.ts'

/** The part of a load check that decides which sources its dents have. */
export interface Dented {
  /** Rings share a load across the axis; without rings it is carried along it. */
  readonly members: Traits['members']
  readonly materials: readonly BallMaterial[]
  /** The woods of the bearing and of wooden balls. */
  readonly woods: readonly ContactWoodId[]
  /** Whether any ball touches the bottom of a groove or a track: on edges nothing is elastic. */
  readonly onBottom: boolean
}

/** The sources of a load that dents. */
export function dentSources({ members, materials, woods, onBottom }: Dented): readonly SourceId[] {
  const used: readonly SourceId[] = [
    ...(onBottom ? (['hertz', 'koczan'] as const) : []),
    ...(members === 'rings' ? (['sjovall'] as const) : []),
    'astm-d143',
    'fpl-5-3b',
    ...(onBottom && woods.some(hasOwnRatios) ? (['fpl-5-1-species'] as const) : []),
    ...woods.flatMap(substitutesFor).map(({ source }) => source),
    ...(onBottom ? substanceSources(materials) : []),
    'load-derived',
    'load-trade',
  ]
  return [...new Set(used)]
}

/** Sources of the stiffness and density of balls that are not of wood. */
const substanceSources = (materials: readonly BallMaterial[]): readonly SourceId[] =>
  materials.flatMap((material) => (material === 'wood' ? [] : [BALL_SUBSTANCES[material].source]))

/** The sources of a whole load check: besides the dents how boards differ, what lasts, and what speed does. */
export function loadCheckSources(dented: Dented, isSplit: boolean): readonly SourceId[] {
  const used: readonly SourceId[] = [
    ...dentSources(dented),
    'fpl-5-6',
    'wood-fatigue',
    'madison-curve',
    'harris-rolling',
    'rotating-disc',
    ...(isSplit ? (['screw-withdrawal'] as const) : []),
    ...substanceSources(dented.materials),
    ...(dented.materials.includes('wood') ? (['rolling-ballpark'] as const) : []),
  ]
  return [...new Set(used)]
}
