import { connect } from 'node:net'
import fc from 'fast-check'
import type { Operation } from './document.ts'
import { type FuzzRequest, requestsTo } from './requests.ts'

/** What one connection sends without waiting for an answer. */
export type Flood = {
  readonly what: string
  readonly bytes: Buffer
  readonly requests: number
  /** Whether the answers are only read when all has been sent. */
  readonly readsLate: boolean
}

/** So many requests in one flood; the service cuts a connection on which more than a hundred wait. */
const MOST_REQUESTS = 300
/** So many bytes: it is the number of requests that is tried. */
const MOST_BYTES = 2_000_000

/** Addresses that cannot be read, lines that are none, requests that cost nothing. */
const SHORT = ['GET /%zz', 'GET /%', 'HEAD /health/live', 'GET /health/live', 'GET /v1/nothing', 'PUT /v1/design', 'X']

/** Floods of requests to an operation, of short ones, and of both in turn, whole or broken off at any byte. */
function floodsOf(operation: Operation): fc.Arbitrary<Flood> {
  const short = fc.constantFrom(...SHORT).map((line) => `${line} HTTP/1.1\r\nhost: a\r\n\r\n`)
  const drawn = requestsTo(operation).map(asSent)
  return fc
    .record({
      sent: fc.array(fc.oneof(short, drawn), { minLength: 1, maxLength: 3 }),
      requests: fc.oneof(fc.integer({ min: 1, max: 10 }), fc.integer({ min: 11, max: MOST_REQUESTS })),
      cut: fc.oneof({ arbitrary: fc.constant(0), weight: 3 }, fc.nat()),
      readsLate: fc.boolean(),
    })
    .map(({ sent, requests, cut, readsLate }) => {
      const turns = sent.map((text) => Buffer.from(text))
      const each = turns.reduce((bytes, { length }) => bytes + length, 0) / turns.length
      const many = Math.max(1, Math.min(requests, Math.floor(MOST_BYTES / each)))
      const bytes = Buffer.concat(
        Array.from({ length: many }, (_, index) => turns[index % turns.length] ?? Buffer.alloc(0)),
      )
      const what = `${many} requests, ${cut > 0 ? 'cut' : 'whole'}, ${readsLate ? 'read late' : 'read'}: ${sent.join('').slice(0, 2_000)}`
      return { what, bytes: cut > 0 ? bytes.subarray(0, cut % bytes.length) : bytes, requests: many, readsLate }
    })
}

function asSent({ method, target, headers, body }: FuzzRequest): string {
  const lines = Object.entries(headers).map(([name, value]) => `${name}: ${value}\r\n`)
  const length = body === undefined ? '' : `content-length: ${Buffer.byteLength(body)}\r\n`
  return `${method} ${target} HTTP/1.1\r\nhost: a\r\n${lines.join('')}${length}\r\n${body ?? ''}`
}

/**
 * Sends a flood on a connection of its own, then ends its side, and gives back all that came until the other side ended.
 *
 * @param deadlineMs after which a connection that is still open is an error
 */
function answersTo({ bytes, readsLate }: Flood, origin: string, deadlineMs: number): Promise<string> {
  const { hostname, port } = new URL(origin)
  const socket = connect(Number(port), hostname)
  let text = ''
  if (readsLate) socket.pause()
  socket.on('data', (part) => {
    text += part.toString('latin1')
  })
  socket.on('error', () => {}) // cut while we still send: what it said before has been read
  socket.end(bytes, () => socket.resume())
  return new Promise((resolve, reject) => {
    const late = setTimeout(() => {
      socket.destroy()
      reject(new Error(`a flood was still open after ${deadlineMs} ms`))
    }, deadlineMs)
    socket.on('close', () => {
      clearTimeout(late)
      resolve(text)
    })
  })
}

const STATUS = /HTTP\/1\.1 (\d{3}) [A-Z]/g

/** That a flood ends its connection in time, with no more answers than requests and none that speaks of a bug. */
export function floodsAt(operation: Operation, origin: string, deadlineMs: number) {
  return fc.asyncProperty(floodsOf(operation), async (flood) => {
    const text = await answersTo(flood, origin, deadlineMs)
    const statuses = [...text.matchAll(STATUS)].map(([, status]) => Number(status))
    const bugs = statuses.filter((status) => status >= 500 && status !== 503)
    if (bugs.length > 0) throw new Error(`${bugs[0]} to a flood: ${flood.what}`)
    if (statuses.length > flood.requests + 1) throw new Error(`${statuses.length} answers to ${flood.what}`)
  })
}
