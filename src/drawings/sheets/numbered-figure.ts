import { at, type Point, type Shape } from '#src/drawings/model.ts'
import { placed, text } from '#src/drawings/shapes.ts'
import { numberedLabel } from '#src/words/drawing.ts'
import { leader, TEXT_HEIGHT } from './annotations.ts'
import type { Figure, Label } from './pages.ts'

/** From the figure down to the numbers, and between two of them, on paper. */
const BELOW = 8
const APART = 9
const UNDER = 1.5

/** A figure that says in numbers what its list says in words. */
export interface NumberedFigure {
  readonly shapes: readonly Shape[]
  readonly height: number
  /** In the order of the numbers, those that point at nothing last. */
  readonly words: readonly string[]
}

/**
 * A figure as wide or as high as a room, without its texts, and below it a row of numbers that point to what the labels are about:
 * on a narrow screen no label has room beside its line. From left to right, so that no pointer crosses another.
 *
 * @param edge free all round
 */
export function numberedFigure(
  { shapes, left, right, bottom, top }: Figure,
  labels: readonly Label[],
  width: number,
  edge: number,
): NumberedFigure {
  const pointing = labels
    .filter((label): label is Label & { readonly tip: Point } => label.tip !== undefined)
    .toSorted((one, other) => one.tip.x - other.tip.x)
  const factor = (width - 2 * edge) / Math.max(right - left, top - bottom)
  const row = pointing.length === 0 ? 0 : BELOW + TEXT_HEIGHT + UNDER
  const origin = at((width - (left + right) * factor) / 2, edge + row - bottom * factor)
  const numbers = pointing.flatMap(({ tip }, index) => {
    const x = width / 2 + (index - (pointing.length - 1) / 2) * APART
    const from = at(x, edge + UNDER + TEXT_HEIGHT + UNDER)
    return [
      ...leader(from, at(origin.x + tip.x * factor, origin.y + tip.y * factor)),
      text(String(index + 1), at(x, edge + UNDER), TEXT_HEIGHT, 'middle'),
    ]
  })
  const silent = placed(
    shapes.filter(({ kind }) => kind !== 'text'),
    factor,
    origin,
  )
  return {
    shapes: [...silent, ...numbers],
    height: (top - bottom) * factor + row + 2 * edge,
    words: [
      ...pointing.map(({ words }, index) => numberedLabel(index + 1, words)),
      ...labels.filter(({ tip }) => tip === undefined).map(({ words }) => words),
    ],
  }
}
