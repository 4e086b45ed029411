/** A flat ring glued up of straight pieces with mitre joints, or one with its grain curved round (`count` absent). */
export interface RingOfPieces {
  readonly innerRadius: number
  readonly outerRadius: number
  /** Absent: the grain follows the circle, and any slice of the ring stands for all of it. */
  readonly count?: number
  /** Stiffness across the grain and in shear over that along it, and Poisson's ratio for a pull along the grain. */
  readonly acrossOverAlong: number
  readonly shearOverAlong: number
  readonly poisson: number
}

/** Answers for wood that grows by 1 across the grain and not at all along it, and that is 1 stiff along the grain. */
export interface Swollen {
  /** Displacement outward over the radius, in order of the angle from the middle of a piece to its joint. */
  readonly inside: readonly number[]
  readonly outside: readonly number[]
  /** Mean of those round the circle. */
  readonly meanInside: number
  readonly meanOutside: number
  /** At the points where stresses are best known: polar place, and stress along, across and in shear of the grain. */
  readonly stresses: readonly {
    readonly radius: number
    readonly angle: number
    readonly along: number
    readonly across: number
    readonly shear: number
  }[]
  /** Pull at right angles to the joint, at those points of the elements beside it that lie on it. */
  readonly joint: readonly { readonly radius: number; readonly pull: number }[]
}

const GAUSS = [
  [-Math.sqrt(0.6), 5 / 9],
  [0, 8 / 9],
  [Math.sqrt(0.6), 5 / 9],
] as const
const BARLOW = [-1 / Math.sqrt(3), 1 / Math.sqrt(3)] as const

/** Quadratic shape functions on -1, 0, 1 and their slopes. */
const shape = (s: number): readonly number[] => [(s * (s - 1)) / 2, 1 - s * s, (s * (s + 1)) / 2]
const slope = (s: number): readonly number[] => [s - 0.5, -2 * s, s + 0.5]

/**
 * Plane stress by nine-node elements over half a piece, from its middle to the joint: both are planes of symmetry, so
 * nothing moves at right angles to them. Coordinates: x along the grain at the middle of the piece, y outward there.
 * At the joint the two displacements are taken along it and at right angles to it; the latter is held.
 */
export function swollenPieces(ring: RingOfPieces, across: number, round: number): Swollen {
  const { innerRadius, outerRadius, count = 12, acrossOverAlong: e, shearOverAlong: g, poisson } = ring
  const half = Math.PI / count
  const isCurved = ring.count === undefined
  const rows = 2 * across + 1
  const columns = 2 * round + 1
  // Elements are smaller towards the two cylinders and the joint, where the stress is steepest.
  const graded = (i: number, of: number): number => (1 - Math.cos((Math.PI * i) / of)) / 2
  const stretchedRadius = (i: number): number =>
    innerRadius * (outerRadius / innerRadius) ** ((graded(i, rows - 1) + i / (rows - 1)) / 2)
  const stretchedAngle = (j: number): number => half * Math.sin((Math.PI / 2) * (j / (columns - 1)))
  const place = (i: number, j: number): readonly [number, number] => {
    // Middle nodes in the middle of their elements.
    const at = (index: number, of: (k: number) => number): number =>
      index % 2 === 0 ? of(index) : (of(index - 1) + of(index + 1)) / 2
    const [r, t] = [at(i, stretchedRadius), at(j, stretchedAngle)]
    return [r * Math.sin(t), r * Math.cos(t)]
  }
  // Numbered along the shorter side, so that the band is narrow: the work goes with its square.
  const node = rows <= columns ? (i: number, j: number) => j * rows + i : (i: number, j: number) => i * columns + j
  const size = 2 * rows * columns
  const width = 2 * (2 * Math.min(rows, columns) + 3)
  const matrix = new Float64Array(size * width)
  const force = new Float64Array(size)
  const stiff = 1 / (1 - poisson * poisson * e)
  const [d11, d12, d22, d33] = [stiff, poisson * e * stiff, e * stiff, g]
  const grainAt = (x: number, y: number): number => (isCurved ? -Math.atan2(x, y) : 0)
  /** Strain in the axes of the grain of a displacement whose gradient is given. */
  const strains = (gx: number, gy: number, angle: number): readonly (readonly [number, number])[] => {
    const [c, s] = [Math.cos(angle), Math.sin(angle)]
    // Gradient along and across the grain; displacement components along (c, s) and across (-s, c).
    const [ga, gb] = [gx * c + gy * s, gy * c - gx * s]
    return [
      [ga * c, ga * s],
      [-gb * s, gb * c],
      [gb * c - ga * s, gb * s + ga * c],
    ]
  }
  const turned = (j: number): readonly [number, number, number, number] =>
    j === columns - 1 ? [Math.sin(half), Math.cos(half), Math.cos(half), -Math.sin(half)] : [1, 0, 0, 1]
  const elementAt = (ei: number, ej: number) => {
    const nodes = Array.from({ length: 9 }, (_, k) => [2 * ei + (k % 3), 2 * ej + Math.floor(k / 3)] as const)
    const places = nodes.map(([i, j]) => place(i, j))
    const at = (s: number, t: number) => {
      const [fs, ft, ds, dt] = [shape(s), shape(t), slope(s), slope(t)]
      const f = nodes.map((_, k) => n(fs, k % 3) * n(ft, Math.floor(k / 3)))
      const fds = nodes.map((_, k) => n(ds, k % 3) * n(ft, Math.floor(k / 3)))
      const fdt = nodes.map((_, k) => n(fs, k % 3) * n(dt, Math.floor(k / 3)))
      const sum = (w: readonly number[], c: 0 | 1): number =>
        w.reduce((total, v, k) => total + v * n(places[k] ?? [], c), 0)
      const [xs, ys, xt, yt, x, y] = [sum(fds, 0), sum(fds, 1), sum(fdt, 0), sum(fdt, 1), sum(f, 0), sum(f, 1)]
      const det = xs * yt - ys * xt
      const b = nodes.map(([, j], k) => {
        const gx = (n(fds, k) * yt - n(fdt, k) * ys) / det
        const gy = (n(fdt, k) * xs - n(fds, k) * xt) / det
        const plain = strains(gx, gy, grainAt(x, y))
        const [ax, ay, bx, by] = turned(j)
        return plain.map(([px, py]) => [px * ax + py * ay, px * bx + py * by] as const)
      })
      return { x, y, det: Math.abs(det), b }
    }
    return { nodes, at }
  }
  const dofs = (nodes: readonly (readonly [number, number])[]): number[] =>
    nodes.flatMap(([i, j]) => [2 * node(i, j), 2 * node(i, j) + 1])
  for (let ej = 0; ej < round; ej++)
    for (let ei = 0; ei < across; ei++) {
      const { nodes, at } = elementAt(ei, ej)
      const of = dofs(nodes)
      for (const [s, ws] of GAUSS)
        for (const [t, wt] of GAUSS) {
          const { det, b } = at(s, t)
          const weight = ws * wt * det
          const columnsOf = b.flatMap(([ea, eb, es]) =>
            [0, 1].map((c) => [n(ea ?? [], c), n(eb ?? [], c), n(es ?? [], c)] as const),
          )
          const stressOf = columnsOf.map(([a, c, h]) => [d11 * a + d12 * c, d12 * a + d22 * c, d33 * h] as const)
          for (let p = 0; p < 18; p++) {
            const [sa, sb, sc] = stressOf[p] ?? [NaN, NaN, NaN]
            const row = n(of, p)
            force[row] = (force[row] ?? NaN) + weight * sb
            for (let q = 0; q < 18; q++) {
              const column = n(of, q)
              if (column < row) continue
              const [a, c, h] = columnsOf[q] ?? [NaN, NaN, NaN]
              const index = row * width + column - row
              matrix[index] = (matrix[index] ?? NaN) + weight * (sa * a + sb * c + sc * h)
            }
          }
        }
    }
  // Held: at the middle the x component, at the joint the one at right angles to it.
  for (let i = 0; i < rows; i++) {
    matrix[2 * node(i, 0) * width] = 1e30
    matrix[(2 * node(i, columns - 1) + 1) * width] = 1e30
  }
  solveBanded(matrix, force, size, width)
  const outward = (i: number, j: number): number => {
    const [x, y] = place(i, j)
    const [u, v] = [force[2 * node(i, j)] ?? NaN, force[2 * node(i, j) + 1] ?? NaN]
    const [ax, ay, bx, by] = turned(j)
    const [ux, uy] = [u * ax + v * bx, u * ay + v * by]
    return (ux * x + uy * y) / (x * x + y * y)
  }
  const angles = Array.from({ length: columns }, (_, j) => Math.atan2(...place(0, j)))
  const inside = angles.map((_, j) => outward(0, j))
  const outside = angles.map((_, j) => outward(rows - 1, j))
  /** Simpson's rule for the uneven steps of each element. */
  const mean = (values: readonly number[]): number => {
    let total = 0
    for (let j = 0; j + 2 < columns; j += 2)
      total += ((n(angles, j + 2) - n(angles, j)) * (n(values, j) + 4 * n(values, j + 1) + n(values, j + 2))) / 6
    return total / half
  }
  const stressAt = (ei: number, ej: number, s: number, t: number) => {
    const { nodes, at } = elementAt(ei, ej)
    const { x, y, b } = at(s, t)
    const of = dofs(nodes)
    const strain = [0, 1, 2].map((kind) =>
      b.reduce((total, rowsOf, k) => {
        const [p, q] = rowsOf[kind] ?? [NaN, NaN]
        return total + p * n(force, n(of, 2 * k)) + q * n(force, n(of, 2 * k + 1))
      }, 0),
    )
    const [a, c, h] = [n(strain, 0), n(strain, 1) - 1, n(strain, 2)]
    return {
      radius: Math.sqrt(x * x + y * y),
      angle: Math.atan2(x, y),
      along: d11 * a + d12 * c,
      across: d12 * a + d22 * c,
      shear: d33 * h,
    }
  }
  const elements = Array.from({ length: across * round }, (_, k) => [k % across, Math.floor(k / across)] as const)
  const stresses = elements.flatMap(([ei, ej]) => BARLOW.flatMap((s) => BARLOW.map((t) => stressAt(ei, ej, s, t))))
  const joint = Array.from({ length: across }, (_, ei) => ei).flatMap((ei) =>
    BARLOW.map((s) => {
      const { radius, along, across: acrossGrain, shear } = stressAt(ei, round - 1, s, 1)
      const [c, si] = isCurved ? [1, 0] : [Math.cos(half), -Math.sin(half)]
      return { radius, acrossGrain, pull: along * c * c + acrossGrain * si * si + 2 * shear * c * si }
    }),
  )
  return { inside, outside, meanInside: mean(inside), meanOutside: mean(outside), stresses, joint }
}

const n = (list: ArrayLike<number>, at: number): number => list[at] ?? Number.NaN

/** The same of a list that the work is in: for lists of every kind it would take twice as long. */
const cell = (list: Float64Array, at: number): number => list[at] ?? Number.NaN

/** Cholesky in the upper band, in place; the solution in place of the right-hand side. */
function solveBanded(matrix: Float64Array, right: Float64Array, size: number, width: number): void {
  for (let i = 0; i < size; i++) {
    const pivot = Math.sqrt(cell(matrix, i * width))
    const reach = Math.min(width, size - i)
    for (let k = 0; k < reach; k++) matrix[i * width + k] = cell(matrix, i * width + k) / pivot
    for (let k = 1; k < reach; k++) {
      const factor = cell(matrix, i * width + k)
      if (factor === 0) continue
      for (let m = k; m < reach; m++)
        matrix[(i + k) * width + m - k] = cell(matrix, (i + k) * width + m - k) - factor * cell(matrix, i * width + m)
    }
  }
  for (let i = 0; i < size; i++) {
    right[i] = cell(right, i) / cell(matrix, i * width)
    for (let k = 1; k < Math.min(width, size - i); k++)
      right[i + k] = cell(right, i + k) - cell(matrix, i * width + k) * cell(right, i)
  }
  for (let i = size - 1; i >= 0; i--) {
    let value = cell(right, i)
    for (let k = 1; k < Math.min(width, size - i); k++) value -= cell(matrix, i * width + k) * cell(right, i + k)
    right[i] = value / cell(matrix, i * width)
  }
}
