import axe from 'axe-core'
import type { Page } from 'playwright-core'

/** What the checker of accessible pages finds; it is run inside the page. */
export async function violations(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe.source)
  return page.evaluate(async () => {
    type Axe = { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> }
    const { axe } = globalThis as unknown as { axe: Axe }
    const found = await axe.run()
    return found.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)
  })
}
