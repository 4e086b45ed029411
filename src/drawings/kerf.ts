import { itemAt } from '#shared/numbers/item-at.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { arcOfLeg, at, legsOf, type Point, type Shape, type ShapeOf, type Vertex } from './model.ts'

/*
 * Outlines for a beam or a cutter that follows them with its middle: moved by half of its kerf, so that it takes that half from
 * the waste and what stays is as large as drawn.
 */

/** A shape whose line is followed, and the same for a beam of that width; undefined where it is too small for it. */
export function movedForKerf(shape: Shape, kerf: Mm): Shape | undefined {
  if (!('cut' in shape) || shape.cut === undefined || kerf === 0) return shape
  const by = shape.cut === 'outside' ? kerf / 2 : -kerf / 2
  if (shape.kind === 'circle') return shape.radius + by > 0 ? { ...shape, radius: mm(shape.radius + by) } : undefined
  const points = offset(shape, by)
  return points && { ...shape, points }
}

/** A whole line or circle that a leg lies on, already moved. */
type Track =
  | { readonly kind: 'line'; readonly through: Point; readonly along: Point }
  | { readonly kind: 'circle'; readonly centre: Point; readonly radius: number; readonly turn: 1 | -1 }

/**
 * A closed outline of lines and arcs moved outward (by above 0) or inward, corners kept: each leg is moved along its normal, and
 * neighbours meet where they cross nearest to their old corner.
 *
 * @returns undefined where an arc vanishes or neighbours no longer meet
 */
function offset(shape: ShapeOf<'polyline'>, by: number): readonly Vertex[] | undefined {
  const legs = legsOf(shape)
  const out = areaOf(shape.points) > 0 ? by : -by
  const tracks = legs.map(({ from, to }) => movedTrack(from, to, out))
  const corners: Point[] = []
  for (const [index, { from }] of legs.entries()) {
    const corner = meeting(itemAt(tracks, (index || legs.length) - 1), itemAt(tracks, index), from)
    if (corner === undefined) return undefined
    corners.push(corner)
  }
  return corners.map((corner, index): Vertex => {
    const track = itemAt(tracks, index)
    if (track.kind === 'line') return corner
    const next = itemAt(corners, (index + 1) % corners.length)
    const angle = ({ x, y }: Point): number => Math.atan2(y - track.centre.y, x - track.centre.x)
    const sweep = ((angle(next) - angle(corner)) * track.turn + 4 * Math.PI) % (2 * Math.PI)
    return { ...corner, bulge: track.turn * Math.tan(sweep / 4) }
  })
}

/** Twice the area that straight lines between the points enclose; above 0 counter-clockwise. */
const areaOf = (points: readonly Point[]): number =>
  points.reduce((sum, { x, y }, index) => {
    const next = itemAt(points, (index + 1) % points.length)
    return sum + x * next.y - next.x * y
  }, 0)

/** To the right of its way by so much. */
function movedTrack(from: Vertex, to: Point, right: number): Track {
  const { bulge = 0 } = from
  if (bulge !== 0) {
    const { centre, radius } = arcOfLeg(from, to)
    const turn = bulge > 0 ? 1 : -1
    return { kind: 'circle', centre, radius: radius + turn * right, turn }
  }
  const length = Math.hypot(to.x - from.x, to.y - from.y)
  const along = at((to.x - from.x) / length, (to.y - from.y) / length)
  return { kind: 'line', through: at(from.x + along.y * right, from.y - along.x * right), along }
}

/** Where two neighbours cross, the nearer place to their old corner. No two arcs of ours are neighbours. */
function meeting(one: Track, other: Track, near: Point): Point | undefined {
  if (one.kind === 'line' && other.kind === 'line') return crossing(one, other)
  const [line, circle] = one.kind === 'line' ? [one, other] : [other, one]
  if (line.kind !== 'line' || circle.kind !== 'circle')
    throw new RangeError('neighbours must be lines, or a line and an arc, got two arcs')
  const { through, along } = line
  const { centre, radius } = circle
  // The foot of the centre on the line, and half the chord that the circle cuts from it.
  const way = (centre.x - through.x) * along.x + (centre.y - through.y) * along.y
  const foot = at(through.x + way * along.x, through.y + way * along.y)
  const half = Math.sqrt((radius - distance(foot, centre)) * (radius + distance(foot, centre)))
  if (!(radius > 0 && half >= 0)) return undefined
  const [first, second] = [-half, half].map((step) => at(foot.x + step * along.x, foot.y + step * along.y)) as [
    Point,
    Point,
  ]
  return distance(first, near) < distance(second, near) ? first : second
}

type Line = Extract<Track, { kind: 'line' }>

function crossing({ through, along }: Line, other: Line): Point | undefined {
  const turn = along.x * other.along.y - along.y * other.along.x
  const [x, y] = [other.through.x - through.x, other.through.y - through.y]
  const way = (x * other.along.y - y * other.along.x) / turn
  return Number.isFinite(way) ? at(through.x + way * along.x, through.y + way * along.y) : undefined
}

const distance = (one: Point, other: Point): number => Math.hypot(one.x - other.x, one.y - other.y)
