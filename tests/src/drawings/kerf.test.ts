import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { DesignInput } from '#shared/bearing/arrangements.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { movedForKerf } from '#src/drawings/kerf.ts'
import { arcOfLeg, type Drawing, legsOf, type Point, polar, type Shape, type ShapeOf } from '#src/drawings/model.ts'
import { drawingOf, pagesOfView } from '#src/drawings/views.ts'
import { LOOKS } from '#src/drawings/writers/looks.ts'
import { toSvg } from '#src/drawings/writers/svg.ts'
import { anyDesigned, validOfAny } from '#tests/support/designed.ts'
import {
  between,
  CAGED,
  likelyCaged,
  likelyInput,
  likelyPlates,
  likelyRollers,
  PLAIN,
  PLATES,
  ROLLERS,
} from '#tests/support/inputs.ts'
import { textsOn } from '#tests/support/sheet-faults.ts'
import { withMaking } from '#tests/support/with-making.ts'

const EVERY = [PLAIN, ROLLERS, PLATES, CAGED]
const likelyAny = fc.oneof<fc.Arbitrary<DesignInput>[]>(likelyInput, likelyRollers, likelyCaged, likelyPlates)
const CUT_OUT = ['templates', 'gauges'] as const

type Outline = Extract<Shape, { kind: 'circle' | 'polyline' }>
const outlines = ({ shapes }: Pick<Drawing, 'shapes'>): readonly Outline[] =>
  shapes.flatMap((shape) =>
    (shape.kind === 'circle' || shape.kind === 'polyline') && shape.cut !== undefined ? [shape] : [],
  )

/** Points along every leg, and how far the nearest of its line is from a place. */
const alongLeg = ({ from, to }: ReturnType<typeof legsOf>[number]): readonly Point[] => {
  const parts = [0.1, 0.5, 0.9]
  if ((from.bulge ?? 0) === 0)
    return parts.map((part) => ({ x: mm(from.x + part * (to.x - from.x)), y: mm(from.y + part * (to.y - from.y)) }))
  const { centre, radius, start, end } = arcOfLeg(from, to)
  return parts.map((part) => polar(centre, radius, start + part * (end - start)))
}

/** From a place to a leg: to its line, or to its circle. */
function away({ from, to }: ReturnType<typeof legsOf>[number], { x, y }: Point): number {
  if ((from.bulge ?? 0) !== 0) {
    const { centre, radius } = arcOfLeg(from, to)
    return Math.abs(Math.hypot(x - centre.x, y - centre.y) - radius)
  }
  const length = Math.hypot(to.x - from.x, to.y - from.y)
  return Math.abs((to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x)) / length
}

/** From left to right: the end of a bar bulges out beyond its corners. */
const sizeOf = (outline: ShapeOf<'polyline'>): number => {
  const xs = legsOf(outline).flatMap((leg) => [leg.from.x, ...alongLeg(leg).map(({ x }) => x)])
  return Math.max(...xs) - Math.min(...xs)
}

test('half of the beam beside the line of each edge, outside of what stays: what is cut is as large as drawn', () => {
  fc.assert(
    fc.property(validOfAny(likelyAny), between(0.01, 0.3), fc.constantFrom(...CUT_OUT), (made, kerf, view) => {
      for (const shape of outlines(drawingOf(view, made, 'a4'))) {
        const moved = movedForKerf(shape, mm(kerf))
        const sign = shape.cut === 'outside' ? 1 : -1
        if (shape.kind === 'circle') {
          if (moved === undefined) expect(shape.radius).toBeLessThanOrEqual(kerf / 2)
          else expect(2 * (moved as ShapeOf<'circle'>).radius).toBeWithin(1e-9, 2 * shape.radius + sign * kerf)
          continue
        }
        if (moved?.kind !== 'polyline') {
          // Only a gauge of a few beams' width may be lost.
          expect(sizeOf(shape)).toBeLessThan(20 * kerf)
          continue
        }
        expect(sizeOf(moved)).toBeWithin(1e-9, sizeOf(shape) + sign * kerf)
        const legs = legsOf(moved)
        for (const [index, leg] of legsOf(shape).entries()) {
          const path = legs[index]
          if (path === undefined) throw new RangeError('a moved outline must have every leg')
          for (const place of alongLeg(path)) expect(away(leg, place)).toBeWithin(1e-7, kerf / 2)
        }
      }
    }),
    { numRuns: 200 },
  )
})

/** Radii of the circles of a file, in the order in which they stand. */
const radiiIn = (svg: string): readonly number[] =>
  [...svg.matchAll(/<circle [^>]*r="([\d.]+)"/g)].map(([, r]) => Number(r))

test.each(EVERY)('SVG: circles grow and holes shrink by the kerf, and the file says so', (input) => {
  const made = anyDesigned(input)
  for (const view of CUT_OUT) {
    const [plain, cut] = [0, 0.2].map((kerf) => drawingOf(view, withMaking(made, { kerf: mm(kerf) }), 'a4')) as [
      Drawing,
      Drawing,
    ]
    const before = plain.shapes.filter((shape) => shape.kind === 'circle')
    const radii = radiiIn(toSvg(cut))
    expect(radii).toHaveLength(before.length)
    for (const [index, { radius, cut: side }] of before.entries()) {
      const by = side === undefined ? 0 : side === 'outside' ? 0.1 : -0.1
      expect(radii[index]).toBeWithin(1e-4, radius + by)
    }
    const foot = (drawing: Drawing) => textsOn(drawing).map(({ text }) => text)
    expect(foot(plain).join()).toContain('kerf 0: cut on the lines')
    expect(foot(cut).join()).toContain('kerf 0.2 mm: outlines moved out and holes moved in by half of it')
    // Paper is cut by hand: it has no kerf.
    const pages = pagesOfView(view, withMaking(made, { kerf: mm(0.2) }), 'a4')
    const printed = pages.ok ? pages.value : []
    const unmoved = before.filter(({ cut: side }) => side !== undefined).map(({ radius }) => radius)
    for (const shape of printed.flatMap(outlines))
      if (shape.kind === 'circle') expect(unmoved).toContainEqual(shape.radius)
    expect(
      printed
        .flatMap((page) => textsOn(page))
        .map(({ text }) => text)
        .join(),
    ).not.toContain('kerf')
  }
})

test('an outline that is narrower than the beam stays as drawn, and is only marked', () => {
  const tiny = { units: 'mm', balls: { count: 5, diameter: 0.5 as Mm }, bore: 0.1 as Mm } as const
  const drawing = drawingOf('templates', withMaking(anyDesigned(tiny), { kerf: mm(1) }), 'a4')
  const lost = outlines(drawing).filter(({ role }) => role === 'mark')
  expect(lost.length).toBeGreaterThan(0)
  expect(
    textsOn(drawing)
      .map(({ text }) => text)
      .join(),
  ).toContain('too small for it: cut them by hand')
})

test('what is cut by is drawn in hairlines, and each edge of a gauge says on which side it is cut', () => {
  for (const role of ['finish', 'saw', 'hole', 'layout'] as const) expect(LOOKS[role].width).toBeLessThanOrEqual(0.13)
  for (const input of EVERY) {
    const gauges = drawingOf('gauges', anyDesigned(input), 'a4')
    const words = textsOn(gauges).map(({ text }) => text)
    expect(words.filter((text) => text === 'cut outside')).toHaveLength(outlines(gauges).length)
    expect(words.filter((text) => text === 'this edge touches').length).toBeGreaterThanOrEqual(outlines(gauges).length)
    const templates = textsOn(drawingOf('templates', anyDesigned(input), 'a4')).map(({ text }) => text)
    expect(templates.some((text) => text.startsWith('cut outside: Ø'))).toBe(true)
  }
})
