/*
 * A row of touching balls whose centres run on a path that is no circle, or each at a height of its own: balls that ride on
 * the edges of their groove, and a groove out of round by two lobes. Of neighbours at aᵢ and aⱼ from the ring's centre, which
 * touch over s = rᵢ + rⱼ, the law of cosines with no digit lost to a difference gives, with n = s² − (aᵢ − aⱼ)²,
 *
 *   2 aᵢ aⱼ cos θ = 2 aᵢ aⱼ − n      2 aᵢ aⱼ sin θ = √(n (4 aᵢ aⱼ − n))
 *
 * A lobed path stands at a + A cos 2(ψ − ψ₀) in the direction ψ: where a ball comes to lie and how far out it is there depend
 * on each other, and are found by turns. Each turn is worth a factor A / a.
 */

/** Two lobes: amplitude A, and the direction of one, doubled: cos 2ψ₀ and sin 2ψ₀. The first ball lies in direction 0. */
export interface Lobes {
  readonly amplitude: number
  readonly cosine: number
  readonly sine: number
}

const ROUND: Lobes = { amplitude: 0, cosine: 1, sine: 0 }

/** Lobes of a twentieth of the radius are done by then; most end by themselves long before. */
const MOST_TURNS = 20

/**
 * Straight-line gap between the last ball and the first, all others pushed together. Where the row reaches round more than
 * once, it goes on falling by the arc of the overlap, as `unequalBallGap` does.
 *
 * @param centre how far from the ring's centre a ball's centre stands, the lobes apart [mm]: each above 0
 * @param radius of each ball, in their order round the ring [mm]
 * @param lobes amplitude far below the centres' distances
 */
export function gapOnPath(
  ballCount: number,
  centre: (ball: number) => number,
  radius: (ball: number) => number,
  { amplitude, cosine: lobeCosine, sine: lobeSine }: Lobes = ROUND,
): number {
  const [firstCentre, firstRadius] = [centre(0) + amplitude * lobeCosine, radius(0)]
  let [x, y, halfTurns, before, beside] = [1, 0, 0, firstCentre, firstRadius]
  for (let ball = 1; ball < ballCount; ball++) {
    const [onCircle, own] = [centre(ball), radius(ball)]
    const touching = beside + own
    let [nextX, nextY] = [x, y]
    let away = onCircle
    for (let turn = 0; turn < MOST_TURNS; turn++) {
      const found = onCircle + amplitude * (lobeCosine * (nextX * nextX - nextY * nextY) + lobeSine * 2 * nextX * nextY)
      if (turn > 0 && found === away) break
      away = found
      const sides = 2 * before * away
      const apart = (touching - before + away) * (touching + before - away)
      const cosine = (sides - apart) / sides
      const sine = Math.sqrt(apart * (2 * sides - apart)) / sides
      nextX = x * cosine - y * sine
      nextY = x * sine + y * cosine
    }
    // No step is a half turn, so none is missed.
    if (nextY < 0 !== y < 0) halfTurns++
    ;[x, y, before, beside] = [nextX, nextY, away, own]
  }
  const apart = firstCentre - before
  const ends = firstRadius + beside
  if (halfTurns > 1) {
    return Math.abs(apart) - Math.sqrt(firstCentre * before) * ((halfTurns - 2) * Math.PI + pastHalfTurns(x, y)) - ends
  }
  return Math.sqrt(apart * apart + 2 * firstCentre * before * (1 - x)) - ends
}

/** By how much a direction is past the last half turn that it passed. */
export const pastHalfTurns = (x: number, y: number): number => (y < 0 ? Math.atan2(-y, -x) : Math.atan2(y, x))
