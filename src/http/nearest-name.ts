import { closestMatch } from 'leven'
import { given } from './given.ts'

const MOST_TYPOS = 3
const LONGEST_LIST = 24

/** "… is not known here", with the name that was probably meant, or else with the names there are. */
export function notKnown(name: string, known: readonly string[]): string {
  const nearest = nearestName(name, known)
  if (nearest !== undefined) return `${given(name)} is not known here: did you mean "${nearest}"?`
  const names = known.length <= LONGEST_LIST ? known : [...known.slice(0, LONGEST_LIST), '…']
  return `${given(name)} is not known here; known here: ${names.join(', ')}`
}

/** At most three letters off, and for a short name at most half of it: three letters turn "bore" into "core" and "wide". */
export function nearestName(name: string, known: readonly string[]): string | undefined {
  const maxDistance = Math.min(MOST_TYPOS, Math.floor(name.length / 2))
  return maxDistance === 0 ? undefined : closestMatch(name, known, { maxDistance })
}
