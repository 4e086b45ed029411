import { requireAboveZero } from '#shared/precondition.ts'
import type { Mm } from '#shared/units/length.ts'
import { type EdgeGrowth, type PlaneWood, type SegmentedGrowth, segmentedGrowth } from './segmented-ring.ts'

/** A flat ring glued up of straight pieces. */
export interface SegmentedRing {
  readonly innerRadius: Mm
  readonly outerRadius: Mm
  readonly count: number
  readonly wood: PlaneWood
}

/** Growth of the free wood per size, along the grain and across it. */
export interface FreeGrowth {
  readonly along: number
  readonly across: number
}

/** Growth of the ring per radius of its two cylinders, and the highest tension across the grain. */
export interface SegmentedMovement {
  readonly inside: EdgeGrowth
  readonly outside: EdgeGrowth
  /** Over the stiffness along the grain. */
  readonly pull: number
}

/** Rings are solved where ln(outside / inside) is THIN (e^(i STEP) - 1), cubics laid between: within 0.001 of the growth. */
const THIN = 0.15
const STEP = 0.2
/** An outside wider than this many holes no longer feels the hole; thinner walls than the first step are extrapolated. */
const WIDEST = 12
/** Solved rings of each wood, by count and step: a request needs few, and each of them costs a millisecond. */
const solved = new WeakMap<PlaneWood, Map<number, SegmentedGrowth[]>>()

/**
 * How a segmented ring moves, by `segmentedGrowth`: by as much as the wood grows alike both ways it just grows, and the
 * rest scales. Looking the ring up costs more than what it then does for each change, so keep what is returned.
 *
 * @param ring radii above 0, the outer one the larger [mm]
 * @throws RangeError outside those ranges
 */
export function segmentedMovement(ring: SegmentedRing): (free: FreeGrowth) => SegmentedMovement {
  requireAboveZero('innerRadius', ring.innerRadius)
  const { inside, outside, stress } = between(ring)
  return ({ along, across }) => {
    const unlike = across - along
    const edge = ({ mean, least, most }: EdgeGrowth): EdgeGrowth => {
      const [one, other] = [along + unlike * least, along + unlike * most]
      return { mean: along + unlike * mean, least: Math.min(one, other), most: Math.max(one, other) }
    }
    return { inside: edge(inside), outside: edge(outside), pull: Math.max(unlike * stress.least, unlike * stress.most) }
  }
}

/** The cubic through four neighbours, by Lagrange. */
function between({ innerRadius, outerRadius, count, wood }: SegmentedRing): SegmentedGrowth {
  const height = Math.log(Math.min(WIDEST, outerRadius / innerRadius))
  const place = Math.log1p(height / THIN) / STEP
  const first = Math.max(1, Math.floor(place) - 1)
  const t = place - first
  const rings = solvedRings(wood, count)
  const node = (i: number): SegmentedGrowth => {
    const ring = rings[first + i] ?? segmentedGrowth(Math.exp(THIN * Math.expm1((first + i) * STEP)), count, wood)
    rings[first + i] = ring
    return ring
  }
  const [a, b, c, d] = [node(0), node(1), node(2), node(3)]
  const [wa, wb] = [((1 - t) * (2 - t) * (3 - t)) / 6, (t * (2 - t) * (3 - t)) / 2]
  const [wc, wd] = [(t * (t - 1) * (3 - t)) / 2, (t * (t - 1) * (t - 2)) / 6]
  const mixed = (of: (ring: SegmentedGrowth) => number): number => wa * of(a) + wb * of(b) + wc * of(c) + wd * of(d)
  const edge = (name: 'inside' | 'outside'): EdgeGrowth => ({
    mean: mixed((ring) => ring[name].mean),
    least: mixed((ring) => ring[name].least),
    most: mixed((ring) => ring[name].most),
  })
  return {
    inside: edge('inside'),
    outside: edge('outside'),
    stress: { least: mixed((ring) => ring.stress.least), most: mixed((ring) => ring.stress.most) },
  }
}

function solvedRings(wood: PlaneWood, count: number): SegmentedGrowth[] {
  const byCount = solved.get(wood) ?? new Map<number, SegmentedGrowth[]>()
  solved.set(wood, byCount)
  const rings = byCount.get(count) ?? []
  byCount.set(count, rings)
  return rings
}
