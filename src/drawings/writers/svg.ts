import {
  bulgeRadius,
  type Drawing,
  legsOf,
  type Point,
  polar,
  type Shape,
  type ShapeOf,
  type Vertex,
  withinTurn,
} from '#src/drawings/model.ts'
import { CAPITAL_HEIGHT, LOOKS, type Look } from './looks.ts'

/** Digits behind the point: a ten thousandth of a millimetre on paper. */
const DIGITS = 4

/** Fonts that draw the same capitals if DejaVu is missing come first; then any that there are. */
const FONTS = "'DejaVu Sans','Bitstream Vera Sans',Verdana,sans-serif"

type Options = {
  /** White paper under the drawing, and black ink, whatever the page round it looks like. */
  readonly paper?: boolean
  /** For a page that gives it room: as wide as that, not as wide as its paper. */
  readonly fluid?: boolean
}

/**
 * A drawing as SVG on paper of its own size: width, height and view box in millimetres, attributes only, so that it
 * looks the same in an `<img>` and under any content security policy.
 *
 * @throws RangeError for a length that is not finite
 */
export function toSvg(drawing: Drawing, { paper = true, fluid = false }: Options = {}): string {
  const write = writerOf(drawing)
  const { width, height } = { width: write.length(drawing.width), height: write.length(drawing.height) }
  const size = fluid ? '' : ` width="${width}mm" height="${height}mm"`
  const body = runs(drawing.shapes).map(
    ({ look, shapes }) => `<g ${strokeOf(look)}>${shapes.map((shape) => write.shape(shape)).join('')}</g>`,
  )
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" role="img"${size} viewBox="0 0 ${width} ${height}"`,
    ` color="${paper ? '#000' : 'inherit'}" fill="none" stroke="currentColor" font-family="${FONTS}">`,
    `<title>${escaped(drawing.title)}</title><desc>${escaped(drawing.description)}</desc>`,
    paper ? `<rect width="${width}" height="${height}" fill="#fff" stroke="none"/>` : '',
    ...body,
    '</svg>\n',
  ].join('')
}

/** Shapes of one look after one another share a group. */
function runs(shapes: readonly Shape[]): readonly { readonly look: Look; readonly shapes: readonly Shape[] }[] {
  const found: { look: Look; shapes: Shape[] }[] = []
  for (const shape of shapes) {
    const look = LOOKS[shape.role]
    const last = found.at(-1)
    if (last?.look === look) last.shapes.push(shape)
    else found.push({ look, shapes: [shape] })
  }
  return found
}

const strokeOf = ({ width, dashes }: Look): string =>
  `stroke-width="${width}"${dashes === undefined ? '' : ` stroke-dasharray="${dashes.join(' ')}"`}`

const FILLED = ' fill="currentColor" stroke="none"'

function writerOf({ scale, height }: Drawing) {
  const length = (value: number): string => fixed(value * scale)
  const x = (point: Point): string => length(point.x)
  const y = (point: Point): string => length(height - point.y)
  const xy = (point: Point): string => `${x(point)} ${y(point)}`
  const circle = ({ centre, radius, filled }: ShapeOf<'circle'>): string =>
    `<circle cx="${x(centre)}" cy="${y(centre)}" r="${length(radius)}"${filled === true ? FILLED : ''}/>`
  const polyline = (shape: ShapeOf<'polyline'>): string => {
    const [first] = shape.points
    const start = first === undefined ? '' : `M${xy(first)}`
    const legs = legsOf(shape).map(({ from, to }) => ` ${leg(from, to)}`)
    const end = shape.closed === true ? 'Z' : ''
    return `<path d="${start}${legs.join('')}${end}"${shape.filled === true ? FILLED : ''}/>`
  }
  const leg = (from: Vertex, to: Point): string => {
    const { bulge = 0 } = from
    if (bulge === 0) return `L${xy(to)}`
    const radius = length(bulgeRadius(from, to))
    return `A${radius} ${radius} 0 ${Math.abs(bulge) > 1 ? 1 : 0} ${bulge > 0 ? 0 : 1} ${xy(to)}`
  }
  const arc = ({ centre, radius, start, end }: ShapeOf<'arc'>): string => {
    const [from, to] = [polar(centre, radius, start), polar(centre, radius, end)]
    const large = withinTurn(end - start) > 180 ? 1 : 0
    return `<path d="M${xy(from)} A${length(radius)} ${length(radius)} 0 ${large} 0 ${xy(to)}"/>`
  }
  const text = ({ text: words, at, height: capitals, anchor, turned = 0, bold }: ShapeOf<'text'>): string => {
    const place =
      turned === 0 ? `x="${x(at)}" y="${y(at)}"` : `transform="translate(${xy(at)}) rotate(${fixed(-turned)})"`
    const size = fixed((capitals * scale) / CAPITAL_HEIGHT)
    const weight = bold === true ? ' font-weight="bold"' : ''
    return `<text ${place} font-size="${size}" text-anchor="${anchor}"${weight}${FILLED}>${escaped(words)}</text>`
  }
  const code = ({ at, side, modules, path }: ShapeOf<'code'>): string => {
    const place = `translate(${x(at)} ${fixed((height - at.y - side) * scale)}) scale(${fixed((side * scale) / modules)})`
    const ground = `<path d="M0 0h${modules}v${modules}h-${modules}z" fill="#fff"/>`
    return `<g transform="${place}" stroke="none" shape-rendering="crispEdges">${ground}<path d="${path}" fill="#000"/></g>`
  }
  const shape = (one: Shape): string => {
    switch (one.kind) {
      case 'line':
        return `<path d="M${xy(one.from)} L${xy(one.to)}"/>`
      case 'circle':
        return circle(one)
      case 'arc':
        return arc(one)
      case 'polyline':
        return polyline(one)
      case 'text':
        return text(one)
      case 'code':
        return code(one)
      default:
        return one satisfies never
    }
  }
  return { length, shape }
}

/** @throws RangeError for a number that is not finite: a bug must not reach a browser as `NaN` */
function fixed(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a length must be finite, got ${value}`)
  const rounded = Number(value.toFixed(DIGITS))
  return rounded === 0 ? '0' : plain(rounded)
}

/** Without an exponent, which `String` would write from 1e21 up and below 1e-6; the latter was rounded away. */
const plain = (value: number): string => (Math.abs(value) < 1e21 ? String(value) : BigInt(value).toString())

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
}

/** A text as XML takes it: no sign of the mark-up, and none that XML forbids. */
const escaped = (text: string): string =>
  text
    .normalize('NFC')
    .replace(/[\p{Cc}\p{Cs}\uFFFE\uFFFF]/gu, ' ')
    .replace(/[&<>"']/g, (sign) => ENTITIES[sign] ?? sign)
