/** Longest piece of a caller's text that comes back in a sentence. */
const LONGEST = 40

/**
 * What the caller gave, to be read in a sentence: short, printable, and never walked into, for a list may hold lists
 * ten thousand deep.
 */
export function given(value: unknown): string {
  switch (typeof value) {
    case 'string':
      return `"${printable(value)}"`
    case 'number':
      return Number.isFinite(value) ? String(value) : 'a number too large to hold'
    case 'boolean':
      return String(value)
    case 'undefined':
      return 'nothing'
    default:
      if (value === null) return 'null'
      return Array.isArray(value) ? `a list with ${value.length} entries` : 'an object'
  }
}

/** Control characters, marks that turn the direction of writing, and halves of characters become �. */
function printable(text: string): string {
  const characters = Array.from(text.slice(0, 4 * LONGEST))
  const shown = characters.slice(0, LONGEST).join('').replace(/\p{C}/gu, '\uFFFD')
  return characters.length > LONGEST || text.length > 4 * LONGEST ? `${shown}…` : shown
}
