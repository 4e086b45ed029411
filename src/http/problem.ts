import { STATUS_CODES } from 'node:http'
import type { FastifyReply, FastifyRequest } from 'fastify'
import { type Static, Type } from 'typebox'
import { setAnswerHeaders } from './answer-headers.ts'
import { escaped, type PageParts, page } from './html.ts'
import { refTo } from './schema.ts'
import { CANNOT_BE_SHOWN, hasErrors, toDo } from './sentences.ts'

declare module 'fastify' {
  interface FastifyContextConfig {
    /** The page as which this request gets its refusal, where it asks for a page: a frame shows no problem document. */
    problemPage?: (request: FastifyRequest) => ProblemPage | undefined
  }
}

/** A link, with its words. */
export type WayBack = { readonly address: string; readonly words: string }

/** What a page of a refusal has beside the refusal. */
type ProblemPage = PageParts & {
  readonly policy: string
  /** What people call the place of a fault; undefined where it has no name but that of the input. */
  readonly nameOf?: ((path: string) => string | undefined) | undefined
  /** Where a person can correct the request. */
  readonly wayBack?: WayBack | undefined
}

/** One error in the input: where it is (a JSON pointer, '' for the whole input) and what is wrong. */
export type Fault = { readonly path: string; readonly message: string }

const MEDIA_TYPE = 'application/problem+json'

/** More faults than this tell a person nothing new; a list of 500 bad numbers would only fill the answer. */
export const MOST_FAULTS = 50

/**
 * Kinds of problem besides the plain HTTP ones (`about:blank`, RFC 9457 §4.2.1). These two carry `errors`
 * and so need a type of their own. The URIs are relative, for the service does not know its own address; they name the
 * kind and lead to no page.
 */
const NOT_VALID = { type: '/problems/not-valid', title: 'Not valid' }
const CANNOT_EXIST = { type: '/problems/cannot-exist', title: 'Cannot exist' }

export const Problem = Type.Object(
  {
    type: Type.String({
      description:
        'The kind of problem. `/problems/not-valid`: the request cannot be read or does not match its schema. ' +
        '`/problems/cannot-exist`: the request is valid but asks for something impossible. `about:blank`: the status ' +
        'says it all. This is a name, not the address of a page.',
    }),
    title: Type.String({ description: 'The kind of problem, in a few words.' }),
    status: Type.Integer({ minimum: 400, maximum: 599, description: 'The HTTP status.' }),
    detail: Type.String({ description: 'Detail of the problem, in a sentence.' }),
    errors: Type.Optional(
      Type.Array(
        Type.Object({
          path: Type.String({ description: "A JSON pointer into the input; '' is the whole input." }),
          message: Type.String({ description: 'The error at that place, the value given, and the values allowed.' }),
        }),
        {
          maxItems: MOST_FAULTS,
          description: `Every error in the input, all at once, up to ${MOST_FAULTS}.`,
        },
      ),
    ),
    moreErrors: Type.Optional(
      Type.Integer({
        minimum: 1,
        description:
          'The least number of further errors that `errors` does not list. The entries of a list that is too long are ' +
          'not checked, so there may be more.',
      }),
    ),
  },
  { $id: 'Problem', description: 'Why there is no answer (RFC 9457).' },
)
export type Problem = Static<typeof Problem>

/** The description of an answer that is a problem, for the `response` of a route's schema. */
export function problem(description: string) {
  return { description, content: { [MEDIA_TYPE]: { schema: refTo<typeof Problem>('Problem') } } }
}

/** Thrown by whatever cannot answer: hooks, parsers, checks on the way to a route, and routes. The error handler sends it. */
export class ProblemError extends Error {
  readonly statusCode: number
  readonly faults: readonly Fault[]
  /** How many more there are at least. */
  readonly moreFaults: number

  constructor(statusCode: number, detail: string, faults: readonly Fault[] = [], moreFaults = 0) {
    super(detail)
    this.name = 'ProblemError'
    this.statusCode = statusCode
    this.faults = faults
    this.moreFaults = moreFaults
  }
}

/**
 * The input is not valid: 400 with every fault.
 *
 * @param more how many faults there are at least beside these
 */
export const notValid = (faults: readonly Fault[], more = 0): ProblemError =>
  new ProblemError(400, hasErrors(faults.length + more, more === 0), faults, more)

/**
 * The input is valid and asks for something impossible: 422 with every reason.
 *
 * @param detail what is impossible, in one sentence
 */
export const refused = (detail: string, faults: readonly Fault[]): ProblemError => new ProblemError(422, detail, faults)

export function sendProblem(
  reply: FastifyReply,
  status: number,
  detail: string,
  faults: readonly Fault[] = [],
  headers: Readonly<Record<string, string>> = {},
  moreFaults = 0,
): FastifyReply {
  const pageParts = reply.request.routeOptions.config?.problemPage?.(reply.request)
  // A problem is not a version of the answer: what the route has already said of keeping and showing that does not hold.
  setAnswerHeaders(reply, { cacheControl: 'no-store', pagePolicy: pageParts?.policy })
  reply.code(status).headers(headers)
  if (pageParts !== undefined)
    return reply.type('text/html; charset=utf-8').send(problemPage(detail, faults, pageParts))
  return reply.type(MEDIA_TYPE).send(Buffer.from(JSON.stringify(problemOf(status, detail, faults, moreFaults)))) // as a text it would be given a charset
}

/** The same for a person, in the frame or the window in which the answer would have been. */
function problemPage(detail: string, faults: readonly Fault[], parts: ProblemPage): string {
  const { wayBack } = parts
  const heading = faults.length === 0 ? detail : CANNOT_BE_SHOWN
  const rows = faults.map(({ path, message }) => {
    const name = parts.nameOf?.(path) ?? path.slice(1).replaceAll('/', '.')
    return `<li>${name === '' ? '' : `<b>${escaped(name)}:</b> `}${escaped(wayBack === undefined ? message : toDo(message))}</li>`
  })
  const list = rows.length === 0 ? '' : `<ul>${rows.join('')}</ul>`
  const link = wayBack && `<p><a href="${escaped(wayBack.address)}">${escaped(wayBack.words)}</a></p>`
  return page(
    heading,
    parts,
    `<main id="answer" class="refused"><div role="alert"><h1>${escaped(heading)}</h1>${list}</div>${link ?? ''}</main>`,
  )
}

/**
 * A whole HTTP response for a connection on which no request could be read, so that there is nothing to reply to.
 *
 * @param headers beside those of its content: `headersOfUnread`, and what goes with its status
 */
export function rawProblem(status: number, detail: string, headers: Readonly<Record<string, string>>): string {
  const body = JSON.stringify(problemOf(status, detail, [], 0))
  return [
    `HTTP/1.1 ${status} ${STATUS_CODES[status]}`,
    `Content-Type: ${MEDIA_TYPE}`,
    `Content-Length: ${Buffer.byteLength(body)}`,
    'Connection: close',
    ...Object.entries(headers).map(([name, value]) => `${name}: ${value}`),
    '',
    body,
  ].join('\r\n')
}

function problemOf(status: number, detail: string, faults: readonly Fault[], moreFaults: number): Problem {
  const plain = { type: 'about:blank', title: STATUS_CODES[status] ?? 'Error' }
  const { type, title } = status === 422 ? CANNOT_EXIST : faults.length > 0 ? NOT_VALID : plain
  const errors = faults.slice(0, MOST_FAULTS)
  const moreErrors = faults.length - errors.length + moreFaults
  return { type, title, status, detail, ...(errors.length > 0 && { errors }), ...(moreErrors > 0 && { moreErrors }) }
}
