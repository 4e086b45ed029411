import type { SourceId } from './sources.ts'
import { SPECIES, type SpeciesId } from './species.ts'
import { ACROSS_OVER_ALONG, MPA_PER_PSI, NEWTONS_PER_LBF, STRENGTH } from './wood-strength.ts'

/** Properties that a ball pressed into wood needs beyond `wood-strength.ts`, in the units of print, at 12 % moisture content. */
interface Printed {
  /** Static bending [10⁶ lbf/in²]: a tenth below the stiffness along the grain, for the beam shears too. */
  readonly bendingStiffness: number
  /** Stiffness over that along the grain, from pith to bark and along the rings. Where none is printed, its group's. */
  readonly overAlong?: { readonly radial: number; readonly tangential: number }
  /** Tension across the grain [lbf/in²]. Where none is printed, the lowest of this table stands for it. */
  readonly tensionPsi?: number
}

/** Wood Handbook table 5-3b; the ratios of table 5-1 (`fpl-5-1-species`). Red oak is northern red oak. */
const PRINTED = {
  'ash-white': { bendingStiffness: 1.74, overAlong: { radial: 0.125, tangential: 0.08 }, tensionPsi: 940 },
  'basswood-american': { bendingStiffness: 1.46, overAlong: { radial: 0.066, tangential: 0.027 }, tensionPsi: 350 },
  'beech-american': { bendingStiffness: 1.72, tensionPsi: 1010 },
  'birch-yellow': { bendingStiffness: 2.01, overAlong: { radial: 0.078, tangential: 0.05 }, tensionPsi: 920 },
  'cherry-black': { bendingStiffness: 1.49, overAlong: { radial: 0.197, tangential: 0.086 }, tensionPsi: 560 },
  'maple-sugar': { bendingStiffness: 1.83, overAlong: { radial: 0.132, tangential: 0.065 } },
  'red-oak-commercial': { bendingStiffness: 1.82, overAlong: { radial: 0.154, tangential: 0.082 }, tensionPsi: 800 },
  'walnut-black': { bendingStiffness: 1.68, overAlong: { radial: 0.106, tangential: 0.056 }, tensionPsi: 690 },
  'white-oak-commercial': { bendingStiffness: 1.78, overAlong: { radial: 0.163, tangential: 0.072 }, tensionPsi: 800 },
  'yellow-poplar': { bendingStiffness: 1.58, overAlong: { radial: 0.092, tangential: 0.043 }, tensionPsi: 540 },
} as const satisfies Readonly<Partial<Record<SpeciesId, Printed>>>

export type ContactWoodId = keyof typeof PRINTED
export const CONTACT_WOODS = Object.keys(PRINTED) as readonly ContactWoodId[]

/** The printed properties of a wood beyond `wood-strength.ts`. */
export const printedOf = (id: SpeciesId): Partial<Printed> =>
  Object.hasOwn(PRINTED, id) ? PRINTED[id as ContactWoodId] : {}

/** Table 5-3b, footnote c: a tenth more corrects a printed stiffness for shear. */
const ALONG_OVER_BENDING = 1.1
/** Across the grain the printed ratios run from 0.03 to 0.8 by direction; a contact hardly minds: (1 − ν²). */
const POISSONS_RATIO = 0.3
const MASS_AT_12_PERCENT = 1.12
const WATER = 1000

/** A wood as a ball meets it in the side of the grain. Stresses and moduli in megapascals. */
export interface ContactWood {
  readonly name: string
  /** Mean, in the sense of products, of the two directions across the grain. */
  readonly stiffness: number
  readonly poissonsRatio: number
  readonly compressionLimit: number
  readonly tensionStrength: number
  /** [N] */
  readonly sideHardness: number
  /** [kg/m³], with its moisture. */
  readonly density: number
  /** From the ovendry mass and the volume at 12 % moisture content. */
  readonly specificGravity: number
}

/** The wood of the table that is weakest in tension across the grain, for woods of which no such strength is printed. */
const WEAKEST = CONTACT_WOODS.reduce((weakest, id) => (tensionOf(id) < tensionOf(weakest) ? id : weakest))
const LOWEST_TENSION = tensionOf(WEAKEST)

function tensionOf(id: ContactWoodId): number {
  const { tensionPsi = Number.POSITIVE_INFINITY }: Printed = PRINTED[id]
  return tensionPsi
}

/** A figure that is not printed of a wood, and what was taken instead: another wood, or the middle of a group. */
export interface Substitute {
  readonly figure: 'tension-across-grain' | 'elastic-ratios'
  readonly from: ContactWoodId | 'hardwood' | 'softwood'
  readonly standsFor: ContactWoodId
  readonly source: SourceId
}

/** Whether the stiffness across the grain of a wood is printed of it, not of its group. */
export const hasOwnRatios = (id: ContactWoodId): boolean => printedOf(id).overAlong !== undefined

/** Every figure of a wood that stands in for one that is not printed. */
export function substitutesFor(id: ContactWoodId): readonly Substitute[] {
  const { overAlong, tensionPsi }: Printed = PRINTED[id]
  const { group } = SPECIES[id]
  return [
    ...(tensionPsi === undefined
      ? [{ figure: 'tension-across-grain', from: WEAKEST, standsFor: id, source: 'fpl-5-3b' } as const]
      : []),
    ...(overAlong === undefined
      ? [{ figure: 'elastic-ratios', from: group, standsFor: id, source: ACROSS_OVER_ALONG[group].source } as const]
      : []),
  ]
}

/**
 * A wood of the table in newtons and megapascals.
 *
 * @throws RangeError for a wood of which no strength is printed: no row of this table is one
 */
export function contactWood(id: ContactWoodId): ContactWood {
  const { bendingStiffness, overAlong, tensionPsi = LOWEST_TENSION }: Printed = PRINTED[id]
  const { name, group } = SPECIES[id]
  const { compressionPsi, hardnessLbf, specificGravity } = STRENGTH[id] ?? {}
  if (compressionPsi === undefined || hardnessLbf === undefined || specificGravity === undefined)
    throw new RangeError(`wood must be one whose strength is printed, got ${id}`)
  const { radial, tangential } = overAlong ?? ACROSS_OVER_ALONG[group]
  return {
    name,
    stiffness: bendingStiffness * 1e6 * MPA_PER_PSI * ALONG_OVER_BENDING * Math.sqrt(radial * tangential),
    poissonsRatio: POISSONS_RATIO,
    compressionLimit: compressionPsi * MPA_PER_PSI,
    tensionStrength: tensionPsi * MPA_PER_PSI,
    sideHardness: hardnessLbf * NEWTONS_PER_LBF,
    density: specificGravity * MASS_AT_12_PERCENT * WATER,
    specificGravity,
  }
}
