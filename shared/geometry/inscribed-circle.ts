/**
 * Half planes n · p ≤ reach side by side, n of length 1 and all different. Their intersection is a convex polygon; the
 * reach of a plane may be below 0, and the intersection empty.
 */
export interface HalfPlanes {
  readonly normalX: Float64Array
  readonly normalY: Float64Array
  readonly reach: Float64Array
}

export const halfPlanes = (count: number): HalfPlanes => ({
  normalX: new Float64Array(count),
  normalY: new Float64Array(count),
  reach: new Float64Array(count),
})

/** The circle that `inscribeCircle` writes, made once and used again. */
export interface InscribedCircle {
  x: number
  y: number
  /** Below 0 where the planes have no point in common: then every point is outside some plane by that much at least. */
  radius: number
  /** The three planes that hold the circle, by index. Read as the start of the next search if `warm` is true. */
  first: number
  second: number
  third: number
}

export const emptyCircle = (): InscribedCircle => ({ x: 0, y: 0, radius: 0, first: -1, second: -1, third: -1 })

/**
 * Pivots per plane before the search gives up. A few are enough; from the first such round on Bland's rule forbids
 * cycles.
 */
const MOST_PIVOTS_A_PLANE = 20

/**
 * The largest circle inside a convex polygon (its Chebyshev centre), which is the linear program
 *
 *   max t   subject to   t + nᵢ · p ≤ reachᵢ.
 *
 * Its dual is the least Σ λᵢ reachᵢ with λ ≥ 0, Σ λᵢ = 1 and Σ λᵢ nᵢ = 0, so three planes whose normals have the origin
 * in their triangle decide it, λ being the barycentric coordinates of the origin. The dual simplex method goes from
 * three such planes to the next: the plane that cuts off most of the circle comes in, and the one whose λ is the first
 * to reach 0 leaves.
 *
 * @param tolerance a plane that cuts off no more than this is satisfied; a few roundings of the largest reach
 * @param warm whether the circle's own three planes are to be tried as the start
 * @returns false where the normals leave a half turn free, so that no circle is the largest; the circle is then
 *   unchanged
 */
export function inscribeCircle(planes: HalfPlanes, circle: InscribedCircle, tolerance: number, warm = false): boolean {
  const { normalX, normalY, reach } = planes
  const count = reach.length
  let { first, second, third } = circle
  if (!(warm && holdsOrigin(planes, first, second, third))) {
    first = tightestPlane(reach)
    second = mostOpposed(planes, first, 1)
    third = mostOpposed(planes, first, -1)
    if (!holdsOrigin(planes, first, second, third)) return false
  }
  for (let pivot = 0; ; pivot++) {
    const ax = normalX[first] ?? Number.NaN
    const ay = normalY[first] ?? Number.NaN
    const bx = normalX[second] ?? Number.NaN
    const by = normalY[second] ?? Number.NaN
    const cx = normalX[third] ?? Number.NaN
    const cy = normalY[third] ?? Number.NaN
    const whole = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
    const reachA = reach[first] ?? Number.NaN
    const toB = (reach[second] ?? Number.NaN) - reachA
    const toC = (reach[third] ?? Number.NaN) - reachA
    const x = (toB * (cy - ay) - toC * (by - ay)) / whole
    const y = (toC * (bx - ax) - toB * (cx - ax)) / whole
    const radius = reachA - ax * x - ay * y
    let entering = -1
    let least = -tolerance
    for (let plane = 0; plane < count; plane++) {
      const left =
        (reach[plane] ?? Number.NaN) - (normalX[plane] ?? Number.NaN) * x - (normalY[plane] ?? Number.NaN) * y - radius
      if (left < least && plane !== first && plane !== second && plane !== third) {
        entering = plane
        if (pivot > count) break
        least = left
      }
    }
    if (entering < 0 || pivot > MOST_PIVOTS_A_PLANE * count) {
      circle.x = x
      circle.y = y
      circle.radius = radius
      circle.first = first
      circle.second = second
      circle.third = third
      return true
    }
    const ex = normalX[entering] ?? Number.NaN
    const ey = normalY[entering] ?? Number.NaN
    // areas of the triangle's parts, seen from the origin and from the entering normal; all of one sign with `whole`
    const leavesA = ratio(bx * cy - by * cx, (bx - ex) * (cy - ey) - (by - ey) * (cx - ex), whole)
    const leavesB = ratio(cx * ay - cy * ax, (cx - ex) * (ay - ey) - (cy - ey) * (ax - ex), whole)
    const leavesC = ratio(ax * by - ay * bx, (ax - ex) * (by - ey) - (ay - ey) * (bx - ex), whole)
    if (leavesA <= leavesB && leavesA <= leavesC) first = entering
    else if (leavesB <= leavesC) second = entering
    else third = entering
  }
}

/** Barycentric coordinates this near to 0 are 0. */
const NOTHING = 1e-14

/** When a plane's share of the origin is used up by the entering plane, which takes `taken` of it. */
function ratio(share: number, taken: number, whole: number): number {
  const takes = taken / whole
  return takes > NOTHING ? Math.max(0, share / whole) / takes : Number.POSITIVE_INFINITY
}

function tightestPlane(reach: Float64Array): number {
  let tightest = 0
  for (let plane = 1; plane < reach.length; plane++) {
    if ((reach[plane] ?? Number.NaN) < (reach[tightest] ?? Number.NaN)) tightest = plane
  }
  return tightest
}

/** On one side of a plane's normal, the normal that is nearest to its opposite; -1 where that side has none. */
function mostOpposed({ normalX, normalY }: HalfPlanes, to: number, side: 1 | -1): number {
  const x = normalX[to] ?? Number.NaN
  const y = normalY[to] ?? Number.NaN
  let found = -1
  let least = Number.POSITIVE_INFINITY
  for (let plane = 0; plane < normalX.length; plane++) {
    const nx = normalX[plane] ?? Number.NaN
    const ny = normalY[plane] ?? Number.NaN
    const cross = side * (x * ny - y * nx)
    // a normal that is exactly opposite belongs to one side alone
    if (plane === to || cross < 0 || (cross === 0 && side < 0)) continue
    const along = x * nx + y * ny
    if (along < least) {
      least = along
      found = plane
    }
  }
  return found
}

function holdsOrigin({ normalX, normalY }: HalfPlanes, first: number, second: number, third: number): boolean {
  if (first < 0 || second < 0 || third < 0) return false
  const ax = normalX[first] ?? Number.NaN
  const ay = normalY[first] ?? Number.NaN
  const bx = normalX[second] ?? Number.NaN
  const by = normalY[second] ?? Number.NaN
  const cx = normalX[third] ?? Number.NaN
  const cy = normalY[third] ?? Number.NaN
  const a = bx * cy - by * cx
  const b = cx * ay - cy * ax
  const c = ax * by - ay * bx
  const whole = a + b + c
  const least = -NOTHING * Math.abs(whole)
  return whole > 0 ? a >= least && b >= least && c >= least : whole < 0 && a <= -least && b <= -least && c <= -least
}
