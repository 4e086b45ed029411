import type { Units } from '#shared/units/length.ts'
import { SHELL } from '#src/words/kiosk/page.ts'
import { capitalised } from './figure.ts'
import type { Terms } from './terms.ts'

/*
 * What stands on a page for a frame, beside drawings and sheets, which have words of their own.
 */

export const EMBED = {
  count: ({ element }: Terms) => capitalised(element.many),
  diameter: ({ element }: Terms, units: Units) => `${capitalised(element.one)} diameter (${units})`,
  bore: (units: Units) => `Bore (${units})`,
  show: 'Show',
  symbol: 'Symbol',
  size: 'Size',
  onTheRule: 'On the rule',
  exact: (units: Units) => `Exact (${units})`,
  sizes: 'All sizes',
  warning: 'Warning',
  notes: SHELL.notes,
  wholePage: 'Open the whole page with this bearing: its wood, its place, its sheets, and help at the lathe',
  cautions: 'Cautions',
} as const
