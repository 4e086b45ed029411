import type { RadialInput } from '#shared/bearing/arrangements/radial/input.ts'
import type { FullRingInput } from '#shared/bearing/arrangements.ts'
import { checkOf } from '#shared/questions/tolerance/check.ts'
import { type Check, isOfPlates, type RingCheck } from '#shared/questions/tolerance/checked.ts'
import type { Contributors, Scatter, ToleranceCheckInput } from '#shared/questions/tolerance/input.ts'
import { type ToleranceCheck, toleranceCheck } from '#shared/questions/tolerance/tolerance-check.ts'
import { mm } from '#shared/units/length.ts'

/** An invented bearing: twelve balls of 16 mm on the bottoms of their grooves, a gap of 0.8 mm. */
export const DESIGN: RadialInput = {
  units: 'mm',
  balls: { count: 12, diameter: mm(16) },
  bore: mm(12),
  ballGap: mm(0.8),
  minBallGap: mm(0),
  maxBallGap: mm(2),
}

/** The same with grooves tighter than the balls, which ride on their edges. */
export const ON_EDGES: RadialInput = { ...DESIGN, groove: { conformity: 0.46 } }

export const normal = (standardDeviation: number, mean?: number): Scatter => ({
  kind: 'normal',
  standardDeviation: mm(standardDeviation),
  ...(mean === undefined ? {} : { mean: mm(mean) }),
})
export const uniform = (plusMinus: number): Scatter => ({ kind: 'uniform', plusMinus: mm(plusMinus) })
export const triangular = (plusMinus: number): Scatter => ({ kind: 'triangular', plusMinus: mm(plusMinus) })

/** By trials, a hundred thousand where it is not said how many. */
export function checkedAny(contributors: Contributors, more: Partial<ToleranceCheckInput> = {}): ToleranceCheck {
  const result = toleranceCheck({ design: DESIGN, contributors, trials: 100_000, ...more })
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return result.value
}

/** The same of rings. */
export function checked(
  contributors: Contributors,
  more: Partial<ToleranceCheckInput> = {},
): ToleranceCheck & { readonly check: RingCheck } {
  const any = checkedAny(contributors, more)
  return { ...any, check: ofRings(any.check) }
}

function ofRings(check: Check): RingCheck {
  if (isOfPlates(check)) throw new Error('the check must be one of rings')
  return check
}

export function resolvedCheck(contributors: Contributors, design: FullRingInput = DESIGN): RingCheck {
  const result = checkOf({ design, contributors })
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return ofRings(result.value)
}
