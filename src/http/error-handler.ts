import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify'
import { notValidBy } from './not-valid.ts'
import { notValid, ProblemError, sendProblem } from './problem.ts'
import { isSchema, schemaNamesOf } from './schema.ts'
import * as sentences from './sentences.ts'
import { tooLarge } from './too-large.ts'

/** For what the framework refuses before a route: its own sentences name its functions and settings. */
const DETAILS: Readonly<Record<number, string>> = {
  400: sentences.UNREADABLE_REQUEST,
  404: sentences.NOT_FOUND,
  408: sentences.TOO_SLOW,
  414: sentences.ADDRESS_TOO_LONG,
  415: sentences.NOT_JSON_TYPE,
  429: sentences.TOO_MANY_REQUESTS,
  503: sentences.BUSY,
}

/** Headers of a status: when to come back, what to send instead. */
const HEADERS: Readonly<Record<number, Readonly<Record<string, string>>>> = {
  415: { accept: 'application/json' },
  429: { 'retry-after': '1' },
  503: { 'retry-after': '1' },
}

/** The one way out for whatever is thrown: a problem with every fault, or from 500 up a line in the log. */
export function errorHandler(error: FastifyError, request: FastifyRequest, reply: FastifyReply): FastifyReply {
  const problem = error.validation === undefined ? error : invalid(error, request)
  if (problem instanceof ProblemError)
    return sendProblem(
      reply,
      problem.statusCode,
      problem.message,
      problem.faults,
      headersFor(problem.statusCode, reply),
      problem.moreFaults,
    )
  const status = statusOf(error)
  if (status === 413) return tooLarge(request, reply)
  const detail = DETAILS[status]
  if (detail !== undefined) return sendProblem(reply, status, detail, [], headersFor(status, reply))
  if (status < 500) return sendProblem(reply, status, sentences.NOT_CARRIED_OUT)
  request.log.error({ err: error }, 'request failed')
  return sendProblem(reply, 500, sentences.FAILED)
}

/** Who knows better when to come back has said so already. */
function headersFor(status: number, reply: FastifyReply): Readonly<Record<string, string>> {
  return reply.hasHeader('retry-after') ? {} : (HEADERS[status] ?? {})
}

function invalid(error: FastifyError, request: FastifyRequest): ProblemError {
  if (error.validationContext === 'body' && request.body === undefined)
    return notValid([{ path: '', message: sentences.NO_BODY }])
  const { validationContext: context, validation = [] } = error
  const isQuery = context === 'querystring'
  const schema = isQuery ? request.routeOptions.schema?.querystring : request.routeOptions.schema?.body
  const input = isQuery ? request.query : request.body
  return notValidBy(validation, input, isSchema(schema) ? schema : undefined, schemaNamesOf(request.server))
}

/** Fastify's errors carry `statusCode`; anything else that is thrown is a bug of ours. */
function statusOf({ statusCode = 500 }: FastifyError): number {
  return statusCode >= 400 && statusCode <= 599 ? statusCode : 500
}
