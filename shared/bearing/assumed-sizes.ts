import { OWN_FIELDS_OF_SIZES } from '#shared/bearing/arrangements/facts.ts'
import type { DimensionKey } from './dimensions.ts'
import type { ResolvedBalls } from './resolve.ts'

const GROOVE_ARC = ['/groove/conformity', '/outerRing/groove/conformity', '/innerRing/groove/conformity']

/** The fields of an input of which each size is made first of all, by their JSON pointers. */
const SET_BY: Partial<Record<DimensionKey, readonly string[]>> = {
  ...OWN_FIELDS_OF_SIZES,
  pitchDiameter: ['/ballGap'],
  ballGap: ['/ballGap'],
  'outerRing.outsideDiameter': ['/outerRing/wall'],
  'outerRing.wall': ['/outerRing/wall'],
  'outerRing.landDiameter': ['/outerRing/engagement'],
  'outerRing.grooveDepth': ['/outerRing/engagement'],
  'outerRing.grooveBottomDiameter': ['/ballGap'],
  'outerRing.grooveRadius': GROOVE_ARC,
  'outerRing.width': ['/width'],
  'innerRing.landDiameter': ['/innerRing/engagement'],
  'innerRing.grooveDepth': ['/innerRing/engagement'],
  'innerRing.grooveBottomDiameter': ['/radialInternalClearance'],
  'innerRing.grooveRadius': GROOVE_ARC,
  'innerRing.width': ['/width'],
  radialInternalClearance: ['/radialInternalClearance'],
  'gauge.noGoDiameter': ['/maxBallGap'],
}

/** Sizes for which there is no field: a rule of the trade makes them. */
const BY_RULE: ReadonlySet<DimensionKey> = new Set(['cheeks.holeDiameter', 'cheeks.thickness'])

/** Whether a size is what the trade makes it, because its field was left out: common practice, no source. */
export const isTradeSize = (key: DimensionKey, { assumed }: Pick<ResolvedBalls, 'assumed'>): boolean =>
  BY_RULE.has(key) || (SET_BY[key] ?? []).some((path) => assumed.includes(path))
