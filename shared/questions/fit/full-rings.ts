import { type FullRingBearing, fullRingsOf } from '#shared/bearing/arrangements.ts'
import { tightestBottomRadius, unequalBallGap } from '#shared/geometry/unequal-balls.ts'
import { fail, ok } from '#shared/result.ts'
import { mm } from '#shared/units/length.ts'
import { ballsOf, innerGrooveOf, outerGrooveOf } from './bearing-parts.ts'
import { type Fitted, gapBand, playBand, RINGS } from './fit-setup.ts'
import { bandAround, cutRings, otherBalls, pieceOf, remadePair } from './remade.ts'
import type { Change, Remade, Workpiece } from './rescue.ts'
import type { Subject } from './subject.ts'
import { unevenBalls } from './uneven-balls.ts'

/**
 * A finished outer ring lies in its gap band: half of the band on either side is two deviations.
 * Common practice, no source.
 */
const DEVIATIONS_IN_BAND = 4

/** Two rings with nothing to keep apart what rolls between them: the last one's gap tells how deep the outer groove is. */
export const FULL_RINGS: Fitted<FullRingBearing> = {
  parts: RINGS,
  setupOf(bearing, part) {
    const { resolved } = bearing
    const uneven = unevenBalls(resolved, bearing.outerRing.grooveBottomDiameter / 2, tightestBottomRadius)
    if (uneven.length > 0) return fail(uneven)
    if (part === 'inner') {
      const band = playBand(resolved.radialInternalClearance)
      return ok({
        resolved,
        subject: innerSubject(bearing),
        workpiece: workpieceOf(bearing, part),
        band,
      })
    }
    return ok({
      resolved,
      subject: outerSubject(bearing),
      workpiece: workpieceOf(bearing, 'outer'),
      band: gapBand(resolved),
    })
  },
}

const both = (bearing: FullRingBearing): Pick<Subject, 'balls' | 'outer'> => ({
  balls: ballsOf(bearing.resolved, bearing.outerRing.grooveBottomDiameter / 2, unequalBallGap),
  outer: outerGrooveOf(bearing),
})

const outerSubject = (bearing: FullRingBearing): Subject => ({
  cuts: 'outer',
  ...both(bearing),
  assemblyGap: bearing.assembly.assemblyGap,
})

/** The inner ring inside a full ring of balls, whose gap was brought into its band. */
const innerSubject = (bearing: FullRingBearing): Subject => ({
  cuts: 'inner',
  ...both(bearing),
  inner: innerGrooveOf(bearing),
  outerKnown: {
    by: 'gap',
    gap: bearing.ballGap,
    deviation: (bearing.resolved.maxBallGap - bearing.resolved.minBallGap) / DEVIATIONS_IN_BAND,
    assemblyGap: bearing.assembly.assemblyGap,
  },
})

const workpieceOf = (bearing: FullRingBearing, part: 'outer' | 'inner'): Workpiece => ({
  ...pieceOf(bearing, part),
  remade: (change) => remadeRings(bearing, change),
  gapOfUnequal: (x, diameters) => (x < tightestBottomRadius(diameters) ? undefined : unequalBallGap(mm(x), diameters)),
})

function remadeRings(bearing: FullRingBearing, change: Change): Remade | undefined {
  const { input } = bearing.resolved
  const made = fullRingsOf({
    ...input,
    balls: otherBalls(input, change),
    ...bandAround(change.gap),
    ...cutRings(bearing, change),
  })
  return made.ok ? remadePair(bearing, made.value, made.value.assembly.assemblyGap) : undefined
}
