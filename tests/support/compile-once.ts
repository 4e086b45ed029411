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
  const parts = ['./src/app.ts', './src/workers/thread.ts'].map((file) => `await import('${file}')`).join(';')
  spawnSync(process.execPath, ['--input-type=module', '--eval', parts], { stdio: ['ignore', 'ignore', 'inherit'] })
}
