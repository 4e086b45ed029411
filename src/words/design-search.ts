import type { Ranked, SearchRefusal } from '#shared/questions/search/design-search.ts'
import type { DropReason } from '#shared/questions/search/drop-reason.ts'
import type { Criterion } from '#shared/questions/search/input.ts'
import { mm } from '#shared/units/length.ts'
import { shopFigure } from '#shared/units/shop-figure.ts'
import type { Scale } from '#src/api/climate.ts'
import { figure, percent } from './figure.ts'
import { seasonRefusalSentence } from './season-refusal.ts'

export function explainRefusal(refusal: SearchRefusal, scale: Scale): string {
  if (refusal.code !== 'hardly-any-runs') return seasonRefusalSentence(refusal, scale)
  return 'a thousand of the best designs do not run all year, and what is left would take too long to try: allow a wider ball gap and more play, take woods and ways of gluing that move less, or a narrower year'
}

/** Why a criterion has the mark that it has. */
export function explainCriterion(name: Criterion, ranked: Ranked): string {
  const { bearing, gapAtShop, design, nested } = ranked
  const { units } = design
  const { outerRing: outer, innerRing: inner, landGap } = bearing
  switch (name) {
    case 'closure':
      return `cut to ${shopOf(ranked)}, the outer groove leaves a gap of ${figure(gapAtShop, units)}; aimed at is ${figure(bearing.ballGap, units)}`
    case 'wall':
      return `${figure(outer.wall, units)} of wood behind the outer groove, ${figure(inner.wall, units)} between bore and inner groove`
    case 'nesting':
      return nested
        ? `with ${figure(landGap, units)} between the lands the inner ring comes out of the outer ring's hole`
        : `${figure(landGap, units)} between the lands is too little to cut the inner ring out of the outer one's hole`
    case 'seat':
      return seatSentence(ranked)
    case 'sensitivity':
      return `${design.balls.count} balls: if they all run larger by 1, the gap closes by ${Math.abs(bearing.gapPerBallDiameter).toFixed(1)}`
    case 'material':
      return `${percent(ranked.materialUsed)} of the board becomes rings`
    default:
      return name satisfies never
  }
}

function seatSentence({ bearing: { outerRing, innerRing, settled }, design }: Ranked): string {
  const sits = [outerRing, innerRing].every(({ seat }) => seat === 'bottom')
  const radius = figure(outerRing.grooveRadius, design.units)
  const ball = figure(mm(settled.ballDiameter / 2), design.units)
  return sits
    ? `the balls sit on the bottom: groove radius ${radius}, ball ${ball}`
    : `the groove, radius ${radius}, is tighter than the ball, ${ball}: it rides on the edges`
}

/** What the rule shows for the outer groove's bottom. */
export const shopOf = ({ bearing, design }: Ranked): string =>
  shopFigure(bearing.outerRing.grooveBottomDiameter, design.units, design.shopDenominator).text

export const DROPPED: Readonly<Record<DropReason, string>> = {
  'too-few-balls': 'there are not so many balls of that size',
  'no-such-groove':
    'the cutter cannot make that groove, or the groove is as wide as the ring or past the middle of the ball',
  'lands-touch': 'both grooves together are so deep that the rings would touch',
  'outside-diameter': 'the outside diameter is not within its limits',
  'no-board': 'no board is wide enough',
  'bore-too-large': 'less than a third of a ball of wood is left behind a groove',
  'cannot-be-made': 'such a bearing cannot be made, or would not run',
  'not-on-rule': "cut to the rule's nearest figure, the groove leaves a gap outside of its band",
  'not-all-year': 'the year stops it: the balls or the rings bind, or the lands rub',
  'dents-deeper': 'the load leaves a deeper dent than is borne',
}
