import type { WarningFacts } from '#shared/bearing/warning.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { figure } from './figure.ts'
import { PART_WORDS, RING_WORDS } from './refusal.ts'

/** What is cut to a rule's figure. */
const MEASURED: Readonly<Record<Extract<WarningFacts, { code: 'shop-rounding-spoils-gap' }>['dimension'], string>> = {
  grooveBottomDiameter: 'outer groove bottom',
  grooveCircleDiameter: "groove's circle",
  gaugeDiameter: 'gauge',
}

/** What is not well with a bearing, in a woodworker's words. Without a schema: a browser says it too. */
export function warningSentence(facts: WarningFacts, units: Units): string {
  const size = (length: Mm): string => figure(length, units)
  switch (facts.code) {
    case 'lands-touch':
      return `the lands of the two rings touch: with the inner ring aside they overlap by ${size(-facts.leastLandGap as Mm)}; make a groove shallower`
    case 'lands-nearly-touch':
      return `only ${size(facts.leastLandGap)} is left between the lands where the inner ring stands aside: wood that swells will rub; leave ${size(facts.least)}`
    case 'outer-wall-thin':
      return `only ${size(facts.wall)} of wood is left behind the outer groove: it may split on the lathe; leave ${size(facts.least)}`
    case 'inner-wall-thin':
      return `only ${size(facts.wall)} of wood is left between bore and inner groove: it may split; leave ${size(facts.least)}`
    case 'no-room-for-screws':
      return `${size(facts.wall)} of wood between bore and groove is too little for the screws that hold the split inner ring: leave ${size(facts.least)}, or glue or dowel the halves`
    case 'groove-wider-than-ring':
      return `the ${RING_WORDS[facts.ring]} ring's groove is ${size(facts.grooveWidth)} wide and the ring only ${size(facts.width)}: nothing is left of its sides`
    case 'shoulders-thin':
      return `only ${size(facts.shoulder)} of wood is left on each side of the ${RING_WORDS[facts.ring]} ring's groove: it chips; leave ${size(facts.least)}`
    case 'shallow-engagement':
      return `the balls sit only ${size(facts.seatDepth)} deep in ${PART_WORDS[facts.ring]}: a knock lifts them out; let them sit ${size(facts.least)} deep`
    case 'groove-past-middle':
      return `${PART_WORDS[facts.ring]}'s groove is ${size(facts.grooveDepth)} deep, past the middle of the ball (${size(facts.ballRadius)}): its edges stand in the way of the ball`
    case 'rides-on-edges':
      return `${PART_WORDS[facts.ring]}'s groove (radius ${size(facts.grooveRadius)}) is tighter than the ball (${size(facts.ballRadius)}): the ball rides on the two edges, ${size(facts.seatDepth)} deep and not ${size(facts.grooveDepth)}, and wears them; all diameters here allow for that`
    case 'ball-wanders':
      return `${PART_WORDS[facts.ring]}'s groove (radius ${size(facts.grooveRadius)}) is much rounder than the ball: the ball wanders from side to side; keep it to ${size(facts.most)}`
    case 'rollers-turn-askew':
      return `rollers ${size(facts.length)} long are shorter than thick: they turn askew and jam; make them ${size(facts.least)} or longer`
    case 'plate-thin':
      return `only ${size(facts.floor)} of wood is left under the groove: a plate so thin warps or is cut through; leave ${size(facts.least)}`
    case 'plates-nearly-meet':
      return `only ${size(facts.plateGap)} is left between the plates: one that warps will rub; leave ${size(facts.least)}`
    case 'web-thin':
      return `only ${size(facts.web)} of wood is left between two pockets of the cage: it breaks; leave ${size(facts.least)}`
    case 'cage-rim-thin':
      return `only ${size(facts.rim)} of wood is left between the pockets and the sides of the cage: it breaks; leave ${size(facts.least)}`
    case 'cage-thin':
      return `the cage is only ${size(facts.thickness)} thick between the lands: it breaks; leave it ${size(facts.least)}`
    case 'cage-rubs':
      return `only ${size(facts.left)} is left for the cage where the inner ring stands aside: wood that swells will pinch it; leave ${size(facts.least)}`
    case 'cage-stands-out':
      return `the cage, ${size(facts.width)} wide, stands out of the rings, which are ${size(facts.ringWidth)} wide: what turns past it may catch`
    case 'few-balls':
      return `${facts.count} balls run rough, as the load passes from one to the next: take ${facts.fewest} or more`
    case 'cannot-assemble':
      return cannotAssemble(facts)
    case 'gap-below-assembly-gap':
      return `with a ball gap of ${size(facts.ballGap)} the last ball must be forced in: it needs about ${size(facts.assemblyGap)} (rigid balls; wood gives a little)`
    case 'no-play':
      return `a play of ${size(facts.play)} binds as soon as the wood moves: leave ${size(facts.least)} or more`
    case 'shop-rounding-spoils-gap':
      return `cut to the shop figure ${facts.shop}, the ${MEASURED[facts.dimension]} leaves a ball gap of ${size(facts.gapThere)}, outside ${size(facts.minBallGap)} to ${size(facts.maxBallGap)}: work to the exact figure or choose a gap that lands on the rule`
    default:
      return facts satisfies never
  }
}

function cannotAssemble({
  ballSet,
  count,
  mostBalls,
  roomBetweenLands,
}: Extract<WarningFacts, { code: 'cannot-assemble' }>): string {
  if (ballSet === 'caged') return cannotFill(count, mostBalls, roomBetweenLands)
  const room = roomBetweenLands ? '' : ', and the lands stand too close to let a ball in between'
  return `a full ring of ${count} balls cannot be put between two one-piece rings: set aside, they take ${mostBalls} balls at most${room}; split one ring`
}

/** Fewer balls than a full ring: what keeps them out is that they lie too near to one another, or the lands do. */
function cannotFill(count: number, mostBalls: number, roomBetweenLands: boolean): string {
  const many =
    count > mostBalls
      ? `${count} balls side by side reach too far round for the inner ring to come back to the middle, ${mostBalls} would not: set them further apart`
      : ''
  const narrow = roomBetweenLands
    ? ''
    : 'the lands stand too close to let a ball in between with the inner ring aside: both grooves together can be no more than half a ball deep'
  return `two one-piece rings cannot be filled: ${[many, narrow].filter((reason) => reason !== '').join(', and ')}; or split one ring`
}
