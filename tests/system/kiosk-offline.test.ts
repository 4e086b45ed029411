import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { ask } from '#tests/support/ask.ts'
import { projectCopy } from '#tests/support/project-copy.ts'
import { sharedApp } from '#tests/support/started-app.ts'
import { listening, start } from '#tests/support/started-process.ts'
import { openedPage } from './browser.ts'
import { sizeOf } from './kiosk-page.ts'
import { testsThatNeed } from './needed.ts'
import { proxyBefore } from './stock-proxy.ts'
import { type SwitchedProxy, switchedProxy, type Way } from './switched-proxy.ts'

const { describe, test } = testsThatNeed('chromium', 'haproxy')

/*
 * The page in the workshop of Larkmoor, which is made up, in a real browser behind a network that comes and goes.
 */

/** The ball gap of a first visit, which runs all year in a heated room. */
const GAP_AT_FIRST = '1.60 mm ‡'

/** Once its worker is installed, all that the page needs is stored. */
const installed = (page: Page) => page.evaluate('navigator.serviceWorker.ready.then(() => true)')

const works = (page: Page): Promise<string> => sizeOf(page, 'ball gap')

async function visitedOnce(): Promise<{ page: Page; proxy: SwitchedProxy }> {
  const service = await sharedApp()
  const proxy = await switchedProxy(() => service)
  const { page } = await openedPage()
  await page.goto(proxy.address)
  await installed(page)
  return { page, proxy }
}

describe('after one visit', () => {
  test('the page comes and works whatever is wrong with the proxy, and without any network at every address', async () => {
    const { page, proxy } = await visitedOnce()
    for (const way of ['down', 'sign-in', 'silent', 'half'] as const) {
      proxy.go(way)
      await page.goto(proxy.address, { waitUntil: 'commit' })
      expect(await works(page), way).toBe(GAP_AT_FIRST)
    }
    await page.context().setOffline(true)
    for (const path of ['/', '/?kiosk=1', '/?a=b&c']) {
      await page.goto(proxy.address + path)
      expect(await works(page), path).toBe(GAP_AT_FIRST)
      expect(new URL(page.url()).search).toBe(new URL(proxy.address + path).search)
      await page.getByText('Wood dust harms').waitFor()
    }
  })

  test.each<Way | 'no network'>(['no network', 'down', 'sign-in'])(
    'a ring is measured and cut to its end, and a sheet opened, with: %s',
    async (way) => {
      const { page, proxy } = await visitedOnce()
      if (way === 'no network') await page.context().setOffline(true)
      else proxy.go(way)
      await page.getByRole('navigation').getByRole('button', { name: 'At the lathe' }).click()
      await page.getByText('Measure first').waitFor()
      await page.locator('[name=value]').fill('13')
      await page.getByRole('button', { name: 'Enter this reading' }).click()
      await page.locator('#advice .headline', { hasText: /^(Cut|Sand) 0\.\d+\smm of depth$/ }).waitFor()
      expect(await page.getByText('This browser worked the answer out by itself').count()).toBe(1)
      await page.locator('#cut-done').click()
      await page.getByText('All balls are in').click()
      await page.locator('[name=value]').fill('1')
      await page.getByRole('button', { name: 'Enter this reading' }).click()
      await page.getByText('It fits: stop here').waitFor()
      const query = 'units=mm&balls.count=12&balls.diameter=16&bore=12'
      await page.goto(`${proxy.address}/v1/job-sheet?${query}&format=html`)
      expect(await page.locator('body').textContent()).toContain('outer ring')
      await page.goto(`${proxy.address}/v1/job-sheet?${query}&format=pdf`)
      expect(await page.locator('body').textContent()).toContain('this sheet only it can make')
    },
  )

  test('while the service can be reached, its word counts', async () => {
    const { page, proxy } = await visitedOnce()
    await page.goto(proxy.address)
    const answer = page.waitForResponse((response) => response.url().endsWith('/v1/fit-correction'))
    await page.getByRole('navigation').getByRole('button', { name: 'At the lathe' }).click()
    await page.getByText('Measure first').waitFor()
    expect((await answer).headers()['x-answered-by']).toBeUndefined()
    expect(await page.getByText('This browser worked the answer out').count()).toBe(0)
  })
})

describe('two builds behind one balancer', () => {
  const NEWER = { file: 'src/words/kiosk/page.ts', from: 'follow while you choose', to: 'the second build' }

  const isSecond = async (page: Page) => (await page.locator('header').textContent())?.includes('the second build')

  async function newerBuild(): Promise<number> {
    const newer = await start({}, ['node', join(projectCopy(NEWER), 'src/server.ts')])
    await listening(newer)
    return newer.port
  }

  const twoBuilds = async (): Promise<string> =>
    proxyBefore([Number(new URL(await sharedApp()).port), await newerBuild()])

  test('whichever page a browser gets is whole, at the first visit and at every later one', async () => {
    const address = await twoBuilds()
    const seen = new Set<boolean | undefined>()
    for (let visitors = 0; visitors < 4; visitors += 1) {
      const { page, faults } = await openedPage()
      for (let visits = 0; visits < 3; visits += 1) {
        await page.goto(address)
        expect(await works(page)).toBe(GAP_AT_FIRST)
        seen.add(await isSecond(page))
      }
      expect(faults).toEqual([])
    }
    expect([...seen].toSorted()).toEqual([false, true])
  })

  test('the page needs nothing that another build could lack', async () => {
    const { text } = await ask(await sharedApp())
    // The script in the page holds text that a course pastes into a page of its own.
    const page = text.replaceAll(/(<script[^>]*>)[\s\S]*?<\/script>/g, '$1')
    expect(page).not.toMatch(/<(script|img|link|iframe)[^>]*\s(src|href)="(?!data:)/)
  })

  test('a new build takes the place of the stored one in one piece', async () => {
    const [older, newer] = [await sharedApp(), `http://127.0.0.1:${await newerBuild()}`]
    let isNew = false
    const proxy = await switchedProxy(() => (isNew ? newer : older))
    const { page } = await openedPage()
    await page.goto(proxy.address)
    await installed(page)
    isNew = true
    // Half of the new page arrives: the old one is kept, whole.
    proxy.go('half')
    await page.goto(proxy.address, { waitUntil: 'commit' })
    expect(await works(page)).toBe(GAP_AT_FIRST)
    expect(await isSecond(page)).toBe(false)
    proxy.go('through')
    await page.goto(proxy.address)
    expect(await isSecond(page)).toBe(true)
    await page.context().setOffline(true)
    await page.goto(proxy.address)
    expect(await isSecond(page)).toBe(true)
    expect(await works(page)).toBe(GAP_AT_FIRST)
  })
})
