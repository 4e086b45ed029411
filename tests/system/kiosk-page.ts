import type { Page } from 'playwright-core'
import { expect, vi } from 'vitest'
import { startedApp } from '#tests/support/started-app.ts'
import { openedPage } from './browser.ts'

/*
 * The page in the workshop, in a real browser. Larkmoor, the makerspace that stands at the screen, is made up.
 */

export const FIRST = 'v=1&units=mm&balls.count=12&balls.diameter=16&balls.material=wood&bore=12'

/** The page at the address of a job. */
export async function openedJob(fragment = '', options: Parameters<typeof openedPage>[0] = {}) {
  const at = await startedApp()
  const { page, faults } = await openedPage(options)
  await page.goto(`${at}/${fragment === '' ? '' : `#${fragment}`}`)
  await page.locator('h1').waitFor()
  return { at, page, faults }
}

/** Nothing is on its way any more. */
export async function calm(page: Page): Promise<void> {
  const coming = page.locator('.waiting, [aria-busy=true], div.drawing')
  await vi.waitFor(async () => expect(await coming.count()).toBe(0), { timeout: 20_000, interval: 30 })
}

export const stage = (page: Page, name: string): Promise<void> =>
  page.getByRole('navigation').getByRole('button', { name }).click()

/** A size of the table, as an exact figure. */
export const sizeOf = (page: Page, name: string): Promise<string | null> =>
  page.locator('#sizes-to-cut tr', { hasText: name }).first().locator('td').nth(1).textContent()
