import type { PartName, RingName } from '#shared/bearing/refusal.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { LINE_CONTACT, loadWhenBallCarries, POINT_CONTACT, type Sharing } from '#shared/contact/load-distribution.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { ResolvedLoad } from './input.ts'
import { type BallSeat, ballSeat, type SeatLimits, seatLimits, seatsStiffness } from './seat-load.ts'

/** A load of the bearing at which something is reached, that of its most loaded ball [N], and what reaches it. */
export interface Limit<Part extends PartName = RingName> {
  readonly load: number
  readonly ballLoad: number
  readonly part: Part
}

/** A limit that is a dent of some depth. */
export type DentLimit<Part extends PartName = RingName> = Limit<Part> & { readonly depth: Mm }

/** How the balls of a bearing sit in its rings, how they share a load, and what they bear. */
export interface Seated {
  readonly outer: BallSeat
  readonly inner: BallSeat
  readonly sharing: Sharing
  readonly firstMark: Limit
  readonly dent: DentLimit
  /** Of the outer ring alone: load of one ball that leaves that dent [N]. */
  readonly outerDent: number
}

export function seated(bearing: RingPair, load: ResolvedLoad): Seated {
  const [outer, inner] = [ballSeat(bearing, 'outerRing', load), ballSeat(bearing, 'innerRing', load)]
  const { traits } = bearing.resolved
  const sharing: Sharing = {
    count: bearing.resolved.input.balls.count,
    exponent: traits.rolls === 'rollers' ? LINE_CONTACT : POINT_CONTACT,
    stiffness: seatsStiffness(traits, outer, inner),
    clearance: bearing.radialInternalClearance,
  }
  const depth = mm(load.dentFraction * bearing.resolved.ballDiameter)
  const limits = { outerRing: seatLimits(outer, depth), innerRing: seatLimits(inner, depth) }
  return {
    outer,
    inner,
    sharing,
    firstMark: weaker(limits, 'firstMark', sharing),
    dent: { ...weaker(limits, 'dent', sharing), depth },
    outerDent: limits.outerRing.dent,
  }
}

/** The ring that reaches it first, and the load of the bearing then. */
function weaker(limits: Readonly<Record<RingName, SeatLimits>>, of: keyof SeatLimits, sharing: Sharing): Limit {
  const part = limits.outerRing[of] < limits.innerRing[of] ? 'outerRing' : 'innerRing'
  const ballLoad = limits[part][of]
  return { part, ballLoad, load: ballLoad > 0 ? loadWhenBallCarries(ballLoad, sharing) : 0 }
}
