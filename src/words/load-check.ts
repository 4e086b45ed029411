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
import type { ForceUnits } from '#shared/units/force.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { figure, forceFigure, percent, speedFigure } from './figure.ts'
import { PART_WORDS, refusalSentence } from './refusal.ts'
import type { Terms } from './terms.ts'

/** The units and the terms of an answer. */
export interface Spoken {
  readonly units: Units
  readonly forceUnits: ForceUnits
  readonly terms: Terms
}

/** A fault of a request that its schema does not find. */
export const loadMissing = (name: string): string => `"${name}" is missing`

export function explainWarning(facts: LoadWarningFacts, spoken: Spoken): string {
  const { units, forceUnits, terms } = spoken
  const size = (length: Mm): string => figure(length, units)
  const { element, raceway, part } = terms
  switch (facts.code) {
    case 'ball-sinks-in':
      return `Under ${forceFigure(facts.ballLoad, forceUnits)} a ${element.one} sinks into ${PART_WORDS[facts.part]} past its middle: the wood is crushed.`
    case 'dents-deeper':
      return `The most heavily loaded ${element.one} leaves a dent of ${size(facts.dent)} in ${PART_WORDS[facts.part]}, above the limit of ${size(facts.most)}: the bearing will run rough.`
    case 'first-marked':
      return `A load of ${forceFigure(facts.load, forceUnits)} or more begins to mark ${PART_WORDS[facts.part]} while the bearing does not turn. Remove the load, or turn the bearing now and then.`
    case 'edges-crush':
      return `In ${PART_WORDS[facts.part]} the balls ride on the edges of the groove and crush them by ${size(facts.dent)}, to flats ${size(facts.width)} wide: ${facts.part === 'plates' ? 'the plates come closer by twice that' : 'the play grows by that'}. Use a larger groove radius.`
    case 'contact-reaches-edges':
      return `Under this load the ball touches ${PART_WORDS[facts.part]} over the full width of the groove, ${size(facts.grooveWidth)}. The edges of the groove carry a large load and may chip.`
    case 'one-ball-carries':
      return `With a play of ${size(facts.play)} one ${element.one} carries ${percent(facts.share)} of the load. Reduce the play to share the load better.`
    case 'three-carry':
      return `These balls are uneven, so not all of them carry: at first three of the tallest do, and one of them carries up to ${forceFigure(facts.ballLoad, forceUnits)}, ${dentWords(facts.dent, units)}. Choose balls that differ less, or let the wood settle under a light load.`
    case 'balls-softer':
      return `The ${element.many} are of softer wood than the ${part.many}: flats form on the ${element.many} before dents form in the ${raceway.many}.`
    case 'spun-beside-axis':
      return `Do not spin this turntable with a load ${size(facts.offset)} from the axis: the load pulls the upper plate aside and can leave balls loose. Put the load over the middle.`
    case 'too-fast':
      return explainSpeedLimit(facts, spoken)
    default:
      return facts satisfies never
  }
}

/** What happens above a speed limit, within a sentence. */
function speedReason(reason: LoadSpeedReason, { element, raceway, part }: Terms): string {
  switch (reason) {
    case 'balls-dent-groove':
      return `above that, the ${element.many} press a dent as large as the limit into the ${part.one === 'plate' ? '' : 'outer '}${raceway.one} by their spin alone`
    case 'balls-climb-out':
      return 'above that, the balls are pushed outward harder than this load holds them down, and climb over the edge of the groove'
    case 'ring-splits':
    case 'plate-splits':
      return `above that, the tension round a ${part.one} is more than a tenth of the strength of clear wood across the grain; ${raceway.many} and glue lines weaken the ${part.one}`
    default:
      return reason satisfies never
  }
}

export const explainSpeedLimit = ({ reason, speed }: SpeedLimit<LoadSpeedReason>, { terms }: Spoken): string =>
  `Do not exceed ${speedFigure(speed)}: ${speedReason(reason, terms)}.`

export function explainFirstMark({ load, part }: Limit<PartName>, { forceUnits, terms }: Spoken): string {
  return load > 0
    ? `From about ${forceFigure(load, forceUnits)} on, the wood of ${PART_WORDS[part]} begins to give permanently under the most heavily loaded ${terms.element.one}.`
    : `In ${PART_WORDS[part]} the balls ride on the edges of the groove, which give under any load.`
}

export const explainDent = ({ load, part, depth }: DentLimit<PartName>, { units, forceUnits }: Spoken): string =>
  `At about ${forceFigure(load, forceUnits)} the dent in ${PART_WORDS[part]} reaches ${figure(depth, units)}.`

/** What one of the tallest balls does to the wood, within a sentence. */
function dentWords(dent: Mm | undefined, units: Units): string {
  if (dent === undefined) return 'which sinks it in past its middle'
  return dent === 0 ? 'which leaves no dent' : `which leaves a dent of ${figure(dent, units)} until others carry too`
}

export const explainUneven = ({ tallest, allCarryFrom }: Uneven, { units, forceUnits }: Spoken): string =>
  `The balls are uneven, so the upper plate does not touch all of them at first: three of the tallest carry it. Depending on where these lie, one of them carries up to ${forceFigure(tallest.ballLoad, forceUnits)} of this load, ${dentWords(tallest.dent, units)}. If the wood only sprang back, the smallest ball would carry from about ${forceFigure(allCarryFrom, forceUnits)} on.`

/** A limit in a sentence, and where one of three uneven balls can reach it already. */
export const withTallest = (message: string, from: number | undefined, { forceUnits }: Spoken): string =>
  from === undefined || from === 0
    ? message
    : `${message} While only three uneven balls carry, this can happen at ${forceFigure(from, forceUnits)}.`

export function explainRefusal(refusal: LoadRefusal, units: Units, terms: Terms): string {
  return refusal.code === 'load-tips-plate'
    ? `A load ${figure(refusal.given, units)} from the axis can tip the upper plate over the line between two balls. Keep it within ${figure(refusal.below, units)}.`
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
  'Do not spin this turntable with its load beside the axis: turn it slowly by hand, or put the load over the middle.'

/** The whole answer in a few sentences. */
export function verdict(check: AnyLoadCheck, spoken: Spoken): string {
  const { load, most, part, dent, uneven } = judged(check)
  const { forceUnits, terms } = spoken
  const [lowest] = check.speedLimits
  return [
    `The most heavily loaded ${terms.element.one} carries ${forceFigure(most, forceUnits)} of the ${forceFigure(load, forceUnits)}${uneven === undefined ? '' : ' if all balls are alike'}. `,
    dentSentence(dent, PART_WORDS[part], check.load.wood, spoken),
    ...(uneven === undefined ? [] : [`${explainUneven(uneven, spoken)} `]),
    lowest === undefined ? BESIDE_THE_AXIS : explainSpeedLimit(lowest, spoken),
    ' This is an estimate for light work, not a safe working load.',
  ].join('')
}

function dentSentence(dent: Mm | undefined, where: string, woodId: ContactWoodId, { units, terms }: Spoken): string {
  const wood = nameInSentence(contactWood(woodId).name)
  if (dent === undefined) return `The ${terms.element.one} sinks into ${where} past its middle. `
  if (dent === 0) return `It leaves no dent in ${wood}. `
  return `In ${wood} it leaves a dent of ${figure(dent, units)} in ${where}. `
}

/** `Maple, sugar`, as tables have it, is sugar maple in a sentence. */
function nameInSentence(name: string): string {
  const [kind = name, ...which] = name.split(', ')
  return [...which, kind.toLowerCase()].join(' ')
}

export const estimateOnly = ({ part }: Terms) => ({
  code: 'estimate-only',
  message: `Loads and speeds here are estimates from averages of clear wood at rest. They are not a safe working load, and do not include the strength of the ${part.many}, their screws or their glue. Shocks, time under load, damp, knots and sloping grain greatly reduce what the wood carries.`,
})
