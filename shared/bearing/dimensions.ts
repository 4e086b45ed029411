import { type Mm, mm } from '#shared/units/length.ts'
import { type ShopFigure, shopFigure } from '#shared/units/shop-figure.ts'
import { type BallRing, gapAt } from './ball-ring.ts'
import type { FullRings } from './full-rings.ts'
import type { SettledBalls } from './resolve.ts'
import type { RingPair } from './ring-pair.ts'

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

export type MakeRow = (key: DimensionKey, value: Mm, grows: Grows, gapPerUnit?: number) => Dimension

/** How the ball gap of a full ring moves with what is cut. */
export interface GapSlopes {
  readonly perPitchRadius: number
  readonly perGrooveDepth: number
}

/** The sizes of two grooved rings. */
export const groovedRingRows = (pair: RingPair, row: MakeRow, slopes?: GapSlopes): readonly Dimension[] =>
  ringRows(pair, row, outerGrooveRows(pair, row, slopes), innerGrooveRows(pair, row), slopes)

/** The sizes of two rings, with those of each raceway between them. */
export function ringRows(
  pair: RingPair,
  row: MakeRow,
  outerRaceway: readonly Dimension[],
  innerRaceway: readonly Dimension[],
  slopes?: GapSlopes,
): readonly Dimension[] {
  const { outerRing: outer, innerRing: inner } = pair
  return [
    row('pitchDiameter', mm(2 * pair.pitchRadius), 'not-cut', slopes && slopes.perPitchRadius / 2),
    row('outsideDiameter', outer.outsideDiameter, 'outside'),
    ...outerRaceway,
    row('outerWall', outer.wall, 'not-cut'),
    row('outerWidth', outer.width, 'width'),
    row('boreDiameter', inner.boreDiameter, 'hole'),
    ...innerRaceway,
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

/** The plugs and the gaps of a full ring. */
export const gapRows = (bearing: FullRings, row: MakeRow): readonly Dimension[] => [
  row('gaugeNominalDiameter', bearing.gauge.nominalDiameter, 'not-cut', bearing.gapPerPitchRadius / 2),
  row('gaugeGoDiameter', bearing.gauge.goDiameter, 'not-cut'),
  row('gaugeNoGoDiameter', bearing.gauge.noGoDiameter, 'not-cut'),
  row('ballGap', bearing.ballGap, 'not-cut'),
  row('assemblyGap', bearing.settled.assembly.assemblyGap, 'not-cut'),
]

export const landRows = (pair: RingPair, row: MakeRow): readonly Dimension[] => [
  row('landGap', pair.landGap, 'not-cut'),
]

export const playRows = (pair: RingPair, row: MakeRow): readonly Dimension[] => [
  row('radialInternalClearance', pair.radialInternalClearance, 'not-cut'),
  row('axialPlay', pair.axialPlay, 'not-cut'),
]

export const slopesOf = (bearing: FullRings): GapSlopes => ({
  perPitchRadius: bearing.gapPerPitchRadius,
  perGrooveDepth: bearing.gapPerGrooveDepth,
})

/** A row of a bearing in which no gap moves. */
export function plainRow(
  { settled }: { readonly settled: SettledBalls },
  key: DimensionKey,
  value: Mm,
  grows: Grows,
): Row {
  const { units, shopDenominator } = settled.input
  const row: Row = { key, value, shop: shopFigure(value, units, shopDenominator) }
  if (grows === 'not-cut') return row
  const film = FILMS[grows] * settled.finishAllowance
  row.cutTo = mm(value + film)
  if (film !== 0) row.cutToShop = shopFigure(row.cutTo, units, shopDenominator)
  return row
}

type Row = { -readonly [Name in keyof Dimension]: Dimension[Name] }

/** A row of a full ring, whose gap may move with it. */
export function gapRow(bearing: BallRing, key: DimensionKey, value: Mm, grows: Grows, gapPerUnit?: number): Dimension {
  const row = plainRow(bearing, key, value, grows)
  if (gapPerUnit === undefined) return row
  row.gapPerUnit = gapPerUnit
  const gap = gapAt(bearing, mm(bearing.pitchRadius + (gapPerUnit / bearing.gapPerPitchRadius) * row.shop.error))
  if (gap !== undefined) row.gapChangeAtShop = mm(gap - bearing.ballGap)
  return row
}
