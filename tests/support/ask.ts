import type { Readable } from 'node:stream'
import { request } from 'undici'
import { expect } from 'vitest'

type Asked = {
  readonly method?: 'GET' | 'HEAD' | 'POST' | 'PUT' | 'DELETE' | 'OPTIONS'
  readonly headers?: Readonly<Record<string, string>>
  readonly body?: string | Buffer | Readable
}

export type Answered = {
  readonly status: number
  readonly headers: Readonly<Record<string, string | string[] | undefined>>
  readonly text: string
}

/** One request over a real socket, and what came back of it. */
export async function ask(address: string, { method = 'GET', headers = {}, body }: Asked = {}): Promise<Answered> {
  const answer = await request(address, { method, headers: { ...headers }, ...(body !== undefined && { body }) })
  return { status: answer.statusCode, headers: answer.headers, text: await answer.body.text() }
}

/** `POST` of JSON: a text as it is, anything else as JSON. */
export function post(
  address: string,
  body: unknown,
  headers: Readonly<Record<string, string>> = {},
): Promise<Answered> {
  return ask(address, {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...headers },
    body: typeof body === 'string' ? body : JSON.stringify(body),
  })
}

export type ProblemSeen = {
  readonly type: string
  readonly title: string
  readonly status: number
  readonly detail: string
  readonly errors?: readonly { readonly path: string; readonly message: string }[]
  readonly moreErrors?: number
}

/** Holds an answer to be a whole problem document of that status, with nothing of our code in it; gives it back. */
export function problemIn({ status, headers, text }: Answered, expected: number): ProblemSeen {
  expect(status, text).toBe(expected)
  expect(headers['content-type']).toBe('application/problem+json')
  expect(headers['cache-control']).toBe('no-store')
  expect(text).not.toMatch(/node_modules|\.ts\b|\bat .*:\d+:\d+/)
  const problem: ProblemSeen = JSON.parse(text)
  expect(problem).toMatchObject({ type: expect.any(String), title: expect.any(String), status: expected })
  expect(problem.detail.length).toBeGreaterThan(0)
  for (const { path, message } of problem.errors ?? []) {
    expect(path).toMatch(/^(\/.*)?$/s)
    expect(message.length).toBeGreaterThan(0)
  }
  return problem
}

/** The faults of a 400, as `path: message`. */
export function faultsIn(answer: Answered): readonly string[] {
  return (problemIn(answer, 400).errors ?? []).map(({ path, message }) => `${path}: ${message}`)
}
