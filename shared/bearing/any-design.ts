import type { Result } from '#shared/result.ts'
import { type Question, traitsOf } from './arrangement.ts'
import { type CagedDesign, cagedDesign } from './caged-design.ts'
import { type Design, design } from './design.ts'
import type { DesignInput } from './design-input.ts'
import type { Refusal } from './refusal.ts'
import { type ThrustDesign, thrustDesign } from './thrust-design.ts'

/** A design of any arrangement. */
export type AnyDesign = Design | ThrustDesign | CagedDesign

export const isOfPlates = (design: AnyDesign): design is ThrustDesign => 'plate' in design.bearing

export const isCaged = (design: AnyDesign): design is CagedDesign => 'cage' in design.bearing

/** What `design`, `thrustDesign` and `cagedDesign` say, by the arrangement asked for. */
export function anyDesign(input: DesignInput, question: Question): Result<AnyDesign, readonly Refusal[]> {
  const { members, ballSet } = traitsOf(input)
  if (members === 'plates') return thrustDesign(input, question)
  return ballSet === 'caged' ? cagedDesign(input, question) : design(input, question)
}
