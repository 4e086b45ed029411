import type { FastifyReply } from 'fastify'
import type { Refusal, Refused } from '#shared/bearing/refusal.ts'
import type { Units } from '#shared/units/length.ts'
import { type Fault, refuse } from '#src/http/problem.ts'
import { refusalSentence } from './refusal-sentence.ts'

/** Answers with every reason why there is no such bearing. */
export const refuseDesign = (reply: FastifyReply, refusals: readonly Refusal[], units: Units): FastifyReply =>
  refuse(reply, faultsOf(refusals, units, refusalSentence))

/** The same for the `design` inside a request: the reasons point there. */
export const refuseInnerDesign = (reply: FastifyReply, refusals: readonly Refusal[], units: Units): FastifyReply =>
  refuseDesign(
    reply,
    refusals.map((refusal) => ({ ...refusal, path: `/design${refusal.path}` })),
    units,
  )

/**
 * Answers with every reason why a question about a bearing has no answer. The reasons of the bearing itself are those
 * of the `design` inside the request, and point there.
 *
 * @param explainOwn puts the question's own reasons in words
 */
export function refuseQuestion<Own extends Placed>(
  reply: FastifyReply,
  refused: Refused<Own>,
  units: Units,
  explainOwn: Words<Own>,
): FastifyReply {
  if (refused.of === 'question') return refuse(reply, faultsOf(refused.refusals, units, explainOwn))
  return refuseInnerDesign(reply, refused.refusals, units)
}

type Placed = { readonly path: string }
type Words<R> = (refusal: R, units: Units) => string

const faultsOf = <R extends Placed>(refusals: readonly R[], units: Units, words: Words<R>): readonly Fault[] =>
  refusals.map((refusal) => ({ path: refusal.path, message: words(refusal, units) }))
