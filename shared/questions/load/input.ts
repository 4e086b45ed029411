import type { DesignInput, Question } from '#shared/bearing/arrangements.ts'
import type { ContactWoodId } from '#shared/data/contact-woods.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { TurningRing } from './fields.ts'

/** A load across the axis, carried by rings. */
export const RING_LOAD_CHECK = { name: 'load-check', serves: ['radial', 'roller', 'caged'] } as const satisfies Question
/** A load along the axis, carried by plates. */
export const PLATE_LOAD_CHECK = { name: 'load-check', serves: ['thrust'] } as const satisfies Question

/** What is asked of wood and speed, whatever lies round the balls. */
interface Asked {
  /** Of both rings, or both plates. */
  readonly wood?: ContactWoodId
  /** Of wooden balls; the bearing's own when it is not said. */
  readonly ballWood?: ContactWoodId
  /** The lasting dent that is still borne, in ball diameters. */
  readonly dentFraction?: number
  /** Turns a minute, above 0. */
  readonly speed?: number
}

/** A bearing of rings, and what it is to carry. */
export interface LoadCheckInput extends Asked {
  readonly design: DesignInput
  /** Fr [N], above 0. */
  readonly radialLoad: number
  readonly turning?: TurningRing
}

/** A bearing of plates, and what it is to carry. */
export interface PlateLoadCheckInput extends Asked {
  readonly design: DesignInput
  /** Fa [N], above 0: all of it, the upper plate included. */
  readonly axialLoad: number
  /** Of the load from the axis [mm], 0 and above. */
  readonly offset?: Mm
}

/** What is asked with nothing left open but the speed. */
export interface ResolvedLoadOptions extends Required<Pick<Asked, 'wood' | 'dentFraction'>> {
  readonly speed?: number
  /** Only where the balls are of wood. */
  readonly ballWood?: ContactWoodId
}

export type ResolvedLoad = ResolvedLoadOptions & Required<Pick<LoadCheckInput, 'radialLoad' | 'turning'>>
export type ResolvedPlateLoad = ResolvedLoadOptions & Required<Pick<PlateLoadCheckInput, 'axialLoad' | 'offset'>>

/** A hard wood that is common in the trade. Common practice, no source. */
const WOOD: ContactWoodId = 'maple-sugar'
/** A dent of 1/200 of a ball is just felt as the ball rolls over it. Common practice, no source. */
const DENT_FRACTION = 0.005
const TURNING: TurningRing = 'inner-ring'

/** The input with nothing left open but the speed. */
export const resolveLoad = (input: Omit<LoadCheckInput, 'design'>, ballsAreWood: boolean): ResolvedLoad => ({
  ...resolveLoadOptions(input, ballsAreWood),
  radialLoad: input.radialLoad,
  turning: input.turning ?? TURNING,
})

/** The same of plates: over their middle where nobody says. */
export const resolvePlateLoad = (
  input: Omit<PlateLoadCheckInput, 'design'>,
  ballsAreWood: boolean,
): ResolvedPlateLoad => ({
  ...resolveLoadOptions(input, ballsAreWood),
  axialLoad: input.axialLoad,
  offset: input.offset ?? mm(0),
})

function resolveLoadOptions(input: Asked, ballsAreWood: boolean): ResolvedLoadOptions {
  const { wood = WOOD, dentFraction = DENT_FRACTION, speed } = input
  return {
    wood,
    dentFraction,
    ...(ballsAreWood ? { ballWood: input.ballWood ?? wood } : {}),
    ...(speed === undefined ? {} : { speed }),
  }
}
