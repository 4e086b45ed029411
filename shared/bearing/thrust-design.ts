import { ok, type Result } from '#shared/result.ts'
import type { Question } from './arrangement.ts'
import { warningsOf } from './design.ts'
import type { DesignInput } from './design-input.ts'
import { type Dimension, plateDimensionsOf } from './dimensions.ts'
import { plateFindingsOf } from './plate-findings.ts'
import { type ThrustBearing, thrustBearingAsked, thrustBearingOf } from './plates.ts'
import type { Refusal } from './refusal.ts'
import type { Warning } from './warning.ts'

/** A thrust bearing, the table of what to cut, and what to watch. */
export interface ThrustDesign {
  readonly bearing: ThrustBearing
  readonly dimensions: readonly Dimension[]
  readonly warnings: readonly Warning[]
}

/**
 * What must I cut, for a turntable on balls? What `design` says of rings, of two plates.
 *
 * @param input as for `design`
 * @param question what it is asked for
 * @returns the design, or every reason at once why there is no such bearing
 */
export function thrustDesign(
  input: DesignInput,
  question: Question = 'design',
): Result<ThrustDesign, readonly Refusal[]> {
  const made = thrustBearingAsked(input, question)
  if (!made.ok) return made
  const bearing = made.value
  const look = (mended: DesignInput) => {
    const again = thrustBearingOf(mended)
    return again.ok ? plateFindingsOf(again.value) : undefined
  }
  return ok({
    bearing,
    dimensions: plateDimensionsOf(bearing),
    warnings: warningsOf(plateFindingsOf(bearing), [input, bearing.settled.input], look),
  })
}
