// Steiner's porism, concentric circles: a closed chain of n equal circles between two circles of radii R and r has
// R / r = (1 + sin(π/n)) / (1 − sin(π/n)). From memory and recomputed; n = 6 gives 3 and n = 4 gives 3 + 2 √2 exactly.
// A bearing with neither gap nor play, balls on the groove bottoms, is such a chain. Tolerance: half the last digit.
import { expect, test } from 'vitest'
import { fullRingsOf } from '#shared/bearing/arrangements.ts'
import { mm } from '#shared/units/length.ts'

test.each([
  [3, 13.928203],
  [4, 5.828427],
  [5, 3.85184],
  [6, 3],
  [8, 2.239829],
  [10, 1.894427],
  [12, 1.698396],
])('Steiner chain of %s circles: radii in the ratio %s', (count, ratio) => {
  const bearing = fullRingsOf({
    units: 'mm',
    balls: { count, diameter: mm(16) },
    bore: mm(1),
    outerRing: { engagement: 0.2 },
    innerRing: { engagement: 0.3 },
    ballGap: mm(0),
    radialInternalClearance: mm(0),
  })
  const radii =
    bearing.ok && bearing.value.outerRing.grooveBottomDiameter / bearing.value.innerRing.grooveBottomDiameter
  expect(radii).toBeWithin(5e-7, ratio)
})
