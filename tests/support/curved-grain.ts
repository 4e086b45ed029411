/** A hoop whose grain runs round the circle, its stiffness across the grain over that along it below 1. */
export interface CurvedGrain {
  readonly innerRadius: number
  readonly outerRadius: number
  readonly acrossOverAlong: number
}

/**
 * Growth per radius of both cylinders of an elastic hoop in plane stress, both free, whose wood grows by 1 across the grain
 * and not at all along it. With F = r s_r and s_round = F' (equilibrium) compatibility reads r2 F'' + r F' - k2 F = E r,
 * k2 = E / E'; Poisson's ratio drops out. F = A r^k + B r^-k + Q r, Q = E / (1 - k2), F 0 on both cylinders; u/r = F'/E.
 */
export function curvedGrainGrowth({ innerRadius, outerRadius, acrossOverAlong }: CurvedGrain) {
  const k = 1 / Math.sqrt(acrossOverAlong)
  const outer = outerRadius / innerRadius
  const [up, down] = [outer ** k, outer ** -k]
  const a = -(outer - down) / (up - down)
  const b = -1 - a
  const scale = 1 / (1 - k * k)
  return { inside: scale * (1 + k * (a - b)), outside: scale * (1 + (k * (a * up - b * down)) / outer) }
}
