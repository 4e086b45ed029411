import { describe, expect, test } from 'vitest'
import { plainChances } from '#tests/support/plain-tolerance.ts'
import { checkOfAny, comparedWith, TWENTY } from '#tests/support/twenty-checks.ts'

/*
 * Twenty checks against a program that shares no code with them: here by some trials, by 100,000 in
 * `tests/bench/tolerance-proof.ts`.
 */
const TRIALS = 1500
/** Standard errors that one of 300 comparisons may be apart: once in a thousand runs. */
const APART = 4.7

describe.each(TWENTY)('$name', ({ design, contributors, plain, isGapPlain }) => {
  const counted = plainChances(plain, TRIALS, 5)

  test('with trials', () => {
    for (const { name, apart } of comparedWith(checkOfAny(design, contributors, 20_000), counted, isGapPlain)) {
      expect(apart, name).toBeLessThan(APART)
    }
  })

  test('as it is answered when nothing is said of trials', () => {
    const check = checkOfAny(design, contributors)
    if (check.method.kind === 'trials') return expect(check.trials).toBe(100_000)
    for (const { name, apart } of comparedWith(check, counted, isGapPlain)) expect(apart, name).toBeLessThan(APART)
  })
})
