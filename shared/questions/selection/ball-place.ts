import type { Closure } from '#shared/geometry/closure.ts'
import type { Groove } from '#shared/geometry/groove.ts'
import type { PlateAtRest } from '#shared/geometry/plate-on-balls.ts'
import type { Judged, Order } from '#shared/numbers/best-order.ts'
import type { Mm } from '#shared/units/length.ts'
import type { GrooveField } from './fields.ts'

/** The figures of one order of the balls, beside the gap. */
export interface OrderFigures extends Judged {
  /**
   * That of which a bearing needs enough: the play of rings; over a plate, the least share of a load over the middle that
   * one of its three carriers has.
   */
  readonly margin: number
  /** Run-out of the inner ring, or of the upper plate up and down, while the balls go round once. */
  readonly runOut: Mm
}

/** The aims of an order, by arrangement: the order to use first, the one to avoid last. */
export type OrderAim = 'advised' | 'most-play' | 'least-run-out' | 'least-play' | 'least-rise' | 'most-rise'

/** The place for balls chosen one by one: the groove of an outer ring, or of a plate. */
export interface BallPlace {
  readonly closure: Closure
  readonly groove: Groove
  /** Across the bottoms of a ring's groove, or a plate's circle, as designed. */
  readonly designed: Mm
  /** By how much the radius that the balls close on is less than that of the groove. */
  readonly aboveBottom: number
  /** Least gap at which the last ball goes in without force. */
  readonly assemblyGap: Mm
  /** How many parts a turn falls into where no side is to stand out: the order by which choices are compared. */
  readonly parts: 2 | 3
  /** The approximate change of the gap by balls that sit on the groove's edges. */
  readonly edgeShift: (radius: Mm, diameters: readonly number[]) => Mm
  /** Judges orders of some balls, in the groove with the radius that they close on. */
  readonly judge: (radius: Mm, diameters: readonly number[]) => (order: Order) => OrderFigures
  /** A margin that is enough. */
  readonly enough: number
  /** The aims of its orders. */
  readonly aims: readonly OrderAim[]
  /** The inner raceway, where there is one: its size across, as drawn and as it is; the play to aim at, and the most; and the bore that limits it. */
  readonly inner?: {
    readonly drawn: Mm
    readonly asItIs: Mm
    readonly designedPlay: Mm
    readonly mostPlay: Mm
    readonly bore: Mm
  }
  /** How an upper plate rests on these balls; undefined where there is none. */
  readonly atRest: (diameters: readonly number[]) => PlateAtRest | undefined
}

/** The part of this question that differs by arrangement. */
export interface SelectionOf<Bearing> {
  /** The name under which the size of the groove is stated, and that of the inner one where there is one. */
  readonly grooveField: GrooveField
  readonly innerField?: GrooveField
  readonly placeIn: (bearing: Bearing, innerAsItIs: Mm | undefined) => BallPlace
}
