/** Words of the step with everything to print or to save. */
export const SHEETS = {
  paper: 'Paper',
  scale:
    'Templates and gauges are full size as PDF. Print them at 100 %, without “fit to page”, and measure the bar on each first. An assembly drawing states its scale.',
  onScreen: 'What the browser prints of the screen is not to scale.',
  documents: 'Paths for programs',
  embed: 'Show this bearing on another page',
} as const

/** Sheets and files by the path that gives them. */
export const SHEET_NAMES = {
  'job-sheet': 'Job sheet: every step in order, with boxes to tick and blanks for your readings',
  assembly: 'Assembly drawing, with all sizes',
  templates: 'Templates to glue on the wood or to cut by',
  gauges: 'Gauges and profiles to make',
} as const

/** The ways to show a bearing on another page. */
export const EMBED_NAMES = {
  element: 'A bearing that readers can change',
  image: 'The drawing alone, for a wide page',
  frame: 'The same as the first, in a frame',
} as const

export const FORMAT_NAMES = { html: 'on the screen', pdf: 'PDF to print', svg: 'SVG', dxf: 'DXF' } as const

export const PAPER_NAMES: Readonly<Record<string, string>> = {
  a4: 'A4',
  a3: 'A3',
  a2: 'A2',
  a1: 'A1',
  letter: 'Letter',
  tabloid: 'Tabloid',
}
