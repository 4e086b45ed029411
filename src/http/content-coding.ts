import { promisify } from 'node:util'
import {
  brotliCompress,
  brotliCompressSync,
  constants,
  gzip,
  gzipSync,
  zstdCompress,
  zstdCompressSync,
} from 'node:zlib'
import type { FastifyRequest } from 'fastify'
import Negotiator from 'negotiator'

/** Content codings (RFC 9110 §8.4.1), the preferred first. */
const CODINGS = ['zstd', 'br', 'gzip'] as const
export type Coding = (typeof CODINGS)[number]

/** In bytes: a shorter body hardly shrinks. */
const WORTH_CODING = 1024

/** Media types of text. A PDF and a picture in pixels are compressed already. */
const TEXT = /^(?:text\/|application\/(?:[\w.-]+\+)?json|image\/(?:svg\+xml|vnd\.dxf))/

/**
 * In bytes: up to here a body is coded at once, in some 0.1 ms. A thread of Node's pool makes the same bytes, but for a short body it
 * takes several times the processor time.
 */
const CODED_AT_ONCE = 32_768

/** The options of Node's coders. */
type Options = { params?: Record<number, number>; level?: number }
const zstdOf = (level: number): Options => ({ params: { [constants.ZSTD_c_compressionLevel]: level } })
const brotliOf = (quality: number): Options => ({ params: { [constants.BROTLI_PARAM_QUALITY]: quality } })

/** How each coding is made: quickly for one answer, thoroughly for a body that many will get. */
const CODERS = {
  zstd: { atOnce: zstdCompressSync, inThread: promisify(zstdCompress), quick: zstdOf(3), thorough: zstdOf(19) },
  br: { atOnce: brotliCompressSync, inThread: promisify(brotliCompress), quick: brotliOf(4), thorough: brotliOf(10) },
  gzip: { atOnce: gzipSync, inThread: promisify(gzip), quick: { level: 6 }, thorough: { level: 9 } },
}

/** Bodies that never change, each with the codings of it that have been made. */
const constantBodies = new WeakMap<Buffer, Map<Coding, Promise<Buffer>>>()

/** A body that is sent again and again as this very object: it is coded once, thoroughly. */
export function constantBody(content: string | Buffer): Buffer {
  const body = Buffer.from(content)
  constantBodies.set(body, new Map())
  return body
}

/** The body in a coding: the same body always gives the same bytes. */
export function coded(body: string | Buffer, coding: Coding): Buffer | Promise<Buffer> {
  const { atOnce, inThread, quick, thorough } = CODERS[coding]
  const kept = typeof body === 'string' ? undefined : constantBodies.get(body)
  if (kept === undefined) return body.length > CODED_AT_ONCE ? inThread(body, quick) : atOnce(body, quick)
  const made = kept.get(coding) ?? inThread(body, thorough)
  kept.set(coding, made)
  return made
}

/** Whether an answer of this media type depends on `Accept-Encoding`. */
export const isCodable = (mediaType: string): boolean => TEXT.test(mediaType)

/** Whether this answer is long enough to be coded, and a text. */
export const isWorthCoding = (body: unknown, mediaType: string): body is string | Buffer =>
  (typeof body === 'string' || Buffer.isBuffer(body)) && body.length >= WORTH_CODING && isCodable(mediaType)

/** The first of our codings that the caller accepts; none where it accepts none of them, or prefers none. */
export function codingFor({ headers }: FastifyRequest): Coding | undefined {
  const accepted = headers['accept-encoding']
  if (accepted === undefined) return undefined
  const codings = new Negotiator({ headers: { 'accept-encoding': accepted } }).encodings([...CODINGS, 'identity'])
  return codings[0] === 'identity' ? undefined : CODINGS.find((coding) => codings.includes(coding))
}
