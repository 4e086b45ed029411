import type { CagedBearing, Design, RadialBearing, RollerBearing, ThrustBearing } from '#shared/bearing/arrangements.ts'
import type { Method } from '#shared/bearing/method.ts'
import type { Severity } from '#shared/bearing/warning.ts'
import type { DesignSearch } from '#shared/questions/search/design-search.ts'
import { DROP_REASONS } from '#shared/questions/search/drop-reason.ts'
import type { SizeRow } from '#shared/questions/size-table/size-table.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { flatSawnBand, flatSawnOval } from '#shared/wood/flat-sawn-play.ts'
import { droppedFor } from './design-search.ts'
import { caliperFigure, figure } from './figure.ts'
import { TERMS } from './terms.ts'

/*
 * The sentence or two at the top of an answer that a maker can act on, of paths whose advice is not a whole file of its own.
 */

/** The size to cut, and whether to read the warnings first. */
export function designSummary({ bearing, warnings }: Pick<Design, 'bearing' | 'warnings'>): string {
  return `${whatToCut(bearing)}${readFirst(warnings)}${flatSawn(bearing)}`
}

/** The effect of a year on flat-sawn wood if no wood is stated, and where to state it. */
function flatSawn(bearing: Design['bearing']): string {
  const does = flatSawnDoes(bearing)
  if (does === undefined) return ''
  const then = 'plate' in bearing ? ' to have the year counted in' : ', and the play follows from them'
  return ` ${does} State the woods and the climate${then}.`
}

/** What a year does to a bearing of flat-sawn maple; undefined where its own year is stated, or where it does nothing. */
export function flatSawnDoes(bearing: Design['bearing']): string | undefined {
  if (bearing.resolved.input.making?.climate !== undefined) return undefined
  if ('plate' in bearing)
    return `The groove of a plate of flat-sawn maple goes ${figure(flatSawnOval(bearing.plate.grooveCircleDiameter), bearing.resolved.input.units)} out of round between dry and damp indoor air (35 to 60 %).`
  const { min, max } = flatSawnBand({
    outerDiameter: bearing.outerRing.grooveBottomDiameter,
    innerDiameter: bearing.innerRing.grooveBottomDiameter,
    play: bearing.radialInternalClearance,
  })
  const ends = [...(min > 0 ? [`below ${Math.ceil(min)} %`] : []), ...(max < 100 ? [`above ${Math.floor(max)} %`] : [])]
  if (ends.length === 0) return undefined
  return `Cut from flat-sawn maple in air of 50 % relative humidity, the inner ring binds ${ends.join(' and ')}.`
}

function whatToCut(bearing: Design['bearing']): string {
  if ('plate' in bearing) return platesToCut(bearing)
  if ('cage' in bearing) return cagedToCut(bearing)
  return bearing.cheeks === undefined ? ringsToCut(bearing) : tracksToCut(bearing)
}

type Size = (length: Mm) => string
const sizeIn =
  ({ resolved }: Design['bearing']): Size =>
  (length) =>
    figure(length, resolved.input.units)

/** What a caliper is set to: with all of its digits, as at the lathe. */
const setIn =
  ({ resolved }: Design['bearing']): Size =>
  (length) =>
    caliperFigure(length, resolved.input.units)

function ringsToCut(bearing: RadialBearing): string {
  const { outerRing: outer, innerRing: inner, resolved, ballGap } = bearing
  const [size, set] = [sizeIn(bearing), setIn(bearing)]
  return `Cut the outer groove to ${set(outer.grooveBottomDiameter)} across its bottoms and the inner groove to ${set(inner.grooveBottomDiameter)}: the ${resolved.input.balls.count} balls then leave a gap of ${size(ballGap)}.`
}

function tracksToCut(bearing: RollerBearing): string {
  const { outerRing: outer, innerRing: inner, resolved, ballGap } = bearing
  const [size, set] = [sizeIn(bearing), setIn(bearing)]
  return `Turn the outer ring's track to ${set(outer.grooveBottomDiameter)} and the inner ring's to ${set(inner.grooveBottomDiameter)}: the ${resolved.input.balls.count} rollers then leave a gap of ${size(ballGap)}.`
}

function platesToCut(bearing: ThrustBearing): string {
  const { plate, resolved, ballGap, plateGap } = bearing
  const [size, set] = [sizeIn(bearing), setIn(bearing)]
  return `Cut a groove ${size(plate.grooveDepth)} deep on a circle of ${set(plate.grooveCircleDiameter)} into both plates: the ${resolved.input.balls.count} balls then leave a gap of ${size(ballGap)}, and the plates lie ${size(plateGap)} apart.`
}

function cagedToCut(bearing: CagedBearing): string {
  const { outerRing: outer, innerRing: inner, resolved, ballSpacing } = bearing
  const [size, set] = [sizeIn(bearing), setIn(bearing)]
  return `Cut the outer groove to ${set(outer.grooveBottomDiameter)} across its bottoms and the inner groove to ${set(inner.grooveBottomDiameter)}: the cage then holds the ${resolved.input.balls.count} balls ${size(ballSpacing)} apart.`
}

/** Warnings that stop a maker come before the cutting. */
function readFirst(warnings: readonly { readonly severity: Severity }[]): string {
  const has = (severity: Severity) => warnings.some((warning) => warning.severity === severity)
  if (has('fault')) return ' It will not work as it is: read the warnings before you cut.'
  return has('risk') ? ' Read the warnings before you cut.' : ''
}

/** How far the table reaches, and what to do with a row. */
export function sizeTableSummary(rows: readonly SizeRow[], units: Units): string {
  const diameters = rows.map(({ pitchRadius }) => 2 * pitchRadius)
  const [smallest, largest] = [Math.min(...diameters), Math.max(...diameters)].map((size) => figure(mm(size), units))
  const reach = smallest === largest ? `of ${smallest}` : `from ${smallest} to ${largest}`
  return `${counted(rows.length, 'bearing')} with a pitch diameter ${reach}. Choose a row and send its \`balls\` with your bore to \`/v1/design\`.`
}

const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`

/** How to follow the sheet. */
export const jobSheetSummary = (
  operations: number,
  method: Method,
  warnings: readonly { readonly severity: Severity }[],
): string =>
  `Follow the ${counted(operations, 'operation')} in order, for ${MACHINES[method]}. Where a size has a figure to stop at, stop there with the sharp tool and sand the rest to the gauge.${readFirst(warnings)}`

const MACHINES: Readonly<Record<Method, string>> = {
  'saw-and-lathe': 'a saw and a lathe',
  'lathe-only': 'a lathe alone',
  'router-and-lathe': 'a router and a lathe',
}

/** The best design that was found, or why there is none. */
export function searchSummary({ ranked: [best], search, dropped }: DesignSearch): string {
  const { offset } = search.input
  const terms = TERMS[search.arrangement]
  if (best === undefined) {
    if (offset > 0) return `No design ranks below place ${offset}.`
    const [most] = DROP_REASONS.toSorted((one, other) => dropped[other] - dropped[one])
    const why = most === undefined || dropped[most] === 0 ? '' : ` The usual reason: ${droppedFor(most, terms)}`
    return `No design is within these limits.${why}`
  }
  const { units, balls, bore } = best.design
  const size = (length: Mm): string => figure(length, units)
  const place = offset === 0 ? 'The best design' : `The design in place ${offset + 1}`
  return `${place} has ${balls.count} ${terms.element.many} of ${size(balls.diameter)} and is ${size(best.sizes.outsideDiameter)} outside, with a bore of ${size(bore)}. Send its \`design\` to \`/v1/design\` for every size.`
}
