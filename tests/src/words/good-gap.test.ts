import fc from 'fast-check'
import { expect, test } from 'vitest'
import { isCaged } from '#shared/bearing/arrangements.ts'
import { ballGap } from '#shared/geometry/ring-of-balls.ts'
import { inUnits, mm, type Units } from '#shared/units/length.ts'
import { parseLength } from '#shared/units/parse-length.ts'
import { drawingOf } from '#src/drawings/views.ts'
import { goodGapOf } from '#src/kiosk/good-gap.ts'
import { TERMS } from '#src/words/terms.ts'
import { anyDesigned, validOfAny } from '#tests/support/designed.ts'
import { CAGED, likelyInput, likelyPlates, likelyRollers, PLAIN, PLATES } from '#tests/support/inputs.ts'
import { textsOn } from '#tests/support/sheet-faults.ts'

const DIGITS = { mm: 0.006, in: 0.0006 }

/** The two lengths of a sentence, in its units. */
function lengthsIn(sentence: RegExp, text: string, units: Units): readonly number[] {
  const [, ...found] = sentence.exec(text) ?? []
  return found.map((each) => {
    const read = parseLength(each, units)
    return read.ok ? inUnits(read.value, units) : Number.parseFloat(each)
  })
}

test('one bearing has one lower limit of its gap: on the page, on the drawing and at the go plug', () => {
  const designs = fc.oneof(validOfAny(likelyInput), validOfAny(likelyRollers), validOfAny(likelyPlates))
  fc.assert(
    fc.property(designs, (design) => {
      if (isCaged(design)) return
      const { resolved, gauge } = design.bearing
      const { units, arrangement = 'radial' } = resolved.input
      const told = goodGapOf(design, TERMS[arrangement]) ?? ''
      const { goDiameter, noGoDiameter } = gauge
      // What the go plug stands for may be more than is allowed, which has a warning of its own.
      if (goDiameter > noGoDiameter) return
      const [low, high] = lengthsIn(/ from (.+? (?:mm|in)) to (.+? (?:mm|in)) is good\./, told, units)
      const drawn = textsOn(drawingOf('assembly', design, 'a4')).map(({ text }) => text)
      const note = drawn.join(' ').replaceAll(/ +/g, ' ')
      const [drawnLow, drawnHigh] = lengthsIn(/ gap of (.+?) to (.+?) (?:mm|in)\./, note, units)
      const { ballDiameter, input } = resolved
      const atPlug = (plug: number) =>
        inUnits(ballGap(mm((plug + ballDiameter) / 2), ballDiameter, input.balls.count), units)
      expect(low).toBeWithin(DIGITS[units], atPlug(goDiameter))
      expect(high).toBeWithin(DIGITS[units], atPlug(noGoDiameter))
      expect(drawnLow).toBeWithin(2 * DIGITS[units], low ?? Number.NaN)
      expect(drawnHigh).toBeWithin(2 * DIGITS[units], high ?? Number.NaN)
    }),
    { numRuns: 60 },
  )
})

test('below that limit it is said what counts', () => {
  const told = (input: Parameters<typeof anyDesigned>[0]) =>
    goodGapOf(anyDesigned(input), TERMS[input.arrangement ?? 'radial'])
  expect(told(PLAIN)).toBe(
    'A ball gap from 0.48 mm to 2.48 mm is good. A smaller one is good only if the last ball goes in; below 0, it never does.',
  )
  expect(told({ ...PLAIN, minBallGap: mm(0.2) })).toBe(
    'A ball gap from 0.48 mm to 2.48 mm is good. A smaller one, down to 0.2 mm, is good only if the last ball goes in.',
  )
  expect(told({ ...PLAIN, minBallGap: mm(0.6) })).toBe('A ball gap from 0.6 mm to 2.48 mm is good.')
  expect(told(PLATES)).toBe('A ball gap from 0 mm to 2 mm is good. Below 0, the last ball does not go in.')
  expect(told(CAGED)).toBeUndefined()
})
