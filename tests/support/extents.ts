import { legsOf, type Shape, type ShapeOf } from '#src/drawings/model.ts'
import { textWidth } from '#src/drawings/text-width.ts'

export type Extent = { readonly left: number; readonly bottom: number; readonly right: number; readonly top: number }

/** Part of a capital's height that a `g` or a `Ø` reaches below its base line, and above a capital: DejaVu Sans, measured. */
const DESCENT = 0.33
const ASCENT = 1.06

/** The box, upright, that a shape lies in: of a text, of every sign that may stand in it. */
export function extentOf(shape: Shape): Extent {
  switch (shape.kind) {
    case 'line':
      return around([shape.from, shape.to], 0)
    case 'circle':
    case 'arc':
      return around([shape.centre], shape.radius)
    case 'polyline':
      return around(shape.points, Math.max(0, ...legsOf(shape).map(sagitta)))
    case 'text':
      return around(cornersOf(shape), 0)
    default:
      return shape satisfies never
  }
}

type Spot = { readonly x: number; readonly y: number }

function around(spots: readonly Spot[], reach: number): Extent {
  const [xs, ys] = [spots.map(({ x }) => x), spots.map(({ y }) => y)]
  return {
    left: Math.min(...xs) - reach,
    right: Math.max(...xs) + reach,
    bottom: Math.min(...ys) - reach,
    top: Math.max(...ys) + reach,
  }
}

const sagitta = ({ from, to }: ReturnType<typeof legsOf>[number]): number =>
  (Math.abs(from.bulge ?? 0) * Math.hypot(to.x - from.x, to.y - from.y)) / 2

function cornersOf({ text, at, height, anchor, turned = 0, bold }: ShapeOf<'text'>): readonly Spot[] {
  const width = textWidth(text, height, bold)
  const left = anchor === 'start' ? 0 : anchor === 'middle' ? -width / 2 : -width
  const turn = (turned * Math.PI) / 180
  return [left, left + width].flatMap((along) =>
    [-DESCENT * height, ASCENT * height].map((up) => ({
      x: at.x + along * Math.cos(turn) - up * Math.sin(turn),
      y: at.y + along * Math.sin(turn) + up * Math.cos(turn),
    })),
  )
}

/** Whether two boxes share more than an edge. */
export const overlap = (one: Extent, other: Extent): boolean =>
  one.left < other.right && other.left < one.right && one.bottom < other.top && other.bottom < one.top
