/** Sentences of a browser that cannot reach the service and has no answer by itself. */
export const OFFLINE = {
  title: 'This sheet cannot be had now',
  notHere:
    'The service cannot be reached, and this sheet only it can make. Close this page, or open the sheet on the screen.',
  onScreen: 'Open it on the screen',
} as const

/** Why sheets cannot be opened while the service is away: some of them, where this browser stands in for it, or all. */
export const NOT_OFFLINE = {
  browser: 'PDFs are dimmed: only the service makes them. Open a sheet on the screen meanwhile.',
  nobody: 'Sheets are dimmed: they come from the service.',
} as const
