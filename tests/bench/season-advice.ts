import fc from 'fast-check'
import { faultsOfAdvice } from '#tests/support/season-advice.ts'
import { anyArrangedSeason, anySeason } from '#tests/support/seasons.ts'

/*
 * The law of advice for a year, over as many random years as are given (500), of radial bearings and of every arrangement:
 * sent back as a request it is accepted, and the chances are those that were promised.
 */
const YEARS = Number(process.argv[2] ?? 500)
const SEED = 1

for (const [name, years] of Object.entries({ radial: anySeason, every: anyArrangedSeason })) {
  const kinds = new Map<string, number>()
  let faulty = 0
  for (const input of fc.sample(years, { numRuns: YEARS, seed: SEED })) {
    const held = faultsOfAdvice(input)
    const kind = held?.kind ?? 'refused'
    kinds.set(kind, (kinds.get(kind) ?? 0) + 1)
    if (held === undefined || held.faults.length === 0) continue
    faulty += 1
    console.log(held.faults.join('\n'), JSON.stringify(input))
  }
  console.log(`${name}: ${faulty} of ${YEARS} years with a fault;`, Object.fromEntries(kinds))
  if (faulty > 0) process.exitCode = 1
}
