import type { Refusal, Refused } from '#shared/bearing/refusal.ts'
import type { Units } from '#shared/units/length.ts'
import { type Fault, type ProblemError, refused } from '#src/http/problem.ts'
import { CANNOT_BE_MADE, NO_ANSWER } from '#src/words/problem.ts'
import { refusalSentence } from '#src/words/refusal.ts'
import { type Terms, termsOf } from '#src/words/terms.ts'
import type { DesignRequest } from './design-input.ts'

/** The part of a design that its sentences depend on. */
type Worded = Pick<DesignRequest, 'units' | 'arrangement'>

/** The 422 with every reason why there is no such bearing. */
export const refusedDesign = (refusals: readonly Refusal[], design: Worded): ProblemError =>
  refused(detailOf(refusals), faultsOf(refusals, design, refusalSentence))

/**
 * The 422 with every reason why a question about a bearing has no answer. The reasons of the bearing itself come first.
 *
 * @param explainOwn puts the question's own reasons in words
 * @param at where the bearing stands in the request
 */
export function refusedQuestion<Own extends Placed>(
  { ofDesign, ofQuestion }: Refused<Own>,
  design: Worded,
  explainOwn: Words<Own>,
  at = '/design',
): ProblemError {
  const ofBearing = ofDesign.map((refusal) => ({ ...refusal, path: at + refusal.path }))
  return refused(detailOf(ofDesign), [
    ...faultsOf(ofBearing, design, refusalSentence),
    ...faultsOf(ofQuestion, design, explainOwn),
  ])
}

/** A design that can be made, but not on this path, is no reason to change the design. */
const detailOf = (refusals: readonly Refusal[]): string =>
  refusals.some(({ code }) => code !== 'not-answered') ? CANNOT_BE_MADE : NO_ANSWER

type Placed = { readonly path: string }
type Words<R> = (refusal: R, units: Units, terms: Terms) => string

const faultsOf = <R extends Placed>(refusals: readonly R[], design: Worded, words: Words<R>): readonly Fault[] =>
  refusals.map((refusal) => ({ path: refusal.path, message: words(refusal, design.units, termsOf(design)) }))
