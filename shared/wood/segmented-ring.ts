import { requireAboveZero, requireWithin } from '#shared/precondition.ts'
import type { Mm } from '#shared/units/length.ts'

/** A flat ring, and how much stiffer it is round the circle than across it. */
export interface ElasticRing {
  readonly innerRadius: Mm
  readonly outerRadius: Mm
  /** Stiffness from the middle outward over stiffness round the circle: below 1, for the grain runs round. */
  readonly acrossOverAlong: number
}

/** What the wood of the ring would do if each piece were free: growth per size. */
export interface FreeGrowth {
  readonly round: number
  readonly across: number
}

/** Nearer to 1 the formula divides by next to nothing; wood is far from it. */
const MOST_STIFFNESS_RATIO = 0.9

/**
 * How much the inside and the outside of a ring glued up of segments grow, per radius, when its wood swells. The grain
 * runs round the circle, so it holds the hoop and the wall alone swells: the inside moves inward, the outside outward.
 *
 * Derived for an elastic ring in plane stress, stiffer round the circle (E) than across (E'), its two cylinders free:
 * with F = r s_r and s_round = F' (equilibrium) compatibility reads r2 F'' + r F' - k2 F = E (across - round) r,
 * k2 = E / E'; Poisson's ratio drops out. F = A r^k + B r^-k + Q r, Q = E (across - round) / (1 - k2), A and B such that
 * F is 0 on both cylinders; there the growth is u/r = round + F'/E.
 *
 * @param ring radii above 0 [mm], `acrossOverAlong` above 0 and at most 0.9
 * @throws RangeError outside those ranges
 */
export function segmentedGrowth(
  ring: ElasticRing,
  free: FreeGrowth,
): { readonly inside: number; readonly outside: number } {
  const { innerRadius, outerRadius, acrossOverAlong } = ring
  requireAboveZero('innerRadius', innerRadius)
  requireWithin('innerRadius', innerRadius, 0, outerRadius * (1 - Number.EPSILON))
  requireAboveZero('acrossOverAlong', acrossOverAlong)
  requireWithin('acrossOverAlong', acrossOverAlong, 0, MOST_STIFFNESS_RATIO)
  const k = 1 / Math.sqrt(acrossOverAlong)
  // Radii in units of the inner one, forces in units of Q; exp and log, for powers differ between engines.
  const log = Math.log(outerRadius / innerRadius)
  const [up, down, outer] = [Math.exp(k * log), Math.exp(-k * log), outerRadius / innerRadius]
  const a = -(outer - down) / (up - down)
  const b = -1 - a
  const scale = (free.across - free.round) / (1 - k * k)
  return {
    inside: free.round + scale * (1 + k * (a - b)),
    outside: free.round + scale * (1 + (k * (a * up - b * down)) / outer),
  }
}
