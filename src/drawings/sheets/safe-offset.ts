import { lastOf } from '#shared/numbers/item-at.ts'
import { mm } from '#shared/units/length.ts'
import { at, type Drawing, type Point, type Shape } from '#src/drawings/model.ts'
import { line, text } from '#src/drawings/shapes.ts'
import { fittedHeight } from '#src/drawings/text-width.ts'
import { ticks } from './distribution.ts'

/*
 * How far from the axis a load may stand at each speed: the curve, safe below it, with the speed of a hand as a line of its own. All
 * words and numbers come ready made.
 */

const WIDTH = mm(180)
const PLOT = { left: 22, right: 174, bottom: 34, top: 104 }
const TITLE_HEIGHT = 3.2
const TEXT_HEIGHT = 2.4
const ROW = 5
const MOST_ALONG = 8
const MOST_UP = 6
const ROOM_ALONG = (PLOT.right - PLOT.left) / MOST_ALONG - 1.5

export interface SafeOffsets {
  readonly title: string
  readonly description: string
  /** From rest to the fastest speed that is shown. */
  readonly curve: readonly { readonly offset: number; readonly speed: number }[]
  readonly byHand: { readonly speed: number; readonly text: string }
  readonly across: string
  readonly up: string
  readonly safe: string
  readonly unsafe: string
  readonly foot: readonly string[]
}

/** The picture of a curve, as large as it is on paper. Numbers are finite, the first offset and the last speed above 0. */
export function safeOffsetSheet(sheet: SafeOffsets): Drawing {
  const { title, description, curve, byHand, foot } = sheet
  const fastest = lastOf(curve).speed
  const widest = Math.max(...curve.map(({ offset }) => offset))
  const across = (speed: number) => PLOT.left + (speed / fastest) * (PLOT.right - PLOT.left)
  const up = (offset: number) => PLOT.bottom + (offset / widest) * 0.95 * (PLOT.top - PLOT.bottom)
  const points = curve.map(({ offset, speed }) => at(across(speed), up(offset)))
  const row = (words: string, y: number, height = TEXT_HEIGHT): Shape =>
    text(words, at(PLOT.left, y), fittedHeight(words, height, PLOT.right - PLOT.left), 'start')
  const hand = across(byHand.speed)
  return {
    title,
    description,
    width: WIDTH,
    height: mm(PLOT.top + 14),
    scale: 1,
    shapes: [
      row(title, PLOT.top + 7, TITLE_HEIGHT),
      { role: 'outline', kind: 'polyline', points },
      ...axes(sheet, { fastest, widest, across, up }),
      line('centre', at(hand, PLOT.bottom), at(hand, PLOT.top)),
      text(byHand.text, at(hand + 1.5, PLOT.top - 3), TEXT_HEIGHT, 'start'),
      text(sheet.safe, at(PLOT.left + 4, PLOT.bottom + 4), TEXT_HEIGHT, 'start'),
      text(sheet.unsafe, at(PLOT.right - 4, PLOT.top - 12), TEXT_HEIGHT, 'end'),
      ...foot.map((words, index) => row(words, PLOT.bottom - 18 - ROW * index)),
    ],
  }
}

interface Scales {
  readonly fastest: number
  readonly widest: number
  readonly across: (speed: number) => number
  readonly up: (offset: number) => number
}

function axes(sheet: SafeOffsets, { fastest, widest, across, up }: Scales): readonly Shape[] {
  const { left, right, bottom, top } = PLOT
  const corner: Point = at(left, bottom)
  return [
    line('dimension', corner, at(right, bottom)),
    line('dimension', corner, at(left, top)),
    ...ticks(0, fastest, MOST_ALONG).flatMap(({ value, label }): readonly Shape[] => [
      line('dimension', at(across(value), bottom), at(across(value), bottom - 1.5)),
      text(label, at(across(value), bottom - 5), fittedHeight(label, TEXT_HEIGHT, ROOM_ALONG), 'middle'),
    ]),
    ...ticks(0, widest, MOST_UP).flatMap(({ value, label }): readonly Shape[] => [
      line('dimension', at(left, up(value)), at(left - 1.5, up(value))),
      text(label, at(left - 2.5, up(value) - 0.9), TEXT_HEIGHT, 'end'),
    ]),
    text(sheet.across, at((left + right) / 2, bottom - 10.5), TEXT_HEIGHT, 'middle'),
    text(sheet.up, at(6, (bottom + top) / 2), TEXT_HEIGHT, 'middle', { turned: 90 }),
  ]
}
