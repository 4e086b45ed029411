import { describe, expect, test } from 'vitest'
import { unequalBallGap } from '#shared/geometry/unequal-balls.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import type { SeasonalFitInput } from '#shared/questions/season/input.ts'
import { throughYear } from '#shared/questions/season/seasonal-fit.ts'
import { normalQuantile } from '#shared/statistics/normal.ts'
import { drawWords, randomStream } from '#shared/statistics/random.ts'
import { mm } from '#shared/units/length.ts'
import { placesOnCircle, placesOnEllipse, playAmongBalls } from '#tests/support/play-among-balls.ts'
import { MARBLES } from '#tests/support/seasons.ts'

function chancesIn(input: SeasonalFitInput) {
  const result = throughYear(input)
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return result.value
}

/** Rings of ply, which stay round, made in a room of 50 % and living between 30 and 65 %. */
const PLY = { construction: 'cross-laminated-ply' } as const
const yearOf = (ballGap: number, play: number, standardDeviation: number): SeasonalFitInput => ({
  ...MARBLES,
  design: {
    units: 'mm',
    bore: mm(10),
    balls: { ...MARBLES.design.balls, standardDeviation: mm(standardDeviation) },
    ballGap: mm(ballGap),
    radialInternalClearance: mm(play),
  },
  woods: { outerRing: PLY, innerRing: PLY },
})

const RINGS = 4000

/** The same by trials that share no formula with it: real balls, closed and played in exactly, through the same three states. */
function byTrials(input: SeasonalFitInput) {
  const { moving, year } = chancesIn(input)
  const { bearing, season, after } = moving
  if (!('assembly' in bearing)) throw new Error('no full rings')
  const { count } = bearing.resolved.input.balls
  const { assemblyGap } = bearing.assembly
  const stream = randomStream(7, 0)
  const uniform = (): number => (Number(drawWords(stream, 1)[0]) + 0.5) / 2 ** 32
  const normal = (): number => normalQuantile(uniform())
  let [together, all] = [0, 0]
  for (let ring = 0; ring < RINGS; ring++) {
    const off = Array.from({ length: count }, () => bearing.resolved.ballScatter * normal())
    let threshold = Number.NaN
    while (!(threshold >= 0 && threshold <= assemblyGap)) threshold = assemblyGap * (0.65 + 0.2 * normal())
    const times = [1 + 0.15 * normal(), 1 + 0.15 * normal()]
    const damper = 2 * uniform() - 1
    const runs = year.map(({ state }) => {
      const isToday = state === season.today
      const boards = times.map((each) => ({
        from: season.today.moistureContent,
        to: state.moistureContent + (isToday ? 0 : damper),
        times: each,
      }))
      const moved = after({ boards, balls: { from: 0, to: 0, times: 1 }, from: season.today, to: state })
      const [outer, inner] = [moved.raceways.outerRing?.along, moved.raceways.innerRing?.along]
      if (outer === undefined || inner === undefined) throw new Error('no rings')
      const diameters = off.map((each) => moved.ball.mean + each)
      const gap = unequalBallGap(outer, diameters)
      const isIn = !isToday || gap >= threshold
      const play = playAmongBalls(placesOnCircle(outer, diameters, 'spread'), inner)
      return { isIn, runs: isIn && gap >= 0 && (play?.radialInternalClearance ?? 1) >= 0 }
    })
    if (runs.every(({ isIn }) => isIn)) together += 1
    if (runs.every((each) => each.runs)) all += 1
  }
  return { goesTogether: together / RINGS, runsAllYear: all / RINGS }
}

describe('of rings that stay round the chances are those of exact trials', () => {
  test.each([
    [0.7, 0.28, 0.1],
    [1, 0.4, 0.1],
    [0.6, 0.3, 0.05],
    [0.55, 0.1, 0.03],
  ])('gap %s, play %s, balls that differ by %s', (gap, play, scatter) => {
    const input = yearOf(gap, play, scatter)
    const { goesTogether, runsAllYear } = byTrials(input)
    const { chances } = chancesIn(input)
    // Three standard errors of the trials, and about as much for the points of the quasi-random set.
    expect(chances.goesTogether).toBeWithin(0.03, goesTogether)
    expect(chances.runsAllYear).toBeWithin(0.04, runsAllYear)
  })
})

test.each([
  ['quarter-sawn', 14, 0.36],
  ['flat-sawn', 14, 0.5],
  ['quarter-sawn', 9, 0.32],
] as const)(
  '%s maple, %s balls, play %s: in a ring out of round the rings bind about as often as exact ones',
  (construction, count, play) => {
    const wood = { construction, species: 'maple-sugar' } as const
    const input: SeasonalFitInput = {
      ...yearOf(2, play, 0.1),
      woods: { outerRing: wood, innerRing: wood },
      climate: { kind: 'moisture', moistureContent: { min: 7.5, max: 9 } },
      today: { kind: 'moisture', moistureContent: 9 },
    }
    const design = {
      ...input.design,
      balls: { ...input.design.balls, count },
      maxBallGap: mm(4),
    } as typeof input.design
    const { year, chances } = chancesIn({ ...input, design })
    const { raceways } = itemAt(year, 1).snapshot
    const { outerRing: outer, innerRing: inside } = raceways
    if (outer === undefined || inside === undefined) throw new Error('no rings')
    const stream = randomStream(3, 0)
    let runs = 0
    const rings = 150
    for (let ring = 0; ring < rings; ring++) {
      const diameters = Array.from(
        { length: count },
        () => 14 + 0.1 * normalQuantile((itemAt(drawWords(stream, 1), 0) + 0.5) / 2 ** 32),
      )
      // The set of balls goes round once, and each of them comes to where the play is least.
      const turns = Array.from({ length: 2 * count }, (_, turn) => (turn / count) * Math.PI)
      const runsRound = turns.every((start) => {
        const places = placesOnEllipse(outer, diameters, start)
        const inner = { bottom: inside, turn: Math.PI / 2 }
        return places === undefined || (playAmongBalls(places, inner)?.radialInternalClearance ?? 1) >= 0
      })
      if (runsRound) runs += 1
    }
    // Two standard errors of so few rings, the scatter of the boards, and the fit.
    expect(itemAt(chances.runs, 1)).toBeWithin(0.12, runs / rings)
  },
)

test('more gap and more play never make it run less often', () => {
  const runs = (gap: number, play: number) => chancesIn(yearOf(gap, play, 0.1)).chances.runsAllYear
  for (const [gap, play] of [
    [0.4, 0.1],
    [0.7, 0.3],
    [1, 0.5],
  ] as const) {
    expect(runs(gap + 0.1, play)).toBeGreaterThanOrEqual(runs(gap, play))
    expect(runs(gap, play + 0.1)).toBeGreaterThanOrEqual(runs(gap, play))
  }
})

describe('a year that is one day, and wood by its moisture', () => {
  const day = (maxBallGap: number, standardDeviation: number): SeasonalFitInput => {
    const input = yearOf(0.7, 0.28, standardDeviation)
    return {
      ...input,
      design: { ...input.design, maxBallGap: mm(maxBallGap) } as typeof input.design,
      climate: { kind: 'moisture', moistureContent: { min: 9, max: 9 } },
      today: { kind: 'moisture', moistureContent: 9 },
    }
  }

  test('equal balls: nothing is left to chance but the last ball', () => {
    const wide = chancesIn(day(2.4, 0)).chances
    expect(wide.runs.every((chance) => chance === wide.goesTogether)).toBe(true)
    expect(wide.knocks).toBe(0)
  })

  test('uneven balls: of gaps that may be as wide as they are on average every second is wider', () => {
    expect(chancesIn(day(0.7, 0.1)).chances.knocks).toBeWithin(0.02, 0.5)
    // with 14 balls that differ by 0.05 mm it varies by about 0.2 mm
    expect(chancesIn(day(1.6, 0.05)).chances.knocks).toBe(0)
  })
})
