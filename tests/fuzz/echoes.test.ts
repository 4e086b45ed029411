import fc from 'fast-check'
import { expect, test } from 'vitest'
import { sharedApp } from '#tests/support/started-app.ts'
import { OPERATIONS } from './document.ts'
import { echoesOf } from './echoes.ts'

const REQUESTS = 30

/** Those that answer with their whole input. */
const ECHOING = OPERATIONS.filter(({ method, examples }) => method === 'POST' && examples.length > 0)

test.each(ECHOING)('$operationId: an input that is given back is taken, and answered alike', async (operation) => {
  let count = 0
  await fc.assert(
    echoesOf(operation, await sharedApp(), () => {
      count += 1
    }),
    { numRuns: REQUESTS },
  )
  expect(count).toBeGreaterThan(0)
})
