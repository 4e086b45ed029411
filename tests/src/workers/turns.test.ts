import { setImmediate as round } from 'node:timers/promises'
import { expect, test } from 'vitest'
import { turns } from '#src/workers/turns.ts'

/** Takes turns, each of which ends when it is told to, and holds the names in the order in which they began. */
function track(places: number) {
  const takeTurn = turns(places)
  const begun: string[] = []
  const ends = new Map<string, { readonly resolve: () => void; readonly reject: (error: Error) => void }>()
  const take = (name: string, left: number): Promise<void> =>
    takeTurn(left, () => {
      begun.push(name)
      const { promise, resolve, reject } = Promise.withResolvers<void>()
      ends.set(name, { resolve, reject })
      return promise
    })
  const end = async (name: string): Promise<void> => {
    ends.get(name)?.resolve()
    // Whoever is next begins at the end of this round.
    await round()
    await round()
  }
  return { begun, take, end, fail: (name: string) => ends.get(name)?.reject(new Error(name)) }
}

test('so many at the same time, and no more', async () => {
  const { begun, take, end } = track(2)
  const turnsTaken = ['first', 'second', 'third'].map((name) => take(name, 1))
  await round()
  expect(begun).toEqual(['first', 'second'])
  await end('second')
  expect(begun).toEqual(['first', 'second', 'third'])
  await end('first')
  await end('third')
  await Promise.all(turnsTaken)
})

test('of those that wait the one that lacks least, of equals the first that came', async () => {
  const { begun, take, end } = track(1)
  const taken = [take('running', 9), take('large', 7), take('small', 1), take('small too', 1), take('nearly done', 0)]
  await round()
  const order = ['running', 'nearly done', 'small', 'small too', 'large']
  for (const name of order) await end(name)
  expect(begun).toEqual(order)
  await Promise.all(taken)
})

test('an answer that asks for its next part at once goes on, before another that lacks as much', async () => {
  const { begun, take, end } = track(1)
  const first = take('first', 2).then(() => take('next of the first', 1))
  const other = take('other', 2)
  await round()
  await end('first')
  expect(begun).toEqual(['first', 'next of the first'])
  await end('next of the first')
  await end('other')
  await Promise.all([first, other])
})

test('a turn that fails makes room, and what it threw comes out', async () => {
  const { begun, take, end, fail } = track(1)
  const [first, second] = [take('first', 1), take('second', 1)]
  await round()
  fail('first')
  await expect(first).rejects.toThrow('first')
  await round()
  await end('second')
  await second
  expect(begun).toEqual(['first', 'second'])
  const thrown = turns(1)(1, () => {
    throw new Error('at once')
  })
  await expect(thrown).rejects.toThrow('at once')
})
