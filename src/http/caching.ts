import { hash } from 'node:crypto'
import type { FastifyReply, FastifyRequest } from 'fastify'
import { VERSION } from '#src/version.ts'

const CACHE_CONTROL = 'public, max-age=86400, stale-while-revalidate=604800'

/** The same input to the same engine gives the same answer for ever: nobody needs to ask again. */
const IMMUTABLE = 'public, max-age=31536000, immutable'

/**
 * Marks an answer as one that may be kept, and tells whether the caller has it already. An answer depends on its input
 * alone, so the tag is made of the input (and of the engine, for a new one may answer otherwise) before anything is
 * computed. For GET and HEAD; a problem takes the tag off again.
 */
export function isKept(request: FastifyRequest, reply: FastifyReply, input: unknown, mediaType: string): boolean {
  const path = request.url.split('?', 1)[0]
  const tag = `"${hash('sha256', [VERSION, path, mediaType, canonical(input)].join('\n'), 'base64url').slice(0, 27)}"`
  reply.headers({ etag: tag, 'cache-control': namesThisEngine(input) ? IMMUTABLE : CACHE_CONTROL })
  return holds(request.headers['if-none-match'], tag)
}

/** Where an input has the field `engine`, an address can name the version that it wants; another one may answer it too. */
const namesThisEngine = (input: unknown): boolean => Object(input).engine === VERSION

/** JSON with the names in order: the same input gives the same text, in whatever order it was given. */
function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`
  if (typeof value !== 'object' || value === null) return JSON.stringify(value)
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1))
  return `{${entries.map(([name, inner]) => `${JSON.stringify(name)}:${canonical(inner)}`).join(',')}}`
}

/** `If-None-Match` compares weakly (RFC 9110 §13.1.2): a proxy that compresses marks our tag `W/`. */
function holds(header: string | undefined, tag: string): boolean {
  if (header === undefined) return false
  return header.trim() === '*' || Array.from(header.matchAll(/"[^"]*"/g), ([quoted]) => quoted).includes(tag)
}
