import { setImmediate as round } from 'node:timers/promises'
import { expect, test } from 'vitest'
import { type Caller, scheduler } from '#src/workers/scheduler.ts'

type Given = { readonly left: number; readonly by?: Caller; readonly isQuick?: boolean; readonly over?: AbortSignal }

/** Runs parts that end when they are told to, by a clock that stands unless it is moved, and holds the order in which they began. */
function track(places: number, quickPlaces = 0) {
  const clock = { now: 0 }
  const schedule = scheduler({ places, quickPlaces }, () => clock.now)
  const begun: string[] = []
  const ends = new Map<string, { readonly resolve: () => void; readonly reject: (error: Error) => void }>()
  const nobody: Caller = { servedMs: 0 }
  const run = (name: string, { left, by = nobody, isQuick = false, over = new AbortController().signal }: Given) =>
    schedule.run({ caller: by, left, isQuick, over }, () => {
      begun.push(name)
      const { promise, resolve, reject } = Promise.withResolvers<void>()
      ends.set(name, { resolve, reject })
      return promise
    })
  const end = async (name: string, tookMs = 0): Promise<void> => {
    clock.now += tookMs
    ends.get(name)?.resolve()
    // Whoever is next begins at the end of this round.
    await round()
    await round()
  }
  return { schedule, begun, run, end, fail: (name: string) => ends.get(name)?.reject(new Error(name)) }
}

test('so many at the same time, and no more', async () => {
  const { schedule, begun, run, end } = track(2)
  const parts = ['first', 'second', 'third'].map((name) => run(name, { left: 1 }))
  await round()
  expect(begun).toEqual(['first', 'second'])
  expect([schedule.running(), schedule.waiting('long'), schedule.waiting('quick')]).toEqual([2, 1, 0])
  await end('second')
  expect(begun).toEqual(['first', 'second', 'third'])
  await end('first')
  await end('third')
  await Promise.all(parts)
  expect([schedule.running(), schedule.waiting('long')]).toEqual([0, 0])
})

test('of one caller’s parts that whose answer lacks least, of equals the first that came', async () => {
  const { begun, run, end } = track(1)
  const left = { running: 9, large: 7, small: 1, 'small too': 1, 'nearly done': 0 }
  const parts = Object.entries(left).map(([name, left]) => run(name, { left }))
  await round()
  const order = ['running', 'nearly done', 'small', 'small too', 'large']
  for (const name of order) await end(name)
  expect(begun).toEqual(order)
  await Promise.all(parts)
})

test('an answer that asks for its next part at once goes on, before another that lacks as much', async () => {
  const { begun, run, end } = track(1)
  const first = run('first', { left: 2 }).then(() => run('next of the first', { left: 1 }))
  const other = run('other', { left: 2 })
  await round()
  await end('first')
  expect(begun).toEqual(['first', 'next of the first'])
  await end('next of the first')
  await end('other')
  await Promise.all([first, other])
})

test('a caller with many parts shares evenly with one that has few, however much less its own lack', async () => {
  const { begun, run, end } = track(1)
  const [many, one] = [{ servedMs: 0 }, { servedMs: 0 }]
  const parts = [
    ...['a', 'b', 'c', 'd'].map((name) => run(name, { left: 1, by: many })),
    ...['x', 'y'].map((name) => run(name, { left: 50, by: one })),
  ]
  await round()
  const order = ['a', 'x', 'b', 'y', 'c', 'd']
  for (const name of order) await end(name, 10)
  expect(begun).toEqual(order)
  await Promise.all(parts)
})

test('while large parts run, a small answer has a place that no large one takes', async () => {
  const { begun, run, end } = track(1, 1)
  const parts = [
    run('large', { left: 9 }),
    run('large too', { left: 9 }),
    run('small', { left: 1, isQuick: true }),
    run('small too', { left: 1, isQuick: true }),
  ]
  await round()
  expect(begun).toEqual(['large', 'small'])
  await end('small')
  expect(begun).toEqual(['large', 'small', 'small too'])
  await end('small too')
  await end('large')
  await end('large too')
  await Promise.all(parts)
})

test('what nobody waits for any more leaves the queue at once, with the reason', async () => {
  const { schedule, begun, run, end } = track(1)
  const gone = new AbortController()
  const [running, left] = [run('running', { left: 1 }), run('left', { left: 1, over: gone.signal })]
  await round()
  gone.abort(new Error('gone'))
  await expect(left).rejects.toThrow('gone')
  expect(schedule.waiting('long')).toBe(0)
  await expect(run('too late', { left: 1, over: gone.signal })).rejects.toThrow('gone')
  await end('running')
  await running
  expect(begun).toEqual(['running'])
})

test('a part that fails makes room, and what it threw comes out', async () => {
  const { begun, run, end, fail } = track(1)
  const [first, second] = [run('first', { left: 1 }), run('second', { left: 1 })]
  await round()
  fail('first')
  await expect(first).rejects.toThrow('first')
  await round()
  await end('second')
  await second
  expect(begun).toEqual(['first', 'second'])
})
