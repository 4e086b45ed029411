import type { CagedBearing, Design, RadialBearing, RollerBearing, ThrustBearing } from '#shared/bearing/arrangements.ts'
import type { Severity } from '#shared/bearing/warning.ts'
import type { Mm } from '#shared/units/length.ts'
import { figure } from './figure.ts'

/*
 * The sentence or two at the top of an answer that a maker can act on, of paths whose advice is not a whole file of its own.
 */

/** What to cut, and whether to read on first. */
export function designSummary({ bearing, warnings }: Pick<Design, 'bearing' | 'warnings'>): string {
  return `${whatToCut(bearing)}${readFirst(warnings)}`
}

function whatToCut(bearing: Design['bearing']): string {
  if ('plate' in bearing) return platesToCut(bearing)
  if ('cage' in bearing) return cagedToCut(bearing)
  return bearing.cheeks === undefined ? ringsToCut(bearing) : tracksToCut(bearing)
}

type Size = (length: Mm) => string
const sizeIn =
  ({ settled }: Design['bearing']): Size =>
  (length) =>
    figure(length, settled.input.units)

function ringsToCut(bearing: RadialBearing): string {
  const { outerRing: outer, innerRing: inner, settled, ballGap } = bearing
  const size = sizeIn(bearing)
  return `Cut the outer groove to ${size(outer.grooveBottomDiameter)} across its bottoms and the inner groove to ${size(inner.grooveBottomDiameter)}: the ${settled.input.balls.count} balls then leave a gap of ${size(ballGap)}.`
}

function tracksToCut(bearing: RollerBearing): string {
  const { outerRing: outer, innerRing: inner, settled, ballGap } = bearing
  const size = sizeIn(bearing)
  return `Turn the outer ring's track to ${size(outer.grooveBottomDiameter)} and the inner ring's to ${size(inner.grooveBottomDiameter)}: the ${settled.input.balls.count} rollers then leave a gap of ${size(ballGap)}.`
}

function platesToCut(bearing: ThrustBearing): string {
  const { plate, settled, ballGap, plateGap } = bearing
  const size = sizeIn(bearing)
  return `Cut a groove ${size(plate.grooveDepth)} deep on a circle of ${size(plate.grooveCircleDiameter)} into both plates: the ${settled.input.balls.count} balls then leave a gap of ${size(ballGap)}, and the plates lie ${size(plateGap)} apart.`
}

function cagedToCut(bearing: CagedBearing): string {
  const { outerRing: outer, innerRing: inner, settled, ballSpacing } = bearing
  const size = sizeIn(bearing)
  return `Cut the outer groove to ${size(outer.grooveBottomDiameter)} across its bottoms and the inner groove to ${size(inner.grooveBottomDiameter)}: the cage then holds the ${settled.input.balls.count} balls ${size(ballSpacing)} apart.`
}

/** Warnings that stop a maker come before the cutting. */
function readFirst(warnings: readonly { readonly severity: Severity }[]): string {
  const has = (severity: Severity) => warnings.some((warning) => warning.severity === severity)
  if (has('fault')) return ' It will not work as it is: read the warnings before you cut.'
  return has('risk') ? ' Read the warnings before you cut.' : ''
}
