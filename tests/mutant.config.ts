import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'
import type { Mutant } from './support/mutants.ts'

/*
 * The tests of one mutant: `mutate-code.ts` names the changed file and its text. Golden files are left out, for they notice anything, and
 * tests of one change are ended at the first that fails.
 */

const path = process.env['MUTANT']
const mutant: Pick<Mutant, 'file' | 'text'> | undefined =
  path === undefined ? undefined : JSON.parse(readFileSync(path, 'utf8'))
const root = fileURLToPath(new URL('..', import.meta.url))

export default defineConfig({
  plugins: [
    {
      name: 'mutant',
      enforce: 'pre',
      transform: (_code, id) => (mutant !== undefined && id === `${root}${mutant.file}` ? mutant.text : undefined),
    },
  ],
  test: {
    root,
    include: ['tests/shared/**/*.test.ts', 'tests/published/*.test.ts'],
    setupFiles: ['tests/support/matchers.ts', 'tests/support/fixed-seed.ts'],
    expect: { requireAssertions: true },
    testTimeout: 120_000,
    maxWorkers: 1,
    bail: 1,
    // a module kept from the run before would be one without the change
    fsModuleCache: false,
    reporters: [['json', { outputFile: process.env['MUTANT_REPORT'] }]],
  },
})
