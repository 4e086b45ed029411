import type { Bearing } from '#shared/bearing/bearing.ts'
import type { RingName } from '#shared/bearing/refusal.ts'
import { contactWithin, loadForPressureWithin, type Surface } from '#shared/contact/contact-within-width.ts'
import { crushedUnder, crushedWidth, type EdgeSeat, edgeSeat, loadForCrush } from '#shared/contact/groove-edge.ts'
import { contactForm, contactModulus, contactStiffness, type Elastic } from '#shared/contact/hertz.ts'
import { dentUnder, hardnessPressure, loadForDent } from '#shared/contact/wood-dent.ts'
import { BALL_SUBSTANCES } from '#shared/data/ball-materials.ts'
import { type ContactWood, contactWood } from '#shared/data/contact-woods.ts'
import { grooveHalfWidth } from '#shared/geometry/groove.ts'
import { seatIn } from '#shared/geometry/seat.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { SettledLoad } from './input.ts'

/** How a ball bears on one ring. */
export interface BallSeat {
  /** Where the ball touches: radius of that circle round the ring's axis [mm]. */
  readonly contactRadius: Mm
  /** Of the softer of ring and ball, as a pressure [MPa]. */
  readonly hardness: number
  readonly softer: 'ring' | 'ball'
  /** Pressure at which the wood begins to give for good [MPa]. */
  readonly firstMarkPressure: number
  /** Q / δ^1.5 of ball and this ring [N/mm^1.5]. */
  readonly stiffness: number
  readonly on:
    | { readonly seat: 'bottom'; readonly surface: Surface }
    | { readonly seat: 'edges'; readonly edges: EdgeSeat }
}

/** What a ball is made of: how it gives, how heavy it is, and how hard where it is of wood. */
export interface BallBody extends Elastic {
  /** [kg/m³] */
  readonly density: number
  readonly wood?: ContactWood
}

export function ballBody({ settled }: Bearing, load: SettledLoad): BallBody {
  const material = settled.input.balls.material ?? 'wood'
  if (material !== 'wood') return BALL_SUBSTANCES[material]
  const wood = contactWood(load.ballWood ?? load.wood)
  return { ...wood, wood }
}

/** No groove is cut nearer to the ball's own radius than this part of it: a closer one is taken as so close. */
const CLOSEST_CONFORMITY = 0.001

/** Elastic limit under a ball: the middle yields inside when the pressure is 1.6 times that (Johnson, 6.1; from memory). */
const FIRST_YIELD = 1.6

/**
 * The seat of a ball in one ring's groove. In the plane of rolling ball and ring curve together as R / (Rc rw), Rc the
 * radius at which they touch: 1/rw + 1/Rc inside, 1/rw − 1/Rc outside, where the ball sits on the bottom.
 */
export function ballSeat(bearing: Bearing, ring: RingName, load: SettledLoad): BallSeat {
  const { ballDiameter, outerGroove, innerGroove } = bearing.settled
  const groove = ring === 'outerRing' ? outerGroove : innerGroove
  const ballRadius = ballDiameter / 2
  const wood = contactWood(load.wood)
  const ball = ballBody(bearing, load)
  const softer = ball.wood !== undefined && ball.wood.sideHardness < wood.sideHardness ? ball.wood : wood
  const hardness = hardnessPressure(softer.sideHardness)
  const out = ring === 'outerRing' ? 1 : -1
  const halfWidth = grooveHalfWidth(groove)
  const onBottom = seatIn(groove, ballDiameter).on === 'bottom'
  const aside = onBottom ? ballRadius : Math.sqrt((ballRadius - halfWidth) * (ballRadius + halfWidth))
  const contactRadius = bearing.pitchRadius + out * aside
  const rolling = bearing.pitchRadius / (contactRadius * ballRadius)
  const shared = {
    contactRadius: mm(contactRadius),
    hardness,
    softer: softer === wood ? ('ring' as const) : ('ball' as const),
    firstMarkPressure: FIRST_YIELD * Math.min(wood.compressionLimit, softer.compressionLimit),
  }
  if (!onBottom) {
    const edges = edgeSeat(groove, ballDiameter, rolling, hardness)
    return { ...shared, stiffness: edges.stiffness, on: { seat: 'edges', edges } }
  }
  const section = Math.max(1 - ballRadius / groove.radius, CLOSEST_CONFORMITY) / ballRadius
  const form = contactForm([rolling, section])
  const modulus = contactModulus(ball, wood)
  const surface: Surface = { form, modulus, rolling: Math.max(rolling, section), halfWidth }
  return { ...shared, stiffness: contactStiffness(form, modulus), on: { seat: 'bottom', surface } }
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
  const dented = { surface: on.surface, hardness }
  return { firstMark: loadForPressureWithin(on.surface, firstMarkPressure), dent: loadForDent(dented, dent) }
}

/** Both seats of a ball, one behind the other:  1/K^(2/3) = 1/Ko^(2/3) + 1/Ki^(2/3). */
export function ballStiffness(...seats: readonly [BallSeat, BallSeat]): number {
  const give = seats.reduce((sum, { stiffness }) => sum + 1 / Math.cbrt(stiffness * stiffness), 0)
  return 1 / (give * Math.sqrt(give))
}
