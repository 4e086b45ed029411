import { type Browser, type BrowserContextOptions, chromium, type Locator, type Page } from 'playwright-core'
import { onTestFinished } from 'vitest'
import { browserPath } from './found.ts'

/** Without these it asks for news of itself, which a machine without internet refuses again and again. */
const QUIET = ['--disable-background-networking', '--disable-component-update', '--disable-sync', '--no-first-run']

/** A worker is not fetched by a certificate of an authority of a test's own, whatever a context is told to ignore. */
const TRUSTING = '--ignore-certificate-errors'

/** For what never comes: a machine that has too much to do takes minutes where another takes a moment. */
const PATIENCE_MS = 300_000

/** One for all tests of a process, which ends with it: each test has a context of its own, with nothing left from the one before. */
let browser: Promise<Browser> | undefined

/** A page in a real browser, which closes when the test is over. What the browser complains of is gathered in `faults`. */
export async function openedPage(options: BrowserContextOptions = {}): Promise<{ page: Page; faults: string[] }> {
  browser ??= startedBrowser()
  const context = await (await browser).newContext(options)
  context.setDefaultTimeout(PATIENCE_MS)
  onTestFinished(() => context.close())
  const page = await context.newPage()
  const faults: string[] = []
  page.on('pageerror', ({ message }) => faults.push(message))
  page.on('console', (message) => {
    if (message.type() === 'error' && !message.text().includes('favicon')) faults.push(message.text())
  })
  return { page, faults }
}

async function startedBrowser(): Promise<Browser> {
  const executablePath = browserPath()
  if (executablePath === undefined) throw new RangeError('a test that needs a browser is skipped where there is none')
  // Tests often run as root, where the browser has no sandbox; it sees pages of ours alone.
  return chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu', TRUSTING, ...QUIET] })
}

/** Text and size of each element that is found, in one call to the browser. */
export const boxesOf = (found: Locator) =>
  found.evaluateAll((elements) =>
    elements.map((element) => {
      type Shown = { getBoundingClientRect(): { width: number; height: number }; textContent: string | null }
      const shown = element as unknown as Shown
      const { width, height } = shown.getBoundingClientRect()
      return { text: shown.textContent ?? '', width, height }
    }),
  )

/** The size on the screen, in pixels, of the font of each text of a drawing that is shown. */
export const fontsOf = (page: Page) =>
  page.locator('svg text:visible').evaluateAll((elements) =>
    elements.map((element) => {
      type Matrix = { readonly a: number; readonly b: number }
      type Shown = { getScreenCTM(): Matrix | null; textContent: string | null }
      const shown = element as unknown as Shown
      const { a, b } = shown.getScreenCTM() ?? { a: 0, b: 0 }
      const { fontSize } = (
        globalThis as unknown as { getComputedStyle(of: unknown): { fontSize: string } }
      ).getComputedStyle(element)
      return { text: shown.textContent ?? '', size: Number.parseFloat(fontSize) * Math.hypot(a, b) }
    }),
  )

/** The colour of an element's text. */
export const colourOf = (found: Locator): Promise<string> =>
  found.evaluate(
    (element) =>
      (globalThis as unknown as { getComputedStyle(of: unknown): { color: string } }).getComputedStyle(element).color,
  )
