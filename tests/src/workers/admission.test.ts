import { expect, test } from 'vitest'
import { type Admitted, admission } from '#src/workers/admission.ts'

const DEADLINE = 10_000

/** Lets answers in by a clock that stands unless it is moved. */
function door(threads = 1) {
  const clock = { now: 0 }
  const displaced: string[] = []
  const { admit, leave, isLate, fullForMs } = admission({
    threads,
    deadlineMs: DEADLINE,
    servedSoFar: () => 0,
    now: () => clock.now,
  })
  const ask = (address: string, workMs: number, name = address) =>
    admit({ address, ms: workMs, workMs, displace: () => displaced.push(name) })
  const letIn = (address: string, workMs: number, name?: string): Admitted => {
    const answer = ask(address, workMs, name)
    if (typeof answer === 'string') throw new Error(answer)
    return answer
  }
  return { clock, displaced, ask, letIn, leave, isLate, fullForMs }
}

test('what takes longer than the deadline by itself is refused for that, however much room there is', () => {
  const { ask } = door()
  expect(ask('192.0.2.1', DEADLINE + 1)).toBe('too-much-work')
  expect(ask('192.0.2.1', DEADLINE)).toMatchObject({ lane: 'long' })
})

test('what could be done alone, but not behind what the caller has already, is refused as busy', () => {
  const { ask, letIn, leave } = door()
  const first = letIn('192.0.2.1', 6_000)
  expect(ask('192.0.2.1', 6_000)).toBe('busy')
  expect(ask('192.0.2.1', 50)).toMatchObject({ lane: 'quick' })
  leave(first)
  expect(ask('192.0.2.1', 6_000)).toMatchObject({ lane: 'long' })
})

test('another caller’s large answers take their share and no more', () => {
  const { ask, letIn } = door()
  letIn('192.0.2.1', 9_000)
  expect(ask('192.0.2.2', 4_900)).toMatchObject({ lane: 'long' })
})

test('no number of large answers takes the room of small ones', () => {
  const { ask } = door()
  const large = Array.from({ length: 100 }, () => ask('192.0.2.1', 500))
  expect(large.filter((each) => each === 'busy').length).toBeGreaterThan(0)
  expect(ask('192.0.2.1', 20)).toMatchObject({ lane: 'quick' })
})

test('where a lane is full, the caller that has most of it makes room for another, and not for itself', () => {
  const { ask, displaced } = door()
  for (let index = 0; index < 17; index++) expect(ask('192.0.2.1', 20 + index, `many ${index}`)).toBeTypeOf('object')
  expect(ask('192.0.2.1', 20)).toBe('busy')
  expect(displaced).toEqual([])
  expect(ask('192.0.2.2', 20)).toBeTypeOf('object')
  expect(ask('192.0.2.3', 20)).toBeTypeOf('object')
  expect(displaced).toEqual(['many 16', 'many 15'])
})

test('addresses of one network of IPv6 are one caller; so are both ways to write one of IPv4', () => {
  const caller = (address: string) => {
    const { ask, displaced } = door()
    for (let index = 0; index < 17; index++) ask('2001:db8:0:1::5', 20)
    for (let index = 0; index < 17; index++) ask('192.0.2.1', 20)
    const before = displaced.length
    return [ask(address, 20), displaced.length - before]
  }
  expect(caller('2001:db8:0:1:ffff::9')[0]).toBe('busy')
  expect(caller('::ffff:192.0.2.1')[0]).toBe('busy')
  expect(caller('2001:db8:0:2::5')[1]).toBe(1)
})

test('full counts from when the first answer too many was let in, through the moments between one and the next', () => {
  const { clock, ask, letIn, leave, fullForMs } = door()
  const first = letIn('192.0.2.1', 100)
  clock.now = 1_000
  expect(fullForMs()).toBe(0)
  const second = letIn('192.0.2.1', 100)
  clock.now = 6_000
  expect(fullForMs()).toBe(5_000)
  leave(first)
  clock.now = 6_200
  const third = letIn('192.0.2.1', 100)
  clock.now = 12_000
  expect(fullForMs()).toBe(11_000)
  leave(second)
  leave(third)
  clock.now = 12_300
  expect(fullForMs()).toBe(0)
  expect(ask('192.0.2.1', 100)).toBeTypeOf('object')
  expect(fullForMs()).toBe(0)
})

test('short answers that overlap without end are not full: none is kept waiting', () => {
  const { clock, letIn, leave, fullForMs } = door(2)
  const inProgress: Admitted[] = []
  for (clock.now = 0; clock.now < 60_000; clock.now += 10) {
    inProgress.push(letIn('192.0.2.1', 30))
    if (inProgress.length > 6) leave(inProgress.shift() as Admitted)
    expect(fullForMs()).toBe(0)
  }
})

test('who refuses is full too', () => {
  const { clock, ask, letIn, fullForMs } = door()
  letIn('192.0.2.1', 9_000)
  for (clock.now = 0; clock.now <= 12_000; clock.now += 200) expect(ask('192.0.2.1', 9_000)).toBe('busy')
  expect(fullForMs()).toBeGreaterThan(DEADLINE)
})

test('who waits is late once what goes before has turned out to be more than there is time for', () => {
  const { letIn, isLate } = door()
  const [first, second, small] = [letIn('192.0.2.1', 3_000), letIn('192.0.2.1', 3_000), letIn('192.0.2.1', 100)]
  expect([first, second, small].map((answer) => isLate(answer, 7_000))).toEqual([false, false, false])
  first.left = 9_000
  second.left = 8_000
  // The one that lacks less goes first, whichever came first.
  expect([first, second, small].map((answer) => isLate(answer, 8_500))).toEqual([true, false, false])
})

test('one caller that asks for too much does not make it full for the others', () => {
  const { clock, ask, fullForMs } = door()
  ask('192.0.2.2', 10)
  for (clock.now = 0; clock.now < 12_000; clock.now += 100) ask('192.0.2.1', 600)
  expect(fullForMs()).toBe(0)
  // Two who ask for too much do.
  for (; clock.now < 24_000; clock.now += 100) for (const host of [1, 3, 4]) ask(`192.0.2.${host}`, 600)
  expect(fullForMs()).toBeGreaterThan(10_000)
})
