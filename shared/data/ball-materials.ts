import type { BallMaterial } from '#shared/bearing/fields.ts'
import type { SourceId } from './sources.ts'

/** Materials of bought balls. For wooden ones see `wood-strength.ts`. */
export interface BallSubstance {
  /** [kg/m3] */
  readonly density: number
  /** Young's modulus [MPa] */
  readonly stiffness: number
  readonly poissonsRatio: number
  readonly hardness: string
  readonly source: SourceId
}

export const BALL_SUBSTANCES: Readonly<Record<Exclude<BallMaterial, 'wood'>, BallSubstance>> = {
  glass: {
    density: 2500,
    stiffness: 70_000,
    poissonsRatio: 0.22,
    hardness: 'Mohs 5.5 to 6',
    source: 'ball-materials',
  },
  acrylic: {
    density: 1190,
    stiffness: 3200,
    poissonsRatio: 0.37,
    hardness: 'Rockwell M 95',
    source: 'ball-materials',
  },
  steel: {
    density: 7800,
    stiffness: 210_000,
    poissonsRatio: 0.3,
    hardness: 'Rockwell C 60 to 67',
    source: 'bearing-steel',
  },
}

/** How much larger acrylic is at a relative humidity [%] than dry: straight lines between these points. */
export const ACRYLIC_GROWTH: readonly { readonly relativeHumidity: number; readonly growth: number }[] = [
  { relativeHumidity: 0, growth: 0 },
  { relativeHumidity: 60, growth: 0.002 },
  { relativeHumidity: 80, growth: 0.003 },
  { relativeHumidity: 100, growth: 0.006 },
]
