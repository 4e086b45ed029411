// Machinery's Handbook, "Lengths of Chords for Spacing Off the Circumferences of Circles": chord for n spaces, diameter
// 1. A copy with four decimals was seen; the six decimals were recomputed from its formula, sin(180°/n).
// Machinery's Handbook Guide, examples 1 and 2 of the same table: seen. Tolerance: half the last printed digit.
// A closed ring of n balls is that spacing: each chord is a ball, the circle the pitch circle.
import { expect, test } from 'vitest'
import { closedPitchRadius } from '#shared/geometry/ring-of-balls.ts'
import { inches, inUnits, mm } from '#shared/units/length.ts'

/** As text, as printed. */
const CHORDS: readonly (readonly [spaces: number, chord: string])[] = [
  [3, '0.866025'],
  [4, '0.707107'],
  [5, '0.587785'],
  [6, '0.5'],
  [7, '0.433884'],
  [8, '0.382683'],
  [9, '0.34202'],
  [10, '0.309017'],
  [11, '0.281733'],
  [12, '0.258819'],
  [13, '0.239316'],
  [14, '0.222521'],
  [15, '0.207912'],
  [16, '0.19509'],
  [17, '0.18375'],
  [18, '0.173648'],
  [19, '0.164595'],
  [20, '0.156434'],
  [21, '0.149042'],
  [22, '0.142315'],
  [23, '0.136167'],
  [24, '0.130526'],
  [25, '0.125333'],
  [26, '0.120537'],
  [27, '0.116093'],
  [28, '0.111964'],
  [29, '0.108119'],
  [30, '0.104528'],
  [31, '0.101168'],
  [32, '0.098017'],
]

test.each(CHORDS)("Machinery's Handbook, %s spaces: chord %s on a diameter of 1", (spaces, chord) => {
  expect(1 / (2 * closedPitchRadius(mm(1), spaces))).toBeWithin(5e-7, Number(chord))
})

test('the rows fall, and each row of twice the spaces follows from its half: c = √((1 − √(1 − C²)) / 2)', () => {
  const chords = CHORDS.map(([spaces, chord]) => [spaces, Number(chord)] as const)
  const table = new Map(chords)
  chords.slice(1).forEach(([, chord], row) => {
    expect(chord).toBeLessThan(chords[row]?.[1] ?? 0)
  })
  for (const [spaces, chord] of chords) {
    const half = table.get(2 * spaces)
    if (half !== undefined) expect(half).toBeWithin(1e-6, Math.sqrt((1 - Math.sqrt(1 - chord * chord)) / 2))
  }
})

test("Machinery's Handbook Guide, example 2: 8 holes on a 6 in circle stand 2.296 in apart", () => {
  expect(6 / (2 * closedPitchRadius(mm(1), 8))).toBeWithin(0.0005, 2.296)
})

test("Machinery's Handbook Guide, example 1: 56 spaces of 2.156 in make a circle of 38.452 in", () => {
  expect(inUnits(mm(2 * closedPitchRadius(inches(2.156), 56)), 'in')).toBeWithin(0.0005, 38.452)
})
