// Circular segment: "Circular Sections" in the help of a program for school mathematics, both worked examples, seen; its
// decimal commas turned to points. Tolerance: half the last printed digit.
import { expect, test } from 'vitest'
import { depthForHalfWidth, grooveWidth } from '#shared/geometry/groove.ts'
import { mm } from '#shared/units/length.ts'

test('circular segment, example: radius 1.2732395 and angle 45°, chord 0.97449536 and height 0.096919589', () => {
  const radius = mm(1.2732395)
  expect(depthForHalfWidth(mm(0.97449536 / 2), radius)).toBeWithin(5e-9, 0.096919589)
  // a height of nine digits tells the chord to its own rounding times dc/dh, here 4.8
  expect(grooveWidth({ radius, depth: mm(0.096919589) })).toBeWithin(5e-8, 0.97449536)
})

test('circular segment, application: chord 21 and height 6, radius 12.1875', () => {
  expect(grooveWidth({ radius: mm(12.1875), depth: mm(6) })).toBeWithin(1e-14 * 21, 21)
  expect(depthForHalfWidth(mm(10.5), mm(12.1875))).toBeWithin(1e-14 * 6, 6)
})
