import { ARRANGEMENT_NAMES, type Question } from '#shared/bearing/arrangements.ts'
import { inList } from '#src/words/list.ts'

/** The sentence of an operation's description that says which arrangements it serves. */
export function servedBy(...questions: readonly Pick<Question, 'serves'>[]): string {
  const names = ARRANGEMENT_NAMES.filter((name) => questions.some(({ serves }) => serves.includes(name)))
  return `It serves ${inList(names.map((name) => `\`${name}\``))} bearings.`
}

/** A question that every arrangement answers. */
export const EVERY_ARRANGEMENT: Pick<Question, 'serves'> = { serves: ARRANGEMENT_NAMES }
