import {
  type Drawing,
  type Point,
  type Role,
  type Shape,
  type ShapeOf,
  type Vertex,
  withinTurn,
} from '#src/drawings/model.ts'
import { LOOKS } from './looks.ts'

/** The purpose of a layer, its line type and its colour (DXF colour index; 7 is black on white and white on black). */
type Layer = { readonly name: string; readonly lineType: keyof typeof LINE_TYPES; readonly colour: number }

/** Dashes and gaps on paper, in millimetres; a drawing that is put on paper smaller has them longer. */
const LINE_TYPES = {
  CONTINUOUS: [],
  HIDDEN: dashesOf('hidden'),
  CENTER: dashesOf('centre'),
  DASHED: dashesOf('saw'),
} as const satisfies Record<string, readonly number[]>

/** A gap is a length below 0. */
function dashesOf(role: Role): readonly number[] {
  return (LOOKS[role].dashes ?? []).map((length, index) => (index % 2 === 0 ? length : -length))
}

/** A layer for each purpose, so that a machine cuts by FINISH or SAW and leaves the rest alone. */
const LAYERS: Readonly<Record<Role, Layer>> = {
  outline: { name: 'OUTLINE', lineType: 'CONTINUOUS', colour: 7 },
  hidden: { name: 'HIDDEN', lineType: 'HIDDEN', colour: 8 },
  centre: { name: 'CENTRE', lineType: 'CENTER', colour: 4 },
  dimension: { name: 'DIMENSIONS', lineType: 'CONTINUOUS', colour: 3 },
  hatch: { name: 'HATCH', lineType: 'CONTINUOUS', colour: 9 },
  finish: { name: 'FINISH', lineType: 'CONTINUOUS', colour: 1 },
  saw: { name: 'SAW', lineType: 'DASHED', colour: 5 },
  hole: { name: 'HOLES', lineType: 'CONTINUOUS', colour: 6 },
  layout: { name: 'LAYOUT', lineType: 'CONTINUOUS', colour: 2 },
  frame: { name: 'FRAME', lineType: 'CONTINUOUS', colour: 8 },
  mark: { name: 'MARKS', lineType: 'CONTINUOUS', colour: 8 },
}

/** One line for the code, one for the value. */
type Group = readonly [code: number, value: string | number]

/**
 * A drawing as DXF of release 12, full size, its unit the millimetre, a layer for each purpose, circles and arcs as such:
 * what cutting programs read.
 *
 * @throws RangeError for a number that is not finite, or a radius that is not above 0
 */
export function toDxf(drawing: Drawing): string {
  const { width, height, shapes } = drawing
  const groups: readonly Group[] = [
    ...section('HEADER', [
      ...variable('$ACADVER', [[1, 'AC1009']]),
      ...variable('$INSUNITS', [[70, 4]]),
      ...variable('$MEASUREMENT', [[70, 1]]),
      ...variable('$LTSCALE', [[40, fixed(1 / drawing.scale)]]),
      ...variable('$EXTMIN', [...xyz(10, { x: 0, y: 0 })]),
      ...variable('$EXTMAX', [...xyz(10, { x: width, y: height })]),
    ]),
    ...section('TABLES', [...lineTypes(), ...layers(), ...styles()]),
    ...section('ENTITIES', shapes.flatMap(entity)),
    [0, 'EOF'],
  ]
  return groups.map(([code, value]) => `${code}\r\n${value}\r\n`).join('')
}

const section = (name: string, inner: readonly Group[]): readonly Group[] => [
  [0, 'SECTION'],
  [2, name],
  ...inner,
  [0, 'ENDSEC'],
]

const variable = (name: string, value: readonly Group[]): readonly Group[] => [[9, name], ...value]

const table = (name: string, count: number, rows: readonly Group[]): readonly Group[] => [
  [0, 'TABLE'],
  [2, name],
  [70, count],
  ...rows,
  [0, 'ENDTAB'],
]

function lineTypes(): readonly Group[] {
  const types = Object.entries(LINE_TYPES)
  const rows = types.flatMap(([name, dashes]): readonly Group[] => [
    [0, 'LTYPE'],
    [2, name],
    [70, 0],
    [3, name.toLowerCase()],
    [72, 65],
    [73, dashes.length],
    [40, fixed(dashes.reduce((sum, dash) => sum + Math.abs(dash), 0))],
    ...dashes.map((dash): Group => [49, fixed(dash)]),
  ])
  return table('LTYPE', types.length, rows)
}

function layers(): readonly Group[] {
  const all = Object.values(LAYERS)
  const rows = all.flatMap(({ name, lineType, colour }): readonly Group[] => [
    [0, 'LAYER'],
    [2, name],
    [70, 0],
    [62, colour],
    [6, lineType],
  ])
  // Every drawing has a layer 0.
  const zero: readonly Group[] = [
    [0, 'LAYER'],
    [2, '0'],
    [70, 0],
    [62, 7],
    [6, 'CONTINUOUS'],
  ]
  return table('LAYER', all.length + 1, [...zero, ...rows])
}

const styles = (): readonly Group[] =>
  table('STYLE', 1, [
    [0, 'STYLE'],
    [2, 'STANDARD'],
    [70, 0],
    [40, '0.0'],
    [41, '1.0'],
    [50, '0.0'],
    [71, 0],
    [42, '2.5'],
    [3, 'txt'],
    [4, ''],
  ])

function entity(shape: Shape): readonly Group[] {
  const on: Group = [8, LAYERS[shape.role].name]
  switch (shape.kind) {
    case 'line':
      return [[0, 'LINE'], on, ...xyz(10, shape.from), ...xyz(11, shape.to)]
    case 'circle':
      return [[0, 'CIRCLE'], on, ...xyz(10, shape.centre), [40, radius(shape.radius)]]
    case 'arc':
      return [
        [0, 'ARC'],
        on,
        ...xyz(10, shape.centre),
        [40, radius(shape.radius)],
        [50, fixed(withinTurn(shape.start))],
        [51, fixed(withinTurn(shape.end))],
      ]
    case 'polyline':
      return shape.filled === true && shape.points.length === 3 ? triangle(shape, on) : polyline(shape, on)
    case 'text':
      return textEntity(shape, on)
    case 'code':
      return []
    default:
      return shape satisfies never
  }
}

/** A filled triangle: its last corner is given twice. */
function triangle({ points }: ShapeOf<'polyline'>, on: Group): readonly Group[] {
  const corners = [...points, ...points.slice(-1)]
  return [[0, 'SOLID'], on, ...corners.flatMap((corner, index) => xyz(10 + index, corner))]
}

function polyline({ points, closed }: ShapeOf<'polyline'>, on: Group): readonly Group[] {
  const vertex = (point: Vertex): readonly Group[] => [
    [0, 'VERTEX'],
    on,
    ...xyz(10, point),
    ...((point.bulge ?? 0) === 0 ? [] : [[42, fixed(point.bulge ?? 0)] as const]),
  ]
  return [
    [0, 'POLYLINE'],
    on,
    [66, 1],
    ...xyz(10, { x: 0, y: 0 }),
    [70, closed === true ? 1 : 0],
    ...points.flatMap(vertex),
    [0, 'SEQEND'],
    on,
  ]
}

const ANCHORS = { start: 0, middle: 1, end: 2 } as const

function textEntity({ text, at, height, anchor, turned = 0 }: ShapeOf<'text'>, on: Group): readonly Group[] {
  return [
    [0, 'TEXT'],
    on,
    ...xyz(10, at),
    [40, radius(height)],
    [1, plain(text)],
    [50, fixed(turned)],
    [72, ANCHORS[anchor]],
    // Where it is anchored by anything but its left end, that is the point which counts.
    ...(anchor === 'start' ? [] : xyz(11, at)),
  ]
}

type Place = { readonly x: number; readonly y: number }

const xyz = (code: number, { x, y }: Place | Point): readonly Group[] => [
  [code, fixed(x)],
  [code + 10, fixed(y)],
  [code + 20, '0.0'],
]

const DIGITS = 6

/** Never with an exponent, which not every reader takes. */
function fixed(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a number must be finite, got ${value}`)
  const text = value.toFixed(DIGITS).replace(/(\.\d*?[1-9]|\.0)0*$/, '$1')
  return text === '-0.0' ? '0.0' : text
}

function radius(length: number): string {
  if (!(length > 0)) throw new RangeError(`radius must be above 0, got ${length}`)
  return fixed(length)
}

/** Signs that CAD fonts do not have, in the spelling of DXF or in ASCII. */
const SPELLED: Readonly<Record<string, string>> = {
  Ø: '%%c',
  '°': '%%d',
  '±': '%%p',
  '×': 'x',
  '″': 'in',
  '′': "'",
  '–': '-',
  '—': '-',
  '−': '-',
  '†': '*',
  '‡': '**',
}

/** A text in ASCII on one line: a line break would end the value, and what follows would be read as further entities. */
function plain(text: string): string {
  return Array.from(text, (sign) => {
    const code = sign.codePointAt(0) ?? 0
    if (sign === '%') return '%%%'
    return SPELLED[sign] ?? (code >= 0x20 && code < 0x7f ? sign : code < 0x20 ? ' ' : '?')
  }).join('')
}
