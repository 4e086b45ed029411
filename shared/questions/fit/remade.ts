import type { AnyInput, BallsInput, GapInput, RingsInput } from '#shared/bearing/resolve.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { isPlain } from '#shared/geometry/groove.ts'
import { mm } from '#shared/units/length.ts'
import { matingFaceAdjustment } from './mating-faces.ts'
import type { Change, Remade, Workpiece } from './rescue.ts'

/* The input of a bearing after a rescue: the wood stays as it is cut. */

/** Whether what rolls is of glass or steel, and knocks. */
export const isHard = ({ balls: { material } }: AnyInput): boolean => material === 'glass' || material === 'steel'

/** The balls of the input with another count or size, without the measurements of the old set. */
export function otherBalls({ balls }: AnyInput, { count, diameter }: Change): BallsInput {
  const { diameters: _measured, ...rest } = balls
  return { ...rest, count, diameter: mm(diameter) }
}

export const bandAround = (gap: number): GapInput => ({
  ballGap: mm(gap),
  minBallGap: mm(Math.min(0, gap)),
  maxBallGap: mm(Math.max(gap, 0)),
})

/**
 * The outer ring is turned already outside, its land stays, and so does the arc where the cutter does. Where an inner ring is cut
 * already, it keeps its groove.
 */
export function cutRings(
  { resolved, outerRing }: RingPair,
  change: Change,
): Pick<RingsInput, 'outerRing' | 'innerRing' | 'radialInternalClearance'> {
  const { outerGroove, innerGroove, input } = resolved
  const { outsideDiameter } = outerRing
  const play = change.inner === undefined ? {} : { radialInternalClearance: mm(change.inner.play) }
  if (isPlain(outerGroove)) return { outerRing: { outsideDiameter }, ...play }
  const depth = change.x - outerRing.landDiameter / 2
  const keepsLand = depth > 0 && depth < change.diameter / 2 && depth <= outerGroove.radius
  const arc = change.keepsCutter ? { grooveRadius: outerGroove.radius } : input.outerRing?.groove
  return {
    outerRing: {
      outsideDiameter,
      grooveDepth: mm(keepsLand ? depth : outerGroove.depth),
      ...(arc === undefined ? {} : { groove: arc }),
    },
    ...(change.inner === undefined
      ? {}
      : { innerRing: { grooveDepth: mm(change.inner.depth), groove: { grooveRadius: innerGroove.radius } } }),
    ...play,
  }
}

/** The remade sizes of a pair of rings. */
export const remadePair = (before: RingPair, made: RingPair, assemblyGap: number): Remade => ({
  grooveBottomDiameter: made.outerRing.grooveBottomDiameter,
  grooveDepth: made.outerRing.grooveDepth,
  assemblyGap,
  onEdges: (['outerRing', 'innerRing'] as const).some(
    (ring) => before[ring].seat === 'bottom' && made[ring].seat === 'edges',
  ),
  inner: {
    grooveBottomDiameter: made.innerRing.grooveBottomDiameter,
    landDiameter: made.innerRing.landDiameter,
    landGap: made.landGap,
  },
})

/** The workpiece facts that both rings of a pair share. */
export function pieceOf(pair: RingPair, part: 'outer' | 'inner'): Omit<Workpiece, 'remade'> {
  const { outerGroove, innerGroove, input } = pair.resolved
  const groove = part === 'outer' ? outerGroove : innerGroove
  return {
    ...(isPlain(groove) ? {} : { arc: groove.radius }),
    isHard: isHard(input),
    takesLining: true,
    innerAsDesigned: {
      grooveBottomDiameter: pair.innerRing.grooveBottomDiameter,
      radialInternalClearance: pair.radialInternalClearance,
    },
    matingFaces: (play, aim) => matingFaceAdjustment(pair, play, aim),
  }
}
