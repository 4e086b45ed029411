import { ARRANGEMENTS, type ThrustBearing } from '#shared/bearing/arrangements.ts'
import { ballGapOnCircle, tightestCircle } from '#shared/geometry/balls-on-a-circle.ts'
import { ballsOf, WITHOUT_DEPTH } from '#shared/questions/fit/bearing-parts.ts'
import { type Fitted, gapBand } from '#shared/questions/fit/fit-setup.ts'
import { bandAround, isHard, otherBalls } from '#shared/questions/fit/remade.ts'
import type { Change, Remade } from '#shared/questions/fit/rescue.ts'
import { unevenBalls } from '#shared/questions/fit/uneven-balls.ts'
import { fail, ok } from '#shared/result.ts'
import { mm } from '#shared/units/length.ts'

/** The plates of a thrust bearing, both cut alike: their circle is opened. */
export const THRUST: Fitted<ThrustBearing> = {
  parts: ['plate'],
  setupOf(bearing) {
    const { resolved, pitchRadius } = bearing
    const uneven = unevenBalls(resolved, pitchRadius, tightestCircle)
    if (uneven.length > 0) return fail(uneven)
    return ok({
      resolved,
      subject: {
        cuts: 'outer',
        balls: ballsOf(resolved, pitchRadius, ballGapOnCircle),
        outer: { x: pitchRadius, depth: WITHOUT_DEPTH * resolved.ballDiameter, seat: { on: 'circle' }, xPerFinish: 0 },
        assemblyGap: 0,
      },
      workpiece: {
        remade: (change) => remadePlates(bearing, change),
        gapOfUnequal: (x, diameters) => (x < tightestCircle(diameters) ? undefined : ballGapOnCircle(mm(x), diameters)),
        arc: resolved.groove.radius,
        isHard: isHard(resolved.input),
        takesLining: false,
      },
      band: gapBand(resolved),
    })
  },
}

/** Plates turned outside and faced, with the groove on a circle of its own. */
function remadePlates({ resolved, plate }: ThrustBearing, change: Change): Remade | undefined {
  const { input, groove } = resolved
  const made = ARRANGEMENTS.thrust.bearingOf({
    ...input,
    balls: otherBalls(input, change),
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
