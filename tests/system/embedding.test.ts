import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { eventually } from '#tests/support/eventually.ts'
import { sharedApp, startedApp } from '#tests/support/started-app.ts'
import { violations } from './axe.ts'
import { boxesOf, fontsOf, openedPage } from './browser.ts'
import { courseSite } from './course-site.ts'
import { inkOf } from './ink.ts'
import { outputOf, testsThatNeed } from './needed.ts'
import { switchedProxy } from './switched-proxy.ts'

const { describe, test } = testsThatNeed('chromium', 'pdftotext')

/*
 * A course page of another site, opened in a real browser.
 */

/** Of an image that was loaded, in pixels of the browser; else 0. */
const naturalWidth = async (page: Page, id: string): Promise<number> =>
  Number(await page.evaluate(`document.getElementById('${id}').naturalWidth`))

test('the page of a course shows two drawings, a figure and a job sheet, and the browser has nothing to complain of', async () => {
  const site = await courseSite(() => sharedApp())
  const { page, faults } = await openedPage()
  await page.goto(site, { waitUntil: 'networkidle' })
  expect(await naturalWidth(page, 'gauges')).toBeGreaterThan(300)
  // As wide as its paper, at the 96 pixels of an inch that a browser has.
  expect(await naturalWidth(page, 'drawing')).toBeWithin(1, (297 / 25.4) * 96)
  const figure = page.frameLocator('#figure')
  expect(await figure.locator('.wide svg title').textContent()).toMatch(/^Assembly\b/)
  expect(await figure.locator('figcaption').textContent()).toContain('14 glass balls of 14 mm')
  expect(await page.frameLocator('#sheet').locator('li.step').count()).toBeGreaterThan(15)
  expect(faults).toEqual([])
})

test('at the third visit, ten days apart, the figure and the job sheet still show, with their styles', async () => {
  const service = await sharedApp()
  const proxy = await switchedProxy(() => service)
  proxy.go('slow')
  const site = await courseSite(async () => proxy.address)
  const { page, faults } = await openedPage()
  for (let visit = 1; visit <= 3; visit += 1) await page.goto(site, { waitUntil: 'networkidle' })
  for (const path of ['/v1/drawings/assembly.html', '/v1/job-sheet']) expect(proxy.answers).toContain(`304 ${path}`)
  type Style = Readonly<Record<string, string>>
  const styleOf = (frame: string, what: string) =>
    page
      .frameLocator(frame)
      .locator(what)
      .evaluate((found) => ({
        ...(globalThis as unknown as { getComputedStyle: (of: unknown) => Style }).getComputedStyle(found),
      }))
  expect(await styleOf('#figure', 'figcaption')).toMatchObject({ paddingTop: '8px' })
  expect(await styleOf('#sheet', 'ol')).toMatchObject({ listStyleType: 'none' })
  expect(faults).toEqual([])
})

test.each([390, 700, 1080, 1280, 1920, 2560])(
  'a figure is no wider than its frame, and all of its text can be read, at %d pixels',
  async (width) => {
    const { page } = await openedPage({ viewport: { width, height: 800 } })
    const at = await sharedApp()
    for (const view of ['assembly', 'templates', 'gauges'])
      for (const kind of ['', '&arrangement=roller', '&arrangement=caged', '&arrangement=thrust']) {
        await page.goto(`${at}/v1/drawings/${view}.html?units=in&balls.count=12&balls.diameter=5/8&bore=1/2${kind}`)
        const beside = 'document.documentElement.scrollWidth - document.documentElement.clientWidth'
        expect(await page.evaluate(beside), `${view}${kind}`).toBe(0)
        for (const { text, size } of await fontsOf(page)) expect(size, `${view}${kind}: ${text}`).toBeGreaterThan(10.9)
      }
  },
)

test('a screen that is wide enough has the whole drawing, and so has paper', async () => {
  const at = await sharedApp()
  const address = `${at}/v1/drawings/assembly.html?units=mm&balls.count=12&balls.diameter=16&bore=12`
  for (const [width, media] of [
    [2200, 'screen'],
    [700, 'print'],
  ] as const) {
    const { page } = await openedPage({ viewport: { width, height: 800 } })
    await page.emulateMedia({ media })
    await page.goto(address)
    const box = await page.locator('.wide svg').boundingBox()
    expect((box?.width ?? 0) / (box?.height ?? 1)).toBeWithin(0.01, 297 / 210)
    expect(await page.locator('.narrow').isVisible()).toBe(false)
  }
})

/** Text of 12 pixels: its letters with what reaches below the line. In print nothing says what can be read; common practice. */
const LEAST_TEXT = 12

test.each(['assembly', 'templates', 'gauges', 'bearing'])(
  'on a phone %s has a drawing of its own, on which all text can be read',
  async (view) => {
    const { page } = await openedPage({ viewport: { width: 390, height: 844 } })
    const at = await sharedApp()
    const kinds = ['radial', 'thrust&balls.count=24', 'roller', 'caged'].map((kind) => `arrangement=${kind}`)
    for (const kind of kinds) {
      const count = kind.includes('count') ? '' : '&balls.count=12'
      await page.goto(`${at}/embed/${view}?units=mm${count}&balls.diameter=16&bore=12&${kind}`)
      expect(await page.evaluate('document.documentElement.scrollWidth'), kind).toBeLessThanOrEqual(390)
      expect(await page.locator('.wide svg').isVisible()).toBe(false)
      expect(await page.locator('.narrow svg').count(), kind).toBeGreaterThan(0)
      for (const { text, width, height } of await boxesOf(page.locator('.narrow svg text')))
        expect(Math.min(width, height), text).toBeGreaterThanOrEqual(text.length === 1 ? LEAST_TEXT / 2 : LEAST_TEXT)
      expect(await violations(page), kind).toEqual([])
    }
  },
  60_000,
)

test.each(['radial', 'roller', 'caged', 'thrust'])(
  'no table of a job sheet is wider than a phone: %s',
  async (kind) => {
    const { page } = await openedPage({ viewport: { width: 360, height: 800 } })
    const at = await sharedApp()
    const bearing = `arrangement=${kind}&balls.count=24&balls.material=wood`
    for (const path of ['v1/job-sheet', 'embed/job-sheet'])
      for (const more of [
        'units=mm&balls.diameter=16&bore=40&finishAllowance=0.05',
        'units=in&balls.diameter=5/8&bore=1 1/2',
      ]) {
        await page.goto(`${at}/${path}?${new URLSearchParams(`${bearing}&${more}`)}`)
        expect(await page.evaluate('document.documentElement.scrollWidth'), `${path} ${more}`).toBeLessThanOrEqual(360)
      }
  },
)

test.each([
  ['embed/bearing', 60],
  ['v1/drawings/assembly.html', 60],
  ['v1/drawings/assembly.html', 12],
])('the checker finds nothing on %s with a bore of %d mm', async (path, bore) => {
  const { page } = await openedPage()
  await page.goto(`${await sharedApp()}/${path}?units=mm&balls.count=12&balls.diameter=16&bore=${bore}`)
  expect(await violations(page)).toEqual([])
})

describe('light and dark', () => {
  /** Text needs 7 where it must be read by anyone (WCAG 2.2, 1.4.6); thin lines are no easier to see. */
  const LEAST_CONTRAST = 7
  const DRAWINGS = ['assembly', 'templates', 'gauges'].flatMap((view) => [`v1/drawings/${view}.html`, `embed/${view}`])

  test.each([...DRAWINGS, 'embed/bearing'])('all lines of %s stand out from the ground', async (path) => {
    const { page } = await openedPage()
    const query = 'units=mm&balls.count=12&balls.diameter=16&bore=12'
    await page.goto(`${await sharedApp()}/${path}?${query}`)
    for (const [colorScheme, isDark] of [
      ['light', false],
      ['dark', true],
    ] as const) {
      await page.emulateMedia({ media: 'screen', colorScheme })
      for (const drawing of ['.wide svg', '.narrow svg']) {
        const { ink, paper, leastContrast } = await inkOf(page, drawing)
        expect(ink > paper, colorScheme).toBe(isDark)
        expect(leastContrast, colorScheme).toBeGreaterThan(LEAST_CONTRAST)
      }
      // A camera reads a code by its dark modules on a light ground.
      for (const code of await page.locator('.wide [shape-rendering]').all())
        expect(
          await code
            .locator('path')
            .evaluateAll((paths) =>
              paths.map((path) =>
                (path as unknown as { getAttribute(name: string): string | null }).getAttribute('fill'),
              ),
            ),
        ).toEqual(['#fff', '#000'])
      await page.emulateMedia({ media: 'print', colorScheme })
      expect(await inkOf(page, '.wide svg')).toEqual({ ink: 0, paper: 1, leastContrast: 21 })
    }
  })

  test.each(['light', 'dark'] as const)('a frame that asks for %s has it, whatever the reader has', async (theme) => {
    const { page } = await openedPage({ colorScheme: theme === 'dark' ? 'light' : 'dark' })
    await page.goto(
      `${await sharedApp()}/embed/assembly?units=mm&balls.count=12&balls.diameter=16&bore=12&theme=${theme}`,
    )
    const { ink, paper, leastContrast } = await inkOf(page, '.wide svg')
    expect(ink > paper).toBe(theme === 'dark')
    expect(leastContrast).toBeGreaterThan(LEAST_CONTRAST)
  })
})

test('printed, the page of a course is sound, and the job sheet has all its operations', async () => {
  const service = await sharedApp()
  const { page } = await openedPage()
  await page.goto(await courseSite(async () => service), { waitUntil: 'networkidle' })
  expect(outputOf('pdftotext', ['-', '-'], await page.pdf({ format: 'A4' })).toString()).toContain('tide clock')
  await page.goto(`${service}/v1/job-sheet?units=mm&balls.count=12&balls.diameter=16&bore=12&format=html`)
  const words = outputOf('pdftotext', ['-layout', '-', '-'], await page.pdf({ preferCSSPageSize: true })).toString()
  for (let number = 1; number <= 20; number += 1) expect(words).toMatch(new RegExp(`^\\s*${number}\\. `, 'm'))
})

test('a site that may not frame it sees nothing of it, and its images all the same', async () => {
  const site = await courseSite(() => sharedApp({ config: { frameAncestors: false } }))
  const { page, faults } = await openedPage()
  await page.goto(site, { waitUntil: 'networkidle' })
  expect(await page.frameLocator('#figure').locator('.wide svg').count()).toBe(0)
  expect(faults.join()).toMatch(/frame-ancestors/)
  expect(await naturalWidth(page, 'drawing')).toBeGreaterThan(300)
})

test('a site that is named may frame it', async () => {
  const site = await courseSite((origin) => startedApp({ config: { frameAncestors: [origin] } }))
  const { page, faults } = await openedPage()
  await page.goto(site, { waitUntil: 'networkidle' })
  expect(faults).toEqual([])
  expect(await page.frameLocator('#figure').locator('.wide svg').count()).toBe(1)
})

describe('the custom element', () => {
  const living = (page: Page) => page.frameLocator('#living >> iframe')
  type Style = Readonly<Record<string, string>>
  const seenIn = (page: Page) =>
    living(page)
      .locator('body')
      .evaluate((body) => ({
        height: (
          body as unknown as { parentElement: { getBoundingClientRect(): { height: number } } }
        ).parentElement.getBoundingClientRect().height,
        paper: (globalThis as unknown as { getComputedStyle: (of: unknown) => Style }).getComputedStyle(body)[
          'backgroundColor'
        ],
      }))

  test('shows a bearing to try, as high as what is in it, in the theme that it asks for', async () => {
    const { page, faults } = await openedPage({ colorScheme: 'dark' })
    await page.goto(await courseSite(() => sharedApp()), { waitUntil: 'networkidle' })
    expect(await living(page).getByRole('status').textContent()).toContain(
      'the 14 balls then leave a gap of 0.7\u00a0mm',
    )
    await eventually(async () => {
      const frame = await page.locator('#living >> iframe').boundingBox()
      expect(frame?.height).toBeWithin(1, (await seenIn(page)).height)
    })
    expect((await seenIn(page)).paper).toBe('rgb(255, 255, 255)')
    expect(await page.locator('#living >> iframe').getAttribute('title')).toBe('A bearing to try')
    expect(faults).toEqual([])
  })

  test('answers at once what a reader enters, refusals too, and keeps all else', async () => {
    const { page } = await openedPage()
    await page.goto(await courseSite(() => sharedApp()), { waitUntil: 'networkidle' })
    await living(page).getByLabel('Balls', { exact: true }).fill('10')
    await living(page).getByText('the 10 balls then leave a gap of 0.7 mm').waitFor()
    await living(page).getByLabel('Bore').fill('80')
    await living(page).getByText('A bore of 80 mm cuts').waitFor()
    expect(await living(page).locator('.wide svg').count()).toBe(0)
    await living(page).getByLabel('Bore').fill('1/2 in')
    await living(page).locator('.wide svg').waitFor({ state: 'attached' })
    expect(await living(page).locator('figcaption').textContent()).toContain('10 glass balls of 14 mm')
  })

  test('follows its attributes', async () => {
    const { page } = await openedPage()
    await page.goto(await courseSite(() => sharedApp()), { waitUntil: 'networkidle' })
    await page.evaluate("document.getElementById('living').setAttribute('view', 'job-sheet')")
    await living(page).locator('li.step').first().waitFor()
    expect(await living(page).locator('li.step').count()).toBeGreaterThan(15)
  })
})

test('PDFs and SVGs show in frames where the setting says so, and else do not', async () => {
  const shown = await openedPage()
  await shown.page.goto(await courseSite(() => sharedApp()), { waitUntil: 'networkidle' })
  expect(await shown.page.frameLocator('#svg').locator('svg title').textContent()).toMatch(/^Assembly\b/)
  expect(shown.faults).toEqual([])
  const refused = await openedPage()
  await refused.page.goto(await courseSite(() => sharedApp({ config: { frameAncestors: false } })), {
    waitUntil: 'networkidle',
  })
  for (const path of ['assembly.pdf', 'assembly.svg', 'embed/bearing'])
    expect(refused.faults.some((fault) => fault.includes(path) || fault.includes('frame-ancestors'))).toBe(true)
})
