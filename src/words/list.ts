/**
 * Several things in one sentence: "a", "a and b", "a, b, and c".
 *
 * Not by `Intl.ListFormat`, which writes the same (the tests compare): to load its data takes a tenth of a start.
 */
export function inList(things: readonly string[]): string {
  const last = things.at(-1) ?? ''
  if (things.length < 3) return things.join(' and ')
  return `${things.slice(0, -1).join(', ')}, and ${last}`
}
