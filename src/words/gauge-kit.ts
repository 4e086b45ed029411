import type { AbrasiveDowel, PlugToTurn, ProfileToCut, SetBlock } from '#shared/making/gauge-kit.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { differenceFigure, figure } from './figure.ts'
import type { Terms } from './terms.ts'

/* How each gauge is made, measured and used. */

const RINGS = { outerRing: 'outer ring', innerRing: 'inner ring' } as const
const size = (length: Mm, units: Units): string => figure(length, units)

/** How a bar stands for a disc. */
export const BAR_ENTERS = 'A bar enters where it goes in and turns all the way round.'

export function plugSentence(plug: PlugToTurn, units: Units): string {
  const { kind, diameter, tolerance, barWidth } = plug
  const off = `at most ${differenceFigure(tolerance, units)} off either way`
  const make =
    barWidth !== undefined
      ? `Cut a bar ${size(diameter, units)} long, ${off}, along the grain and at least ${size(barWidth, units)} wide, its ends parts of a circle of that diameter. ${BAR_ENTERS} Measure it from end to end,`
      : `Turn a disc of ${size(diameter, units)}, ${off}. Measure it across the grain and along it,`
  return `${make} and mark it ${kind === 'snug' ? '"plug": it just enters between the balls, evenly spread' : `"${kind}"`}.`
}

export const profileSentence = ({ ring, radius, depth }: ProfileToCut, units: Units): string =>
  `Cut a card and a scraper with a tip of ${size(radius, units)} radius that stands ${size(depth, units)} out from its shoulders. The groove of the ${RINGS[ring]} is as deep as drawn when the shoulders meet the land.`

/** A set-block is made for equal ones of the planned size: real ones may need less wood off, or more. */
export const fitDecides = ({ element }: Terms): string => `what you measure with the ${element.many} in decides.`

export function setBlockSentence({ ring, at, length }: SetBlock, units: Units, terms: Terms): string {
  const make = `Cut a strip of wood ${size(length, units)} long and set the caliper to it:`
  const raceway = `the ${terms.raceway.one} of the ${RINGS[ring]}`
  return at === 'stop'
    ? `${make} there the sharp tool stops in ${raceway}.`
    : `${make} so it measures across ${raceway} when it is done as drawn, but ${fitDecides(terms)}`
}

export const dowelSentence = ({ ring, diameter, paper }: AbrasiveDowel, units: Units): string =>
  `Turn a dowel of ${size(diameter, units)} and wrap it once in paper ${differenceFigure(paper, units)} thick: it then has the radius of the groove of the ${RINGS[ring]}. Where your paper is thicker or thinner, turn the dowel by twice the difference thinner or thicker.`
