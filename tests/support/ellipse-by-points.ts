/** A point in the plane of the ring, x along the grain. */
type Point = readonly [x: number, y: number]

const distance = ([x, y]: Point, [u, v]: Point): number => Math.hypot(x - u, y - v)

/** Nearest distance from a point to an ellipse, found by coordinates: a coarse look round, then ever finer. */
export function distanceToEllipse(point: Point, along: number, across: number): number {
  const [x, y] = point
  const at = (angle: number): number => {
    const [dx, dy] = [x - along * Math.cos(angle), y - across * Math.sin(angle)]
    return Math.sqrt(dx * dx + dy * dy)
  }
  let [best, least, width] = [0, at(0), Math.PI / 90]
  const look = (angle: number): void => {
    const found = at(angle)
    if (found < least) [best, least] = [angle, found]
  }
  for (let i = 1; i < 180; i++) look(i * width)
  for (; width > 1e-9; width /= 2) {
    const [left, right] = [best - width, best + width]
    look(left)
    look(right)
  }
  return least
}

/** Of some 50 mm halved so often 5e-8 mm is left, in the place of a ball and of the next: far less than 1e-5 mm for any ring here. */
const HALVINGS = 30

/**
 * Where a ball of a radius that rolls round inside an ellipse has its centre, seen from the middle of the ellipse in a
 * direction: as far out as its distance to the ellipse allows.
 */
function centreInDirection(direction: number, radius: number, along: number, across: number): Point {
  let [low, high] = [0, Math.max(along, across)]
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2
    const point: Point = [middle * Math.cos(direction), middle * Math.sin(direction)]
    const inside = (point[0] / along) ** 2 + (point[1] / across) ** 2 < 1
    if (inside && distanceToEllipse(point, along, across) >= radius) low = middle
    else high = middle
  }
  return [low * Math.cos(direction), low * Math.sin(direction)]
}

/** The ball gap by coordinates: each ball laid on, turning from the middle until it touches the one before. */
export function gapByPoints(along: number, across: number, diameter: number, count: number, direction: number): number {
  const centre = (at: number): Point => centreInDirection(at, diameter / 2, along, across)
  const first = centre(direction)
  let [at, from] = [direction, first]
  for (let ball = 1; ball < count; ball++) {
    let [low, high] = [0, Math.PI]
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (low + high) / 2
      if (distance(centre(at + middle), from) < diameter) low = middle
      else high = middle
    }
    at += low
    from = centre(at)
  }
  return distance(from, first) - diameter
}

/** Perimeter of an ellipse, exactly: by the arithmetic-geometric mean of its half axes (Gauss; DLMF 19.8). */
export function perimeter(along: number, across: number): number {
  let [a, b] = [Math.max(along, across), Math.min(along, across)]
  let sum = a * a - (a * a - b * b) / 2
  for (let power = 1; Math.abs(a - b) > 1e-15 * a; power *= 2) {
    const c = (a - b) / 2
    ;[a, b] = [(a + b) / 2, Math.sqrt(a * b)]
    sum -= power * c * c
  }
  return (2 * Math.PI * sum) / a
}

/** Ramanujan's second approximation of it. */
export function perimeterByRamanujan(a: number, b: number): number {
  const h = ((a - b) / (a + b)) ** 2
  return Math.PI * (a + b) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)))
}
