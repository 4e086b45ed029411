import type { Result } from '#shared/result.ts'
import { type Question, traitsOf } from './arrangement.ts'
import { bearingFor } from './bearing.ts'
import { cagedBearingFor } from './caged.ts'
import type { DesignInput } from './design-input.ts'
import type { Refusal } from './refusal.ts'
import type { RingPair } from './ring-pair.ts'

/** What `bearingFor` and `cagedBearingFor` say of the rings alone, for a question that asks after nothing else. */
export const ringsFor = (input: DesignInput, question: Question): Result<RingPair, readonly Refusal[]> =>
  traitsOf(input).ballSet === 'caged' ? cagedBearingFor(input, question) : bearingFor(input, question)
