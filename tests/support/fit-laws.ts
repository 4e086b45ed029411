import type { Fit, FitQuestion } from '#shared/questions/fit/fit.ts'
import { lastBallWord } from '#shared/questions/fit/reading.ts'
import { type Bench, CALIPER } from './fit-workshop.ts'

/* What no answer may ever do, whatever was read: the laws of `design.md`, each broken one as a sentence. */

const CONFIDENCE = 0.95
const ROUNDING = 1e-9

export function brokenLaws(
  { subject, target, readings, earlier }: FitQuestion,
  bench: Bench,
  fit: Fit,
): readonly string[] {
  const broken: string[] = []
  const law = (holds: boolean, what: string): void => {
    if (!holds) broken.push(what)
  }
  const all = [...earlier.flatMap((state) => state.readings), ...readings]
  const touching = all.filter(({ kind }) => kind !== 'ball-row')
  const word = lastBallWord(readings)
  const { tooTight, inBand, tooDeep } = fit.probability
  const isTooDeep = fit.state === 'too-deep' || (fit.action === 'stop' && fit.reason === 'too-deep')
  const isInBand = fit.state === 'in-band' || (fit.action === 'stop' && fit.reason === 'in-band')

  if (fit.action === 'cut') {
    law(fit.nextStep.overshootProbability <= target.overshootRisk + ROUNDING, '1: a cut beyond the accepted risk')
    law(fit.nextStep.radial > 0, '1: a cut of nothing')
    law(fit.nextStep.radial <= fit.remaining + ROUNDING, '1: a cut past the aim')
    law(
      readings.some(({ kind }) => !['last-ball-refused', 'last-ball-in', 'ball-row'].includes(kind)),
      '4: a blind cut',
    )
    const ofInner = ['radial-play', 'groove-bottom-diameter', 'groove-depth']
    law(
      subject.cuts === 'outer' || all.some(({ kind }) => ofInner.includes(kind)),
      '4: an inner ring cut by what its outer ring says',
    )
    law(fit.disagreements.length === 0, '4: a cut by readings that do not fit')
    const { isSizeKnown } = fit.nextStep
    const isMeasured = readings.some(({ kind }) => kind === 'groove-bottom-diameter')
    law(isSizeKnown || !isMeasured, '7: read with a caliper, and no size to stop at')
    law(!isSizeKnown || fit.grooveRadius.standardUncertainty < CALIPER.standardUncertainty, '7: a guess to stop at')
  }
  law(!isTooDeep || tooDeep >= CONFIDENCE, '2: too deep without confidence')
  law(!isTooDeep || touching.length > 0, '2: too deep by readings that do not touch the groove')
  const isGoAlone = touching.every(
    (reading) =>
      reading.kind === 'plug' && reading.result === 'enters' && reading.diameter <= bench.goDiameter + ROUNDING,
  )
  law(!(isTooDeep && isGoAlone && subject.cuts === 'outer'), '2: too deep by a go plug that enters')
  law(!isInBand || inBand >= CONFIDENCE, '3: in band without confidence')
  law(!(isInBand && subject.cuts === 'outer' && word === 'out'), '3: in band against the word on the last ball')
  law(!(isInBand && readings.at(-1)?.kind === 'binds'), '3: in band though it binds')
  if (fit.action === 'measure') {
    const { kind, ballsLeftOut, uncertaintyNow, uncertaintyAfter } = fit.nextReading
    law(!(kind === 'ball-gap' && word === 'out'), '5: a gap where the last ball stays out')
    law(!(kind === 'last-ball-opening' && word === 'in'), '5: an opening where the last ball is in')
    law(subject.balls.count - (ballsLeftOut ?? 0) >= 3, '5: an opening between two balls')
    const lastTry = readings.findLast((reading) => reading.kind === 'binds' || reading.kind === 'radial-play')
    law(!(kind === 'radial-play' && lastTry?.kind === 'binds'), '5: play where it binds')
    law(uncertaintyAfter < uncertaintyNow, '5: a reading that teaches nothing')
    law(touching.length === 0 || all.length < 12, '5: more than 12 checks')
  }
  if (touching.length === 0) {
    law(fit.state === 'unread' && fit.action === 'measure', '6: an answer from an unread groove')
  }
  law(Math.abs(tooTight + inBand + tooDeep - 1) < 1e-6, 'chances that do not add up to 1')
  law(
    [tooTight, inBand, tooDeep, fit.overshootProbability].every((chance) => chance >= 0 && chance <= 1),
    'a chance that is none',
  )
  for (const each of [fit.figure, fit.pitchRadius, fit.ballDiameter, fit.grooveRadius]) {
    const { value, standardUncertainty: deviation, interval95 } = each
    law(
      [value, deviation, interval95.min, interval95.max].every(Number.isFinite) && interval95.min <= interval95.max,
      'an estimate that is no number',
    )
  }
  law(Number.isFinite(fit.remaining) && Number.isFinite(fit.expectedChecks), 'a figure that is no number')
  return broken
}
