// The ten percent rule of gauge makers (ANSI/ASME B89.1.5 and ASME B89.7.3.1, as northerngauge.com and metalworkingsolutions.net
// give it): a tenth of the tolerance of a hole is shared by its two plugs. Print lays it inside the hole's limits; a plug of wood may be
// as much off either way. Tolerance: what a double can hold.
import { expect, test } from 'vitest'
import { plugsToTurn } from '#shared/making/gauge-kit.ts'
import { inches } from '#shared/units/length.ts'

test.each([
  { hole: '1.000 in, 0.001 in either way', go: 0.999, noGo: 1.001, each: 0.0001 },
  { hole: '0.250 in, 0.004 in above', go: 0.25, noGo: 0.254, each: 0.0002 },
])('a hole of $hole: $each in for each plug', ({ go, noGo, each }) => {
  const plugs = plugsToTurn(
    { goDiameter: inches(go), noGoDiameter: inches(noGo) },
    { units: 'in', balls: { count: 12 } },
  )
  expect(plugs.map(({ kind, diameter }) => [kind, diameter])).toEqual([
    ['go', inches(go)],
    ['no-go', inches(noGo)],
  ])
  for (const { tolerance } of plugs) expect(tolerance).toBeWithin(1e-12, inches(each))
})
