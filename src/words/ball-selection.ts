import { traitsOf } from '#shared/bearing/arrangements.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
import type { PlateAtRest } from '#shared/geometry/plate-on-balls.ts'
import type { BallSelection, SelectionRefusal, SelectionWarning } from '#shared/questions/selection/ball-selection.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { figure, percent } from './figure.ts'
import { refusalSentence } from './refusal.ts'
import type { Terms } from './terms.ts'

export function explainRefusal(refusal: Refusal | SelectionRefusal, units: Units, terms: Terms): string {
  const size = (length: Mm): string => figure(length, units)
  switch (refusal.code) {
    case 'lot-too-small':
      return `${refusal.given} measured balls are fewer than the ${refusal.needed} of the ring: measure more, or design for fewer`
    case 'not-of-this-size':
      return `a ball of ${size(refusal.given)} is none of this bearing, whose balls are from ${size(refusal.least)} to ${size(refusal.most)}: look for a slip of the pen, or leave it out`
    case 'aim-takes-another-ball':
      return `a gap of ${size(refusal.given)} is nearly as wide as the smallest ball of the lot: keep it below ${size(refusal.below)}`
    case 'groove-too-tight':
      return `a groove bottom of ${size(refusal.given)} is far too tight for any ${refusal.ballCount} balls of this lot: the smallest of them just close in one of ${size(refusal.closed)}`
    case 'groove-too-wide':
      return `a groove bottom of ${size(refusal.given)} is so wide that ${refusal.ballCount} balls of this lot may cover less than half of it: take more balls, or larger ones`
    default:
      return refusalSentence(refusal, units, terms)
  }
}

export function explainWarning(facts: SelectionWarning['facts'], units: Units): string {
  const size = (length: Mm): string => figure(length, units)
  switch (facts.code) {
    case 'does-not-close':
      return `the ring does not close: the last ball lacks ${size(mm(-facts.ballGap))}`
    case 'gap-below-band':
      return `the ball gap of ${size(facts.ballGap)} is below the smallest wanted, ${size(facts.min)}`
    case 'gap-above-band':
      return `the ball gap of ${size(facts.ballGap)} is above the largest wanted, ${size(facts.max)}`
    case 'gap-below-assembly-gap':
      return `with a ball gap of ${size(facts.ballGap)} the last ball must be forced in: it needs about ${size(facts.assemblyGap)} (rigid balls; wood gives a little)`
    case 'rides-on-edges':
      return `the groove (radius ${size(facts.grooveRadius)}) is tighter than ${facts.ballCount} of these balls: they ride on its edges, each size at its own depth, which makes the gap ${about(Math.abs(facts.gapShift), units)} ${facts.gapShift < 0 ? 'smaller' : 'larger'} than is said here; take a rounder groove`
    default:
      return facts satisfies never
  }
}

/** Less than anyone cuts or reads is not told to the last digit. */
const UNREAD: Readonly<Record<Units, readonly [length: number, words: string]>> = {
  in: [0.00254, 'less than 0.0001 in'],
  mm: [0.01, 'less than 0.01 mm'],
}

function atMost(length: number, units: Units): string {
  const [unread, words] = UNREAD[units]
  return length < unread ? words : figure(mm(length), units)
}

/** An effect in a sentence: what it is about, or that it is hardly one. */
const about = (length: number, units: Units): string =>
  length < UNREAD[units][0] ? atMost(length, units) : `about ${figure(mm(length), units)}`

/** Where the largest balls stand, by what they have to keep level or round. */
const LAID = {
  rings: 'the largest stand opposite one another, so that no side stands out',
  plates: 'the three largest stand a third of a turn from one another, so that the upper plate lies on them',
} as const

/** What to do, in a few sentences. */
export function advice(selection: BallSelection): string {
  const { bearing, choice, spread, ballGap, grooveDiameter, input } = selection
  const { units } = input.design
  const size = (length: Mm): string => figure(length, units)
  const { members } = traitsOf(input.design)
  return [
    `Take the ${choice.balls.length} balls under chosen, in that order round the ring: ${LAID[members]}. `,
    `They differ by ${atMost(spread, units)} at most. `,
    `In a groove bottom of ${size(grooveDiameter)} they leave a ball gap of ${size(ballGap)}; aimed at is ${size(bearing.settled.ballGap)}. `,
    grooveAdvice(selection),
  ].join('')
}

function grooveAdvice({ grooveChange, input }: BallSelection): string {
  const { units } = input.design
  const change = mm(Math.abs(grooveChange))
  if (change < UNREAD[units][0]) return 'The groove is right for them as it is.'
  return grooveChange > 0
    ? `For that, take ${figure(change, units)} more off the groove's depth.`
    : `For that, the groove is ${figure(change, units)} deeper than they want.`
}

/**
 * How the upper plate lies on the chosen balls.
 *
 * @param rise over its whole width
 */
export function explainRest({ shares, mostClearance }: PlateAtRest, rise: Mm, units: Units): string {
  const [least, most] = [percent(Math.min(...shares)), percent(Math.max(...shares))]
  const each = least === most ? 'a third' : `${least} to ${most}`
  return [
    `At first three of the balls carry the upper plate, with ${each} of what lies over its middle each. `,
    `It rises by ${atMost(rise, units)} from one side to the other; over the ball that is farthest from it ${atMost(mostClearance, units)} is left. `,
    'Under a load the wood gives, and more of them carry.',
  ].join('')
}

/** How near the choice comes, and how near any could. */
export function explainNearness({ input, choice, reach }: BallSelection): string {
  const { units } = input.design
  const { missedBy, noneBelow, balls } = choice
  const within = reach.least === undefined ? '' : ` and none less than ${figure(reach.least, units)}`
  const overall = `No choice leaves a gap of more than ${figure(reach.most, units)}${within}.`
  if (input.goal === 'least-spread')
    return `No ${balls.length} balls of this lot differ less than these, ${atMost(missedBy, units)}. ${overall}`
  const what = input.goal === 'close-groove' ? 'The gap is off its aim' : 'The groove is off what these balls want'
  const left = missedBy - noneBelow
  const nearer = left < UNREAD[units][0] ? 'noticeably nearer' : `nearer by more than ${figure(mm(left), units)}`
  const best = `no other choice, in whatever order, comes ${nearer}`
  return `${what} by ${atMost(missedBy, units)}, and ${best}. ${overall}`
}

/** An effect below this part of the band from smallest to largest gap is next to nothing. */
const NEXT_TO_NOTHING = 0.1

export function explainOrders({ input, orders, bearing }: BallSelection): string {
  const { units } = input.design
  const { minBallGap, maxBallGap } = bearing.settled
  const width = orders.most - orders.least
  const little = width <= NEXT_TO_NOTHING * (maxBallGap - minBallGap) ? 'Very little: in' : 'In'
  return `${little} whatever order they are laid, the gap stays between ${figure(orders.least, units)} and ${figure(orders.most, units)}, ${atMost(width, units)} apart.`
}
