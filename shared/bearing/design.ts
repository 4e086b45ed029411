import { ok, type Result } from '#shared/result.ts'
import { type Bearing, bearingOf } from './bearing.ts'
import type { DesignInput } from './design-input.ts'
import { type Dimension, dimensionsOf } from './dimensions.ts'
import { findingsOf } from './findings.ts'
import { withSuggestion } from './knobs.ts'
import type { Refusal } from './refusal.ts'
import type { Finding, Warning, WarningFacts } from './warning.ts'

/** A bearing, the table of what to cut, and what to watch. */
export interface Design {
  readonly bearing: Bearing
  readonly dimensions: readonly Dimension[]
  readonly warnings: readonly Warning[]
}

/**
 * What must I cut? Every size of both rings from balls, count and bore, with the gauges and the warnings.
 *
 * @param input lengths in millimetres, finite and above 0 (gaps, play, finish and scatter may be 0); ball count whole,
 *   at least 3; of each pair (`engagement` or `grooveDepth`, `wall` or `outsideDiameter`, …) one at the most
 * @returns the design, or every reason at once why there is no such bearing
 */
export function design(input: DesignInput): Result<Design, readonly Refusal[]> {
  const made = bearingOf(input)
  if (!made.ok) return made
  const bearing = made.value
  return ok({
    bearing,
    dimensions: dimensionsOf(bearing),
    warnings: findingsOf(bearing).map((finding) => withRemedy(input, finding)),
  })
}

/** A remedy is offered only where it has been tried: the same input with it has the same warning no more. */
function withRemedy(input: DesignInput, { severity, path, facts, remedies }: Finding): Warning {
  const suggestion = remedies.find((remedy) => {
    const mended = bearingOf(withSuggestion(input, remedy))
    return mended.ok && !findingsOf(mended.value).some((left) => isSame(left.facts, facts))
  })
  return suggestion === undefined ? { severity, path, facts } : { severity, path, facts, suggestion }
}

const isSame = (one: WarningFacts, other: WarningFacts): boolean =>
  family(one.code) === family(other.code) && ringOf(one) === ringOf(other)

const ringOf = (facts: WarningFacts): string => ('ring' in facts ? facts.ring : '')

/** Two codes for one trouble, worse and less bad: clearing one into the other is no remedy. */
function family(code: WarningFacts['code']): string {
  if (code === 'lands-touch' || code === 'lands-nearly-touch') return 'lands'
  if (code === 'groove-wider-than-ring' || code === 'shoulders-thin') return 'shoulders'
  return code
}
