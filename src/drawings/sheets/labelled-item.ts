import { at } from '#src/drawings/model.ts'
import { line, placed, text } from '#src/drawings/shapes.ts'
import { fittedHeight, textWidth, wrapped } from '#src/drawings/text-width.ts'
import { leader, SMALL_TEXT_HEIGHT, TEXT_HEIGHT } from './annotations.ts'
import type { Figure, Item, Label } from './pages.ts'

const TITLE_HEIGHT = 3.5
const TITLE_ROOM = 9
const ROW = 5.5
/** Each row's line begins this much farther right than that of the row below: no line crosses a text. */
const STAIR = 4
const ABOVE_ROWS = 6
const ELBOW = 3
const EDGE = 1
const MARK_ROW = 3

/**
 * A figure with its title above and its labels below. The first label points farthest right: give them with their tips
 * from right to left.
 */
export function labelledItem(title: string, figure: Figure, labels: readonly Label[]): Item {
  const pointing = labels.filter(({ tip }) => tip !== undefined).length
  const start = (index: number): number => Math.max(0, pointing - 1 - index) * STAIR
  const textEnd = (label: Label, index: number): number => start(index) + 2 + textWidth(label.words, TEXT_HEIGHT)
  const words = Math.max(textWidth(title, TITLE_HEIGHT, true), ...labels.map(textEnd))
  const width = Math.max(figure.right - figure.left, words) + 2 * EDGE
  const below = ABOVE_ROWS + labels.length * ROW
  const height = TITLE_ROOM + (figure.top - figure.bottom) + below + 2 * EDGE
  // Where the figure's origin comes to lie: in the middle of the width.
  const origin = at((width - figure.left - figure.right) / 2, EDGE + below - figure.bottom)
  const rows = labels.flatMap(({ words: content, tip }, index) => {
    const place = at(EDGE + start(index), EDGE + below - ABOVE_ROWS - index * ROW)
    // Straight up past the rows above, which begin farther right, and from there to what it is about.
    const elbow = at(place.x, EDGE + below - ELBOW)
    const way =
      tip === undefined
        ? []
        : [line('dimension', place, elbow), ...leader(elbow, at(origin.x + tip.x, origin.y + tip.y))]
    return [...way, text(content, at(place.x + 1.5, place.y - TEXT_HEIGHT / 2), TEXT_HEIGHT, 'start')]
  })
  return {
    title,
    width,
    height,
    shapes: [
      text(title, at(EDGE, height - EDGE - TITLE_HEIGHT), TITLE_HEIGHT, 'start', { bold: true }),
      ...placed(figure.shapes, 1, origin),
      ...rows,
    ],
    bare: { figure, labels },
  }
}

/** The same with whose it is below everything: cut out of its page, it still says so. */
export function signed({ title, width, height, shapes, bare, instead }: Item, imprint: string): Item {
  const room = width - 2 * EDGE
  const lines = wrapped(imprint, SMALL_TEXT_HEIGHT, room)
  const below = lines.length * MARK_ROW + EDGE
  const rows = lines.map((words, index) =>
    text(
      words,
      at(EDGE, EDGE + (lines.length - 1 - index) * MARK_ROW),
      fittedHeight(words, SMALL_TEXT_HEIGHT, room),
      'start',
      { role: 'mark' },
    ),
  )
  return {
    title,
    width,
    height: height + below,
    shapes: [...placed(shapes, 1, at(0, below)), ...rows],
    bare,
    ...(instead && { instead: signed(instead, imprint) }),
  }
}
