/** Woods that are named for a place or a person. */
const PROPER = /^(?:Douglas|Parana|Santa|Spanish)/

/** `Maple, sugar`, as tables have it, is sugar maple in a sentence. */
export function nameInSentence(name: string): string {
  const [kind = name, ...which] = name.split(', ')
  return [...which, PROPER.test(kind) ? kind : kind.toLowerCase()].join(' ')
}
