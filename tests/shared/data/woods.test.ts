import { expect, test } from 'vitest'
import { SPECIES, SPECIES_IDS, type Species } from '#shared/data/species.ts'
import { ALONG_THE_GRAIN, MOVEMENT, PLY_IN_PLANE } from '#shared/data/wood-movement.ts'
import { MPA_PER_PSI, NEWTONS_PER_LBF, STRENGTH } from '#shared/data/wood-strength.ts'

const movements = Object.entries(MOVEMENT)

test('every wood moves more along its rings than across them, and hardly at all along its grain', () => {
  expect(movements.length).toBeGreaterThan(100)
  for (const [species, { radial, tangential }] of movements) {
    expect(tangential, species).toBeGreaterThan(radial)
    expect(radial, species).toBeGreaterThan(10 * ALONG_THE_GRAIN.perPercent)
  }
})

test('about 1 % across the grain for every 4 % of moisture (American Wood Council): the middle of all rows', () => {
  const across = movements.map(([, { radial, tangential }]) => (radial + tangential) / 2).sort((a, b) => a - b)
  expect(across[Math.floor(across.length / 2)]).toBeWithin(0.0005, 0.01 / 4)
})

test('along the grain from green to ovendry 0.1 to 0.2 % (Wood Handbook, chapter 4)', () => {
  expect(ALONG_THE_GRAIN.perPercent * 30).toBeGreaterThan(0.001)
  expect(ALONG_THE_GRAIN.perPercent * 30).toBeLessThan(0.002)
})

test('ply moves more than wood along the grain and less than any wood across it', () => {
  expect(PLY_IN_PLANE.perPercent).toBeGreaterThan(ALONG_THE_GRAIN.perPercent)
  expect(PLY_IN_PLANE.perPercent).toBeLessThan(Math.min(...movements.map(([, { radial }]) => radial)))
})

test('the heavier the wood, the harder: side hardness follows specific gravity', () => {
  const known = Object.entries(STRENGTH).flatMap(([species, { specificGravity: g, hardnessLbf: h }]) =>
    g === undefined || h === undefined ? [] : [{ species, g, h }],
  )
  expect(known.length).toBeGreaterThan(80)
  // Wood Handbook, Table 4-11 (from memory): side hardness [lbf] of dry wood is about 3720 G^2.25 for hardwoods and
  // 1930 G^1.5 for softwoods. A slip of a digit is more than a factor of two off.
  for (const { species, g, h } of known) {
    const { group } = SPECIES[species as keyof typeof SPECIES]
    const usual = group === 'hardwood' ? 3720 * g ** 2.25 : 1930 * g ** 1.5
    expect(h / usual, species).toBeGreaterThan(0.5)
    expect(h / usual, species).toBeLessThan(2)
  }
})

// Wood Handbook Table 5-3a prints Table 5-3b in metric, rounded to 100 kPa and 100 N: cells that were read.
test.each([
  ['alder-red', 3000, 2600],
  ['ash-green', 9000, 5300],
  ['basswood-american', 2600, 1800],
  ['beech-american', 7000, 5800],
  ['birch-paper', 4100, 4000],
  ['cherry-black', 4800, 4200],
  ['hickory-true', 12_100, 8400],
  ['maple-sugar', 10_100, 6400],
  ['pine-ponderosa', 4000, 2000],
  ['pine-sugar', 3400, 1700],
  ['pine-virginia', 6300, 3300],
  ['red-oak-commercial', 7000, 5700],
] as const)('Table 5-3a: %s, %s kPa and %s N', (species, kPa, newtons) => {
  const { compressionPsi = Number.NaN, hardnessLbf = Number.NaN } = STRENGTH[species] ?? {}
  expect(compressionPsi * MPA_PER_PSI * 1000).toBeWithin(50, kPa)
  expect(hardnessLbf * NEWTONS_PER_LBF).toBeWithin(50, newtons)
})

test('a force per area in either system: 15 700 lbf/in2 are 108.25 N/mm2', () => {
  expect(15_700 * MPA_PER_PSI).toBeWithin(0.005, 108.25)
  // A pound-force is the weight of 0.45359237 kg under 9.80665 m/s2, an inch 25.4 mm: all exact.
  expect(NEWTONS_PER_LBF).toBeWithin(1e-12, 0.45359237 * 9.80665)
  expect(MPA_PER_PSI).toBeWithin(1e-15, (0.45359237 * 9.80665) / 25.4 ** 2)
})

test('names are in order, and each is known once', () => {
  expect([...SPECIES_IDS].sort()).toEqual(SPECIES_IDS)
  const names = SPECIES_IDS.map((id): Species => SPECIES[id]).map(({ name }) => name)
  expect(new Set(names).size).toBe(names.length)
})
