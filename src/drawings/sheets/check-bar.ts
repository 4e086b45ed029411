import { at, type Shape } from '#src/drawings/model.ts'
import { line, text } from '#src/drawings/shapes.ts'
import { CHECK_BAR } from '#src/words/drawing.ts'
import { SMALL_TEXT_HEIGHT, TEXT_HEIGHT } from './annotations.ts'

/** Height of the bar with its words. */
export const CHECK_BAR_HEIGHT = 20
export const CHECK_BAR_WIDTH = 178

const MILLIMETRES = 100
const INCHES = 4
const INCH = 25.4
/** The longer of both bars. */
export const BAR_WIDTH = INCHES * INCH

/** To be measured before anything is cut: printers shrink pages. Its lower left corner is where it says. */
export function checkBar(left: number, bottom: number): readonly Shape[] {
  const upper = bottom + 10
  const lower = bottom + 3
  const words = left + INCHES * INCH + 6
  return [
    ...ruler(left, upper, MILLIMETRES, 10, 5),
    ...ruler(left, lower, INCHES * INCH, INCH / 2, 2),
    text(`${MILLIMETRES} mm`, at(left + MILLIMETRES, upper + 3.6), SMALL_TEXT_HEIGHT, 'end', { role: 'mark' }),
    text(`${INCHES} in`, at(left + INCHES * INCH, lower + 3.6), SMALL_TEXT_HEIGHT, 'end', { role: 'mark' }),
    text(CHECK_BAR.title, at(words, upper), TEXT_HEIGHT, 'start', { role: 'mark', bold: true }),
    ...CHECK_BAR.lines.map((content, index) =>
      text(content, at(words, upper - 5 - 3.5 * index), SMALL_TEXT_HEIGHT, 'start', { role: 'mark' }),
    ),
  ]
}

/** A line with ticks, every so many of them longer. */
function ruler(left: number, y: number, length: number, step: number, longEvery: number): readonly Shape[] {
  const ticks = Array.from({ length: Math.round(length / step) + 1 }, (_, index) =>
    line('mark', at(left + index * step, y), at(left + index * step, y + (index % longEvery === 0 ? 3 : 1.8))),
  )
  return [line('mark', at(left, y), at(left + length, y)), ...ticks]
}
