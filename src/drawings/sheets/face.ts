import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import type { DriveSeat } from '#shared/making/mounting.ts'
import type { CheekScrews, SplitRing } from '#shared/making/split-ring.ts'
import type { Mm } from '#shared/units/length.ts'
import { at, type Point, polar, type Shape } from '#src/drawings/model.ts'
import { arc, circle, cross, line } from '#src/drawings/shapes.ts'
import { dowelsLabel, driveLabel, type PairedPart, screwsLabel } from '#src/words/drawing.ts'
import type { DrawnRings } from './half-section.ts'
import type { SizeText } from './size-text.ts'

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
  holes: readonly SeenHoles[],
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
    ...holes.flatMap((each) => holesRound(each, each.role)),
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
  /** Where the first one stands, where that is not half a step from the top [degrees]. */
  readonly first?: number
}

/** Holes of the face view, and what is written beside an arrow to one of them. */
export interface SeenHoles extends HoleCircle {
  /** Hidden is what lies between two halves. */
  readonly role: 'outline' | 'hidden'
  readonly label: (say: SizeText) => string
}

/** The screws of a split ring, or those of the cheeks, as wide as their shanks; the dowels of a split ring that has no screws. */
export function fastenersIn(
  split: SplitRing | undefined,
  cheeks?: CheekScrews,
  part: PairedPart = 'cheek',
): SeenHoles | undefined {
  const screws = split?.screws ?? cheeks
  const circleDiameter = split?.screwCircle ?? cheeks?.screwCircle
  if (circleDiameter === undefined) return undefined
  if (screws === undefined) return dowelsIn(split)
  const { count, name, shankDiameter } = screws
  return {
    count,
    circleDiameter,
    holeDiameter: shankDiameter,
    role: 'outline',
    label: (say) => screwsLabel({ count, name, circleDiameter, each: split?.screws ? undefined : part }, say),
  }
}

function dowelsIn(split: SplitRing | undefined): SeenHoles | undefined {
  if (split?.dowels === undefined) return undefined
  const { count, diameter } = split.dowels
  const { screwCircle: circleDiameter } = split
  return {
    count,
    circleDiameter,
    holeDiameter: diameter,
    role: 'hidden',
    label: (say) => dowelsLabel({ count, diameter, circleDiameter }, say),
  }
}

/** Holes for a crank or a hub in the side of the outer ring, as far from all other holes as can be; none in a thin wall. */
export function driveHolesIn(drive: DriveSeat | undefined, others: HoleCircle | undefined): SeenHoles | undefined {
  if (drive?.holeDiameter === undefined) return undefined
  const { kind, count, circle: circleDiameter, holeDiameter, depth } = drive
  return {
    count,
    circleDiameter,
    holeDiameter,
    first: clearOf(others, count),
    role: 'outline',
    label: (say) => driveLabel({ kind, count, circleDiameter, holeDiameter, depth }, say),
  }
}

/** The screws of both cheeks, as holes from one side meet them: those of one stand between those of the other. */
export const screwsOfBothCheeks = (one: HoleCircle): HoleCircle => ({
  ...one,
  count: 2 * one.count,
  first: FIRST,
})

/** Below on the right: there its label has room. */
const WANTED = -45
/** So much farther from the other holes is worth a place farther from there [degrees of either]. */
const NEARER = 0.05

/** Where the first of some holes stands farthest from others, and from the centre lines [degrees]. */
function clearOf(others: HoleCircle | undefined, count: number): number {
  const taken = [0, 90, 180, 270, ...(others ? anglesOf(others) : [])]
  const free = (first: number): number =>
    Math.min(
      ...Array.from({ length: count }, (_, i) => first + (i * 360) / count).flatMap((angle) =>
        taken.map((other) => between(angle, other)),
      ),
    )
  const worth = (first: number): number => free(first) - NEARER * between(first, WANTED)
  const places = Array.from({ length: 360 / count }, (_, i) => WANTED - 180 / count + i)
  return places.reduce((best, next) => (worth(next) > worth(best) ? next : best))
}

/** Between two directions [degrees], at most half a turn. */
function between(one: number, other: number): number {
  const turn = Math.abs(one - other) % 360
  return Math.min(turn, 360 - turn)
}

/**
 * The holes to drill first, through both pieces: the pilots of screws, for wood that a wider drill has taken holds no thread;
 * or the holes of dowels, where no screw fits.
 */
export function holesToDrill(split: SplitRing | undefined, cheeks?: CheekScrews): HoleCircle | undefined {
  const screws = split?.screws ?? cheeks
  const seen = fastenersIn(split, cheeks)
  return seen && { ...seen, ...(screws && { holeDiameter: screws.pilot.diameter }) }
}

/** Their circle and the holes on it, round the origin, seen or to be drilled; nothing where there are none. */
export function holesRound(found: HoleCircle | undefined, role: 'outline' | 'hidden' | 'hole'): readonly Shape[] {
  if (found === undefined) return []
  const cut = role === 'hole' ? 'inside' : undefined
  const holes = holePlaces(found).map((place) => circle(role, place, found.holeDiameter / 2, cut))
  return [circle('centre', CENTRE, found.circleDiameter / 2), ...holes]
}

/** Evenly round their circle, none of them on a centre line. */
export const holePlaces = (found: HoleCircle): readonly Point[] =>
  anglesOf(found).map((angle) => polar(CENTRE, found.circleDiameter / 2, angle))

function anglesOf({ count, first = FIRST + 180 / count }: HoleCircle): readonly number[] {
  return Array.from({ length: count }, (_, index) => first + (index * 360) / count)
}
