import { grooveHalfWidth } from '#shared/geometry/groove.ts'
import type { Mm } from '#shared/units/length.ts'
import { at, type Point, type Shape, type Vertex } from '#src/drawings/model.ts'
import { line } from '#src/drawings/shapes.ts'

/** One ring cut along its axis, above the axis: x along the axis from the middle of the groove, y out from the axis. */
export type RingCut = {
  /** 1 where the groove is cut outward (the outer ring), −1 where it is cut inward. */
  readonly outward: 1 | -1
  readonly landRadius: Mm
  /** The cylinder on the ring's other side: its outside, or its bore. */
  readonly backRadius: Mm
  readonly halfWidth: Mm
  readonly groove: { readonly radius: Mm; readonly depth: Mm }
  /** Comes apart at mid groove. */
  readonly split: boolean
  /** Where only a part of the ring is shown, its edges are breaks. */
  readonly broken?: { readonly back: boolean; readonly sides: boolean }
}

/** The cut surface: its outline, and hatching at 45° (ISO 128-3), the two halves of a split ring hatched apart. */
export function ringSection(cut: RingCut, hatchSpacing: number): readonly Shape[] {
  return [...outline(cut), ...hatching(cut, hatchSpacing)]
}

/** Where the groove meets the land, or the ring's side where the groove is wider than the ring. */
function grooveEdge({ outward, landRadius, halfWidth, groove }: RingCut): Point {
  const wide = grooveHalfWidth(groove)
  if (wide <= halfWidth) return at(wide, landRadius)
  const below = groove.radius - Math.sqrt((groove.radius - halfWidth) * (groove.radius + halfWidth))
  return at(halfWidth, landRadius + outward * (groove.depth - below))
}

function outline(cut: RingCut): readonly Shape[] {
  const { outward, landRadius, backRadius, halfWidth, groove, split, broken } = cut
  const edge = grooveEdge(cut)
  const corner = edge.x < halfWidth ? landRadius : edge.y
  // From the left edge of the groove to its right one, through the bottom: clockwise where the bottom is above.
  const bulge = -outward * Math.tan(Math.asin(Math.min(1, edge.x / groove.radius)) / 2)
  const inside: Vertex[] = [
    at(-halfWidth, corner),
    { ...at(-edge.x, edge.y), bulge },
    at(edge.x, edge.y),
    at(halfWidth, corner),
  ]
  const edgeOf = (isBreak: boolean | undefined, from: Point, to: Point): Shape =>
    isBreak === true ? breakLine(from, to) : line('outline', from, to)
  return [
    { role: 'outline', kind: 'polyline', points: inside },
    edgeOf(broken?.sides, at(-halfWidth, corner), at(-halfWidth, backRadius)),
    edgeOf(broken?.sides, at(halfWidth, corner), at(halfWidth, backRadius)),
    edgeOf(broken?.back, at(-halfWidth, backRadius), at(halfWidth, backRadius)),
    ...(split ? [line('outline', at(0, landRadius + outward * groove.depth), at(0, backRadius))] : []),
  ]
}

/** A narrow line with a zigzag: the part goes on (ISO 128-2). */
function breakLine(from: Point, to: Point): Shape {
  const along = (part: number, aside: number): Point =>
    at(
      from.x + part * (to.x - from.x) - aside * (to.y - from.y),
      from.y + part * (to.y - from.y) + aside * (to.x - from.x),
    )
  const points = [from, along(0.46, 0), along(0.48, 0.05), along(0.52, -0.05), along(0.54, 0), to]
  return { role: 'dimension', kind: 'polyline', points }
}

function hatching(cut: RingCut, spacing: number): readonly Shape[] {
  const { outward, halfWidth, split } = cut
  if (!split) return hatched(cut, -halfWidth, halfWidth, outward, spacing)
  return [...hatched(cut, -halfWidth, 0, -1, spacing), ...hatched(cut, 0, halfWidth, 1, spacing)]
}

/** Lines that rise (1) or fall (−1) to the right at 45° across a rectangle, less what the groove's circle has taken. */
function hatched(cut: RingCut, left: number, right: number, slope: 1 | -1, spacing: number): readonly Shape[] {
  const { outward, landRadius, backRadius, groove } = cut
  const [low, high] = [Math.min(landRadius, backRadius), Math.max(landRadius, backRadius)]
  const centre = landRadius + outward * (groove.depth - groove.radius)
  const step = spacing * Math.SQRT2
  const [lowest, highest] = slope === 1 ? [low - right, high - left] : [low + left, high + right]
  const shapes: Shape[] = []
  for (let index = Math.ceil(lowest / step); index * step < highest; index += 1) {
    const offset = index * step // the line is y = offset + slope x
    const ends = [(low - offset) * slope, (high - offset) * slope]
    const from = Math.max(left, Math.min(...ends))
    const to = Math.min(right, Math.max(...ends))
    for (const [start, end] of without(from, to, chord(offset - centre, slope, groove.radius))) {
      if (end - start > spacing / 20)
        shapes.push(line('hatch', at(start, offset + slope * start), at(end, offset + slope * end)))
    }
  }
  return shapes
}

type Interval = readonly [from: number, to: number]

/** Where the line y = k + slope x runs inside the circle round the origin. */
function chord(k: number, slope: 1 | -1, radius: number): Interval | undefined {
  const half = 2 * radius * radius - k * k
  if (!(half > 0)) return undefined
  const [middle, reach] = [(-slope * k) / 2, Math.sqrt(half) / 2]
  return [middle - reach, middle + reach]
}

function without(from: number, to: number, gone: Interval | undefined): readonly Interval[] {
  if (gone === undefined) return [[from, to]]
  return [
    [from, Math.min(to, gone[0])],
    [Math.max(from, gone[1]), to],
  ]
}
