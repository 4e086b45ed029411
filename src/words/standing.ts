import { type Openings, sourceOfSize } from '#shared/bearing/assumed-sizes.ts'
import type { DimensionKey } from '#shared/bearing/dimensions.ts'
import { SIZE_SOURCES, type Standing } from '#shared/data/sources.ts'

/** Signs at a figure on paper, for those who want to know how sure it is: common practice, and from memory. What was read in print has none. */
export const TRADE_SIGN = '†'
export const MEMORY_SIGN = '‡'

/** The mark behind a figure of a standing: a space and its sign, or nothing. */
export function signOf(standing: Standing | undefined): string {
  if (standing === 'from memory') return ` ${MEMORY_SIGN}`
  return standing === 'common practice, no source' ? ` ${TRADE_SIGN}` : ''
}

/** The mark behind a size; nothing where its field was stated. */
export function signOfSize(key: DimensionKey, openings: Openings): string {
  const source = sourceOfSize(key, openings)
  return signOf(source && SIZE_SOURCES[source].standing)
}

/** The meaning of each sign. */
const SIGN_MEANINGS = [
  `${TRADE_SIGN} common practice, no source`,
  `${MEMORY_SIGN} handbook figure, not checked in print`,
] as const

/** At the foot of a sheet: of those signs that stand on it. */
export const signMeanings = (texts: readonly string[]): readonly string[] =>
  SIGN_MEANINGS.filter((meaning) => texts.some((text) => text.includes(meaning.charAt(0))))

/** The same in a line of its own under a picture, where there is one. */
export function signNote(texts: readonly string[]): readonly string[] {
  const meanings = signMeanings(texts)
  return meanings.length === 0 ? [] : [`${meanings.join(', ')}.`]
}
