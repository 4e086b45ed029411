import type { Result } from '#shared/result.ts'
import { type Question, traitsOf } from './arrangement.ts'
import { type Design, design } from './design.ts'
import type { DesignInput } from './design-input.ts'
import type { Refusal } from './refusal.ts'
import { type ThrustDesign, thrustDesign } from './thrust-design.ts'

/** A design of any arrangement. */
export type AnyDesign = Design | ThrustDesign

export const isOfPlates = (design: AnyDesign): design is ThrustDesign => 'plate' in design.bearing

/** What `design` and `thrustDesign` say, by the arrangement asked for. */
export const anyDesign = (input: DesignInput, question: Question): Result<AnyDesign, readonly Refusal[]> =>
  traitsOf(input).members === 'plates' ? thrustDesign(input, question) : design(input, question)
