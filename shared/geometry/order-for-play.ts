import type { Judged, Order } from '#shared/numbers/best-order.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { requireAboveZero, requireWithin } from '#shared/precondition.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { roundRoom, runOutOf, seeker } from './play-among-unequal-balls.ts'
import { requireDiameters } from './ring-of-balls.ts'
import { ballPlaces, layOnCircle } from './unequal-ball-places.ts'

/** The two grooves between which an order of balls is judged. */
export interface GroovePair {
  /** Ro [mm], at least the largest diameter, so that any two balls fit side by side. */
  readonly outerBottomRadius: Mm
  /** ri [mm], above 0. */
  readonly innerBottomRadius: Mm
}

/** The play and the run-out with the gap spread evenly: as the balls go round, it comes to lie between any two. */
export interface PlayOfOrder extends Judged {
  readonly radialInternalClearance: Mm
  readonly runOut: Mm
}

/**
 * Judges orders of given balls by the exact play of the inner ring among them and by its run-out. Thousands are judged,
 * so that no room is taken for each. The play of one order and that of another differ by the same whatever the inner
 * groove: it enters as a constant, and the place of the ring where it has most room does not change.
 *
 * @param diameters [mm], by the numbers that an order names
 * @throws RangeError outside the ranges of `GroovePair`; for an order whose balls leave half a turn free, so that
 *   nothing holds the ring
 */
export function playByOrder(
  { outerBottomRadius, innerBottomRadius }: GroovePair,
  diameters: readonly number[],
): (order: Order) => PlayOfOrder {
  requireDiameters(diameters)
  requireAboveZero('innerBottomRadius', innerBottomRadius)
  requireWithin('outerBottomRadius', outerBottomRadius, Math.max(...diameters), Number.MAX_VALUE)
  const places = ballPlaces(diameters.length)
  const seek = seeker(places, roundRoom(places, innerBottomRadius))
  return (order) => {
    for (let place = 0; place < order.length; place++)
      places.radius[place] = itemAt(diameters, itemAt(order, place)) / 2
    layOnCircle(outerBottomRadius, 'spread', places)
    const found = seek()
    if (found === undefined) throw new RangeError('the balls of an order must leave less than half a turn free')
    const { level, first, second, third } = found
    return {
      radialInternalClearance: mm(2 * level),
      runOut: mm(runOutOf(found)),
      decisive: [first, second, third],
    }
  }
}
