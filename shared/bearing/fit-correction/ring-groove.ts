import { type FullRingBearing, fullRingsOf } from '#shared/bearing/arrangements.ts'
import type { RingsInput } from '#shared/bearing/resolve.ts'
import { isPlain } from '#shared/geometry/groove.ts'
import { grooveDepthForSeat, seatIn } from '#shared/geometry/seat.ts'
import { tightestBottomRadius, unequalBallGap } from '#shared/geometry/unequal-balls.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { GrooveUnderWay, Remade, Remaking } from './groove-under-way.ts'

/** A cut goes to its depth, and no further than a fifth of it beyond, where a groove's beginning is looked for. */
const ROUND_ITS_DEPTH = 1.2

/**
 * The groove, or the plain track, of an outer ring: x is its bottom radius. Balls on the edges are followed through the
 * seat, the land lying where the design has it.
 */
export function ringGroove(bearing: FullRingBearing): GrooveUnderWay {
  const { settled, outerRing, assembly } = bearing
  const { outerGroove } = settled
  const bottomRadius = mm(outerRing.grooveBottomDiameter / 2)
  const isTrack = isPlain(outerGroove)
  return {
    settled,
    assemblyGap: assembly.assemblyGap,
    x: bottomRadius,
    ...(outerRing.seat === 'edges' ? onEdges(bearing) : ON_BOTTOM),
    // A groove begins at its land; a plain hole is opened from wherever it was bored.
    beginsAt: isTrack ? 0 : bottomRadius - ROUND_ITS_DEPTH * outerGroove.depth,
    gapPerX: bearing.gapPerGrooveDepth,
    xPerFinish: 1,
    unequalGap: unequalBallGap,
    tightest: tightestBottomRadius,
    furtherReadings: isTrack ? [] : ['groove-depth'],
    remade: (change) => remade(bearing, change),
    lined: (thickness) => {
      if (isTrack) return {}
      const grooveRadius = mm(outerGroove.radius - thickness)
      return { grooveRadius }
    },
  }
}

type Standing = Pick<GrooveUnderWay, 'pitchRadius' | 'xForPitch'>

const ON_BOTTOM: Standing = {
  pitchRadius: (x, ballDiameter) => x - ballDiameter / 2,
  xForPitch: (radius, ballDiameter) => radius + ballDiameter / 2,
}

function onEdges({ outerRing, settled }: FullRingBearing): Standing {
  const landRadius = outerRing.landDiameter / 2
  const { radius: arc } = settled.outerGroove
  return {
    pitchRadius: (x, ballDiameter) => {
      const depth = Math.min(x - landRadius, arc)
      return depth > 0
        ? landRadius + seatIn({ radius: arc, depth: mm(depth) }, mm(ballDiameter)).depth - ballDiameter / 2
        : landRadius - ballDiameter / 2
    },
    xForPitch: (radius, ballDiameter) => {
      const seat = radius + ballDiameter / 2 - landRadius
      const depth = seat > 0 ? grooveDepthForSeat(mm(seat), arc, mm(ballDiameter)) : mm(0)
      return landRadius + (depth ?? arc)
    },
  }
}

/** A new inner ring in the outer ring as it stands: turned outside, with a groove to x. */
function remade(bearing: FullRingBearing, { balls, x, band, keepsCutter }: Remaking): Remade | undefined {
  const { input, outerGroove } = bearing.settled
  const depth = mm(x - bearing.outerRing.landDiameter / 2)
  const made = fullRingsOf({
    ...input,
    balls,
    ...cutAlready(bearing, keepsLand(bearing, depth, balls.diameter) ? depth : outerGroove.depth),
    ...(keepsCutter && !isPlain(outerGroove) ? { groove: { grooveRadius: outerGroove.radius } } : {}),
    ...band,
  })
  if (!made.ok) return undefined
  const { outerRing, innerRing, landGap } = made.value
  return {
    groove: { grooveBottomDiameter: outerRing.grooveBottomDiameter, grooveDepth: outerRing.grooveDepth },
    sizes: {
      landDiameter: outerRing.landDiameter,
      innerLandDiameter: innerRing.landDiameter,
      innerGrooveBottomDiameter: innerRing.grooveBottomDiameter,
      landGap,
      outerWall: outerRing.wall,
    },
    engagement: outerRing.grooveDepth / balls.diameter,
  }
}

/** Whether a groove so deep leaves the land where it is: not past the middle of the ball, and without an undercut. */
const keepsLand = ({ settled }: FullRingBearing, depth: Mm, ballDiameter: Mm): boolean =>
  depth > 0 && depth < ballDiameter / 2 && depth <= settled.outerGroove.radius

function cutAlready({ outerRing, settled }: FullRingBearing, grooveDepth: Mm): Pick<RingsInput, 'outerRing'> {
  const { outsideDiameter } = outerRing
  if (isPlain(settled.outerGroove)) return { outerRing: { outsideDiameter } }
  const { groove }: NonNullable<RingsInput['outerRing']> = settled.input.outerRing ?? {}
  return { outerRing: { outsideDiameter, grooveDepth, ...(groove === undefined ? {} : { groove }) } }
}
