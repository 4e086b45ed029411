import { type ArrangementName, nameOf } from '#shared/bearing/arrangement.ts'
import { JSON_TYPE } from '#src/http/media-type.ts'

/**
 * A sister's answer has other fields than that of the usual bearing. It is JSON all the same, and says which by a parameter of
 * its media type: whoever takes JSON takes it, and for whoever never asks for a sister nothing has another shape.
 */
export const ANSWER_TYPES = {
  radial: JSON_TYPE,
  thrust: 'application/json; arrangement=thrust',
  roller: 'application/json; arrangement=roller',
  caged: 'application/json; arrangement=caged',
} as const satisfies Readonly<Record<ArrangementName, string>>

/** The media type of what is answered to a body that no schema has seen yet: to one that it will refuse, any. */
export function answerTypeOf(body: unknown): string {
  const { arrangement }: { readonly arrangement?: unknown } = Object(body)
  const name = Object.keys(ANSWER_TYPES).find((known) => known === arrangement)
  return ANSWER_TYPES[nameOf(name === undefined ? {} : { arrangement: name as ArrangementName })]
}

/** The same on a path where only some of the sisters have fields of their own. */
export function answerTypeAmong(answers: Readonly<Record<string, unknown>>, design: unknown): string {
  const own = answerTypeOf(design)
  return Object.hasOwn(answers, own) ? own : JSON_TYPE
}
