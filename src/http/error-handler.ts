import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify'
import { FaultList } from './fault-list.ts'
import { findFaults } from './faults.ts'
import { notValid, ProblemError, sendProblem } from './problem.ts'
import { isSchema } from './schema.ts'
import { tooLarge } from './too-large.ts'

/** For what the framework refuses on the way to a route: its own sentences name its functions and settings. */
const DETAILS: Readonly<Record<number, string>> = {
  400: 'The request could not be read.',
  404: 'There is nothing at this address.',
  408: 'The request took too long to arrive.',
  414: 'The address is too long: send the input as the body of a POST.',
  415: 'Send the input as JSON, with the header content-type: application/json.',
  429: 'Too many requests: wait, then try again.',
  503: 'The service is busy: wait a little, then try again.',
}

const BAD_ADDRESS = 'The address cannot be read: a % must be followed by two hexadecimal digits.'

/** What goes with a status: when to come back, what to send instead. */
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
  if (error.code === 'FST_ERR_BAD_URL') return sendProblem(reply, 400, BAD_ADDRESS)
  if (status === 413) return tooLarge(request, reply)
  const detail = DETAILS[status]
  if (detail !== undefined) return sendProblem(reply, status, detail, [], headersFor(status, reply))
  if (status < 500) return sendProblem(reply, status, 'The request could not be carried out.')
  request.log.error({ err: error }, 'request failed')
  return sendProblem(reply, 500, 'Something went wrong here, not in the request. Ask for it by its x-request-id.')
}

/** Who knows better when to come back has said so already. */
function headersFor(status: number, reply: FastifyReply): Readonly<Record<string, string>> {
  return reply.hasHeader('retry-after') ? {} : (HEADERS[status] ?? {})
}

function invalid(error: FastifyError, request: FastifyRequest): ProblemError {
  if (error.validationContext === 'body' && request.body === undefined)
    return notValid([{ path: '', message: 'the request has no body: send the input as JSON' }])
  const found = new FaultList()
  const { validationContext: context, validation: [first] = [] } = error
  const isQuery = context === 'querystring'
  const schema = isQuery ? request.routeOptions.schema?.querystring : request.routeOptions.schema?.body
  if (isSchema(schema))
    findFaults(found, isQuery ? request.query : request.body, schema, (id) => request.server.getSchema(id))
  // The validator has the last word: what it alone finds is told in its own words.
  if (found.isEmpty) found.add(() => ({ path: first?.instancePath ?? '', message: first?.message ?? 'is not valid' }))
  return notValid(found.told(), found.more)
}

/** Fastify's errors carry `statusCode`; anything else that is thrown is a bug of ours. */
function statusOf({ statusCode = 500 }: FastifyError): number {
  return statusCode >= 400 && statusCode <= 599 ? statusCode : 500
}
