import type { FitCorrection } from '#shared/bearing/fit-correction/fit-correction.ts'
import type { FittedPart, Reading, ReadingKind, ToolName } from '#shared/bearing/fit-correction/input.ts'
import type { MatingFaceAdjustment } from '#shared/bearing/fit-correction/mating-faces.ts'
import type { FitState } from '#shared/bearing/fit-correction/names.ts'
import type { FitRefusal } from '#shared/bearing/fit-correction/refusal.ts'
import type { Rescue } from '#shared/bearing/fit-correction/rescue.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { figure, percent } from './figure.ts'

/** What is on the lathe, within a sentence. */
export const PARTS: Readonly<Record<FittedPart, string>> = {
  outer: 'the outer ring',
  inner: 'the inner ring',
  plate: 'a plate',
}

const FIGURE: Readonly<Record<FittedPart, string>> = { outer: 'ball gap', inner: 'play', plate: 'ball gap' }

const READINGS: Readonly<Record<ReadingKind, string>> = {
  'ball-gap': 'the ball gap',
  'last-ball-opening': 'the opening for the last ball',
  'last-ball-refused': 'a last ball that will not go in',
  plug: 'the plug',
  'groove-bottom-diameter': 'the diameter across the groove bottoms',
  'groove-depth': 'the groove depth',
  'ball-row': 'the row of balls',
  'radial-play': 'the play from side to side',
  binds: 'a ring that binds',
}

const TOOLS: Readonly<Record<ToolName, string>> = {
  'sharp-tool': 'a sharp tool',
  abrasive: 'abrasive of 80 grit or so',
}

export function explainFitRefusal(refusal: FitRefusal, units: Units): string {
  const size = (length: Mm): string => figure(length, units)
  switch (refusal.code) {
    case 'reading-impossible':
      return `${READINGS[refusal.kind]} cannot be ${size(refusal.given)}: whatever the groove, this bearing would give from ${size(refusal.least)} to ${size(refusal.most)}`
    case 'reading-of-other-ring':
      return `${READINGS[refusal.kind]} is not read at ${PARTS[refusal.ring]}`
    case 'balls-too-uneven':
      return `balls that differ by ${size(refusal.given)} are not of one size: up to ${size(refusal.most)} can be reckoned with`
    case 'no-gap-in-cage':
      return 'a cage holds the balls apart, so that no gap tells how deep the outer groove is: cut it to its bottom diameter or to the plug, and correct the inner ring'
    case 'readings-contradict':
      return 'no groove at all gives these readings together: check them, and the balls, the land and the design they belong to'
    case 'target-band-empty':
      return `the smallest ${size(refusal.min)} must be below the largest ${size(refusal.max)}`
    case 'target-out-of-reach':
      return `no depth of this groove gives from ${size(refusal.min)} to ${size(refusal.max)}: its cutter is too small for the ball, or the design too tight`
    case 'aim-outside-band':
      return `the aim of ${size(refusal.aim)} lies outside of ${size(refusal.min)} to ${size(refusal.max)}`
    default:
      return refusal satisfies never
  }
}

/** What to do now, in one or two sentences. */
export function advice(fit: FitCorrection): string {
  const { state, nextStep, input, probability, target } = fit
  const { units } = input.design
  const what = FIGURE[input.ring]
  if (state === 'in-band')
    return `Stop: the ${what} is in band (${percent(probability.inBand)} certain), and another cut could only lose it.${target.finishAllowance > 0 ? RAISED_GRAIN : ''}`
  if (state === 'too-deep')
    return `Stop cutting: the groove is too deep (${percent(probability.tooDeep)} certain). ${tooDeepAdvice(fit)}`
  if (nextStep === undefined && fit.stop) return undecided(fit)
  if (nextStep === undefined)
    return `Do not cut yet: no cut is worth its risk of ${percent(target.overshootRisk)} with what is known. Read again, best as said under bestNextReading: with a chance of ${percent(fit.decidedByReading ?? 0)} that makes clear what to do.`
  const strokes = nextStep.strokes === undefined ? '' : `, ${nextStep.strokes} strokes`
  return `Take off ${figure(nextStep.radial, units)} of depth with ${TOOLS[nextStep.tool]}${strokes}, then read again: that it ends too deep has a chance of ${percent(nextStep.overshootProbability)}.`
}

/** No cut, no verdict, and no reading that would bring one. */
function undecided({ input, probability, target }: FitCorrection): string {
  const what = FIGURE[input.ring]
  const { tooTight, inBand, tooDeep } = probability
  if (tooTight > inBand)
    return `Stop here: the ${what} is still too small (${percent(tooTight)} certain), but no cut with these tools keeps to a risk of ${percent(target.overshootRisk)}, and reading again would hardly change that. Take a finer tool, accept more risk, or leave it.`
  return `Stop here, and take the groove as it is: the ${what} is in band (${percent(inBand)} likely) or beyond it (${percent(tooDeep)}), so there is nothing left to cut, and reading again would hardly tell which.`
}

/** Common practice, no source. */
const RAISED_GRAIN = ' What the finish raises of the grain is taken off again with 220 grit.'

function tooDeepAdvice({ input, adjustment }: FitCorrection): string {
  if (input.ring !== 'inner') return 'See rescue for the ways out, from least to most work.'
  return adjustment?.isWorthIt === true
    ? 'See adjustment: the mating faces bring it back.'
    : 'A new inner ring is less work than to save this one.'
}

/** What to do at the mating faces, and when rather something else. */
export function explainAdjustment({ change, isWorthIt }: MatingFaceAdjustment, state: FitState, units: Units): string {
  const instead = isWorthIt
    ? ''
    : ` So much is not worth it: ${state === 'too-deep' ? 'make a new inner ring' : 'cut the groove'}.`
  return change >= 0
    ? `Sanding ${figure(change, units)} off the mating faces in all brings the flanks together and the play to the aim: tighter.${instead}`
    : `A shim of ${figure(mm(-change), units)} between the mating faces lets the balls down and the play up to the aim: looser.${instead}`
}

/** Why a reading may stand apart from the others. */
function likelyCauses(kind: ReadingKind): string {
  switch (kind) {
    case 'ball-gap':
    case 'last-ball-opening':
      return 'a ball that does not sit on the bottom, balls not pushed together all round, or a rule read from its wrong edge'
    case 'groove-bottom-diameter':
    case 'groove-depth':
      return 'a groove that is out of round, a caliper that rode on the flank, or a depth read from the wrong land'
    case 'ball-row':
      return 'a row that was not straight or not touching, or other balls than those in the ring'
    case 'plug':
      return 'a plug that stood askew, one ball that stands in, or a plug of another size than its label'
    case 'last-ball-refused':
      return 'a ball that does not sit on the bottom, or dust in the groove'
    case 'radial-play':
    case 'binds':
      return 'a ring out of round, halves not closed, or dust in a groove'
    default:
      return kind satisfies never
  }
}

export const disagreeing = (kind: ReadingKind): string =>
  `${READINGS[kind]} does not fit the other readings; likely causes: ${likelyCauses(kind)}`

export function nextReading(reading: Reading, ring: FittedPart): string {
  const how = reading.kind === 'ball-row' ? ` of ${reading.count} in a straight channel` : ''
  return `Of all readings, ${READINGS[reading.kind]}${how} would tell most about the ${FIGURE[ring]} now.`
}

/** A rescue in words; its figures stand beside it. */
export function explainRescue({ option, possible, lengths, counts, ballGap }: Rescue, fit: FitCorrection): string {
  const { units, balls } = fit.settled.input
  const length = (name: string): Mm => {
    const found = lengths[name]
    if (found === undefined) throw new RangeError(`${option} must have the length ${name}`)
    return found
  }
  const size = (name: string): string => figure(length(name), units)
  const gap = ballGap === undefined ? '' : figure(ballGap, units)
  switch (option) {
    case 'accept': {
      const hard = balls.material === 'steel' || balls.material === 'glass'
      return `Leave it: the gap of ${gap} is ${size('overMaxBallGap')} over the largest wanted. ${hard ? 'Hard balls knock at every turn.' : 'Soft balls hardly mind: it runs, with a click now and then.'}`
    }
    case 'better-balls':
      if (lengths['diameter'] === undefined) return 'No size on hand has enough balls for the ring (ballsOnHand).'
      return possible
        ? `Fill the ring with the balls of ${size('diameter')} on hand: a gap of ${gap}.`
        : `The nearest balls on hand, ${size('diameter')}, leave a gap of ${gap}: out of band.`
    case 'larger-balls':
      if (lengths['diameter'] === undefined)
        return 'No ball that could still be called the same size closes this groove.'
      return `Balls of ${size('diameter')}, ${size('largerBy')} larger, close this groove to a gap of ${gap}${possible ? '' : ', but no inner ring goes inside them'}.`
    case 'mixed-balls':
      if (counts['replacedCount'] === undefined) return 'No larger balls are on hand to mix in (ballsOnHand).'
      return `Replace ${counts['replacedCount']} of the balls, evenly round the ring, by balls of ${size('diameter')}: a gap of ${gap}${possible ? '' : ', still out of band'}. The larger ones carry the load.`
    case 'spacers':
      if (counts['spacerCount'] === undefined) return 'The gap is not wider than its aim: nothing to fill with spacers.'
      return `Put ${counts['spacerCount']} spacers of ${size('eachThickness')} between the balls, or one of ${size('singleThickness')}: a gap of ${gap}. Spacers of felt or leather rub.`
    case 'lining':
      if (lengths['grooveRadius'] === undefined)
        return `Line the groove with something ${size('thickness')} thick: a gap of ${gap}.`
      return `Line the groove with something ${size('thickness')} thick: a gap of ${gap}, and a groove radius of ${size('grooveRadius')}${counts['tighterThanBallCount'] === 1 ? ', tighter than the ball: scrape the lining rounder, or the ball rides on its edges' : ''}.`
    case 'one-ball-more':
      if (!possible && length('deeper') <= 0) return `The groove is too deep for ${counts['ballCount']} balls as well.`
      if (!possible)
        return `One ball more, ${counts['ballCount']}, needs a groove ${size('deeper')} deeper, which this ring has no room for.`
      if (lengths['grooveCircleDiameter'] !== undefined)
        return `Move the groove out by ${size('deeper')} for ${counts['ballCount']} balls: its circle ${size('grooveCircleDiameter')} across, ${size('plateWall')} of wood left outside it, in both plates.`
      return `Cut ${size('deeper')} deeper for ${counts['ballCount']} balls: groove bottom ${size('grooveBottomDiameter')}, land ${size('landDiameter')}, ${size('outerWall')} of wood left, and a new inner ring.`
    case 'new-blank':
      return 'Start with a new blank. Keep the balls, the gauges, and an inner ring that is not cut yet: only the outer ring is lost.'
    default:
      return option satisfies never
  }
}
