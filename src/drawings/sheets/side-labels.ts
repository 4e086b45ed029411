import { itemAt } from '#shared/numbers/item-at.ts'
import { at, type Point, type Shape } from '#src/drawings/model.ts'
import { line } from '#src/drawings/shapes.ts'
import { textWidth } from '#src/drawings/text-width.ts'
import { fittedText, leader, stacked, TEXT_HEIGHT } from './annotations.ts'

/** What an enlarged view has on paper, its labels included. */
export type Room = { readonly width: number; readonly height: number }

/** A label beside an enlarged view, and its target: an outline, or a dimension line, which needs no arrow. */
export type SideLabel = { readonly words: string; readonly tip: Point; readonly isOfLine?: boolean }

const LABELS_APART = 2 * TEXT_HEIGHT

/** How much of a room's width labels take that begin so far beside the view; half of it at the most. */
export function labelRoom(words: readonly string[], beside: number, room: Room): number {
  const widest = Math.max(...words.map((text) => textWidth(text, TEXT_HEIGHT)))
  return Math.min(room.width / 2 - beside, 2 + widest)
}

/** Labels one above the other, on paper, their lines beginning at x: each as near to its tip as the others let it. */
export function sideLabels(labels: readonly SideLabel[], x: number, width: number, room: Room): readonly Shape[] {
  const rows = labels.toSorted((a, b) => b.tip.y - a.tip.y)
  const preferred = rows.map(({ tip }) => tip.y)
  const heights = stacked(preferred, LABELS_APART, -room.height / 2, room.height / 2)
  return rows.flatMap(({ words, tip, isOfLine = false }, index) => {
    const start = at(x, itemAt(heights, index))
    const way = isOfLine ? [line('dimension', start, tip)] : leader(start, tip)
    return [...way, fittedText(words, at(start.x + 1, start.y - TEXT_HEIGHT / 2), width - 1, 'start')]
  })
}
