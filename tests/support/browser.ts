import { existsSync } from 'node:fs'
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core'
import { afterAll, onTestFinished } from 'vitest'

/** Where distributions put it. */
const PATHS = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome']

/** Without these it asks for news of itself, which a machine without internet refuses again and again. */
const QUIET = ['--disable-background-networking', '--disable-component-update', '--disable-sync', '--no-first-run']

/** One for all tests of a file: each has a context of its own, with nothing left from the one before. */
let browser: Promise<Browser> | undefined
afterAll(async () => (await browser)?.close())

/** A page in a real browser, which closes when the test is over. What the browser complains of is gathered in `faults`. */
export async function openedPage(options: BrowserContextOptions = {}): Promise<{ page: Page; faults: string[] }> {
  browser ??= startedBrowser()
  const context = await (await browser).newContext(options)
  onTestFinished(() => context.close())
  const page = await context.newPage()
  const faults: string[] = []
  page.on('pageerror', ({ message }) => faults.push(message))
  page.on('console', (message) => {
    if (message.type() === 'error' && !message.text().includes('favicon')) faults.push(message.text())
  })
  return { page, faults }
}

/** @throws Error with one line that says what to install, where the system has no Chromium */
async function startedBrowser(): Promise<Browser> {
  const executablePath = [process.env['CHROMIUM'], ...PATHS].find((path) => path !== undefined && existsSync(path))
  if (executablePath === undefined)
    throw new Error('Chromium is needed for this test: apt-get install chromium, or say where it is in CHROMIUM')
  // Tests often run as root, where the browser has no sandbox; it sees pages of ours alone.
  return chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu', ...QUIET] })
}
