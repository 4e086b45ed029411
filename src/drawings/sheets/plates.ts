import type { ThrustBearing } from '#shared/bearing/arrangements.ts'
import { grooveHalfWidth } from '#shared/geometry/groove.ts'
import { at, polar, type Shape, type Vertex } from '#src/drawings/model.ts'
import { circle, cross, line } from '#src/drawings/shapes.ts'
import { ballAngles } from './face.ts'
import { hatched } from './hatching.ts'
import { breakLine } from './ring-section.ts'

const CENTRE = at(0, 0)

/** How much of a plate is shown: from one radius to another, and how thick. What is left out ends in breaks. */
export type PlateCrop = { readonly low: number; readonly high: number; readonly thickness: number }

const whole = ({ plate }: ThrustBearing): PlateCrop => ({
  low: plate.boreDiameter / 2,
  high: plate.outsideDiameter / 2,
  thickness: plate.thickness,
})

/** One plate cut along the axis, above it: on the right (1) or on the left (−1) of the balls, its groove towards them. */
export function plateSection(
  bearing: ThrustBearing,
  side: 1 | -1,
  hatchSpacing: number,
  crop = whole(bearing),
): readonly Shape[] {
  const { plate, plateGap, pitchRadius, resolved } = bearing
  const { groove } = resolved
  const { low, high, thickness } = crop
  const face = side * (plateGap / 2)
  const back = side * (plateGap / 2 + thickness)
  const wide = grooveHalfWidth(groove)
  const bulge = side * Math.tan(Math.asin(Math.min(1, wide / groove.radius)) / 2)
  const inside: Vertex[] = [
    at(face, low),
    { ...at(face, pitchRadius - wide), bulge },
    at(face, pitchRadius + wide),
    at(face, high),
  ]
  const edge = (isBreak: boolean, from: Vertex, to: Vertex): Shape =>
    isBreak ? breakLine(from, to) : line('outline', from, to)
  const gone = { x: face + side * (groove.depth - groove.radius), y: pitchRadius, radius: groove.radius }
  const rectangle = { left: Math.min(face, back), right: Math.max(face, back), low, high }
  const all = whole(bearing)
  return [
    { role: 'outline', kind: 'polyline', points: inside },
    edge(low > all.low, at(face, low), at(back, low)),
    edge(high < all.high, at(face, high), at(back, high)),
    edge(thickness < plate.thickness, at(back, low), at(back, high)),
    ...hatched(rectangle, side, hatchSpacing, gone),
  ]
}

/** The bearing from the side, its upper half cut open, full size, the middle of its axis at the origin. */
export function plateHalfSection(bearing: ThrustBearing, hatchSpacing: number, overhang: number): readonly Shape[] {
  const { plate, plateGap, height, pitchRadius, resolved } = bearing
  const [half, gap, outside] = [height / 2, plateGap / 2, plate.outsideDiameter / 2]
  const ballRadius = resolved.ballDiameter / 2
  return [
    ...([-1, 1] as const).flatMap((side) => plateSection(bearing, side, hatchSpacing)),
    circle('outline', at(0, pitchRadius), ballRadius),
    ...[-half, -gap, gap, half].map((x) => line('outline', at(x, -outside), at(x, plate.boreDiameter / 2))),
    line('outline', at(-half, -outside), at(-gap, -outside)),
    line('outline', at(gap, -outside), at(half, -outside)),
    line('centre', at(-half - overhang, 0), at(half + overhang, 0)),
    ...cross('centre', at(0, pitchRadius), ballRadius * 1.2),
  ]
}

/** The lower plate with its balls, seen along the axis, full size, round the origin: the other plate is off. */
export function plateFace(bearing: ThrustBearing, overhang: number, ballRole: 'outline' | 'hatch'): readonly Shape[] {
  const { plate, pitchRadius, resolved } = bearing
  const reach = plate.outsideDiameter / 2 + overhang
  return [
    ...[plate.outsideDiameter, plate.boreDiameter].map((diameter) => circle('outline', CENTRE, diameter / 2)),
    ...[-1, 1].map((side) => circle('hidden', CENTRE, pitchRadius + (side * plate.grooveWidth) / 2)),
    ...ballAngles(bearing).map((angle) =>
      circle(ballRole, polar(CENTRE, pitchRadius, angle), resolved.ballDiameter / 2),
    ),
    circle('centre', CENTRE, pitchRadius),
    ...cross('centre', CENTRE, reach),
  ]
}
