import type { Refusal } from '#shared/bearing/refusal.ts'
import type { PlateAtRest } from '#shared/geometry/plate-on-balls.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import type { MeasuredBall } from '#shared/questions/selection/ball-choice.ts'
import type { OrderedBalls } from '#shared/questions/selection/ball-order.ts'
import type { OrderAim } from '#shared/questions/selection/ball-place.ts'
import {
  type BallSelection,
  MISREAD,
  type SelectionRefusal,
  type SelectionWarning,
} from '#shared/questions/selection/ball-selection.ts'
import type { SelectionGoal } from '#shared/questions/selection/fields.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { caliperFigure, capitalised, decimalFigure, figure, percent } from './figure.ts'
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
    case 'groove-meets-bore':
      return `${capitalised(terms.innerRaceway)} of ${size(refusal.given)} would cut into the bore: keep it well above ${size(refusal.above)}.`
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
      return `With a ${gap} of ${size(facts.ballGap)} the last ${element.one} goes in with a chance of ${percent(facts.chance)}: rigid ${element.many} need ${size(facts.assemblyGap)}, and wood gives some of it.`
    case 'binds':
      return `The inner ring binds: it is too large by ${size(mm(-facts.play))} for these ${element.many}, even in the order with the most play.`
    case 'little-play':
      return `The play of ${size(facts.play)} is less than half of that of the design: it should be at least ${size(facts.least)}.`
    case 'much-play':
      return `The play of ${size(facts.play)} is more than twice that of the design: it should be at most ${size(facts.most)}.`
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

/** More sizes than this are not read from a sentence. */
const MOST_LISTED = 24

/** A ball by its number in the list of its maker, and its size. */
const numbered = ({ diameter, index }: MeasuredBall, units: Units): string =>
  `${index + 1} (${decimalFigure(diameter, units).replace(/ .*/, '')})`

/** What decided which to take. */
const DECIDED_BY: Readonly<Record<SelectionGoal, (terms: Terms) => string>> = {
  'best-bearing': ({ part, element }) =>
    `${part.one === 'plate' ? 'gap and rise' : 'gap, play and run-out'}, then by how even the ${element.many} are`,
  'close-groove': ({ gap }) => `the ${gap} nearest to the aim`,
  'least-groove-change': ({ raceway }) => `the least change of the ${raceway.one}`,
  'least-spread': () => 'the least difference between the largest and the smallest',
}

/** The balls that stay in the box. */
function leftOut({ leftOver, input }: BallSelection): string {
  if (leftOver.length === 0) return ''
  const { units } = input.design
  const terms = termsOf(input.design)
  const named =
    leftOver.length > MOST_LISTED
      ? `the ${leftOver.length} ${terms.element.many} listed under \`leftOver\``
      : leftOver.map((index) => numbered({ index, diameter: itemAt(input.measured, index) }, units)).join(', ')
  return `Left out, by ${DECIDED_BY[input.goal](terms)}: ${named}.`
}

/** What to do, in a few sentences. */
export function advice(selection: BallSelection): string {
  const { bearing, chosen, grooveDiameter, input, spread } = selection
  const { units } = input.design
  const { element, across, gap } = termsOf(input.design)
  const size = (length: Mm): string => figure(length, units)
  const { balls, ballGap, lastBallGoesIn } = chosen
  const sizes = balls.map((ball) => numbered(ball, units))
  const aim = `the aim is ${size(bearing.resolved.ballGap)}`
  const chance =
    lastBallGoesIn < 1 ? `, at which the last ${element.one} goes in with a chance of ${percent(lastBallGoesIn)}` : ''
  return [
    spread === 0
      ? `Lay the ${balls.length} ${element.many} listed under \`chosen\` in any order: they are of one size.`
      : balls.length > MOST_LISTED
        ? `Lay the ${balls.length} ${element.many} listed under \`chosen\` in that order.`
        : `Lay these ${balls.length} ${element.many} in this order, each by its number in your list, counted from 1, and its size in ${units}: ${sizes.join(', ')}.`,
    leftOut(selection),
    ballGap < 0
      ? `At ${caliperFigure(grooveDiameter, units)} ${across} the last ${element.one} does not go in: it needs ${size(mm(-ballGap))} more room, and ${aim}.`
      : `At ${caliperFigure(grooveDiameter, units)} ${across} they leave a ${gap} of ${size(ballGap)}${chance}; ${aim}.`,
    grooveAdvice(selection),
    selection.atRest === undefined ? playAdvice(selection) : riseAdvice(selection),
    otherGoal(selection),
  ]
    .filter((sentence) => sentence !== '')
    .join(' ')
}

const worstOf = ({ orders, chosen }: BallSelection): OrderedBalls => orders.at(-1) ?? chosen

function playAdvice(selection: BallSelection): string {
  const { chosen, inner, input } = selection
  const { units } = input.design
  const { raceway, innerRaceway, acrossIt } = termsOf(input.design)
  if (inner === undefined || !(chosen.ballGap >= 0)) return ''
  const worst = worstOf(selection)
  const further = furtherCut(selection)
  // A deeper groove around the balls leaves more play: both cuts are made.
  const wanted = mm(inner.wanted + 2 * further)
  const short = inner.asItIs - wanted
  const sentences = [
    `With ${innerRaceway} at ${caliperFigure(inner.asItIs, units)} ${acrossIt}, ${playOf(chosen, units)}; in the order with the least play ${playOf(worst, units)}.`,
  ]
  if (short >= NOT_MEASURABLE[units][0])
    sentences.push(
      `For a play of ${figure(inner.designedPlay, units)}, as designed, ${further > 0 ? `once the outer ring's ${raceway.one} is cut to the aim, ` : ''}turn ${innerRaceway} down to ${caliperFigure(wanted, units)} ${acrossIt}.`,
      ...pastDrawing(selection, short),
    )
  return sentences.join(' ')
}

/** A drawing is made for equal balls: which of two sizes to follow. */
function pastDrawing({ inner, input }: BallSelection, short: number): readonly string[] {
  if (inner === undefined || inner.asItIs !== inner.drawn) return []
  const { takenByUneven } = inner
  if (takenByUneven < Math.max(short / 2, NOT_MEASURABLE[input.design.units][0])) return []
  const { element } = termsOf(input.design)
  return [
    `This goes past the size of the drawing, which is for even ${element.many}: uneven ones take ${figure(takenByUneven, input.design.units)} of the play. What you measure with the ${element.many} in decides.`,
  ]
}

const playOf = ({ margin, runOut }: OrderedBalls, units: Units): string =>
  margin < 0
    ? `the inner ring binds by ${upTo(-margin, units)}`
    : `the play is ${upTo(margin, units)} and the run-out ${upTo(runOut, units)}`

function riseAdvice(selection: BallSelection): string {
  const { units } = selection.input.design
  const [rise, worst] = [selection.chosen, worstOf(selection)].map(({ runOut }) => upTo(runOut, units))
  return `The upper plate rises by ${rise} from one side to the other; in the worst order it would rise by ${worst}.`
}

/** Where the goal of the request costs much in what it does not look at. */
function otherGoal({ input, chosen, choices, atRest }: BallSelection): string {
  const { units } = input.design
  const best = choices.find(({ goal }) => goal === 'best-bearing')
  if (best === undefined || best.ballGap < 0 || input.goal === 'best-bearing') return ''
  const { element } = termsOf(input.design)
  const [less, more] = [chosen.runOut - best.runOut, best.margin - chosen.margin]
  const what = atRest === undefined ? playOf(best, units) : `the upper plate rises by ${upTo(best.runOut, units)}`
  return less >= NOT_MEASURABLE[units][0] || (atRest === undefined && more >= NOT_MEASURABLE[units][0])
    ? `With the ${element.many} of the goal \`best-bearing\` ${what}, at a gap of ${figure(best.ballGap, units)}.`
    : ''
}

/** How much deeper the groove is to be cut, where a maker would notice. */
const furtherCut = ({ grooveChange, input }: BallSelection): number =>
  grooveChange < NOT_MEASURABLE[input.design.units][0] ? 0 : grooveChange

function grooveAdvice({ grooveChange, input, bearing }: BallSelection): string {
  const { units } = input.design
  const { raceway, tooFar, ofCut, radially } = termsOf(input.design)
  if (Math.abs(grooveChange) < NOT_MEASURABLE[units][0]) return `The ${raceway.one} is right for them as it is.`
  const change = figure(mm(Math.abs(grooveChange)), units)
  if (grooveChange < 0) return `For that aim the ${raceway.one} is ${tooFar} by ${change}${radially}.`
  return 'plate' in bearing
    ? `To reach the aim, cut the whole groove again ${change} ${ofCut}, and cut the other plate to the same circle.`
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
export function explainNearness({
  input,
  chosen: { balls },
  missedBy,
  noneBelow,
  everyChoiceTried,
  reach,
}: BallSelection): string {
  const { units } = input.design
  const { element, raceway, radially } = termsOf(input.design)
  const overall =
    reach.least === undefined
      ? `No choice leaves a gap of more than ${figure(reach.most, units)}.`
      : `Every choice leaves a gap between ${figure(reach.least, units)} and ${figure(reach.most, units)}.`
  if (input.goal === 'best-bearing')
    return `${everyChoiceTried ? 'Every choice was tried.' : `These ${balls.length} ${element.many} come from the best choice for each goal and from short stretches of the sorted lot. It is not proven that no other choice is better.`} ${overall}`
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

export function explainOrders(selection: BallSelection): string {
  const { input, gapOverOrders, bearing, chosen, gapWhereMisread, atRest } = selection
  const { units } = input.design
  const { element, gap } = termsOf(input.design)
  const { minBallGap, maxBallGap } = bearing.resolved
  const width = gapOverOrders.most - gapOverOrders.least
  const matters =
    width <= VERY_LITTLE * (maxBallGap - minBallGap) ? 'Their order changes the gap very little: in' : 'In'
  return [
    `${matters} any order the gap stays between ${figure(gapOverOrders.least, units)} and ${figure(gapOverOrders.most, units)}, a difference of ${upTo(width, units)}.`,
    atRest === undefined ? tradeOf(selection) : '',
    chosen.everyOrderTried
      ? 'Every order was tried.'
      : 'A slightly better order may exist: the orders were searched, not all tried.',
    `All this is calculated for rigid, round ${element.many} of the sizes given. If every one is ${figure(MISREAD, units)} smaller than measured, the ${gap} is ${upTo(gapWhereMisread, units)} wider.`,
  ]
    .filter((sentence) => sentence !== '')
    .join(' ')
}

/** What the orders with the best single figures come to. */
function tradeOf({ orders, input }: BallSelection): string {
  const { units } = input.design
  const of = (wanted: OrderAim): string =>
    orders.flatMap((each) => (each.aim === wanted ? [playOf(each, units)] : [])).join()
  return `In the order with the most play ${of('most-play')}; in the one with the least run-out ${of('least-run-out')}.`
}
