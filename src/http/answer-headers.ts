import { hash } from 'node:crypto'
import type { FastifyReply } from 'fastify'

/** The policy of an answer that is not a page: nothing in it may run or load, and no page may frame it. */
const NOT_A_PAGE = "default-src 'none'; frame-ancestors 'none'"

/** Headers of every answer, whether or not the request could be read. */
const ALWAYS = {
  'cross-origin-resource-policy': 'cross-origin',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
}

/** The parts of an answer that a script in a page may read. */
export type Readable = {
  /** The pages that may read it: all, none, or these origins. */
  readonly origins: '*' | false | readonly string[]
  /** The headers that it may read beside those that it may always. */
  readonly exposed: readonly string[]
}

type AnswerHeaders = {
  /** How long the answer may be kept, and by whom. */
  readonly cacheControl?: string
  /** The entity tag, with its quotes, and the build that computed the answer. */
  readonly kept?: { readonly etag: string; readonly engine: string }
  /** The policy of a page: what it may run and load, and who may frame it. An answer without it is not a page. */
  readonly pagePolicy?: string | undefined
}

/**
 * The only place that sets how an answer may be kept and shown. It says all of it each time, so that nothing said earlier
 * for another answer to the same request remains. A 304 needs the headers of its 200, since browsers and caches write them
 * over those of the answer they have: set them before deciding between the two.
 */
export function setAnswerHeaders(
  reply: FastifyReply,
  { cacheControl, kept, pagePolicy = NOT_A_PAGE }: AnswerHeaders,
): void {
  reply.header('content-security-policy', pagePolicy)
  setOrRemove(reply, 'cache-control', cacheControl)
  setOrRemove(reply, 'etag', kept?.etag)
  setOrRemove(reply, 'x-engine', kept?.engine)
}

/** Sets what stands on every answer; what the answer says of itself is added to it later. */
export function setStandingHeaders(reply: FastifyReply, requestId: string): void {
  setAnswerHeaders(reply, {})
  reply.headers(ALWAYS).header('x-request-id', requestId)
}

/** The same for an answer to what could not be read: who asked, and from which page, is not known. */
export function headersOfUnread({ origins, exposed }: Readable): Readonly<Record<string, string>> {
  const expose = { 'access-control-expose-headers': exposed.join(', ') }
  return {
    'content-security-policy': NOT_A_PAGE,
    'cache-control': 'no-store',
    ...ALWAYS,
    ...(origins === '*' && { 'access-control-allow-origin': '*', ...expose }),
    ...(Array.isArray(origins) && { vary: 'Origin' }),
  }
}

function setOrRemove(reply: FastifyReply, name: string, value: string | undefined): void {
  if (value === undefined) reply.removeHeader(name)
  else reply.header(name, value)
}

/** Adds a request header on which the answer depends to those that the reply already names. */
export function addVary(reply: FastifyReply, name: string): void {
  const names = [reply.getHeader('vary') ?? []]
    .flat()
    .flatMap((line) => String(line).split(','))
    .map((each) => each.trim())
  if (names.includes('*') || names.some((each) => each.toLowerCase() === name.toLowerCase())) return
  reply.header('vary', [...names, name].join(', '))
}

/** Parts of a page that a browser has to be allowed to use. */
type Carried = { readonly style: string; readonly script?: string | undefined }

/**
 * The policy of a page that carries one style sheet, perhaps one script, and nothing else that could run or load. Its script may ask
 * this service, and a form may lead to it.
 *
 * @param frameAncestors who may frame it, as a content security policy lists sources
 */
export function pagePolicyOf({ style, script }: Carried, frameAncestors: string): string {
  const own =
    script === undefined
      ? "form-action 'none'"
      : `script-src '${digestOf(script)}'; connect-src 'self'; form-action 'self'`
  return `default-src 'none'; style-src '${digestOf(style)}'; base-uri 'none'; ${own}; frame-ancestors ${frameAncestors}`
}

const digestOf = (text: string): string => `sha256-${hash('sha256', text, 'base64')}`

/**
 * The policy of a picture or a document that a page may show in a frame. Nothing in it runs or loads; browsers show a document by
 * an object in a page that they make round it, which takes over its policy.
 *
 * @param frameAncestors who may frame it, as a content security policy lists sources
 */
export const documentPolicyOf = (frameAncestors: string): string =>
  `default-src 'none'; object-src 'self'; frame-ancestors ${frameAncestors}`
