import { itemAt } from '#shared/numbers/item-at.ts'
import type { DesignSearch, Ranked, SearchRefusal } from '#shared/questions/search/design-search.ts'
import type { DropReason } from '#shared/questions/search/drop-reason.ts'
import type { Criterion } from '#shared/questions/search/fields.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { shopFigure } from '#shared/units/shop-figure.ts'
import type { Scale } from '#shared/units/temperature.ts'
import { figure, giveOrTake, percent } from './figure.ts'
import { seasonRefusalSentence } from './season-refusal.ts'
import { TERMS, type Terms } from './terms.ts'

/* Faults of a request that its schema does not find. */

interface TooManyCombinations {
  readonly candidates: number
  readonly most: number
  /** With a load or a year, each of which takes time for every design. */
  readonly isHard: boolean
}

export const tooManyCombinations = ({ candidates, most, isHard }: TooManyCombinations): string =>
  `The lists, counts and bores make ${candidates} combinations, but a search${isHard ? ' with a load or a year' : ''} takes at most ${most}. Shorten a list, or use a larger step of bores.`

export const lengthsReversed = (smallest: Mm, largest: Mm, units: Units): string =>
  `The smallest, ${figure(smallest, units)}, is above the largest, ${figure(largest, units)}.`

/** Why a weight counts for nothing. */
export const NOT_MARKED = {
  load: 'does not apply without `load`: remove it',
  onHand: 'does not apply without `drillDiameters` or `plugDiameters`: remove it',
} as const

export const countsReversed = (smallest: number, largest: number): string =>
  `The smallest, ${smallest}, is above the largest, ${largest}.`

export function explainRefusal(refusal: SearchRefusal, scale: Scale, terms: Terms): string {
  if (refusal.code !== 'hardly-any-runs') return seasonRefusalSentence(refusal, scale, terms)
  return `A thousand of the best designs do not run all year, and trying the others would take too long. Allow a wider ${terms.gap} and more play, choose woods and constructions that move less, or state a narrower year.`
}

const loadSentence = (margin: number, { element }: Terms): string =>
  margin < 1
    ? `Its working load, turned slowly by hand, is only ${margin} times the load: the ${element.many} leave marks.`
    : `Its working load, turned slowly by hand, is ${margin} times the load: the ${element.many} leave no mark.`

/** Why a design has its mark for a criterion. */
export function explainCriterion(name: Criterion, ranked: Ranked, { search }: Pick<DesignSearch, 'search'>): string {
  const { sizes, isNested, marks, margin = 0 } = ranked
  const { units } = search.input
  const terms = TERMS[search.arrangement]
  const mark = marks[name] ?? 0
  const landGap = figure(sizes.landGap ?? mm(0), units)
  switch (name) {
    case 'running':
      return runningSentence(ranked, mark, search)
    case 'load':
      return loadSentence(Number(margin.toPrecision(2)), terms)
    case 'wall':
      return `${figure(sizes.outerWall, units)} of wood is left ${terms.outerWall}, and ${figure(sizes.innerWall, units)} ${terms.innerWall}.`
    case 'seat':
      return seatSentence(ranked, units)
    case 'material':
      return `${percent(mark)} of the board becomes ${terms.part.many}.`
    case 'nesting':
      return isNested
        ? `With a ${terms.landGap} of ${landGap}, the inner ring can be cut from the hole of the outer ring.`
        : `A ${terms.landGap} of ${landGap} is too little to cut the inner ring from the hole of the outer ring.`
    case 'onHand':
      return `${mark === 1 ? 'All' : mark === 0 ? 'None' : 'Some'} of the drills and plugs that it needs are on hand.`
    default:
      return name satisfies never
  }
}

function runningSentence({ bearing, spread }: Ranked, chance: number, { input, arrangement }: DesignSearch['search']) {
  const within = (mean: Mm, deviation: number): string =>
    giveOrTake({ mean, standardDeviation: mm(deviation) }, input.units)
  const figures = [
    ...('ballGap' in bearing ? [`a ${TERMS[arrangement].gap} of ${within(bearing.ballGap, spread.gap)}`] : []),
    ...('radialInternalClearance' in bearing
      ? [`a play of ${within(bearing.radialInternalClearance, spread.play)}`]
      : []),
  ]
  const when = input.year === undefined ? 'With your tools it runs' : 'With your tools it runs all year'
  return `${when} with a chance of ${percent(chance)}: it comes out with ${figures.join(' and ')}.`
}

function seatSentence({ bearing: { resolved }, sizes }: Ranked, units: Units): string {
  const { ballDiameter } = resolved
  const radius = figure(mm(itemAt(sizes.seats, 0).conformity * ballDiameter), units)
  const ball = figure(mm(ballDiameter / 2), units)
  return sizes.seats.every(({ onBottom }) => onBottom)
    ? `The balls sit on the bottom of the groove: its radius is ${radius}, that of a ball ${ball}.`
    : `The balls ride on the edges of the groove: its radius of ${radius} is smaller than that of a ball, ${ball}.`
}

/** The rule's nearest figure for the circle that is cut to set the bearing. */
export const shopOf = ({ sizes, design: { units, shopDenominator } }: Ranked): string =>
  shopFigure(sizes.cutDiameter, units, shopDenominator).text

export function droppedFor(reason: DropReason, { element, raceway, part }: Terms): string {
  const sentences: Readonly<Record<DropReason, string>> = {
    'too-few-balls': `There are not enough ${element.many} of that size.`,
    'no-such-groove': `The cutter cannot cut that ${raceway.one}, or it is wider than the wood or too deep.`,
    'lands-touch': `The ${raceway.many} together are so deep that the ${part.many} would touch.`,
    'outside-diameter': 'The outside diameter is not within its limits.',
    'no-board': 'No board is wide enough.',
    'bore-too-large': `The wood left beside a ${raceway.one} is less than a third of a ${element.one} diameter.`,
    'cannot-be-made': 'The bearing cannot be made, or would not run.',
    'not-on-rule': `Cut to the rule's nearest figure, the ${raceway.one} leaves a gap outside its limits.`,
    'not-all-year': 'The bearing does not run all year: it binds at its driest or its dampest.',
    'dents-deeper': 'The load leaves a dent deeper than the limit.',
  }
  return sentences[reason]
}
