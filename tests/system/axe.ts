import axe from 'axe-core'
import type { Page } from 'playwright-core'

/** What the checker of accessible pages finds; it is run inside the page. */
export async function violations(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe.source)
  return found(page, {})
}

/** Of a page that has been checked, what other colours change: whether text stands out. */
export const violationsOfColour = (page: Page): Promise<readonly string[]> =>
  found(page, { runOnly: ['color-contrast'] })

const found = (page: Page, options: object): Promise<readonly string[]> =>
  page.evaluate(async (chosen) => {
    type Axe = { run(options: object): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> }
    const { axe } = globalThis as unknown as { axe: Axe }
    const { violations } = await axe.run(chosen)
    return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)
  }, options)
