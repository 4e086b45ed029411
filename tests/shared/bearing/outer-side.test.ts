import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { RadialInput } from '#shared/bearing/arrangements/radial/input.ts'
import { ARRANGEMENTS, fullRingsOf } from '#shared/bearing/arrangements.ts'
import { gapAt } from '#shared/bearing/ball-ring.ts'
import type { OuterSide } from '#shared/bearing/outer-side.ts'
import { leastPitchRadius } from '#shared/geometry/ring-of-balls.ts'
import { mm } from '#shared/units/length.ts'
import { likelyInput, PLAIN } from '#tests/support/inputs.ts'

function made(input: RadialInput): OuterSide {
  const result = ARRANGEMENTS.radial.outerSideOf(input)
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.error)}`)
  return result.value
}

test('the outer side of a bearing is that of the outer ring alone: bore and inner ring do not matter', () => {
  fc.assert(
    fc.property(likelyInput, (input) => {
      const whole = fullRingsOf(input)
      fc.pre(whole.ok)
      if (!whole.ok) return
      const { resolved: _, ...alone } = made({ ...input, bore: mm(9999), innerRing: {} })
      expect(whole.value).toMatchObject(alone)
    }),
    { numRuns: 200 },
  )
})

test('the gap at another pitch radius, as long as the balls but one go in', () => {
  const side = made(PLAIN)
  expect(gapAt(side, side.pitchRadius)).toBeWithin(1e-12, side.ballGap)
  expect(gapAt(side, side.closedPitchRadius)).toBeWithin(1e-12, 0)
  const least = leastPitchRadius(mm(16), 12)
  expect(gapAt(side, least)).toBeWithin(1e-12, -16)
  expect(gapAt(side, mm(least * 0.9999))).toBeUndefined()
  expect(gapAt(side, mm(0))).toBeUndefined()
  expect(gapAt(side, mm(-1))).toBeUndefined()
})
