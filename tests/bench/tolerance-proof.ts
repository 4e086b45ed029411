/*
 * Twenty tolerance checks, with trials and without, against 100,000 trials each of a plain program that shares no code with
 * them. Prints every chance that is more than three standard errors apart. Takes some ten minutes.
 *
 *   node tests/bench/tolerance-proof.ts [trials]
 */
import { plainChances } from '#tests/support/plain-tolerance.ts'
import { checkOfAny, comparedWith, TWENTY } from '#tests/support/twenty-checks.ts'

const trials = Number(process.argv[2] ?? 100_000)
let [compared, farthest] = [0, 0]
for (const [row, { name, design, contributors, plain, isGapPlain }] of TWENTY.entries()) {
  const counted = plainChances(plain, trials, 100 + row)
  for (const [how, check] of [
    ['trials', checkOfAny(design, contributors, trials)],
    ['usual', checkOfAny(design, contributors)],
  ] as const) {
    for (const { name: what, value, counted: other, apart } of comparedWith(check, counted, isGapPlain)) {
      compared++
      farthest = Math.max(farthest, apart)
      if (apart > 3) console.log(`${name}, ${how}, ${what}: ${value} and ${other}, ${apart.toFixed(1)} apart`)
    }
  }
  console.log(`${name}: done`)
}
console.log(`${compared} chances compared, the farthest ${farthest.toFixed(2)} standard errors apart`)
