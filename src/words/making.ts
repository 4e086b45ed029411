import type { Seasoned } from '#shared/bearing/making-input.ts'
import type { Nesting } from '#shared/making/nesting.ts'
import type { ScrewFault } from '#shared/making/split-ring.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { figure } from './figure.ts'
import { runAllYear } from './seasonal-fit.ts'
import type { Terms } from './terms.ts'

/** Whether the inner ring can be cut from the core of the outer one. */
export function nestingSentence(nesting: Nesting, units: Units, terms: Terms): string {
  const { nests, core, shortBy, largestAllowance, landGapNeeded, thicknessNeeded } = nesting
  const size = (length: Mm): string => figure(length, units)
  if (nests) return 'The inner ring can be cut from the core of the outer ring.'
  if (core === 0) return 'Nothing is sawn out of the outer ring, so the inner ring needs wood of its own.'
  if (shortBy <= 0)
    return `The core is wide enough for the inner ring, but the blank of the outer ring must be ${size(thicknessNeeded)} thick to give both halves.`
  const allowance =
    largestAllowance === undefined ? '' : `a turning allowance of ${size(largestAllowance)} on both rings, or with `
  return `The core is ${size(shortBy)} too small for the inner ring. It would fit with ${allowance}a ${terms.landGap} of ${size(landGapNeeded)}, if the blank is ${size(thicknessNeeded)} thick.`
}

/** Whether it runs through the year where it lives. */
export const seasonSentence = ({ runsAllYear }: Seasoned): string => `${runAllYear(runsAllYear)} in the stated climate.`

/** Faults of the screws of a split ring. Only rings with grooves have any. */
export function screwSentence(fault: ScrewFault, units: Units): string {
  const size = (length: Mm): string => figure(length, units)
  switch (fault.code) {
    case 'wall-too-thin':
      return `${size(fault.wall)} of wood is too little for a ${fault.screw} screw. It needs ${size(fault.least)}: the head, and wood as thick as the shank on either side.`
    case 'no-screw-length':
      return `No ${fault.screw} screw on sale both holds in the far half of a ring ${size(fault.width)} wide and stays inside it. Use dowels${fault.clearing === undefined ? '' : `, or make the ring ${size(fault.clearing)} wide`}.`
    case 'screws-crowd':
      return `${fault.count} screws are too close together on their circle and may crack the wood. Use ${Math.max(2, fault.most)}.`
    default:
      return fault satisfies never
  }
}

/** A fault of a request that its schema does not find. */
export const kerfTooWide = (most: Mm, units: Units): string =>
  `is wider than a laser or a fine saw cuts: give at most ${figure(most, units)}, for a wider cutter rounds the corners of the gauges`
