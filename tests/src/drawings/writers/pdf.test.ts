import { expect, test } from 'vitest'
import { pagesOfView } from '#src/drawings/views.ts'
import { toPdf } from '#src/drawings/writers/pdf.ts'
import { designed } from '#tests/support/designed.ts'
import { PLAIN } from '#tests/support/inputs.ts'

test('the same pages give the same bytes', async () => {
  const made = pagesOfView('gauges', designed(PLAIN), 'a4')
  if (!made.ok) throw new RangeError('a usual bearing must fit a few pages')
  const [one, other] = [await toPdf(made.value), await toPdf(made.value)]
  expect(Buffer.from(one).equals(Buffer.from(other))).toBe(true)
})
