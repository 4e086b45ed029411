import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Design, type DesignInput, isCaged, isOfPlates, isOfRollers } from '#shared/bearing/arrangements.ts'
import { mountingOf } from '#shared/making/mounting.ts'
import { stockOf } from '#shared/making/stock.ts'
import { inches, mm } from '#shared/units/length.ts'
import { clipped } from '#src/drawings/clip.ts'
import { arcOfLeg, type Drawing, legsOf, type Point } from '#src/drawings/model.ts'
import { PAPERS } from '#src/drawings/papers.ts'
import { sheetMark } from '#src/drawings/sheet-mark.ts'
import { VIEWS } from '#src/drawings/view.ts'
import { drawingOf, narrowParts, pagesOfView } from '#src/drawings/views.ts'
import { toDxf } from '#src/drawings/writers/dxf.ts'
import { toSvg } from '#src/drawings/writers/svg.ts'
import { signMeanings } from '#src/words/standing.ts'
import { anyDesigned, cagedDesigned, designed, thrustDesigned, valid, validOfAny } from '#tests/support/designed.ts'
import {
  anyInput,
  CAGED,
  likelyCaged,
  likelyInput,
  likelyPlates,
  likelyRollers,
  magnitude,
  PLAIN,
  PLATES,
  ROLLERS,
} from '#tests/support/inputs.ts'
import { LARGEST_CODE } from '#tests/support/largest-code.ts'
import { linesInRow, rasterOf } from '#tests/support/raster.ts'
import { sheetFaults, textsOn } from '#tests/support/sheet-faults.ts'

const FILM = { ...PLAIN, finishAllowance: mm(0.05) }
/** Too large for one sheet: 24 balls of an inch. */
const LARGE = { units: 'in', balls: { count: 24, diameter: inches(1) }, bore: inches(2) } as const

const circlesOn = ({ shapes }: Drawing, role: string) =>
  shapes.flatMap((shape) => (shape.kind === 'circle' && shape.role === role ? [shape] : []))
type Plugs = Readonly<Record<'goDiameter' | 'noGoDiameter', number>>

const diametersOn = (drawing: Drawing, role: string): readonly number[] =>
  circlesOn(drawing, role).map(({ radius }) => 2 * radius)

describe('templates', () => {
  test('the lines to turn to are the sizes to cut, a film smaller outside and larger inside', () => {
    const { outerRing, innerRing } = designed(FILM).bearing
    const [outside, hole, inner, bore, ...more] = diametersOn(drawingOf('templates', designed(FILM), 'a4'), 'finish')
    expect(outside).toBeWithin(1e-9, outerRing.outsideDiameter - 0.1)
    expect(hole).toBeWithin(1e-9, outerRing.landDiameter + 0.1)
    expect(inner).toBeWithin(1e-9, innerRing.landDiameter - 0.1)
    expect(bore).toBeWithin(1e-9, innerRing.boreDiameter + 0.1)
    expect(more).toEqual([])
  })

  test('with a cage: both rings and the cage, with a line for the middle of each pocket', () => {
    const made = cagedDesigned(CAGED)
    const { outerRing, innerRing, cage } = made.bearing
    const drawing = drawingOf('templates', made, 'a4')
    const { outsideDiameter: outside, boreDiameter: bore } = cage
    expect(diametersOn(drawing, 'finish')).toEqual([
      outerRing.outsideDiameter,
      outerRing.landDiameter,
      innerRing.landDiameter,
      innerRing.boreDiameter,
      outside,
      bore,
    ])
    const centre = circlesOn(drawing, 'finish').at(-1)?.centre ?? { x: 0, y: 0 }
    const turns = drawing.shapes.flatMap((shape) => {
      if (shape.kind !== 'line' || shape.role !== 'centre') return []
      const [from, to] = [shape.from, shape.to].map(({ x, y }) => Math.hypot(x - centre.x, y - centre.y))
      expect(from).toBeLessThan(bore / 2)
      expect(to).toBeGreaterThan(outside / 2)
      return [(Math.atan2(shape.to.y - centre.y, shape.to.x - centre.x) * 180) / Math.PI]
    })
    expect(turns).toHaveLength(9)
    // At the top, where the code is, a web stands between two pockets.
    for (const [index, turn] of turns.entries())
      expect(Math.cos(((turn - 110 - 40 * index) * Math.PI) / 180)).toBeWithin(1e-12, 1)
  })

  test("of rollers: both rings by their tracks, and two cheeks as large as the outer ring, their holes in the inner ring's wood", () => {
    const made = designed({ ...ROLLERS, finishAllowance: mm(0.05) })
    const { outerRing, innerRing, cheeks } = made.bearing
    const wanted = [
      outerRing.outsideDiameter - 0.1,
      outerRing.grooveBottomDiameter + 0.1,
      innerRing.grooveBottomDiameter - 0.1,
      innerRing.boreDiameter + 0.1,
      ...[1, 2].flatMap(() => [outerRing.outsideDiameter - 0.1, (cheeks?.holeDiameter ?? Number.NaN) + 0.1]),
    ]
    const found = diametersOn(drawingOf('templates', made, 'a4'), 'finish')
    expect(found).toHaveLength(wanted.length)
    for (const [index, diameter] of wanted.entries()) expect(found[index]).toBeWithin(1e-9, diameter)
  })

  test("the screws of a cheek stand in the middle of the outer ring's wood, clear of track and outside", () => {
    const made = designed(ROLLERS)
    const { outerRing } = made.bearing
    const drawing = drawingOf('templates', made, 'a4')
    const screws = circlesOn(drawing, 'hole').slice(1)
    expect(screws.length).toBeGreaterThanOrEqual(6)
    const cheeks = [-3, -1].map((index) => circlesOn(drawing, 'finish').at(index)?.centre ?? { x: 0, y: 0 })
    const turns = cheeks.map(() => [] as number[])
    for (const { centre, radius } of screws) {
      const outs = cheeks.map(({ x, y }) => Math.hypot(centre.x - x, centre.y - y))
      const out = Math.min(...outs)
      const { x, y } = cheeks[outs.indexOf(out)] ?? { x: 0, y: 0 }
      turns[outs.indexOf(out)]?.push((Math.atan2(centre.y - y, centre.x - x) * 180) / Math.PI)
      expect(out - radius - outerRing.grooveBottomDiameter / 2).toBeWithin(1e-9, outerRing.wall / 2 - radius)
      expect(out + radius).toBeLessThan(outerRing.outsideDiameter / 2 - radius)
    }
    // The grain of both lies alike, so each template has its screws midway between those of the other.
    const [one = [], other = []] = turns
    expect(other).toHaveLength(one.length)
    for (const turn of other) {
      const apart = one.map((each) => Math.abs(((each - turn + 540) % 360) - 180))
      expect(Math.min(...apart)).toBeWithin(1e-6, 180 / one.length)
    }
  })

  test('of plates: one blank for both, its outside, its bore, and the circle of its groove', () => {
    const made = anyDesigned(PLATES)
    if (!isOfPlates(made)) throw new RangeError('the design must be one of plates')
    const { plate, pitchRadius } = made.bearing
    const drawing = drawingOf('templates', made, 'a4')
    expect(diametersOn(drawing, 'finish')).toEqual([plate.outsideDiameter, plate.boreDiameter])
    expect(diametersOn(drawing, 'centre')[0]).toBeWithin(1e-9, 2 * pitchRadius)
  })

  // 6 mm left on beside each line: the default of `making.allowances.turning`.
  test('a saw line stands in the waste beside each line to turn to, by the allowance', () => {
    const drawing = drawingOf('templates', designed(PLAIN), 'a4')
    const [outside = 0, hole = 0, inner = 0] = diametersOn(drawing, 'finish')
    const [sawnOutside, core, sawnInner] = diametersOn(drawing, 'saw')
    expect(sawnOutside).toBeWithin(1e-9, outside + 12)
    expect(core).toBeWithin(1e-9, hole - 12)
    expect(sawnInner).toBeWithin(1e-9, inner + 12)
  })

  test('the blade enters inside of the core, clear of its line and of the centre', () => {
    const drawing = drawingOf('templates', designed(PLAIN), 'a4')
    const core = circlesOn(drawing, 'saw')[1]
    const entry = circlesOn(drawing, 'hole')[0]
    const away = Math.hypot(
      (entry?.centre.x ?? 0) - (core?.centre.x ?? 0),
      (entry?.centre.y ?? 0) - (core?.centre.y ?? 0),
    )
    expect(away + (entry?.radius ?? 0)).toBeLessThan(core?.radius ?? 0)
    expect(away - (entry?.radius ?? 0)).toBeGreaterThan(4)
  })

  test('a core that has no room for the hole of a blade has no line to saw by', () => {
    for (const [input, expected] of [
      [PLAIN, 1],
      [{ ...PLAIN, balls: { count: 8, diameter: mm(4) }, bore: mm(2) }, 0],
    ] as const) {
      const words = textsOn(drawingOf('templates', designed(input), 'a4')).map(({ text }) => text)
      for (const said of [/for the core/, /for the blade/])
        expect(words.filter((text) => said.test(text))).toHaveLength(expected)
    }
  })

  test('the screws stand evenly on their circle', () => {
    const drawing = drawingOf('templates', designed(PLAIN), 'a4')
    const screws = circlesOn(drawing, 'hole').slice(1)
    const circle = circlesOn(drawing, 'centre').at(-1)
    expect(screws).toHaveLength(4)
    // What a wider drill has taken from the second piece holds no thread.
    const pilot = stockOf(designed(PLAIN).bearing).split?.screws?.pilot.diameter ?? Number.NaN
    for (const { radius } of screws) expect(2 * radius).toBeWithin(1e-9, pilot)
    for (const { centre } of screws)
      expect(Math.hypot(centre.x - (circle?.centre.x ?? 0), centre.y - (circle?.centre.y ?? 0))).toBeWithin(
        1e-9,
        circle?.radius ?? 0,
      )
  })

  test.each([6, 8, 12, 16, 24])('of %i segments: no joint runs through a hole, and none through the code', (count) => {
    const wood = { species: 'maple-sugar', construction: 'segmented', segments: { count } } as const
    for (const screws of [4, 6, 8]) {
      const input = { ...PLATES, balls: { count: 40, diameter: mm(20) }, bore: mm(180) }
      const made = thrustDesigned({ ...input, making: { woods: { plates: wood }, screws: { count: screws } } })
      const drawing = drawingOf('templates', made, 'a4')
      const joints = drawing.shapes.filter((shape) => shape.kind === 'line' && shape.role === 'layout')
      const code = textsOn(drawing).find(({ text }) => text === sheetMark(made).code)
      const around = [
        ...circlesOn(drawing, 'hole').map(({ centre, radius }) => ({ ...centre, reach: radius })),
        { x: code?.at.x ?? 0, y: code?.at.y ?? 0, reach: 4 },
      ]
      expect(joints.length).toBeGreaterThanOrEqual(count)
      expect(around).toHaveLength(screws + 1)
      for (const { x, y, reach } of around) {
        const window = { left: x - reach, right: x + reach, bottom: y - reach, top: y + reach }
        expect(clipped(joints, window)).toEqual([])
      }
    }
  })

  // 20 pixels a millimetre; a line's middle is found to half a pixel, 0.025 mm.
  test('rasterised, the circle to turn to is as wide as the outer ring, and the check bar 100 mm long', () => {
    const drawing = drawingOf('templates', designed(PLAIN), 'a4')
    const raster = rasterOf(toSvg(drawing), 20)
    const circle = circlesOn(drawing, 'finish')[0]
    const row = linesInRow(raster, Math.round((drawing.height - (circle?.centre.y ?? 0) - 15) * 20))
    const reach = Math.sqrt(50 * 50 - 15 * 15)
    for (const x of [-reach, reach])
      expect(row.some((middle) => Math.abs(middle - (circle?.centre.x ?? 0) - x) <= 0.05)).toBe(true)
    // Half a millimetre over the bar's line, its ticks are cut across: eleven of them, ten millimetres apart.
    const ticks = linesInRow(raster, Math.round((drawing.height - 18.9) * 20)).slice(0, 11)
    for (const [index, tick] of ticks.entries()) expect(tick).toBeWithin(0.03, 8 + 10 * index)
  })
})

describe('gauges', () => {
  test.each([
    ['balls in grooves', PLAIN],
    ['rollers', ROLLERS],
    ['plates', PLATES],
  ])('of %s: the plugs are those of the design', (_name, input) => {
    const made = anyDesigned(input)
    if (isCaged(made)) throw new RangeError('input must be a full ring')
    const { gauge } = made.bearing
    expect(diametersOn(drawingOf('gauges', made, 'a4'), 'finish')).toEqual([gauge.goDiameter, gauge.noGoDiameter])
  })

  test('with a cage there is one plug: the circle inside the balls', () => {
    const made = cagedDesigned(CAGED)
    expect(diametersOn(drawingOf('gauges', made, 'a4'), 'finish')).toEqual([made.bearing.plugDiameter])
  })

  test.each([
    ['balls in grooves', { ...PLAIN, balls: { ...PLAIN.balls, count: 50 } }],
    ['balls in a cage', { ...CAGED, balls: { count: 16, diameter: mm(25) } }],
    ['plates', { ...PLATES, balls: { ...PLATES.balls, count: 60 } }],
  ])('of %s: a plug too large to turn is a bar, each end a part of its circle', (_name, input) => {
    const made = anyDesigned(input)
    const { gauge, plugDiameter } = made.bearing as { gauge?: Plugs; plugDiameter?: number }
    const drawing = drawingOf('gauges', made, 'a4')
    const bars = drawing.shapes.flatMap((shape) =>
      shape.kind === 'polyline' && shape.points.length === 4 && shape.points.filter(({ bulge }) => bulge).length === 2
        ? [legsOf(shape).flatMap(({ from, to }) => (from.bulge ? [arcOfLeg(from, to)] : []))]
        : [],
    )
    const plugs = gauge === undefined ? [plugDiameter] : [gauge.goDiameter, gauge.noGoDiameter]
    expect(diametersOn(drawing, 'finish')).toEqual([])
    expect(bars.map(([end]) => 2 * (end?.radius ?? 0))).toEqual(plugs.map((plug) => expect.closeTo(plug ?? 0, 9)))
    for (const [one, other] of bars) {
      expect(one?.centre.x).toBeWithin(1e-9, other?.centre.x ?? 0)
      expect(one?.centre.y).toBeWithin(1e-9, other?.centre.y ?? 0)
      expect(one?.radius).toBeWithin(1e-9, other?.radius ?? 0)
    }
  })

  const groovesOf = (made: Design): readonly { readonly depth: number; readonly radius: number }[] => {
    if (isOfPlates(made)) return [{ depth: made.bearing.plate.grooveDepth, radius: made.bearing.plate.grooveRadius }]
    const { outerRing, innerRing, resolved } = made.bearing
    if (resolved.traits.raceway === 'track') return []
    return [outerRing, innerRing].map(({ grooveDepth, grooveRadius }) => ({ depth: grooveDepth, radius: grooveRadius }))
  }

  test.each([
    ['balls in grooves', PLAIN, 2],
    ['rollers', ROLLERS, 0],
    ['balls in a cage', CAGED, 2],
    ['plates', PLATES, 1],
  ])(
    'of %s: each profile has the arc of its groove, and its shoulders as far back as the groove is deep',
    (_name, input, count) => {
      const made = anyDesigned(input)
      const profiles = drawingOf('gauges', made, 'a4').shapes.flatMap((shape) =>
        shape.kind === 'polyline' && shape.points.length === 6 && shape.points.some(({ bulge = 0 }) => bulge !== 0)
          ? [shape.points]
          : [],
      )
      expect(profiles).toHaveLength(count)
      for (const [index, groove] of groovesOf(made).entries()) {
        const points = profiles[index] ?? []
        const nose = points.findIndex(({ bulge = 0 }) => bulge !== 0)
        const [from, to] = [points[nose], points[nose + 1]]
        if (from === undefined || to === undefined) throw new RangeError('a profile must have a nose')
        const chord = Math.hypot(to.x - from.x, to.y - from.y)
        const height = ((from.bulge ?? 0) * chord) / 2
        expect(height).toBeWithin(1e-9, groove.depth)
        // Radius of a circular segment by its chord and height (any handbook of mathematics): (c²/4 + h²) / 2h.
        expect((chord * chord) / 4 / (2 * height) + height / 2).toBeWithin(1e-9, groove.radius)
        expect(points[nose - 1]?.y).toBeWithin(1e-9, from.y)
      }
    },
  )

  test.each([
    ['balls in grooves', PLAIN, [-1, 1, -1]],
    ['rollers', ROLLERS, [-1, 1, -1]],
    ['balls in a cage', CAGED, [-1, 1, -1, -1]],
    ['plates', PLATES, [-1]],
  ])(
    'of %s: each edge is an arc of its cylinder, hollow for an outside and round for a hole',
    (_name, input, signs) => {
      const made = anyDesigned(input)
      const arcs = drawingOf('gauges', made, 'a4').shapes.flatMap((shape) => {
        if (shape.kind !== 'polyline' || shape.points.length !== 4 || shape.role !== 'finish') return []
        const [from, to] = [shape.points[2], shape.points[3]]
        if (from?.bulge === undefined || to === undefined) return []
        const half = Math.hypot(to.x - from.x, to.y - from.y) / 2
        const height = from.bulge * half
        return [{ height, diameter: (half * half) / Math.abs(height) + Math.abs(height) }]
      })
      expect(arcs.map(({ height }) => Math.sign(height))).toEqual(signs)
      // A track is its own land.
      const wanted = isOfPlates(made)
        ? [made.bearing.plate.outsideDiameter]
        : [
            made.bearing.outerRing.outsideDiameter,
            made.bearing.outerRing.landDiameter,
            made.bearing.innerRing.landDiameter,
            ...(isCaged(made) ? [made.bearing.cage.outsideDiameter] : []),
          ]
      for (const [index, diameter] of wanted.entries()) expect(arcs[index]?.diameter).toBeWithin(1e-9, diameter)
    },
  )
})

test('every bearing that can exist can be drawn, in every view and every format that is a text', () => {
  fc.assert(
    fc.property(valid(anyInput), fc.constantFrom(...VIEWS), (made, view) => {
      const drawing = drawingOf(view, made, 'a4')
      expect(toSvg(drawing)).not.toMatch(/NaN|Infinity|\de[+-]\d/)
      expect(toDxf(drawing)).not.toMatch(/NaN|Infinity/)
      expect(sheetFaults(drawing)).toEqual([])
    }),
    // Of two hundred such inputs one can exist: this is what most of the time goes into.
    { numRuns: 40 },
  )
})

test('rollers between plain rings, short and long, are drawn in every view: no text meets another', () => {
  fc.assert(
    fc.property(valid(likelyRollers), fc.constantFrom(...VIEWS), fc.constantFrom(...PAPERS), (made, view, paper) => {
      const drawing = drawingOf(view, made, paper, 'paper', LARGEST_CODE)
      expect(toSvg(drawing)).not.toMatch(/NaN|Infinity|\de[+-]\d/)
      expect(toDxf(drawing)).not.toMatch(/NaN|Infinity/)
      expect(sheetFaults(drawing)).toEqual([])
    }),
    { numRuns: 80 },
  )
})

test('rollers like coins, of which there is hardly any length on paper, are drawn in every view', () => {
  const coins = fc
    .tuple(fc.integer({ min: 3, max: 40 }), magnitude(1, 2_000), magnitude(0.0005, 0.3))
    .map(([count, diameter, share]) => ({
      ...ROLLERS,
      balls: { count, diameter: mm(diameter) },
      bore: mm(diameter / 4),
      width: mm(share * diameter),
    }))
  fc.assert(
    fc.property(valid(coins), fc.constantFrom(...VIEWS), fc.constantFrom(...PAPERS), (made, view, paper) => {
      const drawing = drawingOf(view, made, paper)
      expect(toDxf(drawing)).not.toMatch(/NaN|Infinity/)
      expect(sheetFaults(drawing)).toEqual([])
    }),
    { numRuns: 80 },
  )
})

test.each([
  ['long', 40],
  ['short', 0.1],
])('a %s roller has its length said beside it', (_name, length) => {
  const balls = { count: 12, diameter: mm(16), length: mm(length) }
  const drawing = drawingOf('assembly', designed({ ...ROLLERS, balls, width: mm(length + 1) }), 'a4')
  const said = textsOn(drawing).filter(({ text }) => text.startsWith('Lw '))
  expect(said).toMatchObject([{ text: `Lw ${length}`, anchor: 'start' }])
})

test.each([
  ['turntables', likelyPlates],
  ['balls in cages', likelyCaged],
])('%s are drawn in every view: no text meets another', (_name, likely) => {
  fc.assert(
    fc.property(validOfAny(likely), fc.constantFrom(...VIEWS), fc.constantFrom(...PAPERS), (made, view, paper) => {
      const drawing = drawingOf(view, made, paper, 'paper', LARGEST_CODE)
      expect(toSvg(drawing)).not.toMatch(/NaN|Infinity|\de[+-]\d/)
      expect(toDxf(drawing)).not.toMatch(/NaN|Infinity/)
      expect(sheetFaults(drawing)).toEqual([])
    }),
    { numRuns: 80 },
  )
})

test('for a narrow screen no text meets another or leaves its part, and templates and gauges have their words below, by numbers', () => {
  fc.assert(
    fc.property(validOfAny(fc.oneof(likelyInput, likelyRollers, likelyPlates, likelyCaged)), (made) => {
      expect(narrowParts('assembly', made).flatMap(({ drawing }) => sheetFaults(drawing))).toEqual([])
      // The unit is no preposition.
      for (const { words } of VIEWS.flatMap((view) => narrowParts(view, made)))
        expect(words.filter((line) => /\bin in\b/.test(line))).toEqual([])
      for (const view of ['templates', 'gauges'] as const) {
        const parts = narrowParts(view, made)
        // What a label is about has its number on the drawing, and no other text is there.
        for (const { drawing, words } of parts) {
          const numbers = words.flatMap((line) => /^(\d+): /.exec(line)?.[1] ?? [])
          expect(textsOn(drawing).map(({ text }) => text)).toEqual(numbers)
        }
        expect(parts.flatMap(({ drawing }) => sheetFaults(drawing))).toEqual([])
        // Lines are as wide on a screen, however large what they show is.
        for (const { drawing } of parts) expect(drawing.width).toBe(92)
        const said = new Set(textsOn(drawingOf(view, made, 'a4')).map(({ text }) => text))
        // Each part says what its figures and signs mean: on a screen it may stand there alone.
        const { units } = made.bearing.resolved.input
        const unit = `sizes in ${units === 'mm' ? 'mm' : 'inches'}, each drawing at its own scale`
        const labelsOf = (words: readonly string[]) => words.slice(0, words.indexOf(unit))
        for (const { words } of parts) {
          expect(words).toContain(unit)
          expect(words.slice(words.indexOf(unit) + 1)).toEqual(signMeanings(labelsOf(words)))
        }
        // The word at an arrow means nothing away from it, so it says more there.
        const spoken = (words: string) => (words === 'arrow: along the grain' ? 'grain' : words.replace(/^\d+: /, ''))
        for (const words of parts.flatMap((part) => [part.title, ...labelsOf(part.words)]))
          expect(said).toContain(spoken(words))
      }
    }),
    { numRuns: 60 },
  )
})

describe('pages', () => {
  test.each(['templates', 'gauges'] as const)('%s: no text meets another, and nothing leaves a page', (view) => {
    fc.assert(
      fc.property(valid(likelyInput), (made) => {
        expect(sheetFaults(drawingOf(view, made, 'letter', 'paper', LARGEST_CODE))).toEqual([])
        const pages = pagesOfView(view, made, 'a4', LARGEST_CODE)
        expect((pages.ok ? pages.value : []).flatMap(sheetFaults)).toEqual([])
      }),
      { numRuns: 80 },
    )
  })

  test('a page has the size of its paper and the check bar, and says which it is', () => {
    const pages = pagesOfView('templates', designed(PLAIN), 'a4')
    if (!pages.ok) throw new RangeError('a usual bearing must fit')
    for (const [index, page] of pages.value.entries()) {
      expect(page).toMatchObject({ width: 210, height: 297, scale: 1 })
      const texts = textsOn(page).map(({ text }) => text)
      expect(texts).toContain('Measure these bars first')
      const { code, version } = sheetMark(designed(PLAIN))
      expect(texts).toContain(`code ${code}, Racewright ${version}, sizes in mm, † common practice, no source`)
      expect(texts).toContain(`Templates ${code}, page ${index + 1} of ${pages.value.length}, A4`)
    }
  })

  test('laid over each other by their marks, the sheets of a large ring show its whole outline', () => {
    const made = designed(LARGE)
    const pages = pagesOfView('templates', made, 'letter')
    if (!pages.ok) throw new RangeError('a ring of 10 in must fit a few pages')
    const tiles = pages.value.filter((page) => textsOn(page).some(({ text }) => /, sheet [A-Z]\d of /.test(text)))
    const outside = made.bearing.outerRing.outsideDiameter / 2
    // Each sheet in the place where its name puts it: usable paper less the overlap apart.
    const arcs = tiles.slice(0, 4).flatMap((page) => {
      const [, letter = 'A', column = '1'] =
        textsOn(page)
          .map(({ text }) => /, sheet ([A-Z])(\d) of /.exec(text))
          .find(Boolean) ?? []
      const [across, down] = [215.9 - 16 - 12, 279.4 - 16 - 26 - 12]
      const shift = { x: (Number(column) - 1) * across, y: -(letter.charCodeAt(0) - 65) * down }
      return page.shapes.flatMap((shape) =>
        shape.kind === 'arc' && Math.abs(shape.radius - outside) < 1e-6
          ? [{ ...shape, x: shape.centre.x + shift.x, y: shape.centre.y + shift.y }]
          : [],
      )
    })
    expect(arcs.length).toBeGreaterThanOrEqual(4)
    for (const { x, y } of arcs) {
      expect(x).toBeWithin(1e-6, arcs[0]?.x ?? Number.NaN)
      expect(y).toBeWithin(1e-6, arcs[0]?.y ?? Number.NaN)
    }
    for (let angle = 0; angle < 360; angle += 1) {
      const covered = arcs.some(({ start, end }) => (((angle - start) % 360) + 360) % 360 <= end - start + 1e-9)
      expect(covered, `${angle} degrees`).toBe(true)
    }
  })

  test('no two sheets of a set have one name', () => {
    const pages = pagesOfView('templates', designed(LARGE), 'letter')
    const names = (pages.ok ? pages.value : []).flatMap((page) =>
      textsOn(page).flatMap(({ text }) => /^(.*, sheet [A-Z]\d) of \d+: /.exec(text)?.[1] ?? []),
    )
    expect(names.length).toBeGreaterThan(6)
    expect(new Set(names).size).toBe(names.length)
  })

  test('a plug that is larger than a page is no outline in pieces, but its size', () => {
    const made = designed({ ...LARGE, balls: { count: 36, diameter: inches(1) } })
    const { gauge } = made.bearing
    for (const paper of PAPERS) {
      const pages = pagesOfView('gauges', made, paper)
      const drawn = (pages.ok ? pages.value : []).flatMap(({ shapes }) =>
        shapes.flatMap((shape) => (shape.kind === 'circle' || shape.kind === 'arc' ? [2 * shape.radius] : [])),
      )
      for (const diameter of [gauge.goDiameter, gauge.noGoDiameter]) expect(drawn).not.toContain(diameter)
      const words = (pages.ok ? pages.value : []).flatMap(textsOn).map(({ text }) => text)
      expect(words.filter((text) => text.startsWith('larger than a page'))).toHaveLength(2)
      expect((pages.ok ? pages.value : []).flatMap(sheetFaults)).toEqual([])
    }
  })

  test('what takes more paper than anyone glues together is refused with its number of pages', () => {
    const huge = designed({ units: 'mm', balls: { count: 100, diameter: mm(300) }, bore: mm(100) })
    expect(pagesOfView('templates', huge, 'a4')).toMatchObject({ ok: false, error: { most: 60 } })
    expect(sheetFaults(drawingOf('templates', huge, 'a4'))).toEqual([])
  })
})

describe('whose sheet it is', () => {
  test.each(VIEWS)("%s has the maker's own name, however long it is, and nothing leaves the sheet", (view) => {
    const name = `Tide clock ${'W'.repeat(69)}`
    const drawing = drawingOf(view, designed({ ...PLAIN, making: { name } }), 'a4')
    expect(textsOn(drawing).some(({ text }) => text.includes('Tide clock'))).toBe(true)
    expect(sheetFaults(drawing)).toEqual([])
  })

  const EVERY = [PLAIN, ROLLERS, PLATES, CAGED]

  test('a name of many words is as high as it must be to be read', () => {
    const name = 'Larkmoor tide clock, hour wheel, second prototype for the harbour museum hall'
    const drawing = drawingOf('assembly', designed({ ...PLAIN, making: { name } }), 'a4')
    const rows = textsOn(drawing).filter(({ text, bold }) => bold === true && name.includes(text))
    expect(rows.map(({ text }) => text).join(' ')).toBe(name)
    for (const { height } of rows) expect(height * drawing.scale).toBeGreaterThanOrEqual(2)
    expect(sheetFaults(drawing)).toEqual([])
  })

  test.each(VIEWS)('%s explains those signs that stand on it, and no other', (view) => {
    for (const input of EVERY) {
      const words = textsOn(drawingOf(view, anyDesigned(input), 'a4')).map(({ text }) => text)
      for (const meaning of ['† common practice, no source', '‡ from memory']) {
        const isUsed = words.some((text) => text.replace(meaning, '').includes(meaning.charAt(0)))
        expect(words.some((text) => text.includes(meaning))).toBe(isUsed)
      }
    }
  })

  test.each(EVERY)('every template and gauge carries the code once below it and once on itself', (input) => {
    const made = anyDesigned(input)
    const { code, version } = sheetMark(made)
    for (const view of ['templates', 'gauges'] as const) {
      const texts = textsOn(drawingOf(view, made, 'a4')).map(({ text }) => text)
      const titles = textsOn(drawingOf(view, made, 'a4')).filter(({ bold, height }) => bold === true && height === 3.5)
      // Each of both set-blocks is cut out on its own, and says which it is, with its length where that can be read.
      const onBlocks = (end: string) =>
        textsOn(drawingOf(view, made, 'a4')).filter(({ text }) =>
          new RegExp(`^${end}(?: [\\d.]+ (?:mm|in))?$`).test(text),
        )
      const pairs = onBlocks('done').length
      expect(onBlocks('stop')).toHaveLength(pairs)
      for (const { height } of [...onBlocks('stop'), ...onBlocks('done')]) expect(height).toBeGreaterThan(1.5)
      expect(texts.filter((text) => text === code)).toHaveLength(titles.length + pairs)
      expect(texts.filter((text) => text === `code ${code}, Racewright ${version}, sizes in mm`)).toHaveLength(
        titles.length,
      )
    }
  })

  test('the code is that of what is made: defaults said or left out, a ring larger by a hair is another', () => {
    const { code } = sheetMark(designed(PLAIN))
    const echoed = designed(designed(PLAIN).bearing.resolved.input)
    expect(code).toMatch(/^[0-9A-HJKMNP-TV-Z]{6}$/)
    expect(sheetMark(designed({ ...PLAIN, making: { name: 'Tide clock', allowances: { turning: mm(6) } } })).code).toBe(
      code,
    )
    expect(sheetMark(echoed).code).toBe(code)
    expect(sheetMark(designed({ ...PLAIN, bore: mm(12.001) })).code).not.toBe(code)
    expect(sheetMark(designed({ ...PLAIN, making: { allowances: { turning: mm(5) } } })).code).not.toBe(code)
  })

  test.each(VIEWS)('%s for a machine says nothing of printing', (view) => {
    for (const input of EVERY) {
      const drawing = drawingOf(view, anyDesigned(input), 'a4', 'machine')
      expect(toDxf(drawing)).not.toMatch(/print|paper|A4|page|bars/i)
      expect(toDxf(drawing)).toContain(sheetMark(anyDesigned(input)).code)
      expect(sheetFaults(drawing)).toEqual([])
    }
  })
})

describe('what the plan of making adds', () => {
  const counts = fc.integer({ min: 6, max: 24 })
  const planned = fc.record({
    count: counts,
    segments: fc.integer({ min: 3, max: 24 }),
    drive: fc.constantFrom('crank', 'hub' as const),
    arrangement: fc.constantFrom('radial', 'roller', 'caged' as const),
  })
  type Plan = typeof planned extends fc.Arbitrary<infer T> ? T : never
  const designOf = ({ count, segments, drive, arrangement }: Plan) =>
    anyDesigned({
      units: 'mm',
      arrangement,
      balls: { count: arrangement === 'caged' ? Math.max(6, Math.floor(count / 2)) : count, diameter: mm(16) },
      bore: mm(8),
      making: {
        woods: { outerRing: { construction: 'segmented', segments: { count: segments } } },
        mounting: { turns: 'outer-ring', drive },
      },
    } as DesignInput)

  test('holes of a crank or a hub are drawn, in the wall and clear of all other holes', () => {
    fc.assert(
      fc.property(planned, (plan) => {
        const made = designOf(plan)
        if (isOfPlates(made)) throw new RangeError('rings are asked for')
        const { outerRing } = made.bearing
        const { drive } = mountingOf(made.bearing)
        const drawing = drawingOf('assembly', made, 'a4')
        expect(sheetFaults(drawing)).toEqual([])
        if (drive?.holeDiameter === undefined) return
        const across = drive.holeDiameter
        const middle = drawing.shapes.find(
          (shape) => shape.kind === 'circle' && Math.abs(2 * shape.radius - outerRing.outsideDiameter) < 1e-6,
        )
        if (middle?.kind !== 'circle') throw new RangeError('the outside must be drawn')
        const circles = drawing.shapes.filter((shape) => shape.kind === 'circle')
        const away = (one: Point, other: Point) => Math.hypot(one.x - other.x, one.y - other.y)
        const holes = circles.filter(
          ({ radius, centre }) =>
            Math.abs(2 * radius - across) < 1e-6 && Math.abs(2 * away(centre, middle.centre) - drive.circle) < 1e-6,
        )
        // Screws of cheeks may be as wide, on the same circle.
        expect(holes.length).toBeGreaterThanOrEqual(drive.count)
        const drilled = circles.filter(({ role, radius }) => radius < 8 && (role === 'outline' || role === 'hidden'))
        for (const hole of holes) {
          const from = away(hole.centre, middle.centre)
          expect(from + hole.radius).toBeLessThan(outerRing.outsideDiameter / 2)
          expect(from - hole.radius).toBeGreaterThan(outerRing.grooveBottomDiameter / 2 - 1e-6)
          for (const other of drilled)
            if (other !== hole) expect(away(hole.centre, other.centre)).toBeGreaterThan(hole.radius + other.radius)
        }
        const { cheekScrews } = stockOf(made.bearing)
        if (cheekScrews === undefined || !isOfRollers(made)) return
        expect(drilled.length).toBeGreaterThanOrEqual(drive.count + cheekScrews.count)
        // Those of the cheek that is not seen come from the other side, midway between these.
        const turnOf = ({ x, y }: Point) => Math.atan2(y - middle.centre.y, x - middle.centre.x) - Math.PI / 2
        const isDrive = ({ centre }: { readonly centre: Point }) =>
          Math.abs(Math.sin((cheekScrews.count * turnOf(centre)) / 2 - Math.PI / 2)) > 1e-6
        for (const hole of holes.filter(isDrive)) {
          const step = (2 * Math.PI) / cheekScrews.count
          const off = Math.abs(turnOf(hole.centre) - step * Math.round(turnOf(hole.centre) / step))
          expect(off * (drive.circle / 2)).toBeGreaterThan(hole.radius + cheekScrews.shankDiameter / 2)
        }
      }),
      { numRuns: 60 },
    )
  })

  test('one segment is drawn full size: its edges, its width and its miter are those of the plan', () => {
    fc.assert(
      fc.property(planned, (plan) => {
        const made = designOf(plan)
        if (isOfPlates(made)) throw new RangeError('rings are asked for')
        const { segments } = stockOf(made.bearing).outerRing
        if (segments === undefined) throw new RangeError('segments are asked for')
        const drawing = drawingOf('templates', made, 'a4')
        expect(sheetFaults(drawing)).toEqual([])
        const pieces = drawing.shapes.flatMap((shape) =>
          shape.kind === 'polyline' && shape.cut === 'outside' && shape.points.length === 4 ? [shape.points] : [],
        )
        expect(pieces).toHaveLength(1)
        const [a, b, c, d] = pieces[0] as unknown as readonly [Point, Point, Point, Point]
        expect(b.x - a.x).toBeWithin(1e-9, segments.outerEdge)
        expect(c.x - d.x).toBeWithin(1e-9, segments.innerEdge)
        expect(b.y - c.y).toBeWithin(1e-9, segments.stripWidth)
        expect((Math.atan2(b.x - c.x, b.y - c.y) * 180) / Math.PI).toBeWithin(1e-9, 180 / plan.segments)
      }),
      { numRuns: 60 },
    )
  })
})
