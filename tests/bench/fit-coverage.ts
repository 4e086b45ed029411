import { COVERED, coverage } from '#tests/support/fit-coverage.ts'

/* How often the truth lies in interval95: `node tests/bench/fit-coverage.ts CASES`. */
const cases = Number(process.argv[2] ?? 10_000)
for (const { kind, bearing } of COVERED)
  console.log(`${kind}, ${bearing}: ${coverage(kind, bearing, cases).toFixed(4)}`)
for (const scatterTimes of [2, 4])
  console.log(
    `rule, full, ${scatterTimes} times the scatter: ${coverage('rule', 'full', cases, { scatterTimes }).toFixed(4)}`,
  )
