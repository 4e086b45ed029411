import { queryText } from '#src/http/query-text.ts'
import { faultOnThePage, onThePage } from '#src/words/kiosk/bearing.ts'

/** The reply of the service, or of this browser in its place, or that neither could be had. */
export type Reply =
  | { readonly kind: 'answer'; readonly body: Json; readonly isFromHere: boolean }
  | { readonly kind: 'problem'; readonly messages: readonly string[] }
  | { readonly kind: 'unreached' }

/** An answer as plain JSON, read with care: the service may be newer than the page. */
export type Json = { readonly [name: string]: unknown }

/** The service takes at most ten seconds for an answer; a network that is silent for longer brings none. */
const LONGEST_MS = 15_000

/**
 * Asks the service.
 *
 * @throws DOMException when `signal` breaks it off
 */
export const ask = (path: string, body: object, signal: AbortSignal): Promise<Reply> =>
  fetched(path, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }, signal)

/**
 * What the service shows by itself.
 *
 * @throws DOMException when `signal` breaks it off
 */
export const show = (path: string, signal: AbortSignal): Promise<Reply> => fetched(path, {}, signal)

/** What is not JSON is not from the service: a proxy says, in words of its own, that nobody is behind it. */
async function fetched(path: string, request: RequestInit, signal: AbortSignal): Promise<Reply> {
  let response: Response
  let reply: unknown
  try {
    const limit = AbortSignal.any([signal, AbortSignal.timeout(LONGEST_MS)])
    response = await fetch(path, { ...request, signal: limit })
    reply = await response.json()
  } catch (error) {
    if (signal.aborted) throw error
    return { kind: 'unreached' }
  }
  if (!isJson(reply)) return { kind: 'unreached' }
  if (response.ok) {
    const isFromHere = response.headers.get('x-answered-by') === 'browser'
    return { kind: 'answer', body: reply, isFromHere }
  }
  const faults = listOf(reply['errors']).map(part)
  const messages = faults.map((fault) => faultOnThePage(textOf(fault['message']), textOf(fault['path'])))
  return { kind: 'problem', messages: messages.length > 0 ? messages : [textOf(reply['detail'])] }
}

const isJson = (value: unknown): value is Json => typeof value === 'object' && value !== null && !Array.isArray(value)

export const part = (value: unknown): Json => (isJson(value) ? value : {})
export const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : [])
export const textOf = (value: unknown): string => (typeof value === 'string' ? onThePage(value) : '')
export const numberOf = (value: unknown): number => (typeof value === 'number' ? value : Number.NaN)

/** The sentences of a list of faults, warnings, cautions or options. */
export const messagesOf = (rows: unknown): readonly string[] =>
  listOf(rows)
    .map((row) => textOf(part(row)['message']))
    .filter((message) => message !== '')

/** A bearing of the page as the query of an address: it has no list that a query could not carry. */
export function queryOf(request: object): string {
  const query = queryText(request)
  if (query === undefined) throw new RangeError('request must fit into a query')
  return query
}
