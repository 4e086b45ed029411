import type { PartName, Refusal } from '#shared/bearing/refusal.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { figure } from './figure.ts'
import type { Terms } from './terms.ts'

/** The part in which a groove is cut, within a sentence. */
export const PART_WORDS: Readonly<Record<PartName, string>> = {
  outerRing: 'the outer ring',
  innerRing: 'the inner ring',
  plates: 'each plate',
}

/** The surface that a groove is cut into, within a sentence. */
const SURFACE_WORDS: Readonly<Record<PartName, string>> = {
  outerRing: 'the land of the outer ring',
  innerRing: 'the land of the inner ring',
  plates: 'the face of each plate',
}

/** The questions about the gap of a full ring, which a caged bearing does not have. */
const ABOUT_THE_GAP: ReadonlySet<string> = new Set(['size-table', 'tolerance-check', 'ball-selection'])

/** Why there is no such bearing. Needs no schema, so a browser can show it too. */
export function refusalSentence(refusal: Refusal, units: Units, terms: Terms): string {
  const size = (length: Mm): string => figure(length, units)
  const { element } = terms
  switch (refusal.code) {
    case 'bore-meets-groove':
      return `A bore of ${size(refusal.given)} cuts into ${terms.innerRaceway}. Keep it well below ${size(refusal.below)}.`
    case 'no-room-inside':
      return `${refusal.ballCount} ${element.many} of this size leave no room for ${terms.inside}. Use more ${element.many}.`
    case 'wall-below-zero':
      return `An outside diameter of ${size(refusal.given)} leaves no wood ${terms.outerWall}. Make it well above ${size(refusal.above)}.`
    case 'groove-undercut':
      return `A groove ${size(refusal.depth)} deep with a radius of ${size(refusal.grooveRadius)} would undercut ${SURFACE_WORDS[refusal.ring]}. Make it no deeper than its radius.`
    case 'lands-overlap':
      return `The two grooves together are so deep that the rings would overlap by ${size(refusal.overlap)}. Make one groove shallower.`
    case 'gap-takes-another-ball':
      return `A ${terms.gap} of ${size(refusal.given)} is nearly enough room for another ${element.one}. Keep it below ${size(refusal.below)}, or add a ${element.one}.`
    case 'gap-band-reversed':
      return `The smallest gap allowed, ${size(refusal.min)}, is above the largest, ${size(refusal.max)}.`
    case 'gap-outside-band':
      return `The ${terms.gap} of ${size(refusal.given)} is outside the range allowed, ${size(refusal.min)} to ${size(refusal.max)}.`
    case 'play-lets-balls-out':
      return `With a play of ${size(refusal.given)} the balls climb out of the shallower groove. Keep the play well below ${size(refusal.below)}.`
    case 'finish-fills-groove':
      return `A finish of ${size(refusal.given)} on each surface is as thick as the groove is deep. Keep it well below ${size(refusal.below)}.`
    case 'finish-leaves-no-wood':
      return `A finish of ${size(refusal.given)} on both sides is thicker than the thinnest wood of the ${terms.part.many}. Keep it well below ${size(refusal.below)}.`
    case 'beyond-bounds':
      return `${size(refusal.given)} is outside the range allowed, ${size(refusal.min)} to ${size(refusal.max)}. Give a length inside it, or use ${element.many} of another size.`
    case 'plates-meet':
      return `Balls that sit ${size(refusal.depth)} deep in both plates leave no space between the plates. Keep that depth well below half a ball, ${size(refusal.below)}.`
    case 'plate-cut-through':
      return `The groove cuts through a plate ${size(refusal.given)} thick. Make the plate much thicker than ${size(refusal.above)}.`
    case 'not-of-arrangement':
      return `does not apply to ${terms.bearings}: remove it`
    case 'not-answered':
      return notAnswered(refusal, terms)
    case 'roller-longer-than-ring':
      return `A roller ${size(refusal.given)} long would be pinched between the cheeks. Keep it below the width of the ring, ${size(refusal.below)}.`
    case 'play-lets-rollers-climb':
      return `With a play of ${size(refusal.given)} the rollers wedge over one another. Keep the play well below ${size(refusal.below)}.`
    case 'pockets-meet':
      return `On a pitch diameter of ${size(refusal.given)} the pockets of the cage run into one another. Make it well above ${size(refusal.above)}, or use fewer balls.`
    case 'no-room-for-cage':
      return `A clearance of ${size(refusal.given)} to both lands leaves no room for a cage. Keep it well below ${size(refusal.below)}, or make a groove shallower.`
    case 'cage-misses-middle':
      return `Balls that sit ${size(refusal.depth)} deep in ${PART_WORDS[refusal.ring]} have their middle beside the cage, so it cannot hold them. Keep that depth well below ${size(refusal.below)}.`
    case 'pocket-cuts-cage':
      return `The pockets cut a cage ${size(refusal.given)} wide in two. Make the cage much wider than ${size(refusal.above)}.`
    case 'other-balls-measured':
      return `The measured ${element.many} are about ${size(refusal.middle)}, but a diameter of ${size(refusal.diameter)} is stated. Correct the one that is wrong.`
    case 'too-few-measured':
      return `${refusal.given} measured diameters are too few for ${refusal.needed} ${element.many}. Measure all of them.`
    default:
      return refusal satisfies never
  }
}

function notAnswered(
  { arrangement, question }: Extract<Refusal, { code: 'not-answered' }>,
  { bearings }: Terms,
): string {
  return arrangement === 'caged' && ABOUT_THE_GAP.has(question)
    ? `"${question}" is not available for ${bearings}: it is about the gap in a full ring of balls, and a cage leaves no such gap.`
    : `"${question}" is not available for ${bearings} yet.`
}
