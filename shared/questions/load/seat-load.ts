import type { ThrustBearing } from '#shared/bearing/arrangements.ts'
import type { RingName } from '#shared/bearing/refusal.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import type { Traits } from '#shared/bearing/traits.ts'
import { contactWithin, loadForPressureWithin, type Surface } from '#shared/contact/contact-within-width.ts'
import { crushedUnder, crushedWidth, type EdgeSeat, edgeSeat, loadForCrush } from '#shared/contact/groove-edge.ts'
import { contactForm, contactModulus, contactStiffness, type Elastic } from '#shared/contact/hertz.ts'
import {
  type Line,
  lineApproach,
  lineContactUnder,
  loadForLinePressure,
  type RollerOnWall,
} from '#shared/contact/line-contact.ts'
import { LINE_CONTACT } from '#shared/contact/load-distribution.ts'
import { dentUnder, hardnessPressure, loadForDent } from '#shared/contact/wood-dent.ts'
import { BALL_SUBSTANCES } from '#shared/data/ball-materials.ts'
import { type ContactWood, contactWood } from '#shared/data/contact-woods.ts'
import { type Groove, grooveHalfWidth, isPlain } from '#shared/geometry/groove.ts'
import { seatIn } from '#shared/geometry/seat.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { ResolvedLoad, ResolvedLoadOptions } from './input.ts'

/** How a ball bears on one ring, or one plate. */
export interface BallSeat {
  /** Where the ball touches: radius of that circle round the ring's axis [mm]. */
  readonly contactRadius: Mm
  /** Of the softer of groove and ball, as a pressure [MPa]. */
  readonly hardness: number
  readonly softer: 'groove' | 'ball'
  /** Pressure at which the wood begins to give for good [MPa]. */
  readonly firstMarkPressure: number
  /** Q / δⁿ of ball and this seat [N/mmⁿ], n by how they touch. */
  readonly stiffness: number
  readonly on:
    | { readonly seat: 'bottom'; readonly surface: Surface }
    | { readonly seat: 'edges'; readonly edges: EdgeSeat }
    | { readonly seat: 'track'; readonly line: Line }
}

/** What a ball is made of: how it gives, how heavy it is, and how hard where it is of wood. */
export interface BallBody extends Elastic {
  /** [kg/m³] */
  readonly density: number
  readonly wood?: ContactWood
}

export function ballBody({ resolved }: { readonly resolved: ResolvedBalls }, load: ResolvedLoadOptions): BallBody {
  const material = resolved.input.balls.material ?? 'wood'
  if (material !== 'wood') return BALL_SUBSTANCES[material]
  const wood = contactWood(load.ballWood ?? load.wood)
  return { ...wood, wood }
}

/** No groove is cut nearer to the ball's own radius than this part of it: a closer one is taken as so close. */
const CLOSEST_CONFORMITY = 0.001

/** Elastic limit under a ball: the middle yields inside when the pressure is 1.6 times that (Johnson, 6.1; from memory). */
const FIRST_YIELD = 1.6
/** The same under a roller (Johnson, 6.1; from memory). */
const FIRST_YIELD_ON_LINE = 1.67

/**
 * The seat of a ball in one ring's groove. In the plane of rolling ball and ring curve together as R / (Rc rw), Rc the
 * radius at which they touch: 1/rw + 1/Rc inside, 1/rw − 1/Rc outside, where the ball sits on the bottom.
 */
export function ballSeat(bearing: RingPair, ring: RingName, load: ResolvedLoad): BallSeat {
  const { resolved } = bearing
  const { ballDiameter, outerGroove, innerGroove } = resolved
  const groove = ring === 'outerRing' ? outerGroove : innerGroove
  const ballRadius = ballDiameter / 2
  const out = ring === 'outerRing' ? 1 : -1
  const contactRadius = mm(bearing.pitchRadius + out * centreToTouch(groove, ballDiameter))
  const rolling = bearing.pitchRadius / (contactRadius * ballRadius)
  const substance = substanceOf(bearing, load)
  if (!isPlain(groove)) return grooveSeat({ groove, ballDiameter, contactRadius, rolling }, substance)
  const { wood, ball, ...shared } = substance
  const { length = resolved.width } = resolved.input.balls
  const line: Line = { modulus: contactModulus(ball, wood), rolling, length }
  const on = { line, roller: { ...ball, radius: ballRadius }, wall: { ...wood, thickness: bearing[ring].wall } }
  const firstMarkPressure = shared.firstMarkPressure * (FIRST_YIELD_ON_LINE / FIRST_YIELD)
  return {
    ...shared,
    contactRadius,
    firstMarkPressure,
    stiffness: lineStiffness(on, load, resolved),
    on: { seat: 'track', line },
  }
}

/**
 * The seat of a ball in the groove of a plate. Along its bottom the groove is a circle that lies flat: its curvature stands
 * square to the load, and ball and plate roll on one another as on a plane, 1/rw.
 */
export function plateSeat(bearing: ThrustBearing, load: ResolvedLoadOptions): BallSeat {
  const { groove, ballDiameter } = bearing.resolved
  const touch = { groove, ballDiameter, contactRadius: bearing.pitchRadius, rolling: 2 / ballDiameter }
  return grooveSeat(touch, substanceOf(bearing, load))
}

/** From a ball's centre to where it touches, along the load: its radius, or less where it sits on edges. */
export function centreToTouch(groove: Groove, ballDiameter: Mm): number {
  const ballRadius = ballDiameter / 2
  const halfWidth = grooveHalfWidth(groove)
  return seatIn(groove, ballDiameter).on === 'bottom'
    ? ballRadius
    : Math.sqrt((ballRadius - halfWidth) * (ballRadius + halfWidth))
}

/** What ball and groove are made of, and which of them is dented. */
interface Substance extends Pick<BallSeat, 'hardness' | 'softer' | 'firstMarkPressure'> {
  readonly wood: ContactWood
  readonly ball: BallBody
}

function substanceOf(bearing: { readonly resolved: ResolvedBalls }, load: ResolvedLoadOptions): Substance {
  const wood = contactWood(load.wood)
  const ball = ballBody(bearing, load)
  const softer = ball.wood !== undefined && ball.wood.sideHardness < wood.sideHardness ? ball.wood : wood
  return {
    wood,
    ball,
    hardness: hardnessPressure(softer.sideHardness),
    softer: softer === wood ? 'groove' : 'ball',
    firstMarkPressure: FIRST_YIELD * Math.min(wood.compressionLimit, softer.compressionLimit),
  }
}

/** A ball in a groove, and how both curve together in the plane of rolling [1/mm]. */
interface Touch extends Pick<BallSeat, 'contactRadius'> {
  readonly groove: Groove
  readonly ballDiameter: Mm
  readonly rolling: number
}

function grooveSeat(
  { groove, ballDiameter, contactRadius, rolling }: Touch,
  { wood, ball, ...substance }: Substance,
): BallSeat {
  const shared = { ...substance, contactRadius }
  if (seatIn(groove, ballDiameter).on === 'edges') {
    const edges = edgeSeat(groove, ballDiameter, rolling, shared.hardness)
    return { ...shared, stiffness: edges.stiffness, on: { seat: 'edges', edges } }
  }
  const ballRadius = ballDiameter / 2
  const section = Math.max(1 - ballRadius / groove.radius, CLOSEST_CONFORMITY) / ballRadius
  const form = contactForm([rolling, section])
  const modulus = contactModulus(ball, wood)
  const surface: Surface = {
    form,
    modulus,
    rolling: Math.max(rolling, section),
    halfWidth: grooveHalfWidth(groove),
  }
  return { ...shared, stiffness: contactStiffness(form, modulus), on: { seat: 'bottom', surface } }
}

/** The most loaded of Z rollers without play carries 4.08 Fr / Z (Stribeck, line contact). */
const MOST_OF_ROLLERS = 4.08

/** A roller gives a little less than in proportion: the K of K δ^1.1 that is right for a load such as it has to carry. */
function lineStiffness(on: RollerOnWall, { radialLoad }: ResolvedLoad, { input }: ResolvedBalls): number {
  const load = (MOST_OF_ROLLERS * radialLoad) / input.balls.count
  return load / Math.exp(LINE_CONTACT * Math.log(lineApproach(on, load)))
}

/** What a load of one ball does to its seat. */
export interface SeatLoad {
  readonly seat: 'bottom' | 'edges'
  /** [N] */
  readonly ballLoad: number
  /** Whole width and length of the touch, across the groove and along it; on edges the width of one flat. */
  readonly width: Mm
  readonly length?: Mm
  /** [MPa]; on edges it is the hardness itself. */
  readonly maxPressure: number
  readonly reachesEdges: boolean
  /** What stays; undefined where the ball would sink in past its middle. */
  readonly dent: Mm | undefined
}

export function seatUnder({ on, hardness }: BallSeat, ballLoad: number): SeatLoad {
  if (on.seat === 'edges') {
    const dent = crushedUnder(on.edges, ballLoad)
    const width = crushedWidth(on.edges, dent)
    return { seat: 'edges', ballLoad, width, maxPressure: hardness, reachesEdges: true, dent }
  }
  if (on.seat === 'track') {
    const { halfWidth, maxPressure } = lineContactUnder(on.line, ballLoad)
    return {
      seat: 'bottom',
      ballLoad,
      width: mm(on.line.length),
      length: mm(2 * halfWidth),
      maxPressure,
      reachesEdges: false,
      dent: dentUnder({ surface: on.line, hardness }, ballLoad),
    }
  }
  const contact = contactWithin(on.surface, ballLoad)
  return {
    seat: 'bottom',
    ballLoad,
    width: mm(2 * contact.semiMajor),
    length: mm(2 * contact.semiMinor),
    maxPressure: contact.maxPressure,
    reachesEdges: contact.reachesEdges,
    dent: dentUnder({ surface: on.surface, hardness }, ballLoad),
  }
}

/** Loads of one ball at which its seat is first marked, and dented so deep [N]. Edges are marked by any load. */
export interface SeatLimits {
  readonly firstMark: number
  readonly dent: number
}

export function seatLimits({ on, hardness, firstMarkPressure }: BallSeat, dent: Mm): SeatLimits {
  if (on.seat === 'edges') return { firstMark: 0, dent: loadForCrush(on.edges, dent) }
  if (on.seat === 'track') {
    const dented = { surface: on.line, hardness }
    return { firstMark: loadForLinePressure(on.line, firstMarkPressure), dent: loadForDent(dented, dent) }
  }
  const dented = { surface: on.surface, hardness }
  return { firstMark: loadForPressureWithin(on.surface, firstMarkPressure), dent: loadForDent(dented, dent) }
}

/** Both seats of what rolls, one behind the other, each giving as Q = K δⁿ:  1/K^(1/n) = 1/Ko^(1/n) + 1/Ki^(1/n). */
export function seatsStiffness({ rolls }: Traits, ...seats: readonly [BallSeat, BallSeat]): number {
  if (rolls === 'rollers') {
    const give = seats.reduce((sum, { stiffness }) => sum + Math.exp(-Math.log(stiffness) / LINE_CONTACT), 0)
    return Math.exp(-LINE_CONTACT * Math.log(give))
  }
  const give = seats.reduce((sum, { stiffness }) => sum + 1 / Math.cbrt(stiffness * stiffness), 0)
  return 1 / (give * Math.sqrt(give))
}
