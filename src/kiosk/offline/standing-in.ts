import { escaped, page } from '#src/http/html.ts'
import { readBearing } from '#src/kiosk/job/bearing.ts'
import { OFFLINE } from '#src/words/kiosk/offline.ts'
import { type LocalAnswer, localAnswer } from './answers.ts'

/*
 * Answers in the place of a service that cannot be reached. The service comes first: it may be newer. What a proxy says, that
 * nobody is behind it, is not the word of the service, and what takes too long is not waited for where the browser has an answer.
 */

const PATHS = '/v1'
const PATIENCE_MS = 4_000

/** For a sheet that only the service can make: a slow network may take so long to bring it. */
const DOWNLOAD_MS = 60_000

/** Where a reply comes from, for the page to say. */
const HEADERS = { 'x-answered-by': 'browser' }

/** Whether the service itself has answered. It numbers every request; a page that a proxy sends instead is not an answer. */
function isOfService({ method }: Request, { headers }: Response): boolean {
  const type = headers.get('content-type') ?? ''
  return (
    headers.has('x-request-id') &&
    (method === 'GET' ? headers.has('x-engine') || type.includes(JSON_SIGN) : type.includes(JSON_SIGN))
  )
}
const JSON_SIGN = 'json'

/** Whether a request is for a path of the service. */
export const isQuestion = ({ pathname }: URL): boolean => pathname.startsWith(`${PATHS}/`)

const isPrinted = ({ pathname, searchParams }: URL): boolean =>
  pathname.endsWith('.pdf') || searchParams.get('format') === 'pdf'

export async function answerTo(request: Request): Promise<Response> {
  const copy = request.clone()
  const patience = isPrinted(new URL(request.url)) ? DOWNLOAD_MS : PATIENCE_MS
  try {
    const response = await fetch(request, {
      signal: AbortSignal.any([request.signal, AbortSignal.timeout(patience)]),
    })
    if (isOfService(copy, response) && (await arrivesWhole(response))) return response
  } catch {
    // Out of reach, or too slow.
  }
  const local = await answerHere(copy).catch(() => undefined)
  if (local !== undefined) return responseOf(local)
  return request.mode === 'navigate'
    ? responseOf({ status: 503, mediaType: 'text/html', body: withoutSheet(new URL(request.url)) })
    : Response.error()
}

/** A page instead of a sheet that only the service can make, with a way to what this browser can draw by itself. */
function withoutSheet({ pathname, search }: URL): string {
  const onScreen = pathname.endsWith('.pdf')
    ? pathname.replace(/\.pdf$/, pathname.includes('assembly') ? '.html' : '.svg') + search
    : pathname + search.replace('format=pdf', 'format=html')
  const link = `<p><a href="${escaped(onScreen)}">${OFFLINE.onScreen}</a></p>`
  return page(OFFLINE.title, { style: STYLE }, `<h1>${OFFLINE.title}</h1><p>${OFFLINE.notHere}</p>${link}`)
}

const STYLE =
  ':root{color-scheme:light dark}body{max-width:40rem;margin:2rem auto;padding:0 1rem;font:1.1rem/1.5 system-ui,sans-serif}a{display:inline-block;padding:.75rem 0}'

/** A network may drop in the middle of an answer: then this rejects, once the request's patience is at its end. */
async function arrivesWhole(response: Response): Promise<boolean> {
  await response.clone().arrayBuffer()
  return true
}

async function answerHere(request: Request): Promise<LocalAnswer | undefined> {
  const { pathname, searchParams } = new URL(request.url)
  const path = pathname.slice(PATHS.length)
  if (request.method === 'POST') return localAnswer({ method: 'POST', path, input: await request.json() })
  return localAnswer({ method: 'GET', path, input: inputOf(searchParams) })
}

/** Beside the bearing, what a path of sheets may be told. */
const OPTIONS = ['format', 'paper'] as const

/** A query of the page as the input that it stands for. */
function inputOf(query: URLSearchParams): object {
  const options = OPTIONS.flatMap((name) => (query.has(name) ? [[name, query.get(name)]] : []))
  const texts = Object.fromEntries([...query].filter(([name]) => !OPTIONS.some((option) => option === name)))
  return { ...readBearing(texts).request, ...Object.fromEntries(options) }
}

const responseOf = ({ status, mediaType, body }: LocalAnswer): Response =>
  new Response(body, { status, headers: { ...HEADERS, 'content-type': `${mediaType}; charset=utf-8` } })
