import { execFileSync, spawnSync } from 'node:child_process'

/** What a test needs of the system, and the package that brings it. */
const PACKAGES = {
  pdftoppm: 'poppler-utils',
  pdftotext: 'poppler-utils',
  qpdf: 'qpdf',
  haproxy: 'haproxy',
  'redis-server': 'redis-server',
} as const

/** Servers lie where only the system's own users look by themselves. */
export const SYSTEM_ENVIRONMENT = { ...process.env, PATH: `${process.env['PATH'] ?? ''}:/usr/local/sbin:/usr/sbin` }

/** Runs a program of the system, or says in one line what to install. */
export function run(
  program: Exclude<keyof typeof PACKAGES, 'haproxy' | 'redis-server'>,
  args: readonly string[],
  input?: Buffer,
): Buffer {
  needed(program)
  return execFileSync(program, args, { input, maxBuffer: 1 << 28, stdio: ['pipe', 'pipe', 'pipe'] })
}

/** @throws Error with one line that says what to install, where the program is not there */
export function needed(program: keyof typeof PACKAGES): void {
  const found = spawnSync(program, ['-v'], { env: SYSTEM_ENVIRONMENT }).error === undefined
  if (!found) throw new Error(`${program} is needed for this test: apt-get install ${PACKAGES[program]}`)
}
