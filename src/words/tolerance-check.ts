import { traitsOf } from '#shared/bearing/arrangements.ts'
import { ENTRY_MEAN } from '#shared/bearing/entry-gap.ts'
import type { Year } from '#shared/movement/year.ts'
import { toDecimals } from '#shared/numbers/decimals.ts'
import type { AimPoint, Chance } from '#shared/questions/tolerance/aim.ts'
import { riseOnLargest } from '#shared/questions/tolerance/arrangements/thrust.ts'
import { isOfPlates, type PlateCheck, type RingCheck } from '#shared/questions/tolerance/checked.ts'
import type { CauseName } from '#shared/questions/tolerance/input.ts'
import type { Sensitivity } from '#shared/questions/tolerance/linear-law.ts'
import { hasLobes } from '#shared/questions/tolerance/lobed-losses.ts'
import type { WhyTrials } from '#shared/questions/tolerance/nearly-linear.ts'
import type { ToleranceRefusal } from '#shared/questions/tolerance/refusal.ts'
import type { ToleranceCheck } from '#shared/questions/tolerance/tolerance-check.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import {
  capitalised,
  figure,
  hundredthParts,
  hundredths,
  percent,
  percentParts,
  wholePercent,
  withMinus,
} from './figure.ts'
import { MOVES_LESS } from './seasonal-fit.ts'
import { signNote, TRADE_SIGN } from './standing.ts'
import { type Terms, termsOf } from './terms.ts'

/* Faults of a request that its schema does not find. */

export const LOT_MEAN_OF_LIST =
  'does not apply to a `ballDiameter` of kind "measured", because the list already has a mean: remove it'

/** The name of a contributor, after "comes from". */
function causeName(name: CauseName, { element, raceway }: Terms): string {
  const size = raceway.one === 'track' ? 'radius' : 'depth'
  const sentences: Readonly<Record<CauseName, string>> = {
    ballDiameter: `the sizes of single ${element.many}`,
    ballLotMean: `the mean of the ${element.one} lot`,
    outerGrooveBottomRadius: `the ${size} of the outer ${raceway.one}`,
    innerGrooveBottomRadius: `the ${size} of the inner ${raceway.one}`,
    outOfRound: `the out-of-round error of the ${raceway.many}`,
    finishFilm: 'the thickness of the finish',
    grooveCircleRadius: "the radius of the circle of a plate's groove",
    grooveDepth: "the depth of a plate's groove",
    climate: 'the weather',
  }
  return sentences[name]
}

type Break = Extract<ToleranceRefusal, { code: 'contributor-too-wide' }>['because']

/** The reason why a trial would no longer be a bearing. A track has no depth: it only has to be there. */
function brokenSentence(because: Break, { element, raceway }: Terms): string {
  const sentences: Readonly<Record<Break, string>> = {
    balls: `the largest ${element.many} would be more than half as large again as the smallest, or have no size`,
    'outer-groove': 'the outer groove would have no depth, or be deeper than a half circle',
    'inner-groove':
      raceway.one === 'track'
        ? 'the inner track would have no diameter left'
        : 'the inner groove would have no depth, be deeper than a half circle, or reach the axis',
    'plate-groove': 'the groove of a plate would have no depth, or the balls would sink into it to their middle',
    closes: `the ${element.many} would have no room side by side`,
    lobes: `the ${raceway.one} would no longer be a circle`,
  }
  return sentences[because]
}

export function explainToleranceRefusal(refusal: ToleranceRefusal, units: Units, terms: Terms): string {
  switch (refusal.code) {
    case 'limits-reversed':
      return `The smallest value allowed, ${figure(refusal.min, units)}, is above the largest, ${figure(refusal.max, units)}.`
    case 'contributor-too-wide': {
      const { name, reach, because } = refusal
      const differs =
        name === 'climate'
          ? `the weather may change a size by up to ${figure(reach, units)}`
          : `${causeName(name, terms)} may differ by up to ${figure(reach, units)} at the widest of the random trials`
      return `${capitalised(differs)}: ${brokenSentence(because, terms)}. ${MEANS[name]}`
    }
    default:
      return refusal satisfies never
  }
}

const DIFFERENCE = 'State the difference from the design, not the size.'
const MEANS: Readonly<Record<CauseName, string>> = {
  ballDiameter: DIFFERENCE,
  ballLotMean: DIFFERENCE,
  outerGrooveBottomRadius: DIFFERENCE,
  innerGrooveBottomRadius: DIFFERENCE,
  outOfRound: 'State half the difference between the largest and the smallest radius.',
  finishFilm: 'State the thickness of one coat.',
  grooveCircleRadius: DIFFERENCE,
  grooveDepth: DIFFERENCE,
  climate: 'Use a construction that moves less, or a narrower year.',
}

/** The remedy for the contributor with the largest share, as the end of the sentence that names it: no list parts the two. */
function remedy(name: CauseName, { element, raceway, gap }: Terms): string {
  const sentences: Readonly<Record<CauseName, string>> = {
    ballDiameter: `sort the ${element.many}, or use ones that differ less: they matter more than your cutting.`,
    ballLotMean: `lay the ${element.many} in a row, measure their mean and design for it: the ${element.one} lot matters more than your cutting.`,
    outerGrooveBottomRadius: `cut the outer ${raceway.one} in small steps and measure the ${gap} each time: your cutting matters more than the ${element.many}.`,
    innerGrooveBottomRadius: `fit the inner ${raceway.one} to the outer ring and its ${element.many}, and check the play as you cut.`,
    outOfRound: `make the final cut of both ${raceway.many} in one setting, on dry wood.`,
    grooveCircleRadius:
      'cut both grooves at one setting of the jig, and measure the ball gap before you move the jig: your cutting matters more than the balls.',
    grooveDepth: 'set the depth of the cutter with a gauge block, and cut both grooves at one setting.',
    finishFilm: `apply the finish thinly and evenly, or leave the ${raceway.many} bare.`,
    climate: `${MOVES_LESS}, keep the bearing in steadier air, and ask \`/v1/seasonal-fit\` what to build in: the weather matters more than your cutting.`,
  }
  return sentences[name]
}

/** The contributor with the largest share of a figure's scatter, or none where nothing scatters. */
function deciding(
  check: ToleranceCheck,
  of: keyof ToleranceCheck['figures'],
): readonly [CauseName, Sensitivity] | undefined {
  const [first] = [...check.figures[of].rss.sensitivities].toSorted(([, one], [, other]) => other.share - one.share)
  return first !== undefined && first[1].share > 0 ? first : undefined
}

/** How many fit, which cause matters most, and what to do about it. */
export function advice(check: ToleranceCheck): string {
  const { ballGap, play } = check.figures
  const terms = termsOf(check.check.input.design)
  const { fits, tooTight, tooLoose } = ballGap.outcomes
  const [fitting = '', tightOnes, looseOnes] = hundredthParts([fits.value, tooTight.value, tooLoose.value])
  // Of those whose gap fits, and so never more of them.
  const both = hundredths(check.jointFits.value)
  const fittingBoth = Number(both) > Number(fitting) ? fitting : both
  const tight = isOfPlates(check.check) ? 'too tight' : `too tight for the last ${terms.element.one}`
  const ofGap = `The ${terms.gap} fits in ${fitting} of 100 such bearings, is ${tight} in ${tightOnes} and too loose in ${looseOnes}.`
  const ofBoth = `The ${terms.gap} and the ${terms.play} both fit in ${fittingBoth}; the ${terms.play} alone fits in ${hundredths(play.outcomes.fits.value)}.`
  const ofBinding = check.binds && `The inner ring binds in ${hundredths(check.binds.value)}.`
  const sentences = [ofGap, ofBoth, ...(ofBinding === undefined ? [] : [ofBinding])]
  const gapDecides = deciding(check, 'ballGap')
  if (gapDecides !== undefined) sentences.push(decision(terms.gap, ...gapDecides, terms))
  const playDecides = deciding(check, 'play')
  if (playDecides !== undefined && playDecides[0] !== gapDecides?.[0])
    sentences.push(decision(terms.play, ...playDecides, terms))
  return sentences.join(' ')
}

const decision = (what: string, name: CauseName, { share }: Sensitivity, terms: Terms): string =>
  `For the ${what}, ${wholePercent(share)} of the scatter comes from ${causeName(name, terms)}; ${remedy(name, terms)}`

/** The remedies for an inner ring that often binds: more play, and what lessens the cause with the largest share. */
export function bindsOften({ value }: Chance, check: ToleranceCheck): string {
  const terms = termsOf(check.check.input.design)
  const [cause] = deciding(check, 'play') ?? []
  return `The inner ring binds in ${hundredths(value)} of 100 bearings. Design more ${terms.play} at \`/v1/design\`, or ${againstBinding(cause, terms)}.`
}

function againstBinding(cause: CauseName | undefined, { element, raceway, play }: Terms): string {
  if (cause === 'ballDiameter') return `sort the ${element.many}, or lay the large ones side by side`
  if (cause === 'climate') return 'ask `/v1/seasonal-fit` what the year needs'
  return `cut the inner ${raceway.one} last, and measure the ${play} as you cut`
}

/** A contributor's share of the scatter of both figures, rounded with those of all others. */
interface EffectShares {
  readonly gap: string
  readonly play: string
}

/** How a contributor moves both figures, and its share of their scatter. */
export function explainEffect(
  name: CauseName,
  gap: Sensitivity,
  play: Sensitivity,
  { units, terms, shares }: { readonly units: Units; readonly terms: Terms; readonly shares: EffectShares },
): string {
  const moved = (slope: number): string =>
    name === 'climate' ? figure(mm(slope), units) : `${withMinus(String(toDecimals(slope, 2)))} ${units}`
  return [
    `If ${growth(name, `1 ${units}`, terms)}, the ${terms.gap} changes by ${moved(gap.slope)} and the ${terms.play} by ${moved(play.slope)}. `,
    `This causes ${shares.gap} of the scatter of the ${terms.gap} and ${shares.play} of the scatter of the ${terms.play}.`,
  ].join('')
}

function growth(name: CauseName, by: string, { element, raceway }: Terms): string {
  const isTrack = raceway.one === 'track'
  const sentences: Readonly<Record<CauseName, string>> = {
    ballDiameter: `one ${element.one} is larger by ${by}`,
    ballLotMean: `all ${element.many} are larger by ${by}`,
    outerGrooveBottomRadius: isTrack
      ? `the radius of the outer track is larger by ${by}`
      : `the outer groove is deeper by ${by}`,
    innerGrooveBottomRadius: isTrack
      ? `the radius of the inner track is larger by ${by}`
      : `the inner groove is shallower by ${by}`,
    outOfRound: `the out-of-round amplitude is larger by ${by}`,
    finishFilm: `the finish is thicker by ${by}`,
    grooveCircleRadius: `the radius of the groove circle of one plate is larger by ${by}`,
    grooveDepth: `the groove of one plate is deeper by ${by}`,
    climate: 'the moisture content of the wood is higher by 1 %',
  }
  return sentences[name]
}

/** How the figures were found, and why that way. */
export function explainMethod({ method, trials, check }: ToleranceCheck): string {
  const terms = termsOf(check.input.design)
  if (method.kind === 'trials')
    return `Random bearings were made and each was computed exactly${whyTrials(method.why, terms)}.`
  const { ballGap, play } = method.left
  const lobes = hasLobes(check)
    ? `, except for the ${terms.play} that out-of-round ${terms.raceway.many} take, which comes from some thousand random rings of ${terms.element.many}`
    : ''
  return [
    `The ${terms.gap} and the ${terms.play} change nearly in proportion to each difference, so their distribution is computed without random trials${lobes}. `,
    `${trials} bearings, computed exactly, correct it for the curvature. `,
    `This leaves ${percent(ballGap)} of the variance of the ${terms.gap} and ${percent(play)} of the variance of the ${terms.play} unexplained. `,
    'Set `trials` to run random trials instead.',
  ].join('')
}

function whyTrials(why: WhyTrials, { element, raceway, play }: Terms): string {
  const sentences: Readonly<Record<WhyTrials, string>> = {
    'trials-requested': ', as requested',
    'out-of-round': `: the ${play} depends mostly on how ${element.many} meet the long and short axes of out-of-round ${raceway.many}`,
    'measured-balls': `: ${element.many} drawn without replacement are not independent`,
    'uneven-balls': `: the law of the ${play} among unequal ${element.many} is known for normally distributed ones, 7 or more`,
    'not-linear': ': a figure does not change with the differences, or not nearly in proportion to them',
    corners: ': nearly all of the scatter comes from one difference with sharp limits',
  }
  return sentences[why]
}

/** The aim in words. */
export function explainAim({ aim, check, figures }: ToleranceCheck): string {
  const terms = termsOf(check.input.design)
  const { bestYield, limitedRisk } = aim
  const best = `Aim for ${whatIsCut(check)} ${placeOf(bestYield, check)}, ${offDesign(bestYield, check)}: then most bearings fit (${percent(bestYield.outcomes.fits.value)}, compared with ${percent(figures.ballGap.outcomes.fits.value)} as designed).`
  const risk = percent(check.input.overshootRisk)
  if (limitedRisk === undefined) {
    return `${best} No ${terms.cutSize} keeps the chance of a ${terms.raceway.one} that is ${terms.tooFar} down to ${risk}: first reduce what scatters most.`
  }
  const { tooTight, tooLoose } = limitedRisk.outcomes
  return `${best} To keep the chance of cutting ${terms.tooFar} within ${risk}, stop when it is ${placeOf(limitedRisk, check)}, ${offDesign(limitedRisk, check)}: then ${percent(tooLoose.value)} end ${terms.tooFar}, and ${percent(tooTight.value)} are still too tight, which another cut corrects.`
}

/** The part that is cut to the gap, before its size. */
const whatIsCut = (check: ToleranceCheck['check']): string =>
  isOfPlates(check) ? 'a groove circle' : `an outer ${termsOf(check.input.design).raceway.one}`

/** The groove of a ring is measured by its depth; a track, and the circle of a plate's groove, by the diameter. */
function placeOf({ grooveDepth, grooveBottomDiameter }: AimPoint, { input, bearing }: ToleranceCheck['check']): string {
  const { units } = input.design
  const isDeep = traitsOf(input.design).raceway === 'groove' && !('plate' in bearing)
  return isDeep ? `${figure(grooveDepth, units)} deep` : `${figure(grooveBottomDiameter, units)} across`
}

function offDesign({ deeper }: AimPoint, { input: { design } }: ToleranceCheck['check']): string {
  const { further, lessFar, radially } = termsOf(design)
  if (deeper === 0) return 'as designed'
  return `${figure(mm(Math.abs(deeper)), design.units)} ${deeper > 0 ? further : lessFar}${radially} than designed`
}

/**
 * The texts of the picture of the spread, beside its numbers.
 *
 * @param isPractice the figures that nobody stated, and that are common practice
 */
export function gapSheetWords(
  checked: ToleranceCheck,
  isPractice: { readonly maxBallGap: boolean; readonly overshootRisk: boolean },
) {
  const { check, figures, aim, trials, method } = checked
  const { design } = check.input
  const { units, balls } = design
  const terms = termsOf(design)
  const { gap, tooFar, raceway, element } = terms
  const { outcomes, trials: spread } = figures.ballGap
  const [tight, fits, loose] = percentParts([outcomes.tooTight.value, outcomes.fits.value, outcomes.tooLoose.value])
  const size = (length: number): string => figure(mm(length), units)
  const placed = (point: AimPoint): string =>
    `middle of the spread at ${size(point.ballGap)}, ${isOfPlates(check) ? 'groove circle' : raceway.one} ${placeOf(point, check)}`
  const byTrials = method.kind === 'trials'
  const max = `largest good gap: ${size(check.gapLimits.max)}${isPractice.maxBallGap ? ` ${TRADE_SIGN}` : ''}`
  const limitedRisk =
    aim.limitedRisk &&
    `aim with at most ${percent(check.input.overshootRisk)}${isPractice.overshootRisk ? ` ${TRADE_SIGN}` : ''} ${tooFar}: ${placed(aim.limitedRisk)}`
  return {
    title: `${capitalised(gap)} of ${balls.count} ${element.many} of ${figure(balls.diameter as Mm, units)}: ${byTrials ? `${trials} random bearings` : 'distribution over all bearings'}`,
    description: `${advice(checked)} ${explainAim(checked)}`,
    min: `smallest good gap${Math.max(...(check.gapLimits.lows ?? [])) > check.gapLimits.min ? `, if the last ${element.one} goes in` : ''}: ${size(check.gapLimits.min)}`,
    max,
    bestYield: `aim for the best yield: ${placed(aim.bestYield)}`,
    limitedRisk,
    regions: [`too tight: ${tight}`, `fits: ${fits}`, `too loose: ${loose}`] as const,
    axis: `${gap} (${units}) with ${raceway.many} cut as designed; below 0 the last ${element.one} does not fit`,
    countAxis: '% of bearings per bar',
    foot: [
      `Mean ${size(spread.mean)}, standard deviation ${size(spread.standardDeviation)}; 95 % from ${size(spread.shortest.low)} to ${size(spread.shortest.high)}.${byTrials ? ` Seed ${check.input.seed}.` : ''}`,
      ...signNote([max, limitedRisk ?? '']),
    ],
  }
}

function weatherNotes(year: Year | undefined): readonly string[] {
  if (year === undefined)
    return ['The calculation assumes that the wood stays as on the day of making, because `climate` was not given.']
  const alike = year.climate.kind === 'months' ? 'months' : 'moisture contents between the driest and the dampest'
  return [
    `The calculation treats all ${alike} as equally likely. It assumes that the wood has settled to the moisture of the air, that the start of the row may lie anywhere round the grain, and that each part moves as a whole.`,
  ]
}

/** The assumptions of the calculation, as far as they could surprise someone. */
export function notes({ check }: ToleranceCheck): string[] {
  const { contributors, design } = check.input
  const { element, gap } = termsOf(design)
  const missing: string[] = []
  if (contributors.ballLotMean === undefined && contributors.ballDiameter?.kind !== 'measured') {
    missing.push(
      `The calculation assumes that the mean of the ${element.many} is as designed, because \`ballLotMean\` was not given. Nothing changes the ${gap} more.`,
    )
  }
  return [...missing, ...(isOfPlates(check) ? plateNotes(check) : ringNotes(check))]
}

function ringNotes({ input, bearing }: RingCheck): readonly string[] {
  const { contributors, year, design } = input
  const { element, raceway, gap, play } = termsOf(design)
  const { assemblyGap } = bearing.resolved.assembly
  return [
    ...(contributors.outerGrooveBottomRadius === undefined
      ? [
          `The calculation assumes that the outer ${raceway.one} is cut exactly to size, because \`outerGrooveBottomRadius\` was not given.`,
        ]
      : []),
    ...weatherNotes(year),
    ...(assemblyGap > 0
      ? [
          `The last ${element.one} goes in at a ${gap} between 0 and ${figure(assemblyGap, design.units)} that nobody knows beforehand, most likely near ${figure(mm(ENTRY_MEAN * assemblyGap), design.units)} (common practice, no source). Every chance counts this.`,
        ]
      : []),
    `The ${play} is that of a rigid inner ring that may move among ${element.many} laid in random order, the ${gap} shared evenly between them. Wood that gives, and ${element.many} laid in order of size, were not considered.`,
  ]
}

const OVAL_PLATES =
  'A plate that the weather makes oval counts with the mean of its circle: the gap of a full ring is wider by some hundredths of a millimetre at most.'

const plateNotes = (check: PlateCheck): readonly string[] => [
  ...(check.input.contributors.grooveCircleRadius === undefined
    ? [
        'The calculation assumes that the circles of both grooves are cut exactly to size, because `grooveCircleRadius` was not given.',
      ]
    : []),
  ...weatherNotes(check.input.year),
  ...(check.input.year === undefined ? [] : [OVAL_PLATES]),
  'The calculation assumes that the balls run midway between the circles of both grooves, as they do between plates that carry a load. While only the lower plate is in place, its circle alone counts, and twice as much.',
  ...restNote(riseOnLargest(check), check.input.design.units),
]

const restNote = (rise: Mm, units: Units): readonly string[] =>
  rise > 0
    ? [
        `The space between the plates is computed for balls of the mean size. Until the wood gives, the upper plate rests on three of the largest balls and is about ${figure(rise, units)} higher.`,
      ]
    : []
