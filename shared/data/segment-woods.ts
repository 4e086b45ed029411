import type { PlaneWood } from '#shared/wood/segmented-ring.ts'
import { printedOf } from './contact-woods.ts'
import { SPECIES, type SpeciesId } from './species.ts'
import { ACROSS_OVER_ALONG, MPA_PER_PSI, STRENGTH } from './wood-strength.ts'

/** The direction across the strip, in the plane of the ring: along the growth rings of a flat-sawn strip. */
export type Face = 'radial' | 'tangential'

/**
 * Shear stiffness over that along the grain, and Poisson's ratio for a pull along it, from memory: about the middle of the
 * common woods of each group. A ring hardly minds: half as much shear stiffness moves it by a hundredth.
 */
const SHEAR: Readonly<Record<'hardwood' | 'softwood', Readonly<Record<Face, number>>>> = {
  hardwood: { radial: 0.1, tangential: 0.07 },
  softwood: { radial: 0.07, tangential: 0.065 },
}
const POISSON: Readonly<Record<Face, number>> = { radial: 0.37, tangential: 0.45 }

/** Bending stiffness is a tenth below the stiffness along the grain, for a beam shears too (Wood Handbook, chapter 5). */
const ALONG_OVER_BENDING = 1.1

/**
 * Bending stiffness and tension across the grain by specific gravity G, at 12 % of moisture [MPa]: a G^n (Wood Handbook,
 * Table 5-11, from memory). The printed rows of `contact-woods.ts` lie within a quarter of it.
 */
const BY_GRAVITY = {
  hardwood: { stiffness: [16500, 0.7], tension: [10.1, 1.3] },
  softwood: { stiffness: [20500, 0.84], tension: [6, 1.11] },
} as const
/** Specific gravity of a wood for which none is printed: a light one, for that splits sooner. */
const LIGHT = 0.35

/** A wood as a segmented ring has it; stresses in megapascals. */
export interface SegmentWood {
  readonly plane: PlaneWood
  readonly stiffness: number
  readonly tensionAcross: number
}

const known = new Map<string, SegmentWood>()

/** @returns the same object each time, so that what is worked out of it can be kept */
export function segmentWood(species: SpeciesId, face: Face): SegmentWood {
  const wood = known.get(species + face) ?? woodOf(species, face)
  known.set(species + face, wood)
  return wood
}

function woodOf(species: SpeciesId, face: Face): SegmentWood {
  const { group } = SPECIES[species]
  const { bendingStiffness, overAlong, tensionPsi } = printedOf(species)
  const { specificGravity, greenSpecificGravity } = STRENGTH[species] ?? {}
  const gravity = specificGravity ?? greenSpecificGravity ?? LIGHT
  const by = ([factor, power]: readonly [number, number]): number => factor * Math.exp(power * Math.log(gravity))
  const bending =
    bendingStiffness === undefined ? by(BY_GRAVITY[group].stiffness) : bendingStiffness * 1e6 * MPA_PER_PSI
  return {
    plane: {
      acrossOverAlong: (overAlong ?? ACROSS_OVER_ALONG[group])[face],
      shearOverAlong: SHEAR[group][face],
      poisson: POISSON[face],
    },
    stiffness: ALONG_OVER_BENDING * bending,
    tensionAcross: tensionPsi === undefined ? by(BY_GRAVITY[group].tension) : tensionPsi * MPA_PER_PSI,
  }
}
