import type { Shape } from '#src/drawings/model.ts'
import { at } from '#src/drawings/model.ts'
import { line } from '#src/drawings/shapes.ts'

type Rectangle = { readonly left: number; readonly right: number; readonly low: number; readonly high: number }
type Disc = { readonly x: number; readonly y: number; readonly radius: number }

/**
 * Lines that rise (1) or fall (−1) to the right at 45° across a rectangle, less what a groove's circle has taken. They lie on
 * one grid, wherever the rectangle is.
 */
export function hatched(
  { left, right, low, high }: Rectangle,
  slope: 1 | -1,
  spacing: number,
  gone?: Disc,
): readonly Shape[] {
  const step = spacing * Math.SQRT2
  const [lowest, highest] = slope === 1 ? [low - right, high - left] : [low + left, high + right]
  const shapes: Shape[] = []
  for (let index = Math.ceil(lowest / step); index * step < highest; index += 1) {
    const offset = index * step // the line is y = offset + slope x
    const ends = [(low - offset) * slope, (high - offset) * slope]
    const from = Math.max(left, Math.min(...ends))
    const to = Math.min(right, Math.max(...ends))
    for (const [start, end] of without(from, to, gone && chord(offset, slope, gone))) {
      if (end - start > spacing / 20)
        shapes.push(line('hatch', at(start, offset + slope * start), at(end, offset + slope * end)))
    }
  }
  return shapes
}

type Interval = readonly [from: number, to: number]

/** The interval in which the line y = offset + slope x lies inside a circle. */
function chord(offset: number, slope: 1 | -1, { x, y, radius }: Disc): Interval | undefined {
  const k = offset + slope * x - y
  const half = 2 * radius * radius - k * k
  if (!(half > 0)) return undefined
  const [middle, reach] = [x + (-slope * k) / 2, Math.sqrt(half) / 2]
  return [middle - reach, middle + reach]
}

function without(from: number, to: number, gone: Interval | undefined): readonly Interval[] {
  if (gone === undefined) return [[from, to]]
  return [
    [from, Math.min(to, gone[0])],
    [Math.max(from, gone[1]), to],
  ]
}
