// Hertz's contact against print. Each row names its source; from memory where it says so. Tolerance: half the last printed
// digit, unless the row says why not.
import { describe, expect, test } from 'vitest'
import { contactForm, contactModulus, contactUnder } from '#shared/contact/hertz.ts'

const RIGID = { stiffness: 1e30, poissonsRatio: 0 }

describe('circles', () => {
  test('a finite-element benchmark: R 8 mm, E 1000 MPa, ν 0.3, on a rigid plane under 60π N: a = 1.010 mm', () => {
    const modulus = contactModulus({ stiffness: 1000, poissonsRatio: 0.3 }, RIGID)
    const { semiMajor, semiMinor } = contactUnder(contactForm([1 / 8, 1 / 8]), modulus, 60 * Math.PI)
    expect(semiMajor).toBeWithin(0.0005, 1.01)
    expect(semiMinor).toBe(semiMajor)
  })

  test('Shigley, Mechanical Engineering Design, chapter 3 (from memory): two steel balls of 25 mm', () => {
    const steel = { stiffness: 207_000, poissonsRatio: 0.292 }
    const { semiMajor, maxPressure } = contactUnder(contactForm([2 / 12.5, 2 / 12.5]), contactModulus(steel, steel), 1)
    expect(semiMajor).toBeWithin(0.00005, 0.0346)
    expect(maxPressure).toBeWithin(0.5, 399)
  })

  test('steel on a rigid plane and on steel: E / (1 − ν²) = 230 769 MPa, and half of it', () => {
    const steel = { stiffness: 210_000, poissonsRatio: 0.3 }
    expect(contactModulus(steel, RIGID)).toBeWithin(0.5, 230_769)
    expect(contactModulus(steel, steel)).toBeWithin(0.5, 115_385)
  })
})

describe('ellipses', () => {
  // Exact, from another library's elliptic integrals, to four decimals.
  test.each([
    [1.2, 1.1292, 1.4823, 1.6677],
    [1.5, 1.3101, 1.3911, 1.7898],
    [2, 1.5858, 1.2972, 1.9521],
    [3, 2.072, 1.2002, 2.1883],
    [5, 2.8902, 1.1205, 2.4937],
    [10, 4.4994, 1.0599, 2.9142],
    [20, 6.9287, 1.0296, 3.3342],
    [50, 12.0711, 1.0116, 3.8821],
    [100, 18.1871, 1.0057, 4.2895],
  ])('curvatures as %s to 1: k %s, E %s, F %s', (ratio, k, second, first) => {
    const form = contactForm([ratio, 1])
    expect(1 / form.axisRatio).toBeWithin(5e-5, k)
    expect(form.secondIntegral).toBeWithin(5e-5, second)
    expect(form.firstIntegral).toBeWithin(5e-5, first)
  })

  // Hamrock and Brewe 1983 (from memory): k = 1.0339 (Ry/Rx)^0.6360, E = 1.0003 + 0.5968 Rx/Ry,
  // F = 1.5277 + 0.6023 ln(Ry/Rx): a fit, to about 3 % in k from 1.2 to 50, 1.1 % in E, 1.9 % in F. Their worked example is
  // the inner ring of a 209 bearing: Rx 0.00511 m, Ry 0.165 m gives k 9.42, E 1.0188, F 3.6205, R 0.00496 m.
  test('Hamrock and Brewe, the 209 bearing: the exact contact is within the error of their fit', () => {
    const form = contactForm([1 / 0.00511, 1 / 0.165])
    expect(1 / form.axisRatio / 9.42).toBeWithin(0.03, 1)
    expect(form.secondIntegral / 1.0188).toBeWithin(0.011, 1)
    expect(form.firstIntegral / 3.6205).toBeWithin(0.019, 1)
    expect(1 / (2 * form.curvature)).toBeWithin(0.000005, 0.00496)
  })

  test.each([1.2, 1.5, 2, 3, 5, 10, 20, 50])('Hamrock and Brewe: curvatures as %s to 1', (ratio) => {
    const form = contactForm([1, ratio])
    expect(1.0339 * ratio ** 0.636 * form.axisRatio).toBeWithin(0.035, 1)
    expect((1.0003 + 0.5968 / ratio) / form.secondIntegral).toBeWithin(0.011, 1)
    expect((1.5277 + 0.6023 * Math.log(ratio)) / form.firstIntegral).toBeWithin(0.02, 1)
  })

  // Harris, Rolling Bearing Analysis (from memory): the 209, balls of 12.7 mm on 65 mm, conformity 0.52, no contact angle.
  test.each([
    ['inner', 2 / (65 - 12.7), 0.202, 0.94],
    ['outer', -2 / (65 + 12.7), 0.138, 0.912],
  ])(
    'Harris, the 209 bearing, %s ring: curvature sum %#s, %s 1/mm, and difference over sum %s',
    (_, ring, sum, over) => {
      const rolling = 2 / 12.7 + ring
      const section = 2 / 12.7 - 1 / (0.52 * 12.7)
      expect(2 * contactForm([rolling, section]).curvature).toBeWithin(0.0005, sum)
      expect((rolling - section) / (rolling + section)).toBeWithin(0.0005, over)
    },
  )

  // A later fit (from memory): k = a^(2/π), E = 1 + (π/2 - 1)/a, F = π/2 + (π/2 - 1) ln a; of 32.2896 k 9.1348, E 1.01768,
  // F 3.55417. The exact contact is within 2 % of each.
  test('the later fit: the exact contact of curvatures as 32.2896 to 1', () => {
    const form = contactForm([32.2896, 1])
    expect(1 / form.axisRatio / 9.1348).toBeWithin(0.02, 1)
    expect(form.secondIntegral / 1.01768).toBeWithin(0.02, 1)
    expect(form.firstIntegral / 3.55417).toBeWithin(0.02, 1)
  })
})
