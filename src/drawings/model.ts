import { type Mm, mm } from '#shared/units/length.ts'

/** Millimetres of the thing drawn, x to the right and y up. */
export type Point = { readonly x: Mm; readonly y: Mm }

export const at = (x: number, y: number): Point => ({ x: mm(x), y: mm(y) })

/** The point at a distance and an angle (degrees, counter-clockwise from the x axis) from a centre. */
export function polar(centre: Point, radius: number, angle: number): Point {
  const radians = (angle * Math.PI) / 180
  return at(centre.x + radius * Math.cos(radians), centre.y + radius * Math.sin(radians))
}

/** An angle in degrees as one from 0 up to a full turn. */
export const withinTurn = (angle: number): number => ((angle % 360) + 360) % 360

/**
 * The purpose of a line; its look is a writer's business. The first five are lines of an engineering drawing
 * (ISO 128-2): `outline` continuous and wide, `hidden` dashed, `centre` long dash and dot, `dimension` and `hatch`
 * continuous and narrow. On templates: `finish` is the line to work to, `saw` the one to saw by, `hole` is drilled, and
 * `layout` is pricked through to the wood. `frame` is of the sheet, `mark` for measuring it and laying it beside others.
 */
export type Role =
  | 'outline'
  | 'hidden'
  | 'centre'
  | 'dimension'
  | 'hatch'
  | 'finish'
  | 'saw'
  | 'hole'
  | 'layout'
  | 'frame'
  | 'mark'

/**
 * One point of a polyline, with what leads on from it: a straight line, or an arc. `bulge` is the tangent of a quarter
 * of the angle that the arc spans, above 0 counter-clockwise; 0, or left out, is straight; 1 is half a circle.
 */
export type Vertex = Point & { readonly bulge?: number }

/** On which side of its line a closed outline is cut, so that what is for use keeps the size that is drawn. */
export type CutSide = 'outside' | 'inside'

/** Full size, millimetres, angles in degrees counter-clockwise from the x axis. */
export type Shape = { readonly role: Role } & (
  | { readonly kind: 'line'; readonly from: Point; readonly to: Point }
  | {
      readonly kind: 'circle'
      readonly centre: Point
      readonly radius: Mm
      readonly filled?: boolean
      readonly cut?: CutSide
    }
  | {
      readonly kind: 'arc'
      readonly centre: Point
      readonly radius: Mm
      /** Counter-clockwise from here … */
      readonly start: number
      /** … to here. */
      readonly end: number
    }
  | {
      readonly kind: 'polyline'
      readonly points: readonly Vertex[]
      readonly closed?: boolean
      /** Arrow heads, bars. With straight sides only. */
      readonly filled?: boolean
      /** Of a closed one. */
      readonly cut?: CutSide
    }
  | {
      readonly kind: 'text'
      readonly text: string
      /** On the base line: its left end, its middle, or its right end. */
      readonly at: Point
      /** Height of a capital letter (ISO 3098-1). */
      readonly height: Mm
      readonly anchor: 'start' | 'middle' | 'end'
      /** Degrees counter-clockwise; 0 when left out. */
      readonly turned?: number
      readonly bold?: boolean
    }
  | {
      /** For the camera of a phone: black on white wherever it stands. On paper alone. */
      readonly kind: 'code'
      /** Its lower left corner. */
      readonly at: Point
      readonly side: Mm
      readonly modules: number
      /** The dark ones as an SVG path: a module is 1, y goes down. */
      readonly path: string
    }
)
export type ShapeOf<Kind extends Shape['kind']> = Extract<Shape, { kind: Kind }>

/**
 * Full size, millimetres, y up, its lower left corner at 0. `scale` is how large it is meant to be put on paper: 0.5 for
 * 1:2. What only paper has, the height of a text say, is drawn so much larger. Knows nothing of pages, pixels or file
 * formats.
 */
export type Drawing = {
  readonly title: string
  /** For those who cannot see it. */
  readonly description: string
  readonly width: Mm
  readonly height: Mm
  readonly scale: number
  readonly shapes: readonly Shape[]
}

/** A part of a drawing for a narrow screen, and what is said of it in words below it. */
export type NarrowPart = {
  readonly title: string
  readonly drawing: Drawing
  readonly words: readonly string[]
  /** The sizes of the bearing, for where no table has them. */
  readonly sizes?: readonly string[]
}

type Leg = { readonly from: Vertex; readonly to: Vertex }

/** The straight lines and arcs of a polyline, one after another. */
export function legsOf({ points, closed }: ShapeOf<'polyline'>): readonly Leg[] {
  return points.flatMap((from, index) => {
    const to = points[index + 1] ?? (closed === true ? points[0] : undefined)
    return to === undefined ? [] : [{ from, to }]
  })
}

/** Radius of an arc by its chord c and its bulge b:  r = c (1 + b²) / (4 |b|)  (from tan(θ/4) = b). */
export function bulgeRadius(from: Vertex, to: Point): Mm {
  const bulge = Math.abs(from.bulge ?? 0)
  return mm((Math.hypot(to.x - from.x, to.y - from.y) * (1 + bulge * bulge)) / (4 * bulge))
}

type LegArc = Pick<ShapeOf<'arc'>, 'centre' | 'radius' | 'start' | 'end'>

/** The arc that a bulge makes of the way between two points, counter-clockwise from start to end. */
export function arcOfLeg(from: Vertex, to: Point): LegArc {
  const bulge = from.bulge ?? 0
  const radius = bulgeRadius(from, to)
  // From the chord's middle to the centre, to the left of the way: c (1 − b²) / (4 b).
  const part = (1 - bulge * bulge) / (4 * bulge)
  const centre = at((from.x + to.x) / 2 - part * (to.y - from.y), (from.y + to.y) / 2 + part * (to.x - from.x))
  const angle = (point: Point): number => (Math.atan2(point.y - centre.y, point.x - centre.x) * 180) / Math.PI
  const [first, last] = bulge > 0 ? [from, to] : [to, from]
  const start = angle(first)
  const end = angle(last)
  return { centre, radius: mm(radius), start, end: end > start ? end : end + 360 }
}
