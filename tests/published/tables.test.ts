// Every table of shared/data against a transcription of print that was not made from it: tests/published/tables/, whose
// head names what was read. Both ways: no cell differs, and no row is here that is not there. Exact, or as a line says.
import { expect, test } from 'vitest'
import { ACRYLIC_GROWTH, BALL_SUBSTANCES } from '#shared/data/ball-materials.ts'
import { CONTACT_WOODS, type ContactWoodId, contactWood } from '#shared/data/contact-woods.ts'
import * as lumber from '#shared/data/lumber.ts'
import { METRIC_HEAD_ANGLE, METRIC_WOOD_SCREWS } from '#shared/data/metric-wood-screws.ts'
import { SAW_BLADES } from '#shared/data/saw-blades.ts'
import { segmentWood } from '#shared/data/segment-woods.ts'
import { ALL_SOURCES } from '#shared/data/sources.ts'
import { SPECIES, type SpeciesId } from '#shared/data/species.ts'
import { ALONG_THE_GRAIN, MOVEMENT, PLY_IN_PLANE } from '#shared/data/wood-movement.ts'
import { FLAT_HEAD_ANGLE, SCREW_LENGTHS, WOOD_SCREWS } from '#shared/data/wood-screws.ts'
import { ACROSS_OVER_ALONG, MPA_PER_PSI, NEWTONS_PER_LBF, STRENGTH } from '#shared/data/wood-strength.ts'
import acrylic from '#tests/published/tables/acrylic-growth.json' with { type: 'json' }
import ballRows from '#tests/published/tables/ball-materials.json' with { type: 'json' }
import bandSaws from '#tests/published/tables/band-saw-radii.json' with { type: 'json' }
import contactRows from '#tests/published/tables/contact-woods.json' with { type: 'json' }
import european from '#tests/published/tables/european-woods.json' with { type: 'json' }
import hardwood from '#tests/published/tables/hardwood-lumber.json' with { type: 'json' }
import metric from '#tests/published/tables/metric-strength.json' with { type: 'json' }
import metricScrews from '#tests/published/tables/metric-wood-screws.json' with { type: 'json' }
import movement from '#tests/published/tables/movement.json' with { type: 'json' }
import softwood from '#tests/published/tables/softwood-lumber.json' with { type: 'json' }
import strength from '#tests/published/tables/strength.json' with { type: 'json' }
import screws from '#tests/published/tables/wood-screws.json' with { type: 'json' }

/** A row as an object, by the names of its columns; a cell that print leaves empty is left out. */
const named = ({ columns, rows }: { columns: string[]; rows: unknown[][] }): readonly Record<string, unknown>[] =>
  rows.map((row) =>
    Object.fromEntries(columns.map((name, i) => [name, row[i]] as const).filter(([, cell]) => cell !== null)),
  )

/** Inches printed as whole and fraction: 1 3/8. */
const inches = (text: string): number =>
  text.split(' ').reduce((sum, part) => {
    const [above = Number.NaN, below = 1] = part.split('/').map(Number)
    return sum + above / below
  }, 0)

/** Their printed shrinkage gives other coefficients than those remembered, so they are left out of the data. */
const CONTRADICTED = ['andiroba-crabwood', 'avodire', 'khaya', 'limba', 'mahogany-true', 'pine-pond']

test('Wood Handbook, Table 13-5: every coefficient, the moisture it starts at, and whether it was read', () => {
  const printed = named(movement).flatMap(({ species, radial, tangential, saturation, read }) =>
    CONTRADICTED.includes(String(species))
      ? []
      : [[species, { radial: Number(radial), tangential: Number(tangential), saturation, read }]],
  )
  const held = Object.entries(MOVEMENT).flatMap(([species, { source, ...row }]) =>
    source.startsWith('fpl') ? [[species, { ...row, read: ALL_SOURCES[source].standing === 'published' }]] : [],
  )
  expect(Object.fromEntries(held)).toEqual(Object.fromEntries(printed))
})

test('German timber trade, figure 4-5: every wood from outside North America', () => {
  const held = Object.entries(MOVEMENT).flatMap(([species, { radial, tangential, source }]) =>
    source === 'timber-trade' ? [[species, SPECIES[species as SpeciesId].group, radial, tangential]] : [],
  )
  const printed = (european.rows as [string, string, number, number][]).map(([species, group, radial, tangential]) => [
    species,
    group,
    Number((radial / 100).toFixed(4)),
    Number((tangential / 100).toFixed(4)),
  ])
  expect(held.sort()).toEqual(printed.sort())
})

test('Wood Handbook, Tables 5-3b and 5-5b: every strength', () => {
  const printed = named(strength).map(({ species, ...row }) => [
    species,
    { ...row, source: 'greenSpecificGravity' in row ? 'fpl-5-5b' : 'fpl-5-3b' },
  ])
  expect(STRENGTH).toEqual(Object.fromEntries(printed))
})

// Metric cells are printed to 100 kPa and 100 N.
test.each(metric.rows as [SpeciesId, number, number | null][])(
  'Wood Handbook, Table 5-3a, %s: %s kPa, %s N',
  (species, compression, hardness) => {
    const { compressionPsi = Number.NaN, hardnessLbf = Number.NaN } = STRENGTH[species] ?? {}
    expect(compressionPsi * MPA_PER_PSI * 1000).toBeWithin(50, compression)
    if (hardness !== null) expect(hardnessLbf * NEWTONS_PER_LBF).toBeWithin(50, hardness)
  },
)

test('the pound-force and the pound-force per square inch, by the definitions of pound, gravity and inch', () => {
  expect(NEWTONS_PER_LBF).toBeWithin(1e-15 * 5, 0.45359237 * 9.80665)
  expect(MPA_PER_PSI).toBeWithin(1e-17 * 5, (0.45359237 * 9.80665) / 25.4 ** 2)
})

test('every wood that a ball is pressed into is in the transcription', () => {
  expect(contactRows.rows.map(([species]) => species)).toEqual(CONTACT_WOODS)
})

// What is printed, carried to megapascals along the grain: a tenth for the beam's shear (footnote c of the table), the
// mean of both ratios in the sense of products, the density with its moisture. Tolerance: 1e-9 of the figure.
test.each(contactRows.rows as [ContactWoodId, number, number, number, number][])(
  'Wood Handbook, Tables 5-3b and 5-1, %s: 10⁶ lbf/in² %s, ratios %s and %s, tension %s lbf/in²',
  (species, bending, radial, tangential, tension) => {
    const { stiffness, tensionStrength, compressionLimit, sideHardness, density } = contactWood(species)
    const expected = bending * 1.1e6 * MPA_PER_PSI * Math.sqrt(radial * tangential)
    expect(stiffness).toBeWithin(1e-9 * expected, expected)
    expect(tensionStrength).toBeWithin(1e-9, tension * MPA_PER_PSI)
    const printed = named(strength).find((row) => row['species'] === species)
    expect(compressionLimit).toBeWithin(1e-9, Number(printed?.['compressionPsi']) * MPA_PER_PSI)
    expect(sideHardness).toBeWithin(1e-6, Number(printed?.['hardnessLbf']) * NEWTONS_PER_LBF)
    expect(density).toBeWithin(1e-9, Number(printed?.['specificGravity']) * 1120)
  },
)

test.each([
  ['boards', 'thickness', lumber.BOARD_THICKNESSES],
  ['boards', 'width', lumber.BOARD_WIDTHS],
  ['dimension', 'thickness', lumber.DIMENSION_THICKNESSES],
  ['dimension', 'width', lumber.DIMENSION_WIDTHS],
] as const)('PS 20, Table 3, %s: every %s', (kind, measure, held) => {
  const printed = softwood.rows.filter((row) => row[0] === kind && row[1] === measure)
  expect(held).toEqual(
    printed.map(([, , nominal = '', dry = '', green = '']) => ({ nominal, dry: inches(dry), green: inches(green) })),
  )
})

test('NHLA: every thickness of hardwood', () => {
  const printed = hardwood.rows.map(([rough = '', quarters, surfaced]) => ({
    nominal: quarters ?? rough,
    rough: inches(rough ?? ''),
    surfaced: inches(surfaced ?? ''),
  }))
  // from memory, not on the pages that were read: a quarter of an inch comes off, as off its neighbours
  printed.splice(9, 0, { nominal: '10/4', rough: 2.5, surfaced: 2.25 })
  expect(lumber.HARDWOOD_THICKNESSES).toEqual(printed)
})

test('wood screws: every diameter, thread, head, root and hole', () => {
  expect(WOOD_SCREWS).toEqual(named(screws))
})

test.each(METRIC_WOOD_SCREWS)('metric wood screws: the head of $diameter mm, flanked at a right angle', (screw) => {
  const printed = named(metricScrews).find(({ diameter }) => diameter === screw.diameter)
  expect(screw.head).toBe(printed?.['head'])
  expect(METRIC_HEAD_ANGLE).toBe(90)
})

test('band-saw blades: the largest of the radii that manuals print', () => {
  const printed = (bandSaws.rows as [string, string[]][]).map(([width, radii]) => ({
    width,
    leastRadius: Math.max(...radii.map(inches)),
  }))
  expect(SAW_BLADES).toEqual(printed)
})

test('acrylic: its growth with humidity', () => {
  expect(ACRYLIC_GROWTH).toEqual(named(acrylic))
})

test('bought balls: density, stiffness and Poisson ratio', () => {
  const held = Object.entries(BALL_SUBSTANCES).map(([material, { density, stiffness, poissonsRatio }]) => [
    material,
    density,
    stiffness,
    poissonsRatio,
  ])
  expect(held).toEqual(ballRows.rows)
})

// Wood Handbook, chapter 4, seen: 0.1 to 0.2 % from green to ovendry, over the 30 % that fibre saturation is. Plywood:
// 0.02 % for each % of moisture, quoted. Ratios of each group, from memory: Table 5-1, about the middle.
test('wood along the grain, plywood in its plane, and the ratios of a group', () => {
  expect(ALONG_THE_GRAIN.perPercent).toBeWithin(1e-18, (0.001 + 0.002) / 2 / 30)
  expect(PLY_IN_PLANE.perPercent).toBe(0.02 / 100)
  expect(ACROSS_OVER_ALONG).toMatchObject({
    hardwood: { radial: 0.12, tangential: 0.065 },
    softwood: { radial: 0.09, tangential: 0.06 },
  })
})

// Common practice: eighths to an inch, quarters to three, halves to four. ASME B18.6.1, from memory: a head of 82 degrees.
test('wood screws: the lengths that are sold, and the head', () => {
  const steps = (from: number, to: number, step: number): readonly number[] =>
    Array.from({ length: Math.round((to - from) / step) }, (_, i) => from + i * step)
  expect(SCREW_LENGTHS).toEqual([...steps(0.375, 1, 0.125), ...steps(1, 3, 0.25), ...steps(3, 4.5, 0.5)])
  expect(FLAT_HEAD_ANGLE).toBe(82)
})

// Table 5-11, from memory a second time: stiffness and tension across the grain by specific gravity, at 12 % [MPa]; a tenth
// more for shear. Ratios of a group about their middles, from memory too. Apple has no printed gravity: 0.35 is taken.
test.each([
  ['alder-red', 16_500 * 0.41 ** 0.7, 10.1 * 0.41 ** 1.3, 0.1, 0.07],
  ['pine-ponderosa', 20_500 * 0.4 ** 0.84, 6 * 0.4 ** 1.11, 0.07, 0.065],
  ['apple', 16_500 * 0.35 ** 0.7, 10.1 * 0.35 ** 1.3, 0.1, 0.07],
] as const)('Wood Handbook, Table 5-11, %s: %s and %s MPa', (species, stiffness, tension, radial, tangential) => {
  const [across, along] = [segmentWood(species, 'radial'), segmentWood(species, 'tangential')]
  expect(across.stiffness).toBeWithin(1e-6, 1.1 * stiffness)
  expect(across.tensionAcross).toBeWithin(1e-9, tension)
  expect(across.plane).toMatchObject({ shearOverAlong: radial, poisson: 0.37 })
  expect(along.plane).toMatchObject({ shearOverAlong: tangential, poisson: 0.45 })
})
