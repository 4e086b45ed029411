/*
 * What routes import of Node beside what a browser runs of them: titles of HTTP statuses, and hashes for headers. In a browser
 * there are no headers to hash for.
 */

export const STATUS_CODES: Readonly<Record<number, string>> = {}

/** @throws RangeError always: a browser sets no headers */
export function hash(): never {
  throw new RangeError('a browser must not hash')
}
