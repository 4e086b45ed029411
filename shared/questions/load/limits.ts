import type { PartName } from '#shared/bearing/refusal.ts'
import { SCATTER } from '#shared/data/wood-strength.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { type BallSeat, loadThatDents } from './seat-load.ts'

/** A load of the bearing that leaves a dent of some depth, that of its most loaded ball [N], and the part that is dented. */
export interface Limit<Part extends PartName = PartName> {
  readonly load: number
  readonly ballLoad: number
  readonly part: Part
  readonly depth: Mm
}

/** The seats of the most loaded ball, and what the bearing carries when that ball carries so much [N]. */
export interface Carrying<Part extends PartName = PartName> {
  readonly seats: readonly { readonly part: Part; readonly seat: BallSeat }[]
  loadWhen(ballLoad: number): number
}

/**
 * The load that first leaves a dent of this depth, in whichever seat.
 *
 * @param share of the average hardness that the wood has
 * @throws RangeError where there is no seat
 */
export function limitAt<Part extends PartName>({ seats, loadWhen }: Carrying<Part>, depth: Mm, share = 1): Limit<Part> {
  const [weakest] = seats
    .map(({ part, seat }) => ({ part, ballLoad: loadThatDents(seat, depth, share) }))
    .toSorted((one, other) => one.ballLoad - other.ballLoad)
  if (weakest === undefined) throw new RangeError('there must be a seat')
  return { ...weakest, load: loadWhen(weakest.ballLoad), depth }
}

/** Depth of a first mark over the ball diameter: no deeper than fine sanding leaves. Common practice, no source. */
const MARK = 0.001

/** From this depth on a dent counts as a mark: never deeper than the dent that ruins the bearing. */
export const markDepth = (ballDiameter: Mm, dentFraction: number): Mm => mm(Math.min(MARK, dentFraction) * ballDiameter)

/** One board in twenty is softer than this share of its wood's average: a normal distribution's 5 %. */
const SOFTEST = 1 - 1.645 * SCATTER.hardness.variation
/** The part of a load, repeated at every turn, that the jolts of uneven balls leave. Common practice, no source. */
const JOLTS = 0.8

/** The share of its hardness that wood has left, by how the bearing is used. */
const USES = {
  still: SCATTER.underLastingLoad.share,
  slowHand: 1,
  steadyCrank: JOLTS * SCATTER.underRepeatedLoad.share,
} as const
export type Use = keyof typeof USES

/**
 * The load under which no ball leaves a mark, in nineteen boards of twenty: at rest for years, turned slowly by hand now and then,
 * or by a crank for hours. The law of the dent is that of `wood-dent.ts`, with a hardness that is so much lower.
 */
export const workingLoads = <Part extends PartName>(
  carrying: Carrying<Part>,
  mark: Mm,
): Readonly<Record<Use, Limit<Part>>> => ({
  still: limitAt(carrying, mark, SOFTEST * USES.still),
  slowHand: limitAt(carrying, mark, SOFTEST * USES.slowHand),
  steadyCrank: limitAt(carrying, mark, SOFTEST * USES.steadyCrank),
})
