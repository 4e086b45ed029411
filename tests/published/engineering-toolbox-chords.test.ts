// The Engineering ToolBox, "Chord Lengths when Dividing Circumference of a Circle in Equal Segments": chord on a radius
// of 1, and its example. Tolerance: half the last printed digit; the example is a printed chord times 3, so three halves.
import { expect, test } from 'vitest'
import { closedPitchRadius } from '#shared/geometry/ring-of-balls.ts'
import { mm } from '#shared/units/length.ts'

test.each([
  [4, '1.4142'],
  [6, '1'],
  [8, '0.7654'],
  [10, '0.618'],
  [12, '0.5176'],
  [14, '0.445'],
  [16, '0.3902'],
  [18, '0.3473'],
  [20, '0.3129'],
  [24, '0.2611'],
  [30, '0.2091'],
  [36, '0.1743'],
])('Engineering ToolBox, %s segments: chord %s on a radius of 1', (segments, chord) => {
  expect(1 / closedPitchRadius(mm(1), segments)).toBeWithin(5e-5, Number(chord))
})

test('Engineering ToolBox, example: 24 segments on a radius of 3, chord 0.7833', () => {
  expect(3 / closedPitchRadius(mm(1), 24)).toBeWithin(1.5e-4, 0.7833)
})
