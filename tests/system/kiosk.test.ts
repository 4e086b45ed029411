import axe from 'axe-core'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { ask } from '#tests/support/ask.ts'
import { startedApp } from '#tests/support/started-app.ts'
import { openedPage } from './browser.ts'
import { testsThatNeed } from './needed.ts'

const { describe, test } = testsThatNeed('chromium')

/*
 * The page in the workshop, in a real browser. Larkmoor, the makerspace that stands at the screen, is made up.
 */

/** What the checker of accessible pages finds; it is run inside the page. */
async function violations(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe.source)
  return page.evaluate(async () => {
    type Axe = { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> }
    const { axe } = globalThis as unknown as { axe: Axe }
    const found = await axe.run()
    return found.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)
  })
}

const sizeOf = (page: Page, name: string): Promise<string | null> =>
  page.locator('#sizes-to-cut tr', { hasText: name }).locator('td').nth(1).textContent()

/** The service has answered, and the page had nothing to say about its figures. */
async function answered(page: Page): Promise<void> {
  await page.locator('#result[aria-busy=false]').waitFor()
  await page.waitForFunction("document.querySelector('#standing').textContent === ''")
}

async function opened(options: Parameters<typeof openedPage>[0] = {}) {
  const at = await startedApp()
  const { page, faults } = await openedPage(options)
  await page.goto(at)
  await answered(page)
  return { at, page, faults }
}

describe('Choose', () => {
  test('the bearing follows the hand, and the service agrees', async () => {
    const { page, faults } = await opened()
    // Twelve balls of 16 mm close at 16 / (2 sin 15°) = 30.910 mm, and the gap is 0.4 mm more than the last ball needs.
    expect(await sizeOf(page, 'ball gap')).toBe('0.88 mm')
    await page.getByLabel('one ball more').click()
    expect(await page.locator('[name=count]').inputValue()).toBe('13')
    await answered(page)
    await page.getByText('14 mm', { exact: true }).click()
    expect(await sizeOf(page, 'outer ring, groove depth')).toBe('2.80 mm')
    expect(await page.locator('#drawing').textContent()).toContain('13 wooden balls, Dw Ø14')
    await page.locator('[name=outer]').fill('25')
    expect(await sizeOf(page, 'outer ring, groove depth')).toBe('3.50 mm')
    await answered(page)
    expect(faults).toEqual([])
  })

  test('the example is the tide clock of the README, whatever was chosen before', async () => {
    const { page } = await opened()
    await page.getByText('inches', { exact: true }).click()
    await page.getByRole('button', { name: 'tide clock of Larkmoor' }).click()
    await answered(page)
    expect(await page.locator('#drawing').textContent()).toContain('14 glass balls, Dw Ø14')
    expect(await sizeOf(page, 'outer ring, groove depth')).toBe('2.80 mm')
  })

  test('inches are what a rule shows, and a typed fraction is read', async () => {
    const { page } = await opened()
    await page.getByText('inches', { exact: true }).click()
    await page.locator('[name=diameter]').fill('3/4')
    await page.locator('[name=count]').fill('10')
    // A groove 3/16 in deep takes 25 % of a 3/4 in ball (common practice, no source).
    await page.locator('[name=outer]').fill('25')
    expect(await sizeOf(page, 'outer ring, groove depth')).toBe('0.1875 in')
    await page.getByLabel('larger bore').click()
    expect(await page.locator('[name=bore]').inputValue()).toMatch(/^(\d+ )?\d+\/16$|^\d+$/)
  })

  test('what cannot be read, and what cannot be, is said where it stands', async () => {
    const { page } = await opened()
    await page.locator('[name=diameter]').fill('1//2')
    expect(await page.locator('#diameter-fault').textContent()).toContain('such as 5/8')
    await page.locator('[name=diameter]').fill('16')
    await page.locator('[name=bore]').fill('60')
    expect(await page.locator('#refusals').textContent()).toContain('cuts into the inner ring')
    await answered(page)
    await page.locator('[name=bore]').fill('38')
    expect(await page.locator('#warnings').textContent()).toContain('wood')
  })

  test('the network drops: the page goes on by itself, and says so', async () => {
    const { page } = await opened()
    await page.context().setOffline(true)
    await page.getByLabel('one ball more').click()
    await page.getByText('The service cannot be reached').waitFor()
    expect(await sizeOf(page, 'ball gap')).toBe('0.81 mm')
    // And even when it is opened anew: the service worker kept it.
    await page.context().setOffline(false)
    await page.waitForFunction('navigator.serviceWorker.controller !== null')
    await page.reload()
    await answered(page)
    await page.context().setOffline(true)
    await page.reload()
    await page.getByText('The service cannot be reached').waitFor()
    expect(await sizeOf(page, 'ball gap')).toBe('0.88 mm')
  })
})

describe('Fit', () => {
  test('a reading goes in, and the next cut comes out', async () => {
    const { page } = await opened()
    await page.getByRole('tab', { name: 'Fit' }).click()
    await page.locator('[name=value]').fill('13')
    await page.getByRole('button', { name: 'What next?' }).click()
    await page.getByRole('heading', { name: 'Remove more.' }).waitFor()
    expect(await page.locator('#advice').textContent()).toMatch(/until the groove measures about [\d.]+ mm across/)
    await page.getByText('All balls are in').click()
    await page.locator('[name=value]').fill('8')
    await page.getByRole('button', { name: 'What next?' }).click()
    await page.getByRole('heading', { name: 'Too deep' }).waitFor()
    expect(await page.locator('#advice ol li').count()).toBeGreaterThan(3)
  })

  test('a reading that cannot be is said', async () => {
    const { page } = await opened()
    await page.getByRole('tab', { name: 'Fit' }).click()
    await page.locator('[name=value]').fill('900')
    await page.getByRole('button', { name: 'What next?' }).click()
    await page.getByRole('heading', { name: 'This reading is not possible' }).waitFor()
    expect(await page.locator('#advice li').count()).toBe(1)
  })
})

describe('for everyone', () => {
  test.each(['light', 'dark'] as const)('the checker finds nothing, in %s colours, on any tab', async (colorScheme) => {
    const { page } = await opened({ colorScheme })
    for (const name of ['Choose', 'Fit', 'Job sheet']) {
      await page.getByRole('tab', { name }).click()
      expect(await violations(page)).toEqual([])
    }
  })

  test('by keyboard alone', async () => {
    const { page } = await opened()
    await page.getByRole('tab', { name: 'Choose' }).focus()
    await page.keyboard.press('ArrowRight')
    expect(await page.locator('#fit').isVisible()).toBe(true)
    await page.keyboard.press('Home')
    expect(await page.locator('#choose').isVisible()).toBe(true)
    await page.locator('[name=size][value="16"]').focus()
    await page.keyboard.press('ArrowRight')
    expect(await page.locator('[name=diameter]').inputValue()).toBe('20')
    await page.locator('[name=outer]').focus()
    await page.keyboard.press('ArrowRight')
    expect(await page.locator('#outer-depth').textContent()).toBe('21 %')
  })

  test('at twice the size nothing is cut off', async () => {
    // 1280 pixels at 200 % leave 640.
    const { page } = await opened({ viewport: { width: 640, height: 450 } })
    const widest = await page.evaluate('document.documentElement.scrollWidth')
    expect(widest).toBeLessThanOrEqual(640)
    for (const target of await page.locator('button:visible, .pick span:visible, .go:visible').all()) {
      const { width, height } = (await target.boundingBox()) ?? { width: 0, height: 0 }
      expect(Math.min(width, height)).toBeGreaterThanOrEqual(44)
    }
  })
})

describe('what is served', () => {
  test('the page is of one piece, and may run its own script and nothing else', async () => {
    const page = await ask(await startedApp())
    expect(page.headers['content-type']).toBe('text/html; charset=utf-8')
    expect(page.headers['content-security-policy']).toMatch(
      /^default-src 'none'; style-src 'sha256-[^']+'; script-src 'sha256-[^']+'; /,
    )
    expect(page.text).not.toContain('HTMLButtonElement): void')
  })

  test.each(['/', '/service-worker.js'])('%s is checked at every visit, and sent only when it is new', async (path) => {
    const at = (await startedApp()) + path
    const { headers } = await ask(at)
    expect(headers['cache-control']).toBe('no-cache')
    const again = await ask(at, { headers: { 'if-none-match': String(headers['etag']) } })
    expect(again).toMatchObject({ status: 304, text: '' })
  })

  test.each(['/kiosk/main.ts', '/src/server.ts', '/package.json', '/..%2fpackage.json'])(
    'no file of the project can be had: %s',
    async (path) => {
      expect((await ask((await startedApp()) + path)).status).toBe(404)
    },
  )
})
