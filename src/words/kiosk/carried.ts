import { STAGE_NAMES } from './page.ts'

/** Words of what every later step repeats of the first one's warnings. */
export const CARRIED = {
  grave: 'Do not cut it as it is. It will not work:',
  /** @param isNote of what is only good to know */
  count: (count: number, isNote: boolean) => {
    const noun = isNote ? 'note' : 'warning'
    return count === 1 ? `There is 1 ${noun} about this bearing.` : `There are ${count} ${noun}s about this bearing.`
  },
  read: (count: number) => `Read ${count === 1 ? 'it' : 'them'} at “${STAGE_NAMES.bearing}”`,
} as const
