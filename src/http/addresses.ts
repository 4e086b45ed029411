import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { nearestName } from './nearest-name.ts'
import { sendProblem } from './problem.ts'

/**
 * Longest address that is read. A list of two hundred measured balls in a query takes some 2000 characters; more than
 * four times that is no question about a bearing.
 */
const LONGEST_URL = 8_192

type Address = { readonly url: string; readonly pattern: RegExp; readonly methods: Set<string> }

/**
 * Answers what no route answers, before any body is read: 404 with the nearest path, 405 with `Allow`, `OPTIONS`, 414.
 * The router tells an unknown path and an unknown method apart for paths without parameters only, so the patterns of all
 * routes are kept here, and looked at when nothing else matched.
 */
export function answerUnrouted(app: FastifyInstance): void {
  const addresses = new Map<string, Address>()

  app.addHook('onRoute', ({ url, method }) => {
    if (url === '*') return // the plugin for CORS: it stands for no path of ours
    const address = addresses.get(url) ?? { url, pattern: patternOf(url), methods: new Set(['OPTIONS']) }
    for (const name of [method].flat()) address.methods.add(name)
    addresses.set(url, address)
  })

  const unrouted = (request: FastifyRequest, reply: FastifyReply): FastifyReply => {
    const path = request.url.split('?', 1)[0] ?? ''
    const methods = [...addresses.values()].filter(({ pattern }) => pattern.test(path)).flatMap((at) => [...at.methods])
    const allow = [...new Set(methods)].sort().join(', ')
    const isKnown = methods.length > 0
    if (request.method === 'OPTIONS' && (isKnown || isPreflight(request)))
      return reply
        .code(204)
        .headers(isKnown ? { allow } : {})
        .send()
    // A route that knows the method has sent the request here itself: a file that is not there, for one.
    if (!isKnown || methods.includes(request.method))
      return sendProblem(reply, 404, nothingAt(path, [...addresses.keys()]))
    return sendProblem(reply, 405, `${request.method} is not allowed here: use ${allow}.`, [], { allow })
  }

  app.addHook('onRequest', (request, reply, done) => {
    if (request.raw.url !== undefined && request.raw.url.length > LONGEST_URL)
      sendProblem(reply, 414, `The address is longer than ${LONGEST_URL} characters: send the input as a POST.`)
    else if (request.is404 || request.method === 'OPTIONS') unrouted(request, reply)
    else done()
  })
  app.setNotFoundHandler(unrouted)
}

/** A route's pattern as a regular expression: `:name` is a piece of a path, `*` the rest of it. */
function patternOf(url: string): RegExp {
  const source = url.replace(/:\w+|\*|[^\w/-]/g, (part) => {
    if (part === '*') return '.*'
    return part.startsWith(':') ? '[^/]+?' : `\\${part}`
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
  const hint = nearest === undefined ? 'The paths stand in /openapi.json.' : `Did you mean ${nearest}?`
  return `There is nothing at this address. ${hint}`
}
