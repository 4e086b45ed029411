/*
 * What runs off the event loop: each export is a task, by its name. They take and give plain data, for it is copied
 * between threads. What each costs is in `estimate.ts`.
 */
import type { Drawing } from '#src/drawings/model.ts'

export { ballSelection } from '#shared/bearing/ball-selection.ts'
export { beginSearch, concludeSearch, furtherSearch } from '#shared/bearing/design-search/design-search.ts'
export { fitCorrection } from '#shared/bearing/fit-correction/fit-correction.ts'
export { seasonalFit } from '#shared/bearing/seasonal-fit/seasonal-fit.ts'
export { concludeTrials, prepareTrials, runTrials } from '#shared/bearing/tolerance-check/tolerance-check.ts'
export { browserModules } from '#src/http/browser-modules.ts'

/** Loaded by the first who needs it: a PDF costs a thread more to learn than everything else together. */
export async function pdf(pages: readonly Drawing[]): Promise<Uint8Array> {
  const { toPdf } = await import('#src/drawings/writers/pdf.ts')
  return toPdf(pages)
}
