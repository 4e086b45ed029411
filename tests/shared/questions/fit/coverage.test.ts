import { expect, test } from 'vitest'
import { COVERED, coverage } from '#tests/support/fit-coverage.ts'

/* A slice of `tests/bench/fit-coverage.ts`, which asks 10,000 of each. */
const CASES = 100
/** Four standard errors of a share of 0.955 over so many cases. */
const WITHIN = 0.083

test.each(COVERED)('the interval of 95 %% holds the truth: $kind, $bearing', ({ kind, bearing }) => {
  expect(coverage(kind, bearing, CASES, { seed: 3 })).toBeWithin(WITHIN, 0.955)
})
