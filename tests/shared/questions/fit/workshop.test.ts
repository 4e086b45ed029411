import { expect, test } from 'vitest'
import { HABITS, tally } from '#tests/support/fit-workshop.ts'

/* Makers of many habits, each on a few rings: the marks are those of 500 rings a habit in `tests/bench/fit-workshop.ts`. */
const RINGS = 8
/** Of 8 rings that are good in 97 of 100 cases, more than two are bad once in 800 times. */
const MOST_BAD = 2

test.each(HABITS.filter(({ isStubborn }) => isStubborn !== true))('$name: rings come out good', (habit) => {
  const found = tally(habit, RINGS)
  expect((1 - found.good) * RINGS).toBeLessThanOrEqual(MOST_BAD)
  expect(found.mostChecks).toBeLessThanOrEqual(12)
})

test.each(HABITS.filter(({ isStubborn }) => isStubborn === true))(
  '$name, whatever is asked for: no ring is called good, and none is spoilt',
  (habit) => {
    const found = tally(habit, RINGS)
    expect(found.cannotBeTold).toBe(1)
    expect(found.tooDeep * RINGS).toBeLessThanOrEqual(MOST_BAD)
  },
)
