/** Words of the step with everything to print or to save. */
export const SHEETS = {
  paper: 'Paper',
  /** Over the assembly drawing on the page. */
  drawing: 'Drawing and notes',
  scale:
    'Templates and gauges are full size as PDF. Print them at 100 %, without “fit to page”, and measure the bar on each first. An assembly drawing states its scale.',
  onScreen: 'What the browser prints of the screen is not to scale.',
  /** Which file is for what, beside the buttons of all. */
  files:
    'PDF is for the printer, and has the true size. SVG is for a laser cutter, a drawing program or a page of your own. DXF is for a CNC router or a CAD program. Templates and gauges are full size in both, in millimetres.',
  documents: 'For programmers',
  embed: 'Show this bearing on another page',
  /** Sheets and files by the path that gives them. */
  names: {
    'job-sheet': 'Job sheet: every step in order, with boxes to tick and blanks for your readings',
    assembly: 'Assembly drawing, with all sizes',
    templates: 'Templates to glue on the wood or to cut by',
    gauges: 'Gauges and profiles to make',
  },
  formats: { html: 'on the screen', pdf: 'PDF to print', svg: 'SVG for a laser', dxf: 'DXF for CNC or CAD' },
  papers: { a4: 'A4', a3: 'A3', a2: 'A2', a1: 'A1', letter: 'Letter', tabloid: 'Tabloid' },
  /** The ways to show a bearing on another page. */
  embeds: {
    element: 'A bearing that readers can change: for a page that may run scripts',
    image: 'The drawing alone, wide: for a page that takes only pictures',
    frame: 'A bearing that readers can change, in a frame: for a page that takes frames and no scripts',
  },
} as const
