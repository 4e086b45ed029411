import fc from 'fast-check'
import { expect, test } from 'vitest'
import { nameOf } from '#shared/bearing/arrangements.ts'
import { namesIn, valueAt, withValue } from '#shared/bearing/field.ts'
import { GOOD_ENOUGH, SEASON_LENGTHS } from '#shared/questions/season/advice.ts'
import type { SeasonalFitInput } from '#shared/questions/season/input.ts'
import { type SeasonDefaults, seasonDefaults } from '#shared/questions/season/season-defaults.ts'
import { seasonalFit } from '#shared/questions/season/seasonal-fit.ts'
import { anyArrangedSeason } from '#tests/support/seasons.ts'

/** The bearing with the defaults that the season gave it. */
const taken = (input: SeasonalFitInput, { defaults }: SeasonDefaults): SeasonalFitInput =>
  defaults.reduce<SeasonalFitInput>(
    (whole, { kind, path, to }) => withValue(whole, kind === 'wood' ? namesIn(path) : ['design', ...namesIn(path)], to),
    input,
  )

test('what the season fills in was left open, and a seasonal fit of it promises and advises the same', () => {
  fc.assert(
    fc.property(anyArrangedSeason, (input) => {
      const season = seasonDefaults({ ...input, openParts: [] })
      if (!season.ok) return
      const { defaults, chances, better } = season.value
      for (const { path } of defaults) {
        expect(SEASON_LENGTHS).toContain(path)
        expect(valueAt(input.design, namesIn(path))).toBeUndefined()
      }
      const fit = seasonalFit(taken(input, season.value))
      if (!fit.ok) throw new Error(`${nameOf(input.design)} must have an answer, got ${JSON.stringify(fit.error)}`)
      expect(fit.value.chances).toEqual(chances)
      if (chances.runsAllYear < GOOD_ENOUGH) expect(defaults).toEqual([])
      // Sizes come out of two ways that round them apart.
      expect(fit.value.advice.kind).toBe(better?.kind ?? 'leave')
      expect(fit.value.advice.changes.map(({ path }) => path)).toEqual(better?.changes.map(({ path }) => path) ?? [])
      expect(fit.value.advice.chances).toEqual(better?.chances ?? chances)
      // It starts from the bearing that is answered, not from one that nobody sees.
      const answered = { design: fit.value.bearing.resolved.input }
      for (const change of better?.changes ?? [])
        if (change.kind === 'length') expect(valueAt(answered, namesIn(change.path))).toBeCloseTo(change.from, 5)
    }),
    { numRuns: 40 },
  )
})

test('a value that was stated stays, and a part that was stated keeps its construction', () => {
  fc.assert(
    fc.property(anyArrangedSeason, (input) => {
      const first = seasonDefaults({ ...input, openParts: [] })
      if (!first.ok) return
      const stated = seasonDefaults({ ...taken(input, first.value), openParts: [] })
      if (!stated.ok) throw new Error('must have an answer as before')
      const again = new Set(stated.value.defaults.map(({ path }) => path))
      expect(first.value.defaults.filter(({ path }) => again.has(path))).toEqual([])
      expect(first.value.defaults.every(({ kind }) => kind === 'length')).toBe(true)
    }),
    { numRuns: 20 },
  )
})
