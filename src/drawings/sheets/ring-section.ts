import { grooveHalfWidth } from '#shared/geometry/groove.ts'
import type { Mm } from '#shared/units/length.ts'
import { at, type Point, type Shape, type Vertex } from '#src/drawings/model.ts'
import { line } from '#src/drawings/shapes.ts'
import { hatched } from './hatching.ts'

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
  /** The edges that are breaks, if only a part of the ring is shown. */
  readonly broken?: { readonly back: boolean; readonly sides: boolean }
}

/** The cut surface: its outline, and hatching at 45° (ISO 128-3), the two halves of a split ring hatched apart. */
export function ringSection(cut: RingCut, hatchSpacing: number): readonly Shape[] {
  return [...outline(cut), ...hatching(cut, hatchSpacing)]
}

/** The point where the groove meets the land, or the ring's side if the groove is wider than the ring. */
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
export function breakLine(from: Point, to: Point): Shape {
  const along = (part: number, aside: number): Point =>
    at(
      from.x + part * (to.x - from.x) - aside * (to.y - from.y),
      from.y + part * (to.y - from.y) + aside * (to.x - from.x),
    )
  const points = [from, along(0.46, 0), along(0.48, 0.05), along(0.52, -0.05), along(0.54, 0), to]
  return { role: 'dimension', kind: 'polyline', points }
}

function hatching(cut: RingCut, spacing: number): readonly Shape[] {
  const { outward, landRadius, backRadius, halfWidth, groove, split } = cut
  const [low, high] = [Math.min(landRadius, backRadius), Math.max(landRadius, backRadius)]
  const gone = { x: 0, y: landRadius + outward * (groove.depth - groove.radius), radius: groove.radius }
  const half = (left: number, right: number, slope: 1 | -1): readonly Shape[] =>
    hatched({ left, right, low, high }, slope, spacing, gone)
  if (!split) return half(-halfWidth, halfWidth, outward)
  return [...half(-halfWidth, 0, -1), ...half(0, halfWidth, 1)]
}
