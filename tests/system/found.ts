import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { PROGRAMS, type Program, SYSTEM_ENVIRONMENT } from './programs.ts'

/** Where distributions put the browser. */
const BROWSER_PATHS = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome']

/** The browser to test in: named by the variable CHROMIUM, or as distributions bring it. */
export const browserPath = (): string | undefined =>
  [process.env['CHROMIUM'], ...BROWSER_PATHS].find((path) => path !== undefined && existsSync(path))

const isFound = (program: Program): boolean => {
  if (program === 'chromium') return browserPath() !== undefined
  const [command, ...args] = PROGRAMS[program].found
  const { error, status } = spawnSync(command, args, { stdio: 'ignore', env: SYSTEM_ENVIRONMENT })
  return error === undefined && status === 0
}

/** Of some programs, those that this machine does not have. */
export const missingOf = (programs: readonly Program[]): readonly Program[] =>
  programs.filter((program) => !isFound(program))
