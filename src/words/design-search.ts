import type { Ranked, SearchRefusal } from '#shared/questions/search/design-search.ts'
import type { DropReason } from '#shared/questions/search/drop-reason.ts'
import type { Criterion } from '#shared/questions/search/input.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { shopFigure } from '#shared/units/shop-figure.ts'
import type { Scale } from '#shared/units/temperature.ts'
import { figure, percent } from './figure.ts'
import { seasonRefusalSentence } from './season-refusal.ts'
import { TERMS } from './terms.ts'

/* Faults of a request that its schema does not find. */

interface TooManyCombinations {
  readonly candidates: number
  readonly most: number
  /** With a load or a year, each of which takes time for every design. */
  readonly isHard: boolean
}

export const tooManyCombinations = ({ candidates, most, isHard }: TooManyCombinations): string =>
  `Balls, cutters, depths, counts and bores make ${candidates} combinations, but a search${isHard ? ' with a load or a year' : ''} takes at most ${most}. Shorten a list, or use a larger step of bores.`

export const lengthsReversed = (least: Mm, most: Mm, units: Units): string =>
  `The smallest, ${figure(least, units)}, is above the largest, ${figure(most, units)}.`

export const countsReversed = (least: number, most: number): string =>
  `The smallest, ${least}, is above the largest, ${most}.`

export function explainRefusal(refusal: SearchRefusal, scale: Scale): string {
  if (refusal.code !== 'hardly-any-runs') return seasonRefusalSentence(refusal, scale, TERMS.radial)
  return 'A thousand of the best designs do not run all year, and trying the others would take too long. Allow a wider ball gap and more play, choose woods and constructions that move less, or state a narrower year.'
}

/** Why a design has its mark for a criterion. */
export function explainCriterion(name: Criterion, ranked: Ranked): string {
  const { bearing, gapAtShop, design, nested } = ranked
  const { units } = design
  const { outerRing: outer, innerRing: inner, landGap } = bearing
  switch (name) {
    case 'closure':
      return `Cut to ${shopOf(ranked)}, the outer groove leaves a gap of ${figure(gapAtShop, units)}; the aim is ${figure(bearing.ballGap, units)}.`
    case 'wall':
      return `${figure(outer.wall, units)} of wood is left behind the outer groove, and ${figure(inner.wall, units)} between the bore and the inner groove.`
    case 'nesting':
      return nested
        ? `With ${figure(landGap, units)} between the lands, the inner ring can be cut from the hole of the outer ring.`
        : `${figure(landGap, units)} between the lands is too little to cut the inner ring from the hole of the outer ring.`
    case 'seat':
      return seatSentence(ranked)
    case 'sensitivity':
      return `If all ${design.balls.count} balls are larger by 1 ${units}, the gap closes by ${Math.abs(bearing.gapPerBallDiameter).toFixed(1)} ${units}.`
    case 'material':
      return `${percent(ranked.materialUsed)} of the board becomes rings.`
    default:
      return name satisfies never
  }
}

function seatSentence({ bearing: { outerRing, innerRing, resolved }, design }: Ranked): string {
  const sits = [outerRing, innerRing].every(({ seat }) => seat === 'bottom')
  const radius = figure(outerRing.grooveRadius, design.units)
  const ball = figure(mm(resolved.ballDiameter / 2), design.units)
  return sits
    ? `The balls sit on the bottom of the groove: its radius is ${radius}, that of a ball ${ball}.`
    : `The balls ride on the edges of the groove: its radius of ${radius} is smaller than that of a ball, ${ball}.`
}

/** The rule's nearest figure for the diameter of the outer groove's bottom. */
export const shopOf = ({ bearing, design }: Ranked): string =>
  shopFigure(bearing.outerRing.grooveBottomDiameter, design.units, design.shopDenominator).text

export const DROPPED: Readonly<Record<DropReason, string>> = {
  'too-few-balls': 'There are not enough balls of that size.',
  'no-such-groove':
    'The cutter cannot cut that groove, or the groove is as wide as the ring or deeper than the middle of the ball.',
  'lands-touch': 'The two grooves together are so deep that the rings would touch.',
  'outside-diameter': 'The outside diameter is not within its limits.',
  'no-board': 'No board is wide enough.',
  'bore-too-large': 'The wood left behind a groove is less than a third of a ball diameter.',
  'cannot-be-made': 'The bearing cannot be made, or would not run.',
  'not-on-rule': "Cut to the rule's nearest figure, the groove leaves a gap outside its limits.",
  'not-all-year': 'The bearing does not run all year: the balls or the rings bind, or the lands rub.',
  'dents-deeper': 'The load leaves a dent deeper than the limit.',
}
