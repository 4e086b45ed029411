import { TERMS, type Terms } from '#src/words/terms.ts'
import { fetchPatiently } from './fetch-patiently.ts'
import { isJson, type Json, listOf, part, textOf } from './json.ts'
import { noteReach } from './reach.ts'
import { later } from './second-script.ts'

/** The reply of the service, or of this browser in its place, or that neither could be had. */
export type Reply =
  | { readonly kind: 'answer'; readonly body: Json }
  | {
      readonly kind: 'problem'
      readonly messages: readonly string[]
      /** The same by the name of the field that each is about. */
      readonly faults: ReadonlyMap<string, string>
    }
  | { readonly kind: 'unreached' }

/**
 * Asks the service. Sentences come in the words of the page, for the arrangement that is asked about; the second script must
 * have run, which has these words.
 *
 * @throws DOMException when `signal` breaks it off
 */
export async function ask(path: string, body: object, signal: AbortSignal): Promise<Reply> {
  let response: Response
  let reply: unknown
  try {
    const headers = { 'content-type': 'application/json' }
    response = await fetchPatiently(path, { method: 'POST', headers, body: JSON.stringify(body), signal })
    reply = await response.json()
  } catch (error) {
    if (signal.aborted) throw error
    return unreached()
  }
  // What is not JSON is not from the service: a proxy says, in words of its own, that nobody is behind it.
  if (!isJson(reply)) return unreached()
  const isFromHere = response.headers.get('x-answered-by') === 'browser'
  noteReach(isFromHere ? 'browser' : 'service')
  const terms = termsOf(body)
  if (response.ok) {
    return { kind: 'answer', body: part(inWords(reply, terms)) }
  }
  const rows = listOf(reply['errors']).map(part)
  const faults = rows.map(({ message, path: at }): [string, string] => [
    textOf(at).slice(1).replaceAll('/', '.'),
    faultInWords(textOf(message), textOf(at), terms),
  ])
  const messages = faults.map(([, message]) => message)
  return {
    kind: 'problem',
    messages: messages.length > 0 ? messages : [textOf(reply['detail'])],
    faults: new Map(faults),
  }
}

function unreached(): Reply {
  noteReach('nobody')
  return { kind: 'unreached' }
}

const faultInWords = (message: string, at: string, terms: Terms): string =>
  later()?.faultOnThePage(message, at, terms) ?? message

function termsOf(body: object): Terms {
  const { design, arrangement = part(design)['arrangement'] } = part(body)
  return TERMS[(arrangement ?? 'radial') as keyof typeof TERMS]
}

/** What the page sent comes back as it was. */
const ECHOES = ['input', 'design']

/** An answer whose sentences are those of the page. */
function inWords(value: unknown, terms: Terms): unknown {
  if (typeof value === 'string') return later()?.onThePage(value, terms)
  if (Array.isArray(value)) return value.map((each) => inWords(each, terms))
  if (!isJson(value)) return value
  const entries = Object.entries(value).map(([name, inner]) => [
    name,
    ECHOES.includes(name) ? inner : inWords(inner, terms),
  ])
  return Object.fromEntries(entries)
}
