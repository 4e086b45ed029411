import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import { ACRYLIC_GROWTH } from '#shared/data/ball-materials.ts'
import { type Face, segmentWood } from '#shared/data/segment-woods.ts'
import type { SpeciesId } from '#shared/data/species.ts'
import { ALONG_THE_GRAIN, MOVEMENT, type Movement, PLY_IN_PLANE, PLY_THICKNESS } from '#shared/data/wood-movement.ts'
import { type Ellipse, longer, shorter } from '#shared/geometry/ellipse.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { isSegmented, USUAL_SEGMENTS } from '#shared/wood/construction.ts'
import { FIBRE_SATURATION, stretch } from '#shared/wood/moisture-movement.ts'
import { segmentedMovement } from '#shared/wood/segmented-movement.ts'
import type { WoodState } from './states.ts'
import type { RingWood } from './year.ts'

/** The change of one board: from one moisture content to another [%], moving `times` as much as its row says. */
export interface BoardChange {
  readonly from: number
  readonly to: number
  readonly times: number
}

/**
 * The change of a bearing: of each board of its arrangement, in the order of `boards`, of its balls, and of the air.
 */
export interface Change {
  readonly boards: readonly BoardChange[]
  readonly balls: BoardChange
  readonly from: WoodState
  readonly to: WoodState
}

/** Above fibre saturation a wood keeps its size. */
const stretched = (
  perPercent: number,
  { from, to, times }: BoardChange,
  saturation: number = FIBRE_SATURATION,
): number => stretch(perPercent * times, Math.min(from, saturation), Math.min(to, saturation))

/** How many times as long a board becomes: along the grain and across it in the plane of the part, and along the axis. */
export interface Stretches {
  readonly along: number
  readonly across: number
  readonly height: number
}

/**
 * The axis of a part stands on the face of its board: a flat-sawn board moves there by the radial coefficient, a
 * quarter-sawn one by the tangential.
 *
 * @throws RangeError for a wood whose movement is not known
 */
export function stretchesOf(wood: RingWood, change: BoardChange): Stretches {
  if (wood.construction === 'cross-laminated-ply') {
    const inPlane = stretched(PLY_IN_PLANE.perPercent, change)
    return { along: inPlane, across: inPlane, height: stretched(PLY_THICKNESS.perPercent, change) }
  }
  const movement = movementOf(wood.species)
  const [across, height] = wood.construction.endsWith('quarter-sawn')
    ? [movement.radial, movement.tangential]
    : [movement.tangential, movement.radial]
  const { saturation } = movement
  return {
    along: stretched(ALONG_THE_GRAIN.perPercent, change, saturation),
    across: stretched(across, change, saturation),
    height: stretched(height, change, saturation),
  }
}

/** The wood of a part from its hollow to its outside: of a segmented part the elastic hoop. */
export interface Hoop {
  readonly inner: Mm
  readonly outer: Mm
}

/** The shape that a circle of a part takes, and the lobes of a ring of segments. */
export interface Raceway extends Ellipse {
  readonly segments?: Lobes
}

/** A ring of segments: how far its smallest radius lies below its mean, its largest above, and the pull on its joints. */
export interface Lobes {
  readonly count: number
  readonly inward: Mm
  readonly outward: Mm
  /** The hardest pull across the grain, and what the wood bears [MPa]. */
  readonly pull: number
  readonly strength: number
}

/** The least and the largest radius all round. */
export const leastRadius = (raceway: Raceway): number => shorter(raceway) - (raceway.segments?.inward ?? 0)
export const largestRadius = (raceway: Raceway): number => longer(raceway) + (raceway.segments?.outward ?? 0)

/**
 * The shape that a circle of a part takes: an ellipse if it is cut from a board (wood is stretched by one factor along the grain
 * and by another across it, the same everywhere), a circle where it is of ply, a circle with as many lobes as there are
 * pieces where it is of segments. Between the inside and the outside of a segmented part growth is taken as a straight line.
 */
export function movedCircle(radius: Mm, wood: RingWood, { inner, outer }: Hoop, change: BoardChange): Raceway {
  const { along, across } = stretchesOf(wood, change)
  if (wood.construction === 'cross-laminated-ply' || !isSegmented(wood))
    return { along: mm(radius * along), across: mm(radius * across) }
  const { plane, stiffness, tensionAcross } = segmentWood(wood.species, faceOf(wood))
  const count = wood.segments?.count ?? USUAL_SEGMENTS
  const move = segmentedMovement({ innerRadius: inner, outerRadius: outer, count, wood: plane })
  const { inside, outside, pull } = move({ along: along - 1, across: across - 1 })
  const share = (radius - inner) / (outer - inner)
  const grown = (of: 'mean' | 'least' | 'most'): number => inside[of] + share * (outside[of] - inside[of])
  const mean = mm(radius * (1 + grown('mean')))
  return {
    along: mean,
    across: mean,
    segments: {
      count,
      inward: mm(radius * (grown('mean') - grown('least'))),
      outward: mm(radius * (grown('most') - grown('mean'))),
      pull: pull * stiffness,
      strength: tensionAcross,
    },
  }
}

const faceOf = ({ construction }: RingWood): Face => (construction.endsWith('quarter-sawn') ? 'radial' : 'tangential')

function movementOf(species: SpeciesId): Movement {
  const movement = MOVEMENT[species]
  if (movement === undefined) throw new RangeError(`the movement of ${species} must be known`)
  return movement
}

/** The least, mean and largest diameter that a ball or dowel comes to; all alike unless it is of wood. */
export interface BallSize {
  readonly least: Mm
  readonly mean: Mm
  readonly most: Mm
  /** Standard deviation of its width over the directions in which it may lie. */
  readonly turned: Mm
  /** How many times as long it becomes along its grain. */
  readonly length: number
}

/**
 * A wooden ball lies in any direction: with factors f of its three axes its width, Σ f u², has over all directions u the
 * variance 2/15 Σ (f − mean)². A dowel turns about its grain, so its width, f cos² + g sin², has the variance (f − g)²/8.
 */
export function movedBall(
  { ballDiameter, traits, input: { balls } }: ResolvedBalls,
  species: SpeciesId | undefined,
  { balls: change, from, to }: Change,
): BallSize {
  const material = balls.material ?? BALL_MATERIAL
  if (material === 'wood' && species !== undefined) {
    const { radial, tangential, saturation } = movementOf(species)
    const along = stretched(ALONG_THE_GRAIN.perPercent, change, saturation)
    const across = [radial, tangential].map((perPercent) => stretched(perPercent, change, saturation))
    const isBall = traits.rolls === 'balls'
    const factors = isBall ? [along, ...across] : across
    const mean = factors.reduce((sum, factor) => sum + factor, 0) / factors.length
    const squares = factors.reduce((sum, factor) => sum + (factor - mean) * (factor - mean), 0)
    return {
      least: mm(ballDiameter * Math.min(...factors)),
      mean: mm(ballDiameter * mean),
      most: mm(ballDiameter * Math.max(...factors)),
      turned: mm(ballDiameter * Math.sqrt((isBall ? 2 / 15 : 1 / 4) * squares)),
      length: along,
    }
  }
  const factor = material === 'acrylic' ? (1 + acrylicGrowth(to)) / (1 + acrylicGrowth(from)) : 1
  const size = mm(ballDiameter * factor)
  return { least: size, mean: size, most: size, turned: mm(0), length: factor }
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
