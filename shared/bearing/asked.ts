import { fail, type Result } from '#shared/result.ts'
import { nameOf, type Question, traitsOf } from './arrangement.ts'
import { beyondBounds } from './bounds.ts'
import type { DesignInput } from './design-input.ts'
import type { Refusal } from './refusal.ts'
import type { SettledBalls } from './settle.ts'

/** Makes the bearing of an input, of whatever arrangement, or says every reason at once why there is none. */
export type Make<B> = (input: DesignInput) => Result<B, readonly Refusal[]>

/** The same for a question that not every arrangement can be asked. */
export type MakeFor<B> = (input: DesignInput, question: Question) => Result<B, readonly Refusal[]>

/** Why a question has no answer of an arrangement; nothing where it has. */
export function notAnswered(input: Pick<DesignInput, 'arrangement'>, question: Question): readonly Refusal[] {
  if (traitsOf(input).answers.includes(question)) return []
  return [{ code: 'not-answered', path: '/arrangement', arrangement: nameOf(input), question }]
}

/** Makes bearings for questions. */
export const forQuestion =
  <B>(make: Make<B>): MakeFor<B> =>
  (input, question) => {
    const unanswered = notAnswered(input, question)
    return unanswered.length > 0 ? fail(unanswered) : make(input)
  }

/**
 * The same of designs as a caller sent them: those whose whole input, defaults and all, could be sent again. That is to be
 * asked wherever the whole input is given back.
 */
export const asAsked = <B extends { readonly settled: SettledBalls }>(make: Make<B>): MakeFor<B> => {
  const makeFor = forQuestion(make)
  return (input, question) => {
    const made = makeFor(input, question)
    if (!made.ok) return made
    const beyond = beyondBounds(made.value.settled.input)
    return beyond.length > 0 ? fail(beyond) : made
  }
}
