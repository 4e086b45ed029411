import type { BallRing } from '#shared/bearing/ball-ring.ts'
import type { Bearing } from '#shared/bearing/bearing.ts'
import { cheekScrewsOf, type ScrewCircle, splitScrewsOf } from '#shared/bearing/cutting-allowances.ts'
import { at, type Point, polar, type Shape } from '#src/drawings/model.ts'
import { arc, circle, line } from '#src/drawings/shapes.ts'

const CENTRE = at(0, 0)

/** The first ball stands at the top, where the section is taken. */
const FIRST = 90

/**
 * Where the balls stand, pushed together: the angles of their centres in degrees, from the top counter-clockwise. Touching
 * neighbours subtend 2 asin(Dw / 2R); what is left over is the gap, just clockwise of the top.
 */
export function ballAngles({ pitchRadius, settled }: BallRing): readonly number[] {
  const { ballDiameter, input } = settled
  const apart = (2 * Math.asin(Math.min(1, ballDiameter / (2 * pitchRadius))) * 180) / Math.PI
  return Array.from({ length: input.balls.count }, (_, index) => FIRST + index * apart)
}

/** The middle of the gap between the last ball and the first. */
export function gapAngle(ring: BallRing): number {
  return ((ballAngles(ring).at(-1) ?? FIRST) + FIRST + 360) / 2 - 360
}

/** The bearing seen along its axis, full size, round the origin. Balls too small for wide lines get narrow ones. */
export function faceView(bearing: Bearing, overhang: number, ballRole: 'outline' | 'hatch'): readonly Shape[] {
  const { outerRing: outer, innerRing: inner, pitchRadius } = bearing
  const reach = outer.outsideDiameter / 2 + overhang
  return [
    ...[outer.outsideDiameter, outer.landDiameter, inner.landDiameter, inner.boreDiameter].map((diameter) =>
      circle('outline', CENTRE, diameter / 2),
    ),
    ...ballAngles(bearing).flatMap((angle) => visibleBall(bearing, angle, ballRole)),
    ...hiddenDiameters(bearing).map((diameter) => circle('hidden', CENTRE, diameter / 2)),
    ...screws(bearing),
    circle('centre', CENTRE, pitchRadius),
    line('centre', at(-reach, 0), at(reach, 0)),
    line('centre', at(0, -reach), at(0, reach)),
  ]
}

/** Groove bottoms behind the lands; of rollers the hole of the cheek behind them, the one before them being off. */
function hiddenDiameters({ outerRing, innerRing, cheeks }: Bearing): readonly number[] {
  return cheeks === undefined ? [outerRing.grooveBottomDiameter, innerRing.grooveBottomDiameter] : [cheeks.holeDiameter]
}

/** The two arcs of a ball that show between the lands; the rings cover the rest. */
function visibleBall(
  { outerRing, innerRing, pitchRadius, settled }: Bearing,
  angle: number,
  role: 'outline' | 'hatch',
): readonly Shape[] {
  const ballRadius = settled.ballDiameter / 2
  const centre = polar(CENTRE, pitchRadius, angle)
  // Seen from the ball's centre, how far from the way outward its outline meets a circle round the ring's centre.
  const turnTo = (radius: number): number => {
    const cosine =
      (radius * radius - pitchRadius * pitchRadius - ballRadius * ballRadius) / (2 * pitchRadius * ballRadius)
    return (Math.acos(Math.max(-1, Math.min(1, cosine))) * 180) / Math.PI
  }
  const near = turnTo(outerRing.landDiameter / 2)
  const far = turnTo(innerRing.landDiameter / 2)
  if (!(far > near)) return []
  return [
    arc(role, centre, ballRadius, angle + near, angle + far),
    arc(role, centre, ballRadius, angle - far, angle - near),
  ]
}

/** Those of a split ring, or those of the cheeks. */
const screws = (bearing: Bearing): readonly Shape[] => screwHoles(splitScrewsOf(bearing) ?? cheekScrewsOf(bearing))

/** Their circle and the holes on it, round the origin; nothing where there are none. */
export function screwHoles(found: ScrewCircle | undefined): readonly Shape[] {
  if (found === undefined) return []
  const holes = screwPlaces(found).map((place) => circle('hole', place, found.shankDiameter / 2))
  return [circle('centre', CENTRE, found.circleDiameter / 2), ...holes]
}

/** Evenly round their circle, none of them on a centre line. */
function screwPlaces(found: ScrewCircle): readonly Point[] {
  const apart = 360 / found.count
  return Array.from({ length: found.count }, (_, index) =>
    polar(CENTRE, found.circleDiameter / 2, FIRST + apart / 2 + index * apart),
  )
}
