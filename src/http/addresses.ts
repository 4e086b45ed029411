import type { IncomingMessage } from 'node:http'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { nearestName } from './nearest-name.ts'
import { sendProblem } from './problem.ts'
import { addressLongerThan, BAD_PATH, BAD_UTF8, methodNotAllowed, notFoundNear, notFoundSee } from './sentences.ts'

/**
 * Longest address that is read. A list of two hundred measured balls in a query takes some 2000 characters; more than
 * four times that is no question about a bearing.
 */
export const LONGEST_URL = 8_192

/** Stands for an address that cannot be read: it has no route, and no caller can send a blank in an address. */
const UNREADABLE = '/ '

/**
 * The address that the router gets. What it could not read, it would answer by itself, past every hook (past the bound on
 * requests sent ahead, too), so such an address is exchanged for one that has no route. Of the others, the name of the
 * server is dropped, and letters that need no `%` lose it (RFC 3986 §6.2.2.2): one path has one spelling from here on.
 */
export function routableUrl({ url = '', method }: IncomingMessage): string {
  if (url.length > LONGEST_URL) return UNREADABLE
  if (url === '*' && method === 'OPTIONS') return url
  const target = url.startsWith('/') ? url : withoutServer(url)
  if (target === undefined) return UNREADABLE
  const end = target.search(/[?#]/)
  const path = end === -1 ? target : target.slice(0, end)
  if (!path.includes('%')) return target
  return isDecodable(path) ? path.replace(/%[\da-f]{2}/gi, plainLetter) + target.slice(path.length) : UNREADABLE
}

function withoutServer(url: string): string | undefined {
  const [, rest] = /^https?:\/\/[^/?#]+(.*)$/is.exec(url) ?? []
  if (rest === undefined || !URL.canParse(url)) return undefined
  return rest.startsWith('/') ? rest : `/${rest}`
}

function isDecodable(path: string): boolean {
  try {
    decodeURIComponent(path)
    return true
  } catch {
    return false
  }
}

function plainLetter(escaped: string): string {
  const letter = String.fromCharCode(Number.parseInt(escaped.slice(1), 16))
  return /[\w.~-]/.test(letter) ? letter : escaped
}

/** Whether a route, by its template, is served on the port at which a request came in. */
export type IsServed = (route: string, request: FastifyRequest) => boolean

type Address = { readonly url: string; readonly pattern: RegExp; readonly methods: Set<string> }

/**
 * Answers what no route answers, before any body is read: 404 with the nearest path, 405 with `Allow`, `OPTIONS`, 414.
 * The router tells an unknown path and an unknown method apart for paths without parameters only, so the patterns of all
 * routes are kept here, and looked at when nothing else matched.
 */
export function answerUnrouted(app: FastifyInstance, isServed: IsServed): void {
  const addresses = new Map<string, Address>()

  app.addHook('onRoute', ({ url, method }) => {
    if (url === '*') return // the plugin for CORS: it stands for no path of ours
    const address = addresses.get(url) ?? { url, pattern: patternOf(url), methods: new Set(['OPTIONS']) }
    for (const name of [method].flat()) address.methods.add(name)
    addresses.set(url, address)
  })

  const unrouted = (request: FastifyRequest, reply: FastifyReply): FastifyReply => {
    const path = request.url.split('?', 1)[0] ?? ''
    const served = [...addresses.values()].filter(({ url }) => isServed(url, request))
    // `OPTIONS *` asks about the server as a whole (RFC 9110 §9.3.7).
    const matching = path === '*' ? served : served.filter(({ pattern }) => pattern.test(path))
    const methods = matching.flatMap((at) => [...at.methods])
    const allow = [...new Set(methods)].sort().join(', ')
    const isKnown = methods.length > 0
    if (request.method === 'OPTIONS' && (isKnown || isPreflight(request)))
      return reply
        .code(204)
        .headers(isKnown ? { allow } : {})
        .send()
    // A route that knows the method has sent the request here itself: a file that is not there, for one.
    if (!isKnown || methods.includes(request.method))
      return sendProblem(
        reply,
        404,
        nothingAt(
          path,
          served.map(({ url }) => url),
        ),
      )
    return sendProblem(reply, 405, methodNotAllowed(request.method, allow), [], { allow })
  }

  app.addHook('onRequest', (request, reply, done) => {
    const { originalUrl, is404, method, routeOptions } = request
    if (originalUrl.length > LONGEST_URL) sendProblem(reply, 414, addressLongerThan(LONGEST_URL))
    else if (request.url === UNREADABLE) sendProblem(reply, 400, whyUnreadable(originalUrl))
    else if (is404 || method === 'OPTIONS' || !isServed(routeOptions.url ?? '', request)) unrouted(request, reply)
    else done()
  })
  app.setNotFoundHandler(unrouted)
}

const whyUnreadable = (url: string): string => (/^(\/|https?:)/i.test(url) ? BAD_UTF8 : BAD_PATH)

/**
 * A route's pattern as a regular expression: `:name` is a piece of a path, `*` the rest of it. A piece ends at the sign that
 * follows its name, so that there is one way to match, and a long path without a match costs no more than a short one.
 */
function patternOf(url: string): RegExp {
  const source = url.replace(/:\w+|\*|[^\w/-]/g, (part, at: number) => {
    if (part === '*') return '.*'
    const next = url[at + part.length]
    return part.startsWith(':') ? `[^/${next === undefined || next === '/' ? '' : `\\${next}`}]+` : `\\${part}`
  })
  return new RegExp(`^${source}$`)
}

/** Asked by a browser before a script's request. Refused, it would hide from the script that the path is wrong. */
function isPreflight({ headers }: FastifyRequest): boolean {
  return headers.origin !== undefined && headers['access-control-request-method'] !== undefined
}

function nothingAt(path: string, known: readonly string[]): string {
  const nearest = nearestName(
    path,
    known.filter((url) => !/[:*]/.test(url)),
  )
  return nearest === undefined ? notFoundSee('/openapi.json') : notFoundNear(nearest)
}
