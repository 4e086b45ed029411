import type { DesignInput } from '#shared/bearing/arrangements.ts'
import type { ContactWoodId } from '#shared/data/contact-woods.ts'
import type { TurningRing } from './fields.ts'

/** The options that every load check shares: wood and speed. */
export interface LoadOptions {
  /** Wood of both rings, or of the whole turntable. */
  readonly wood?: ContactWoodId
  /** Wood of wooden balls; by default the bearing's own. */
  readonly ballWood?: ContactWoodId
  /** The lasting dent that ruins the bearing, in ball diameters. */
  readonly dentFraction?: number
  /** Turns a minute, above 0. */
  readonly speed?: number
}

/** A bearing of rings, and what it is to carry. */
export interface LoadCheckInput extends LoadOptions {
  readonly design: DesignInput
  /** Fr [N], above 0. */
  readonly radialLoad: number
  readonly turning?: TurningRing
}

/** The options with nothing left open but the speed. */
export interface ResolvedLoadOptions extends Required<Pick<LoadOptions, 'wood' | 'dentFraction'>> {
  readonly speed?: number
  /** Only where the balls are of wood. */
  readonly ballWood?: ContactWoodId
}

export type ResolvedLoad = ResolvedLoadOptions & Required<Pick<LoadCheckInput, 'radialLoad' | 'turning'>>

/** A hard wood that is common in the trade. Common practice, no source. */
const WOOD: ContactWoodId = 'maple-sugar'
/** A dent of 1/200 of a ball is just felt as the ball rolls over it. Common practice, no source. */
const DENT_FRACTION = 0.005

/** The load of two rings with nothing left open but the speed. */
export const resolveLoad = (input: Omit<LoadCheckInput, 'design'>, ballsAreWood: boolean): ResolvedLoad => ({
  ...resolveLoadOptions(input, ballsAreWood),
  radialLoad: input.radialLoad,
  turning: input.turning ?? 'inner-ring',
})

export function resolveLoadOptions(input: LoadOptions, ballsAreWood: boolean): ResolvedLoadOptions {
  const { wood = WOOD, dentFraction = DENT_FRACTION, speed } = input
  return {
    wood,
    dentFraction,
    ...(ballsAreWood ? { ballWood: input.ballWood ?? wood } : {}),
    ...(speed === undefined ? {} : { speed }),
  }
}
