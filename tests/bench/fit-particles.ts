import { writeFileSync } from 'node:fs'
import { playReduction } from '#shared/questions/fit/play-reduction.ts'
import { FIT_CASES } from '#tests/support/fit-cases.ts'
import { byParticles } from '#tests/support/fit-particles.ts'
import { benchOf } from '#tests/support/fit-workshop.ts'

/* Writes the brute-force reference of every case anew: some minutes. `node tests/bench/fit-particles.ts FILE` */
const WANTED = 30_000
const MOST = 60_000_000
const found: Record<string, unknown> = {}
FIT_CASES.forEach(({ name, bearing, readings, earlier }, index) => {
  const { subject, target } = benchOf(bearing)
  const { mean, deviation, skewness } = playReduction(subject.balls.count)
  const reference = byParticles(
    { subject, target, readings, earlier, reduction: [mean, deviation, skewness], seed: 1000 + index },
    WANTED,
    MOST,
  )
  found[name] = reference
  console.log(name, JSON.stringify(reference))
})
writeFileSync(process.argv[2] ?? 'tests/shared/questions/fit/particles.json', `${JSON.stringify(found, undefined, 2)}\n`)
