import type { WarningFacts } from '#shared/bearing/warning.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { figure, percent } from './figure.ts'
import { PART_WORDS } from './refusal.ts'
import type { Terms } from './terms.ts'

/** Warnings of a bearing in words. They need no schema, so a browser can show them too. */
export function warningSentence(facts: WarningFacts, units: Units, terms: Terms): string {
  const size = (length: Mm): string => figure(length, units)
  switch (facts.code) {
    case 'lands-touch':
      return `The lands of the two rings touch: with the inner ring moved to one side they overlap by ${size(-facts.leastLandGap as Mm)}. Make a groove shallower.`
    case 'lands-nearly-touch':
      return `Only ${size(facts.leastLandGap)} is left between the lands when the inner ring is moved to one side. Wood that swells will rub there: leave ${size(facts.least)}.`
    case 'outer-wall-thin':
      return `Only ${size(facts.wall)} of wood is left ${terms.outerWall}. It may split on the lathe: leave ${size(facts.least)}.`
    case 'inner-wall-thin':
      return `Only ${size(facts.wall)} of wood is left ${terms.innerWall}. It may split: leave ${size(facts.least)}.`
    case 'no-room-for-screws':
      return `${size(facts.wall)} of wood between the bore and the groove is too little for the screws that hold the split inner ring. Leave ${size(facts.least)}, or glue or dowel the halves.`
    case 'groove-wider-than-ring':
      return `The groove of ${PART_WORDS[facts.ring]} is ${size(facts.grooveWidth)} wide, but the ring is only ${size(facts.width)} wide. Nothing is left of its sides.`
    case 'shoulders-thin':
      return `Only ${size(facts.shoulder)} of wood is left on each side of ${PART_WORDS[facts.ring]}'s groove. Wood that thin chips: leave ${size(facts.least)}.`
    case 'shallow-engagement':
      return `The balls sit only ${size(facts.seatDepth)} deep in ${PART_WORDS[facts.ring]}, so a knock lifts them out. Let them sit ${size(facts.least)} deep.`
    case 'groove-past-middle':
      return `The groove of ${PART_WORDS[facts.ring]} is ${size(facts.grooveDepth)} deep, past the middle of the ball (${size(facts.ballRadius)}). Its edges get in the way of the ball.`
    case 'rides-on-edges':
      return `The groove of ${PART_WORDS[facts.ring]} (radius ${size(facts.grooveRadius)}) is tighter than the ball (radius ${size(facts.ballRadius)}). The ball rides on the two edges, ${size(facts.seatDepth)} deep instead of ${size(facts.grooveDepth)}, and wears them. All diameters here allow for that.`
    case 'ball-wanders':
      return `The groove of ${PART_WORDS[facts.ring]} (radius ${size(facts.grooveRadius)}) is much wider than the ball, which wanders from side to side. Keep the radius at or below ${size(facts.most)}.`
    case 'rollers-turn-askew':
      return `Rollers ${size(facts.length)} long are shorter than they are thick: they turn askew and jam. Make them ${size(facts.least)} or longer.`
    case 'plate-thin':
      return `Only ${size(facts.floor)} of wood is left under the groove. A plate that thin warps or is cut through: leave ${size(facts.least)}.`
    case 'plates-nearly-meet':
      return `Only ${size(facts.plateGap)} is left between the plates. A plate that warps will rub: leave ${size(facts.least)}.`
    case 'web-thin':
      return `Only ${size(facts.web)} of wood is left between two pockets of the cage. Wood that thin breaks: leave ${size(facts.least)}.`
    case 'cage-rim-thin':
      return `Only ${size(facts.rim)} of wood is left between the pockets and the sides of the cage. Wood that thin breaks: leave ${size(facts.least)}.`
    case 'cage-thin':
      return `The cage is only ${size(facts.thickness)} thick between the lands and may break. Make it ${size(facts.least)} thick.`
    case 'cage-rubs':
      return `Only ${size(facts.left)} is left for the cage when the inner ring is moved to one side. Wood that swells will pinch it: leave ${size(facts.least)}.`
    case 'cage-stands-out':
      return `The cage, ${size(facts.width)} wide, is wider than the rings, ${size(facts.ringWidth)}. Parts that turn past it may catch on it.`
    case 'few-balls':
      return `${facts.count} ${terms.element.many} run rough, because the load passes from one to the next. Use ${facts.fewest} or more.`
    case 'cannot-assemble':
      return cannotAssemble(facts)
    case 'gap-below-assembly-gap':
      return `With a ball gap of ${size(facts.ballGap)} you must force the last ball in. It needs about ${size(facts.assemblyGap)} (for rigid balls; wood gives a little).`
    case 'band-below-assembly-gap':
      return `The last ball needs a gap of about ${size(facts.assemblyGap)} to go in (for rigid balls; wood gives a little), but the largest gap allowed is ${size(facts.maxBallGap)}. A groove for which the go plug is right is then too deep for the no-go plug.`
    case 'plugs-cannot-tell':
      return `The plugs cannot tell when the ${terms.raceway.one} is finished: the ${terms.element.many} differ by ${size(facts.scatter)} (standard deviation). Where the go plug enters, the no-go plug does not and the last ${terms.element.one} goes in, ${percent(facts.tooDeep)} of ${terms.raceway.many} still have a gap above ${size(facts.maxBallGap)}. Measure the gap with a rule.`
    case 'no-play':
      return `A play of ${size(facts.play)} binds as soon as the wood moves. Leave ${size(facts.least)} or more.`
    case 'shop-rounding-spoils-gap':
      return `At the shop figure ${facts.shop}, ${measured(facts.dimension, terms)} leaves a ${terms.gap} of ${size(facts.gapThere)}, outside ${size(facts.least)} to ${size(facts.most)}. Work to the exact figure, or choose a gap that puts it on a mark of the rule.`
    default:
      return facts satisfies never
  }
}

type Measured = Extract<WarningFacts, { code: 'shop-rounding-spoils-gap' }>['dimension']

/** The size that is cut to a figure of the rule. */
function measured(dimension: Measured, { gapCircle }: Terms): string {
  switch (dimension) {
    case 'grooveBottomDiameter':
    case 'grooveCircleDiameter':
      return gapCircle
    case 'gaugeDiameter':
      return 'the gauge'
    default:
      return dimension satisfies never
  }
}

function cannotAssemble({
  ballSet,
  count,
  mostBalls,
  roomBetweenLands,
}: Extract<WarningFacts, { code: 'cannot-assemble' }>): string {
  if (ballSet === 'caged') return cannotFill(count, mostBalls, roomBetweenLands)
  const room = roomBetweenLands ? '' : ', and the lands are too close to let a ball in between'
  return `A full ring of ${count} balls cannot go between two one-piece rings: with the inner ring moved to one side there is room for ${mostBalls} balls at most${room}. Split one ring.`
}

/** With fewer balls than a full ring, either the balls are too close to one another or the lands are. */
function cannotFill(count: number, mostBalls: number, roomBetweenLands: boolean): string {
  return [
    'Two one-piece rings cannot be filled with these balls.',
    ...(count > mostBalls
      ? [
          `Side by side, ${count} balls reach too far round for the inner ring to come back to the middle; ${mostBalls} balls would not. Set the balls further apart.`,
        ]
      : []),
    ...(roomBetweenLands
      ? []
      : [
          'The lands are too close to let a ball in between with the inner ring moved to one side. Make both grooves together no more than half a ball deep.',
        ]),
    'Otherwise split one ring.',
  ].join(' ')
}
