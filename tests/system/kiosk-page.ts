import type { Page } from 'playwright-core'
import { afterAll, expect, vi } from 'vitest'
import { lazy } from '#shared/lazy.ts'
import { buildApp } from '#src/app.ts'
import { DEFAULTS } from '#src/config.ts'
import { openedPage } from './browser.ts'

/*
 * The page in the workshop, in a real browser. Larkmoor, the makerspace that stands at the screen, is made up.
 */

export const FIRST = 'v=1&units=mm&balls.count=12&balls.diameter=16&balls.material=wood&bore=12'

/** Where the service of these tests says that it is. */
export const PUBLIC_URL = 'https://bench.example'

/** One service for all tests of a file: it keeps nothing of them, and its page is made but once. */
const service = lazy(async () => {
  const config = { ...DEFAULTS, shutdownDelayMs: 0, logLevel: 'silent', publicUrl: PUBLIC_URL } as const
  const app = await buildApp({ config })
  const address = await app.listen({ host: '127.0.0.1', port: 0 })
  return { app, address }
})
afterAll(async () => (await service.started())?.app.close())

export const kioskAddress = async (): Promise<string> => (await service()).address

/** The page at the address of a job. */
export async function openedJob(fragment = '', options: Parameters<typeof openedPage>[0] = {}) {
  const at = await kioskAddress()
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
