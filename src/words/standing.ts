/** Signs at a figure on paper, for those who want to know how sure it is: common practice, and from memory. What was read in print has none. */
export const TRADE_SIGN = '†'
export const MEMORY_SIGN = '‡'

/** At the foot of every sheet with signs on it. */
export const SIGN_MEANINGS = [`${TRADE_SIGN} common practice, no source`, `${MEMORY_SIGN} from memory`] as const
