import type { ThrustBearing } from '#shared/bearing/arrangements.ts'
import { mostOnOne } from '#shared/contact/eccentric-load.ts'
import { seatIn } from '#shared/geometry/seat.ts'
import { endByHalving } from '#shared/numbers/halving.ts'
import { type BallSeat, type SeatLoad, seatUnder } from '#shared/questions/load/seat-load.ts'
import { normalQuantile } from '#shared/statistics/normal.ts'

/*
 * Balls of a turntable that differ in size. At first three of the tallest hold the plate up, and which three is chance: taken are the
 * three of which one carries most. As the wood under them gives, springs back or is dented, lower ones come to carry too. The sizes
 * are taken as a normal distribution has them, in as many equal parts as there are balls; on edges a ball stands higher by more than
 * it is larger.
 */

/** The balls of a turntable by height, and how they share its load. */
export interface UnevenLot {
  readonly seat: BallSeat
  /** K of one ball between both plates [N/mm^1.5]. */
  readonly stiffness: number
  /** How far each ball is below the tallest [mm], the tallest first. */
  readonly below: readonly number[]
  /** The part of the load that one ball comes to carry where three do, and where all do. */
  readonly ofThree: number
  readonly ofAll: number
}

/** The effect of unequal balls: at first three of the tallest carry, until the wood under them has given. */
export interface Uneven {
  /** The most loaded ball, where they stand so that it carries most. */
  readonly tallest: SeatLoad
  /** From about this load on the smallest carries too, the plate level and the wood elastic [N]. */
  readonly allCarryFrom: number
}

/**
 * @param offset of the load from the axis [mm]
 * @param share the part of the load that the most loaded of equal balls carries
 */
export function unevenLot(
  { pitchRadius, resolved }: ThrustBearing,
  offset: number,
  { seat, stiffness, share }: { readonly seat: BallSeat; readonly stiffness: number; readonly share: number },
): UnevenLot {
  const { ballScatter, ballDiameter, groove, input } = resolved
  const { count } = input.balls
  const perDiameter = 1 - 2 * seatIn(groove, ballDiameter).perBallDiameter
  const quantiles = Array.from({ length: count }, (_, each) => normalQuantile((each + 1 / 2) / count)).toReversed()
  const [highest = 0] = quantiles
  return {
    seat,
    stiffness,
    below: quantiles.map((quantile) => perDiameter * ballScatter * (highest - quantile)),
    ofThree: mostOnOne(count, offset / pitchRadius),
    ofAll: share,
  }
}

/** How far the wood under a ball gives between both plates, by what springs back alone [mm]; on edges, which do not, by the dents. */
export function givesUnder({ stiffness }: Pick<UnevenLot, 'stiffness'>, ballLoad: number): number {
  const root = Math.cbrt(ballLoad / stiffness)
  return root * root
}

/** How far a ball brings the plates together [mm]: what springs back, and the dent in either. Endless where it sinks in. */
function approachUnder(lot: UnevenLot, ballLoad: number): number {
  const { seat } = lot
  const gives = givesUnder(lot, ballLoad)
  return seat.on.seat === 'edges' ? gives : gives + 2 * (seatUnder(seat, ballLoad).dent ?? Number.POSITIVE_INFINITY)
}

/**
 * The load of the turntable at which its most loaded ball carries so much [N]. All others carry by how far the level plate has come
 * down to them, as elastic contacts do, Q δ^1.5: dented ones carry a little more. Derived here.
 *
 * @param ballLoad [N], above 0
 */
export function loadWhenTallestCarries(lot: UnevenLot, ballLoad: number): number {
  const { below, ofThree, ofAll } = lot
  const approach = approachUnder(lot, ballLoad)
  const level = below.reduce((sum, depth) => {
    const part = Math.max(0, 1 - depth / approach)
    return sum + part * Math.sqrt(part)
  }, 0)
  return ballLoad * Math.min(1 / ofAll, Math.max(1 / ofThree, level / (ofAll * below.length)))
}

/** Halvings of the load of the most loaded ball: to the last digits of a double. */
const HALVINGS = 60

/** The most loaded ball under a load, and when all carry. */
export function unevenUnder(lot: UnevenLot, load: number): Uneven {
  const { seat, stiffness, below, ofThree, ofAll } = lot
  const isLess = (ballLoad: number): boolean => loadWhenTallestCarries(lot, ballLoad) < load
  const [, onTallest] = endByHalving(isLess, load * ofAll, load * ofThree, HALVINGS)
  const lowest = Math.max(...below)
  const allCarryFrom = below.reduce((sum, depth) => {
    const higher = lowest - depth
    return sum + stiffness * higher * Math.sqrt(higher)
  }, 0)
  return { tallest: seatUnder(seat, onTallest), allCarryFrom }
}
