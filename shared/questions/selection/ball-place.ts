import type { ThrustBearing } from '#shared/bearing/arrangements.ts'
import type { FullRings } from '#shared/bearing/full-rings.ts'
import type { Traits } from '#shared/bearing/traits.ts'
import { ballGapOnCircle } from '#shared/geometry/balls-on-a-circle.ts'
import { type Closure, IN_A_RING, ON_A_CIRCLE } from '#shared/geometry/closure.ts'
import type { Groove } from '#shared/geometry/groove.ts'
import { type PlateAtRest, plateAtRest } from '#shared/geometry/plate-on-balls.ts'
import { seatIn } from '#shared/geometry/seat.ts'
import { gapPerBottomRadius } from '#shared/geometry/unequal-balls.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { GrooveField } from './fields.ts'

/** The name under which the groove's size is stated. */
export function grooveFieldOf({ members, raceway }: Traits): GrooveField {
  if (members === 'plates') return 'grooveCircleDiameter'
  return raceway === 'track' ? 'trackDiameter' : 'grooveBottomDiameter'
}

/**
 * Where balls are laid that were chosen one by one: in the groove of an outer ring, or on that of a plate. What rings and plates
 * have each in their own way.
 */
export interface BallPlace {
  readonly closure: Closure
  readonly groove: Groove
  /** Across the bottoms of a ring's groove, or a plate's circle, as designed. */
  readonly designed: Mm
  /** By how much the radius that the balls close on is less than that of the groove. */
  readonly aboveBottom: number
  /** Least gap at which the last ball goes in. */
  readonly assemblyGap: Mm
  /** How many parts a turn falls into where no side is to stand out. */
  readonly parts: 2 | 3
  /** What it does to the gap that some sit on the groove's edges, about. */
  readonly edgeShift: (radius: Mm, diameters: readonly number[]) => Mm
  /** How an upper plate rests on these balls; undefined where there is none. */
  readonly atRest: (diameters: readonly number[]) => PlateAtRest | undefined
}

export const placeIn = (bearing: FullRings | ThrustBearing): BallPlace =>
  'plate' in bearing ? placeOnPlate(bearing) : placeInRing(bearing)

/** Every ball is reckoned as if it sat as deep as one of the design's size; those larger than the groove's arc do not. */
function placeInRing({ resolved, outerRing }: FullRings): BallPlace {
  const groove = resolved.outerGroove
  return {
    closure: IN_A_RING,
    groove,
    designed: outerRing.grooveBottomDiameter,
    // 0 unless a ball of the mean size rides on the edges
    aboveBottom: outerRing.grooveDepth - outerRing.seatDepth,
    assemblyGap: resolved.assembly.assemblyGap,
    parts: 2,
    edgeShift: (radius, diameters) => {
      const depths = diameters.map((diameter) => seatIn(groove, mm(diameter)).depth - outerRing.seatDepth)
      const deeper = depths.reduce((sum, depth) => sum + depth, 0) / depths.length
      return mm(gapPerBottomRadius(radius, diameters) * deeper)
    },
    atRest: () => undefined,
  }
}

/**
 * On a plate a ball stands over the circle whatever its size and its seat: on the edges only how high it stands is another,
 * and of that the gap knows the differences alone.
 */
function placeOnPlate({ resolved, plate }: ThrustBearing): BallPlace {
  const { groove } = resolved
  const centre = (diameter: number): number => diameter / 2 - seatIn(groove, mm(diameter)).depth
  return {
    closure: ON_A_CIRCLE,
    groove,
    designed: plate.grooveCircleDiameter,
    aboveBottom: 0,
    assemblyGap: mm(0),
    parts: 3,
    edgeShift: (radius, diameters) =>
      mm(ballGapOnCircle(radius, diameters, centre) - ballGapOnCircle(radius, diameters)),
    // what stands so high over one face stands so deep under the other
    atRest: (diameters) => plateAtRest(diameters.map((diameter) => 2 * centre(diameter))),
  }
}
