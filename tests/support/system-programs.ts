import { execFileSync } from 'node:child_process'
import { accessSync, constants } from 'node:fs'
import { delimiter, join } from 'node:path'

/** Programs that tests need and no npm package holds, with the Debian package that does. */
const PROGRAMS = [{ program: 'chromium', from: 'chromium' }] as const

/** Before the first test: installs what is missing where it may, and otherwise says in one line what to install. */
export default function setup(): void {
  const missing = PROGRAMS.filter(({ program }) => pathOf(program) === undefined).map(({ from }) => from)
  if (missing.length === 0) return
  try {
    const install = (...given: string[]) => execFileSync('apt-get', given, { stdio: 'ignore' })
    install('update')
    install('install', '--yes', '--no-install-recommends', ...missing)
  } catch {
    throw new Error(`The tests need ${missing.join(', ')}: please install (apt-get install ${missing.join(' ')}).`)
  }
}

/** Where a program lies, or undefined where it is not installed. */
export function pathOf(program: string): string | undefined {
  return (process.env['PATH'] ?? '')
    .split(delimiter)
    .map((folder) => join(folder, program))
    .find((path) => {
      try {
        accessSync(path, constants.X_OK)
        return true
      } catch {
        return false
      }
    })
}
