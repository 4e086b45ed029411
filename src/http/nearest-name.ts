import { closestMatch } from 'leven'
import { quote } from './quote.ts'
import { unknownName, unknownNameNear } from './sentences.ts'

const MOST_TYPOS = 3
const LONGEST_LIST = 24

/** A sentence about an unknown name, with the name that was probably meant, or else with the known names. */
export function notKnown(name: string, known: readonly string[]): string {
  const nearest = nearestName(name, known)
  if (nearest !== undefined) return unknownNameNear(quote(name), nearest)
  return unknownName(quote(name), known.slice(0, LONGEST_LIST), known.length <= LONGEST_LIST)
}

/**
 * At most three letters off, and for a short name at most half of it: three letters turn "bore" into "core" and "wide". Few slips
 * hit the first letter, so where that differs all others must be right: "load" is not "wood".
 */
export function nearestName(name: string, known: readonly string[]): string | undefined {
  const maxDistance = Math.min(MOST_TYPOS, Math.floor(name.length / 2))
  if (maxDistance === 0) return undefined
  const alike = known.filter((each) => each[0]?.toLowerCase() === name[0]?.toLowerCase())
  return closestMatch(name, alike, { maxDistance }) ?? closestMatch(name, known, { maxDistance: 1 })
}

const MOST_NAMES = 5

/**
 * The names of a long list that come nearest to what was written, the nearest first: those that share most of its words,
 * in whatever order they stand (`sugar maple` is near to `maple-sugar`), a word with a letter or two off counting too.
 */
export function nearestNames(name: string, known: readonly string[]): readonly string[] {
  const wanted = wordsOf(name)
  const scored = known.map((candidate) => ({ candidate, score: likeness(wanted, wordsOf(candidate)) }))
  const found = scored.filter(({ score }) => score > 0).sort((one, other) => other.score - one.score)
  return found.slice(0, MOST_NAMES).map(({ candidate }) => candidate)
}

const wordsOf = (name: string): readonly string[] =>
  name
    .toLowerCase()
    .split(/[^a-z]+/)
    .filter(Boolean)

/** Words that have their like among the other's, less a little for each that has none. Few slips hit the first letter. */
function likeness(wanted: readonly string[], candidate: readonly string[]): number {
  const isShared = (word: string): boolean =>
    nearestName(
      word,
      candidate.filter((other) => other[0] === word[0]),
    ) !== undefined
  const shared = wanted.filter((word) => candidate.includes(word) || isShared(word)).length
  return shared === 0 ? 0 : shared - (candidate.length - shared) / 10
}
