import { inches, type Mm, mm, type Units } from '#shared/units/length.ts'
import type { Arrangement } from './arrangement.ts'
import type { BallMaterial, Split } from './design-input.ts'

/*
 * What a maker need not say. All of it is common practice, no source, except where a line names one.
 * Lengths hang on the ball diameter, so that a bearing twice as large is the same bearing.
 */

/** The shallow groove: the last ball still goes in over its land, and sanding it to fit is quick. */
export const OUTER_ENGAGEMENT = 0.2

/**
 * The deep groove: it holds the balls once the split ring is closed. Beside a cage it is no deeper than lets a ball in between
 * the lands of one-piece rings, the inner one aside: half a ball in both grooves together.
 */
export const INNER_ENGAGEMENT: Readonly<Record<Arrangement['ballSet'], number>> = { full: 0.4, caged: 0.25 }

/** Groove radius over ball diameter. Steel bearings stay at or below 0.53 on the outer ring (ISO 76). */
export const CONFORMITY = 0.53

/** Wood behind the outer groove, in ball diameters. */
export const OUTER_WALL = 2 / 3

/** Ring width in ball diameters: 1 1/3 to 1 1/2 is usual; the larger leaves shoulders that do not chip. */
const WIDTH_FOR_BALLS = 1.5
/** The same for rollers: a dowel twice as long as thick hardly turns askew. */
const WIDTH_FOR_ROLLERS = 2
export const WIDTH: Readonly<Record<Arrangement['rolls'], number>> = {
  balls: WIDTH_FOR_BALLS,
  rollers: WIDTH_FOR_ROLLERS,
}

/** By how much rollers and inner ring are shorter than the outer ring is wide, in roller diameters: they run free of the cheeks. */
export const END_CLEARANCE = 0.05
/** A cheek's thickness in roller diameters: thin plywood beside a usual dowel. */
export const CHEEK_THICKNESS = 3 / 8

/** Depth of the groove in each plate: together they leave the faces 2/5 of a ball apart. */
export const PLATE_ENGAGEMENT = 0.3
/** Wood round the groove of a plate, from its edge outward, in ball diameters. */
export const PLATE_WALL = 1
/** A plate's thickness in ball diameters: most of it is left under the groove. */
export const PLATE_THICKNESS = 1

/** A visible gap that any lot of balls leaves open, in ball diameters; more where the last ball needs more to go in. */
export const BALL_GAP = 0.05
/** No gap is opened wider than this unasked, whatever the last ball needs: few balls would rattle. */
export const WIDEST_BALL_GAP = 1 / 2
export const MIN_BALL_GAP = 0
/** Widest gap that does not yet knock, in ball diameters, and at least how far above the aim it lies. */
export const MAX_BALL_GAP = 1 / 8
export const LEAST_BAND_ABOVE_AIM = 1 / 16

/** A small play, in ball diameters: felt by hand, not seen. */
export const RADIAL_INTERNAL_CLEARANCE = 0.02

export const FINISH_ALLOWANCE = mm(0)

export const BALL_MATERIAL: BallMaterial = 'wood'

/** Round a full ring of balls the ring with the deep groove comes apart; fewer balls go in between rings of one piece. */
export const SPLIT: Readonly<Record<Arrangement['ballSet'], Split>> = { full: 'inner-ring', caged: 'none' }

/** Wood between two pockets of a cage at the least, in ball diameters; more where balls so near do not go in. */
export const WEB = 1 / 4
/** How much wider than the ball a pocket is, in ball diameters: it rolls freely, and does not rattle. */
export const POCKET_CLEARANCE = 0.05
/** Between the cage and either land, in ball diameters. */
export const LAND_CLEARANCE = 0.04

/** Scatter of single balls round their mean, in ball diameters: turned steel, moulded acrylic, marbles, turned wood. */
const BALL_SCATTER: Readonly<Record<BallMaterial, number>> = {
  steel: 0.0005,
  acrylic: 0.003,
  glass: 0.008,
  wood: 0.0067,
}

/** The same by what rolls. Dowels are milled less true than balls and dry to ovals; rods of the rest come as true. */
export const SCATTER: Readonly<Record<Arrangement['rolls'], Readonly<Record<BallMaterial, number>>>> = {
  balls: BALL_SCATTER,
  rollers: { ...BALL_SCATTER, wood: 0.01 },
}

/** The outside is rounded up to an even figure of the maker's rule. */
export const roundOutsideDiameterTo = (units: Units): Mm => (units === 'in' ? inches(1 / 4) : mm(5))
