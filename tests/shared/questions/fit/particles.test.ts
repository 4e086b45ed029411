import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { fitOf } from '#shared/questions/fit/fit.ts'
import { unevenLoss } from '#shared/statistics/play-of-random-balls.ts'
import { FIT_CASES } from '#tests/support/fit-cases.ts'
import { byParticles } from '#tests/support/fit-particles.ts'
import { benchOf, errorToCome, TOOLS } from '#tests/support/fit-workshop.ts'

/* The posterior against brute force. `tests/bench/fit-particles.ts` wrote the file: 30,000 effective particles a case. */

type Reference = ReturnType<typeof byParticles>

const REFERENCE: Readonly<Record<string, Reference>> = JSON.parse(
  readFileSync(new URL('particles.json', import.meta.url), 'utf8'),
)
/** Of a standard deviation; and what so many particles leave open, three times. */
const MEAN_WITHIN = 0.02
const CHANCE_WITHIN = 0.01
const OPEN = 3

test.each(FIT_CASES)(
  '$name ($bearing): mean, spread and chances are those of particles',
  ({ name, bearing, readings, earlier }) => {
    const { subject, target } = benchOf(bearing)
    const answer = fitOf({ subject, target, readings, earlier, tools: TOOLS, errorToCome })
    const reference = REFERENCE[name]
    if (!answer.ok || reference === undefined) throw new Error(`${name}: no answer, or nothing to hold it against`)
    const noise = OPEN / Math.sqrt(reference.effective)
    const { figure, ballDiameter, learnt, probability } = answer.value
    const pairs = [
      [figure, reference.figure],
      [ballDiameter, reference.ballDiameter],
      [learnt.toolBias, reference.toolBias],
    ] as const
    for (const [{ value, standardUncertainty }, [mean, deviation]] of pairs) {
      expect(value).toBeWithin((MEAN_WITHIN + noise) * deviation, mean)
      expect(standardUncertainty).toBeWithin((2 * MEAN_WITHIN + noise) * deviation, deviation)
    }
    for (const chance of ['tooTight', 'inBand', 'tooDeep'] as const)
      expect(probability[chance]).toBeWithin(CHANCE_WITHIN + noise / 2, reference[chance])
  },
)

test('the file is what the particles say: one case drawn anew', () => {
  const { subject, target } = benchOf('full')
  const { mean, variance, skewness } = unevenLoss(subject.balls.count)
  const { readings, earlier } = FIT_CASES.find(({ name }) => name === 'go enters') ?? { readings: [], earlier: [] }
  const drawn = byParticles(
    { subject, target, readings, earlier, reduction: [mean, Math.sqrt(variance), skewness], seed: 5 },
    10_000,
    1_000_000,
  )
  const reference = REFERENCE['go enters']
  if (reference === undefined) throw new Error('the case must be in the file')
  expect(drawn.figure[0]).toBeWithin(0.06 * reference.figure[1], reference.figure[0])
  expect(drawn.tooDeep).toBeWithin(0.02, reference.tooDeep)
})
