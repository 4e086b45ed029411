import type { BallMaterial } from '#shared/bearing/design-input.ts'
import type { LoadSourceId } from './load-sources.ts'

/*
 * What load-check needs of woods and balls, in the units of print: averages of small clear pieces at 12 % moisture content.
 * The names are those of the reference tables of species.
 */

/** A pound-force in newtons, and one per square inch in megapascals. */
export const NEWTONS_PER_LBF = 4.4482216152605
const MPA_PER_PSI = 0.00689475729316836
const WATER = 1000

interface PrintedWood {
  readonly name: string
  /** Static bending [10⁶ lbf/in²]: a tenth below the stiffness along the grain, for the beam shears too. */
  readonly bendingStiffness: number
  /** Stiffness over that along the grain, radially and tangentially. Where none is printed, that of `UNPRINTED`. */
  readonly overAlong?: { readonly radial: number; readonly tangential: number }
  /** Compression across the grain at the proportional limit [lbf/in²]. */
  readonly compressionPsi: number
  /** Tension across the grain [lbf/in²]. Where none is printed, the lowest of this table. */
  readonly tensionPsi?: number
  /** Force that presses a ball of 0.444 in to half its diameter into the side grain [lbf]. */
  readonly hardnessLbf: number
  /** Ovendry mass over the volume at 12 %. */
  readonly specificGravity: number
  readonly source: LoadSourceId
}

/** Wood Handbook table 5-3b, and 5-1 for the ratios. */
const PRINTED = {
  'ash-white': {
    name: 'white ash',
    bendingStiffness: 1.74,
    overAlong: { radial: 0.125, tangential: 0.08 },
    compressionPsi: 1160,
    tensionPsi: 940,
    hardnessLbf: 1320,
    specificGravity: 0.6,
    source: 'fpl-mechanical',
  },
  'basswood-american': {
    name: 'American basswood',
    bendingStiffness: 1.46,
    overAlong: { radial: 0.066, tangential: 0.027 },
    compressionPsi: 370,
    tensionPsi: 350,
    hardnessLbf: 410,
    specificGravity: 0.37,
    source: 'fpl-mechanical',
  },
  'beech-american': {
    name: 'American beech',
    bendingStiffness: 1.72,
    compressionPsi: 1010,
    tensionPsi: 1010,
    hardnessLbf: 1300,
    specificGravity: 0.64,
    source: 'fpl-mechanical',
  },
  'birch-yellow': {
    name: 'yellow birch',
    bendingStiffness: 2.01,
    overAlong: { radial: 0.078, tangential: 0.05 },
    compressionPsi: 970,
    tensionPsi: 920,
    hardnessLbf: 1260,
    specificGravity: 0.62,
    source: 'fpl-mechanical',
  },
  'cherry-black': {
    name: 'black cherry',
    bendingStiffness: 1.49,
    overAlong: { radial: 0.197, tangential: 0.086 },
    compressionPsi: 690,
    tensionPsi: 560,
    hardnessLbf: 950,
    specificGravity: 0.5,
    source: 'fpl-mechanical',
  },
  'maple-sugar': {
    name: 'sugar maple',
    bendingStiffness: 1.83,
    overAlong: { radial: 0.132, tangential: 0.065 },
    compressionPsi: 1470,
    hardnessLbf: 1450,
    specificGravity: 0.63,
    source: 'fpl-mechanical',
  },
  'red-oak-commercial': {
    name: 'northern red oak',
    bendingStiffness: 1.82,
    overAlong: { radial: 0.154, tangential: 0.082 },
    compressionPsi: 1010,
    tensionPsi: 800,
    hardnessLbf: 1290,
    specificGravity: 0.63,
    source: 'fpl-mechanical',
  },
  'walnut-black': {
    name: 'black walnut',
    bendingStiffness: 1.68,
    overAlong: { radial: 0.106, tangential: 0.056 },
    compressionPsi: 1010,
    tensionPsi: 690,
    hardnessLbf: 1010,
    specificGravity: 0.55,
    source: 'fpl-mechanical',
  },
  'white-oak-commercial': {
    name: 'white oak',
    bendingStiffness: 1.78,
    overAlong: { radial: 0.163, tangential: 0.072 },
    compressionPsi: 1070,
    tensionPsi: 800,
    hardnessLbf: 1360,
    specificGravity: 0.68,
    source: 'fpl-mechanical',
  },
  'yellow-poplar': {
    name: 'yellow-poplar',
    bendingStiffness: 1.58,
    overAlong: { radial: 0.092, tangential: 0.043 },
    compressionPsi: 500,
    tensionPsi: 540,
    hardnessLbf: 540,
    specificGravity: 0.42,
    source: 'fpl-mechanical',
  },
} as const satisfies Readonly<Record<string, PrintedWood>>

export type ContactWoodId = keyof typeof PRINTED
export const CONTACT_WOODS = Object.keys(PRINTED) as readonly ContactWoodId[]

/** The middle of the hardwoods of table 5-1. */
const UNPRINTED = { radial: 0.12, tangential: 0.065 }
const ALONG_OVER_BENDING = 1.1
/** Across the grain the printed ratios run from 0.03 to 0.8 by direction; a contact hardly minds: (1 − ν²). */
const WOOD_POISSONS_RATIO = 0.3
const MASS_AT_12_PERCENT = 1.12

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
}

const LOWEST_TENSION = Math.min(...Object.values<PrintedWood>(PRINTED).flatMap(({ tensionPsi = [] }) => tensionPsi))

/** A wood of the table in newtons and megapascals. */
export function contactWood(id: ContactWoodId): ContactWood {
  const wood: PrintedWood = PRINTED[id]
  const { radial, tangential } = wood.overAlong ?? UNPRINTED
  return {
    name: wood.name,
    stiffness: wood.bendingStiffness * 1e6 * MPA_PER_PSI * ALONG_OVER_BENDING * Math.sqrt(radial * tangential),
    poissonsRatio: WOOD_POISSONS_RATIO,
    compressionLimit: wood.compressionPsi * MPA_PER_PSI,
    tensionStrength: (wood.tensionPsi ?? LOWEST_TENSION) * MPA_PER_PSI,
    sideHardness: wood.hardnessLbf * NEWTONS_PER_LBF,
    density: wood.specificGravity * MASS_AT_12_PERCENT * WATER,
  }
}

/** What bought balls are made of: usual values of the trade's data sheets. */
interface BallSubstance {
  /** Young's modulus [MPa]. */
  readonly stiffness: number
  readonly poissonsRatio: number
  /** [kg/m³] */
  readonly density: number
  readonly source: LoadSourceId
}

export const BALL_SUBSTANCES: Readonly<Record<Exclude<BallMaterial, 'wood'>, BallSubstance>> = {
  glass: { stiffness: 70_000, poissonsRatio: 0.22, density: 2500, source: 'ball-materials' },
  acrylic: { stiffness: 3200, poissonsRatio: 0.37, density: 1190, source: 'ball-materials' },
  steel: { stiffness: 210_000, poissonsRatio: 0.3, density: 7800, source: 'ball-materials' },
}
