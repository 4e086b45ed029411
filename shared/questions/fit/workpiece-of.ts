import { ARRANGEMENTS, type FullRingBearing, fullRingsOf, type ThrustBearing } from '#shared/bearing/arrangements.ts'
import type { AnyInput, BallsInput, GapInput, RingsInput } from '#shared/bearing/resolve.ts'
import { ballGapOnCircle, tightestCircle } from '#shared/geometry/balls-on-a-circle.ts'
import { isPlain } from '#shared/geometry/groove.ts'
import { tightestBottomRadius, unequalBallGap } from '#shared/geometry/unequal-balls.ts'
import { mm } from '#shared/units/length.ts'
import type { NewBalls, Remade, Workpiece } from './rescue.ts'

/* Today's bearings as pieces that can be rescued: beside `from-bearing.ts`, the other file that knows both. */

const isHard = ({ resolved }: Pick<FullRingBearing | ThrustBearing, 'resolved'>): boolean =>
  resolved.input.balls.material === 'glass' || resolved.input.balls.material === 'steel'

/** An outer ring as it stands. */
export const ringWorkpiece = (bearing: FullRingBearing): Workpiece => ({
  remade: (change) => remadeRing(bearing, change),
  gapOfUnequal: (x, diameters) => (x < tightestBottomRadius(diameters) ? undefined : unequalBallGap(mm(x), diameters)),
  ...(isPlain(bearing.resolved.outerGroove) ? {} : { arc: bearing.resolved.outerGroove.radius }),
  isHard: isHard(bearing),
  takesLining: true,
})

/** Both plates as they stand. */
export const plateWorkpiece = (bearing: ThrustBearing): Workpiece => ({
  remade: (change) => remadePlates(bearing, change),
  gapOfUnequal: (x, diameters) => (x < tightestCircle(diameters) ? undefined : ballGapOnCircle(mm(x), diameters)),
  arc: bearing.resolved.groove.radius,
  isHard: isHard(bearing),
  takesLining: false,
})

/** What the input says of the balls, with another count or size: measured ones are those of the old set. */
function ballsOf({ balls }: AnyInput, { count, diameter }: NewBalls): BallsInput {
  const { diameters: _measured, ...rest } = balls
  return { ...rest, count, diameter: mm(diameter) }
}

const bandAround = (gap: number): GapInput => ({
  ballGap: mm(gap),
  minBallGap: mm(Math.min(0, gap)),
  maxBallGap: mm(Math.max(gap, 0)),
})

/** The outer ring is turned already outside, its land stays, and so does the arc where the cutter does. */
function remadeRing(bearing: FullRingBearing, change: NewBalls): Remade | undefined {
  const { resolved, outerRing } = bearing
  const { outerGroove } = resolved
  const input: RingsInput = resolved.input
  const isTrack = isPlain(outerGroove)
  const depth = change.x - outerRing.landDiameter / 2
  const keepsLand = depth > 0 && depth < change.diameter / 2 && depth <= outerGroove.radius
  const own = input.outerRing?.groove
  const arc = change.keepsCutter ? { grooveRadius: outerGroove.radius } : own
  const cut: Pick<RingsInput, 'outerRing'> = {
    outerRing: isTrack
      ? { outsideDiameter: outerRing.outsideDiameter }
      : {
          outsideDiameter: outerRing.outsideDiameter,
          grooveDepth: mm(keepsLand ? depth : outerGroove.depth),
          ...(arc === undefined ? {} : { groove: arc }),
        },
  }
  const made = fullRingsOf({ ...resolved.input, balls: ballsOf(input, change), ...bandAround(change.gap), ...cut })
  if (!made.ok) return undefined
  const { outerRing: outer, innerRing, landGap, assembly } = made.value
  return {
    grooveBottomDiameter: outer.grooveBottomDiameter,
    grooveDepth: outer.grooveDepth,
    assemblyGap: assembly.assemblyGap,
    onEdges: outerRing.seat === 'bottom' && outer.seat === 'edges',
    inner: {
      grooveBottomDiameter: innerRing.grooveBottomDiameter,
      landDiameter: innerRing.landDiameter,
      landGap,
    },
  }
}

/** Plates turned outside and faced, with the groove on a circle of its own. */
function remadePlates({ resolved, plate }: ThrustBearing, change: NewBalls): Remade | undefined {
  const { input, groove } = resolved
  const made = ARRANGEMENTS.thrust.bearingOf({
    ...input,
    balls: ballsOf(input, change),
    ...bandAround(change.gap),
    plates: { grooveDepth: groove.depth, outsideDiameter: plate.outsideDiameter, thickness: plate.thickness },
    ...(change.keepsCutter ? { groove: { grooveRadius: groove.radius } } : {}),
  })
  if (!made.ok) return undefined
  const { plate: again } = made.value
  return {
    grooveBottomDiameter: again.grooveCircleDiameter,
    grooveDepth: again.grooveDepth,
    assemblyGap: 0,
    onEdges: plate.seat === 'bottom' && again.seat === 'edges',
  }
}
