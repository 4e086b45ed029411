import { inUnits, type Units } from '#shared/units/length.ts'
import type { Suggestion } from './knobs.ts'

/*
 * What an input may hold. The edge turns away all else, as a slip of the hand and no bearing; so nothing that is
 * suggested may lie outside either.
 */

export interface Bounds {
  readonly least: number
  readonly most: number
}

/** More balls than anyone turns a ring for. The fewest are a matter of geometry: `FEWEST_BALLS`. */
export const MOST_BALLS = 200
export const ENGAGEMENT: Bounds = { least: 0.01, most: 0.9 }
export const CONFORMITY: Bounds = { least: 0.3, most: 2 }
/** In the units of the caller. */
export const LENGTH: Bounds = { least: 0.001, most: 10_000 }
/** Gaps, play, scatter, film. In the units of the caller. */
export const LENGTH_OR_NONE: Bounds = { least: 0, most: LENGTH.most }

const NONE_IS_POSSIBLE: ReadonlySet<string> = new Set(['/ballGap', '/radialInternalClearance'])

/** Whether a caller could send what is suggested. */
export function isWithinBounds({ path, kind, value }: Suggestion, units: Units): boolean {
  if (kind === 'choice') return true
  if (kind === 'length') return holds(NONE_IS_POSSIBLE.has(path) ? LENGTH_OR_NONE : LENGTH, inUnits(value, units))
  if (path === '/balls/count') return value <= MOST_BALLS
  return path === '/shopDenominator' || holds(path.endsWith('conformity') ? CONFORMITY : ENGAGEMENT, value)
}

const holds = ({ least, most }: Bounds, value: number): boolean => value >= least && value <= most
