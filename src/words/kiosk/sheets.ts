/** Words of the step with everything to print or to save. */
export const SHEETS = {
  paper: 'Paper',
  scale:
    'Templates and gauges are full size as PDF. Print them at 100 %, without “fit to page”, and measure the bar on each first. An assembly drawing states its scale.',
  onScreen: 'What the browser prints of the screen is not to scale.',
  documents: 'For programmers',
  embed: 'Show this bearing on another page',
  /** Sheets and files by the path that gives them. */
  names: {
    'job-sheet': 'Job sheet: every step in order, with boxes to tick and blanks for your readings',
    assembly: 'Assembly drawing, with all sizes',
    templates: 'Templates to glue on the wood or to cut by',
    gauges: 'Gauges and profiles to make',
  },
  formats: { html: 'on the screen', pdf: 'PDF to print', svg: 'SVG', dxf: 'DXF' },
  papers: { a4: 'A4', a3: 'A3', a2: 'A2', a1: 'A1', letter: 'Letter', tabloid: 'Tabloid' },
  /** The ways to show a bearing on another page. */
  embeds: {
    element: 'A bearing that readers can change',
    image: 'The drawing alone, for a wide page',
    frame: 'The same as the first, in a frame',
  },
} as const
