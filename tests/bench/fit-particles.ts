import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { unevenLoss } from '#shared/statistics/play-of-random-balls.ts'
import { FIT_CASES } from '#tests/support/fit-cases.ts'
import { byParticles } from '#tests/support/fit-particles.ts'
import { benchOf } from '#tests/support/fit-workshop.ts'

/* Writes the brute-force reference of every case anew, or of those whose name holds a word: `node tests/bench/fit-particles.ts WORD`. */
const FILE = 'tests/shared/questions/fit/particles.json'
const word = process.argv[2] ?? ''
const WANTED = 30_000
const MOST = 60_000_000
const found: Record<string, unknown> = existsSync(FILE) ? JSON.parse(readFileSync(FILE, 'utf8')) : {}
FIT_CASES.forEach(({ name, bearing, readings, earlier }, index) => {
  if (!name.includes(word)) return
  const { subject, target } = benchOf(bearing)
  const { mean, variance, skewness } = unevenLoss(subject.balls.count)
  const reference = byParticles(
    { subject, target, readings, earlier, reduction: [mean, Math.sqrt(variance), skewness], seed: 1000 + index },
    WANTED,
    MOST,
  )
  found[name] = reference
  console.log(name, JSON.stringify(reference))
})
writeFileSync(FILE, `${JSON.stringify(found, undefined, 2)}\n`)
