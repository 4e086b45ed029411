import { globSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { type ArrangementName, sourcesOf } from '#shared/bearing/arrangements.ts'
import type { Split } from '#shared/bearing/fields.ts'
import { ACRYLIC_GROWTH, BALL_SUBSTANCES } from '#shared/data/ball-materials.ts'
import { ALL_SOURCES, DATA_SOURCES, LOAD_SOURCES, SIZE_SOURCES, SOURCES } from '#shared/data/sources.ts'
import { MOVEMENT } from '#shared/data/wood-movement.ts'
import { STRENGTH } from '#shared/data/wood-strength.ts'

test('the sources that are from memory still are those that DEVELOPERS.md lists', () => {
  const listed = /^From memory still: (.*?)\.$/ms.exec(readFileSync('DEVELOPERS.md', 'utf8'))?.[1] ?? ''
  const fromMemory = Object.entries(ALL_SOURCES).filter(([, { standing }]) => standing === 'from memory')
  expect([...listed.matchAll(/`([\w.-]+)`/g)].map(([, id]) => id).toSorted()).toEqual(
    fromMemory.map(([id]) => id).toSorted(),
  )
})

test('no source stands in two tables', () => {
  const tables = [SOURCES, SIZE_SOURCES, DATA_SOURCES, LOAD_SOURCES]
  expect(Object.keys(ALL_SOURCES).length).toBe(tables.flatMap((table) => Object.keys(table)).length)
})

test('every row names a source that is known', () => {
  const named = [...Object.values(MOVEMENT), ...Object.values(STRENGTH), ...Object.values(BALL_SUBSTANCES)]
  expect(named.length).toBeGreaterThan(200)
  for (const { source } of named) expect(ALL_SOURCES).toHaveProperty([source])
})

test('an imported wood that moves is from memory, and says so', () => {
  for (const species of ['teak', 'balsa', 'iroko', 'greenheart'] as const) {
    const { source } = MOVEMENT[species] ?? { source: 'fpl-13-5' as const }
    expect(ALL_SOURCES[source].standing, species).toBe('from memory')
  }
})

test('a design lists the sources that it uses, and no others', () => {
  const named = (arrangement: ArrangementName, split: Split) => sourcesOf({ arrangement, split })
  for (const arrangement of ['roller', 'thrust'] as const) {
    for (const foreign of ['iso-76', 'harris', 'asme-b18.6.1'] as const)
      expect(named(arrangement, 'none'), arrangement).not.toContain(foreign)
  }
  expect(named('radial', 'inner-ring')).toContain('asme-b18.6.1')
  expect(named('radial', 'outer-ring')).not.toContain('asme-b18.6.1')
  expect(named('thrust', 'none')).not.toContain('iso-1938-1')
})

test('acrylic grows with humidity, ever faster', () => {
  const slopes = ACRYLIC_GROWTH.slice(1).map(({ relativeHumidity, growth }, i) => {
    const before = ACRYLIC_GROWTH[i] ?? { relativeHumidity: 0, growth: 0 }
    return (growth - before.growth) / (relativeHumidity - before.relativeHumidity)
  })
  expect(slopes.every((slope) => slope > 0)).toBe(true)
  expect([...slopes].sort((a, b) => a - b)).toEqual(slopes)
})

// Common knowledge of materials: one orders them by weight and by stiffness in the same way.
test('steel is heavier and stiffer than glass, glass than acrylic', () => {
  const { steel, glass, acrylic } = BALL_SUBSTANCES
  for (const of of ['density', 'stiffness'] as const) {
    expect(steel[of]).toBeGreaterThan(glass[of])
    expect(glass[of]).toBeGreaterThan(acrylic[of])
  }
})

/**
 * Numbers of the method, not of the trade: how finely something is looked through, how many rounds are made, what rounding leaves,
 * places in a list, conversions. A new constant is of the trade, and states its standing, unless it is named here.
 */
const OF_THE_METHOD = new Set(
  `ALL ALL_BUT_ONE ALWAYS_ALIKE ANY_BORE AS_DESIGNED BALLS_COLUMN BEARINGS BESIDE CHUNKS CLOSE_ENOUGH CONTRADICTION COSINES
  CURVE_FROM CURVE_TO DEGREE DENSITY_BINS DEPTHS DIRECTIONS ENOUGH EQUAL_WITHIN EVALUATIONS_A_BALL EVERY FIRST_CHUNKS GROUPS
  HALF_CIRCLE_WITHIN HALVINGS KNOTS LAST_STEP LEAST_ERROR LEAST_GIVE LEAST_SHARE LEAST_SPREAD LONGER LOOKED_AT
  MOST_BALLS_LAID MOST_BALLS_TRIED MOST_CHOICES MOST_CHUNKS MOST_CORRELATION MOST_LEFT MOST_OPTIONS MOST_PAIRS MOST_ROUNDED
  MOST_ROUNDS NARROW NONE NONE_CARRIED NORMAL_ENDS NOTHING NOT_OF_RINGS NO_LOBES NO_RINGS OF_HAND OF_LEFT_OUT OF_MEAN
  OF_OUTER OF_REDUCTION OF_START OF_TOOL ON_THE_LINE OPEN_SIDE PARTS PERCENTS PER_RPM PLACED_TO PLACES PLAY_COLUMN
  POINTS_A_COLUMN RANGE_HALVINGS REACH SAME_SPREAD SEED SKETCHED SPEEDS STEP STEPS THRESHOLD_COLUMN TO_BE_SURE TO_KG TO_MPA UNKNOWNS
  WELL_SPREAD WIDE WITHIN`.split(/\s+/),
)
const COUNTED = /^(\w+_)?(TRIALS|SIGNIFICANT_DIGITS)$/
const STANDING =
  /common practice|no source|from memory|derived|source|published|ISO|ASME|ASTM|PS 20|NHLA|Table|equation|by definition|Wood Handbook|manuals/i

// A file whose first comment states the standing of all its constants states it for each.
test('every constant of the trade states its source and standing', () => {
  const files = [
    'shared/{data,making,movement,contact}/*.ts',
    'shared/{bearing,questions}/**/*.ts',
    'shared/wood/moisture-movement.ts',
  ]
  const constants = files
    .flatMap((pattern) => globSync(pattern))
    .flatMap((file) => {
      const blocks = readFileSync(file, 'utf8').split(/\n\n+/)
      const head = blocks.find((block) => /^\/\*+\s/.test(block) && / All /i.test(block) && STANDING.test(block))
      return blocks.flatMap((block) =>
        [...block.matchAll(/^(?:export )?const ([A-Z][A-Z\d_]*)(?:: [^=]+)? = .*\d/gm)].map(([, name = '']) => ({
          constant: `${file}: ${name}`,
          isOfTheTrade: !OF_THE_METHOD.has(name) && !COUNTED.test(name),
          isSourced: head !== undefined || STANDING.test(block),
        })),
      )
    })
    .filter(({ isOfTheTrade }) => isOfTheTrade)
  expect(constants.length).toBeGreaterThan(150)
  expect(constants.filter(({ isSourced }) => !isSourced).map(({ constant }) => constant)).toEqual([])
})
