import type { WoodPart } from '#shared/bearing/wood-parts.ts'
import type { EllipticPlay } from '#shared/geometry/play-in-ellipse.ts'
import type { RoomName } from '#shared/movement/arrangements/parts.ts'
import type { Mm } from '#shared/units/length.ts'
import type { BallSize, Change, Raceway } from './moving-wood.ts'
import type { Woods } from './year.ts'

/** A bearing at one time: the circle in which the balls run in each part, and what is left between the parts. */
export interface Snapshot {
  readonly raceways: { readonly [Part in WoodPart]?: Raceway }
  readonly ball: BallSize
  /** The bottom on which a full ring of balls lies. */
  readonly bottom?: Raceway
  readonly play?: EllipticPlay
  readonly rooms: { readonly [Name in RoomName]?: Mm }
}

/** The movement of one arrangement. */
export interface MovingArrangement<B> {
  /** The parts of its boards, each a board of its own. */
  readonly boards: readonly WoodPart[]
  /** The bearing after a change, any number of times. Of `woods` every part of `boards` must be known. */
  snapshotsOf(bearing: B, woods: Woods): (change: Change) => Snapshot
}
