import {
  fewBalls,
  fullRingShopFindings,
  gapFindings,
  landFindings,
  oneRingMustOpen,
  playFindings,
  plugFindings,
  RINGS,
  ringGrooveFindings,
  shoulderFindings,
  wallFindings,
} from '#shared/bearing/findings.ts'
import type { FullRings } from '#shared/bearing/full-rings.ts'
import type { Finding } from '#shared/bearing/warning.ts'

/** Everything about a radial bearing that is worth a warning, in the order in which a maker meets it. */
export const radialFindings = (bearing: FullRings): readonly Finding[] => [
  ...fewBalls(bearing.resolved),
  ...assemblyFindings(bearing),
  ...gapFindings(bearing),
  ...playFindings(bearing),
  ...RINGS.flatMap((ring) => ringGrooveFindings(bearing, ring)),
  ...landFindings(bearing),
  ...wallFindings(bearing),
  ...RINGS.flatMap((ring) => shoulderFindings(bearing, ring)),
  ...fullRingShopFindings(bearing),
  ...plugFindings(bearing),
]

/** Rings of one piece, and how many balls go in between them. */
function assemblyFindings({ resolved, assembly, eccentricFilling }: FullRings): readonly Finding[] {
  if (resolved.split !== 'none' || assembly.easiestWay === 'open-side') return []
  return oneRingMustOpen(resolved, eccentricFilling)
}
