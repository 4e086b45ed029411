import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import type { CheekScrews, SplitRing } from '#shared/making/split-ring.ts'
import type { Mm } from '#shared/units/length.ts'
import { at, type Point, polar, type Shape } from '#src/drawings/model.ts'
import { arc, circle, cross, line } from '#src/drawings/shapes.ts'
import type { DrawnRings } from './half-section.ts'

const CENTRE = at(0, 0)

/** The first ball stands at the top, where the section is taken. */
const FIRST = 90

/** Balls on their pitch circle. */
export interface Placed {
  readonly resolved: ResolvedBalls
  readonly pitchRadius: Mm
}

/**
 * Places of the balls: the angles of their centres in degrees, from the top counter-clockwise. In a cage that is evenly; else
 * they are pushed together, touching neighbours subtend 2 asin(Dw / 2R), and what is left over is the gap, just clockwise of
 * the top.
 */
export function ballAngles({ pitchRadius, resolved }: Placed): readonly number[] {
  const { ballDiameter, input, traits } = resolved
  const { count } = input.balls
  const touching = (2 * Math.asin(Math.min(1, ballDiameter / (2 * pitchRadius))) * 180) / Math.PI
  const apart = traits.ballSet === 'caged' ? 360 / count : touching
  return Array.from({ length: count }, (_, index) => FIRST + index * apart)
}

/** The middle of the space between the last ball and the first. */
export function gapAngle(ring: Placed): number {
  return ((ballAngles(ring).at(-1) ?? FIRST) + FIRST + 360) / 2 - 360
}

/** The bearing seen along its axis, full size, round the origin. Balls too small for wide lines get narrow ones. */
export function faceView(
  bearing: DrawnRings,
  screws: HoleCircle | undefined,
  overhang: number,
  ballRole: 'outline' | 'hatch',
): readonly Shape[] {
  const { outerRing: outer, innerRing: inner, pitchRadius } = bearing
  const reach = outer.outsideDiameter / 2 + overhang
  return [
    ...[outer.outsideDiameter, outer.landDiameter, inner.landDiameter, inner.boreDiameter].map((diameter) =>
      circle('outline', CENTRE, diameter / 2),
    ),
    ...ballAngles(bearing).flatMap((angle) => visibleBall(bearing, angle, ballRole)),
    ...webs(bearing),
    ...hiddenDiameters(bearing).map((diameter) => circle('hidden', CENTRE, diameter / 2)),
    ...holesRound(screws, 'outline'),
    circle('centre', CENTRE, pitchRadius),
    ...cross('centre', CENTRE, reach),
  ]
}

/** Groove bottoms behind the lands; of rollers the hole of the cheek behind them, the one before them being off. */
function hiddenDiameters({ outerRing, innerRing, cheeks }: DrawnRings): readonly number[] {
  return cheeks === undefined ? [outerRing.grooveBottomDiameter, innerRing.grooveBottomDiameter] : [cheeks.holeDiameter]
}

/** The two arcs of a ball that show between the lands; the rings cover the rest. */
function visibleBall(
  { outerRing, innerRing, pitchRadius, resolved }: DrawnRings,
  angle: number,
  role: 'outline' | 'hatch',
): readonly Shape[] {
  const ballRadius = resolved.ballDiameter / 2
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

/** The cage at mid width: between neighbouring pockets its wood, whose edges lie half a pocket beside the way to the centre. */
function webs(bearing: DrawnRings): readonly Shape[] {
  const { cage } = bearing
  if (cage === undefined) return []
  const angles = ballAngles(bearing)
  const apart = 360 / angles.length
  const radii = [cage.boreDiameter / 2, cage.outsideDiameter / 2] as const
  const aside = (radius: number): number => (Math.asin(cage.pocketDiameter / (2 * radius)) * 180) / Math.PI
  const edge = (angle: number, side: 1 | -1): Shape => {
    const [from, to] = radii.map((radius) => polar(CENTRE, radius, angle + side * aside(radius)))
    return line('outline', from ?? CENTRE, to ?? CENTRE)
  }
  return angles.flatMap((angle) => [
    ...radii.map((radius) => arc('outline', CENTRE, radius, angle + aside(radius), angle + apart - aside(radius))),
    edge(angle, 1),
    edge(angle, -1),
  ])
}

/** Holes evenly round a circle. */
interface HoleCircle {
  readonly count: number
  readonly circleDiameter: Mm
  readonly holeDiameter: Mm
}

/** Screws evenly round a circle, as wide as their shanks. */
export interface ScrewCircle extends HoleCircle {
  /** As they are asked for: `No. 8`, `4 mm`. */
  readonly name: string
}

/** The screws of a split ring, or those of the cheeks. */
export function screwsIn(split: SplitRing | undefined, cheeks: CheekScrews | undefined): ScrewCircle | undefined {
  const screws = split?.screws ?? cheeks
  const circleDiameter = split?.screwCircle ?? cheeks?.screwCircle
  if (screws === undefined || circleDiameter === undefined) return undefined
  return { count: screws.count, circleDiameter, holeDiameter: screws.shankDiameter, name: screws.name }
}

/**
 * The holes to drill first, through both pieces: the pilots of screws, for wood that a wider drill has taken holds no thread;
 * or the holes of dowels, where no screw fits.
 */
export function holesToDrill(split: SplitRing | undefined, cheeks?: CheekScrews): HoleCircle | undefined {
  const screws = split?.screws ?? cheeks
  const seen = screwsIn(split, cheeks)
  if (screws && seen) return { ...seen, holeDiameter: screws.pilot.diameter }
  if (split?.dowels === undefined) return undefined
  const { count, diameter } = split.dowels
  return { count, circleDiameter: split.screwCircle, holeDiameter: diameter }
}

/** Their circle and the holes on it, round the origin, seen or to be drilled; nothing where there are none. */
export function holesRound(found: HoleCircle | undefined, role: 'outline' | 'hole'): readonly Shape[] {
  if (found === undefined) return []
  const cut = role === 'hole' ? 'inside' : undefined
  const holes = holePlaces(found).map((place) => circle(role, place, found.holeDiameter / 2, cut))
  return [circle('centre', CENTRE, found.circleDiameter / 2), ...holes]
}

/** Evenly round their circle, none of them on a centre line. */
export function holePlaces(found: HoleCircle): readonly Point[] {
  const apart = 360 / found.count
  return Array.from({ length: found.count }, (_, index) =>
    polar(CENTRE, found.circleDiameter / 2, FIRST + apart / 2 + index * apart),
  )
}
