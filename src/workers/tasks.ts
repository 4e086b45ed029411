/*
 * Tasks that run off the event loop: each export is one, by its name. They take and give plain data, for it is copied
 * between threads. Their costs are in `estimate.ts`.
 */
import type { Drawing } from '#src/drawings/model.ts'

export { fitCorrection } from '#shared/questions/fit/fit-correction.ts'
export { safeOffsets } from '#shared/questions/load/arrangements/safe-offsets.ts'
export { beginSearch, concludeSearch, furtherSearch } from '#shared/questions/search/design-search.ts'
export { seasonDefaults } from '#shared/questions/season/season-defaults.ts'
export { seasonalFit } from '#shared/questions/season/seasonal-fit.ts'
export { ballSelection } from '#shared/questions/selection/ball-selection.ts'
export { concludeTrials, prepareTrials, runTrials } from '#shared/questions/tolerance/tolerance-check.ts'
export { browserScript } from '#src/http/browser-script.ts'

/** Loaded by the first who needs it: a PDF costs a thread more to learn than everything else together. */
export async function pdf(pages: readonly Drawing[]): Promise<Uint8Array> {
  const { toPdf } = await import('#src/drawings/writers/pdf.ts')
  return toPdf(pages)
}
