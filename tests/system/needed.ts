import { execFileSync } from 'node:child_process'
import { describe, test } from 'vitest'
import { missingOf } from './found.ts'
import { PROGRAMS, type Program, SYSTEM_ENVIRONMENT } from './programs.ts'

/** `describe` and `test` for a file whose tests need programs of the system: they are skipped where one is missing. */
export function testsThatNeed(...programs: readonly Program[]) {
  const isMissing = missingOf(programs).length > 0
  return { describe: describe.skipIf(isMissing), test: test.skipIf(isMissing) }
}

/** Runs a program of the system to its end, and gives what it writes. */
export const outputOf = (program: Program, args: readonly string[], input?: Buffer): Buffer =>
  execFileSync(PROGRAMS[program].found[0], args, {
    input,
    env: SYSTEM_ENVIRONMENT,
    maxBuffer: 1 << 28,
    stdio: ['pipe', 'pipe', 'pipe'],
  })
