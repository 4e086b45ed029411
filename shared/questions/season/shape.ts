import type { RadialBearing } from '#shared/bearing/arrangements.ts'
import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import type { BallMaterial } from '#shared/bearing/fields.ts'
import { ACRYLIC_GROWTH } from '#shared/data/ball-materials.ts'
import { segmentWood } from '#shared/data/segment-woods.ts'
import type { SpeciesId } from '#shared/data/species.ts'
import { ALONG_THE_GRAIN, MOVEMENT, type Movement, PLY_IN_PLANE } from '#shared/data/wood-movement.ts'
import type { Ellipse } from '#shared/geometry/ellipse.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { stretch } from '#shared/wood/moisture-movement.ts'
import { segmentedMovement } from '#shared/wood/segmented-movement.ts'
import type { RingWood, Woods } from './input.ts'
import type { WoodState } from './states.ts'

/**
 * The sizes of the day on which the bearing is made, all round. The bottoms are those that a ball on its seat reaches: the
 * groove's own where it sits on the bottom, a little inside of it where it rides on the edges.
 */
export interface MadeSizes {
  readonly outerBottomRadius: Mm
  readonly outerLandRadius: Mm
  readonly outsideRadius: Mm
  readonly innerBottomRadius: Mm
  readonly innerLandRadius: Mm
  readonly boreRadius: Mm
  readonly ballDiameter: Mm
  readonly ballCount: number
  readonly ballMaterial: BallMaterial
}

/** The three diameters that a ball comes to, in order, and their mean; all alike unless it is of wood. */
interface BallSize {
  readonly least: Mm
  readonly mean: Mm
  readonly most: Mm
}

/** The same bearing at another time. */
export interface Shape {
  readonly outerBottom: Ellipse
  readonly outerLand: Ellipse
  readonly innerBottom: Ellipse
  readonly innerLand: Ellipse
  readonly ball: BallSize
}

export function madeSizes({
  pitchRadius,
  radialInternalClearance,
  outerRing,
  innerRing,
  resolved,
}: RadialBearing): MadeSizes {
  const { ballDiameter, input } = resolved
  return {
    outerBottomRadius: mm(pitchRadius + ballDiameter / 2),
    outerLandRadius: mm(outerRing.landDiameter / 2),
    outsideRadius: mm(outerRing.outsideDiameter / 2),
    innerBottomRadius: mm(pitchRadius - radialInternalClearance / 2 - ballDiameter / 2),
    innerLandRadius: mm(innerRing.landDiameter / 2),
    boreRadius: mm(innerRing.boreDiameter / 2),
    ballDiameter,
    ballCount: input.balls.count,
    ballMaterial: input.balls.material ?? BALL_MATERIAL,
  }
}

/**
 * What the bearing of one day becomes at another moisture: each circle of a ring cut from a board an ellipse (wood is
 * stretched by one factor along the grain and by another across it, the same everywhere), of ply and of segments a circle.
 *
 * @param from, to both at most the fibre saturation of every wood of the bearing
 * @throws RangeError for a wood whose movement is not known
 */
export function shapeAt(made: MadeSizes, woods: Woods, from: WoodState, to: WoodState): Shape {
  const outer = (radius: Mm): Ellipse =>
    movedCircle(radius, woods.outerRing, { inner: radius, outer: made.outsideRadius, at: 'inside' }, from, to)
  const inner = (radius: Mm): Ellipse =>
    movedCircle(radius, woods.innerRing, { inner: made.boreRadius, outer: radius, at: 'outside' }, from, to)
  return {
    outerBottom: outer(made.outerBottomRadius),
    outerLand: outer(made.outerLandRadius),
    innerBottom: inner(made.innerBottomRadius),
    innerLand: inner(made.innerLandRadius),
    ball: ballAt(made, woods.balls, from, to),
  }
}

/** The wood that a circle bounds: of a segmented ring the elastic hoop on whose inside or outside it lies. */
interface Hoop {
  readonly inner: Mm
  readonly outer: Mm
  readonly at: 'inside' | 'outside'
}

function movedCircle(radius: Mm, wood: RingWood, hoop: Hoop, from: WoodState, to: WoodState): Ellipse {
  const times = (perPercent: number): number => stretch(perPercent, from.moistureContent, to.moistureContent)
  const round = (factor: number): Ellipse => ({ along: mm(radius * factor), across: mm(radius * factor) })
  if (wood.construction === 'cross-laminated-ply') return round(times(PLY_IN_PLANE.perPercent))
  const movement = movementOf(wood.species)
  const face = wood.construction.endsWith('quarter-sawn') ? 'radial' : 'tangential'
  const along = times(ALONG_THE_GRAIN.perPercent)
  const across = times(movement[face])
  if (!wood.construction.startsWith('segmented')) return { along: mm(radius * along), across: mm(radius * across) }
  const { inner, outer, at } = hoop
  const ring = { innerRadius: inner, outerRadius: outer, count: SEGMENTS, wood: segmentWood(wood.species, face).plane }
  return round(1 + segmentedMovement(ring)({ along: along - 1, across: across - 1 })[at].mean)
}

/** Pieces of a segmented ring: common practice, no source. */
const SEGMENTS = 12

function movementOf(species: SpeciesId): Movement {
  const movement = MOVEMENT[species]
  if (movement === undefined) throw new RangeError(`the movement of ${species} must be known`)
  return movement
}

function ballAt(
  { ballDiameter, ballMaterial }: MadeSizes,
  species: SpeciesId | undefined,
  from: WoodState,
  to: WoodState,
): BallSize {
  const sized = (...factors: readonly [number, number, number]): BallSize => ({
    least: mm(ballDiameter * Math.min(...factors)),
    mean: mm((ballDiameter * (factors[0] + factors[1] + factors[2])) / 3),
    most: mm(ballDiameter * Math.max(...factors)),
  })
  if (ballMaterial === 'wood' && species !== undefined) {
    const times = (perPercent: number): number => stretch(perPercent, from.moistureContent, to.moistureContent)
    const { radial, tangential } = movementOf(species)
    return sized(times(ALONG_THE_GRAIN.perPercent), times(radial), times(tangential))
  }
  const factor = ballMaterial === 'acrylic' ? (1 + acrylicGrowth(to)) / (1 + acrylicGrowth(from)) : 1
  return sized(factor, factor, factor)
}

/** Straight lines between the points of the table; air too dry or damp for it does not exist. */
function acrylicGrowth({ relativeHumidity = 100 }: WoodState): number {
  for (const [i, point] of ACRYLIC_GROWTH.entries()) {
    const before = ACRYLIC_GROWTH[i - 1]
    if (before === undefined || relativeHumidity > point.relativeHumidity) continue
    const share = (relativeHumidity - before.relativeHumidity) / (point.relativeHumidity - before.relativeHumidity)
    return before.growth + share * (point.growth - before.growth)
  }
  return itemAt(ACRYLIC_GROWTH, 0).growth
}
