import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type DesignInput, design } from '#shared/bearing/arrangements.ts'
import { inches } from '#shared/units/length.ts'
import { textOfSuggestion } from '#src/kiosk/job/suggestion-text.ts'
import { readLength } from '#src/kiosk/job/text.ts'
import { suggestionWords } from '#src/words/kiosk/suggestion.ts'
import { likelyCaged, likelyInput, likelyPlates, likelyRollers } from '#tests/support/inputs.ts'

test('a suggestion in inches is a fraction where the rule shows it, and typed as it is shown', () => {
  const suggestion = { path: '/bore', kind: 'length', value: inches(31 / 64) } as const
  expect(suggestionWords(suggestion, 'in', 64)).toBe('31/64 in')
  expect(textOfSuggestion(suggestion, 'in', 64)).toBe('31/64 in')
  // A rule of sixteenths does not show it; rounded to what is shown, it would be another bore than the one that was tried.
  expect(suggestionWords(suggestion, 'in', 16)).toBe('0.4844 in')
  expect(textOfSuggestion(suggestion, 'in', 16)).toBe('0.484375 in')
  const rule = { path: '/shopDenominator', kind: 'number', value: 128 } as const
  expect([suggestionWords(rule, 'in', 64), textOfSuggestion(rule, 'in', 64)]).toEqual(['1/128 in', '128'])
})

test.each([
  ['radial', likelyInput],
  ['roller', likelyRollers],
  ['thrust', likelyPlates],
  ['caged', likelyCaged],
] as const)('what the page types for a suggestion is what was tried: %s', (_, inputs: fc.Arbitrary<DesignInput>) => {
  let typed = 0
  fc.assert(
    fc.property(inputs, (input) => {
      const made = design(input)
      if (!made.ok) return
      for (const { suggestion } of made.value.warnings) {
        if (suggestion?.kind !== 'length') continue
        typed += 1
        const text = textOfSuggestion(suggestion, input.units, input.shopDenominator)
        expect(readLength(text, input.units), text).toBeWithin(1e-9, suggestion.value)
      }
    }),
    { numRuns: 200 },
  )
  expect(typed).toBeGreaterThan(5)
})
