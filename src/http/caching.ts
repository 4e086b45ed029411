import { hash } from 'node:crypto'
import type { FastifyReply, FastifyRequest } from 'fastify'
import { canonical } from '#shared/canonical.ts'
import { ENGINE } from '#src/engine.ts'
import { addVary, setAnswerHeaders } from './answer-headers.ts'
import { codingFor, isCodable } from './content-coding.ts'

const A_DAY = 'public, max-age=86400, stale-while-revalidate=604800'

/** The same input to the same engine gives the same answer for ever: nobody needs to ask again. */
const IMMUTABLE = 'public, max-age=31536000, immutable'

/** Keep it, and ask each time whether it is still the answer: a new build's is there at once. */
export const ASK_AGAIN = 'public, no-cache'

type Keepable = {
  /** Where people reach this service, for what leads back to it. */
  readonly publicUrl?: string | null
  /** Everything that the answer depends on, beside the path, the media type and the build. */
  readonly input: unknown
  readonly mediaType: string
  readonly pagePolicy?: string | undefined
  /** How long it may be kept; when left out, this depends on the engine that the input names. */
  readonly cacheControl?: string
}

/**
 * Sets the headers of an answer that may be kept, and tells whether the caller has it already: then send a 304. An answer
 * depends on its input and on the build alone, so the tag is made of these before anything is computed. Each coding has a tag of
 * its own, as its bytes differ (RFC 9110 §8.8.3.3). For GET and HEAD.
 */
export function isKept(
  request: FastifyRequest,
  reply: FastifyReply,
  { publicUrl, input, mediaType, pagePolicy, cacheControl = lifetimeOf(input) }: Keepable,
): boolean {
  const path = request.url.split('?', 1)[0]
  const coding = isCodable(mediaType) ? codingFor(request) : undefined
  const parts = [ENGINE, path, mediaType, coding, canonical(input), ...(publicUrl ? [publicUrl] : [])]
  const etag = `"${hash('sha256', parts.join('\n'), 'base64url').slice(0, 27)}"`
  setAnswerHeaders(reply, { cacheControl, kept: { etag, engine: ENGINE }, pagePolicy })
  if (isCodable(mediaType)) addVary(reply, 'Accept-Encoding')
  return holds(request.headers['if-none-match'], etag)
}

/**
 * If an input has the field `engine`, its address can name the build that it wants. While one build replaces another,
 * either may be asked for either: what is not from the build that the address names is not to be kept under that address.
 */
function lifetimeOf(input: unknown): string {
  const { engine }: { readonly engine?: unknown } = Object(input)
  if (engine === undefined) return A_DAY
  return engine === ENGINE ? IMMUTABLE : ASK_AGAIN
}

/** `If-None-Match` compares weakly (RFC 9110 §13.1.2): a proxy that compresses marks our tag `W/`. */
function holds(header: string | undefined, tag: string): boolean {
  if (header === undefined) return false
  return header.trim() === '*' || Array.from(header.matchAll(/"[^"]*"/g), ([quoted]) => quoted).includes(tag)
}
