import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { SeasonalFitInput } from '#shared/questions/season/input.ts'
import { seasonalFit } from '#shared/questions/season/seasonal-fit.ts'
import { mm } from '#shared/units/length.ts'
import { faultsOfAdvice } from '#tests/support/season-advice.ts'
import { anyArrangedSeason, anySeason, MAPLE, MARBLES } from '#tests/support/seasons.ts'

/** A slice of the law that `tests/bench/season-advice.ts` runs over five hundred years and more. */
describe('advice sent back as a request is accepted, and does what it said', () => {
  test.each([
    ['radial bearings', anySeason],
    ['every arrangement', anyArrangedSeason],
  ])('%s', (_what, years) => {
    let answered = 0
    fc.assert(
      fc.property(years, (input) => {
        const held = faultsOfAdvice(input)
        if (held !== undefined) answered += 1
        expect(held?.faults ?? []).toEqual([])
      }),
      { numRuns: 20 },
    )
    expect(answered).toBeGreaterThan(5)
  })
})

function fitted(input: SeasonalFitInput) {
  const result = seasonalFit(input)
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return result.value
}

const PLY = { construction: 'cross-laminated-ply' } as const

test('a bearing of ply with enough gap and play is left as designed', () => {
  const design = { ...MARBLES.design, ballGap: mm(1.1), radialInternalClearance: mm(0.6) }
  const { advice, chances } = fitted({ ...MARBLES, design, woods: { outerRing: PLY, innerRing: PLY } })
  expect(advice).toEqual({ kind: 'leave', changes: [], chances, isLoose: false })
})

test('flat-sawn maple made at the dry end of the year: no gap below nothing is advised', () => {
  const { advice } = fitted({
    ...MARBLES,
    climate: { kind: 'air', temperature: { min: 20, max: 20 }, relativeHumidity: { min: 30, max: 70 } },
    today: { kind: 'air', air: { temperature: 20, relativeHumidity: 30 } },
  })
  for (const change of advice.changes) if (change.kind === 'length') expect(change.to).toBeGreaterThan(0)
  expect(advice.chances.runsAllYear).toBeGreaterThan(0.9)
})

test('wood that is far damper than its year is rested first where that is enough', () => {
  const { advice } = fitted({
    ...MARBLES,
    woods: {
      outerRing: { ...MAPLE, construction: 'quarter-sawn' },
      innerRing: { ...MAPLE, construction: 'quarter-sawn' },
    },
    climate: { kind: 'moisture', moistureContent: { min: 7, max: 9 } },
    today: { kind: 'moisture', moistureContent: 14 },
  })
  expect(advice.kind).toBe('rest-wood')
  expect(advice.changes[0]).toMatchObject({ kind: 'today', to: { kind: 'moisture', moistureContent: 8 } })
})

test('an unheated workshop from -10 to 30 degrees C has an answer, and steel that colder moves no wood further', () => {
  const at = (min: number) =>
    fitted({
      ...MARBLES,
      climate: { kind: 'air', temperature: { min, max: 30 }, relativeHumidity: { min: 40, max: 90 } },
    })
  const [mild, hard] = [at(-10), at(-30)]
  expect(hard.states.map(({ fit }) => fit)).toEqual(mild.states.map(({ fit }) => fit))
  expect(hard.states[1]?.state.temperature).toBe(-30)
})
