import type { SpeedLimit } from '#shared/bearing/load-check/checked-load.ts'
import type { Limit } from '#shared/bearing/load-check/limits.ts'
import type { LoadCheck } from '#shared/bearing/load-check/load-check.ts'
import type { LoadWarningFacts } from '#shared/bearing/load-check/warning.ts'
import { contactWood } from '#shared/data/contact-woods.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { figure, percent } from '#src/wire/figure.ts'
import { type ForceUnits, forceFigure, speedFigure } from '#src/wire/force.ts'
import { RING_WORDS } from '#src/wire/refusal-sentence.ts'

/** In what a caller wants to read. */
export interface Spoken {
  readonly units: Units
  readonly forceUnits: ForceUnits
}

export function explainWarning(facts: LoadWarningFacts, { units, forceUnits }: Spoken): string {
  const size = (length: Mm): string => figure(length, units)
  switch (facts.code) {
    case 'ball-sinks-in':
      return `under ${forceFigure(facts.ballLoad, forceUnits)} a ball sinks into the ${RING_WORDS[facts.ring]} ring past its middle: the wood is crushed`
    case 'dents-deeper':
      return `the most loaded ball leaves a dent of ${size(facts.dent)} in the ${RING_WORDS[facts.ring]} ring, deeper than ${size(facts.most)}: it will run rough`
    case 'first-marked':
      return `from ${forceFigure(facts.radialLoad, forceUnits)} on, standing still begins to mark the ${RING_WORDS[facts.ring]} ring: unload it, or turn it now and then`
    case 'edges-crush':
      return `in the ${RING_WORDS[facts.ring]} ring the balls ride on the groove's edges and crush them by ${size(facts.dent)}, to flats ${size(facts.width)} wide: the play grows by that; take a rounder groove`
    case 'contact-reaches-edges':
      return `under this load the ball touches the ${RING_WORDS[facts.ring]} ring over the whole ${size(facts.grooveWidth)} of its groove: its edges bear hard and may chip`
    case 'one-ball-carries':
      return `with a play of ${size(facts.play)} one ball carries ${percent(facts.share)} of the load: a smaller play shares it better`
    case 'balls-softer':
      return 'the balls are of softer wood than the rings: they get flats before the grooves get dents'
    case 'too-fast':
      return `${speedFigure(facts.speed)} should not be passed: ${SPEED_WORDS[facts.reason]}`
    default:
      return facts satisfies never
  }
}

const SPEED_WORDS: Readonly<Record<SpeedLimit['reason'], string>> = {
  'turning-rule':
    'a rule of wood turners, diameter in inches times turns a minute no more than 6000 (the lower end; up to 9000 is turned)',
  'balls-dent-groove': 'there the balls press the dent asked about into the outer groove by their spin alone',
  'ring-splits':
    'there the pull round a ring comes to a tenth of what clear wood bears across the grain; grooves and glue lines weaken it',
}

export const explainSpeedLimit = ({ reason, speed }: SpeedLimit): string =>
  `Not above ${speedFigure(speed)}: ${SPEED_WORDS[reason]}.`

export function explainFirstMark({ radialLoad, ring }: Limit, { forceUnits }: Spoken): string {
  return radialLoad > 0
    ? `From about ${forceFigure(radialLoad, forceUnits)} on, the wood of the ${RING_WORDS[ring]} ring begins to give for good under the most loaded ball.`
    : `The balls ride on the edges of the ${RING_WORDS[ring]} ring's groove, which give under any load.`
}

export const explainDent = ({ dent }: LoadCheck, { units, forceUnits }: Spoken): string =>
  `At about ${forceFigure(dent.radialLoad, forceUnits)} the dent in the ${RING_WORDS[dent.ring]} ring reaches ${figure(dent.depth, units)}.`

/** The whole in a few sentences. */
export function verdict(check: LoadCheck, spoken: Spoken): string {
  const { load, sharing, speedLimits } = check
  const most = Math.max(sharing.underBall.most, sharing.astride.most)
  const ring =
    (check.innerRing.dent ?? Number.POSITIVE_INFINITY) >= (check.outerRing.dent ?? 0) ? 'innerRing' : 'outerRing'
  return [
    `Of ${forceFigure(load.radialLoad, spoken.forceUnits)} the most loaded ball carries ${forceFigure(most, spoken.forceUnits)}. `,
    dentSentence(check[ring].dent, ring, check, spoken),
    explainSpeedLimit(speedLimits[0]),
    ' All this is an estimate for light work and no safe working load.',
  ].join('')
}

function dentSentence(dent: Mm | undefined, ring: 'outerRing' | 'innerRing', check: LoadCheck, spoken: Spoken): string {
  const where = `the ${RING_WORDS[ring]} ring`
  const wood = spokenName(contactWood(check.load.wood).name)
  if (dent === undefined) return `It sinks into ${where} past its middle. `
  if (dent === 0) return `In ${wood} that leaves no dent. `
  return `In ${wood} that leaves a dent of ${figure(dent, spoken.units)} in ${where}. `
}

/** `Maple, sugar`, as tables have it, is sugar maple in a sentence. */
function spokenName(name: string): string {
  const [kind = name, ...which] = name.split(', ')
  return [...which, kind.toLowerCase()].join(' ')
}

export const ESTIMATE = {
  code: 'estimate-only',
  message:
    'Loads and speeds here are estimates from averages of clear wood at rest: no safe working load, and no strength of the ring, its screws or its glue. Shocks, time under load, damp, knots and grain run out take a large part of it away.',
}
