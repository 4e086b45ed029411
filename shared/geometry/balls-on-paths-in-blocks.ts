import { gapOnPath, type Lobes } from './balls-on-a-path.ts'

/*
 * `gapOnPath` for many rings at once, ring by ring within each ball: what one ring waits for, the next does not, so the
 * processor works on several. Where a ball comes to lie on a lobed path is first guessed by the step before it; each turn
 * then makes the guess better by κ = 2 A tan φ / a, φ half the angle between neighbours.
 */

/** Rings of one count of balls, side by side: ball b of ring t at b × rings + t. */
export interface PathBlock {
  readonly ballCount: number
  readonly rings: number
  /** How far each ball's centre stands from the ring's, the lobes apart [mm]. */
  readonly centres: Float64Array
  /** [mm] */
  readonly diameters: Float64Array
  /** One for each ring; amplitude 0 if it is round. */
  readonly lobes: { readonly [Name in keyof Lobes]: Float64Array }
}

/** For each ring where a ball lies: a direction, and a distance from the ring's centre. */
interface Places {
  readonly x: Float64Array
  readonly y: Float64Array
  readonly away: Float64Array
}

/** Room to work in: where the last ball lies and the next one, by turns, and the step from one to the other. */
export interface PathRoom {
  readonly even: Places
  readonly odd: Places
  readonly cosine: Float64Array
  readonly sine: Float64Array
}

export function roomForPaths(rings: number): PathRoom {
  const row = (): Float64Array => new Float64Array(rings)
  const places = (): Places => ({ x: row(), y: row(), away: row() })
  return { even: places(), odd: places(), cosine: row(), sine: row() }
}

/** Balls need not be placed nearer than this, by their distance from the centre. */
const NEAR_ENOUGH = 1e-12
const MOST_TURNS = 12

/**
 * @param block as for `gapOnPath`, which is not looked at here; a row of balls must not reach 5/4 times round
 * @param gaps takes the gap of each ring [mm], as `gapOnPath` has it to within 1e-11 of the path's radius for each ball
 */
export function gapsOnPaths(block: PathBlock, room: PathRoom, gaps: Float64Array): void {
  const { ballCount, rings, centres, lobes } = block
  const { even, odd, cosine, sine } = room
  for (let ring = 0; ring < rings; ring++) {
    even.x[ring] = 1
    even.y[ring] = 0
    even.away[ring] =
      (centres[ring] ?? Number.NaN) + (lobes.amplitude[ring] ?? Number.NaN) * (lobes.cosine[ring] ?? Number.NaN)
    cosine[ring] = 1
    sine[ring] = 0
  }
  const allowed = allowedOff(block)
  // The first turn leaves the guess, of which nothing is known but on a circle.
  const fewest = allowed === Number.POSITIVE_INFINITY ? 1 : 2
  for (let ball = 1; ball < ballCount; ball++) {
    const [before, places] = ball % 2 === 1 ? [even, odd] : [odd, even]
    guess(block, room, ball, before, places)
    for (let turn = 1; turn <= MOST_TURNS; turn++) {
      const off = layBall(block, room, ball, before, places)
      if (turn >= fewest && off <= allowed) break
    }
  }
  closeRows(block, ballCount % 2 === 1 ? even : odd, gaps)
}

/** By how much a turn may have moved a ball for the next one to move it less than is near enough; by anything on a circle. */
function allowedOff({ ballCount, rings, centres, lobes }: PathBlock): number {
  let largest = 0
  let nearest = Number.POSITIVE_INFINITY
  for (let ring = 0; ring < rings; ring++) {
    largest = Math.max(largest, Math.abs(lobes.amplitude[ring] ?? Number.NaN))
    nearest = Math.min(nearest, centres[ring] ?? Number.NaN)
  }
  // Of a ring that about closes φ is π / Z; balls and rings that differ may make its tangent half as large again.
  const better = ((2 * largest) / nearest) * 1.5 * Math.tan(Math.PI / ballCount)
  return (NEAR_ENOUGH * nearest) / better
}

/** The same step once more. */
function guess({ rings, centres }: PathBlock, room: PathRoom, ball: number, before: Places, places: Places): void {
  const from = ball * rings
  for (let ring = 0; ring < rings; ring++) {
    const x = before.x[ring] ?? Number.NaN
    const y = before.y[ring] ?? Number.NaN
    const cosine = room.cosine[ring] ?? Number.NaN
    const sine = room.sine[ring] ?? Number.NaN
    places.x[ring] = x * cosine - y * sine
    places.y[ring] = x * sine + y * cosine
    places.away[ring] = centres[from + ring] ?? Number.NaN
  }
}

/**
 * One more ball in each row, touching the one before, as far out as the path is where it was taken to lie.
 *
 * @returns the farthest that any was moved out or in by that [mm]
 */
function layBall(
  { rings, centres, diameters, lobes }: PathBlock,
  room: PathRoom,
  ball: number,
  before: Places,
  places: Places,
): number {
  const from = ball * rings
  let farthest = 0
  for (let ring = 0; ring < rings; ring++) {
    // Plain variables, no tuples: this is where trials spend their time.
    const guessX = places.x[ring] ?? Number.NaN
    const guessY = places.y[ring] ?? Number.NaN
    const amplitude = lobes.amplitude[ring] ?? Number.NaN
    const along = amplitude * (lobes.cosine[ring] ?? Number.NaN)
    const across = 2 * amplitude * (lobes.sine[ring] ?? Number.NaN)
    const away =
      (centres[from + ring] ?? Number.NaN) + along * (guessX * guessX - guessY * guessY) + across * guessX * guessY
    const off = Math.abs(away - (places.away[ring] ?? Number.NaN))
    if (off > farthest) farthest = off
    const beside = before.away[ring] ?? Number.NaN
    const touching = ((diameters[from + ring - rings] ?? Number.NaN) + (diameters[from + ring] ?? Number.NaN)) / 2
    const sides = 2 * beside * away
    const apart = (touching - beside + away) * (touching + beside - away)
    const perSides = 1 / sides
    const cosine = 1 - apart * perSides
    const sine = Math.sqrt(apart * (2 * sides - apart)) * perSides
    const x = before.x[ring] ?? Number.NaN
    const y = before.y[ring] ?? Number.NaN
    places.x[ring] = x * cosine - y * sine
    places.y[ring] = x * sine + y * cosine
    places.away[ring] = away
    room.cosine[ring] = cosine
    room.sine[ring] = sine
  }
  return farthest
}

function closeRows(block: PathBlock, { x, y, away }: Places, gaps: Float64Array): void {
  const { ballCount, rings, centres, diameters, lobes } = block
  const last = (ballCount - 1) * rings
  for (let ring = 0; ring < rings; ring++) {
    const first =
      (centres[ring] ?? Number.NaN) + (lobes.amplitude[ring] ?? Number.NaN) * (lobes.cosine[ring] ?? Number.NaN)
    const before = away[ring] ?? Number.NaN
    const cosine = x[ring] ?? Number.NaN
    const ends = ((diameters[ring] ?? Number.NaN) + (diameters[last + ring] ?? Number.NaN)) / 2
    const square = (first - before) * (first - before) + 2 * first * before * (1 - cosine)
    // In the first quadrant a row has gone round more than once, or hardly begun to: those are computed one by one.
    const isTold = cosine <= 0 || (y[ring] ?? Number.NaN) <= 0
    gaps[ring] = isTold ? Math.sqrt(square) - ends : oneByOne(block, ring)
  }
}

function oneByOne({ ballCount, rings, centres, diameters, lobes }: PathBlock, ring: number): number {
  return gapOnPath(
    ballCount,
    (ball) => centres[ball * rings + ring] ?? Number.NaN,
    (ball) => (diameters[ball * rings + ring] ?? Number.NaN) / 2,
    {
      amplitude: lobes.amplitude[ring] ?? Number.NaN,
      cosine: lobes.cosine[ring] ?? Number.NaN,
      sine: lobes.sine[ring] ?? Number.NaN,
    },
  )
}
