import type { DesignSearch, SearchRefusal } from '#shared/questions/search/design-search.ts'
import type { DesignSearchInput } from '#shared/questions/search/input.ts'
import type { Result } from '#shared/result.ts'
import type { RunPart } from './pool.ts'

/** Work in a part: some twenty milliseconds, or forty on a slow machine. */
const EFFORT_A_PART = 1_000

/** A design search, part after part. How it is cut plays no part in the answer. */
export async function searchDesigns(
  input: DesignSearchInput,
  runPart: RunPart,
): Promise<Result<DesignSearch, readonly SearchRefusal[]>> {
  const begun = await runPart('beginSearch', input)
  if (!begun.ok) return begun
  let progress = begun.value
  while (!progress.isOver) {
    const { effortLeft } = progress
    const mostEffort = EFFORT_A_PART
    progress = await runPart('furtherSearch', { input, progress, mostEffort }, Math.max(effortLeft, mostEffort))
  }
  return runPart('concludeSearch', { input, progress }, 0)
}
