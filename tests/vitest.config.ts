import { defineConfig } from 'vitest/config'

/** The figures of one run for `.ci/run`, which asks for them by this name; a person sees only the default report. */
const report = process.env['TEST_REPORT']

/** What looks at all threads of its process, or puts something in the place of a module, has a process of its own. */
const ALONE = ['forced-end', 'lost-threads', 'threads'].map((name) => `tests/src/workers/${name}.test.ts`)

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    globalSetup: ['tests/support/compile-once.ts', 'tests/system/name-missing.ts', 'tests/support/install-packages.ts'],
    setupFiles: ['tests/support/matchers.ts', 'tests/support/fixed-seed.ts'],
    reporters: report === undefined ? ['default'] : ['default', ['json', { outputFile: report }]],
    expect: { requireAssertions: true },
    // For what hangs alone: no test is to fail because a machine is slow.
    testTimeout: 600_000,
    hookTimeout: 600_000,
    // Twice as many as processors, of which most machines for tests have two: many a test waits, for a page, a deadline, or a signal.
    maxWorkers: 4,
    projects: [
      {
        extends: true,
        // Most of a file's time would be loading what every other loads too.
        test: {
          name: 'shared',
          include: ['tests/**/*.test.ts'],
          exclude: ['**/node_modules/**', ...ALONE],
          isolate: false,
        },
      },
      { extends: true, test: { name: 'alone', include: ALONE } },
    ],
    coverage: {
      include: ['shared/**/*.ts', 'src/**/*.ts'],
      reporter: ['text-summary', 'html'],
    },
  },
})
