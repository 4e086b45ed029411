import fc from 'fast-check'
import { expect, test } from 'vitest'
import * as defaults from '#shared/bearing/defaults.ts'
import { ACCEPTED_BINDING, MOST_PLAY, playForScatter } from '#shared/bearing/play-for-scatter.ts'
import { toleranceCheck } from '#shared/questions/tolerance/tolerance-check.ts'
import { mm } from '#shared/units/length.ts'
import { between } from '#tests/support/inputs.ts'
import { bindingChance } from '#tests/support/play-chance.ts'
import { normal } from '#tests/support/tolerance.ts'

test('one ring in twenty binds at the most, and more with a step less, between the least play and the most', () => {
  const counts = fc.integer({ min: 3, max: 200 })
  fc.assert(
    fc.property(counts, between(0, 0.05), between(1, 50), (ballCount, part, diameter) => {
      const balls = { ballCount, scatter: mm(part * diameter) }
      const play = playForScatter({ ...balls, ballDiameter: mm(diameter) })
      const [least, most] = [defaults.RADIAL_INTERNAL_CLEARANCE * diameter, MOST_PLAY * diameter]
      const step = mm(diameter / 1000)
      expect(play / step).toBeWithin(1e-9, Math.round(play / step))
      expect(play).toBeWithin((most - least) / 2 + 1e-9, (least + most) / 2)
      const chance = bindingChance({ ...balls, play })
      if (play < most - step / 2) expect(chance).toBeLessThanOrEqual(ACCEPTED_BINDING + 1e-3)
      if (play > least + step / 2) {
        expect(bindingChance({ ...balls, play: mm(play - step) })).toBeGreaterThanOrEqual(ACCEPTED_BINDING - 1e-3)
      }
    }),
  )
  expect(() => playForScatter({ ballDiameter: mm(0), scatter: mm(0.1), ballCount: 14 })).toThrow(RangeError)
})

// Against exact trials: the table is one of evenly spaced balls, the trials are of the bearing with its gap.
test.each([
  [7, 'wood'],
  [14, 'glass'],
  [24, 'wood'],
  [40, 'glass'],
] as const)('%i balls of %s, nothing else said: as many bind by trials as the table says', (count, material) => {
  const input = { units: 'mm', balls: { count, diameter: mm(14), material }, bore: mm(3) } as const
  const scatter = mm(defaults.BALL_SCATTER[material] * 14)
  const checked = toleranceCheck({ design: input, contributors: { ballDiameter: normal(scatter) }, trials: 20_000 })
  if (!checked.ok) throw new Error(JSON.stringify(checked.error))
  const play = playForScatter({ ballDiameter: mm(14), scatter, ballCount: count })
  const expected = bindingChance({ play, scatter, ballCount: count })
  // What the table says that it may be off, and four standard errors of the trials.
  expect(checked.value.binds?.value).toBeWithin(0.006 + 4 * Math.sqrt(expected / 20_000), expected)
})
