import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import { contactWithin, type Surface } from '#shared/contact/contact-within-width.ts'
import { crushedUnder, crushedWidth, type EdgeSeat, edgeSeat, loadForCrush } from '#shared/contact/groove-edge.ts'
import { contactForm, contactModulus, contactStiffness, type Elastic } from '#shared/contact/hertz.ts'
import { type Line, lineContactUnder } from '#shared/contact/line-contact.ts'
import { POINT_CONTACT } from '#shared/contact/load-distribution.ts'
import { dentUnder, hardnessPressure, loadForDent } from '#shared/contact/wood-dent.ts'
import { BALL_SUBSTANCES } from '#shared/data/ball-materials.ts'
import { type ContactWood, contactWood } from '#shared/data/contact-woods.ts'
import { type Groove, grooveHalfWidth } from '#shared/geometry/groove.ts'
import { seatIn } from '#shared/geometry/seat.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { ResolvedLoadOptions } from './input.ts'

/** How a ball bears on one part of the bearing. */
export interface BallSeat {
  /** Radius of the contact circle round the ring's axis [mm]. */
  readonly contactRadius: Mm
  /** Hardness of the softer of groove and ball, as a pressure [MPa]. */
  readonly hardness: number
  readonly softer: 'groove' | 'ball'
  /** n, and Q / δⁿ of ball and this seat [N/mmⁿ]. */
  readonly exponent: number
  readonly stiffness: number
  readonly on:
    | { readonly seat: 'bottom'; readonly surface: Surface }
    | { readonly seat: 'edges'; readonly edges: EdgeSeat }
    | { readonly seat: 'track'; readonly line: Line }
}

/** Material of a ball: stiffness, density, and hardness if it is of wood. */
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

/**
 * No groove is cut nearer to the ball's own radius than this part of it: a closer one is taken as so close.
 * Common practice, no source.
 */
const CLOSEST_CONFORMITY = 0.001

/** From a ball's centre to where it touches, along the load: its radius, or less where it sits on edges. */
export function centreToTouch(groove: Groove, ballDiameter: Mm): number {
  const ballRadius = ballDiameter / 2
  const halfWidth = grooveHalfWidth(groove)
  return seatIn(groove, ballDiameter).on === 'bottom'
    ? ballRadius
    : Math.sqrt((ballRadius - halfWidth) * (ballRadius + halfWidth))
}

/** Materials of ball and groove, and which of them is dented. */
export interface Substance extends Pick<BallSeat, 'hardness' | 'softer'> {
  readonly wood: ContactWood
  readonly ball: BallBody
}

export function substanceOf(bearing: { readonly resolved: ResolvedBalls }, load: ResolvedLoadOptions): Substance {
  const wood = contactWood(load.wood)
  const ball = ballBody(bearing, load)
  const softer = ball.wood !== undefined && ball.wood.sideHardness < wood.sideHardness ? ball.wood : wood
  return {
    wood,
    ball,
    hardness: hardnessPressure(softer.sideHardness),
    softer: softer === wood ? 'groove' : 'ball',
  }
}

/** A ball in a groove, and how both curve together in the plane of rolling [1/mm]. */
interface Touch extends Pick<BallSeat, 'contactRadius'> {
  readonly groove: Groove
  readonly ballDiameter: Mm
  readonly rolling: number
}

export function grooveSeat(
  { groove, ballDiameter, contactRadius, rolling }: Touch,
  { wood, ball, ...substance }: Substance,
): BallSeat {
  const shared = { ...substance, contactRadius, exponent: POINT_CONTACT }
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

/** The effect of one ball's load on its seat. */
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
  /** The dent that stays; undefined if the ball would sink in past its middle. */
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

/**
 * Load of one ball that leaves a dent of this depth in its seat [N].
 *
 * @param share of the average hardness that the wood has
 */
export const loadThatDents = ({ on, hardness }: BallSeat, dent: Mm, share: number): number =>
  on.seat === 'edges'
    ? share * loadForCrush(on.edges, dent)
    : loadForDent({ surface: on.seat === 'track' ? on.line : on.surface, hardness: share * hardness }, dent)

/** Two seats of what rolls, one behind the other, each giving as Q = K δⁿ:  1/K^(1/n) = 1/Ko^(1/n) + 1/Ki^(1/n). */
export function seatsStiffness(one: BallSeat, other: BallSeat): number {
  const { exponent } = one
  const give = [one, other].reduce((sum, { stiffness }) => sum + Math.exp(-Math.log(stiffness) / exponent), 0)
  return Math.exp(-exponent * Math.log(give))
}
