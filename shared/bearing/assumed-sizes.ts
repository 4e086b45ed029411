import { OWN_FIELDS_OF_SIZES } from '#shared/bearing/arrangements/facts.ts'
import type { SIZE_SOURCES } from '#shared/data/sources.ts'
import type { DimensionKey } from './dimensions.ts'
import type { Seasoned } from './making-input.ts'
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

/** The fields that a request left open, and those of them that its season chose. */
export type Openings = Pick<ResolvedBalls, 'assumed'> & {
  readonly input: { readonly seasoned?: Pick<Seasoned, 'paths'> }
}

/**
 * The source of a size whose field was left out: a rule of the trade, or, for a size that follows from the season, how far
 * boards of one species differ. Undefined where the field was stated.
 */
export function sourceOfSize(
  key: DimensionKey,
  { assumed, input: { seasoned } }: Openings,
): keyof typeof SIZE_SOURCES | undefined {
  const isIn = (paths: readonly string[] = []): boolean => (SET_BY[key] ?? []).some((path) => paths.includes(path))
  if (isIn(seasoned?.paths)) return 'fpl-variation'
  return BY_RULE.has(key) || isIn(assumed) ? 'trade' : undefined
}
