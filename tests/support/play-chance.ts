import { normalCdf } from '#shared/statistics/normal.ts'
import { playQuantile, type RandomBalls } from '#shared/statistics/play-of-random-balls.ts'
import { type Mm, mm } from '#shared/units/length.ts'

/** Beyond so many standard deviations no chance is told apart from 0 or 1 here. */
const FARTHEST = 7

/** The chance that the play of a ring comes out below a limit: the inverse of `playQuantile`, by halving. */
export function chancePlayBelow({ limit, ...balls }: RandomBalls & { readonly limit: Mm }): number {
  const isBelow = (z: number): boolean => playQuantile({ ...balls, probability: normalCdf(z) }) < limit
  let [low, high] = [-FARTHEST, FARTHEST]
  if (!isBelow(low)) return 0
  if (isBelow(high)) return 1
  for (let halving = 0; halving < 50; halving++) {
    const middle = (low + high) / 2
    if (isBelow(middle)) low = middle
    else high = middle
  }
  return normalCdf((low + high) / 2)
}

/** The chance that the inner ring does not go in among the balls. */
export const bindingChance = (balls: RandomBalls): number => chancePlayBelow({ ...balls, limit: mm(0) })
