import type { Standing } from '#shared/data/sources.ts'

/** A sign at a figure on paper, for those who want to know how sure it is. What was read in print has none. */
const SIGNS: Readonly<Record<Standing, string>> = {
  published: '',
  quoted: '',
  'derived here': '',
  'common practice, no source': '†',
  'from memory': '‡',
}

export const signOf = (standing: Standing): string => SIGNS[standing]
export const TRADE_SIGN = SIGNS['common practice, no source']
export const MEMORY_SIGN = SIGNS['from memory']

/** At the foot of every sheet with signs on it. */
export const SIGN_MEANINGS = [`${TRADE_SIGN} common practice, no source`, `${MEMORY_SIGN} from memory`] as const
