import { mm } from '#shared/units/length.ts'
import { at, type Point, polar, type Shape, type ShapeOf } from '#src/drawings/model.ts'
import { line, text } from '#src/drawings/shapes.ts'
import { fittedHeight } from '#src/drawings/text-width.ts'

/*
 * Annotations of a view (ISO 129-1), in millimetres on paper.
 */

/** Heights of ISO 3098-1, and a small one for tables. */
export const TEXT_HEIGHT = 2.5
export const SMALL_TEXT_HEIGHT = 1.8

const ARROW_LENGTH = 2.5
const ARROW_HALF_ANGLE = 9
/** Radius of the dot at the end of a line. */
const DOT = 0.5

/** Arrows that are nearer to each other than that point at their lines from outside. */
const LEAST_BETWEEN_ARROWS = 2.5 * ARROW_LENGTH

/** How far an extension line runs past its dimension line, and how far it stays away from the outline. */
const PAST = 1.5
const AWAY = 0.8

/** A filled arrow head whose tip is here, pointing at an angle in degrees. */
export function arrowHead(tip: Point, angle: number): Shape {
  const length = ARROW_LENGTH / Math.cos((ARROW_HALF_ANGLE * Math.PI) / 180)
  const points = [
    tip,
    polar(tip, length, angle + 180 - ARROW_HALF_ANGLE),
    polar(tip, length, angle + 180 + ARROW_HALF_ANGLE),
  ]
  return { role: 'dimension', kind: 'polyline', points, closed: true, filled: true }
}

/** A line to what a text is about, its arrow head on it. */
export function leader(from: Point, tip: Point): readonly Shape[] {
  const angle = (Math.atan2(tip.y - from.y, tip.x - from.x) * 180) / Math.PI
  return [line('dimension', from, tip), arrowHead(tip, angle)]
}

/** The same to what it is about, with a dot within its outline (ISO 128-22). */
export const leaderInto = (from: Point, within: Point): readonly Shape[] => [
  line('dimension', from, within),
  { role: 'dimension', kind: 'circle', centre: within, radius: mm(DOT), filled: true },
]

/** A dimension line up and down between two heights, with its arrows inside or, where there is no room, outside. */
export function uprightLine(x: number, low: number, high: number): readonly Shape[] {
  if (high - low >= LEAST_BETWEEN_ARROWS) {
    return [line('dimension', at(x, low), at(x, high)), arrowHead(at(x, low), -90), arrowHead(at(x, high), 90)]
  }
  const tail = 2 * ARROW_LENGTH
  return [
    line('dimension', at(x, low - tail), at(x, high + tail)),
    arrowHead(at(x, low), 90),
    arrowHead(at(x, high), -90),
  ]
}

/** The same, lying. */
export function levelLine(y: number, left: number, right: number): readonly Shape[] {
  if (right - left >= LEAST_BETWEEN_ARROWS) {
    return [line('dimension', at(left, y), at(right, y)), arrowHead(at(left, y), 180), arrowHead(at(right, y), 0)]
  }
  const tail = 2 * ARROW_LENGTH
  return [
    line('dimension', at(left - tail, y), at(right + tail, y)),
    arrowHead(at(left, y), 0),
    arrowHead(at(right, y), 180),
  ]
}

/** From an outline, a little away from it, to just past the dimension line at x. */
export function levelExtension(y: number, from: number, x: number): ShapeOf<'line'> {
  const way = Math.sign(x - from)
  return line('dimension', at(from + way * AWAY, y), at(x + way * PAST, y))
}

export function uprightExtension(x: number, from: number, y: number): Shape {
  const way = Math.sign(y - from)
  return line('dimension', at(x, from + way * AWAY), at(x, y + way * PAST))
}

/** A text as high as usual, or as low as its room asks for. */
export const fittedText = (
  words: string,
  place: Point,
  room: number,
  anchor: 'start' | 'middle' | 'end',
  options: { readonly height?: number; readonly turned?: number; readonly bold?: boolean } = {},
): Shape => {
  const { height = TEXT_HEIGHT, ...rest } = options
  return text(words, place, fittedHeight(words, height, room, rest.bold), anchor, rest)
}

/**
 * Heights for labels one above the other, each as near to what it is about as the others let it: in the order given, the
 * topmost first, `apart` from each other and within the band.
 *
 * @param preferred heights, falling; the band must have room for all of them
 */
export function stacked(preferred: readonly number[], apart: number, low: number, high: number): readonly number[] {
  const placed: number[] = []
  for (const [index, wanted] of preferred.entries()) {
    const above = placed[index - 1]
    const most = above === undefined ? high : above - apart
    const least = low + (preferred.length - 1 - index) * apart
    placed.push(Math.max(Math.min(wanted, most), least))
  }
  return placed
}
