import { fewBalls, finding, LEAST_WALL, length, reaches, stepOf } from '#shared/bearing/findings.ts'
import type { Finding } from '#shared/bearing/warning.ts'
import { mm } from '#shared/units/length.ts'
import { stepUp } from '#shared/units/step.ts'
import type { FootstepBearing } from './geometry.ts'

export function footstepFindings({ resolved }: FootstepBearing): readonly Finding[] {
  const least = mm(LEAST_WALL * resolved.ballDiameter)
  const thin = { code: 'outer-wall-thin', wall: resolved.wall, least } as const
  // The first is tried and found wanting: a wall of nothing at all is no remedy.
  const remedies = length('/cup/wall', mm(least / 2), stepUp(least, stepOf(resolved)))
  return [
    ...fewBalls(resolved),
    ...(reaches(resolved.wall, least) ? [] : [finding('risk', '/cup/wall', thin, ...remedies)]),
  ]
}
