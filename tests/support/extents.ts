import { arcOfLeg, legsOf, polar, type Shape, type ShapeOf } from '#src/drawings/model.ts'
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
      return around([shape.centre], shape.radius)
    case 'arc':
      return around(turningPoints(shape), 0)
    case 'polyline':
      return around([...shape.points, ...legsOf(shape).flatMap(bulging)], 0)
    case 'text':
      return around(cornersOf(shape), 0)
    case 'code':
      return around([shape.at, { x: shape.at.x + shape.side, y: shape.at.y + shape.side }], 0)
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

type Turn = Pick<ShapeOf<'arc'>, 'centre' | 'radius' | 'start' | 'end'>

/** The ends of an arc, and where it runs level or upright between them. */
function turningPoints({ centre, radius, start, end }: Turn): readonly Spot[] {
  const span = (((end - start) % 360) + 360) % 360
  const between = [0, 90, 180, 270].filter((angle) => (((angle - start) % 360) + 360) % 360 <= span)
  return [start, end, ...between].map((angle) => polar(centre, radius, angle))
}

const bulging = ({ from, to }: ReturnType<typeof legsOf>[number]): readonly Spot[] =>
  (from.bulge ?? 0) === 0 ? [] : turningPoints(arcOfLeg(from, to))

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
