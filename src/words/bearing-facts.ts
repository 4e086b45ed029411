import { type Design, isOfPlates } from '#shared/bearing/arrangements.ts'
import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import type { BallMaterial } from '#shared/bearing/fields.ts'
import type { Mm, Units } from '#shared/units/length.ts'

/** What a title, a caption or a description says of a bearing as a whole. */
export interface BearingFacts {
  readonly count: number
  readonly material: BallMaterial
  readonly ballDiameter: Mm
  readonly outside: Mm
  readonly bore: Mm
  readonly units: Units
}

export function bearingFacts(design: Design): BearingFacts {
  const { resolved } = design.bearing
  const { units, balls } = resolved.input
  const { count, material = BALL_MATERIAL } = balls
  const [outside, bore] = isOfPlates(design)
    ? [design.bearing.plate.outsideDiameter, design.bearing.plate.boreDiameter]
    : [design.bearing.outerRing.outsideDiameter, design.bearing.innerRing.boreDiameter]
  return { count, material, ballDiameter: resolved.ballDiameter, outside, bore, units }
}
