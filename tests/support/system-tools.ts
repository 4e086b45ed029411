import { execFileSync, spawnSync } from 'node:child_process'

/** What a test needs of the system, and the package that brings it. */
const PACKAGES = {
  pdftoppm: 'poppler-utils',
  pdftotext: 'poppler-utils',
  qpdf: 'qpdf',
} as const

/** Runs a program of the system, or says in one line what to install. */
export function run(program: 'pdftoppm' | 'pdftotext' | 'qpdf', args: readonly string[], input?: Buffer): Buffer {
  needed(program)
  return execFileSync(program, args, { input, maxBuffer: 1 << 28, stdio: ['pipe', 'pipe', 'pipe'] })
}

/** @throws Error with one line that says what to install, where the program is not there */
function needed(program: keyof typeof PACKAGES): void {
  const found = spawnSync(program, ['--version']).error === undefined
  if (!found) throw new Error(`${program} is needed for this test: apt-get install ${PACKAGES[program]}`)
}
