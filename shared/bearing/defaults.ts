import { inches, type Mm, mm, type Units } from '#shared/units/length.ts'
import type { BallMaterial } from './fields.ts'

/*
 * Defaults for all that a maker leaves out: common practice, no source, except where a line names one.
 * Lengths hang on the ball diameter, so that a bearing twice as large is the same bearing: all but the gaps, which a maker
 * measures with the same rule whatever the size of the balls.
 */

/** Groove radius over ball diameter. Steel bearings stay at or below 0.53 on the outer ring (ISO 76). */
export const CONFORMITY = 0.53

/** Depth of both grooves round a full ring: the shallow one lets the last ball in, the deep one holds the balls once the ring is closed. */
export const FULL_RING_ENGAGEMENT = { outerRing: 0.2, innerRing: 0.4 }

/** Width of grooved rings in ball diameters: 1 1/3 to 1 1/2 is usual; the larger leaves shoulders that do not chip. */
export const GROOVED_WIDTH = 1.5

/** Wood behind the outer groove, in ball diameters. */
export const OUTER_WALL = 2 / 3

/** A visible gap that any lot of balls leaves open, in ball diameters; and how far it lies at least above what the last ball needs. */
export const BALL_GAP = 0.05
export const GAP_BEYOND_ASSEMBLY = mm(0.4)
export const MIN_BALL_GAP = 0
/**
 * Widest gap that does not yet knock, in ball diameters, and at least how far above the aim it lies. By how much it exceeds at
 * least what the last ball needs: less is no band that a maker with a rule can hit, whatever the size of the balls.
 */
export const MAX_BALL_GAP = 1 / 8
export const LEAST_BAND_ABOVE_AIM = 1 / 16
export const BAND_BEYOND_ASSEMBLY = mm(2)
/** No default comes nearer to the gap of a whole ball, in ball diameters: it matters for small balls, and for three or four of any size. */
export const WIDEST_BALL_GAP = 7 / 8
export const WIDEST_MAX_BALL_GAP = 15 / 16

/** A small play, in ball diameters: felt by hand, not seen. */
export const RADIAL_INTERNAL_CLEARANCE = 0.02

export const FINISH_ALLOWANCE = mm(0)

export const BALL_MATERIAL: BallMaterial = 'wood'

/** Scatter of single balls round their mean, in ball diameters: turned steel, moulded acrylic, marbles, turned wood. */
export const BALL_SCATTER: Readonly<Record<BallMaterial, number>> = {
  steel: 0.0005,
  acrylic: 0.003,
  glass: 0.008,
  wood: 0.0067,
}

/** The outside is rounded up to an even figure of the maker's rule. */
export const roundOutsideDiameterTo = (units: Units): Mm => (units === 'in' ? inches(1 / 4) : mm(5))
