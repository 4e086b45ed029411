import {
  atLeast,
  depthRemedies,
  fewBalls,
  finding,
  grooveFindings,
  LEAST_WALL,
  moreWoodInside,
  outerWallFindings,
  plugFindings,
  reaches,
  shopFindings,
} from '#shared/bearing/findings.ts'
import { depthPath } from '#shared/bearing/resolve.ts'
import type { Finding } from '#shared/bearing/warning.ts'
import { grooveDepthForSeat } from '#shared/geometry/seat.ts'
import { mm } from '#shared/units/length.ts'
import type { ThrustBearing } from './geometry.ts'
import { PLATE_ENGAGEMENT } from './resolve.ts'

/** In ball diameters: plates nearer than this rub when one of them warps. Common practice, no source. */
const LEAST_PLATE_GAP = 0.1

/** Everything about a thrust bearing that is worth a warning. What rings and plates have in common is in `findings.ts`. */
export function thrustFindings(bearing: ThrustBearing): readonly Finding[] {
  const { resolved, plate, gauge } = bearing
  return [
    ...fewBalls(resolved),
    ...grooveFindings(resolved, 'plates', plate, PLATE_ENGAGEMENT),
    ...faceFindings(bearing),
    ...woodFindings(bearing),
    ...shopFindings(bearing, [
      ['grooveCircleDiameter', plate.grooveCircleDiameter, 1],
      ['gaugeDiameter', gauge.nominalDiameter, 1],
    ]),
    ...plugFindings(bearing),
  ]
}

function faceFindings({ resolved, plate, plateGap }: ThrustBearing): readonly Finding[] {
  const least = mm(LEAST_PLATE_GAP * resolved.ballDiameter)
  if (reaches(plateGap, least)) return []
  const seat = mm((resolved.ballDiameter - least) / 2)
  const depth = grooveDepthForSeat(seat, plate.grooveRadius, resolved.ballDiameter)
  const remedies = depth === undefined ? [] : depthRemedies(resolved, 'plates', depth, 'down')
  const facts = { code: 'plates-nearly-meet', plateGap, least } as const
  return [finding('risk', depthPath(resolved.input, 'plates'), facts, ...remedies)]
}

/** Wood outside the groove, inside it and under it. */
function woodFindings({ resolved, plate }: ThrustBearing): readonly Finding[] {
  const least = mm(LEAST_WALL * resolved.ballDiameter)
  const edge = plate.grooveCircleDiameter + plate.grooveWidth
  const found = [...outerWallFindings(resolved, 'plates', plate.wall, edge)]
  if (!reaches(plate.innerWall, least)) {
    const missing = least - plate.innerWall
    const facts = { code: 'inner-wall-thin', wall: plate.innerWall, least } as const
    const remedies = moreWoodInside(
      resolved,
      plate.boreDiameter - 2 * missing,
      plate.grooveCircleDiameter / 2 + missing,
    )
    found.push(finding('risk', '/bore', facts, ...remedies))
  }
  if (!reaches(plate.floor, least)) {
    const [path, size] = ['/plates/thickness', mm(plate.grooveDepth + least)] as const
    found.push(
      finding('risk', path, { code: 'plate-thin', floor: plate.floor, least }, ...atLeast(resolved, path, size)),
    )
  }
  return found
}
