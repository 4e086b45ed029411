import fc from 'fast-check'
import { expect, test } from 'vitest'
import { endByHalving } from '#shared/numbers/halving.ts'

const place = fc.double({ min: -1000, max: 1000, noNaN: true })

test('the end of a condition lies in the last stretch, which is halved so often, upwards and downwards', () => {
  fc.assert(
    fc.property(place, place, fc.double({ min: 0, max: 1, noNaN: true }), fc.nat(40), (from, to, share, halvings) => {
      const end = from + share * (to - from)
      const holds = (x: number): boolean => (to > from ? x < end : x > end)
      const [before, beyond] = endByHalving(holds, from, to, halvings)
      expect(Math.abs(beyond - before)).toBeWithin(1e-9, Math.abs(to - from) / 2 ** halvings)
      expect(before === from || holds(before)).toBe(true)
      expect(beyond === to || !holds(beyond)).toBe(true)
    }),
  )
})

test('with no halving the ends are those that were stated, and the condition is not asked', () => {
  expect(
    endByHalving(
      () => {
        throw new Error('asked')
      },
      2,
      1,
      0,
    ),
  ).toEqual([2, 1])
})
