import { askedReading, isProbablyShort } from '#shared/questions/fit/asked-reading.ts'
import { MOST_CHECKS } from '#shared/questions/fit/defaults.ts'
import type { Fit } from '#shared/questions/fit/fit.ts'
import type { FitCorrection } from '#shared/questions/fit/fit-correction.ts'
import type { FitRefusal, FittedPart } from '#shared/questions/fit/fit-setup.ts'
import type { NextReading, ReadingDecides, ReadingReason } from '#shared/questions/fit/next-reading.ts'
import type { AskedReading, ReadingKind } from '#shared/questions/fit/reading.ts'
import type { Life, LifeWithPlay, Obstacle, PassedOver, Rescue } from '#shared/questions/fit/rescue.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { stepDown, stepUp } from '#shared/units/step.ts'
import { CALIPER_STEP, caliperFigure, capitalised, certainties, cutFigures, figure, percent } from './figure.ts'
import type { Terms } from './terms.ts'

/** What is cut, within a sentence. */
const PARTS: Readonly<Record<FittedPart, string>> = {
  outer: 'the outer ring',
  inner: 'the inner ring',
  plate: 'a plate',
}

/** The figure that is brought into its band. */
const figureName = (part: FittedPart, terms: Terms): string => (part === 'inner' ? terms.play : terms.gap)

/** Cut further than wanted. */
const tooFar = (part: FittedPart, terms: Terms): string => (part === 'inner' ? terms.innerTooFar : terms.tooFar)

export function explainFitRefusal(refusal: FitRefusal, units: Units, terms: Terms): string {
  const size = (length: Mm): string => figure(length, units)
  const { element, raceway } = terms
  switch (refusal.code) {
    case 'reading-of-other-ring':
      return `${readingName(refusal.kind, terms)} is not a reading of ${PARTS[refusal.ring]}: remove it`
    case 'too-many-left-out':
      return `leaving out ${refusal.given} ${element.many} leaves too few in place for an opening: leave out at most ${refusal.most}`
    case 'balls-too-uneven':
      return `${element.many} that differ by ${size(refusal.given)} are not of one size: they may differ by ${size(refusal.most)}`
    case 'gap-not-cut':
      return 'the cage keeps the balls apart, so no gap shows how deep the outer groove is: cut it to its bottom diameter or to the plug, and ask for the inner ring'
    case 'readings-contradict':
      return `${DO_NOT_CUT} ${contradiction(refusal, units, terms)}`
    case 'target-band-empty':
      return `the smallest, ${size(refusal.min)}, must be below the largest, ${size(refusal.max)}`
    case 'target-out-of-reach':
      return `no ${raceway.one} of this design gives this ${terms.gap}: use a larger cutter, or ask for a smaller one`
    case 'aim-outside-band':
      return `the aim of ${size(refusal.aim)} must be from ${size(refusal.min)} to ${size(refusal.max)}`
    default:
      return refusal satisfies never
  }
}

const DO_NOT_CUT = 'Do not cut.'

/** The usual cause of readings that do not fit one another. */
const CUT_BETWEEN =
  'If you cut or sanded between them, that is the cause: remove the readings made after it, enter it (`earlier`), and enter them again.'

function contradiction(
  refusal: Extract<FitRefusal, { code: 'readings-contradict' }>,
  units: Units,
  { element, raceway, gap }: Terms,
): string {
  const { tooWide, isAlone, isCutBetween, isLastBallInAndOut } = refusal
  if (tooWide !== undefined)
    return `An opening of ${figure(tooWide, units)} is wider than the last ${element.one}, which must go in there: put it in, and give the ${gap} that is left.`
  if (isAlone) return `No ${raceway.one} of this design gives this reading: check it.`
  const clash = isLastBallInAndOut
    ? `The last ${element.one} cannot both stay out and be in.`
    : `No ${raceway.one} gives all these readings.`
  const otherwise = `Check each of them, and that they belong to this design.`
  return isCutBetween ? `${clash} ${CUT_BETWEEN} If not, remove the one that is wrong.` : `${clash} ${otherwise}`
}

export const RING_MISSING = 'must say which ring is being cut: "outer" or "inner"'
export const RING_OF_NONE = 'does not apply to plates, which are cut alike: remove it'
export const NO_FINISH_OF_PLATES =
  'does not apply to turntables, for a finish brings the plates apart and leaves the gap: remove it'

export const tooManyReadings = (given: number, most: number): string =>
  `the request has ${given} readings, those in \`readings\` included: give at most ${most}`

export const targetOfOtherPart = (part: FittedPart, names: readonly string[]): string =>
  `does not apply to ${PARTS[part]}: give ${names.join(', ')}`

export const countedWithout = (part: FittedPart, names: readonly string[]): string =>
  `must have ${names.join(' and ')} for ${PARTS[part]}`

/** What to do now, in a few sentences. */
export function fitSummary(correction: FitCorrection, units: Units, terms: Terms): string {
  const { fit, ring } = correction
  const what = advice(correction, units, terms)
  if (fit.disagreements.length === 0) return what
  // Nothing is given up by a figure that was probably of something else.
  if (fit.state === 'too-deep' && mistakenIn(correction) !== undefined)
    return `${readingsDisagree(correction, terms)} If it is as you read it, the ${terms.raceway.one} is ${tooFar(ring, terms)}.`
  const isHeldBack = fit.action === 'measure' && fit.nextReading.why === 'readings-disagree'
  return isHeldBack
    ? what
    : `${readingsDisagree(correction, terms)} The rest holds only if ${fit.readingsMade.ever === 1 ? 'it is' : 'they are'} right. ${what}`
}

/** What is likeliest comes first, for it is the quickest to check. */
function readingsDisagree(correction: FitCorrection, terms: Terms): string {
  const isAlone = correction.fit.readingsMade.ever === 1
  const cut = correction.fit.isCutBetween ? ` ${CUT_BETWEEN}` : ''
  const first = `${DO_NOT_CUT} Check the ${isAlone ? 'reading: it does' : 'readings: they do'} not fit (see \`agreement\`).${cut}`
  const kind = mistakenIn(correction)
  const { element, gap } = terms
  if (kind === 'ball-gap')
    return `${first} Try the last ${element.one}: if it goes in, push all the ${element.many} together and measure the ${gap} instead.`
  if (kind === 'last-ball-opening')
    return `${first} Count the ${element.many}: if one is still out, what you measured is the opening for it, and no ${gap}.`
  return first
}

/** What to do where the readings that do not fit were checked, and are right. */
function onceChecked(correction: FitCorrection, nextReading: NextReading, units: Units, terms: Terms): string {
  const { isRowDoubted, readingsMade } = correction.fit
  const { element } = terms
  if (isRowDoubted)
    return `Measure the row again, and count the ${element.many} in it. If it is right, they are not those of this design: design the bearing for them (\`/v1/ball-selection\`).`
  const isRight =
    mistakenIn(correction) === 'ball-gap'
      ? `If the last ${element.one} does stay out`
      : readingsMade.ever === 1
        ? 'If it is as you read it'
        : 'If they are as you read them'
  return `${isRight}, read once more, another way. ${howToMeasure(correction, nextReading, units, terms)}`
}

/** What a reading that does not fit was more likely than not. */
const mistakenIn = ({ fit: { disagreements } }: FitCorrection): ReadingKind | undefined =>
  disagreements.find(({ mistakenFor }) => mistakenFor !== undefined)?.mistakenFor?.kind

/** The chances of the groove as it is now, rounded together. */
function standingOf({ probability: { tooTight, inBand, tooDeep } }: Fit) {
  const [tight = '', fits = '', deep = ''] = certainties([tooTight, inBand, tooDeep])
  return { tooTight: tight, inBand: fits, tooDeep: deep }
}

function advice(correction: FitCorrection, units: Units, terms: Terms): string {
  const { fit, ring, target } = correction
  const standing = standingOf(fit)
  const name = figureName(ring, terms)
  switch (fit.action) {
    case 'cut':
      return `${ifItBinds(fit, terms)}${cutSentence(correction, fit.nextStep, units, terms)} (${percent(fit.nextStep.overshootProbability)} chance of ending ${tooFar(ring, terms)}).${pastDrawing(correction, units, terms)}${ring === 'plate' ? OTHER_PLATE.cut : ''}`
    case 'measure':
      if (fit.nextReading.why === 'readings-disagree')
        return `${readingsDisagree(correction, terms)} ${onceChecked(correction, fit.nextReading, units, terms)}`
      return `${reasonToMeasure(correction, fit.nextReading, units, terms)}. ${ifItBinds(fit, terms)}${howToMeasure(correction, fit.nextReading, units, terms)}`
    case 'stop':
      switch (fit.reason) {
        case 'in-band':
          return `Stop: the ${name} is in its band (${standing.inBand} certain). ${ring === 'plate' ? OTHER_PLATE.fits : 'Another cut could only spoil it.'}${target.finishAllowance > 0 ? RAISED_GRAIN : ''}`
        case 'too-deep':
          return `Stop: the ${terms.raceway.one} is ${tooFar(ring, terms)} (${standing.tooDeep} certain). ${WHAT_CAN_BE_DONE}`
        case 'cannot-be-told':
          return undecided(correction, units, terms)
        default:
          return fit.reason satisfies never
      }
    default:
      return fit satisfies never
  }
}

/** What to do once it is cut: without the last ball there is no gap to measure yet. */
const check = (correction: FitCorrection, terms: Terms): string =>
  askedReading(correction)?.kind === 'last-ball-opening'
    ? `try the last ${terms.element.one} and measure again`
    : `measure the ${figureName(correction.ring, terms)} again`

/** A shallow groove of one plate alone shows the gap: its depth and the other plate wait until the circle is known, as on the job sheet. */
const OTHER_PLATE = {
  cut: ' Cut the other plate only once this one fits.',
  fits: 'Keep this circle: if the groove is still shallow, cut it to its depth there, and cut the other plate at the same setting.',
} as const

/** Common practice, no source. */
const RAISED_GRAIN = ' After the finish, sand off the raised grain with 220 grit.'

/** How far to cut, and what to do then. */
function cutSentence(correction: FitCorrection, nextStep: NextStep, units: Units, terms: Terms): string {
  const { ring } = correction
  if (ring === 'plate') return plateSentence(correction, nextStep, units, terms)
  const { radial, strokes, isSizeKnown } = nextStep
  const raceway = `${ring === 'inner' ? 'its' : 'the'} ${terms.raceway.one}`
  const counted = strokes === undefined ? '' : `, about ${strokes} strokes`
  const [verb, how] = nextStep.with === 'sharp-tool' ? ['Cut', ''] : ['Sand', ` with about 80-grit abrasive${counted}`]
  const then = check(correction, terms)
  const { depth, across } = cutFigures(mm(radial), units)
  if (isSizeKnown) {
    const what = { outer: '', inner: ' the inner ring' }[ring]
    const size = caliperFigure(mm(nextStep.until.grooveBottomDiameter), units)
    return `${verb}${what}${how}${strokes === undefined ? '' : ','} until ${raceway} measures ${size} ${terms.acrossIt} (${depth} ${terms.ofCut}), then ${then}`
  }
  // A caliper still shows what came off.
  const where = { outer: '', inner: ' on the inner ring' }[ring]
  return `${verb} ${depth} ${terms.ofCut}${where}${how}. Note what ${raceway} measures ${terms.acrossIt} now, and stop when it measures ${across} ${ring === 'inner' ? 'less' : 'more'}. Then ${then}`
}

/**
 * Nothing cut off a flank moves the lowest circle of a groove, over which the balls lie: the whole groove moves. They would lie anywhere on
 * a bottom of two circles, so nothing of the old one may be left.
 */
function plateSentence(
  correction: FitCorrection,
  { with: tool, radial, strokes, isSizeKnown, until }: NextStep,
  units: Units,
  terms: Terms,
): string {
  const { depth, across } = cutFigures(mm(radial), units)
  const note = isSizeKnown ? '' : ` Note what the groove measures ${terms.acrossIt} now.`
  const measures = `it measures ${
    isSizeKnown
      ? `${caliperFigure(mm(until.grooveBottomDiameter), units)} ${terms.acrossIt}`
      : `${across} more ${terms.acrossIt}`
  }`
  const counted = strokes === undefined ? '' : `, about ${strokes} strokes`
  const cut =
    tool === 'sharp-tool'
      ? `Set the tool ${depth} ${terms.ofCut} than it was for the groove that is there.${note} Draw a pencil line along the bottom of the groove, and cut the whole groove again until the line is gone. Check that ${measures}.`
      : `Sand the whole groove ${depth} ${terms.ofCut}, with about 80-grit abrasive over a dowel that you press outward as well as down${counted}.${note} Stop when ${measures}.`
  return `${cut} Then ${check(correction, terms)}`
}

/** Two sizes that stand on two sheets, and which of them to follow. */
const pastDrawing = ({ drawnSizePassed }: FitCorrection, units: Units, { element }: Terms): string =>
  drawnSizePassed === undefined
    ? ''
    : ` This goes past the ${caliperFigure(drawnSizePassed, units)} of the drawing: uneven ${element.many} take some of the play.`

type NextStep = Extract<FitCorrection['fit'], { action: 'cut' }>['nextStep']

/** What the trade knows of a ring that binds. Common practice, no source. */
const ifItBinds = ({ kindsRead }: Fit, { element, raceway }: Terms): string =>
  kindsRead.includes('binds')
    ? `Do not force the ring, or it dents or splits. If it binds at one place only, find out why first: one ${element.one} is large, or the ${raceway.one} has a high spot. `
    : ''

/** So unlikely is it that anything must still come off. */
const isNothingLeft = ({ probability, confidence }: Fit): boolean => probability.tooTight <= 1 - confidence

function reasonToMeasure(
  { ring: part, fit }: FitCorrection,
  { why, decides }: NextReading,
  units: Units,
  terms: Terms,
): string {
  const { lastCut = 0 } = fit
  if (isNothingLeft(fit) && (why === 'verdict-uncertain' || why === 'cut-too-risky'))
    return `Do not cut any more: the ${terms.raceway.one} is finished or a little ${tooFar(part, terms)}`
  const since = lastCut > 0 ? ` since the last cut of ${figure(mm(lastCut), units)}` : ''
  const sentences: Readonly<Record<ReadingReason, string>> = {
    'groove-unread': `the ${terms.raceway.one} has not been measured${since}`,
    'no-word-on-last-ball': `only the ${terms.gap}, or whether the last ${terms.element.one} goes in, can decide`,
    'refusal-has-no-figure':
      part === 'inner'
        ? 'a ring that binds does not show by how much'
        : `the last ${terms.element.one} stays out, which does not show by how much`,
    'readings-disagree': 'the readings do not agree',
    'cut-too-risky': `any useful cut risks ending ${tooFar(part, terms)}`,
    'verdict-uncertain': `the ${terms.raceway.one} may be ${decides === 'whether-it-is-too-deep' ? tooFar(part, terms) : 'finished'} already`,
  }
  return `Do not cut yet: ${sentences[why]}`
}

/** How to make a reading, as an instruction. Nobody measures a gap, or an opening, before the last ball was tried. */
function howToMeasure(
  { fit, ring: part }: Pick<FitCorrection, 'fit' | 'ring'>,
  { kind, ballsLeftOut = 1, count, expected }: AskedReading,
  units: Units,
  terms: Terms,
): string {
  const { element, raceway } = terms
  const isOfTheLast = kind === 'ball-gap' || (kind === 'last-ball-opening' && ballsLeftOut === 1)
  if (isOfTheLast && !fit.isLastBallTried)
    return `Try the last ${element.one}. If it goes in, push all the ${element.many} together and measure the ${terms.gap}; if it stays out, push the others together and measure the opening between the first and the last.`
  switch (kind) {
    case 'ball-gap':
      return `Push all the ${element.many} together and measure the ${terms.gap}.`
    case 'last-ball-opening':
      return `Leave out ${ballsLeftOut === 1 ? `one ${element.one}` : `${ballsLeftOut} ${element.many}`}, push the others together and measure the opening between the first and the last.`
    case 'last-ball-refused':
    case 'last-ball-in':
      return `Try whether the last ${element.one} goes in.`
    case 'plug':
      return `Turn a disc of about ${figure(mm(expected ?? 0), units)} until it just enters between the seated ${element.many}, and measure it.`
    case 'groove-bottom-diameter':
      return `Measure the ${raceway.one}${part === 'inner' ? ' of the inner ring' : ''} with a caliper, ${terms.acrossIt}.`
    case 'groove-depth':
      return `Measure the depth of the ${raceway.one}.`
    case 'ball-row':
      return `Lay ${count ?? ''} ${element.many} in a straight channel, touching, and measure the row.`
    case 'radial-play':
      if (terms.readPlay !== undefined) return terms.readPlay
      return fit.kindsRead.includes('radial-play')
        ? 'Measure the play once more, in another direction: how far the inner ring travels from side to side.'
        : 'Measure the play: how far the inner ring travels from side to side.'
    case 'binds':
      return 'Try whether the inner ring turns freely.'
    default:
      return kind satisfies never
  }
}

const DECIDES: Readonly<Record<ReadingDecides, string>> = {
  'how-deep-to-cut': 'This decides how much to cut.',
  'whether-it-is-finished': 'This decides whether it is finished.',
  'whether-it-is-too-deep': 'This decides whether too much has been cut.',
}

export const nextReadingSentence = (
  correction: Pick<FitCorrection, 'fit' | 'ring'>,
  reading: NextReading,
  units: Units,
  terms: Terms,
): string => `${howToMeasure(correction, reading, units, terms)} ${DECIDES[reading.decides]}`

const WHAT_CAN_BE_DONE = '`rescue` says what can still be done, the first to try first.'

/** No cut, no verdict, and no reading that would bring one. */
function undecided(correction: FitCorrection, units: Units, terms: Terms): string {
  const { fit, ring, target } = correction
  const { tooTight, inBand, tooDeep } = standingOf(fit)
  const name = figureName(ring, terms)
  const asked = askedReading(correction)
  if (asked === undefined)
    return isProbablyShort(fit)
      ? `Stop: the ${name} is probably still too small (${tooTight}), but these tools cannot bring it to its aim at a risk of ${percent(target.overshootRisk)} within ${MOST_CHECKS} checks. Use a finer tool, accept more risk, or leave it.`
      : `Stop, and use the ${terms.raceway.one} as it is: it is in its band (${inBand} likely) or ${tooFar(ring, terms)} (${tooDeep}), and further readings would not show which.`
  const how = howToMeasure(correction, asked, units, terms)
  if (isProbablyShort(fit))
    return `Stop: the ${name} is probably still too small (${tooTight}), but these readings do not show how much more to cut. ${how}`
  const open = `Stop: these readings cannot show whether the ${terms.raceway.one} is finished (${inBand}).`
  return ring !== 'inner' && !fit.isLastBallIn
    ? `${open} Try the last ${terms.element.one}: if it goes in, measure the ${name}.`
    : `${open} ${how}`
}

/** What to do at the mating faces of a split ring. */
export const explainAdjustment = (change: Mm, units: Units): string =>
  change >= 0
    ? `Sand ${figure(change, units)} off the mating faces in all: the halves come closer, and the play falls to the aim.`
    : `Put a shim of ${figure(mm(-change), units)} between the mating faces: the halves move apart, and the play grows to the aim.`

function readingName(kind: ReadingKind, { gap, element, raceway, acrossIt }: Terms): string {
  const sentences: Readonly<Record<ReadingKind, string>> = {
    'ball-gap': `the ${gap}`,
    'last-ball-opening': `the opening for the last ${element.one}`,
    'last-ball-refused': `a last ${element.one} that does not go in`,
    'last-ball-in': `a last ${element.one} that goes in`,
    plug: 'the plug',
    'groove-bottom-diameter': `the size of the ${raceway.one} ${acrossIt}`,
    'groove-depth': `the depth of the ${raceway.one}`,
    'ball-row': `the row of ${element.many}`,
    'radial-play': 'the play from side to side',
    binds: 'a ring that binds',
  }
  return sentences[kind]
}

/** Why a reading may differ from what the others lead to expect, the likeliest first. */
function likelyCauses(kind: ReadingKind, mistaken: ReadingKind | undefined, { element, raceway, gap }: Terms): string {
  const notTogether = `${element.many} not pushed together all round, dust in the ${raceway.one}, or a rule read from the wrong edge`
  switch (kind) {
    case 'last-ball-opening':
      return mistaken === 'ball-gap'
        ? `a last ${element.one} that goes in after all (then remove this reading, and enter the ${gap} that is left), more ${element.many} left out than you entered, or a rule read from the wrong edge`
        : notTogether
    case 'ball-gap':
      return mistaken === 'last-ball-opening'
        ? `a ${element.one} that was left out (then remove this reading, and enter it as the opening), or one that rests on its neighbours`
        : notTogether
    case 'groove-bottom-diameter':
    case 'groove-depth':
      return `a ${raceway.one} that is out of round, or a caliper held askew`
    case 'ball-row':
      return `a row that is not straight or not touching, or other ${element.many} than those in the bearing`
    case 'plug':
      return `a plug held askew, one ${element.one} that stands in, or a plug of another size than its label`
    case 'last-ball-refused':
    case 'last-ball-in':
      return `a ${element.one} that does not sit at the bottom, or dust in the ${raceway.one}`
    case 'radial-play':
    case 'binds':
      return `a ring out of round, halves not closed, or dust in the ${raceway.one}`
    default:
      return kind satisfies never
  }
}

/** A reading that does not fit, and why that may be. */
export const disagreeing = (
  of: {
    readonly kind: ReadingKind
    /** Nothing else was read: what it does not fit is the bearing as planned. */
    readonly isAlone: boolean
    /** What it was more likely than not. */
    readonly mistaken?: ReadingKind
  },
  terms: Terms,
): string =>
  `${capitalised(readingName(of.kind, terms))} does not fit ${of.isAlone ? 'the plan of this bearing' : 'the other readings'}. Likely causes: ${likelyCauses(of.kind, of.mistaken, terms)}.`

/** A way out in words; its figures stand beside it. */
export function explainRescue(rescue: Rescue, units: Units, terms: Terms): string {
  // Of balls on hand each lot has its own.
  const obstacle = rescue.option === 'balls-on-hand' ? undefined : rescue.obstacle
  const inner = rescue.possible ? innerToCut(rescue, units, terms) : ''
  return `${attempt(rescue, units, terms)}${inner}${obstacle === undefined ? '' : ` ${explainObstacle(obstacle, rescue, terms)}`}`
}

/** What the inner ring is turned to, where that is not what the sheet says. */
function innerToCut({ option, innerToCut: sizes }: Rescue, units: Units, { raceway, acrossIt }: Terms): string {
  if (sizes === undefined) return ''
  const { grooveBottomDiameter, landDiameter, isFinishedTooSmall } = sizes
  const size = (length: number) => caliperFigure(mm(length), units)
  const groove = `${raceway.one} to ${size(grooveBottomDiameter)} ${acrossIt}`
  const of = option === 'new-inner-ring' ? 'its' : "the inner ring's"
  const cut =
    landDiameter === undefined
      ? `Cut ${of} ${groove}: write this over the size on the sheet.`
      : `Turn ${of} land to ${size(landDiameter)}, and cut its ${groove}: write both over the sizes on the sheet.`
  const isLost = isFinishedTooSmall && option !== 'new-inner-ring'
  return ` ${cut}${isLost ? ' A finished inner ring is too small for this.' : ''}`
}

/** Thicker than this nobody builds up with coats of finish [mm]. Common practice, no source. */
const MOST_OF_COATS = 0.25

/** No difference of the two is told: each rounded for itself, the three would not agree. */
const leftAsIs = (name: string, is: number, over: number, size: (length: number) => string): string =>
  `Leave it: the ${name} of ${size(is)} is more than the ${size(is - over)} allowed.`

function attempt(rescue: Rescue, units: Units, terms: Terms): string {
  const { element, raceway } = terms
  const size = (length: number): string => figure(mm(length), units)
  const { ballGap, radialInternalClearance: play, pocketDiameter } = rescue
  const left =
    play !== undefined
      ? `${terms.play} of ${size(play)}`
      : ballGap === undefined
        ? undefined
        : `a ${terms.gap} of ${size(ballGap)}`
  const leaving = left === undefined ? '' : `: this leaves ${left}`
  const pockets =
    pocketDiameter === undefined ? '' : ` Make a new cage for them, with pockets of ${size(pocketDiameter)}.`
  switch (rescue.option) {
    case 'accept':
      return leftAsIs(terms.gap, rescue.ballGap ?? 0, rescue.overMaxBallGap, size)
    case 'accept-play':
      return leftAsIs(terms.play, play ?? 0, rescue.overMaxPlay, size)
    case 'mating-faces':
      return `Sand ${size(rescue.matingFaces)} off the mating faces in all, so that the halves come closer${leaving}.`
    case 'balls-on-hand': {
      const others = rescue.passedOver.map((lot) => whyPassedOver(lot, rescue.ballCount, size, terms)).join('; ')
      if (rescue.possible)
        return `${others === '' ? '' : `Of the ${element.many} that you have, some make no full set: ${others}. `}Use the ${element.many} of ${size(rescue.diameter ?? 0)} that you have${leaving}.${pockets}`
      return others === ''
        ? `Use other ${element.many} that you have: none are listed in \`ballsOnHand\`.`
        : `None of the other ${element.many} that you have make a full set: ${others}.`
    }
    case 'mixed-balls':
      return rescue.diameter === undefined || rescue.replacedCount === undefined
        ? `Replace some ${element.many} by slightly larger ones (\`ballsOnHand\`).`
        : `Replace ${rescue.replacedCount} of the ${element.many}, evenly spread, by ${element.many} of ${size(rescue.diameter)}${leaving}.`
    case 'larger-balls':
      return rescue.diameter === undefined
        ? `Use larger ${element.many}.`
        : `Use a set of larger ${element.many} that measure about ${size(rescue.diameter)}, ${size(rescue.largerBy ?? 0)} more${leaving}.${sortedFor(rescue, units, terms)}${pockets}`
    case 'spacers':
      return rescue.eachThickness === undefined
        ? `Put a spacer of ${size(rescue.singleThickness)} into the ${terms.gap}${leaving}.`
        : `Put ${rescue.spacerCount} spacers of ${size(rescue.eachThickness)} between the ${element.many}, or a single one of ${size(rescue.singleThickness)}${leaving}.`
    case 'lining':
      return rescue.thickness <= MOST_OF_COATS
        ? `Build up the ${raceway.one} by ${size(rescue.thickness)} with coats of finish, all round${leaving}.`
        : `Glue a lining ${size(rescue.thickness)} thick into the ${raceway.one}${leaving}.`
    case 'one-ball-more':
      return rescue.deeper > 0
        ? `Cut ${size(rescue.deeper)} ${terms.further} for one ${element.one} more, ${rescue.ballCount} in all${cutUntil(rescue, units, terms)}${leaving}.`
        : `Use one ${element.one} more, ${rescue.ballCount} in all.`
    case 'new-blank':
      return `Start again with a new ${terms.part.one}. Keep the ${element.many}, the gauges and ${terms.uncutMate}.`
    case 'new-inner-ring':
      return `Make a new inner ring to the outer ring that you have${leaving}.`
    default:
      return rescue satisfies never
  }
}

/** Where the cut for one ball more ends. */
function cutUntil(
  { until, innerToCut: inner }: Extract<Rescue, { option: 'one-ball-more' }>,
  units: Units,
  { raceway, acrossIt }: Terms,
): string {
  if (until === undefined) return ''
  const across = `, until the ${raceway.one} measures ${caliperFigure(mm(until.grooveBottomDiameter), units)} ${acrossIt}`
  // Neither a plain track nor the circle of a plate is measured from a land.
  return inner?.landDiameter === undefined
    ? across
    : `${across} and is ${caliperFigure(mm(until.grooveDepth), units)} deep`
}

/** No shop has such a size: how to come by it. */
function sortedFor(
  { from, to }: Extract<Rescue, { option: 'larger-balls' }>,
  units: Units,
  { element }: Terms,
): string {
  if (from === undefined || to === undefined) return ''
  const [low, high] = [stepUp(from, CALIPER_STEP[units]), stepDown(to, CALIPER_STEP[units])]
  const range =
    low < high
      ? ` A set of ${element.many} with a mean from ${caliperFigure(low, units)} to ${caliperFigure(high, units)} will do.`
      : ''
  return ` Few shops have exactly that size: measure a lot of a near size, and pick the set out of it.${range}`
}

/** Why a lot on hand makes no full set, within a sentence. */
function whyPassedOver(lot: PassedOver, needed: number, size: (length: number) => string, terms: Terms): string {
  const { obstacle, diameter, quantity, ballGap, radialInternalClearance: play } = lot
  const { element, raceway, gap } = terms
  const those = `those of ${size(diameter)}`
  switch (obstacle) {
    case 'too-few-balls':
      return `of ${size(diameter)} there are only ${quantity}, and it takes ${needed}`
    case 'last-ball-stays-out':
      return `of ${those} the last would not go in`
    case 'rides-on-edges':
      return `${those} would ride on the edges of the ${raceway.one}`
    case 'out-of-band':
      if (play !== undefined)
        return play > 0
          ? `${those} would leave a ${terms.play} of ${size(play)}, which is outside its band`
          : `${those} would bind`
      return ballGap !== undefined && ballGap > 0
        ? `${those} would leave a ${gap} of ${size(ballGap)}, which is outside its band`
        : `${those} would not all go in`
    default:
      return `no bearing with ${element.many} of ${size(diameter)} fits the wood that is left`
  }
}

function explainObstacle(obstacle: Obstacle, rescue: Rescue, { element, raceway, gap, play, tooFar }: Terms): string {
  const sentences: Readonly<Record<Obstacle, string>> = {
    'none-on-hand': `None of the ${element.many} in \`ballsOnHand\` will do.`,
    'out-of-band':
      rescue.option === 'accept-play'
        ? 'With so much play it would not run.'
        : `That ${rescue.radialInternalClearance === undefined ? gap : play} is outside its band.`,
    'last-ball-stays-out': `The last ${element.one} would not go in.`,
    'rides-on-edges': `The ${element.many} would ride on the edges of the ${raceway.one}.`,
    'stands-out': `The larger ${element.many} would stand out too far: they alone would carry, and the others would rattle.`,
    'too-few-larger': `Fewer than three larger ${element.many} would push everything to one side: it would run off centre.`,
    'no-such-bearing':
      rescue.option === 'accept-play'
        ? `With so much play the ${element.many} could come out.`
        : 'No bearing of these sizes fits the wood that is left.',
    'too-thin': 'That is too thin to make.',
    'too-much': `That is too much: the ${element.many} would run on narrow flanks.`,
    'too-deep-for-it-too': `The ${raceway.one} is ${tooFar} for that as well.`,
  }
  return sentences[obstacle]
}

/** Consequences of a rescue for its user. Common practice, no source. */
export function livingWith(rescue: Rescue, terms: Terms): string {
  const { element, raceway } = terms
  switch (rescue.option) {
    case 'accept':
      return lifeSentence(rescue.life, terms)
    case 'accept-play':
      return lifeWithPlay(rescue.life)
    case 'mating-faces':
      return 'The bearing then runs like the design, with a little less play along the axis.'
    case 'balls-on-hand':
    case 'larger-balls':
      return 'The bearing then runs like the design.'
    case 'mixed-balls':
      return `The larger ${element.many} carry the load, and the others only fill the space: fine for light turning by hand.`
    case 'spacers':
      return 'Spacers rub: it turns a little harder, and felt or leather wears.'
    case 'lining':
      return rescue.thickness <= MOST_OF_COATS
        ? 'The finish wears first: measure again after some use.'
        : 'A lining may dent or come loose: for light turning by hand only.'
    case 'one-ball-more':
      return `The bearing then runs like the design, with less wood behind the ${raceway.one}.`
    case 'new-blank':
    case 'new-inner-ring':
      return 'The bearing then runs like the design. It costs one blank and the time to turn it.'
    default:
      return rescue satisfies never
  }
}

function lifeSentence(life: Life, { element, gap }: Terms): string {
  const sentences: Readonly<Record<Life, string>> = {
    'hardly-noticed': 'The bearing runs, with a click now and then.',
    knocks: `The bearing runs, but the ${element.many} knock at every turn.`,
    'balls-bunch': `The bearing runs, but the ${element.many} bunch together and leave a wide ${gap}: the load is uneven.`,
    'ball-short': `The bearing would run as if ${element.many} were missing.`,
  }
  return sentences[life]
}

function lifeWithPlay(life: LifeWithPlay): string {
  const sentences: Readonly<Record<LifeWithPlay, string>> = {
    'hardly-noticed': 'It runs. You can feel the play, but hardly hear it.',
    rattles: 'It runs, but it rattles, and the shaft moves by the play when the load changes side.',
    wanders: 'It runs, but the shaft wanders, and only a few carry at a time: for display, not for a load.',
  }
  return sentences[life]
}

/* Why a value was taken that the request left open. */
export const ASSUMED = {
  ruleGraduation: 'A common rule is read to this.',
  ruleHand: 'A hand at a rule errs by about this.',
  instrumentGraduation: 'A caliper, a plug or a dial is not rounded.',
  instrumentHand: 'A caliper, a plug or a dial in wood errs by about this.',
  handOfGraduation: 'A quarter of the graduation that was given.',
  unrounded: 'Only the standard uncertainty was given.',
  oneLeftOut: 'One is left out where nothing is said.',
  ofDesign: 'As in the design.',
  halfThePlay: "Half the design's play still runs well.",
  twiceThePlay: "Twice the design's play still runs well.",
  overshootRisk: 'One spoilt part in twenty.',
  tool: 'A cut comes out about so true.',
} as const

/** Assumptions about a bearing before any reading, in words, with their reasons. */
export const PRIORS = {
  groove: {
    value: 'normal: 35 % of its depth short of the design, standard deviation 40 % of its depth',
    reason: 'Before it is measured it is mostly unfinished.',
  },
  lotMean: {
    value: 'normal: mean of the lot as designed, standard deviation 0.6 of the scatter',
    reason: 'A bought lot is a little off its nominal size.',
  },
  scatter: {
    value: 'as stated with a chance of 80 %, 1.8 times that with 15 %, 3 times with 5 %',
    reason: 'A lot may scatter more than stated.',
  },
  threshold: {
    value: 'normal: 0.65 of the assembly gap, standard deviation 0.2 of it',
    reason: 'Wood gives a little when the last one goes in.',
  },
  toolBias: {
    value: 'normal: 0, standard deviation 15 % of a cut',
    reason: 'Each maker cuts a little more or less than intended; `earlier` shows it.',
  },
  readingBias: {
    value: 'normal: 0, standard deviation 0.15 mm at a rule',
    reason: 'Each maker reads a rule a little long or short.',
  },
} as const
