import { ARRANGEMENTS, type ThrustBearing } from '#shared/bearing/arrangements.ts'
import { ballGapOnCircle, tightestCircle } from '#shared/geometry/balls-on-a-circle.ts'
import { mm } from '#shared/units/length.ts'
import type { GrooveUnderWay, Remade, Remaking } from './groove-under-way.ts'

/**
 * The groove of a plate: x is the radius of its circle. A ring that is too tight is eased on the outer flank, which moves
 * the circle out by what is taken off, for balls that are pushed together go as far out as they can; the other plate is then
 * cut to the same circle. Neither the depth nor a film moves it.
 */
export function plateGroove(bearing: ThrustBearing): GrooveUnderWay {
  return {
    settled: bearing.settled,
    assemblyGap: mm(0),
    x: bearing.pitchRadius,
    pitchRadius: (x) => x,
    xForPitch: (radius) => radius,
    beginsAt: 0,
    gapPerX: bearing.gapPerPitchRadius,
    xPerFinish: 0,
    unequalGap: ballGapOnCircle,
    tightest: tightestCircle,
    furtherReadings: [],
    remade: (change) => remade(bearing, change),
    lined: () => undefined,
  }
}

/** Both plates as they stand, turned outside, with their grooves at x. */
function remade({ settled, plate }: ThrustBearing, { balls, band, keepsCutter }: Remaking): Remade | undefined {
  const { input, groove } = settled
  const made = ARRANGEMENTS.thrust.bearingOf({
    ...input,
    balls,
    plates: { grooveDepth: groove.depth, outsideDiameter: plate.outsideDiameter, thickness: plate.thickness },
    ...(keepsCutter ? { groove: { grooveRadius: groove.radius } } : {}),
    ...band,
  })
  if (!made.ok) return undefined
  const { plate: again, plateGap } = made.value
  return {
    groove: { grooveCircleDiameter: again.grooveCircleDiameter },
    sizes: { plateWall: again.wall, plateGap },
    engagement: again.grooveDepth / balls.diameter,
  }
}
