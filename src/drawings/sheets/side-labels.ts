import { itemAt } from '#shared/numbers/item-at.ts'
import { at, type Point, type Shape } from '#src/drawings/model.ts'
import { textWidth } from '#src/drawings/text-width.ts'
import { fittedText, leader, stacked, TEXT_HEIGHT } from './annotations.ts'

/** Room of an enlarged view on paper, its labels included. */
export type Room = { readonly width: number; readonly height: number }

/** A label beside an enlarged view, its target, and what else is said of that on a line of its own. */
export type SideLabel = { readonly words: string; readonly tip: Point; readonly below?: string }

const LABELS_APART = 2 * TEXT_HEIGHT
/** Free before a label, and behind it: the frame of the sheet may stand there. */
const [BEFORE, BEHIND] = [1, 1.5]

/** How much of a room's width labels take that begin so far beside the view; half of it at the most. */
export function labelRoom(labels: readonly Pick<SideLabel, 'words' | 'below'>[], beside: number, room: Room): number {
  const texts = labels.flatMap(({ words, below = '' }) => [words, below])
  const widest = Math.max(...texts.map((content) => textWidth(content, TEXT_HEIGHT)))
  return Math.min(room.width / 2 - beside, BEFORE + widest + BEHIND)
}

/** Labels one above the other, on paper, their lines beginning at x: each as near to its tip as the others let it. */
export function sideLabels(labels: readonly SideLabel[], x: number, width: number, room: Room): readonly Shape[] {
  const rows = labels
    .toSorted((a, b) => b.tip.y - a.tip.y)
    .flatMap(({ words, tip, below }) => [
      { words, tip, pointed: true },
      ...(below === undefined ? [] : [{ words: below, tip: at(tip.x, tip.y - LABELS_APART), pointed: false }]),
    ])
  const preferred = rows.map(({ tip }) => tip.y)
  const heights = stacked(preferred, LABELS_APART, -room.height / 2, room.height / 2)
  return rows.flatMap(({ words, tip, pointed }, index) => {
    const start = at(x, itemAt(heights, index))
    return [
      ...(pointed ? leader(start, tip) : []),
      fittedText(words, at(start.x + BEFORE, start.y - TEXT_HEIGHT / 2), width - BEFORE - BEHIND, 'start'),
    ]
  })
}
