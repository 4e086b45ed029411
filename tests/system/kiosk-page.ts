import type { Locator, Page } from 'playwright-core'
import { expect, onTestFinished } from 'vitest'
import { eventually } from '#tests/support/eventually.ts'
import { programNames } from '#tests/support/program-names.ts'
import { sharedApp } from '#tests/support/started-app.ts'
import { openedPage } from './browser.ts'

/*
 * The page in the workshop, in a real browser. Larkmoor, the makerspace that stands at the screen, is made up.
 */

export const FIRST = 'v=1&units=mm&balls.count=12&balls.diameter=16&balls.material=wood&bore=12'

/** Where the service of these tests says that it is. */
export const PUBLIC_URL = 'https://bench.example'

export const kioskAddress = (): Promise<string> => sharedApp({ config: { publicUrl: PUBLIC_URL } })

/**
 * The page at the address of a job, without the worker that stands in for the service: to install it costs as much as most of
 * these tests, and what it does is tested where there is no network.
 */
export async function openedJob(fragment = '', options: Parameters<typeof openedPage>[0] = {}) {
  const at = await kioskAddress()
  const { page, faults } = await openedPage({ serviceWorkers: 'block', ...options })
  await page.goto(`${at}/${fragment === '' ? '' : `#${fragment}`}`)
  await page.locator('h1').waitFor()
  onTestFinished(async () => expect((await wordsOn(page)).flatMap(programNames)).toEqual([]))
  return { at, page, faults }
}

/** All that is read on a page, by eyes or by ear; the texts that a maker types, and the code to embed a bearing, are no words of ours. */
const wordsOn = (page: Page): Promise<readonly string[]> =>
  page.locator('body').evaluate((body) => {
    type Element = {
      readonly localName: string
      readonly childNodes: Iterable<{ readonly nodeType: number; readonly textContent: string | null }>
      getAttribute(name: string): string | null
    }
    const all = Array.from(
      (body as unknown as { querySelectorAll(of: string): Iterable<Element> }).querySelectorAll('*'),
    )
    return all
      .filter(
        ({ localName }) => !['script', 'style', 'noscript', 'pre', 'code', 'textarea', 'input'].includes(localName),
      )
      .flatMap((element) => [
        ...['aria-label', 'alt', 'title'].map((name) => element.getAttribute(name) ?? ''),
        ...Array.from(element.childNodes, ({ nodeType, textContent }) => (nodeType === 3 ? (textContent ?? '') : '')),
      ])
  })

/** The words of an element with plain spaces: the page holds a figure and its unit together. */
export const wordsOf = async (found: Locator): Promise<string> => plain((await found.textContent()) ?? '')
export const plain = (text: string): string => text.replaceAll('\u00a0', ' ')

/** Nothing is on its way any more. */
export async function calm(page: Page): Promise<void> {
  const coming = page.locator('.waiting, [aria-busy=true]')
  await eventually(async () => expect(await coming.count()).toBe(0))
}

export const stage = (page: Page, name: string): Promise<void> =>
  page.getByRole('navigation').getByRole('button', { name }).click()

/** A size of the table, as an exact figure. */
export const sizeOf = (page: Page, name: string): Promise<string> =>
  wordsOf(page.locator('#sizes-to-cut tr', { hasText: name }).first().locator('td').nth(2))
