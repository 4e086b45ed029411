import { ok, type Result } from '#shared/result.ts'
import type { Question } from './arrangement.ts'
import { asAsked, type Make } from './asked.ts'
import { type Bearing, bearingOf } from './bearing.ts'
import { isWithinBounds } from './bounds.ts'
import type { DesignInput } from './design-input.ts'
import { type Dimension, dimensionsOf } from './dimensions.ts'
import { findingsOf } from './findings.ts'
import type { Refusal } from './refusal.ts'
import type { SettledBalls } from './settle.ts'
import { type Suggestion, withSuggestion } from './suggestion.ts'
import type { Finding, Warning, WarningFacts } from './warning.ts'

/** A bearing of whatever arrangement, the table of what to cut, and what to watch. */
export interface DesignOf<B> {
  readonly bearing: B
  readonly dimensions: readonly Dimension[]
  readonly warnings: readonly Warning[]
}
export type Design = DesignOf<Bearing>

/** What a design is made with, by the arrangement. */
interface Ways<B> {
  readonly make: Make<B>
  readonly dimensionsOf: (bearing: B) => readonly Dimension[]
  readonly findingsOf: (bearing: B) => readonly Finding[]
}

/** How a design of an arrangement is made, in its own ways. */
export function designIn<B extends { readonly settled: SettledBalls }>({ make, dimensionsOf, findingsOf }: Ways<B>) {
  const makeAsked = asAsked(make)
  const look = (mended: DesignInput): readonly Finding[] | undefined => {
    const again = make(mended)
    return again.ok ? findingsOf(again.value) : undefined
  }
  return (input: DesignInput, question: Question = 'design'): Result<DesignOf<B>, readonly Refusal[]> => {
    const made = makeAsked(input, question)
    if (!made.ok) return made
    const bearing = made.value
    return ok({
      bearing,
      dimensions: dimensionsOf(bearing),
      warnings: warningsOf(findingsOf(bearing), [input, bearing.settled.input], look),
    })
  }
}

/**
 * What must I cut? Every size of both rings from balls, count and bore, with the gauges and the warnings.
 *
 * @param input lengths in millimetres, finite and above 0 (gaps, play, finish and scatter may be 0); ball count whole,
 *   at least 3; of each pair (`engagement` or `grooveDepth`, `wall` or `outsideDiameter`, …) one at the most
 * @param question what it is asked for
 * @returns the design, or every reason at once why there is no such bearing
 */
export const design = designIn<Bearing>({ make: bearingOf, dimensionsOf, findingsOf })

/** What is found about the bearing of an input; undefined where it has none. */
type Look = (input: DesignInput) => readonly Finding[] | undefined

/**
 * Findings with their remedies tried. A remedy is offered only where, taken into the caller's input, and as well into the
 * whole one that is echoed, it gives a bearing that has the same warning no more.
 */
function warningsOf(findings: readonly Finding[], inputs: readonly DesignInput[], look: Look): readonly Warning[] {
  return findings.map(({ severity, path, facts, remedies }) => {
    const suggestion = remedies.find((remedy) => inputs.every((input) => isCleared(input, remedy, facts, look)))
    return suggestion === undefined ? { severity, path, facts } : { severity, path, facts, suggestion }
  })
}

function isCleared(input: DesignInput, remedy: Suggestion, facts: WarningFacts, look: Look): boolean {
  if (!isWithinBounds(remedy, input.units)) return false
  const left = look(withSuggestion(input, remedy))
  return left !== undefined && !left.some((finding) => isSame(finding.facts, facts))
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
