import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { RadialInput } from '#shared/bearing/arrangements/radial/input.ts'
import { type Design, nameOf } from '#shared/bearing/arrangements.ts'
import { DIMENSION_SYMBOLS, type DimensionKey } from '#shared/bearing/dimensions.ts'
import { GENERAL_TOLERANCES } from '#shared/data/general-tolerances.ts'
import { inUnits, mm } from '#shared/units/length.ts'
import { PAPERS, type Paper } from '#src/drawings/papers.ts'
import { faceView } from '#src/drawings/sheets/face.ts'
import { halfSection } from '#src/drawings/sheets/half-section.ts'
import { drawingOf, narrowParts } from '#src/drawings/views.ts'
import { toSvg } from '#src/drawings/writers/svg.ts'
import { cagedDesigned, designed, valid, validOfAny } from '#tests/support/designed.ts'
import {
  anyInput,
  CAGED,
  likelyCaged,
  likelyInput,
  likelyPlates,
  likelyRollers,
  PLAIN,
  ROLLERS,
} from '#tests/support/inputs.ts'
import { LARGEST_CODE } from '#tests/support/largest-code.ts'
import { linesInRow, rasterOf } from '#tests/support/raster.ts'
import { sheetFaults, textsOn } from '#tests/support/sheet-faults.ts'

const assembledPlain = (input: RadialInput) => drawingOf('assembly', designed(input), 'a4')

describe('whatever the bearing', () => {
  test.each([
    ['200 that someone might turn', likelyInput, 200],
    ['40 of any size and shape', anyInput, 40],
  ])('%s: no text meets another, and nothing leaves the sheet', (_name, inputs, numRuns) => {
    fc.assert(
      fc.property(valid(inputs), fc.constantFrom<Paper>(...PAPERS), (made, paper) => {
        expect(sheetFaults(drawingOf('assembly', made, paper))).toEqual([])
        expect(sheetFaults(drawingOf('assembly', made, paper, 'paper', LARGEST_CODE))).toEqual([])
      }),
      { numRuns },
    )
  })

  test.each([
    [
      'balls in grooves',
      likelyInput,
      ['B', 'D', 'D1', 'De', 'Dpw', 'Dw', 'be', 'bi', 'd', 'd1', 'di', 'g', 'he', 'hi', 're', 'ri', 's'],
    ],
    ['rollers', likelyRollers, ['C', 'D', 'Dpw', 'Dw', 'E', 'F', 'Ga', 'Gr', 'Lw', 'd', 'dc', 'g', 'tc']],
    [
      'balls in a cage',
      likelyCaged,
      ['B', 'D', 'D1', 'De', 'Dpw', 'Dw', 'be', 'bi', 'd', 'd1', 'di', 'gs', 'he', 'hi', 're', 'ri', 's'],
    ],
    ['plates', likelyPlates, ['B', 'D', 'Dpw', 'Dw', 'T', 'b', 'd', 'g', 'h', 'r', 's']],
  ])('%s: every size on it is that of the design, to the digit shown', (_name, inputs, symbols) => {
    fc.assert(
      fc.property(validOfAny(inputs), (made) => {
        const { units } = made.bearing.resolved.input
        const values = new Map([
          ...made.dimensions.map(({ key, value }) => [DIMENSION_SYMBOLS[key], inUnits(value, units)] as const),
          ['Dw', inUnits(made.bearing.resolved.ballDiameter, units)] as const,
        ])
        const sizes = textsOn(drawingOf('assembly', made, 'a4')).flatMap(({ text }) => {
          const found = /^\(?(\w+) (?:SØ|Ø|R)?([\d.]+)(?: [±+−][^ ,]+| 0\/[^ ,]+)?\)?(?:, .*| wide| apart)?$/.exec(text)
          // A line of a note may begin with 'to 30', or with the play to cut to: 'Gr 0.6, above 0'.
          return found === null || found[1] === 'Racewright' || found[1] === 'to' || text.includes(', above 0')
            ? []
            : [{ symbol: found[1] ?? '', value: Number(found[2]) }]
        })
        expect(sizes.map(({ symbol }) => symbol).toSorted()).toEqual(symbols)
        const halfDigit = units === 'in' ? 0.0005 : 0.005
        for (const { symbol, value } of sizes)
          expect(value).toBeWithin(halfDigit * 1.0001, values.get(symbol) ?? Number.NaN)
      }),
      { numRuns: 120 },
    )
  })

  test('the circles of the face view are those of the design, and the balls touch', () => {
    fc.assert(
      fc.property(valid(likelyInput), (made) => {
        const { outerRing, innerRing, pitchRadius, resolved } = made.bearing
        const { shapes } = drawingOf('assembly', made, 'letter')
        const radii = shapes.flatMap((shape) => (shape.kind === 'circle' ? [shape.radius] : []))
        const wanted = [
          outerRing.outsideDiameter / 2,
          outerRing.landDiameter / 2,
          outerRing.grooveBottomDiameter / 2,
          innerRing.landDiameter / 2,
          innerRing.grooveBottomDiameter / 2,
          innerRing.boreDiameter / 2,
          pitchRadius,
        ]
        for (const radius of wanted) expect(radii.some((drawn) => Math.abs(drawn - radius) < 1e-6)).toBe(true)
        const balls = shapes.filter((shape) => shape.kind === 'arc')
        const centres = balls.filter((_, index) => index % 2 === 0).map(({ centre }) => centre)
        expect(centres).toHaveLength(resolved.input.balls.count)
        for (const [index, centre] of centres.slice(1).entries()) {
          const before = centres[index] ?? centre
          expect(Math.hypot(centre.x - before.x, centre.y - before.y)).toBeWithin(1e-6, resolved.ballDiameter)
        }
      }),
      { numRuns: 120 },
    )
  })
})

test('in a cage the balls stand evenly, and a pocket is as wide as the design has it: nothing of the cage is in it', () => {
  const { bearing } = cagedDesigned(CAGED)
  const { cage, pitchRadius } = bearing
  const shapes = faceView(bearing, [], 4, 'outline')
  const balls = shapes.filter((shape) => shape.kind === 'arc' && shape.centre.x ** 2 + shape.centre.y ** 2 > 1)
  expect(balls).toHaveLength(2 * 9)
  const ends = shapes.flatMap((shape) => {
    if (shape.kind === 'line' && shape.role === 'outline') return [shape.from, shape.to]
    return []
  })
  expect(ends).toHaveLength(4 * 9)
  for (let index = 0; index < 9; index += 1) {
    const angle = ((90 + 40 * index) * Math.PI) / 180
    const [ux, uy] = [Math.cos(angle), Math.sin(angle)]
    const edges = ends.filter(
      ({ x, y }) => x * ux + y * uy > 0.8 * pitchRadius && Math.abs(y * ux - x * uy) < cage.pocketDiameter,
    )
    expect(edges).toHaveLength(4)
    for (const { x, y } of edges) expect(Math.abs(y * ux - x * uy)).toBeWithin(1e-9, cage.pocketDiameter / 2)
  }
})

test('the cage is cut beside the ball, clear of it and of both rings', () => {
  const { bearing } = cagedDesigned(CAGED)
  const { cage } = bearing
  const sides = halfSection(bearing, 1.6, 4).flatMap((shape) =>
    shape.kind === 'polyline' && shape.points.length === 4 && shape.points.every(({ bulge = 0 }) => bulge === 0)
      ? [shape.points]
      : [],
  )
  expect(sides).toHaveLength(2)
  for (const points of sides) {
    expect(Math.min(...points.map(({ x }) => Math.abs(x)))).toBeWithin(1e-9, cage.pocketDiameter / 2)
    expect(Math.max(...points.map(({ x }) => Math.abs(x)))).toBeWithin(1e-9, cage.width / 2)
    expect(Math.min(...points.map(({ y }) => y))).toBeWithin(1e-9, cage.boreDiameter / 2)
    expect(Math.max(...points.map(({ y }) => y))).toBeWithin(1e-9, cage.outsideDiameter / 2)
  }
})

// 20 pixels a millimetre: the middle of a line is found to a pixel, 0.05 mm.
test('rasterised, the outer circle of the face view is as wide as the outside diameter at the scale stated', () => {
  const drawing = assembledPlain(PLAIN)
  expect(drawing.scale).toBe(1)
  const face = drawing.shapes.find((shape) => shape.kind === 'circle' && Math.abs(shape.radius - 50) < 1e-9)
  if (face?.kind !== 'circle') throw new RangeError('the face view must have an outer circle')
  const raster = rasterOf(toSvg(drawing), 20)
  const row = linesInRow(raster, Math.round((drawing.height - face.centre.y - 20) * 20))
  const reach = Math.sqrt(50 * 50 - 20 * 20)
  for (const x of [face.centre.x - reach, face.centre.x + reach])
    expect(row.some((middle) => Math.abs(middle - x) <= 0.05)).toBe(true)
})

test('the two halves of a split ring are hatched apart, and the ball is not hatched', () => {
  const { shapes } = assembledPlain(PLAIN)
  const slopes = shapes.flatMap((shape) =>
    shape.kind === 'line' && shape.role === 'hatch' && shape.from.y !== shape.to.y
      ? [Math.round((shape.to.y - shape.from.y) / (shape.to.x - shape.from.x))]
      : [],
  )
  expect(new Set(slopes)).toEqual(new Set([1, -1]))
  // Once at the sheet's scale and once enlarged.
  const radius = designed(PLAIN).bearing.resolved.ballDiameter / 2
  const balls = shapes.flatMap((shape) =>
    shape.kind === 'circle' && [1, 2].some((times) => Math.abs(shape.radius - times * radius) < 1e-9) ? [shape] : [],
  )
  expect(balls).toHaveLength(2)
  for (const shape of shapes) {
    if (shape.kind !== 'line' || shape.role !== 'hatch') continue
    for (const ball of balls)
      for (const end of [shape.from, shape.to])
        expect(Math.hypot(end.x - ball.centre.x, end.y - ball.centre.y)).toBeGreaterThan(ball.radius - 1e-9)
  }
})

type Chain = readonly [clearance: number, sizes: readonly DimensionKey[]]

/** Every clearance between parts whose sizes have no limits of their own: the larger sizes less the smaller. */
function chainsOf(made: Design): readonly Chain[] {
  const { ballDiameter } = made.bearing.resolved
  const sizes = new Map(made.dimensions.map(({ key, value }) => [key, value]))
  const of = (key: DimensionKey): number => sizes.get(key) ?? Number.NaN
  const less = (outer: DimensionKey, inner: DimensionKey): Chain => [of(outer) - of(inner), [outer, inner]]
  switch (nameOf(made.bearing.resolved.input)) {
    case 'radial':
      return [less('outerRing.landDiameter', 'innerRing.landDiameter')]
    case 'caged':
      return [
        less('outerRing.landDiameter', 'cage.outsideDiameter'),
        less('cage.boreDiameter', 'innerRing.landDiameter'),
        [of('cage.pocketDiameter') - ballDiameter, ['cage.pocketDiameter']],
      ]
    case 'roller':
      return [
        less('outerRing.width', 'rollerLength'),
        less('outerRing.width', 'innerRing.width'),
        less('cheeks.holeDiameter', 'innerRing.boreDiameter'),
        less('innerRing.trackDiameter', 'cheeks.holeDiameter'),
      ]
    case 'thrust':
      return [[of('plateGap'), ['plates.grooveDepth', 'plates.grooveDepth']]]
  }
}

test('sizes under the general tolerance close no clearance, however they come out: those that could are cut to one another', () => {
  const inputs = fc.oneof(likelyInput, likelyRollers, likelyPlates, likelyCaged)
  fc.assert(
    fc.property(validOfAny(inputs), (made) => {
      const notes = narrowParts('assembly', made).flatMap(({ words }) => words)
      const sizes = new Map(made.dimensions.map(({ key, value }) => [key, value]))
      for (const [clearance, keys] of chainsOf(made)) {
        const symbols = keys.map((key) => DIMENSION_SYMBOLS[key])
        const isFitted = notes.some((note) =>
          symbols.every((symbol) => /^(?:Cut|Open|Drill) /.test(note) && note.split(/[ .:,]+/).includes(symbol)),
        )
        if (isFitted) continue
        const worst = keys.reduce((sum, key) => {
          const size = sizes.get(key) ?? Number.NaN
          return sum + (GENERAL_TOLERANCES.rows.find(({ upTo }) => size <= upTo)?.plusMinus ?? Number.NaN)
        }, 0)
        expect(clearance, `${symbols.join(', ')}`).toBeGreaterThan(worst)
      }
    }),
    { numRuns: 200 },
  )
})

describe('rollers between plain rings', () => {
  /** Full size: the half section alone, round the middle of the axis. */
  const { bearing } = designed(ROLLERS)
  const { outerRing, innerRing, cheeks, pitchRadius, resolved, axialPlay, radialInternalClearance } = bearing
  const section = halfSection(bearing, 2, 4)
  const boxes = section.flatMap((shape) => (shape.kind === 'polyline' && shape.closed === true ? [shape.points] : []))
  const lines = section.flatMap((shape) => (shape.kind === 'line' && shape.role === 'outline' ? [shape] : []))

  test('the roller lies on the outer track, as far from the inner one as there is play on a side', () => {
    expect(boxes).toHaveLength(1)
    const heights = (boxes[0] ?? []).map(({ y }) => y)
    expect(Math.max(...heights)).toBeWithin(1e-9, outerRing.grooveBottomDiameter / 2)
    expect(Math.min(...heights) - innerRing.grooveBottomDiameter / 2).toBeWithin(1e-9, radialInternalClearance / 2)
    expect(Math.max(...heights) - Math.min(...heights)).toBeWithin(1e-9, resolved.ballDiameter)
  })

  test('at both ends of the roller half of the play along the axis is left, and then comes the cheek', () => {
    const ends = (boxes[0] ?? []).map(({ x }) => x)
    const faces = lines.filter(({ from, to }) => from.x === to.x && Math.abs(from.x) < outerRing.width / 2 + 1e-9)
    for (const side of [-1, 1]) {
      const end = side * Math.max(...ends.map((x) => side * x))
      expect(faces.some(({ from }) => Math.abs(Math.abs(from.x - end) - axialPlay / 2) < 1e-9)).toBe(true)
    }
    const whole = Math.max(...lines.map(({ from }) => from.x))
    expect(whole).toBeWithin(1e-9, outerRing.width / 2 + (cheeks?.thickness ?? Number.NaN))
  })

  test('through the bore the far half is seen: the ends of the inner ring, and of the holes of the cheeks', () => {
    for (const side of [-1, 1])
      for (const [x, top] of [
        [innerRing.width / 2, innerRing.boreDiameter / 2],
        [outerRing.width / 2, (cheeks?.holeDiameter ?? Number.NaN) / 2],
      ] as const)
        expect(
          lines.some(
            ({ from, to }) =>
              from.x === side * x &&
              to.x === side * x &&
              Math.min(from.y, to.y) <= 0 &&
              Math.abs(Math.max(from.y, to.y) - top) < 1e-9,
          ),
        ).toBe(true)
  })

  test('the face view has the rollers whole, touching, between the tracks', () => {
    const rollers = faceView(bearing, [], 4, 'outline').filter((shape) => shape.kind === 'arc')
    const turned = rollers.reduce((sum, { start, end }) => sum + end - start, 0)
    expect(turned).toBeWithin(1e-6, 360 * resolved.input.balls.count)
    const centres = rollers.filter((_, index) => index % 2 === 0).map(({ centre }) => centre)
    for (const [index, centre] of centres.entries()) {
      expect(Math.hypot(centre.x, centre.y)).toBeWithin(1e-9, pitchRadius)
      const next = centres[index + 1]
      if (next !== undefined)
        expect(Math.hypot(next.x - centre.x, next.y - centre.y)).toBeWithin(1e-9, resolved.ballDiameter)
    }
  })
})

test.each([100, 200])('of a roller of %i mm only the end is enlarged, and always more than the views', (length) => {
  const balls = { count: 12, diameter: mm(16), length: mm(length) }
  const drawing = drawingOf('assembly', designed({ ...ROLLERS, balls, width: mm(length + 0.6) }), 'a4')
  const scales = textsOn(drawing).flatMap(({ text }) => {
    const [, view, drawn, real] = /^(.+) \((\d+):(\d+)\)$/.exec(text) ?? []
    return view === undefined ? [] : [{ view, factor: Number(drawn) / Number(real) }]
  })
  const views = scales.filter(({ view }) => view !== 'detail X')
  expect(views).toHaveLength(2)
  const enlarged = scales.find(({ view }) => view === 'detail X')?.factor
  for (const { factor } of views) expect(enlarged).toBeGreaterThan(factor)
})

test('the same design gives the same bytes', () => {
  expect(toSvg(assembledPlain(PLAIN))).toBe(toSvg(assembledPlain({ ...PLAIN, bore: mm(12) })))
})
