import { ALL_SOURCES, type SourceId } from '#shared/data/sources.ts'

/** Signs at a figure on paper, for those who want to know how sure it is: common practice, and from memory. What was read in print has none. */
export const TRADE_SIGN = '†'
export const MEMORY_SIGN = '‡'

/** The mark behind a figure of a source: a space and the sign of its standing, or nothing. */
export function signOf(source: SourceId | undefined): string {
  const standing = source && ALL_SOURCES[source].standing
  if (standing === 'from memory') return ` ${MEMORY_SIGN}`
  return standing === 'common practice, no source' ? ` ${TRADE_SIGN}` : ''
}

/** At the foot of every sheet with signs on it. */
export const SIGN_MEANINGS = [`${TRADE_SIGN} common practice, no source`, `${MEMORY_SIGN} from memory`] as const
