import { expect, test } from 'vitest'
import { ACRYLIC_GROWTH, BALL_SUBSTANCES } from '#shared/data/ball-materials.ts'
import { ALL_SOURCES, DATA_SOURCES, LOAD_SOURCES, SOURCES } from '#shared/data/sources.ts'
import { MOVEMENT } from '#shared/data/wood-movement.ts'
import { STRENGTH } from '#shared/data/wood-strength.ts'

test('no source stands in two tables', () => {
  const tables = [SOURCES, DATA_SOURCES, LOAD_SOURCES]
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
    expect(ALL_SOURCES[source].standing, species).toBe('published, quoted from memory')
  }
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
