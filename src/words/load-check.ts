import type { PartName } from '#shared/bearing/refusal.ts'
import { type ContactWoodId, contactWood } from '#shared/data/contact-woods.ts'
import type { AnyLoadCheck } from '#shared/questions/load/any-load-check.ts'
import type { Uneven } from '#shared/questions/load/checked-plate-load.ts'
import type { DentLimit, Limit } from '#shared/questions/load/limits.ts'
import type { LoadCheck } from '#shared/questions/load/load-check.ts'
import type { PlateLoadCheck } from '#shared/questions/load/plate-load-check.ts'
import type { LoadRefusal } from '#shared/questions/load/refusal.ts'
import type { SpeedLimit } from '#shared/questions/load/speed-limits.ts'
import type { LoadSpeedReason, LoadWarningFacts } from '#shared/questions/load/warning.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { type ForceUnits, forceFigure, speedFigure } from '#src/api/force.ts'
import { figure, percent } from './figure.ts'
import { PART_WORDS, refusalSentence } from './refusal.ts'
import type { Terms } from './terms.ts'

/** In what a caller wants to read. */
export interface Spoken {
  readonly units: Units
  readonly forceUnits: ForceUnits
}

export function explainWarning(facts: LoadWarningFacts, { units, forceUnits }: Spoken): string {
  const size = (length: Mm): string => figure(length, units)
  switch (facts.code) {
    case 'ball-sinks-in':
      return `under ${forceFigure(facts.ballLoad, forceUnits)} a ball sinks into ${PART_WORDS[facts.part]} past its middle: the wood is crushed`
    case 'dents-deeper':
      return `the most loaded ball leaves a dent of ${size(facts.dent)} in ${PART_WORDS[facts.part]}, deeper than ${size(facts.most)}: it will run rough`
    case 'first-marked':
      return `from ${forceFigure(facts.load, forceUnits)} on, standing still begins to mark ${PART_WORDS[facts.part]}: unload it, or turn it now and then`
    case 'edges-crush':
      return `in ${PART_WORDS[facts.part]} the balls ride on the groove's edges and crush them by ${size(facts.dent)}, to flats ${size(facts.width)} wide: the play grows by that; take a rounder groove`
    case 'contact-reaches-edges':
      return `under this load the ball touches ${PART_WORDS[facts.part]} over the whole ${size(facts.grooveWidth)} of its groove: its edges bear hard and may chip`
    case 'one-ball-carries':
      return `with a play of ${size(facts.play)} one ball carries ${percent(facts.share)} of the load: a smaller play shares it better`
    case 'three-carry':
      return `not all of these uneven balls carry: at first three of the tallest do, one of them with up to ${forceFigure(facts.ballLoad, forceUnits)}, ${dentWords(facts.dent, units)}; choose balls that differ less, or let it settle under a light load`
    case 'balls-softer':
      return 'the balls are of softer wood than the rings: they get flats before the grooves get dents'
    case 'spun-beside-axis':
      return `with a load ${size(facts.offset)} from the axis this turntable must not be spun: it pulls the upper plate aside and can leave balls loose; put the load over the middle`
    case 'too-fast':
      return `${speedFigure(facts.speed)} should not be passed: ${SPEED_WORDS[facts.reason]}`
    default:
      return facts satisfies never
  }
}

const SPEED_WORDS: Readonly<Record<LoadSpeedReason, string>> = {
  'balls-dent-groove': 'there the balls press the dent asked about into the outer groove by their spin alone',
  'balls-climb-out':
    'there the balls climb over the edge of the groove, pushed outward harder than this load holds them down',
  'ring-splits':
    'there the pull round a ring comes to a tenth of what clear wood bears across the grain; grooves and glue lines weaken it',
  'plate-splits':
    'there the pull round a plate comes to a tenth of what clear wood bears across the grain; grooves and glue lines weaken it',
}

export const explainSpeedLimit = ({ reason, speed }: SpeedLimit<LoadSpeedReason>): string =>
  `Not above ${speedFigure(speed)}: ${SPEED_WORDS[reason]}.`

export function explainFirstMark({ load, part }: Limit<PartName>, { forceUnits }: Spoken): string {
  return load > 0
    ? `From about ${forceFigure(load, forceUnits)} on, the wood of ${PART_WORDS[part]} begins to give for good under the most loaded ball.`
    : `The balls ride on the edges of ${PART_WORDS[part]}'s groove, which give under any load.`
}

export const explainDent = ({ load, part, depth }: DentLimit<PartName>, { units, forceUnits }: Spoken): string =>
  `At about ${forceFigure(load, forceUnits)} the dent in ${PART_WORDS[part]} reaches ${figure(depth, units)}.`

/** What one of the tallest balls does to the wood, within a sentence. */
function dentWords(dent: Mm | undefined, units: Units): string {
  if (dent === undefined) return 'which sinks it in past its middle'
  return dent === 0 ? 'which leaves no dent' : `which leaves a dent of ${figure(dent, units)} until others carry too`
}

export const explainUneven = ({ tallest, allCarryFrom }: Uneven, { units, forceUnits }: Spoken): string =>
  `Uneven balls are not all touched at first: three of the tallest carry the upper plate, one of them up to ${forceFigure(tallest.ballLoad, forceUnits)} of this load, as they happen to stand, ${dentWords(tallest.dent, units)}. If the wood only sprang back, the smallest would carry from about ${forceFigure(allCarryFrom, forceUnits)} on.`

/** A limit in words, and where one of three uneven balls can reach it already. */
export const withTallest = (message: string, from: number | undefined, { forceUnits }: Spoken): string =>
  from === undefined || from === 0
    ? message
    : `${message} Where three of uneven balls carry alone it can be ${forceFigure(from, forceUnits)}.`

export function explainRefusal(refusal: LoadRefusal, units: Units, terms: Terms): string {
  return refusal.code === 'load-tips-plate'
    ? `a load ${figure(refusal.given, units)} from the axis can tip the upper plate over the line between two balls: keep it within ${figure(refusal.below, units)}`
    : refusalSentence(refusal, units, terms)
}

/** What a verdict says of a load: how large, what its most loaded ball carries, and the deepest dent and where. */
interface Judged {
  readonly load: number
  readonly most: number
  readonly part: PartName
  readonly dent: Mm | undefined
  /** Where they do not all carry. */
  readonly uneven?: Uneven
}

const judged = (check: AnyLoadCheck): Judged => ('plates' in check ? judgedOnPlates(check) : judgedInRings(check))

function judgedInRings({ load, sharing, innerRing, outerRing }: LoadCheck): Judged {
  const part = (innerRing.dent ?? Number.POSITIVE_INFINITY) >= (outerRing.dent ?? 0) ? 'innerRing' : 'outerRing'
  const most = Math.max(sharing.underBall.most, sharing.astride.most)
  return { load: load.radialLoad, most, part, dent: (part === 'innerRing' ? innerRing : outerRing).dent }
}

const judgedOnPlates = ({ load, sharing, plates, uneven }: PlateLoadCheck): Judged => ({
  load: load.axialLoad,
  most: sharing.most,
  part: 'plates',
  dent: plates.dent,
  ...(uneven !== undefined && load.axialLoad < uneven.allCarryFrom ? { uneven } : {}),
})

/** Instead of a speed limit. */
const BESIDE_THE_AXIS =
  'With its load beside the axis this turntable must not be spun: turn it slowly by hand, or put the load over the middle.'

/** The whole in a few sentences. */
export function verdict(check: AnyLoadCheck, spoken: Spoken): string {
  const { load, most, part, dent, uneven } = judged(check)
  const [lowest] = check.speedLimits
  return [
    `Of ${forceFigure(load, spoken.forceUnits)} the most loaded ball carries ${forceFigure(most, spoken.forceUnits)}${uneven === undefined ? '' : ' where all are alike'}. `,
    dentSentence(dent, PART_WORDS[part], check.load.wood, spoken),
    ...(uneven === undefined ? [] : [`${explainUneven(uneven, spoken)} `]),
    lowest === undefined ? BESIDE_THE_AXIS : explainSpeedLimit(lowest),
    ' All this is an estimate for light work and no safe working load.',
  ].join('')
}

function dentSentence(dent: Mm | undefined, where: string, woodId: ContactWoodId, spoken: Spoken): string {
  const wood = spokenName(contactWood(woodId).name)
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
