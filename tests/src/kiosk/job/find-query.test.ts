import fc from 'fast-check'
import { expect, test } from 'vitest'
import { inUnits, type Units } from '#shared/units/length.ts'
import { readFindQuery } from '#src/kiosk/job/find-query.ts'
import { FIRST_JOB, withChoice } from '#src/kiosk/job/job.ts'
import { inOtherUnits } from '#src/kiosk/job/units.ts'
import { FIND } from '#src/words/kiosk/find.ts'

/* The sizes are invented. */

const counts = (findCounts: string) => readFindQuery({ findCounts }, 'mm')
const sizes = (findSizes: string, units: Units) => readFindQuery({ findSizes }, units)

test.each([
  ['10;12', [10, 12]],
  ['10,12', [10, 12]],
  ['10, 12 14', [10, 12, 14]],
  ['8 to 11', [8, 9, 10, 11]],
  ['8-11', [8, 9, 10, 11]],
  ['8 – 11', [8, 9, 10, 11]],
  ['8..11', [8, 9, 10, 11]],
  ['11 to 8', [8, 9, 10, 11]],
  ['8 TO 10, 14-15; 20', [8, 9, 10, 14, 15, 20]],
  ['9 to 11; 10 to 12', [9, 10, 11, 12]],
  ['', []],
])('the numbers %j are %j', (text, read) => {
  expect(counts(text).counts).toEqual(read)
  expect(counts(text).faults).toEqual({})
})

test('numbers in a row are said back as the range that they are', () => {
  expect(FIND.runs(counts('14; 8 to 10; 20; 9-11').counts)).toEqual(['8 to 11', '14', '20'])
  expect(FIND.runs([])).toEqual([])
})

test.each(['x', '2', '8 to', 'to 14', '8 to 300', '10; 1.5', '-8', '8 to 10 to 12'])(
  'the numbers %j are not read, and the fault says how to write them',
  (text) => {
    expect(counts(text).counts).toEqual([])
    expect(counts(text).faults.findCounts).toBe(
      'Enter whole numbers from 3 to 200, as a list such as 10; 12; 14, or as a range such as 8 to 14.',
    )
  },
)

test.each<[string, Units, readonly string[]]>([
  ['14 to 17', 'mm', ['14', '15', '16', '17']],
  ['14–16, 20', 'mm', ['14', '15', '16', '20']],
  ['16,5 to 18,5', 'mm', ['16.5', '17.5', '18.5']],
  ['14 to 15.5', 'mm', ['14', '15', '15.5']],
  ['1/2 to 3/4', 'in', ['1/2', '9/16', '5/8', '11/16', '3/4']],
  ['1/2-5/8; 1-3/16', 'in', ['1/2', '9/16', '5/8', '1-3/16']],
  ['1-1/16-1-1/8', 'in', ['1 1/16', '1 1/8']],
  ['1 3/16', 'in', ['1 3/16']],
  ['14 mm to 15 mm', 'in', ['14 mm', '15 mm']],
])('the sizes %j in %s are %j', (text, units, texts) => {
  expect(sizes(text, units).faults).toEqual({})
  expect(sizes(text, units).sizes.map((each) => each.text)).toEqual(texts)
})

test.each([
  ['14; x', /list such as 14; 16; 20, or as a range such as 14 to 20/],
  ['14 to x', /range such as 14 to 20/],
  ['1 to 90', /90 sizes. Enter at most 24/],
])('the sizes %j are not read, and the fault says how to write them', (text, fault) => {
  expect(sizes(text, 'mm').sizes).toEqual([])
  expect(sizes(text, 'mm').faults.findSizes).toMatch(fault)
})

test('a range has every size from its first to its last, and stays that range in other units', () => {
  const least = fc.integer({ min: 10, max: 300 }).map((tenths) => tenths / 10)
  fc.assert(
    fc.property(least, fc.integer({ min: 1, max: 200 }), (from, more) => {
      const to = Math.round(10 * from + more) / 10
      const job = withChoice(FIRST_JOB, 'findSizes', `${from} to ${to}`)
      const there = inOtherUnits(job, 'in', {}, { leaves: [] } as never)
      for (const [choices, units] of [
        [job.choices, 'mm'],
        [there.choices, 'in'],
      ] as const) {
        const read = readFindQuery(choices, units).sizes.map(({ size }) => inUnits(size, 'mm'))
        expect(read[0]).toBeCloseTo(from, 6)
        expect(read.at(-1)).toBeCloseTo(to, 6)
        for (const [index, size] of read.entries())
          if (index > 0) expect(size - (read[index - 1] ?? Number.NaN)).toBeLessThan(1.001)
      }
    }),
  )
})
