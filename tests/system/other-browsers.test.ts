import { expect, vi } from 'vitest'
import { buildApp } from '#src/app.ts'
import { DEFAULTS } from '#src/config.ts'
import { type OtherPage, openedFirefox } from './firefox.ts'
import { FIRST, kioskAddress, plain } from './kiosk-page.ts'
import { testsThatNeed } from './needed.ts'
import type { Program } from './programs.ts'
import { openedWebkit } from './webkit.ts'

/* The main ways through the page in browsers of other makers than the one in which all else is tested. */

type Opened = (width: number, height: number) => Promise<OtherPage>

const BROWSERS: readonly { readonly name: string; readonly opened: Opened; readonly needs: readonly Program[] }[] = [
  { name: 'Firefox', opened: openedFirefox, needs: ['firefox'] },
  { name: 'WebKit', opened: openedWebkit, needs: ['webkit', 'xvfb'] },
]

/** What a hand does, as functions of the page. */
const HAND = `
  window.enter = (name, text) => {
    const field = document.querySelector('[name="' + name + '"]')
    field.value = text
    field.dispatchEvent(new Event('input', { bubbles: true }))
  }
  window.press = (words) =>
    [...document.querySelectorAll('button, label')].find(({ textContent }) => textContent.replaceAll('\u00a0', ' ').includes(words)).click()
`

async function openedJob(opened: Opened, at: string, fragment: string): Promise<OtherPage> {
  const page = await opened(390, 844)
  await page.open(`${at}/#${fragment}`)
  await shows(page, 'wooden balls of 16 mm')
  await page.valueOf(`(() => {${HAND}})()`)
  return page
}

/** Waits until the page shows some words. */
const shows = (page: OtherPage, words: string): Promise<void> =>
  vi.waitFor(async () => expect(plain(await page.valueOf<string>('document.body.textContent'))).toContain(words), {
    timeout: 60_000,
    interval: 200,
  })

/** One that can be gone while its page is open. */
async function service() {
  const app = await buildApp({ config: { ...DEFAULTS, shutdownDelayMs: 0, logLevel: 'silent' } })
  return { app, at: await app.listen({ host: '127.0.0.1', port: 0 }) }
}

for (const { name, opened, needs } of BROWSERS) {
  const { describe, test } = testsThatNeed(...needs)
  describe(`in ${name}`, () => {
    test('a bearing follows the hand, and nothing is wider than a phone', async () => {
      const page = await openedJob(opened, await kioskAddress(), FIRST)
      await page.valueOf("enter('count', '13')")
      await shows(page, '13 wooden balls of 16 mm')
      for (const stage of ['Wood and place', 'Balls on hand', 'Will it run?', 'Sheets', 'At the lathe', 'Care']) {
        await page.valueOf(`press('${stage}')`)
        await shows(page, stage)
        expect(await page.valueOf('document.documentElement.scrollWidth - innerWidth'), stage).toBeLessThanOrEqual(0)
      }
      await page.valueOf("press('Sheets')")
      await shows(page, 'This code leads back to this bearing')
      for (const format of ['html', 'pdf'])
        expect(
          await page.valueOf(
            `fetch(document.querySelector('a.go[href*="format=${format}"]').href).then(({ status }) => status)`,
          ),
        ).toBe(200)
    }, 180_000)

    test('at the lathe: measured, cut, measured again until it fits, and a reload loses nothing', async () => {
      const page = await openedJob(opened, await kioskAddress(), `${FIRST}&stage=lathe`)
      await shows(page, 'Measure first')
      await page.valueOf("enter('value', '13')")
      await page.valueOf("press('Enter this reading')")
      await vi.waitFor(
        async () =>
          expect(await page.valueOf("document.querySelector('.headline')?.textContent")).toMatch(
            /^(Cut|Sand) 0\.\d+\smm of depth$/,
          ),
        { timeout: 60_000 },
      )
      await page.valueOf("document.querySelector('#cut-done').click()")
      await page.valueOf("press('All balls are in')")
      await page.valueOf("enter('value', '1')")
      await page.valueOf("press('Enter this reading')")
      await shows(page, 'It fits: stop here')
      const address = await page.valueOf<string>('location.href')
      await page.open('about:blank')
      await page.open(address)
      await shows(page, 'It fits: stop here')
    }, 180_000)

    test('after one load it works without the service', async () => {
      const { app, at } = await service()
      const page = await openedJob(opened, at, FIRST)
      await page.valueOf('navigator.serviceWorker.ready.then(() => true)')
      await vi.waitFor(
        async () => expect(await page.valueOf("caches.match('/').then((kept) => kept?.status)")).toBe(200),
        {
          timeout: 60_000,
        },
      )
      await app.close()
      await page.open('about:blank')
      await page.open(`${at}/#${FIRST}&stage=lathe&outer=g1`)
      await shows(page, 'It fits: stop here')
      await shows(page, 'This browser worked the answer out by itself')
    }, 180_000)
  })
}
