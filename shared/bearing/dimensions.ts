import { type Mm, mm } from '#shared/units/length.ts'
import { type ShopFigure, shopFigure } from '#shared/units/shop-figure.ts'
import { type BallRing, gapAt } from './ball-ring.ts'
import type { Bearing } from './bearing.ts'
import type { CagedBearing } from './caged.ts'
import type { ThrustBearing } from './plates.ts'
import type { RingPair } from './ring-pair.ts'
import type { SettledBalls } from './settle.ts'

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
  'cageBoreDiameter',
  'cageOutsideDiameter',
  'cageThickness',
  'cageWidth',
  'pocketDiameter',
  'cageWeb',
  'cageRim',
  'gaugeNominalDiameter',
  'gaugeGoDiameter',
  'gaugeNoGoDiameter',
  'ballSpacing',
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
  cageBoreDiameter: 'dc',
  cageOutsideDiameter: 'Dc',
  cageThickness: 'tc',
  cageWidth: 'Bc',
  pocketDiameter: 'Dk',
  cageWeb: 'wk',
  cageRim: 'wr',
  gaugeNominalDiameter: 'Dg',
  gaugeGoDiameter: 'Dgo',
  gaugeNoGoDiameter: 'Dng',
  ballSpacing: 'gs',
  ballGap: 'g',
  assemblyGap: 'ga',
  plateGap: 's',
  height: 'T',
  landGap: 's',
  radialInternalClearance: 'Gr',
  axialPlay: 'Ga',
}

/** The cylinders that both rings are turned to first: lands, where a groove is cut into them, or else the tracks themselves. */
export const cylinderKeys = ({ settled }: RingPair): { readonly outer: DimensionKey; readonly inner: DimensionKey } =>
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
  const { gauge, settled } = bearing
  const byLand = bearing.gapPerPitchRadius / 2
  const row: MakeRow = (key, value, grows, gapPerUnit) => gapRow(bearing, key, value, grows, gapPerUnit)
  return [
    ...ringRows(bearing, row, { perPitchRadius: bearing.gapPerPitchRadius, perGrooveDepth: bearing.gapPerGrooveDepth }),
    ...cheekRows(bearing, row),
    row('gaugeNominalDiameter', gauge.nominalDiameter, 'not-cut', byLand),
    row('gaugeGoDiameter', gauge.goDiameter, 'not-cut'),
    row('gaugeNoGoDiameter', gauge.noGoDiameter, 'not-cut'),
    row('ballGap', bearing.ballGap, 'not-cut'),
    row('assemblyGap', settled.assembly.assemblyGap, 'not-cut'),
    ...playRows(bearing, row),
  ]
}

/** The table of a caged bearing: no gap to move, and a cage beside the rings. */
export function cagedDimensionsOf(bearing: CagedBearing): readonly Dimension[] {
  const { cage } = bearing
  const row: MakeRow = (key, value, grows) => plainRow(bearing, key, value, grows)
  return [
    ...ringRows(bearing, row),
    row('cageBoreDiameter', cage.boreDiameter, 'hole'),
    row('cageOutsideDiameter', cage.outsideDiameter, 'outside'),
    row('cageThickness', cage.thickness, 'not-cut'),
    row('cageWidth', cage.width, 'width'),
    row('pocketDiameter', cage.pocketDiameter, 'hole'),
    row('cageWeb', cage.web, 'not-cut'),
    row('cageRim', cage.rim, 'not-cut'),
    row('gaugeNominalDiameter', bearing.plugDiameter, 'not-cut'),
    row('ballSpacing', bearing.ballSpacing, 'not-cut'),
    ...playRows(bearing, row),
  ]
}

type MakeRow = (key: DimensionKey, value: Mm, grows: Grows, gapPerUnit?: number) => Dimension

/** How the ball gap of a full ring moves with what is cut. */
interface GapSlopes {
  readonly perPitchRadius: number
  readonly perGrooveDepth: number
}

function ringRows(pair: RingPair, row: MakeRow, slopes?: GapSlopes): readonly Dimension[] {
  const { outerRing: outer, innerRing: inner, settled } = pair
  const byLand = slopes && slopes.perPitchRadius / 2
  const isGrooved = settled.traits.raceway === 'groove'
  return [
    row('pitchDiameter', mm(2 * pair.pitchRadius), 'not-cut', byLand),
    row('outsideDiameter', outer.outsideDiameter, 'outside'),
    ...(isGrooved
      ? outerGrooveRows(pair, row, slopes)
      : [row('outerTrackDiameter', outer.grooveBottomDiameter, 'hole', byLand)]),
    row('outerWall', outer.wall, 'not-cut'),
    row('outerWidth', outer.width, 'width'),
    row('boreDiameter', inner.boreDiameter, 'hole'),
    ...(isGrooved ? innerGrooveRows(pair, row) : [row('innerTrackDiameter', inner.grooveBottomDiameter, 'outside')]),
    row('innerWall', inner.wall, 'not-cut'),
    row('innerWidth', inner.width, 'width'),
  ]
}

function outerGrooveRows({ outerRing: outer }: RingPair, row: MakeRow, slopes?: GapSlopes): readonly Dimension[] {
  return [
    row('outerLandDiameter', outer.landDiameter, 'hole', slopes && slopes.perPitchRadius / 2),
    row('outerGrooveBottomDiameter', outer.grooveBottomDiameter, 'hole', slopes && slopes.perGrooveDepth / 2),
    row('outerGrooveDepth', outer.grooveDepth, 'depth', slopes?.perGrooveDepth),
    row('outerGrooveRadius', outer.grooveRadius, 'arc'),
    row('outerGrooveWidth', outer.grooveWidth, 'not-cut'),
  ]
}

function innerGrooveRows({ innerRing: inner }: RingPair, row: MakeRow): readonly Dimension[] {
  return [
    row('innerLandDiameter', inner.landDiameter, 'outside'),
    row('innerGrooveBottomDiameter', inner.grooveBottomDiameter, 'outside'),
    row('innerGrooveDepth', inner.grooveDepth, 'depth'),
    row('innerGrooveRadius', inner.grooveRadius, 'arc'),
    row('innerGrooveWidth', inner.grooveWidth, 'not-cut'),
  ]
}

const playRows = (pair: RingPair, row: MakeRow): readonly Dimension[] => [
  ...(pair.settled.traits.raceway === 'groove' ? [row('landGap', pair.landGap, 'not-cut')] : []),
  row('radialInternalClearance', pair.radialInternalClearance, 'not-cut'),
  row('axialPlay', pair.axialPlay, 'not-cut'),
]

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
  const row: MakeRow = (key, value, grows, gapPerUnit) => gapRow(bearing, key, value, grows, gapPerUnit)
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

/** A row of a bearing in which no gap moves. */
function plainRow({ settled }: { readonly settled: SettledBalls }, key: DimensionKey, value: Mm, grows: Grows): Row {
  const { units, shopDenominator } = settled.input
  const row: Row = { key, value, shop: shopFigure(value, units, shopDenominator) }
  if (grows === 'not-cut') return row
  const film = FILMS[grows] * settled.finishAllowance
  row.cutTo = mm(value + film)
  if (film !== 0) row.cutToShop = shopFigure(row.cutTo, units, shopDenominator)
  return row
}

type Row = { -readonly [Name in keyof Dimension]: Dimension[Name] }

function gapRow(bearing: BallRing, key: DimensionKey, value: Mm, grows: Grows, gapPerUnit?: number): Dimension {
  const row = plainRow(bearing, key, value, grows)
  if (gapPerUnit === undefined) return row
  row.gapPerUnit = gapPerUnit
  const gap = gapAt(bearing, mm(bearing.pitchRadius + (gapPerUnit / bearing.gapPerPitchRadius) * row.shop.error))
  if (gap !== undefined) row.gapChangeAtShop = mm(gap - bearing.ballGap)
  return row
}
