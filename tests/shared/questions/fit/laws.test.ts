import { expect, test } from 'vitest'
import { fitOf } from '#shared/questions/fit/fit.ts'
import { brokenLaws } from '#tests/support/fit-laws.ts'
import { randomRequest } from '#tests/support/fit-requests.ts'

/** `node tests/bench/fit-laws.ts 5000` asks as many as one likes. */
const REQUESTS = 400

test('whatever was read, of every ring and arrangement, no answer breaks a law', () => {
  const broken: unknown[] = []
  let answered = 0
  for (let seed = 1; seed <= REQUESTS; seed++) {
    const { bench, ...request } = randomRequest(seed)
    const answer = fitOf(request)
    if (!answer.ok) continue
    answered++
    const laws = brokenLaws(request, bench, answer.value)
    if (laws.length > 0) broken.push({ seed, laws })
  }
  expect(broken).toEqual([])
  expect(answered).toBeGreaterThan(0.9 * REQUESTS)
})
