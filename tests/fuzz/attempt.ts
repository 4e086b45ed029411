import fc from 'fast-check'
import type { Dispatcher } from 'undici'
import { faultsOfAnswer } from './answers.ts'
import type { Operation } from './document.ts'
import { type FuzzRequest, requestsTo } from './requests.ts'

/** Told of every request that was answered. */
export type Witness = (request: FuzzRequest, status: number, ms: number) => void

/**
 * That every answer to an operation is one that the document describes, for whatever is sent to it.
 *
 * @param deadlineMs after which an answer that has not come is a fault
 */
export function attemptsAt(
  operation: Operation,
  server: Dispatcher,
  origin: string,
  witness: Witness = () => {},
  deadlineMs?: number,
) {
  return fc.asyncProperty(requestsTo(operation), async (request) => {
    const before = performance.now()
    const { method, target, headers, body } = request
    const signal = deadlineMs === undefined ? null : AbortSignal.timeout(deadlineMs)
    const sent = await server.request({
      origin,
      path: target,
      method,
      headers: { ...headers },
      body: body ?? null,
      signal,
    })
    const answer = {
      status: sent.statusCode,
      headers: sent.headers,
      body: Buffer.from(await sent.body.arrayBuffer()),
    }
    witness(request, answer.status, performance.now() - before)
    const faults = faultsOfAnswer(operation, request, answer)
    if (faults.length > 0) throw new Error(`${method} ${operation.path}: ${faults.join('; ')}`)
  })
}
