import fc from 'fast-check'
import { expect, test } from 'vitest'
import { listIn, readLength } from '#src/kiosk/job/text.ts'

test.each([
  ['14; 16; 20', ['14', '16', '20']],
  ['14;16', ['14', '16']],
  ['14, 16', ['14', '16']],
  ['14,16,20', ['14', '16', '20']],
  ['16,5', ['16,5']],
  ['16,5; 17,5', ['16,5', '17,5']],
  ['16,5, 17,5', ['16,5', '17,5']],
  ['15.9,16.1', ['15.9', '16.1']],
  ['1/2,5/8', ['1/2', '5/8']],
  ['1 3/16; 5/8', ['1 3/16', '5/8']],
  ['16 mm,17 mm', ['16 mm', '17 mm']],
  ['16,5 x 12, 17 x 20', ['16,5 x 12', '17 x 20']],
  ['15,9\n16,1\n', ['15,9', '16,1']],
  [' ; , ', []],
])('the list %j is %j', (text, values) => {
  expect(listIn(text)).toEqual(values)
})

test('sizes come back from a list whatever parts them, with a point or a comma', () => {
  const size = fc.integer({ min: 101, max: 999 }).map((tenths) => tenths / 10)
  fc.assert(
    fc.property(
      fc.array(size, { minLength: 1, maxLength: 9 }),
      fc.constantFrom('; ', ';', '\n', ', '),
      (sizes, gap) => {
        for (const texts of [sizes.map(String), sizes.map((each) => String(each).replace('.', ','))])
          expect(listIn(texts.join(gap)).map((each) => readLength(each, 'mm'))).toEqual(sizes)
      },
    ),
  )
})
