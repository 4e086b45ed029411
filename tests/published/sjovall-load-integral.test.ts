// Sjövall's radial integral, T. A. Harris, Rolling Bearing Analysis, table 7.1: point and line contact. Quoted from memory;
// all were reproduced by quadrature elsewhere. Tolerance: the last printed digit (point), two of it (line, whose exponent
// is rounded). Stribeck's constants: 4.37 and 4.08 stand in a bearing maker's report, eq. (4) and (5), with 1.216 and 1.260
// for an axial load that loads half the ring.
import { describe, expect, test } from 'vitest'
import { sharedBeside } from '#shared/contact/eccentric-load.ts'
import { LINE_CONTACT, POINT_CONTACT, radialLoadIntegral, sharedByBalls } from '#shared/contact/load-distribution.ts'
import { integral } from '#shared/numbers/quadrature.ts'
import { mm } from '#shared/units/length.ts'

const TABLE = [
  [0.1, 0.1156, 0.1268],
  [0.2, 0.159, 0.1737],
  [0.3, 0.1892, 0.2055],
  [0.4, 0.2117, 0.2286],
  [0.5, 0.2288, 0.2453],
  [0.6, 0.2416, 0.2568],
  [0.7, 0.2505, 0.2636],
  [0.8, 0.2559, 0.2658],
  [0.9, 0.2576, 0.2628],
  [1, 0.2546, 0.2523],
  [1.25, 0.2289, 0.2078],
  [2.5, 0.1339, 0.1075],
  [5, 0.0711, 0.0544],
] as const

test.each(TABLE)('Harris table 7.1: ε = %s, Jr %s (point), %s (line)', (loadZone, point, line) => {
  expect(radialLoadIntegral(loadZone, POINT_CONTACT)).toBeWithin(1e-4, point)
  expect(radialLoadIntegral(loadZone, LINE_CONTACT)).toBeWithin(2e-4, line)
})

describe('Stribeck: the most loaded ball carries so many times Fr / Z without clearance', () => {
  test('4.37 (balls), 4.08 (rollers)', () => {
    expect(1 / radialLoadIntegral(0.5, POINT_CONTACT)).toBeWithin(0.005, 4.37)
    expect(1 / radialLoadIntegral(0.5, LINE_CONTACT)).toBeWithin(0.005, 4.08)
  })

  test('half the ring is loaded by an axial force of 1.216 Fr tan α (balls), 1.260 (rollers)', () => {
    const half = (exponent: number): number =>
      integral((angle) => Math.exp(exponent * Math.log(Math.cos(angle))), 0, Math.PI / 2) / Math.PI
    expect(half(POINT_CONTACT) / radialLoadIntegral(0.5, POINT_CONTACT)).toBeWithin(0.0005, 1.216)
    expect(half(LINE_CONTACT) / radialLoadIntegral(0.5, LINE_CONTACT)).toBeWithin(0.001, 1.26)
  })

  // Stribeck 1901 by sums over the balls, one of them under the load; for 20 balls he prints 4.36, the sum gives 4.369.
  test.each([
    [10, 4.38],
    [15, 4.37],
  ])('%i balls: %s', (count, constant) => {
    const sharing = { count, exponent: POINT_CONTACT, stiffness: 1e4, clearance: mm(0) }
    expect((count * sharedByBalls(100, sharing, 0).most) / 100).toBeWithin(0.005, constant)
  })

  // Z / Σ cos^2.5 over the loaded balls: evaluated apart, to four decimals.
  test.each([
    [8, 4.3457],
    [9, 4.3852],
    [12, 4.3645],
    [16, 4.3681],
    [20, 4.3692],
  ])('%i balls, summed: %s', (count, constant) => {
    const sharing = { count, exponent: POINT_CONTACT, stiffness: 30, clearance: mm(0) }
    expect((count * sharedByBalls(7, sharing, 0).most) / 7).toBeWithin(5e-5, constant)
  })

  // 5 Fr / Z, the usual allowance for clearance (Stribeck; from memory): it is that of a loaded arc of 2/3 of a half turn.
  test('5 is reached by a clearance that leaves ε = 0.30 to 0.36 loaded', () => {
    expect(1 / radialLoadIntegral(0.36, POINT_CONTACT)).toBeLessThan(5)
    expect(1 / radialLoadIntegral(0.3, POINT_CONTACT)).toBeGreaterThan(5)
  })
})

// The same half ring under a load beside the axis of plates: it stands where Σ Q cos ψ / Σ Q is 1/1.216 of R (point) or 1/1.260
// (line), and the other half is just free. Tolerance: the last printed digit.
test.each([
  ['point', POINT_CONTACT, 1.216],
  ['line', LINE_CONTACT, 1.26],
] as const)(
  '%s contact: half of the balls carry a load that is %s, %s times nearer than they are',
  (_, exponent, times) => {
    const leanAt = (ratio: number) => sharedBeside(2000, exponent, 1 / ratio, 0).lean
    expect(leanAt(times + 0.001)).toBeLessThan(1)
    expect(leanAt(times - 0.001)).toBeGreaterThan(1)
  },
)
