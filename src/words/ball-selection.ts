import type { Refusal } from '#shared/bearing/refusal.ts'
import type { PlateAtRest } from '#shared/geometry/plate-on-balls.ts'
import type { BallSelection, SelectionRefusal, SelectionWarning } from '#shared/questions/selection/ball-selection.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { figure, percent } from './figure.ts'
import { refusalSentence } from './refusal.ts'
import { type Terms, termsOf } from './terms.ts'

export function explainRefusal(refusal: Refusal | SelectionRefusal, units: Units, terms: Terms): string {
  const size = (length: Mm): string => figure(length, units)
  const { element, across } = terms
  switch (refusal.code) {
    case 'lot-too-small':
      return `The bearing needs ${refusal.needed} ${element.many}, but only ${refusal.given} measured ${element.many} were given. Measure more, or design for fewer.`
    case 'not-of-this-size':
      return `${size(refusal.given)} is not a size of this bearing's ${element.many}, which are from ${size(refusal.least)} to ${size(refusal.most)}: check the figure, or remove it.`
    case 'aim-takes-another-ball':
      return `A gap of ${size(refusal.given)} is nearly as wide as the smallest ${element.one} of the lot. Keep it below ${size(refusal.below)}.`
    case 'groove-too-tight':
      return `${size(refusal.given)} ${across} is far too small for any ${refusal.ballCount} ${element.many} of this lot: the smallest of them just close at ${size(refusal.closed)}.`
    case 'groove-too-wide':
      return `${size(refusal.given)} ${across} is so large that ${refusal.ballCount} ${element.many} of this lot may fill less than half of it. Use more ${element.many}, or larger ones.`
    default:
      return refusalSentence(refusal, units, terms)
  }
}

export function explainWarning(facts: SelectionWarning['facts'], units: Units, terms: Terms): string {
  const size = (length: Mm): string => figure(length, units)
  const { element, gap } = terms
  switch (facts.code) {
    case 'does-not-close':
      return `The last ${element.one} does not fit: it needs ${size(mm(-facts.ballGap))} more room.`
    case 'gap-below-band':
      return `The ${gap} of ${size(facts.ballGap)} is below the smallest allowed, ${size(facts.min)}.`
    case 'gap-above-band':
      return `The ${gap} of ${size(facts.ballGap)} is above the largest allowed, ${size(facts.max)}.`
    case 'gap-below-assembly-gap':
      return `With a ${gap} of ${size(facts.ballGap)} the last ${element.one} must be forced in: it needs about ${size(facts.assemblyGap)} (calculated for rigid ${element.many}; wood gives a little).`
    case 'rides-on-edges':
      return `The groove radius of ${size(facts.grooveRadius)} is smaller than that of ${facts.ballCount} of these balls. They ride on the edges of the groove, each size at its own height, which makes the gap ${about(Math.abs(facts.gapShift), units)} ${facts.gapShift < 0 ? 'smaller' : 'larger'} than calculated. Use a larger groove radius.`
    default:
      return facts satisfies never
  }
}

/** Less than anyone cuts or measures is not given to the last digit. */
const NOT_MEASURABLE: Readonly<Record<Units, readonly [length: number, words: string]>> = {
  in: [0.00254, 'less than 0.0001 in'],
  mm: [0.01, 'less than 0.01 mm'],
}

/** A length in a sentence, or that it is too small to measure. */
function upTo(length: number, units: Units): string {
  const [least, words] = NOT_MEASURABLE[units]
  return length < least ? words : figure(mm(length), units)
}

/** An estimate in a sentence: "about" before a figure, nothing before one that is too small to measure. */
const about = (length: number, units: Units): string =>
  length < NOT_MEASURABLE[units][0] ? upTo(length, units) : `about ${figure(mm(length), units)}`

/** What to do, in a few sentences. */
export function advice(selection: BallSelection): string {
  const { bearing, choice, spread, ballGap, grooveDiameter, input } = selection
  const { units } = input.design
  const { element, across, gap } = termsOf(input.design)
  const size = (length: Mm): string => figure(length, units)
  return [
    `Use the ${choice.balls.length} ${element.many} listed under \`chosen\` and lay them in that order: ${'plate' in bearing ? LAID_ON_A_PLATE : LAID_IN_A_RING}. `,
    `The largest and the smallest differ by ${upTo(spread, units)}. `,
    `At ${size(grooveDiameter)} ${across} they leave a ${gap} of ${size(ballGap)}; the aim is ${size(bearing.resolved.ballGap)}. `,
    grooveAdvice(selection),
  ].join('')
}

const LAID_IN_A_RING = 'the largest then lie opposite one another, so that no side is high'
const LAID_ON_A_PLATE =
  'the three largest then lie a third of a turn from one another, so that the upper plate rests on them'

function grooveAdvice({ grooveChange, input, bearing }: BallSelection): string {
  const { units } = input.design
  const { raceway, tooFar, ofCut, radially } = termsOf(input.design)
  if (Math.abs(grooveChange) < NOT_MEASURABLE[units][0]) return `The ${raceway.one} is right for them as it is.`
  const change = figure(mm(Math.abs(grooveChange)), units)
  if (grooveChange < 0) return `For that aim the ${raceway.one} is ${tooFar} by ${change}${radially}.`
  return 'plate' in bearing
    ? `To reach the aim, cut another ${change} off the outer flank of the groove, and cut the other plate to the same circle.`
    : `To reach the aim, cut another ${change} ${ofCut}.`
}

/**
 * How the upper plate lies on the chosen balls.
 *
 * @param rise over its whole width
 */
export function explainRest({ shares, mostClearance }: PlateAtRest, rise: Mm, units: Units): string {
  const [least, most] = [percent(Math.min(...shares)), percent(Math.max(...shares))]
  const each = least === most ? 'a third' : `between ${least} and ${most}`
  return [
    `At first, three of the balls carry the upper plate: each carries ${each} of a load over the middle. `,
    `The plate rises by ${upTo(rise, units)} from one side to the other; the largest clearance over a ball is ${upTo(mostClearance, units)}. `,
    'Under a load the wood gives, and more balls carry.',
  ].join('')
}

/** How near the choice comes to its goal, and how near any choice could come. */
export function explainNearness({ input, choice, reach }: BallSelection): string {
  const { units } = input.design
  const { element, raceway, radially } = termsOf(input.design)
  const { missedBy, noneBelow, balls } = choice
  const overall =
    reach.least === undefined
      ? `No choice leaves a gap of more than ${figure(reach.most, units)}.`
      : `Every choice leaves a gap between ${figure(reach.least, units)} and ${figure(reach.most, units)}.`
  if (input.goal === 'least-spread')
    return `These ${balls.length} ${element.many} differ by ${upTo(missedBy, units)}, and no other choice from this lot differs by less. ${overall}`
  const missed =
    input.goal === 'close-groove'
      ? `The gap misses the aim by ${upTo(missedBy, units)}`
      : `The ${raceway.one} differs by ${upTo(missedBy, units)}${radially} from the one that these ${element.many} need`
  const left = missedBy - noneBelow
  const nearer =
    left < NOT_MEASURABLE[units][0] ? 'noticeably nearer' : `nearer by more than ${figure(mm(left), units)}`
  return `${missed}, and no other choice, in any order, comes ${nearer}. ${overall}`
}

/** Below this part of the band from smallest to largest gap, an effect is very little. */
const VERY_LITTLE = 0.1

export function explainOrders({ input, orders, bearing }: BallSelection): string {
  const { units } = input.design
  const { minBallGap, maxBallGap } = bearing.resolved
  const width = orders.most - orders.least
  const matters =
    width <= VERY_LITTLE * (maxBallGap - minBallGap) ? 'Their order changes the gap very little: in' : 'In'
  return `${matters} any order the gap stays between ${figure(orders.least, units)} and ${figure(orders.most, units)}, a difference of ${upTo(width, units)}.`
}
