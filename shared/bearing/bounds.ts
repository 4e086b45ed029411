import { inUnits, lengthOf, type Mm, type Units } from '#shared/units/length.ts'
import type { DesignInput } from './design-input.ts'
import type { Refusal } from './refusal.ts'
import type { Suggestion } from './suggestion.ts'

/*
 * What an input may hold. The edge turns away all else, as a slip of the hand and no bearing; so nothing that is
 * suggested may lie outside either.
 */

export interface Bounds {
  readonly least: number
  readonly most: number
}

/** More balls than anyone turns a ring for. The fewest are a matter of geometry: `FEWEST_BALLS`. */
export const MOST_BALLS = 200
export const ENGAGEMENT: Bounds = { least: 0.01, most: 0.9 }
export const CONFORMITY: Bounds = { least: 0.3, most: 2 }
/** In the units of the caller. */
export const LENGTH: Bounds = { least: 0.001, most: 10_000 }
/** Gaps, play, scatter, film. In the units of the caller. */
export const LENGTH_OR_NONE: Bounds = { least: 0, most: LENGTH.most }

const NONE_IS_POSSIBLE: ReadonlySet<string> = new Set([
  '/balls/standardDeviation',
  '/ballGap',
  '/minBallGap',
  '/maxBallGap',
  '/radialInternalClearance',
  '/cage/pocketClearance',
  '/cage/landClearance',
  '/finishAllowance',
])

/** Every length of an input that can stand alone, with where it stands. */
const LENGTHS: readonly (readonly [path: string, of: (input: DesignInput) => Mm | null | undefined])[] = [
  ['/balls/diameter', ({ balls }) => balls.diameter],
  ['/balls/length', ({ balls }) => balls.length],
  ['/balls/standardDeviation', ({ balls }) => balls.standardDeviation],
  ['/bore', ({ bore }) => bore],
  ['/outerRing/grooveDepth', ({ outerRing }) => outerRing?.grooveDepth],
  ['/outerRing/groove/grooveRadius', ({ outerRing }) => outerRing?.groove?.grooveRadius],
  ['/outerRing/groove/cutterDiameter', ({ outerRing }) => outerRing?.groove?.cutterDiameter],
  ['/outerRing/wall', ({ outerRing }) => outerRing?.wall],
  ['/outerRing/roundOutsideDiameterTo', ({ outerRing }) => outerRing?.roundOutsideDiameterTo],
  ['/outerRing/outsideDiameter', ({ outerRing }) => outerRing?.outsideDiameter],
  ['/innerRing/grooveDepth', ({ innerRing }) => innerRing?.grooveDepth],
  ['/innerRing/groove/grooveRadius', ({ innerRing }) => innerRing?.groove?.grooveRadius],
  ['/innerRing/groove/cutterDiameter', ({ innerRing }) => innerRing?.groove?.cutterDiameter],
  ['/plates/grooveDepth', ({ plates }) => plates?.grooveDepth],
  ['/plates/wall', ({ plates }) => plates?.wall],
  ['/plates/roundOutsideDiameterTo', ({ plates }) => plates?.roundOutsideDiameterTo],
  ['/plates/outsideDiameter', ({ plates }) => plates?.outsideDiameter],
  ['/plates/thickness', ({ plates }) => plates?.thickness],
  ['/cage/web', ({ cage }) => cage?.web],
  ['/cage/pitchDiameter', ({ cage }) => cage?.pitchDiameter],
  ['/cage/pocketClearance', ({ cage }) => cage?.pocketClearance],
  ['/cage/landClearance', ({ cage }) => cage?.landClearance],
  ['/cage/width', ({ cage }) => cage?.width],
  ['/groove/grooveRadius', ({ groove }) => groove?.grooveRadius],
  ['/groove/cutterDiameter', ({ groove }) => groove?.cutterDiameter],
  ['/ballGap', ({ ballGap }) => ballGap],
  ['/minBallGap', ({ minBallGap }) => minBallGap],
  ['/maxBallGap', ({ maxBallGap }) => maxBallGap],
  ['/radialInternalClearance', ({ radialInternalClearance }) => radialInternalClearance],
  ['/finishAllowance', ({ finishAllowance }) => finishAllowance],
  ['/width', ({ width }) => width],
]

/** Whether a caller could send what is suggested. */
export function isWithinBounds({ path, kind, value }: Suggestion, units: Units): boolean {
  if (kind === 'choice') return true
  if (kind === 'length') return holds(boundsAt(path), inUnits(value, units))
  if (path === '/balls/count') return value <= MOST_BALLS
  return path === '/shopDenominator' || holds(path.endsWith('conformity') ? CONFORMITY : ENGAGEMENT, value)
}

/**
 * The lengths of a whole input, defaults and all, that nobody could send: a default beside balls of the largest size, or a
 * text in inches where the rest is in millimetres. The whole input is given back, to be sent again.
 */
export function beyondBounds(input: DesignInput): readonly Refusal[] {
  const single = LENGTHS.map(([path, of]) => [path, of(input), boundsAt(path)] as const)
  const measured = (input.balls.diameters ?? []).map((given, i) => [`/balls/diameters/${i}`, given, LENGTH] as const)
  return lengthsBeyond([...single, ...measured], input.units)
}

/** A length that was given or filled in, with where it stands, and what it may be. */
type Placed = readonly [path: string, given: Mm | null | undefined, bounds: Bounds]

/** Those of some lengths that nobody could send. */
export function lengthsBeyond(lengths: readonly Placed[], units: Units): readonly Refusal[] {
  const refusals: Refusal[] = []
  for (const [path, given, bounds] of lengths) {
    if (given === undefined || given === null || holds(bounds, inUnits(given, units))) continue
    const [least, most] = [lengthOf(bounds.least, units), lengthOf(bounds.most, units)]
    refusals.push({ code: 'beyond-bounds', path, given, least, most })
  }
  return refusals
}

const boundsAt = (path: string): Bounds => (NONE_IS_POSSIBLE.has(path) ? LENGTH_OR_NONE : LENGTH)

const holds = ({ least, most }: Bounds, value: number): boolean => value >= least && value <= most
