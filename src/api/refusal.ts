import type { FastifyReply } from 'fastify'
import type { Refusal, Refused } from '#shared/bearing/refusal.ts'
import type { Units } from '#shared/units/length.ts'
import { type Fault, refuse } from '#src/http/problem.ts'
import { wordedFor } from '#src/words/arrangement-words.ts'
import { refusalSentence } from '#src/words/refusal.ts'
import type { DesignRequest } from './design-input.ts'

/** What a refusal speaks of: in whose units, and of what arrangement. */
type SpokenOf = Pick<DesignRequest, 'units' | 'arrangement'>

/** Answers with every reason why there is no such bearing. */
export const refuseDesign = (reply: FastifyReply, refusals: readonly Refusal[], design: SpokenOf): FastifyReply =>
  refuse(reply, faultsOf(refusals, design, refusalSentence))

/**
 * Answers with every reason why a question about a bearing has no answer. The reasons of the bearing itself are those
 * of the `design` inside the request, point there, and come first.
 *
 * @param explainOwn puts the question's own reasons in words
 */
export function refuseQuestion<Own extends Placed>(
  reply: FastifyReply,
  { ofDesign, ofQuestion }: Refused<Own>,
  design: SpokenOf,
  explainOwn: Words<Own>,
): FastifyReply {
  return refuse(reply, [
    ...faultsOf(ofDesign.map(insideDesign), design, refusalSentence),
    ...faultsOf(ofQuestion, design, explainOwn),
  ])
}

const insideDesign = (refusal: Refusal): Refusal => ({ ...refusal, path: `/design${refusal.path}` })

type Placed = { readonly path: string }
type Words<R> = (refusal: R, units: Units) => string

const faultsOf = <R extends Placed>(refusals: readonly R[], design: SpokenOf, words: Words<R>): readonly Fault[] =>
  wordedFor(
    design,
    refusals.map((refusal) => ({ path: refusal.path, message: words(refusal, design.units) })),
  )
