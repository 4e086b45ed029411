import { DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'

/* Where the rounding of a rule would spoil a size. */

/** A caliper reads no play: a dial indicator or feelers do, with the bearing together. */
export const BY_MEASURING = 'by measuring'

/** How a size is told that no rule is fine enough for, by its symbol. */
export const finerThanRule = (symbol: string | undefined): string =>
  symbol === DIMENSION_SYMBOLS.radialInternalClearance ? BY_MEASURING : 'by caliper'
