import { expect, test } from 'vitest'
import { snippetsOf } from '#src/kiosk/snippets.ts'
import { ask } from '#tests/support/ask.ts'
import { sharedApp } from '#tests/support/started-app.ts'

const REQUEST = {
  units: 'in',
  balls: { count: 10, diameter: '5/8' },
  bore: '1/2"',
  making: { name: 'Tide & "hour" <wheel>' },
}

const plain = (markup: string) => markup.replaceAll('&lt;', '<').replaceAll('&quot;', '"').replaceAll('&amp;', '&')

test('what an author pastes leads to the bearing, whatever is in its name', async () => {
  const at = await sharedApp()
  const { image, frame, element } = snippetsOf(at, REQUEST, 'Tide & "hour" <wheel>')
  for (const snippet of [image, frame]) {
    const [, address = ''] = /src="([^"]+)"/.exec(snippet) ?? []
    expect((await ask(plain(address))).status).toBe(200)
    expect(snippet).toMatch(/(alt|title)="Tide &amp; &quot;hour&quot; &lt;wheel>"/)
  }
  expect(element).toContain('balls.count="10" balls.diameter="5/8" bore="1/2&quot;"')
  const [, script = ''] = /src="([^"]+)"/.exec(element) ?? []
  expect((await ask(script)).status).toBe(200)
})
