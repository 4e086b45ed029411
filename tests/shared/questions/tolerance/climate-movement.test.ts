import { describe, expect, test } from 'vitest'
import type { SeasonalFitInput } from '#shared/questions/season/input.ts'
import { climateMovement } from '#shared/questions/tolerance/climate-movement.ts'
import { MARBLES } from '#tests/support/seasons.ts'

function changes(input: SeasonalFitInput) {
  const result = climateMovement(input)
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.error)}`)
  return result.value.states
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length

describe('a range of moisture from 6 to 14 %, made at 10 %', () => {
  const drawn = changes({
    ...MARBLES,
    climate: { kind: 'moisture', moistureContent: { min: 6, max: 14 } },
    today: { kind: 'moisture', moistureContent: 10 },
  })

  test('is uniform: mean 10, standard deviation 8 / sqrt(12)', () => {
    const moistures = drawn.map(({ moistureContent }) => moistureContent)
    expect(mean(moistures)).toBeWithin(1e-12, 10)
    expect(moistures).toHaveLength(2048)
    const variance = mean(moistures.map((moisture) => (moisture - 10) ** 2))
    expect(Math.sqrt(variance)).toBeWithin(0.001, 8 / Math.sqrt(12))
  })

  test('moves both grooves in proportion, by half of the coefficient across: the mean of both half axes', () => {
    for (const { moistureContent, outerGrooveBottomRadius, innerGrooveBottomRadius, outerOutOfRound } of drawn) {
      const change = moistureContent - 10
      // Design of the marbles: 77.14 and 48.86 mm across the groove bottoms; Table 13-5: 0.00353; along the grain 0.00005.
      expect(outerGrooveBottomRadius).toBeWithin(0.001, (77.14 / 4) * (0.00353 + 0.00005) * change)
      expect(innerGrooveBottomRadius).toBeWithin(0.001, (48.86 / 4) * (0.00353 + 0.00005) * change)
      expect(outerOutOfRound).toBeWithin(0.001, Math.abs((77.14 / 4) * (0.00353 - 0.00005) * change))
    }
  })

  test('glass balls stay', () => {
    expect(drawn.every(({ ballLotMean }) => ballLotMean === 0)).toBe(true)
  })
})

test('a table of months gives its months', () => {
  const months = [
    { name: 'January', temperature: 20, relativeHumidity: 30 },
    { name: 'July', temperature: 25, relativeHumidity: 60 },
  ]
  expect(changes({ ...MARBLES, climate: { kind: 'months', months } })).toHaveLength(2)
})

test('what cannot be said is refused', () => {
  expect(climateMovement({ ...MARBLES, today: { kind: 'moisture', moistureContent: 40 } }).ok).toBe(false)
})
