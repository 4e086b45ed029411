import type { PartName, Refusal, RingName } from '#shared/bearing/refusal.ts'
import type { Units } from '#shared/units/length.ts'
import { figure } from './figure.ts'

export const RING_WORDS: Readonly<Record<RingName, string>> = { outerRing: 'outer', innerRing: 'inner' }

/** What a groove is cut in, within a sentence. */
export const PART_WORDS: Readonly<Record<PartName, string>> = {
  outerRing: 'the outer ring',
  innerRing: 'the inner ring',
  plates: 'each plate',
}

/** What is about the gap of a full ring and nothing else. */
const ABOUT_THE_GAP: ReadonlySet<string> = new Set(['size-table', 'tolerance-check', 'ball-selection'])

function notAnswered({ arrangement, question }: Extract<Refusal, { code: 'not-answered' }>): string {
  return arrangement === 'caged' && ABOUT_THE_GAP.has(question)
    ? `a ${arrangement} arrangement is not answered by ${question}: that is about the gap of a full ring, and a cage leaves none`
    : `a ${arrangement} arrangement is not answered by ${question} as yet`
}

/** Why there is no such bearing, in a woodworker's words. Without a schema: a browser says it too. */
export function refusalSentence(refusal: Refusal, units: Units): string {
  switch (refusal.code) {
    case 'bore-meets-groove':
      return `a bore of ${figure(refusal.given, units)} cuts into the inner ring's groove: keep it well below ${figure(refusal.below, units)}`
    case 'no-room-inside':
      return `${refusal.ballCount} balls of this size leave no room for an inner ring: take more balls`
    case 'wall-below-zero':
      return `an outside diameter of ${figure(refusal.given, units)} leaves no wood behind the outer groove: it must be well above ${figure(refusal.above, units)}`
    case 'groove-undercut':
      return `a groove ${figure(refusal.depth, units)} deep with a radius of ${figure(refusal.grooveRadius, units)} would undercut the land of ${PART_WORDS[refusal.ring]}: the depth can be no more than the radius`
    case 'lands-overlap':
      return `the two grooves together are so deep that the rings would overlap by ${figure(refusal.overlap, units)}: make one of them shallower`
    case 'gap-takes-another-ball':
      return `a gap of ${figure(refusal.given, units)} is nearly room for one more ball: keep it below ${figure(refusal.below, units)}, or add a ball`
    case 'gap-band-reversed':
      return `the smallest gap allowed, ${figure(refusal.min, units)}, is above the largest, ${figure(refusal.max, units)}`
    case 'gap-outside-band':
      return `the ball gap of ${figure(refusal.given, units)} lies outside of what is allowed, ${figure(refusal.min, units)} to ${figure(refusal.max, units)}`
    case 'play-lets-balls-out':
      return `a play of ${figure(refusal.given, units)} lets the balls climb out of the shallower groove: keep it well below ${figure(refusal.below, units)}`
    case 'finish-fills-groove':
      return `a finish of ${figure(refusal.given, units)} on each surface is as thick as the groove is deep: keep it well below ${figure(refusal.below, units)}`
    case 'finish-leaves-no-wood':
      return `a finish of ${figure(refusal.given, units)} on both sides is thicker than the thinnest wood of the rings: keep it well below ${figure(refusal.below, units)}`
    case 'beyond-bounds':
      return `${figure(refusal.given, units)} lies outside of what can be asked, ${figure(refusal.least, units)} to ${figure(refusal.most, units)}: give a length inside it, or other balls`
    case 'plates-meet':
      return `balls that sit ${figure(refusal.depth, units)} deep in both plates leave no room between them: let them sit well above their middle, ${figure(refusal.below, units)}`
    case 'plate-cut-through':
      return `a plate ${figure(refusal.given, units)} thick is cut through by its groove: make it well above ${figure(refusal.above, units)}`
    case 'not-of-arrangement':
      return `is nothing that a ${refusal.arrangement} arrangement has: leave it out`
    case 'not-answered':
      return notAnswered(refusal)
    case 'roller-longer-than-ring':
      return `a roller ${figure(refusal.given, units)} long would be pinched between the cheeks: keep it below the ring's width, ${figure(refusal.below, units)}`
    case 'play-lets-rollers-climb':
      return `with a play of ${figure(refusal.given, units)} the rollers wedge over one another: keep it well below ${figure(refusal.below, units)}`
    case 'pockets-meet':
      return `on a pitch diameter of ${figure(refusal.given, units)} the pockets of the cage run into one another: make it well above ${figure(refusal.above, units)}, or take fewer balls`
    case 'no-room-for-cage':
      return `a clearance of ${figure(refusal.given, units)} to both lands leaves no room for a cage: keep it well below ${figure(refusal.below, units)}, or make a groove shallower`
    case 'cage-misses-middle':
      return `balls that sit ${figure(refusal.depth, units)} deep in the ${RING_WORDS[refusal.ring]} ring have their middle beside the cage, which cannot hold them: let them sit well above ${figure(refusal.below, units)}`
    case 'pocket-cuts-cage':
      return `a cage ${figure(refusal.given, units)} wide is cut in two by its pockets: make it well above ${figure(refusal.above, units)}`
    case 'too-few-measured':
      return `${refusal.given} measured diameters are fewer than the ${refusal.needed} balls of the ring: measure them all`
    default:
      return refusal satisfies never
  }
}
