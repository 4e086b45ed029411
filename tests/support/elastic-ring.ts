type Elastic = {
  readonly innerRadius: number
  readonly outerRadius: number
  readonly acrossOverAlong: number
  /** Poisson's ratio for a pull round the circle. */
  readonly poisson: number
}

/**
 * Growth per radius of both cylinders of an elastic ring, by finite elements: two-node elements in the displacement u,
 * energy of (u' - across, u/r - round) in plane stress at the middle of each, r dr, solved as a band of three.
 */
export function growthByElements(
  ring: Elastic,
  free: { readonly round: number; readonly across: number },
  elements = 4000,
) {
  const { innerRadius, outerRadius, acrossOverAlong: e, poisson } = ring
  // stiffness round the circle is 1, across it e; plane stress
  const scale = 1 / (1 - poisson * poisson * e)
  const [cRound, cAcross, cBoth] = [scale, scale * e, scale * poisson * e]
  const size = (outerRadius - innerRadius) / elements
  const diagonal = new Float64Array(elements + 1)
  const beside = new Float64Array(elements)
  const load = new Float64Array(elements + 1)
  for (let i = 0; i < elements; i++) {
    const r = innerRadius + (i + 0.5) * size
    const round = 1 / (2 * r) // u/r, per unit of either node's u
    const across = [-1 / size, 1 / size] as const
    const energy = (p: number, q: number) => cAcross * p * q + cBoth * (p + q) * round + cRound * round * round
    const push = (p: number) =>
      p * (cAcross * free.across + cBoth * free.round) + round * (cBoth * free.across + cRound * free.round)
    diagonal[i] = (diagonal[i] ?? 0) + energy(across[0], across[0]) * r * size
    diagonal[i + 1] = (diagonal[i + 1] ?? 0) + energy(across[1], across[1]) * r * size
    beside[i] = energy(across[0], across[1]) * r * size
    load[i] = (load[i] ?? 0) + push(across[0]) * r * size
    load[i + 1] = (load[i + 1] ?? 0) + push(across[1]) * r * size
  }
  for (let i = 1; i <= elements; i++) {
    const factor = (beside[i - 1] ?? 0) / (diagonal[i - 1] ?? 1)
    diagonal[i] = (diagonal[i] ?? 0) - factor * (beside[i - 1] ?? 0)
    load[i] = (load[i] ?? 0) - factor * (load[i - 1] ?? 0)
  }
  let u = (load[elements] ?? 0) / (diagonal[elements] ?? 1)
  const outside = u / outerRadius
  for (let i = elements - 1; i >= 0; i--) u = ((load[i] ?? 0) - (beside[i] ?? 0) * u) / (diagonal[i] ?? 1)
  return { inside: u / innerRadius, outside }
}
