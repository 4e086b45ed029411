import {
  atLeast,
  fewBalls,
  finding,
  fullRingShopFindings,
  gapFindings,
  landFindings,
  playFindings,
  plugFindings,
  reaches,
  wallFindings,
} from '#shared/bearing/findings.ts'
import type { Finding } from '#shared/bearing/warning.ts'
import { mm } from '#shared/units/length.ts'
import type { RollerBearing } from './geometry.ts'

/** In roller diameters: a shorter roller turns askew. Common practice, no source. */
const LEAST_ROLLER_LENGTH = 1

/** Everything about a roller bearing that is worth a warning, in the order in which a maker meets it. */
export const rollerFindings = (bearing: RollerBearing): readonly Finding[] => [
  ...fewBalls(bearing.resolved),
  ...gapFindings(bearing),
  ...playFindings(bearing),
  ...lengthFindings(bearing),
  ...landFindings(bearing),
  ...wallFindings(bearing),
  ...fullRingShopFindings(bearing),
  ...plugFindings(bearing),
]

function lengthFindings({ resolved }: RollerBearing): readonly Finding[] {
  const least = mm(LEAST_ROLLER_LENGTH * resolved.ballDiameter)
  if (reaches(resolved.rollerLength, least)) return []
  const facts = { code: 'rollers-turn-askew', length: resolved.rollerLength, least } as const
  return [finding('risk', '/balls/length', facts, ...atLeast(resolved, '/balls/length', least))]
}
