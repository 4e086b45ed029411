import type { RingName } from '#shared/bearing/refusal.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { contactModulus } from '#shared/contact/hertz.ts'
import { type Line, lineApproach } from '#shared/contact/line-contact.ts'
import { LINE_CONTACT } from '#shared/contact/load-distribution.ts'
import type { ResolvedLoad } from '#shared/questions/load/input.ts'
import type { BallSeat, Substance } from '#shared/questions/load/seat-load.ts'
import type { Mm } from '#shared/units/length.ts'

/** The most loaded of Z rollers without play carries 4.08 Fr / Z (Stribeck, line contact). From memory. */
const MOST_OF_ROLLERS = 4.08

/**
 * The seat of a roller on one ring's track, along its whole length. It gives a little less than in proportion: the K of K δ^1.1 is that
 * which is right for a load such as it has to carry.
 */
export function trackSeat(
  bearing: RingPair,
  ring: RingName,
  { contactRadius, rolling }: { readonly contactRadius: Mm; readonly rolling: number },
  { wood, ball, ...shared }: Substance,
  { radialLoad }: ResolvedLoad,
): BallSeat {
  const { resolved, [ring]: part } = bearing
  const { count, length = resolved.width } = resolved.input.balls
  const line: Line = { modulus: contactModulus(ball, wood), rolling, length }
  const on = { line, roller: { ...ball, radius: resolved.ballDiameter / 2 }, wall: { ...wood, thickness: part.wall } }
  const load = (MOST_OF_ROLLERS * radialLoad) / count
  const stiffness = load / Math.exp(LINE_CONTACT * Math.log(lineApproach(on, load)))
  return { ...shared, contactRadius, exponent: LINE_CONTACT, stiffness, on: { seat: 'track', line } }
}
