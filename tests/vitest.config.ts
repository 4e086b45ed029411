import { defineConfig } from 'vitest/config'

/** The figures of one run for `.ci/run`, which asks for them by this name; a person sees only the default report. */
const report = process.env['TEST_REPORT']

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts'],
    globalSetup: ['tests/system/name-missing.ts', 'tests/support/install-packages.ts'],
    setupFiles: ['tests/support/matchers.ts', 'tests/support/fixed-seed.ts'],
    reporters: report === undefined ? ['default'] : ['default', ['json', { outputFile: report }]],
    expect: { requireAssertions: true },
    // Started servers, killed processes and property tests: the five seconds of the default are too few on a busy machine.
    testTimeout: 120_000,
    coverage: {
      include: ['shared/**/*.ts', 'src/**/*.ts'],
      reporter: ['text-summary', 'html'],
    },
  },
})
