/*
 * What stands on a page for a frame, beside drawings and sheets, which have words of their own.
 */

export const EMBED = {
  count: 'Balls',
  diameter: 'Ball diameter',
  bore: 'Bore',
  show: 'Show',
  symbol: 'Symbol',
  size: 'Size',
  onTheRule: 'On the rule',
  byCaliper: 'by caliper',
  exact: 'Exact',
  sizes: 'All sizes',
  warnings: 'Warnings',
  cautions: 'Cautions',
} as const
