import { spawnSync } from 'node:child_process'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** Where every process and thread of the tests keeps what it has compiled. */
export const COMPILED = join(tmpdir(), 'racewright-tests-compiled')

/**
 * Once before all tests: compiles the service and its threads, of which they start hundreds. A process keeps what it has
 * compiled only when it ends, and those of the tests end last.
 */
export function setup(): void {
  process.env['NODE_COMPILE_CACHE'] = COMPILED
  const parts = ['--import', './src/app.ts', '--import', './src/workers/thread.ts']
  spawnSync(process.execPath, [...parts, '--eval', ''], { stdio: ['ignore', 'ignore', 'inherit'] })
}
