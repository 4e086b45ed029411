import { STATUS_CODES } from 'node:http'
import type { FastifyReply } from 'fastify'
import { type Static, Type } from 'typebox'
import { refTo } from './schema.ts'

/** One thing that is wrong with the input: where (a JSON pointer, '' for the whole) and what, in plain words. */
export type Fault = { readonly path: string; readonly message: string }

const MEDIA_TYPE = 'application/problem+json'

/** So many faults tell a person everything; a list of 60,000 bad numbers would only fill the answer. */
const MOST_FAULTS = 50

/**
 * What kinds of problem there are, beside the plain HTTP ones (`about:blank`, RFC 9457 §4.2.1). These two carry `errors`
 * and so need a type of their own. The URIs are relative, for the service does not know its own address; they name the
 * kind and lead to no page.
 */
const NOT_VALID = { type: '/problems/not-valid', title: 'Not valid' }
const CANNOT_EXIST = { type: '/problems/cannot-exist', title: 'Cannot exist' }

export const Problem = Type.Object(
  {
    type: Type.String({
      description:
        '`/problems/not-valid`: the request is not readable or not of the schema. `/problems/cannot-exist`: it is ' +
        'readable, but no such thing can be made. `about:blank`: what the status says. A name, not a page.',
    }),
    title: Type.String({ description: 'The kind of problem, in a few words.' }),
    status: Type.Integer({ minimum: 400, maximum: 599, description: 'The HTTP status.' }),
    detail: Type.String({ description: 'What is wrong this time.' }),
    errors: Type.Optional(
      Type.Array(
        Type.Object({
          path: Type.String({ description: "A JSON pointer into the input; '' is the whole of it." }),
          message: Type.String({ description: 'What is wrong there, what was given, and what may stand there.' }),
        }),
        { description: 'Everything that is wrong with the input, all at once.' },
      ),
    ),
  },
  { $id: 'Problem', description: 'Why there is no answer (RFC 9457).' },
)
export type Problem = Static<typeof Problem>

/** The description of an answer that is a problem, for the `response` of a route's schema. */
export function problem(description: string) {
  return { description, content: { [MEDIA_TYPE]: { schema: refTo<typeof Problem>('Problem') } } }
}

/** Thrown where only the error handler can answer: in hooks, parsers and checks on the way to a route. */
export class ProblemError extends Error {
  readonly statusCode: number
  readonly faults: readonly Fault[]

  constructor(statusCode: number, detail: string, faults: readonly Fault[] = []) {
    super(detail)
    this.name = 'ProblemError'
    this.statusCode = statusCode
    this.faults = faults
  }
}

/** The input as a whole is fine to read, but wrong: 400 with every fault. */
export function notValid(faults: readonly Fault[]): ProblemError {
  return new ProblemError(
    400,
    count(faults, 'thing in the request is', 'things in the request are', 'not right'),
    faults,
  )
}

/** Readable, and impossible: 422 with every reason. */
export function refuse(reply: FastifyReply, faults: readonly Fault[]): FastifyReply {
  return sendProblem(reply, 422, count(faults, 'reason speaks', 'reasons speak', 'against it'), faults)
}

export function sendProblem(
  reply: FastifyReply,
  status: number,
  detail: string,
  faults: readonly Fault[] = [],
  headers: Readonly<Record<string, string>> = {},
): FastifyReply {
  // A problem is no version of the answer: what the route has already said about caching is not meant for it.
  reply.removeHeader('etag')
  return reply
    .code(status)
    .headers({ 'cache-control': 'no-store', ...headers })
    .type(MEDIA_TYPE)
    .send(Buffer.from(JSON.stringify(problemOf(status, detail, faults)))) // as a text it would be given a charset
}

/** A whole HTTP response for a connection on which no request could be read, so that there is nothing to reply to. */
export function rawProblem(status: number, detail: string, headers: readonly string[] = []): string {
  const body = JSON.stringify(problemOf(status, detail, []))
  return [
    `HTTP/1.1 ${status} ${STATUS_CODES[status]}`,
    `Content-Type: ${MEDIA_TYPE}`,
    `Content-Length: ${Buffer.byteLength(body)}`,
    'Cache-Control: no-store',
    'Connection: close',
    ...headers,
    '',
    body,
  ].join('\r\n')
}

function problemOf(status: number, detail: string, faults: readonly Fault[]): Problem {
  const plain = { type: 'about:blank', title: STATUS_CODES[status] ?? 'Error' }
  const { type, title } = status === 422 ? CANNOT_EXIST : faults.length > 0 ? NOT_VALID : plain
  return { type, title, status, detail, ...(faults.length > 0 && { errors: atMost(MOST_FAULTS, faults) }) }
}

function atMost(most: number, faults: readonly Fault[]): Fault[] {
  const more = faults.length - most
  return more > 0 ? [...faults.slice(0, most), { path: '', message: `and at least ${more} more` }] : [...faults]
}

function count(faults: readonly Fault[], one: string, many: string, rest: string): string {
  return `${faults.length} ${faults.length === 1 ? one : many} ${rest}: see errors.`
}
