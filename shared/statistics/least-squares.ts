import { itemAt } from '#shared/numbers/item-at.ts'
import { requireWhole } from '#shared/precondition.ts'

/** Coefficients of a linear model, how sure they are, and how far the data scatter round it. */
export interface LeastSquares {
  readonly coefficients: readonly number[]
  /** With the scatter estimated from the residuals. */
  readonly standardErrors: readonly number[]
  /** Weighted sum of squared residuals. */
  readonly chiSquared: number
  /** √(chiSquared / degrees of freedom); 0 where none are left. */
  readonly residualDeviation: number
}

/**
 * Weighted linear least squares, min Σ wᵢ (yᵢ − Σ xᵢⱼ bⱼ)², by Householder's QR of the scaled rows: closed, no
 * iteration, and without the loss of digits that the normal equations bring (Golub and Van Loan, Matrix Computations).
 *
 * @param rows xᵢ, each with as many figures as there are coefficients; at least as many rows as coefficients
 * @param weights above 0, one a row; all 1 when left out
 * @throws RangeError for too few rows or columns that depend on one another
 */
export function leastSquares(
  rows: readonly (readonly number[])[],
  values: readonly number[],
  weights: readonly number[] = values.map(() => 1),
): LeastSquares {
  const columns = itemAt(rows, 0).length
  requireWhole('number of rows', rows.length, columns)
  const roots = weights.map(Math.sqrt)
  const matrix = rows.map((row, i) => [...row.map((x) => x * itemAt(roots, i)), itemAt(values, i) * itemAt(roots, i)])
  for (let column = 0; column < columns; column++) reflect(matrix, column)
  const at = (i: number, j: number): number => itemAt(itemAt(matrix, i), j)
  const inverse = upperInverse(at, columns)
  const coefficients = inverse.map((row) => row.reduce((sum, x, j) => sum + x * at(j, columns), 0))
  const chiSquared = matrix.slice(columns).reduce((sum, row) => sum + itemAt(row, columns) ** 2, 0)
  const freedom = rows.length - columns
  const variance = freedom > 0 ? chiSquared / freedom : 0
  return {
    coefficients,
    standardErrors: inverse.map((row) => Math.sqrt(variance * row.reduce((sum, x) => sum + x * x, 0))),
    chiSquared,
    residualDeviation: Math.sqrt(variance),
  }
}

/** Householder's reflection that clears a column below the diagonal. */
function reflect(matrix: number[][], column: number): void {
  const length = Math.hypot(...matrix.slice(column).map((row) => itemAt(row, column)))
  const pivot = itemAt(itemAt(matrix, column), column)
  const mirror = matrix.map((row, i) => (i < column ? 0 : itemAt(row, column)))
  mirror[column] = pivot + (pivot >= 0 ? length : -length)
  const square = mirror.reduce((sum, x) => sum + x * x, 0)
  if (!(square > 0)) throw new RangeError(`column ${column} must not depend on the others`)
  for (let j = column; j < itemAt(matrix, 0).length; j++) {
    const product = matrix.reduce((sum, row, i) => sum + itemAt(mirror, i) * itemAt(row, j), 0)
    const factor = (2 * product) / square
    for (let i = column; i < matrix.length; i++) {
      const row = itemAt(matrix, i)
      row[j] = itemAt(row, j) - factor * itemAt(mirror, i)
    }
  }
}

function upperInverse(at: (i: number, j: number) => number, size: number): number[][] {
  const inverse = Array.from({ length: size }, () => new Array<number>(size).fill(0))
  const cell = (i: number, j: number): number => itemAt(itemAt(inverse, i), j)
  for (let j = 0; j < size; j++) {
    for (let i = j; i >= 0; i--) {
      let sum = i === j ? 1 : 0
      for (let k = i + 1; k <= j; k++) sum -= at(i, k) * cell(k, j)
      itemAt(inverse, i)[j] = sum / at(i, i)
    }
  }
  return inverse
}
