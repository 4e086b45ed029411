import { ApiError, configure } from './client.ts'

/* What a caller's program needs besides the functions of the client that Redocly generates. */

configure({ serverUrl: process.env['ADDRESS'] ?? '' })

export * from './client.ts'

/** The answer to a question that has one. */
export const answerTo = <Answer>(asking: Promise<Answer>): Promise<Answer> => asking

/** The problem document that comes instead of an answer. */
export async function problemOf(asking: Promise<unknown>): Promise<unknown> {
  const refusal = await asking.catch((error: unknown) => error)
  if (!(refusal instanceof ApiError)) throw new Error('must be refused')
  return refusal.body
}
