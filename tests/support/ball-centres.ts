/** A point in space: x along the ring's axis, y towards the gap, z across it. */
export type Point = readonly [x: number, y: number, z: number]

export const distance = ([a, b, c]: Point, [x, y, z]: Point): number =>
  Math.sqrt((a - x) ** 2 + (b - y) ** 2 + (c - z) ** 2)

/**
 * Balls laid one by one on a circle, each touching the one before: centres by turning a vector, with no arcsine and
 * no closed form. The first and the last stand alike either side of +y, where the gap is.
 */
export function ballCentres(pitchRadius: number, ballDiameter: number, laid: number): readonly Point[] {
  const step = ballDiameter / pitchRadius
  const cosine = 1 - (step * step) / 2
  const sine = step * Math.sqrt(1 - (step * step) / 4)
  const turned: Arrow[] = [[pitchRadius, 0]]
  for (let ball = 1; ball < laid; ball++) {
    const [u, v] = at(turned, ball - 1)
    turned.push([u * cosine - v * sine, u * sine + v * cosine])
  }
  // The middle of the row goes to −y.
  const [p, q] = ofLengthOne(sum(at(turned, Math.floor((laid - 1) / 2)), at(turned, Math.ceil((laid - 1) / 2))))
  return turned.map(([u, v]) => [0, -(u * p + v * q), v * p - u * q])
}

type Arrow = readonly [u: number, v: number]

const at = (arrows: readonly Arrow[], index: number): Arrow => arrows[index] ?? [Number.NaN, Number.NaN]

const sum = ([a, b]: Arrow, [c, d]: Arrow): Arrow => [a + c, b + d]

const ofLengthOne = ([u, v]: Arrow): Arrow => [u / Math.hypot(u, v), v / Math.hypot(u, v)]
