import type { Ends } from '#shared/statistics/distribution.ts'

/** Neighbours alone touch where no ball is below 2/3 of another: `unequal-balls.ts`. Derived here. */
export const MOST_UNEVEN = 1.5

/** A row of balls may reach round 5/4 times at most: `unequal-balls-in-blocks.ts`. Derived here. */
export const FARTHEST_ROUND = (5 / 4) * 2 * Math.PI

/** A groove is hardly a circle with lobes of this share of its radius. Common practice, no source. */
export const LARGEST_LOBE = 0.05

export const reachOf = ({ least, most }: Ends): number => Math.max(Math.abs(least), Math.abs(most))
