import { type Ends, endsOf } from '#shared/statistics/distribution.ts'
import type { Check } from './checked.ts'
import type { ContributorName } from './input.ts'

/**
 * Distributions without ends count so many standard deviations to either side, all at once.
 * Common practice, no source.
 */
export const NORMAL_REACH = 3

const NOTHING: Ends = { least: 0, most: 0 }

/**
 * How far a contributor may take something at its worst.
 *
 * @param normalReach of a normal distribution, so many standard deviations
 */
export const farthest = ({ differences }: Check, name: ContributorName, normalReach = NORMAL_REACH): Ends => {
  const distribution = differences.get(name)
  return distribution === undefined ? NOTHING : endsOf(distribution, normalReach)
}

/** Every ball at its end; of a list the largest or the smallest that go in, by size round the ring. */
export function extremeBalls(check: Check, side: 'tight' | 'loose'): readonly number[] {
  const { ballDiameter, input } = check.bearing.resolved
  const distribution = check.differences.get('ballDiameter')
  if (distribution?.kind === 'discrete') {
    const sorted = distribution.values.toSorted((one, other) => (side === 'tight' ? other - one : one - other))
    return sorted.slice(0, input.balls.count).map((difference) => ballDiameter + difference)
  }
  const { least, most } = farthest(check, 'ballDiameter')
  return Array.from({ length: input.balls.count }, () => ballDiameter + (side === 'tight' ? most : least))
}
