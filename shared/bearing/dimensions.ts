import { OWN_SYMBOLS } from '#shared/bearing/arrangements/facts.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { type ShopFigure, shopFigure } from '#shared/units/shop-figure.ts'
import { type BallRing, gapAt } from './ball-ring.ts'
import type { FullRings } from './full-rings.ts'
import { turningRing } from './mounting-input.ts'
import type { ResolvedBalls } from './resolve.ts'
import type { RingPair } from './ring-pair.ts'

/**
 * The rows of the table, each under a key that never changes: where its value stands in the answer. With symbols of ISO 15241
 * (from memory) where it has one, or our own.
 */
const SYMBOLS = {
  ...OWN_SYMBOLS,
  pitchDiameter: 'Dpw',
  'outerRing.outsideDiameter': 'D',
  'outerRing.landDiameter': 'D1',
  'outerRing.grooveBottomDiameter': 'De',
  'outerRing.grooveDepth': 'he',
  'outerRing.grooveRadius': 're',
  'outerRing.grooveWidth': 'be',
  'outerRing.wall': 'we',
  'outerRing.width': 'C',
  'innerRing.boreDiameter': 'd',
  'innerRing.landDiameter': 'd1',
  'innerRing.grooveBottomDiameter': 'di',
  'innerRing.grooveDepth': 'hi',
  'innerRing.grooveRadius': 'ri',
  'innerRing.grooveWidth': 'bi',
  'innerRing.wall': 'wi',
  'innerRing.width': 'B',
  'gauge.nominalDiameter': 'Dg',
  'gauge.goDiameter': 'Dgo',
  'gauge.noGoDiameter': 'Dng',
  ballGap: 'g',
  assemblyGap: 'ga',
  landGap: 's',
  radialInternalClearance: 'Gr',
  axialPlay: 'Ga',
}
export type DimensionKey = keyof typeof SYMBOLS
export const DIMENSION_SYMBOLS: Readonly<Record<DimensionKey, string>> = SYMBOLS

/** Sizes on which the gap, the play or the seat of the balls hangs: a caliper is set to them, for the rounding of a rule would spoil them. */
export const BY_CALIPER: ReadonlySet<DimensionKey> = new Set([
  'outerRing.grooveBottomDiameter',
  'outerRing.trackDiameter',
  'innerRing.grooveBottomDiameter',
  'innerRing.trackDiameter',
  'outerRing.grooveDepth',
  'innerRing.grooveDepth',
  'plates.grooveDepth',
  'outerRing.grooveRadius',
  'innerRing.grooveRadius',
  'plates.grooveRadius',
  'gauge.nominalDiameter',
  'gauge.goDiameter',
  'gauge.noGoDiameter',
  'plugDiameter',
  'pitchDiameter',
  'radialInternalClearance',
])

/**
 * Whether a caliper is set to a size of a design: those above, and seats. A bore is a seat as soon as it is planned how the bearing
 * is made, the outside where a housing holds it.
 */
export function isByCaliper(key: DimensionKey, { input: { making } }: ResolvedBalls): boolean {
  if (BY_CALIPER.has(key)) return true
  if (making === undefined) return false
  const isHeld = turningRing(making.mounting ?? {}) === 'inner-ring'
  return (
    key === 'innerRing.boreDiameter' || key === 'plates.boreDiameter' || (isHeld && key === 'outerRing.outsideDiameter')
  )
}

/** The figure of a rule for a size as it is turned; undefined for one to which a caliper is set. */
export const ruleText = (
  { key, shop, cutToShop }: Pick<Dimension, 'key' | 'shop' | 'cutToShop'>,
  resolved: ResolvedBalls,
): string | undefined => (isByCaliper(key, resolved) ? undefined : (cutToShop ?? shop).text)

/** The cylinders that both rings are turned to first: lands, where a groove is cut into them, or else the tracks themselves. */
export const cylinderKeys = ({ resolved }: RingPair): { readonly outer: DimensionKey; readonly inner: DimensionKey } =>
  resolved.traits.raceway === 'groove'
    ? { outer: 'outerRing.landDiameter', inner: 'innerRing.landDiameter' }
    : { outer: 'outerRing.trackDiameter', inner: 'innerRing.trackDiameter' }

/** One row: the finished size, what a rule shows for it, and what it does to the ball gap. */
export interface Dimension<Key extends DimensionKey = DimensionKey> {
  readonly key: Key
  /** Finished. */
  readonly value: Mm
  /** The size to turn to, so that film or grain bring it to `value`. Left out for sizes that are not cut. */
  readonly cutTo?: Mm
  readonly shop: ShopFigure
  /** The figure on a rule for `cutTo`. Left out if no finish is added. */
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

export type MakeRow = <Key extends DimensionKey>(
  key: Key,
  value: Mm,
  grows: Grows,
  gapPerUnit?: number,
) => Dimension<Key>

/** The keys of the rows that a table has. */
export type KeysOf<Table extends (bearing: never) => readonly Dimension[]> = ReturnType<Table>[number]['key']

/** How the ball gap of a full ring moves with what is cut. */
export interface GapSlopes {
  readonly perPitchRadius: number
  readonly perGrooveDepth: number
}

/** The sizes of two grooved rings. */
export const groovedRingRows = (pair: RingPair, row: MakeRow, slopes?: GapSlopes) =>
  ringRows(pair, row, outerGrooveRows(pair, row, slopes), innerGrooveRows(pair, row), slopes)

/** The sizes of two rings, with those of each raceway between them. */
export function ringRows<Outer extends DimensionKey, Inner extends DimensionKey>(
  pair: RingPair,
  row: MakeRow,
  outerRaceway: readonly Dimension<Outer>[],
  innerRaceway: readonly Dimension<Inner>[],
  slopes?: GapSlopes,
) {
  const { outerRing: outer, innerRing: inner } = pair
  return [
    row('pitchDiameter', mm(2 * pair.pitchRadius), 'not-cut', slopes && slopes.perPitchRadius / 2),
    row('outerRing.outsideDiameter', outer.outsideDiameter, 'outside'),
    ...outerRaceway,
    row('outerRing.wall', outer.wall, 'not-cut'),
    row('outerRing.width', outer.width, 'width'),
    row('innerRing.boreDiameter', inner.boreDiameter, 'hole'),
    ...innerRaceway,
    row('innerRing.wall', inner.wall, 'not-cut'),
    row('innerRing.width', inner.width, 'width'),
  ]
}

function outerGrooveRows({ outerRing: outer }: RingPair, row: MakeRow, slopes?: GapSlopes) {
  return [
    row('outerRing.landDiameter', outer.landDiameter, 'hole', slopes && slopes.perPitchRadius / 2),
    row('outerRing.grooveBottomDiameter', outer.grooveBottomDiameter, 'hole', slopes && slopes.perGrooveDepth / 2),
    row('outerRing.grooveDepth', outer.grooveDepth, 'depth', slopes?.perGrooveDepth),
    row('outerRing.grooveRadius', outer.grooveRadius, 'arc'),
    row('outerRing.grooveWidth', outer.grooveWidth, 'not-cut'),
  ]
}

function innerGrooveRows({ innerRing: inner }: RingPair, row: MakeRow) {
  return [
    row('innerRing.landDiameter', inner.landDiameter, 'outside'),
    row('innerRing.grooveBottomDiameter', inner.grooveBottomDiameter, 'outside'),
    row('innerRing.grooveDepth', inner.grooveDepth, 'depth'),
    row('innerRing.grooveRadius', inner.grooveRadius, 'arc'),
    row('innerRing.grooveWidth', inner.grooveWidth, 'not-cut'),
  ]
}

/** The plugs and the gaps of a full ring. */
export const gapRows = (bearing: FullRings, row: MakeRow) => [
  row('gauge.nominalDiameter', bearing.gauge.nominalDiameter, 'not-cut', bearing.gapPerPitchRadius / 2),
  row('gauge.goDiameter', bearing.gauge.goDiameter, 'not-cut'),
  row('gauge.noGoDiameter', bearing.gauge.noGoDiameter, 'not-cut'),
  row('ballGap', bearing.ballGap, 'not-cut'),
  row('assemblyGap', bearing.resolved.assembly.assemblyGap, 'not-cut'),
]

export const landRows = (pair: RingPair, row: MakeRow) => [row('landGap', pair.landGap, 'not-cut')]

export const playRows = (pair: RingPair, row: MakeRow) => [
  row('radialInternalClearance', pair.radialInternalClearance, 'not-cut'),
  row('axialPlay', pair.axialPlay, 'not-cut'),
]

export const slopesOf = (bearing: FullRings): GapSlopes => ({
  perPitchRadius: bearing.gapPerPitchRadius,
  perGrooveDepth: bearing.gapPerGrooveDepth,
})

/** The size to turn to, so that the film that comes on every surface brings it to `value`. */
export const cutTo = (
  value: Mm,
  grows: Exclude<Grows, 'not-cut'>,
  { finishAllowance }: Pick<ResolvedBalls, 'finishAllowance'>,
): Mm => mm(value + FILMS[grows] * finishAllowance)

type Row<Key extends DimensionKey> = { -readonly [Name in keyof Dimension<Key>]: Dimension<Key>[Name] }

/** Makes the rows of a bearing in which no gap moves. */
export const plainRow =
  ({ resolved }: { readonly resolved: ResolvedBalls }) =>
  <Key extends DimensionKey>(key: Key, value: Mm, grows: Grows): Row<Key> => {
    const { units, shopDenominator } = resolved.input
    const row: Row<Key> = { key, value, shop: shopFigure(value, units, shopDenominator) }
    if (grows === 'not-cut') return row
    row.cutTo = cutTo(value, grows, resolved)
    if (FILMS[grows] * resolved.finishAllowance !== 0) row.cutToShop = shopFigure(row.cutTo, units, shopDenominator)
    return row
  }

/** Makes the rows of a full ring, whose gap may move with them. */
export function gapRow(bearing: BallRing): MakeRow {
  const plain = plainRow(bearing)
  return (key, value, grows, gapPerUnit) => {
    const row = plain(key, value, grows)
    if (gapPerUnit === undefined) return row
    row.gapPerUnit = gapPerUnit
    const gap = gapAt(bearing, mm(bearing.pitchRadius + (gapPerUnit / bearing.gapPerPitchRadius) * row.shop.error))
    if (gap !== undefined) row.gapChangeAtShop = mm(gap - bearing.ballGap)
    return row
  }
}
