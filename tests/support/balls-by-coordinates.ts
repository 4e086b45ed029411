/*
 * What balls in an order do, worked out anew: each is put in its place by the law of cosines, and play is that of the largest
 * circle that touches three balls and cuts none. No search, no linear program, and nothing of the core.
 */

export interface Disc {
  readonly x: number
  readonly y: number
  readonly r: number
}

const at = <T>(list: readonly T[], index: number): T => {
  const item = list.at(index)
  if (item === undefined) throw new Error(`no item ${index}`)
  return item
}

/** The angle at the middle between two touching balls, their centres so far out. */
const angle = (one: number, other: number, apart: number): number =>
  Math.acos((one * one + other * other - apart * apart) / (2 * one * other))

/** Balls round a groove; the gap whole between the last and the first, or an equal part of it between all. */
function discs(
  diameters: readonly number[],
  away: (diameter: number) => number,
  apart: (one: number, other: number) => number,
  spread: boolean,
): readonly Disc[] {
  const count = diameters.length
  const steps = diameters.map((diameter, ball) => {
    const next = at(diameters, (ball + 1) % count)
    return angle(away(diameter), away(next), apart(diameter, next))
  })
  const free = spread ? (2 * Math.PI - steps.reduce((sum, step) => sum + step, 0)) / count : 0
  let turn = 0
  return diameters.map((diameter, ball) => {
    const disc = { x: away(diameter) * Math.cos(turn), y: away(diameter) * Math.sin(turn), r: diameter / 2 }
    turn += at(steps, ball) + free
    return disc
  })
}

/** Balls on the bottom of a groove of this radius. */
export const inGroove = (bottom: number, diameters: readonly number[], spread: boolean): readonly Disc[] =>
  discs(
    diameters,
    (diameter) => bottom - diameter / 2,
    (one, other) => (one + other) / 2,
    spread,
  )

/** Straight from the last ball to the first; right as long as the row is no longer than a turn. */
export function gapOf(row: readonly Disc[], rise = 0): number {
  const [first, last] = [at(row, 0), at(row, -1)]
  return Math.hypot(first.x - last.x, first.y - last.y, rise) - first.r - last.r
}

/** On plates each centre is over the circle, at a height of its own radius. */
export function gapOnPlate(circle: number, diameters: readonly number[]): number {
  const row = discs(
    diameters,
    () => circle,
    // they differ in height by as much as in radius, so that their distance seen from above is that of √(4 r s)
    (one, other) => Math.sqrt(one * other),
    false,
  )
  return gapOf(row, (at(diameters, 0) - at(diameters, -1)) / 2)
}

/** The largest circle among the balls, near the middle: its radius and how far its centre is out. */
export function largestAmong(balls: readonly Disc[], near: number): { readonly radius: number; readonly out: number } {
  let best = { radius: Number.NEGATIVE_INFINITY, out: Number.NaN }
  balls.forEach((one, i) => {
    for (const [j, two] of balls.slice(i + 1).entries())
      for (const three of balls.slice(i + j + 2))
        for (const { x, y, r } of touching(one, two, three)) {
          const out = Math.hypot(x, y)
          if (!(r > best.radius) || out > near) continue
          if (balls.every((ball) => Math.hypot(ball.x - x, ball.y - y) - ball.r >= r - 1e-11)) best = { radius: r, out }
        }
  })
  return best
}

/** The circles that touch three others from outside (Apollonius): linear in the centre and the radius but for one square. */
function touching(one: Disc, two: Disc, three: Disc): readonly Disc[] {
  const row = ({ x, y, r }: Disc) => ({
    a: x - one.x,
    b: y - one.y,
    e: r - one.r,
    g: (x * x + y * y - r * r - (one.x ** 2 + one.y ** 2 - one.r ** 2)) / 2,
  })
  const [p, q] = [row(two), row(three)]
  const whole = p.a * q.b - p.b * q.a
  const [x0, x1] = [(p.g * q.b - p.b * q.g) / whole, (p.b * q.e - p.e * q.b) / whole]
  const [y0, y1] = [(p.a * q.g - p.g * q.a) / whole, (p.e * q.a - p.a * q.e) / whole]
  const [u, v] = [x0 - one.x, y0 - one.y]
  const [A, B, C] = [x1 * x1 + y1 * y1 - 1, u * x1 + v * y1 - one.r, u * u + v * v - one.r ** 2]
  const root = Math.sqrt(B * B - A * C)
  const radii = Math.abs(A) < 1e-12 ? [-C / (2 * B)] : [(-B + root) / A, (-B - root) / A]
  return radii.map((r) => ({ x: x0 + x1 * r, y: y0 + y1 * r, r })).filter(({ r }) => Number.isFinite(r))
}
