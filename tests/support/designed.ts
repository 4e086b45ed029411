import type fc from 'fast-check'
import { type AnyDesign, anyDesign, isCaged } from '#shared/bearing/any-design.ts'
import type { CagedDesign } from '#shared/bearing/caged-design.ts'
import { type Design, design } from '#shared/bearing/design.ts'
import type { DesignInput } from '#shared/bearing/design-input.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
import type { Result } from '#shared/result.ts'

/** The design of an input that is known to have one. */
export function designed(input: DesignInput): Design {
  const made = design(input)
  if (!made.ok) throw new RangeError(`input must give a bearing, got ${JSON.stringify(made.error)}`)
  return made.value
}

/** The same of any arrangement. */
export function anyDesigned(input: DesignInput): AnyDesign {
  const made = anyDesign(input, 'drawings')
  if (!made.ok) throw new RangeError(`input must give a bearing, got ${JSON.stringify(made.error)}`)
  return made.value
}

/** The same of balls in a cage. */
export function cagedDesigned(input: DesignInput): CagedDesign {
  const made = anyDesigned(input)
  if (!isCaged(made)) throw new RangeError(`input must be caged, got ${input.arrangement}`)
  return made
}

/** The designs of those inputs that give a bearing; the others are passed over. */
export const valid = (inputs: fc.Arbitrary<DesignInput>): fc.Arbitrary<Design> => made(inputs, design)

/** The same of any arrangement. */
export const validOfAny = (inputs: fc.Arbitrary<DesignInput>): fc.Arbitrary<AnyDesign> =>
  made(inputs, (input) => anyDesign(input, 'drawings'))

const made = <D>(
  inputs: fc.Arbitrary<DesignInput>,
  make: (input: DesignInput) => Result<D, readonly Refusal[]>,
): fc.Arbitrary<D> =>
  inputs
    .map(make)
    .filter((result) => result.ok)
    .map(({ value }) => value)
