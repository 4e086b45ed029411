import { type Mm, mm } from '#shared/units/length.ts'
import { at, type CutSide, type Point, type Role, type Shape, type ShapeOf, type Vertex } from './model.ts'

/*
 * Shapes in one line each, and moved as a whole.
 */

export const line = (role: Role, from: Point, to: Point): ShapeOf<'line'> => ({ role, kind: 'line', from, to })

export const circle = (role: Role, centre: Point, radius: number, cut?: CutSide): Shape => ({
  role,
  kind: 'circle',
  centre,
  radius: mm(radius),
  ...(cut && { cut }),
})

export const arc = (role: Role, centre: Point, radius: number, start: number, end: number): Shape => ({
  role,
  kind: 'arc',
  centre,
  radius: mm(radius),
  start,
  end,
})

export const loop = (role: Role, points: readonly Vertex[], cut?: CutSide): Shape => ({
  role,
  kind: 'polyline',
  points,
  closed: true,
  ...(cut && { cut }),
})

export const box = (role: Role, left: number, bottom: number, right: number, top: number, cut?: CutSide): Shape =>
  loop(role, [at(left, bottom), at(right, bottom), at(right, top), at(left, top)], cut)

/** A level and an upright line through a centre, so far to every side. */
export const cross = (role: Role, centre: Point, reach: number): readonly Shape[] => [
  line(role, at(centre.x - reach, centre.y), at(centre.x + reach, centre.y)),
  line(role, at(centre.x, centre.y - reach), at(centre.x, centre.y + reach)),
]

type TextOptions = Pick<ShapeOf<'text'>, 'turned' | 'bold'> & { readonly role?: Role }

export const text = (
  words: string,
  place: Point,
  height: number,
  anchor: ShapeOf<'text'>['anchor'],
  { role = 'dimension', ...rest }: TextOptions = {},
): Shape => ({ role, kind: 'text', text: words, at: place, height: mm(height), anchor, ...rest })

/** Everything so many times as large, from the corner at 0, and then moved there. */
export function placed(shapes: readonly Shape[], factor: number, to: Point = at(0, 0)): readonly Shape[] {
  const move = (point: Point): Point => at(point.x * factor + to.x, point.y * factor + to.y)
  const size = (length: Mm): Mm => mm(length * factor)
  return shapes.map((shape): Shape => {
    switch (shape.kind) {
      case 'line':
        return { ...shape, from: move(shape.from), to: move(shape.to) }
      case 'circle':
      case 'arc':
        return { ...shape, centre: move(shape.centre), radius: size(shape.radius) }
      case 'polyline':
        return { ...shape, points: shape.points.map((point) => ({ ...point, ...move(point) })) }
      case 'text':
        return { ...shape, at: move(shape.at), height: size(shape.height) }
      case 'code':
        return { ...shape, at: move(shape.at), side: size(shape.side) }
      default:
        return shape satisfies never
    }
  })
}
