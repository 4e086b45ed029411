import type { Mm } from '#shared/units/length.ts'
import { arcOfLeg, at, legsOf, type Point, polar, type Shape, type ShapeOf, withinTurn } from './model.ts'
import { arc, line } from './shapes.ts'

export type Window = { readonly left: number; readonly bottom: number; readonly right: number; readonly top: number }

/**
 * The part of some shapes that lies inside a window: lines and true arcs, cut at its edge. A filled shape, a text or a code stays
 * whole where its middle (a text or a code: its place) is inside, and is left out elsewhere.
 */
export function clipped(shapes: readonly Shape[], window: Window): readonly Shape[] {
  return shapes.flatMap((shape) => {
    switch (shape.kind) {
      case 'line':
        return clippedLine(shape, window)
      case 'circle':
        return clippedTurn(shape, 0, 360, window)
      case 'arc':
        return clippedTurn(shape, shape.start, shape.end, window)
      case 'polyline':
        return clippedPolyline(shape, window)
      case 'text':
      case 'code':
        return isInside(shape.at, window) ? [shape] : []
      default:
        return shape satisfies never
    }
  })
}

const isInside = ({ x, y }: Point, { left, bottom, right, top }: Window): boolean =>
  x >= left && x <= right && y >= bottom && y <= top

/** By the part of the line that lies on the inner side of each edge (Liang and Barsky 1984). */
function clippedLine({ role, from, to }: ShapeOf<'line'>, { left, bottom, right, top }: Window): readonly Shape[] {
  const [dx, dy] = [to.x - from.x, to.y - from.y]
  let [start, end] = [0, 1]
  for (const [way, room] of [
    [-dx, from.x - left],
    [dx, right - from.x],
    [-dy, from.y - bottom],
    [dy, top - from.y],
  ] as const) {
    if (way === 0 && room < 0) return []
    if (way < 0) start = Math.max(start, room / way)
    if (way > 0) end = Math.min(end, room / way)
  }
  if (!(start < end)) return []
  const point = (part: number): Point => at(from.x + part * dx, from.y + part * dy)
  return [line(role, point(start), point(end))]
}

type Turn = Pick<ShapeOf<'arc'>, 'role' | 'centre' | 'radius'>

/** An arc falls into pieces at the edges' lines; a piece is inside if its middle is. */
function clippedTurn(turn: Turn, start: number, end: number, window: Window): readonly Shape[] {
  const { role, centre, radius } = turn
  const span = end - start > 0 ? Math.min(end - start, 360) : withinTurn(end - start)
  const cuts = crossings(centre, radius, window)
    .map((angle) => withinTurn(angle - start))
    .filter((angle) => angle > 0 && angle < span)
    .toSorted((a, b) => a - b)
  const inner = [0, ...cuts].flatMap((from, index) => {
    const to = cuts[index] ?? span
    return isInside(polar(centre, radius, start + (from + to) / 2), window) ? [[from, to] as const] : []
  })
  if (cuts.length === 0 && inner.length > 0 && span === 360) return [{ role, kind: 'circle', centre, radius }]
  return inner.map(([from, to]) => arc(role, centre, radius, start + from, start + to))
}

/** The angles, in degrees, at which a circle crosses the lines that a window's edges lie on. */
function crossings({ x, y }: Point, radius: Mm, { left, bottom, right, top }: Window): readonly number[] {
  const degrees = (radians: number): number => (radians * 180) / Math.PI
  const upright = [left, right].flatMap((edge) => {
    const cosine = (edge - x) / radius
    return Math.abs(cosine) < 1 ? [degrees(Math.acos(cosine)), -degrees(Math.acos(cosine))] : []
  })
  const level = [bottom, top].flatMap((edge) => {
    const sine = (edge - y) / radius
    return Math.abs(sine) < 1 ? [degrees(Math.asin(sine)), 180 - degrees(Math.asin(sine))] : []
  })
  return [...upright, ...level]
}

function clippedPolyline(shape: ShapeOf<'polyline'>, window: Window): readonly Shape[] {
  const { points, filled, role } = shape
  if (points.every((point) => isInside(point, window)) && points.every(({ bulge = 0 }) => bulge === 0)) return [shape]
  if (filled === true) return isInside(middleOf(points), window) ? [shape] : []
  return legsOf(shape).flatMap(({ from, to }) => {
    if ((from.bulge ?? 0) === 0) return clippedLine({ role, kind: 'line', from, to }, window)
    const { centre, radius, start, end } = arcOfLeg(from, to)
    return clippedTurn({ role, centre, radius }, start, end, window)
  })
}

function middleOf(points: readonly Point[]): Point {
  const sum = points.reduce((all, { x, y }) => at(all.x + x, all.y + y), at(0, 0))
  return at(sum.x / points.length, sum.y / points.length)
}
