import { itemAt } from '#shared/numbers/item-at.ts'
import { at, type Shape } from '#src/drawings/model.ts'
import type { ProjectionAngle } from '#src/drawings/papers.ts'
import { circle, line, loop } from '#src/drawings/shapes.ts'
import { fittedHeight, textWidth, wrapped } from '#src/drawings/text-width.ts'
import { fittedText, SMALL_TEXT_HEIGHT, TEXT_HEIGHT } from './annotations.ts'

type TitleBlock = {
  readonly title: string
  readonly subtitle: string
  /** Name and value of each cell of the row of facts. */
  readonly facts: readonly (readonly [name: string, value: string])[]
  /** The same of people and dates, for a pen where nothing is known of them. */
  readonly people: readonly (readonly [name: string, value: string])[]
  readonly note: string
  readonly projection: ProjectionAngle
}

type Frame = { readonly left: number; readonly bottom: number; readonly right: number; readonly top: number }

/** Parts of the height at which the rows end, from the top. */
const FACTS_FROM = 0.38
const PEOPLE_FROM = 0.63
const NOTE_FROM = 0.86
const NAME_HEIGHT = 1.6
const [ONE_ROW, TWO_ROWS] = [3.5, 2.2]
/** Free beside the words of a cell, and the width of one that is filled in by hand. */
const CELL = 2
const FOR_A_PEN = 20

/** Who and what, at which scale and in which unit (ISO 7200), without a date of its own: the same input gives the same sheet. */
export function titleBlock(
  { title, subtitle, facts, people, note, projection }: TitleBlock,
  frame: Frame,
): readonly Shape[] {
  const { left, bottom, right, top } = frame
  const height = top - bottom
  const [rule, second, third] = [FACTS_FROM, PEOPLE_FROM, NOTE_FROM].map((part) => top - part * height) as [
    number,
    number,
    number,
  ]
  const room = right - left - 4
  return [
    ...titleRows(title, room - SYMBOL_NEEDS).map(({ words, down, size }) =>
      fittedText(words, at(left + 2, top - height * down), room - SYMBOL_NEEDS, 'start', { height: size, bold: true }),
    ),
    fittedText(subtitle, at(left + 2, top - height * 0.33), room - SYMBOL_NEEDS, 'start'),
    ...projectionSymbol(projection, right - SYMBOL_NEEDS, (top + rule) / 2),
    ...[rule, second, third].map((y) => line('frame', at(left, y), at(right, y))),
    ...cells(facts, { left, bottom: second, right, top: rule }),
    ...cells(people, { left, bottom: third, right, top: second }),
    fittedText(note, at(left + 2, bottom + (third - bottom - SMALL_TEXT_HEIGHT) / 2), room, 'start', {
      height: SMALL_TEXT_HEIGHT,
    }),
  ]
}

/** In one line; or, where that would be too small to read, in two that are larger. */
function titleRows(title: string, room: number) {
  const rows = wrapped(title, TWO_ROWS, room, true)
  const isSmall = fittedHeight(title, ONE_ROW, room, true) < TWO_ROWS
  if (!isSmall || rows.length !== 2) return [{ words: title, down: 0.17, size: ONE_ROW }]
  return rows.map((words, index) => ({ words, down: 0.11 + 0.1 * index, size: TWO_ROWS }))
}

function cells(facts: readonly (readonly [name: string, value: string])[], frame: Frame): readonly Shape[] {
  const { left, bottom, right, top } = frame
  const needs = facts.map(([name, value]) =>
    value === '' ? FOR_A_PEN : CELL + Math.max(textWidth(name, NAME_HEIGHT), textWidth(value, TEXT_HEIGHT)),
  )
  const free = (right - left - needs.reduce((sum, need) => sum + need, 0)) / facts.length
  return facts.flatMap(([name, value], index) => {
    const wide = itemAt(needs, index) + free
    const x = needs.slice(0, index).reduce((sum, need) => sum + need + free, left)
    return [
      ...(index > 0 ? [line('frame', at(x, bottom), at(x, top))] : []),
      fittedText(name, at(x + CELL / 2, top - NAME_HEIGHT - 1), wide - CELL, 'start', { height: NAME_HEIGHT }),
      ...(value === ''
        ? []
        : [fittedText(value, at(x + CELL / 2, bottom + 1.2), wide - CELL, 'start', { height: TEXT_HEIGHT })]),
    ]
  })
}

/** The cone of the symbol: so wide at its small end, twice that at its large one and along its axis. */
const SMALL_END = 2.2
const SYMBOL_NEEDS = 5.5 * SMALL_END + 2

/**
 * A cone from the side and from its small end (ISO 5456-2). Seen from the left, the circles stand on the right in first angle
 * and on the left in third angle: on the side from which nothing of either is hidden.
 */
function projectionSymbol(angle: ProjectionAngle, left: number, y: number): readonly Shape[] {
  const [d, long] = [SMALL_END, 2 * SMALL_END]
  const apart = 3.5 * d
  const [cone, circles] = angle === 'first' ? [left, left + apart + d] : [left + long + d / 2, left + d]
  return [
    loop('outline', [at(cone, y - d / 2), at(cone + long, y - d), at(cone + long, y + d), at(cone, y + d / 2)]),
    circle('outline', at(circles, y), d / 2),
    circle('outline', at(circles, y), d),
    line('centre', at(left - 1, y), at(left + SYMBOL_NEEDS - 1.5, y)),
    line('centre', at(circles, y - 1.3 * d), at(circles, y + 1.3 * d)),
  ]
}
