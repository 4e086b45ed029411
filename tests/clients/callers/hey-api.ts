import { client } from './client/client.gen.ts'

/* What a caller's program needs besides the functions of the client that Hey API generates. */

client.setConfig({ baseUrl: process.env['ADDRESS'] ?? '' })

export * from './client/index.ts'

type Outcome<Answer> = { readonly data: Answer | undefined; readonly error?: unknown }

/** The answer to a question that has one. */
export async function answerTo<Answer>(asking: Promise<Outcome<Answer>>): Promise<NonNullable<Answer>> {
  const { data, error } = await asking
  if (data === undefined || data === null) throw new Error(JSON.stringify(error))
  return data
}

/** The problem document that comes instead of an answer. */
export async function problemOf(asking: Promise<Outcome<unknown>>): Promise<unknown> {
  const { error } = await asking
  if (error === undefined) throw new Error('must be refused')
  return error
}
