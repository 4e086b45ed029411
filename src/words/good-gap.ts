import type { Mm, Units } from '#shared/units/length.ts'
import { figure } from './figure.ts'
import type { Terms } from './terms.ts'

/** Which gaps are good. Lengths in millimetres. */
export interface GoodGap {
  /** The smallest that is allowed, once the last ball is in. */
  readonly min: Mm
  /** From here on the last ball goes in without force: to this the drawing and the go plug are made. Never below `min`. */
  readonly free: Mm
  readonly most: Mm
}

/**
 * Which gaps are good, in the same words wherever a person reads a limit of the gap: one bearing has one lower limit to which it is made, and
 * below it what counts is whether the last ball goes in.
 */
export function goodGap({ min, free, most }: GoodGap, units: Units, terms: Terms): string {
  const { gap, element } = terms
  const size = (length: Mm): string => figure(length, units)
  // What it takes to get the last ball in leaves the gap too wide: the design warns of that.
  if (free > most) return `A ${gap} of at most ${size(most)} is good if the last ${element.one} goes in.`
  const good = `A ${gap} from ${size(free)} to ${size(most)} is good.`
  return [good, belowFree({ min, free }, size, terms)].filter((each) => each !== undefined).join(' ')
}

/** What holds below the limit to which a ring is made; undefined where nothing smaller is good. */
export function belowFree(
  { min, free }: Omit<GoodGap, 'most'>,
  size: (length: Mm) => string,
  { element }: Terms,
): string | undefined {
  if (min === 0)
    return free > 0
      ? `A smaller one is good only if the last ${element.one} goes in; below 0, it never does.`
      : `Below 0, the last ${element.one} does not go in.`
  return free > min
    ? `A smaller one, down to ${size(min)}, is good only if the last ${element.one} goes in.`
    : undefined
}
