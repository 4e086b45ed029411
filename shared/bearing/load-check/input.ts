import type { DesignInput } from '#shared/bearing/design-input.ts'
import type { ContactWoodId } from '#shared/data/contact-woods.ts'

export const TURNING_RINGS = ['inner-ring', 'outer-ring'] as const
export type TurningRing = (typeof TURNING_RINGS)[number]

/** A bearing, and what it is to carry. */
export interface LoadCheckInput {
  readonly design: DesignInput
  /** Fr [N], above 0. */
  readonly radialLoad: number
  /** Of both rings. */
  readonly wood?: ContactWoodId
  /** Of wooden balls; the rings' own when it is not said. */
  readonly ballWood?: ContactWoodId
  /** The lasting dent that is still borne, in ball diameters. */
  readonly dentFraction?: number
  readonly turning?: TurningRing
  /** Turns a minute, above 0. */
  readonly speed?: number
}

export interface SettledLoad extends Required<Omit<LoadCheckInput, 'design' | 'speed' | 'ballWood'>> {
  readonly speed?: number
  /** Only where the balls are of wood. */
  readonly ballWood?: ContactWoodId
}

/** A hard wood that is common in the trade. Common practice, no source. */
const WOOD: ContactWoodId = 'maple-sugar'
/** A dent of 1/200 of a ball is just felt as the ball rolls over it. Common practice, no source. */
const DENT_FRACTION = 0.005
const TURNING: TurningRing = 'inner-ring'

/** The input with nothing left open but the speed. */
export function settleLoad(input: Omit<LoadCheckInput, 'design'>, ballsAreWood: boolean): SettledLoad {
  const { radialLoad, wood = WOOD, dentFraction = DENT_FRACTION, turning = TURNING, speed } = input
  return {
    radialLoad,
    wood,
    dentFraction,
    turning,
    ...(ballsAreWood ? { ballWood: input.ballWood ?? wood } : {}),
    ...(speed === undefined ? {} : { speed }),
  }
}
