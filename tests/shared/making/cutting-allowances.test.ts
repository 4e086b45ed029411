import { expect, test } from 'vitest'
import type { RadialInput } from '#shared/bearing/arrangements/radial/input.ts'
import { fullRingsOf } from '#shared/bearing/arrangements.ts'
import { cheekScrewsOf, grooveStopShort, splitScrewsOf } from '#shared/making/cutting-allowances.ts'
import { mm } from '#shared/units/length.ts'
import { PLAIN, ROLLERS } from '#tests/support/inputs.ts'

function screwsOf(input: RadialInput) {
  const made = fullRingsOf(input)
  if (!made.ok) throw new RangeError('the input must give a bearing')
  return { inner: made.value.innerRing, screws: splitScrewsOf(made.value) }
}

test('the screws of a split inner ring stand midway between its bore and its groove', () => {
  const { inner, screws } = screwsOf(PLAIN)
  const between = (inner.boreDiameter + inner.grooveBottomDiameter) / 2
  expect(screws).toMatchObject({ count: 3, circleDiameter: between })
})

test('a larger ring takes more of them, up to twelve', () => {
  const { screws } = screwsOf({ ...PLAIN, balls: { count: 200, diameter: mm(16) } })
  expect(screws?.count).toBe(12)
})

// ASME B18.6.1: a No. 4 head is 0.225 in across, its shank 0.112 in: 0.449 in, 11.4 mm, between bore and groove.
test.each([
  [11.3, false],
  [11.5, true],
])('%d mm of wood between bore and groove: room for screws is %s', (wall, hasRoom) => {
  const bore = mm(screwsOf(PLAIN).inner.grooveBottomDiameter - 2 * wall)
  expect(screwsOf({ ...PLAIN, bore }).screws !== undefined).toBe(hasRoom)
})

test.each(['outer-ring', 'none'] as const)('with split %s the inner ring has none', (split) => {
  expect(screwsOf({ ...PLAIN, split }).screws).toBeUndefined()
})

// The same shank, 2.845 mm, with as much wood on both sides: 8.53 mm behind the track. Twelve rollers of 16 mm close on
// 16 / sin 15° = 61.8 mm, so the screws' circle is some 62 + 16 + 8.6 mm across, 272 mm round: one each 60 mm makes five.
test.each([
  [8.4, undefined],
  [8.6, 5],
])('%d mm of wood behind the track of rollers: each cheek has screws, %s of them', (wall, count) => {
  const made = fullRingsOf({ ...ROLLERS, outerRing: { wall: mm(wall), roundOutsideDiameterTo: null } })
  if (!made.ok) throw new RangeError('the input must give a bearing')
  const { outerRing } = made.value
  const screws = cheekScrewsOf(made.value)
  expect(screws?.count).toBe(count)
  if (screws !== undefined)
    expect(screws.circleDiameter).toBeWithin(1e-9, outerRing.grooveBottomDiameter + outerRing.wall)
})

test('rings that hold their balls in grooves have no cheeks to screw on', () => {
  const made = fullRingsOf(PLAIN)
  expect(made.ok && cheekScrewsOf(made.value)).toBeUndefined()
})

// A cut of 3.2 mm by a tool of 0.2 mm and a tenth of the depth: √(0.2² + 0.32²) = 0.377 mm, by hand.
test('a groove is stopped short by twice what the tool scatters, and by half its depth at the most', () => {
  expect(grooveStopShort(mm(3.2))).toBeWithin(0.001, 0.755)
  expect(grooveStopShort(mm(0.4))).toBeWithin(1e-12, 0.2)
})
