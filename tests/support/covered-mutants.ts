import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeEach } from 'vitest'

/*
 * A set-up file of `mutate.ts` and `mutate-code.ts`. It leaves the number of its process, so that tests that never end can be ended. Code
 * that counts what is reached of it does so under `mutantCoverage`: which test reaches which part is written down here, and what no
 * single test reaches (a module as it loads) stands under the file of tests itself.
 */

interface Counts {
  mutantCoverage?: { static: Record<string, number>; perTest: Record<string, Record<string, number>> }
  currentTestId?: string
}
const { COVERED_MUTANTS: folder, MUTANT_PROCESS: processId } = process.env
if (processId !== undefined) writeFileSync(processId, String(process.pid))

if (folder !== undefined) {
  const counts: Counts = {}
  Object.assign(globalThis, { __stryker__: counts })
  let file = ''
  beforeEach(({ task }) => {
    counts.currentTestId = task.id
    file = task.file.id
  })
  afterAll(() => {
    const { static: always = {}, perTest = {} } = counts.mutantCoverage ?? {}
    const reached = Object.entries(perTest).map(([test, parts]) => [test, Object.keys(parts)])
    writeFileSync(join(folder, `${file}.json`), JSON.stringify([[file, Object.keys(always)], ...reached]))
  })
}
