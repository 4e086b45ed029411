import { connect, type Socket } from 'node:net'
import type { FastifyRateLimitStore, FastifyRateLimitStoreCtor } from '@fastify/rate-limit'
import type { FastifyInstance } from 'fastify'
import type { StoreAddress } from '#src/config.ts'

type Answer = (error: Error | null, value: readonly number[]) => void
type Count = { readonly current: number; readonly ttl: number }

/** One more for a caller, and how long its minute still lasts: one step, so that no count is left without its end. */
const COUNT =
  "local n = redis.call('INCR', KEYS[1]) if n == 1 then redis.call('PEXPIRE', KEYS[1], ARGV[1]) end " +
  "return { n, redis.call('PTTL', KEYS[1]) }"

const KEY = 'racewright:requests:'
/** Longer than a store in the same house ever takes; a request does not wait for one that is gone. */
const PATIENCE_MS = 250
/** So long nothing is asked of a store that was not there. */
const RETRY_MS = 1_000

/**
 * Counts that several replicas share, in a server that speaks RESP, the protocol of Redis and its kin. The plugin wants
 * something that it can call with `new`; where no count comes back, the request passes.
 */
export function sharedStore(app: FastifyInstance, address: StoreAddress): FastifyRateLimitStoreCtor {
  const client = storeClient(address, (error) => app.log.warn({ code: error.message }, 'no shared store: not counted'))
  app.addHook('onClose', async () => client.close())
  return class implements FastifyRateLimitStore {
    incr(key: string, done: (error: Error | null, count?: Count) => void, windowMs = 60_000): void {
      client.ask(['EVAL', COUNT, '1', KEY + key, String(windowMs)], (error, [current, ttl]) => {
        if (error !== null || current === undefined || ttl === undefined) done(error ?? new Error('no count'))
        else done(null, { current, ttl: Math.max(0, ttl) })
      })
    }

    child(): FastifyRateLimitStore {
      return this
    }
  }
}

type Client = { ask(command: readonly string[], answer: Answer): void; close(): void }

/** One connection, opened when it is needed and again when it was lost; answers come in the order of the questions. */
function storeClient({ host, port, login }: StoreAddress, complain: (error: Error) => void): Client {
  let socket: Socket | undefined
  let waiting: Answer[] = []
  let lostAt = Number.NEGATIVE_INFINITY

  const lose = (error: Error): void => {
    if (socket === undefined) return
    socket.destroy()
    socket = undefined
    lostAt = performance.now()
    complain(error)
    const left = waiting
    waiting = []
    for (const answer of left) answer(error, [])
  }

  const open = (): Socket => {
    const opened = connect(port, host).setNoDelay().unref()
    const read = replies((error, numbers) => waiting.shift()?.(error, numbers))
    opened.on('data', (chunk) => read(chunk.toString('latin1')))
    opened.on('timeout', () => waiting.length > 0 && opened === socket && lose(new Error('ETIMEDOUT')))
    opened.on('error', (error: NodeJS.ErrnoException) => opened === socket && lose(new Error(error.code ?? 'ERROR')))
    opened.on('close', () => opened === socket && lose(new Error('ECONNRESET')))
    opened.setTimeout(PATIENCE_MS)
    socket = opened
    if (login.length > 0) send(opened, ['AUTH', ...login], (error) => error !== null && lose(error))
    return opened
  }

  const send = (to: Socket, command: readonly string[], answer: Answer): void => {
    waiting.push(answer)
    to.write(resp(command))
  }

  return {
    ask(command, answer) {
      if (socket === undefined && performance.now() - lostAt < RETRY_MS) answer(new Error('no store'), [])
      else send(socket ?? open(), command, answer)
    },
    close() {
      socket?.destroy()
      socket = undefined
    },
  }
}

/** A command as a list of texts, each with its length before it: nothing in a key can end it. */
function resp(command: readonly string[]): string {
  return [`*${command.length}`, ...command.flatMap((part) => [`$${Buffer.byteLength(part)}`, part]), ''].join('\r\n')
}

/** Reads what our commands are answered with: `+OK`, `-ERR …`, `:1`, and lists of numbers; one line each. */
function replies(answer: Answer): (text: string) => void {
  let rest = ''
  let numbers: number[] = []
  let missing = 0
  return (text) => {
    const lines = (rest + text).split('\r\n')
    rest = lines.pop() ?? ''
    for (const line of lines) {
      const value = Number(line.slice(1))
      if (line.startsWith('-')) answer(new Error(line.slice(1).split(' ', 1)[0]), [])
      else if (line.startsWith('*')) [numbers, missing] = [[], value]
      else if (missing > 0) {
        numbers.push(value)
        missing -= 1
        if (missing === 0) answer(null, numbers)
      } else answer(null, [value])
    }
  }
}
