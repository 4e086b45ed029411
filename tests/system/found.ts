import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { PROGRAMS, type Program, SYSTEM_ENVIRONMENT } from './programs.ts'

/** Where distributions put the browser: first the one that is built to have no window, which takes a third less of the processor. */
const BROWSER_PATHS = ['chromium-headless-shell', 'chromium', 'chromium-browser', 'google-chrome'].map(
  (name) => `/usr/bin/${name}`,
)

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
