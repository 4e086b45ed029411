import { normalQuantile } from '#shared/statistics/normal.ts'
import { drawWords, randomStream } from '#shared/statistics/random.ts'

/*
 * Quasi-random standard normal points: a rank-1 lattice of a prime number of points, its generators found offline one component
 * at a time for the least P2 error with weights 1, 1, 1, 1, then falling (Sloan, Kuo and Joe, Constructing randomly
 * shifted lattice rules in weighted Sobolev spaces, SIAM J. Numer. Anal. 40 (2002), from memory). Columns beyond the
 * lattice's own are Latin hypercubes: each column alone is still spread evenly.
 */

export const POINTS = 4093
const GENERATORS = [1, 1210, 1542, 1785, 942, 1069, 1604, 1138] as const
/** Points are taken in this order, so that the first few of them lie evenly as well: N over the golden ratio. */
const STRIDE = 2530

const columns: Float64Array[] = []

/** The column of one unknown: `POINTS` standard normal numbers, the same ones every time. */
export function normalColumn(column: number): Float64Array {
  const known = columns[column]
  if (known !== undefined) return known
  const made = columnOf(column)
  columns[column] = made
  return made
}

function columnOf(column: number): Float64Array {
  const generator = GENERATORS[column]
  const ranks = generator === undefined ? shuffled(column) : undefined
  const shift = (0.5 + column * 0.6180339887498949) % 1
  return Float64Array.from({ length: POINTS }, (_, index) => {
    const place = (index * STRIDE) % POINTS
    const at =
      ranks === undefined ? ((place * (generator ?? 1)) % POINTS) / POINTS : (ranks[place] ?? Number.NaN) / POINTS
    const uniform = (at + shift / POINTS) % 1
    return normalQuantile(Math.min(Math.max(uniform, 0.25 / POINTS), 1 - 0.25 / POINTS))
  })
}

/** The ranks in an order of their own: Fisher and Yates's shuffle, from a stream that belongs to the column. */
function shuffled(column: number): Uint16Array {
  const ranks = Uint16Array.from({ length: POINTS }, (_, index) => index)
  const words = drawWords(randomStream(1, column), POINTS)
  for (let index = POINTS - 1; index > 0; index--) {
    const other = Math.floor(((words[index] ?? Number.NaN) / 4_294_967_296) * (index + 1))
    const kept = ranks[index] ?? Number.NaN
    ranks[index] = ranks[other] ?? Number.NaN
    ranks[other] = kept
  }
  return ranks
}
