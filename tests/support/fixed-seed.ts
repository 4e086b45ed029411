import fc from 'fast-check'

/** The tests of one mutant are many: properties that do not say how often they are tried are tried less often there. */
const isMutant = process.env['MUTANT_PROCESS'] !== undefined

// The same cases on every run and every machine: a test that fails today failed for the one who broke it.
fc.configureGlobal({ seed: 20_260, numRuns: isMutant ? 60 : 300 })
