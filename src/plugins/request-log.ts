import type { IncomingMessage } from 'node:http'
import { type FastifyReply, type FastifyRequest, type FastifyServerOptions, LogController } from 'fastify'
import { type DestinationStream, destination, stdTimeFunctions } from 'pino'
import type { Config } from '#src/config.ts'

/** Letters, digits and a few signs: what proxies send. Anything else does not get into the log, nor back out. */
const REQUEST_ID = /^[\w.-]{1,64}$/

type LogOptions = Pick<FastifyServerOptions, 'logger' | 'logController' | 'genReqId'>

/** Where log lines go; standard output when it is not said. */
export type LogStream = { write(line: string): void }

export function requestLog(level: Config['logLevel'], stream: LogStream | undefined): LogOptions {
  return {
    genReqId: requestIds(),
    logController: new AnswerLog(),
    logger: level !== 'silent' && {
      level,
      base: null,
      timestamp: stdTimeFunctions.isoTime,
      // Fastify's own serializer of a request writes the address, and with it the query that a person sent.
      serializers: { req: ({ method }) => ({ method: method ?? '' }) },
      stream: stream ?? standardOutput(),
    },
  }
}

/** So much of what could not be written waits for room; what comes then is lost. */
const MOST_WAITING_BYTES = 1 << 20

/**
 * Standard output. A full disk behind it costs lines of the log and nothing else: pino's own stream would end the service, and one
 * that does not write at once would wait at the end until there is room.
 */
function standardOutput(): DestinationStream {
  const output = destination({ dest: 1, sync: true, maxLength: MOST_WAITING_BYTES })
  output.on('error', () => {})
  return output
}

/**
 * The caller's id when it is a plain word, so that a line here is found from a line there; else one of ours: a word for
 * this process, and a number. They are to be told apart, by people, not to be hard to guess.
 */
function requestIds(): (request: IncomingMessage) => string {
  const process = Math.random().toString(36).slice(2, 10)
  let count = 0
  return ({ headers }) => {
    const given = headers['x-request-id']
    if (typeof given === 'string' && REQUEST_ID.test(given)) return given
    count += 1
    return `${process}-${count}`
  }
}

/**
 * One line an answer, and at the usual level only where something went wrong: a line for every request, let alone
 * Fastify's two, costs a fifth of all requests per second, to say that nothing happened. `LOG_LEVEL=debug` shows all.
 * A line holds no input: the route's template stands for the address, and there are no headers and no bodies.
 */
class AnswerLog extends LogController {
  override incomingRequest(): void {}

  override routeNotFound(): void {}

  override requestCompleted(error: Error | null | undefined, request: FastifyRequest, reply: FastifyReply): void {
    const status = reply.statusCode
    const level = error ? 'error' : levelOf(status)
    if (level === 'debug' && !showsDebug(request)) return
    request.log[level](
      {
        method: request.method,
        route: request.routeOptions.url ?? null,
        status,
        ms: Math.round(reply.elapsedTime * 10) / 10,
        ...(error && { err: error }),
      },
      'answered',
    )
  }
}

/** 503 is said by design, and of a load as often as it goes on: nothing that someone should be woken for each time. */
function levelOf(status: number): 'error' | 'warn' | 'info' | 'debug' {
  if (status === 503) return 'warn'
  if (status >= 500) return 'error'
  return status >= 400 ? 'info' : 'debug'
}

function showsDebug({ log }: FastifyRequest): boolean {
  return log.level === 'debug' || log.level === 'trace'
}
