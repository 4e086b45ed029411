import { ProblemError } from './problem.ts'
import { headersLongerThan } from './sentences.ts'

/**
 * So much of a request's head is read: four times what is allowed, so that there is time to see what is too long. Node
 * gives up at this limit without a word on whether it was in the address or in the headers, and a head comes in as many
 * packets as it likes.
 */
export const HEAD_READ_BYTES = 65_536

/** Node's own limit, headers and address together; browsers and proxies send some 2 KB. */
const MOST_HEADER_BYTES = 16_384

/** Colon, blank, and the end of the line. */
const BESIDE_NAME_AND_VALUE = 4

/** 431 for headers that are too long together. The address has a limit of its own, and Node one of a thousand headers. */
export function headersRefusal(rawHeaders: readonly string[]): ProblemError | undefined {
  let bytes = (rawHeaders.length / 2) * BESIDE_NAME_AND_VALUE
  for (const text of rawHeaders) bytes += text.length
  return bytes > MOST_HEADER_BYTES ? new ProblemError(431, headersLongerThan(MOST_HEADER_BYTES)) : undefined
}
