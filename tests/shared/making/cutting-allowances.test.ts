import { expect, test } from 'vitest'
import { grooveStopShort } from '#shared/making/cutting-allowances.ts'
import { mm } from '#shared/units/length.ts'

// A cut of 3.2 mm by a tool of 0.2 mm and a tenth of the depth: √(0.2² + 0.32²) = 0.377 mm, by hand.
test('a groove is stopped short by twice what the tool scatters, and by half its depth at the most', () => {
  expect(grooveStopShort(mm(3.2))).toBeWithin(0.001, 0.755)
  expect(grooveStopShort(mm(0.4))).toBeWithin(1e-12, 0.2)
})
