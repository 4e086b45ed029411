import { expect, test } from 'vitest'
import type { View } from '#src/drawings/view.ts'
import { pagesOfView } from '#src/drawings/views.ts'
import { toPdf } from '#src/drawings/writers/pdf.ts'
import { designed } from '#tests/support/designed.ts'
import { PLAIN } from '#tests/support/inputs.ts'

const pages = (view: View) => {
  const made = pagesOfView(view, designed(PLAIN), 'a4')
  if (!made.ok) throw new RangeError('a usual bearing must fit a few pages')
  return made.value
}

test('the same pages give the same bytes, whatever was drawn before them', async () => {
  const first = await toPdf(pages('gauges'))
  await toPdf(pages('assembly'))
  expect(Buffer.from(await toPdf(pages('gauges'))).equals(Buffer.from(first))).toBe(true)
})
