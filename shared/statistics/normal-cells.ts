import { normalDensity, normalQuantile } from './normal.ts'
import { drawWords, type Random } from './random.ts'

/*
 * The standard normal quantile function in cells of equal probability: a cell is the uniform distribution that has the
 * mean and the variance of the piece of the normal one that it stands for. So mean and variance are exact, and the
 * distribution function is off by less than 1e-4 anywhere. The first and the last of 1024 cells, 3.1 standard deviations
 * and more off, are cut into 1024 again; what those end with, one number in two million, lies about 5 of them off.
 */

const BITS = 10
const CELLS = 2 ** BITS

/**
 * The first ten bits of a word of 32 select the cell, in the tails ten more the finer one; the rest give the place in
 * it.
 */
const LEFT = 32 - BITS
const LEFT_MASK = 2 ** LEFT - 1
const FINER_LEFT = LEFT - BITS
const FINER_MASK = 2 ** FINER_LEFT - 1
const LAST = CELLS - 1
const LOWER_TAIL = CELLS
const UPPER_TAIL = 2 * CELLS

/** The places in a cell stand so far apart. As constants: the engine works a power out anew each time that it meets one. */
const GRAIN = 1 / 2 ** LEFT
const FINER_GRAIN = 1 / 2 ** FINER_LEFT

/** Start and width of each cell: all cells, then those of the lower and those of the upper tail. */
const TABLE_LENGTH = 2 * 3 * CELLS

/** No number is drawn further off than this, in standard deviations. */
export const FARTHEST_DRAW = 5.3

/** Always the same; made by the first who draws, for it takes longer than the start of everything else here. */
let table: Float64Array | undefined

function normalCells(): Float64Array {
  table ??= standardNormalCells()
  return table
}

/** Draws independent normal numbers into the beginning of `out`, by + − × and a table. */
export function drawNormals(
  { mean, standardDeviation }: { readonly mean: number; readonly standardDeviation: number },
  random: Random,
  out: Float64Array,
  count: number,
): void {
  const words = drawWords(random, count)
  const cells = normalCells()
  for (let index = 0; index < count; index++) {
    const word = words[index] ?? Number.NaN
    let cell = word >>> LEFT
    let place = (word & LEFT_MASK) * GRAIN
    if (cell === 0 || cell === LAST) {
      cell = (cell === 0 ? LOWER_TAIL : UPPER_TAIL) + ((word & LEFT_MASK) >>> FINER_LEFT)
      place = (word & FINER_MASK) * FINER_GRAIN
    }
    out[index] =
      mean + standardDeviation * ((cells[2 * cell] ?? Number.NaN) + (cells[2 * cell + 1] ?? Number.NaN) * place)
  }
}

function standardNormalCells(): Float64Array {
  const cells = new Float64Array(TABLE_LENGTH)
  const fine = 1 / (CELLS * CELLS)
  for (let cell = 0; cell < CELLS; cell++) {
    const upper = CELLS - 1 - cell
    // By symmetry from the lower half alone, where a probability has all its digits.
    if (cell < upper) {
      const [from, width] = cellOf(cell / CELLS, 1 / CELLS, GRAIN)
      cells.set([from, width], 2 * cell)
      cells.set([-from - width * (1 - GRAIN), width], 2 * upper)
    }
    const [from, width] = cellOf(cell * fine, fine, FINER_GRAIN)
    cells.set([from, width], 2 * (LOWER_TAIL + cell))
    cells.set([-from - width * (1 - FINER_GRAIN), width], 2 * (UPPER_TAIL + upper))
  }
  return cells
}

/**
 * The cell of the probabilities from p to p + share, by the moments of a normal distribution between z₁ and z₂:
 * mean (φ₁ − φ₂) / share, mean square 1 + (z₁ φ₁ − z₂ φ₂) / share. A uniform one so wide has the variance width² / 12.
 *
 * @param grain of the place in the cell, which goes from 0 to 1 − grain
 */
function cellOf(probability: number, share: number, grain: number): readonly [from: number, width: number] {
  const [z1, z2] = [probability > 0 ? normalQuantile(probability) : 0, normalQuantile(probability + share)]
  const [density1, density2] = [probability > 0 ? normalDensity(z1) : 0, normalDensity(z2)]
  const mean = (density1 - density2) / share
  const variance = 1 + (z1 * density1 - z2 * density2) / share - mean * mean
  const width = Math.sqrt(12 * variance)
  return [mean - (width * (1 - grain)) / 2, width]
}
