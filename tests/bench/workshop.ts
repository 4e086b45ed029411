import { fitCorrection } from '#shared/bearing/fit-correction/fit-correction.ts'
import { toFitAnswer, toFitCorrectionInput } from '#src/api/fit-correction/present.ts'
import {
  type Advice,
  advised,
  creeping,
  type Deed,
  type History,
  MAKER,
  makeRing,
  type Outcome,
} from '#tests/support/virtual-workshop.ts'

/*
 * The virtual workshop, in numbers: makers who follow the advice against makers who creep up by fixed steps. Not over
 * HTTP, to be quick: the tests do that.
 */
const RINGS = Number(process.argv[2] ?? 500)
const OVERSHOOT_RISK = 0.02

type Request = Parameters<typeof toFitCorrectionInput>[0]

async function advise(request: object): Promise<Advice> {
  const input = toFitCorrectionInput(request as Request)
  if (!input.ok) throw new Error(JSON.stringify(input.error))
  const fit = fitCorrection(input.value)
  if (!fit.ok) throw new Error(JSON.stringify(fit.error))
  return toFitAnswer(fit.value)
}

async function tally(name: string, decide: (history: History) => Promise<Deed>): Promise<void> {
  const outcomes: Outcome[] = []
  for (let seed = 1; seed <= RINGS; seed++) outcomes.push(await makeRing(seed, MAKER, decide))
  const share = (end: Outcome['end']): string =>
    `${((100 * outcomes.filter((each) => each.end === end).length) / RINGS).toFixed(1)} %`
  const checks = outcomes.map((each) => each.checks).sort((a, b) => a - b)
  const mean = checks.reduce((sum, each) => sum + each, 0) / RINGS
  console.log(
    `${name.padEnd(28)} in band ${share('in-band')}, too deep ${share('too-deep')}, too tight ${share('too-tight')};`,
    `checks: median ${checks[Math.floor(RINGS / 2)]}, mean ${mean.toFixed(1)}, most ${checks.at(-1)}`,
  )
}

console.log(`${RINGS} first rings each, twelve balls of 3/4 in, band 0 to 1/16 in, rule in 1/32 in`)
await tally('advised, risk 0.02', advised(OVERSHOOT_RISK, MAKER, advise))
for (const step of [0.002, 0.004, 0.006, 0.008, 0.012]) await tally(`creeping by ${step} in`, creeping(step))
