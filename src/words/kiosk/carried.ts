import { STAGE_NAMES } from './page.ts'

/** Words of what every later step repeats of the first one's warnings. */
export const CARRIED = {
  grave: 'Do not cut it as it is. It will not work:',
  count: (count: number) =>
    count === 1 ? 'There is 1 warning about this bearing.' : `There are ${count} warnings about this bearing.`,
  read: (count: number) => `Read ${count === 1 ? 'it' : 'them'} at “${STAGE_NAMES.bearing}”`,
} as const
