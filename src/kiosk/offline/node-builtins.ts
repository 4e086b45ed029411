import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'

/*
 * What routes import of Node, for a browser: titles of HTTP statuses, which only a server sends, and hashes.
 */

export const STATUS_CODES: Readonly<Record<number, string>> = {}

/**
 * The SHA-256 of a text, as Node gives it.
 *
 * @throws RangeError for any other algorithm or encoding: a browser sets no headers, for which there are others
 */
export function hash(algorithm: string, text: string, encoding: string): string {
  if (algorithm !== 'sha256' || encoding !== 'hex')
    throw new RangeError(`algorithm and encoding must be sha256 and hex, got ${algorithm} and ${encoding}`)
  return bytesToHex(sha256(utf8ToBytes(text)))
}
