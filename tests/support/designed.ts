import type fc from 'fast-check'
import {
  ARRANGEMENTS,
  type CagedDesign,
  type Design,
  type DesignInput,
  design,
  type FullRingDesign,
  type FullRingInput,
  type InputByArrangement,
  type ThrustDesign,
} from '#shared/bearing/arrangements.ts'
import { designOf } from '#shared/bearing/design.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
import type { Result } from '#shared/result.ts'

/** The design of two rings with a full ring between them, or every reason why there is none. */
export const fullRingDesign = (input: FullRingInput): Result<FullRingDesign, readonly Refusal[]> =>
  input.arrangement === 'roller' ? designOf(ARRANGEMENTS.roller, input) : designOf(ARRANGEMENTS.radial, input)

/** The design of an input that is known to have one. */
export const designed = (input: FullRingInput): FullRingDesign => known(fullRingDesign(input))

/** The same of plates, and of balls in a cage. */
export const thrustDesigned = (input: InputByArrangement['thrust']): ThrustDesign =>
  known(designOf(ARRANGEMENTS.thrust, input))
export const cagedDesigned = (input: InputByArrangement['caged']): CagedDesign =>
  known(designOf(ARRANGEMENTS.caged, input))

/** The same of any arrangement. */
export const anyDesigned = (input: DesignInput): Design => known(design(input))

function known<D>(made: Result<D, readonly Refusal[]>): D {
  if (!made.ok) throw new RangeError(`input must give a bearing, got ${JSON.stringify(made.error)}`)
  return made.value
}

/** The designs of those inputs that give a bearing; the others are passed over. */
export const valid = (inputs: fc.Arbitrary<FullRingInput>): fc.Arbitrary<FullRingDesign> => made(inputs, fullRingDesign)

/** The same of any arrangement. */
export const validOfAny = (inputs: fc.Arbitrary<DesignInput>): fc.Arbitrary<Design> => made(inputs, design)

const made = <I, D>(inputs: fc.Arbitrary<I>, make: (input: I) => Result<D, readonly Refusal[]>): fc.Arbitrary<D> =>
  inputs
    .map(make)
    .filter((result) => result.ok)
    .map(({ value }) => value)
