import type { PartName } from '#shared/bearing/refusal.ts'
import { contactWood, type Substitute } from '#shared/data/contact-woods.ts'
import { SPECIES } from '#shared/data/species.ts'
import type { Uneven } from '#shared/questions/load/arrangements/uneven-plates.ts'
import { SOFTEST, type StandIn } from '#shared/questions/load/carrying-woods.ts'
import type { Limit } from '#shared/questions/load/limits.ts'
import type { LoadCheck, LoadSpeedReason } from '#shared/questions/load/load-check.ts'
import type { LoadRefusal } from '#shared/questions/load/refusal.ts'
import { BY_HAND, type SpeedLimit } from '#shared/questions/load/speeds.ts'
import type { LoadWarningFacts } from '#shared/questions/load/warning.ts'
import { type ForceUnits, inForceUnits, inKilograms } from '#shared/units/force.ts'
import { inUnits, type Mm, mm, type Units } from '#shared/units/length.ts'
import {
  capitalised,
  countFigure,
  figure,
  forceFigure,
  mostForce,
  mostSpeed,
  percent,
  roundedDown,
  speedFigure,
  torqueFigure,
} from './figure.ts'
import { PART_WORDS, refusalSentence } from './refusal.ts'
import { signNote, TRADE_SIGN } from './standing.ts'
import type { Terms } from './terms.ts'
import { nameInSentence } from './wood-name.ts'

/** The units and the terms of an answer. */
export interface Spoken {
  readonly units: Units
  readonly forceUnits: ForceUnits
  readonly terms: Terms
}

/** A load, and beside newtons the mass that weighs as much as the figure: on a bench nobody has a feeling for newtons. */
const loadFigure = (newtons: number, units: ForceUnits): string =>
  `${forceFigure(newtons, units)}${units === 'N' ? ` (${countFigure(inKilograms(Number(newtons.toPrecision(2))))} kg)` : ''}`

/** The same of a load that must not be passed: figure and mass are rounded down. */
const mostLoad = (newtons: number, units: ForceUnits): string =>
  `${mostForce(newtons, units)}${units === 'N' ? ` (${roundedDown(inKilograms(roundedDown(newtons)))} kg)` : ''}`

export const NO_WOODEN_BALLS = 'does not apply unless `design.balls.material` is "wood": remove it'
/** A fault of a request that its schema does not find. */
export const loadMissing = (name: string): string => `"${name}" is missing`

export function explainWarning(facts: LoadWarningFacts<LoadSpeedReason>, spoken: Spoken): string {
  const { units, forceUnits, terms } = spoken
  const size = (length: Mm): string => figure(length, units)
  const { element, raceway, part } = terms
  switch (facts.code) {
    case 'ball-sinks-in':
      return `Under ${forceFigure(facts.ballLoad, forceUnits)} a ${element.one} sinks into ${PART_WORDS[facts.part]} past its middle: the wood is crushed.`
    case 'dents-deeper':
      return `The most heavily loaded ${element.one} leaves a dent of ${size(facts.dent)} in ${PART_WORDS[facts.part]}, above the limit of ${size(facts.most)}: the bearing will run rough.`
    case 'above-working-load':
      return aboveWorkingLoad(facts, forceUnits)
    case 'edges-crush':
      return `In ${PART_WORDS[facts.part]} the balls ride on the edges of the groove and crush them by ${size(facts.dent)}, to flats ${size(facts.width)} wide: ${facts.part === 'plates' ? 'the plates come closer by twice that' : 'the play grows by that'}. Use a larger groove radius.`
    case 'contact-reaches-edges':
      return `Under this load the ball touches ${PART_WORDS[facts.part]} over the full width of the groove, ${size(facts.grooveWidth)}. The edges of the groove carry a large load and may chip.`
    case 'one-ball-carries':
      return `With a play of ${size(facts.play)} one ${element.one} carries ${percent(facts.share)} of the load, and all loads here count that. Less play shares it better, but keep what uneven ${element.many} and the seasons need.`
    case 'three-carry':
      return `These balls are uneven, so not all of them carry: at first three of the tallest do, and one of them carries up to ${forceFigure(facts.ballLoad, forceUnits)}, ${dentWords(facts.dent, units)}. Choose balls that differ less, or let the wood settle under a light load.`
    case 'balls-softer':
      return `The ${element.many} are of softer wood than the ${part.many}: flats form on the ${element.many} before dents form in the ${raceway.many}.`
    case 'faster-than-by-hand':
      return `This is faster than this bearing may be turned by hand. Keep to ${mostSpeed(facts.speed)}, and never drive it with a drill or a motor.`
    case 'too-fast':
      return `Too fast: from about ${speedFigure(facts.speed)} on, ${speedReason(facts.reason, spoken)}. Keep to ${mostSpeed(facts.byHand)}.`
    default:
      return facts satisfies never
  }
}

/** A load within all that the bearing may carry marks it in some uses alone, and above that in all. */
function aboveWorkingLoad(
  { load, part, still, slowHand, steadyCrank }: Extract<LoadWarningFacts, { code: 'above-working-load' }>,
  forceUnits: ForceUnits,
): string {
  const where = `in ${PART_WORDS[part]}`
  const marks =
    load > slowHand
      ? `Too much load: ${timesTheMost(load, slowHand, forceUnits)} the most that the bearing may carry. Do not load it so. In soft boards this load leaves marks ${where}.`
      : `Soft boards bear this load while you turn the bearing slowly, but ${markingUses(load, { still, steadyCrank }).join(' or ')} it leaves marks ${where}.`
  return `${marks} Keep to ${mostLoad(steadyCrank, forceUnits)} if a crank turns the bearing for hours, to ${mostLoad(still, forceUnits)} if it rests under its load for years, or to ${mostLoad(slowHand, forceUnits)} if you turn it slowly now and then.`
}

/** The consequence of a speed above the limit, within a sentence. */
function speedReason(reason: LoadSpeedReason, { forceUnits, terms }: Spoken): string {
  const { element, raceway, part, rubsOn } = terms
  switch (reason) {
    case 'balls-rub':
      return `the ${element.many} rub on ${rubsOn} faster than ${forceUnits === 'lbf' ? 'about 3 feet' : '1 metre'} a second, wear and grow warm`
    case 'runs-out':
      return 'the part that turns runs out by enough to shake its stand'
    case 'glass-at-risk':
      return 'glass balls meet hard enough to chip, and can shatter and fly'
    case 'balls-dent-groove':
      return `the ${element.many} press a dent as large as the limit into the ${part.one === 'plate' ? '' : 'outer '}${raceway.one} by their spin alone`
    case 'joint-opens':
      return `the ${element.many} wedge the halves of the split ring apart harder than small screws hold`
    case 'load-slides-off':
      return 'the load slides off the plate'
    case 'plate-pushed-aside':
      return 'the load pulls the upper plate aside until balls climb out of the groove'
    case 'plate-tips':
      return 'the load tips the upper plate over the balls on its side'
    case 'balls-climb-out':
      return 'the balls are pushed outward harder than this load holds them down, and climb over the edge of the groove'
    case 'ring-splits':
    case 'plate-splits':
      return `the tension round a ${part.one} is more than a tenth of the strength of clear wood across the grain; ${raceway.many} and glue lines weaken the ${part.one}`
    default:
      return reason satisfies never
  }
}

export const explainSpeedLimit = ({ reason, speed }: SpeedLimit<LoadSpeedReason>, spoken: Spoken): string =>
  `From about ${speedFigure(speed)} on, ${speedReason(reason, spoken)}: stay well below that.`

/** The warning of a speed above the limit. */
export const explainBeyond = ({ reason, speed }: SpeedLimit<LoadSpeedReason>, spoken: Spoken): string =>
  `Above the limit, not for use: from about ${speedFigure(speed)} on, ${speedReason(reason, spoken)}.`

/** A limit that is near enough to say no more than to keep to the speed of a hand. */
const isNear = ({ handTurned }: LoadCheck): boolean => handTurned < BY_HAND

/** Whether the load marks the wood however the bearing is used. */
const isTooMuch = ({ load, workingLoad: { loads } }: LoadCheck): boolean => load.newtons > loads.slowHand.load

export function explainHandTurned(check: LoadCheck, spoken: Spoken): string {
  const {
    handTurned,
    speedLimits: [{ reason, speed }],
  } = check
  const leave = isTooMuch(check) ? 'Under a load that it may carry, turn it' : 'Turn it'
  return isNear(check)
    ? `${leave} by hand, at most ${mostSpeed(handTurned)}: from about ${speedFigure(speed)} on, ${speedReason(reason, spoken)}.`
    : `${leave} by hand or with a crank, at most ${mostSpeed(handTurned)}.`
}

/** Nothing but a hand may drive it: a turntable that carries a pot, too. */
const NEVER_DRIVEN = 'Never drive it with a drill or a motor.'

/** The same, where the reason is not said yet. */
const explainDriven = ({ speedLimits: [{ reason, speed }] }: LoadCheck, spoken: Spoken): string =>
  `${NEVER_DRIVEN.slice(0, -1)}: from about ${speedFigure(speed)} on, ${speedReason(reason, spoken)}.`

/** Figures of the working load, within a sentence. */
const workingFigures = ({ workingLoad: { loads } }: LoadCheck, { forceUnits }: Spoken): string =>
  `${mostLoad(loads.still.load, forceUnits)} at rest for years, ${mostLoad(loads.slowHand.load, forceUnits)} turned slowly by hand now and then, or ${mostLoad(loads.steadyCrank.load, forceUnits)} turned by a crank for hours`

export function explainWorkingLoad(check: LoadCheck, spoken: Spoken): string {
  const { workingLoad, ruin } = check
  const { loads, gives, startingTorque, rumble } = workingLoad
  const { units, forceUnits } = spoken
  const torque = (of: number) => torqueFigure(of, forceUnits)
  return [
    `Load it with at most ${workingFigures(check, spoken)}. Up to these, no ${spoken.terms.element.one} leaves a mark of more than ${figure(loads.slowHand.depth, units)}, even in a board softer than nineteen in twenty.`,
    `At ${mostLoad(loads.slowHand.load, forceUnits)} the bearing gives by ${figure(gives, units)}, takes ${torque(startingTorque.min)} to ${torque(startingTorque.max)} to turn, and ${rumbleWords(rumble.height, units)} as the ${spoken.terms.element.many} pass.`,
    `${loadFigure(ruin.load, forceUnits)} would ruin it.`,
  ].join(' ')
}

/** Less than this nobody feels at the rim [mm]. Common practice, no source. */
const SMOOTH = 0.01

const rumbleWords = (height: Mm, units: Units): string =>
  height < SMOOTH ? 'runs level' : `rises and falls by ${figure(height, units)}`

export const explainFirstMark = ({ load, part, depth }: Limit<PartName>, { units, forceUnits }: Spoken): string =>
  `In average wood the first mark, of ${figure(depth, units)}, comes in ${PART_WORDS[part]} at about ${loadFigure(load, forceUnits)}.`

export const explainRuin = ({ load, part, depth }: Limit<PartName>, { units, forceUnits }: Spoken): string =>
  `At about ${loadFigure(load, forceUnits)} the dent in ${PART_WORDS[part]} reaches ${figure(depth, units)}: the bearing is ruined.`

export function explainFriction(check: LoadCheck, { units, forceUnits, terms }: Spoken): string {
  const { startingTorque, coasting, rubbingSpeed, ballsRub } = check.friction
  const { element, raceway, rubsOn } = terms
  const rings = !('turntable' in check)
  const torque = (of: number) => torqueFigure(of, forceUnits)
  const turns = `${countFigure(coasting.turns.min)} to ${countFigure(coasting.turns.max)} turns`
  const spun = rings ? 'The outer ring, spun alone' : 'A load like a disc as large as the plate, spun'
  return [
    `Under this load it takes ${torque(startingTorque.min)} to ${torque(startingTorque.max)} to turn it.`,
    `${spun} to ${mostSpeed(coasting.from)} and let go, runs on for ${turns}.`,
    `By hand, the ${element.many} rub on ${rubsOn} at up to ${countFigure(inUnits(mm(rubbingSpeed), units))} ${units} a second${ballsRub ? ', twice the speed of their own surface' : ''}: that and uneven ${element.many} make most of the noise.`,
    `Choose ${element.many} of one size, sand the ${raceway.many} smooth and rub a little dry wax in${rings ? ', and keep the play small' : ''}.`,
  ].join(' ')
}

export function explainSubstitute({ figure: of, from, standsFor }: Substitute): string {
  const wood = nameInSentence(contactWood(standsFor).name)
  return of === 'tension-across-grain'
    ? `No strength in tension across the grain is printed for ${wood}. That of ${groupName(from)}, the lowest of the table, stands for it.`
    : `No stiffness across the grain is printed for ${wood}. The middle of the ${groupName(from)} stands for it.`
}

const groupName = (from: Substitute['from']): string =>
  from === 'hardwood' || from === 'softwood' ? `${from}s` : nameInSentence(SPECIES[from].name)

/** The offset at which a load tips the plate at rest. */
export const explainTipping = (beyond: Mm, { units }: Spoken): string =>
  `Set down further than ${figure(beyond, units)} from the axis, the load tips the upper plate by itself.`

/** The effect of one of the tallest balls on the wood, within a sentence. */
function dentWords(dent: Mm | undefined, units: Units): string {
  if (dent === undefined) return 'which sinks it in past its middle'
  return dent === 0 ? 'which leaves no dent' : `which leaves a dent of ${figure(dent, units)} until others carry too`
}

export const explainUneven = ({ tallest, allCarryFrom }: Uneven, { units, forceUnits }: Spoken): string =>
  `The balls are uneven, so the upper plate does not touch all of them at first: three of the tallest carry it. Depending on where these lie, one of them carries up to ${forceFigure(tallest.ballLoad, forceUnits)} of this load, ${dentWords(tallest.dent, units)}. If the wood only sprang back, the smallest ball would carry from about ${forceFigure(allCarryFrom, forceUnits)} on.`

export function explainRefusal(refusal: LoadRefusal, units: Units, terms: Terms): string {
  return refusal.code === 'load-tips-plate'
    ? `A load ${figure(refusal.given, units)} from the axis can tip the upper plate over the line between two balls. Keep it within ${figure(refusal.below, units)}.`
    : refusalSentence(refusal, units, terms)
}

export interface CountedWoods {
  readonly isAssumed: boolean
  readonly standIns: readonly StandIn[]
}

/** That another wood was counted with. */
function standInSentence({ species, id }: StandIn): string {
  const [stated, counted] = [SPECIES[species].name, contactWood(id).name].map(nameInSentence)
  return id === SOFTEST
    ? `${capitalised(stated ?? '')} is counted as ${counted}, the softest wood of which all figures are known here: if it is softer still, it carries less.`
    : `${capitalised(stated ?? '')} is counted as ${counted}, the next softer wood of which all figures are known here.`
}

/**
 * The whole answer in a few sentences.
 *
 * @param woods whether the wood of the bearing is assumed because nobody stated one, and what stands for woods that were stated
 */
export function verdict(check: LoadCheck, spoken: Spoken, woods: CountedWoods): string {
  const { forceUnits, terms } = spoken
  const sunk = check.seats.filter(({ seat }) => seat.dent === undefined).slice(0, 1)
  const tooMuch = isTooMuch(check)
  return [
    ...(tooMuch ? [tooMuchLoad(check, spoken)] : []),
    judgement(check, spoken),
    `Load it with at most ${workingFigures(check, spoken)}.`,
    ...woods.standIns.map(standInSentence),
    ...(woods.isAssumed
      ? [
          `All of this is for ${nameInSentence(contactWood(check.load.wood).name)}, which is assumed because no wood was given.`,
        ]
      : []),
    ...sunk.map(
      ({ seat }) =>
        `A ${terms.element.one}, which carries ${forceFigure(seat.ballLoad, forceUnits)}, sinks in past its middle.`,
    ),
    ...(tooMuch ? [] : [explainHandTurned(check, spoken)]),
    tooMuch || isNear(check) ? NEVER_DRIVEN : explainDriven(check, spoken),
    'This is an estimate for light work, not a safety rating.',
  ].join(' ')
}

/** The first sentence of an answer whose load is above all that the bearing may carry. */
function tooMuchLoad({ load: { newtons }, workingLoad: { loads } }: LoadCheck, { forceUnits }: Spoken): string {
  const { load } = loads.slowHand
  return `Your load of ${loadFigure(newtons, forceUnits)} is too much, ${timesTheMost(newtons, load, forceUnits)} the ${mostLoad(load, forceUnits)} that the bearing may carry: do not load it so, and do not turn it under this load.`
}

/** Below this a ratio, to two digits, would be said as once. */
const TOLD_AS_MORE = 1.05

/** Of the most as it is shown, so that the product agrees. */
function timesTheMost(newtons: number, most: number, units: ForceUnits): string {
  const ratio = inForceUnits(newtons, units) / roundedDown(inForceUnits(most, units))
  return ratio < TOLD_AS_MORE ? 'more than' : `about ${countFigure(ratio)} times`
}

/** The uses in which a load marks a soft board that bears it while it is turned slowly. */
const markingUses = (newtons: number, most: { readonly still: number; readonly steadyCrank: number }) => [
  ...(newtons > most.still ? ['over years at rest'] : []),
  ...(newtons > most.steadyCrank ? ['under a crank'] : []),
]

/** The effect of the requested load on the wood. */
function judgement({ load, workingLoad: { loads }, ruin }: LoadCheck, { forceUnits }: Spoken): string {
  const { newtons } = load
  const wood = nameInSentence(contactWood(load.wood).name)
  const yours = `Your load of ${loadFigure(newtons, forceUnits)}`
  if (newtons >= ruin.load) return `${yours} ruins the bearing: it dents ${wood} too far.`
  if (newtons > loads.slowHand.load) return `${yours} can mark ${wood}.`
  const marking = markingUses(newtons, { still: loads.still.load, steadyCrank: loads.steadyCrank.load })
  if (marking.length === 0) return `${yours} leaves no mark in ${wood}.`
  return `${yours} leaves no mark in ${wood} while you turn the bearing slowly, but can mark a soft board ${marking.join(' or ')}.`
}

/** What no figure of a load counts: a ring that is held at one side bends as a whole. */
const HOLD_ALL_ROUND =
  ' Hold the outer ring all round, in a housing: hung from one side, it bends, and can split under a small part of these loads.'

export const estimateOnly = ({ part }: Terms) => ({
  code: 'estimate-only',
  message: `Loads and speeds here are estimates from figures of clear wood. They are not a safety rating, and do not include the strength of the ${part.many} as a whole, their screws or their glue.${part.one === 'ring' ? HOLD_ALL_ROUND : ''} Shocks, damp, knots and sloping grain greatly reduce what the wood carries.`,
})

/**
 * The words on the picture of the offsets that a turntable bears at each speed. The speed by hand is common practice.
 *
 * @param isFrictionStated by the caller: the default is common practice too
 */
export const safeOffsetWords = (
  check: Extract<LoadCheck, { turntable: unknown }>,
  spoken: Spoken,
  isFrictionStated: boolean,
) => {
  const { load, tipsBeyond, handTurned } = check
  const { units, forceUnits } = spoken
  const weight = forceFigure(load.axialLoad, forceUnits)
  const stands = load.load.turnsWithPlate ? 'turning with the plate' : 'held still'
  const byHand = `by hand, at most ${mostSpeed(handTurned)} ${TRADE_SIGN}`
  const loaded = `Load ${weight}, ${stands}, its centre ${figure(load.load.height, units)} above the balls, friction ${countFigure(load.friction)}${isFrictionStated ? '' : ` ${TRADE_SIGN}`}.`
  return {
    title: 'Safe offset of the load against speed',
    description: `How far from the axis a load of ${weight} may stand on the turntable at each speed, ${stands}, its centre ${figure(load.load.height, units)} above the balls. The further out, the slower.`,
    across: 'turns a minute',
    up: `distance from the axis, ${units}`,
    safe: 'safe',
    unsafe: 'slides, tips or climbs out',
    byHand,
    foot: [
      loaded,
      `${explainTipping(tipsBeyond, spoken)} An estimate, not a safety rating.`,
      ...signNote([byHand, loaded]),
    ],
  }
}
