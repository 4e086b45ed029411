import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { mm } from '#shared/units/length.ts'
import { clipped } from '#src/drawings/clip.ts'
import { at, bulgeRadius, polar, type Shape } from '#src/drawings/model.ts'
import { between } from '#tests/support/inputs.ts'

const WINDOW = { left: 0, bottom: 0, right: 100, top: 60 }
const place = fc.tuple(between(-80, 180), between(-80, 140)).map(([x, y]) => at(x, y))

/** The length of a line or an arc. */
function lengthOf(shape: Shape): number {
  if (shape.kind === 'line') return Math.hypot(shape.to.x - shape.from.x, shape.to.y - shape.from.y)
  if (shape.kind === 'circle') return 2 * Math.PI * shape.radius
  if (shape.kind === 'arc') return ((shape.end - shape.start) * Math.PI * shape.radius) / 180
  throw new RangeError(`shape must be a line, a circle or an arc, got ${shape.kind}`)
}

/** How much of a curve lies in the window, by looking at many points of it. */
function insideByPoints(pointAt: (part: number) => { x: number; y: number }, length: number): number {
  const many = 20_000
  let inside = 0
  for (let index = 0; index < many; index += 1) {
    const { x, y } = pointAt((index + 0.5) / many)
    if (x >= 0 && x <= 100 && y >= 0 && y <= 60) inside += 1
  }
  return (inside / many) * length
}

const total = (shapes: readonly Shape[]): number => shapes.reduce((sum, shape) => sum + lengthOf(shape), 0)

describe('what is left of a shape is as long as what lies in the window', () => {
  test('a line', () => {
    fc.assert(
      fc.property(place, place, (from, to) => {
        const shape: Shape = { role: 'outline', kind: 'line', from, to }
        const pointAt = (part: number) => at(from.x + part * (to.x - from.x), from.y + part * (to.y - from.y))
        const length = lengthOf(shape)
        expect(total(clipped([shape], WINDOW))).toBeWithin(length * 2e-4 + 1e-9, insideByPoints(pointAt, length))
      }),
      { numRuns: 100 },
    )
  })

  test('a circle, or a part of one', () => {
    const turns = fc.record({
      centre: place,
      radius: between(1, 150),
      start: between(-360, 360),
      span: between(1, 360),
    })
    fc.assert(
      fc.property(turns, ({ centre, radius, start, span }) => {
        const shape: Shape = { role: 'outline', kind: 'arc', centre, radius: mm(radius), start, end: start + span }
        const length = lengthOf(shape)
        const pointAt = (part: number) => polar(centre, radius, start + part * span)
        expect(total(clipped([shape], WINDOW))).toBeWithin(length * 6e-4, insideByPoints(pointAt, length))
      }),
      { numRuns: 100 },
    )
  })

  test('an arc of a polyline, by its bulge', () => {
    fc.assert(
      fc.property(place, place, between(-2, 2), (from, to, bulge) => {
        fc.pre(Math.abs(bulge) > 0.05 && Math.hypot(to.x - from.x, to.y - from.y) > 1)
        const shape: Shape = { role: 'outline', kind: 'polyline', points: [{ ...from, bulge }, to] }
        const whole = clipped([shape], { left: -1e4, bottom: -1e4, right: 1e4, top: 1e4 })
        // An arc's length is its radius times four times the angle whose tangent is the bulge.
        expect(total(whole)).toBeWithin(1e-6, bulgeRadius({ ...from, bulge }, to) * 4 * Math.atan(Math.abs(bulge)))
      }),
    )
  })
})

test('a circle inside stays one circle, and one around the window leaves nothing', () => {
  const circle = (radius: number): Shape => ({ role: 'finish', kind: 'circle', centre: at(50, 30), radius: mm(radius) })
  expect(clipped([circle(20)], WINDOW)).toEqual([circle(20)])
  expect(clipped([circle(200)], WINDOW)).toEqual([])
})
