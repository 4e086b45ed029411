import { globSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { lazy } from '#shared/lazy.ts'

test('a value is made once, for all who ask, and not before', async () => {
  let made = 0
  const value = lazy(async () => {
    made += 1
    return { made }
  })
  expect(value.started()).toBeUndefined()
  const [one, other] = await Promise.all([value(), value()])
  expect(one).toBe(other)
  expect(await value()).toBe(one)
  expect(await value.started()).toBe(one)
  expect(made).toBe(1)
})

test.each([
  ['rejects', async () => Promise.reject(new Error('EMFILE'))],
  [
    'throws',
    (): Promise<string> => {
      throw new Error('EMFILE')
    },
  ],
])('a maker that %s is asked again by whoever comes next', async (_how, fails) => {
  let turn = 0
  let given = 'first'
  const value = lazy((): Promise<string> => {
    turn += 1
    return turn === 1 ? fails() : Promise.resolve(given)
  })
  const together = await Promise.allSettled([value(), value()])
  expect(together.map(({ status }) => status)).toEqual(['rejected', 'rejected'])
  expect(turn).toBe(1)
  expect(value.started()).toBeUndefined()
  given = 'third'
  expect(await value()).toBe('third')
  given = 'fourth'
  expect(await value()).toBe('third')
})

test('nothing else keeps a promise, and with it a failure', () => {
  const files = globSync('{src,shared}/**/*.ts', { exclude: ['shared/lazy.ts'] })
  expect(files.length).toBeGreaterThan(100)
  expect(files.filter((file) => /\blet \w+: Promise</.test(readFileSync(file, 'utf8')))).toEqual([])
})
