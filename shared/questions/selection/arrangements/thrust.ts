import type { ThrustBearing } from '#shared/bearing/arrangements.ts'
import { ballGapOnCircle } from '#shared/geometry/balls-on-a-circle.ts'
import { ON_A_CIRCLE } from '#shared/geometry/closure.ts'
import { plateAtRest, restByOrder } from '#shared/geometry/plate-on-balls.ts'
import { seatIn } from '#shared/geometry/seat.ts'
import type { SelectionOf } from '#shared/questions/selection/ball-place.ts'
import { mm } from '#shared/units/length.ts'

/** A carrier with a smaller share of a load over the middle lets the plate tip easily: common practice, no source. */
const LEAST_SHARE = 0.1

/**
 * Between plates. A ball is over the circle whatever its size and its seat: on the edges only its height is another, and of
 * that the gap knows the differences alone.
 */
export const BETWEEN_PLATES: SelectionOf<ThrustBearing> = {
  grooveField: 'grooveCircleDiameter',
  placeIn: ({ resolved, plate }) => {
    const { groove } = resolved
    const centre = (diameter: number): number => diameter / 2 - seatIn(groove, mm(diameter)).depth
    // as high as a centre is over one face, so far it is under the other
    const height = (diameter: number): number => 2 * centre(diameter)
    return {
      closure: ON_A_CIRCLE,
      groove,
      designed: plate.grooveCircleDiameter,
      aboveBottom: 0,
      assemblyGap: mm(0),
      parts: 3,
      edgeShift: (radius, diameters) =>
        mm(ballGapOnCircle(radius, diameters, centre) - ballGapOnCircle(radius, diameters)),
      judge: (_radius, diameters) => {
        const restOf = restByOrder(diameters.map(height))
        const across = (2 * plate.outsideDiameter) / plate.grooveCircleDiameter
        return (order) => {
          const { shares, rise, decisive } = restOf(order)
          return { margin: Math.min(...shares), runOut: mm(rise * across), decisive }
        }
      },
      enough: LEAST_SHARE,
      aims: ['advised', 'least-rise', 'most-rise'],
      atRest: (diameters) => plateAtRest(diameters.map(height)),
    }
  },
}
