import { expect } from 'vitest'
import { sharedApp } from '#tests/support/started-app.ts'
import { violations, violationsOfColour } from './axe.ts'
import { openedPage } from './browser.ts'
import { testsThatNeed } from './needed.ts'

const { test } = testsThatNeed('chromium')

test('the page that describes the paths is read on any screen, in light colours and in dark', async () => {
  const { page, faults } = await openedPage()
  await page.goto(`${await sharedApp()}/docs`)
  expect(await violations(page)).toEqual([])
  await page.emulateMedia({ colorScheme: 'dark' })
  expect(await violationsOfColour(page)).toEqual([])
  for (const width of [1280, 640, 390]) {
    await page.setViewportSize({ width, height: 800 })
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width)
  }
  expect(faults).toEqual([])
})
