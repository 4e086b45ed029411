import fc from 'fast-check'
import { faultsOfAdvice } from '#tests/support/season-advice.ts'
import { anyArrangedSeason, anySeason } from '#tests/support/seasons.ts'

/*
 * The law of advice for a year, over as many random years as are given (500), of radial bearings and of every arrangement:
 * sent back as a request it is accepted, and the chances are those that were promised.
 */
const YEARS = Number(process.argv[2] ?? 500)
const SEED = 1
/** Many bearings that are drawn cannot be made. */
const DRAWN_PER_YEAR = 3

for (const [name, years] of Object.entries({ radial: anySeason, every: anyArrangedSeason })) {
  const kinds = new Map<string, number>()
  let faulty = 0
  let answered = 0
  for (const input of fc.sample(years, { numRuns: DRAWN_PER_YEAR * YEARS, seed: SEED })) {
    const held = faultsOfAdvice(input)
    if (held === undefined) continue
    kinds.set(held.kind, (kinds.get(held.kind) ?? 0) + 1)
    if (held.faults.length > 0) {
      faulty += 1
      console.log(held.faults.join('\n'), JSON.stringify(input))
    }
    if (++answered === YEARS) break
  }
  console.log(`${name}: ${faulty} of ${answered} years with a fault;`, Object.fromEntries(kinds))
  if (faulty > 0) process.exitCode = 1
}
