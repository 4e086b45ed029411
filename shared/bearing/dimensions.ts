import { type Mm, mm } from '#shared/units/length.ts'
import { type ShopFigure, shopFigure } from '#shared/units/shop-figure.ts'
import { type BallRing, gapAt } from './ball-ring.ts'
import type { Bearing } from './bearing.ts'
import type { ThrustBearing } from './plates.ts'

/** The rows of the table, each under the name that the sentences and the drawings share. */
export const DIMENSION_KEYS = [
  'pitchDiameter',
  'outsideDiameter',
  'plateOutsideDiameter',
  'plateBoreDiameter',
  'plateGrooveDepth',
  'plateGrooveRadius',
  'plateGrooveWidth',
  'plateWall',
  'plateInnerWall',
  'plateFloor',
  'plateThickness',
  'outerTrackDiameter',
  'outerLandDiameter',
  'outerGrooveBottomDiameter',
  'outerGrooveDepth',
  'outerGrooveRadius',
  'outerGrooveWidth',
  'outerWall',
  'outerWidth',
  'boreDiameter',
  'innerTrackDiameter',
  'innerLandDiameter',
  'innerGrooveBottomDiameter',
  'innerGrooveDepth',
  'innerGrooveRadius',
  'innerGrooveWidth',
  'innerWall',
  'innerWidth',
  'rollerLength',
  'cheekOutsideDiameter',
  'cheekHoleDiameter',
  'cheekThickness',
  'gaugeNominalDiameter',
  'gaugeGoDiameter',
  'gaugeNoGoDiameter',
  'ballGap',
  'assemblyGap',
  'plateGap',
  'height',
  'landGap',
  'radialInternalClearance',
  'axialPlay',
] as const
export type DimensionKey = (typeof DIMENSION_KEYS)[number]

/** Symbols of ISO 15241 (from memory) where it has one, or our own. */
export const DIMENSION_SYMBOLS: Readonly<Record<DimensionKey, string>> = {
  pitchDiameter: 'Dpw',
  outsideDiameter: 'D',
  plateOutsideDiameter: 'D',
  plateBoreDiameter: 'd',
  plateGrooveDepth: 'h',
  plateGrooveRadius: 'r',
  plateGrooveWidth: 'b',
  plateWall: 'wo',
  plateInnerWall: 'wi',
  plateFloor: 'wf',
  plateThickness: 'B',
  outerTrackDiameter: 'E',
  outerLandDiameter: 'D1',
  outerGrooveBottomDiameter: 'De',
  outerGrooveDepth: 'he',
  outerGrooveRadius: 're',
  outerGrooveWidth: 'be',
  outerWall: 'we',
  outerWidth: 'C',
  boreDiameter: 'd',
  innerTrackDiameter: 'F',
  innerLandDiameter: 'd1',
  innerGrooveBottomDiameter: 'di',
  innerGrooveDepth: 'hi',
  innerGrooveRadius: 'ri',
  innerGrooveWidth: 'bi',
  innerWall: 'wi',
  innerWidth: 'B',
  rollerLength: 'Lw',
  cheekOutsideDiameter: 'Dc',
  cheekHoleDiameter: 'dc',
  cheekThickness: 'tc',
  gaugeNominalDiameter: 'Dg',
  gaugeGoDiameter: 'Dgo',
  gaugeNoGoDiameter: 'Dng',
  ballGap: 'g',
  assemblyGap: 'ga',
  plateGap: 's',
  height: 'T',
  landGap: 's',
  radialInternalClearance: 'Gr',
  axialPlay: 'Ga',
}

/** The cylinders that both rings are turned to first: lands, where a groove is cut into them, or else the tracks themselves. */
export const cylinderKeys = ({ settled }: Bearing): { readonly outer: DimensionKey; readonly inner: DimensionKey } =>
  settled.traits.raceway === 'groove'
    ? { outer: 'outerLandDiameter', inner: 'innerLandDiameter' }
    : { outer: 'outerTrackDiameter', inner: 'innerTrackDiameter' }

/** One row: the finished size, what a rule shows for it, and what it does to the ball gap. */
export interface Dimension {
  readonly key: DimensionKey
  /** Finished. */
  readonly value: Mm
  /** The size to turn to, so that film or grain bring it to `value`. Left out for sizes that are not cut. */
  readonly cutTo?: Mm
  readonly shop: ShopFigure
  /** What a rule shows for `cutTo`. Left out where nothing is to come on it. */
  readonly cutToShop?: ShopFigure
  /** d(ball gap) / d(this size), the rest of the ring staying as it is. Left out where the gap does not move. */
  readonly gapPerUnit?: number
  /**
   * By how much the ball gap changes when the shop figure is cut instead: by the gap itself, not by its slope. Left out
   * where the rule is so coarse that the balls but one would not go in.
   */
  readonly gapChangeAtShop?: Mm
}

/** How a size is turned when every surface still gains `finish`: holes larger, outsides smaller. */
type Grows = 'hole' | 'outside' | 'depth' | 'arc' | 'width' | 'circle' | 'not-cut'

/** Surfaces that gain a film each, counted outward: what the film adds to the size must be left out of the cut. */
const FILMS: Readonly<Record<Exclude<Grows, 'not-cut'>, number>> = {
  hole: 2,
  outside: -2,
  width: -2,
  arc: 1,
  depth: 0,
  circle: 0,
}

/** The table of sizes, in the order in which the parts are made. */
export function dimensionsOf(bearing: Bearing): readonly Dimension[] {
  const { outerRing: outer, innerRing: inner, gauge, settled } = bearing
  const byLand = bearing.gapPerPitchRadius / 2
  const row: MakeRow = (key, value, grows, gapPerUnit) => dimension(bearing, key, value, grows, gapPerUnit)
  const isGrooved = settled.traits.raceway === 'groove'
  return [
    row('pitchDiameter', mm(2 * bearing.pitchRadius), 'not-cut', byLand),
    row('outsideDiameter', outer.outsideDiameter, 'outside'),
    ...(isGrooved
      ? outerGrooveRows(bearing, row)
      : [row('outerTrackDiameter', outer.grooveBottomDiameter, 'hole', byLand)]),
    row('outerWall', outer.wall, 'not-cut'),
    row('outerWidth', outer.width, 'width'),
    row('boreDiameter', inner.boreDiameter, 'hole'),
    ...(isGrooved ? innerGrooveRows(bearing, row) : [row('innerTrackDiameter', inner.grooveBottomDiameter, 'outside')]),
    row('innerWall', inner.wall, 'not-cut'),
    row('innerWidth', inner.width, 'width'),
    ...cheekRows(bearing, row),
    row('gaugeNominalDiameter', gauge.nominalDiameter, 'not-cut', byLand),
    row('gaugeGoDiameter', gauge.goDiameter, 'not-cut'),
    row('gaugeNoGoDiameter', gauge.noGoDiameter, 'not-cut'),
    row('ballGap', bearing.ballGap, 'not-cut'),
    row('assemblyGap', settled.assembly.assemblyGap, 'not-cut'),
    ...(isGrooved ? [row('landGap', bearing.landGap, 'not-cut')] : []),
    row('radialInternalClearance', bearing.radialInternalClearance, 'not-cut'),
    row('axialPlay', bearing.axialPlay, 'not-cut'),
  ]
}

type MakeRow = (key: DimensionKey, value: Mm, grows: Grows, gapPerUnit?: number) => Dimension

function outerGrooveRows(
  { outerRing: outer, gapPerPitchRadius, gapPerGrooveDepth }: Bearing,
  row: MakeRow,
): readonly Dimension[] {
  return [
    row('outerLandDiameter', outer.landDiameter, 'hole', gapPerPitchRadius / 2),
    row('outerGrooveBottomDiameter', outer.grooveBottomDiameter, 'hole', gapPerGrooveDepth / 2),
    row('outerGrooveDepth', outer.grooveDepth, 'depth', gapPerGrooveDepth),
    row('outerGrooveRadius', outer.grooveRadius, 'arc'),
    row('outerGrooveWidth', outer.grooveWidth, 'not-cut'),
  ]
}

function innerGrooveRows({ innerRing: inner }: Bearing, row: MakeRow): readonly Dimension[] {
  return [
    row('innerLandDiameter', inner.landDiameter, 'outside'),
    row('innerGrooveBottomDiameter', inner.grooveBottomDiameter, 'outside'),
    row('innerGrooveDepth', inner.grooveDepth, 'depth'),
    row('innerGrooveRadius', inner.grooveRadius, 'arc'),
    row('innerGrooveWidth', inner.grooveWidth, 'not-cut'),
  ]
}

/** What stands beside plain tracks only: rollers cut to length, and the discs that keep them. */
function cheekRows({ cheeks, settled }: Bearing, row: MakeRow): readonly Dimension[] {
  const { length } = settled.input.balls
  return [
    ...(length === undefined ? [] : [row('rollerLength', length, 'not-cut')]),
    ...(cheeks === undefined
      ? []
      : [
          row('cheekOutsideDiameter', cheeks.outsideDiameter, 'outside'),
          row('cheekHoleDiameter', cheeks.holeDiameter, 'hole'),
          row('cheekThickness', cheeks.thickness, 'width'),
        ]),
  ]
}

/** The table of a thrust bearing: one plate, cut twice. The gap follows the groove's circle alone, not its depth. */
export function plateDimensionsOf(bearing: ThrustBearing): readonly Dimension[] {
  const { plate, gauge } = bearing
  const byCircle = bearing.gapPerPitchRadius / 2
  const row: MakeRow = (key, value, grows, gapPerUnit) => dimension(bearing, key, value, grows, gapPerUnit)
  return [
    row('pitchDiameter', plate.grooveCircleDiameter, 'circle', byCircle),
    row('plateOutsideDiameter', plate.outsideDiameter, 'outside'),
    row('plateBoreDiameter', plate.boreDiameter, 'hole'),
    row('plateGrooveDepth', plate.grooveDepth, 'depth'),
    row('plateGrooveRadius', plate.grooveRadius, 'arc'),
    row('plateGrooveWidth', plate.grooveWidth, 'not-cut'),
    row('plateWall', plate.wall, 'not-cut'),
    row('plateInnerWall', plate.innerWall, 'not-cut'),
    row('plateFloor', plate.floor, 'not-cut'),
    row('plateThickness', plate.thickness, 'width'),
    row('gaugeNominalDiameter', gauge.nominalDiameter, 'not-cut', byCircle),
    row('gaugeGoDiameter', gauge.goDiameter, 'not-cut'),
    row('gaugeNoGoDiameter', gauge.noGoDiameter, 'not-cut'),
    row('ballGap', bearing.ballGap, 'not-cut'),
    row('plateGap', bearing.plateGap, 'not-cut'),
    row('height', bearing.height, 'not-cut'),
  ]
}

function dimension(bearing: BallRing, key: DimensionKey, value: Mm, grows: Grows, gapPerUnit?: number): Dimension {
  const { units, shopDenominator } = bearing.settled.input
  const shop = shopFigure(value, units, shopDenominator)
  const row: { -readonly [Name in keyof Dimension]: Dimension[Name] } = { key, value, shop }
  if (grows !== 'not-cut') {
    const film = FILMS[grows] * bearing.settled.finishAllowance
    row.cutTo = mm(value + film)
    if (film !== 0) row.cutToShop = shopFigure(row.cutTo, units, shopDenominator)
  }
  if (gapPerUnit === undefined) return row
  row.gapPerUnit = gapPerUnit
  const gap = gapAt(bearing, mm(bearing.pitchRadius + (gapPerUnit / bearing.gapPerPitchRadius) * shop.error))
  if (gap !== undefined) row.gapChangeAtShop = mm(gap - bearing.ballGap)
  return row
}
