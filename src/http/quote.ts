import { QUOTES } from './sentences.ts'

/** Longest piece of a caller's text that comes back in a sentence. */
const LONGEST = 40

/**
 * A value from a caller, quoted in a sentence: short and printable. The inside of a list is not read, because lists can be
 * nested ten thousand deep.
 */
export function quote(value: unknown): string {
  switch (typeof value) {
    case 'string':
      return `"${printable(value)}"`
    case 'number':
      return Number.isFinite(value) ? String(value) : QUOTES.hugeNumber
    case 'boolean':
      return String(value)
    case 'undefined':
      return QUOTES.nothing
    default:
      if (value === null) return QUOTES.null
      return Array.isArray(value) ? QUOTES.list(value.length) : QUOTES.object
  }
}

/** Replaces control characters, marks that change the direction of writing, and half characters with �. */
function printable(text: string): string {
  const characters = Array.from(text.slice(0, 4 * LONGEST))
  const shown = characters.slice(0, LONGEST).join('').replace(/\p{C}/gu, '\uFFFD')
  return characters.length > LONGEST || text.length > 4 * LONGEST ? `${shown}…` : shown
}
