import type { FitCorrection } from '#shared/bearing/fit-correction/fit-correction.ts'
import type { FittedPart, Reading, ReadingKind, ToolName } from '#shared/bearing/fit-correction/input.ts'
import type { MatingFaceAdjustment } from '#shared/bearing/fit-correction/mating-faces.ts'
import type { FitState } from '#shared/bearing/fit-correction/names.ts'
import type { FitRefusal } from '#shared/bearing/fit-correction/refusal.ts'
import type { Rescue } from '#shared/bearing/fit-correction/rescue.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { capitalised, figure, percent } from './figure.ts'
import { type Terms, termsOf } from './terms.ts'

/** What is on the lathe, within a sentence. */
export const PARTS: Readonly<Record<FittedPart, string>> = {
  outer: 'the outer ring',
  inner: 'the inner ring',
  plate: 'a plate',
}

const figureOf = (part: FittedPart, { gap, play }: Terms): string => (part === 'inner' ? play : gap)

/** Grooves of rings have lands, and halves and flanks beside them. */
const hasLand = ({ raceway, part }: Terms): boolean => raceway.one === 'groove' && part.one === 'ring'

function readingName(kind: ReadingKind, { gap, element, across, raceway }: Terms): string {
  switch (kind) {
    case 'ball-gap':
      return `the ${gap}`
    case 'last-ball-opening':
      return `the opening for the last ${element.one}`
    case 'last-ball-refused':
      return `a last ${element.one} that will not go in`
    case 'plug':
      return 'the plug'
    case 'groove-bottom-diameter':
      return `the diameter ${across}`
    case 'groove-depth':
      return `the ${raceway.one} depth`
    case 'ball-row':
      return `the row of ${element.many}`
    case 'radial-play':
      return 'the play from side to side'
    case 'binds':
      return 'a ring that binds'
    default:
      return kind satisfies never
  }
}

const TOOLS: Readonly<Record<ToolName, string>> = {
  'sharp-tool': 'a sharp tool',
  abrasive: 'abrasive of 80 grit or so',
}

export function explainFitRefusal(refusal: FitRefusal, units: Units, terms: Terms): string {
  const size = (length: Mm): string => figure(length, units)
  const { element, raceway, cutSize } = terms
  switch (refusal.code) {
    case 'reading-impossible':
      return `${readingName(refusal.kind, terms)} cannot be ${size(refusal.given)}: whatever the ${raceway.one}, this bearing would give from ${size(refusal.least)} to ${size(refusal.most)}`
    case 'reading-of-other-ring':
      return `${readingName(refusal.kind, terms)} is not read at ${PARTS[refusal.ring]}`
    case 'balls-too-uneven':
      return `${element.many} that differ by ${size(refusal.given)} are not of one size: up to ${size(refusal.most)} can be reckoned with`
    case 'no-gap-in-cage':
      return 'a cage holds the balls apart, so that no gap tells how deep the outer groove is: cut it to its bottom diameter or to the plug, and correct the inner ring'
    case 'readings-contradict':
      return `no ${raceway.one} at all gives these readings together: check them, and the ${element.many}${hasLand(terms) ? ', the land' : ''} and the design they belong to`
    case 'target-band-empty':
      return `the smallest ${size(refusal.min)} must be below the largest ${size(refusal.max)}`
    case 'target-out-of-reach':
      return `no ${cutSize} of this ${raceway.one} gives from ${size(refusal.min)} to ${size(refusal.max)}: ${raceway.one === 'track' ? '' : 'its cutter is too small for the ball, or '}the design is too tight`
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
  const terms = termsOf(input.design)
  const { raceway, tooFar, ofCut } = terms
  const what = figureOf(input.ring, terms)
  if (state === 'in-band')
    return `Stop: the ${what} is in band (${percent(probability.inBand)} certain), and another cut could only lose it.${target.finishAllowance > 0 ? RAISED_GRAIN : ''}`
  if (state === 'too-deep')
    return `Stop cutting: the ${raceway.one} is ${tooFar} (${percent(probability.tooDeep)} certain). ${tooDeepAdvice(fit)}`
  if (nextStep === undefined && fit.stop) return undecided(fit)
  if (nextStep === undefined)
    return `Do not cut yet: no cut is worth its risk of ${percent(target.overshootRisk)} with what is known. Read again, best as said under bestNextReading: with a chance of ${percent(fit.decidedByReading ?? 0)} that makes clear what to do.`
  const strokes = nextStep.strokes === undefined ? '' : `, ${nextStep.strokes} strokes`
  const cut = figure(nextStep.radial, units)
  const takeOff = input.ring === 'plate' ? `Take ${cut} ${ofCut}` : `Take off ${cut} ${ofCut}`
  return `${takeOff} with ${TOOLS[nextStep.tool]}${strokes}, then read again: that it ends ${tooFar} has a chance of ${percent(nextStep.overshootProbability)}.`
}

/** No cut, no verdict, and no reading that would bring one. */
function undecided({ input, probability, target }: FitCorrection): string {
  const terms = termsOf(input.design)
  const what = figureOf(input.ring, terms)
  const { tooTight, inBand, tooDeep } = probability
  if (tooTight > inBand)
    return `Stop here: the ${what} is still too small (${percent(tooTight)} certain), but no cut with these tools keeps to a risk of ${percent(target.overshootRisk)}, and reading again would hardly change that. Take a finer tool, accept more risk, or leave it.`
  return `Stop here, and take the ${terms.raceway.one} as it is: the ${what} is in band (${percent(inBand)} likely) or beyond it (${percent(tooDeep)}), so there is nothing left to cut, and reading again would hardly tell which.`
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
export function explainAdjustment(
  { change, isWorthIt }: MatingFaceAdjustment,
  state: FitState,
  { units, terms: { element, raceway } }: { readonly units: Units; readonly terms: Terms },
): string {
  const instead = isWorthIt
    ? ''
    : ` So much is not worth it: ${state === 'too-deep' ? 'make a new inner ring' : `cut the ${raceway.one}`}.`
  return change >= 0
    ? `Sanding ${figure(change, units)} off the mating faces in all brings the flanks together and the play to the aim: tighter.${instead}`
    : `A shim of ${figure(mm(-change), units)} between the mating faces lets the ${element.many} down and the play up to the aim: looser.${instead}`
}

/** Why a reading may stand apart from the others. */
function likelyCauses(kind: ReadingKind, terms: Terms): string {
  const { element, raceway } = terms
  const unseated = `a ${element.one} that does not ${raceway.one === 'track' ? 'touch the track' : 'sit on the bottom'}`
  switch (kind) {
    case 'ball-gap':
    case 'last-ball-opening':
      return `${unseated}, ${element.many} not pushed together all round, or a rule read from its wrong edge`
    case 'groove-bottom-diameter':
    case 'groove-depth':
      if (raceway.one === 'track') return 'a track that is out of round, or a caliper held askew'
      return hasLand(terms)
        ? 'a groove that is out of round, a caliper that rode on the flank, or a depth read from the wrong land'
        : 'a groove that is out of round, or a caliper that rode on the flank'
    case 'ball-row':
      return `a row that was not straight or not touching, or other ${element.many} than those in the bearing`
    case 'plug':
      return `a plug that stood askew, one ${element.one} that stands in, or a plug of another size than its label`
    case 'last-ball-refused':
      return `${unseated}, or dust in the ${raceway.one}`
    case 'radial-play':
    case 'binds':
      return hasLand(terms)
        ? 'a ring out of round, halves not closed, or dust in a groove'
        : `a ring out of round, or dust in a ${raceway.one}`
    default:
      return kind satisfies never
  }
}

export const disagreeing = (kind: ReadingKind, terms: Terms): string =>
  `${readingName(kind, terms)} does not fit the other readings; likely causes: ${likelyCauses(kind, terms)}`

export function nextReading(reading: Reading, ring: FittedPart, terms: Terms): string {
  const how = reading.kind === 'ball-row' ? ` of ${reading.count} in a straight channel` : ''
  return `Of all readings, ${readingName(reading.kind, terms)}${how} would tell most about the ${figureOf(ring, terms)} now.`
}

/** A rescue in words; its figures stand beside it. */
export function explainRescue({ option, possible, lengths, counts, ballGap }: Rescue, fit: FitCorrection): string {
  const { units, balls } = fit.settled.input
  const { element, raceway, part, tooFar, further, radially } = termsOf(fit.input.design)
  const isPlate = fit.input.ring === 'plate'
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
      return `Leave it: the gap of ${gap} is ${size('overMaxBallGap')} over the largest wanted. ${hard ? `Hard ${element.many} knock at every turn.` : `Soft ${element.many} hardly mind: it runs, with a click now and then.`}`
    }
    case 'better-balls':
      if (lengths['diameter'] === undefined) return `No size on hand has enough ${element.many} (ballsOnHand).`
      return possible
        ? `Use the ${element.many} of ${size('diameter')} on hand: a gap of ${gap}.`
        : `The nearest ${element.many} on hand, ${size('diameter')}, leave a gap of ${gap}: out of band.`
    case 'larger-balls':
      if (lengths['diameter'] === undefined)
        return `No ${element.one} that could still be called the same size closes this ${raceway.one}.`
      return `${capitalised(element.many)} of ${size('diameter')}, ${size('largerBy')} larger, close this ${raceway.one} to a gap of ${gap}${possible ? '' : isPlate ? ', but the plates have no room for them' : ', but no inner ring goes inside them'}.`
    case 'mixed-balls':
      if (counts['replacedCount'] === undefined) return `No larger ${element.many} are on hand to mix in (ballsOnHand).`
      return `Replace ${counts['replacedCount']} of the ${element.many}, evenly spaced, by ${element.many} of ${size('diameter')}: a gap of ${gap}${possible ? '' : ', still out of band'}. The larger ones carry the load.`
    case 'spacers':
      if (counts['spacerCount'] === undefined) return 'The gap is not wider than its aim: nothing to fill with spacers.'
      return `Put ${counts['spacerCount']} spacers of ${size('eachThickness')} between the ${element.many}, or one of ${size('singleThickness')}: a gap of ${gap}. Spacers of felt or leather rub.`
    case 'lining':
      if (lengths['grooveRadius'] === undefined)
        return `Line the ${raceway.one} with something ${size('thickness')} thick: a gap of ${gap}.`
      return `Line the groove with something ${size('thickness')} thick: a gap of ${gap}, and a groove radius of ${size('grooveRadius')}${counts['tighterThanBallCount'] === 1 ? ', tighter than the ball: scrape the lining rounder, or the ball rides on its edges' : ''}.`
    case 'one-ball-more':
      if (!possible && length('deeper') <= 0)
        return `The ${raceway.one} is ${tooFar} for ${counts['ballCount']} ${element.many} as well.`
      if (!possible)
        return `One ${element.one} more, ${counts['ballCount']}, needs a ${raceway.one} ${size('deeper')}${radially} ${further}, which this ${part.one} has no room for.`
      if (lengths['grooveCircleDiameter'] !== undefined)
        return `Move the groove out by ${size('deeper')} for ${counts['ballCount']} balls: its circle ${size('grooveCircleDiameter')} across, ${size('plateWall')} of wood left outside it, in both plates.`
      return raceway.one === 'track'
        ? `Cut ${size('deeper')} all round for ${counts['ballCount']} rollers: track ${size('grooveBottomDiameter')}, ${size('outerWall')} of wood left, and a new inner ring.`
        : `Cut ${size('deeper')} deeper for ${counts['ballCount']} balls: groove bottom ${size('grooveBottomDiameter')}, land ${size('landDiameter')}, ${size('outerWall')} of wood left, and a new inner ring.`
    case 'new-blank':
      return isPlate
        ? 'Start with a new blank. Keep the balls, the gauges, and the other plate if it is not cut yet: only this one is lost.'
        : `Start with a new blank. Keep the ${element.many}, the gauges, and an inner ring that is not cut yet: only the outer ring is lost.`
    default:
      return option satisfies never
  }
}
