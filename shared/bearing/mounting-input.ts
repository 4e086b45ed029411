import type { Mm } from '#shared/units/length.ts'

/** How a ring is held on its shaft or in its housing. */
export const HOLDS = ['glued', 'pressed', 'keyed', 'pinned', 'screwed', 'retained'] as const
export type Hold = (typeof HOLDS)[number]

/** How the pin of a turntable is held in its lower plate: `retained` is a bolt through everything. */
export const PIN_HOLDS = ['glued', 'pressed', 'retained'] as const satisfies readonly Hold[]
export type PinHold = (typeof PIN_HOLDS)[number]
/** How a plate is held to its board. */
export const PLATE_HOLDS = ['screwed', 'glued'] as const satisfies readonly Hold[]
export type PlateHold = (typeof PLATE_HOLDS)[number]

/** How a bearing may be held on its shaft or in its housing: a turntable has a pin and boards instead. */
export const holdsOf = (at: 'shaft' | 'housing', members: 'rings' | 'plates'): readonly Hold[] =>
  members === 'rings' ? HOLDS : at === 'shaft' ? PIN_HOLDS : PLATE_HOLDS

/** Materials of a shaft. */
export const SHAFT_MATERIALS = ['steel', 'brass', 'wood'] as const
export type ShaftMaterial = (typeof SHAFT_MATERIALS)[number]

export const TURNING_RINGS = ['inner-ring', 'outer-ring'] as const
export const DRIVES = ['crank', 'hub'] as const

/** The ring that turns, where it is not stated: the one that is driven. */
export const turningRing = ({ turns, drive }: Pick<MountingInput, 'turns' | 'drive'>): (typeof TURNING_RINGS)[number] =>
  turns ?? (drive === undefined ? 'inner-ring' : 'outer-ring')

/** The shaft and the housing of the bearing. */
export interface MountingInput {
  readonly shaft?: {
    readonly diameter?: Mm
    readonly material?: ShaftMaterial
    /** Only of wooden shafts. */
    readonly species?: string
    readonly hold?: Hold
  }
  readonly housing?: {
    readonly species?: string
    /** Thickness of the board that the seat is cut into. */
    readonly thickness?: Mm
    readonly hold?: Hold
  }
  /** Which ring turns. */
  readonly turns?: (typeof TURNING_RINGS)[number]
  /** The drive of an outer ring. */
  readonly drive?: (typeof DRIVES)[number]
}
