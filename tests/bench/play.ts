/*
 * What the play among unequal balls costs: one ring of a block, by the count of balls, and one chance by the table.
 *
 *   node tests/bench/play.ts
 */
import { playInBlocks } from '#shared/geometry/play-among-unequal-balls-in-blocks.ts'
import { pitchRadiusForGap } from '#shared/geometry/ring-of-balls.ts'
import { drawNormals } from '#shared/statistics/normal-cells.ts'
import { playQuantile } from '#shared/statistics/play-of-random-balls.ts'
import { randomStream } from '#shared/statistics/random.ts'
import { mm } from '#shared/units/length.ts'

const RINGS = 2000
const ROUNDS = 9

/** The quickest of some rounds, in microseconds a piece. */
function quickest(pieces: number, run: () => void): number {
  const times = Array.from({ length: ROUNDS }, () => {
    const start = performance.now()
    run()
    return ((performance.now() - start) * 1000) / pieces
  })
  return Math.min(...times)
}

for (const count of [7, 14, 40, 100, 200]) {
  const outer = pitchRadiusForGap(mm(0.7), mm(14), count) + 7
  const diameters = new Float64Array(RINGS * count)
  drawNormals({ mean: 14, standardDeviation: 0.1 }, randomStream(1, count), diameters, diameters.length)
  const block = {
    rings: RINGS,
    diameters,
    centres: diameters.map((diameter) => outer - diameter / 2),
    standOffs: diameters.map((diameter) => outer - 14.14 + diameter / 2),
  }
  const clearances = new Float64Array(RINGS)
  for (const gap of ['whole', 'spread'] as const) {
    const play = playInBlocks(count, gap)
    const time = quickest(RINGS, () => play(block, clearances))
    console.log(
      `${count} balls, gap ${gap}: ${time.toFixed(2)} µs a ring, ${((time * 1000) / count).toFixed(0)} ns a ball`,
    )
  }
}

const CHANCES = 20_000
const time = quickest(CHANCES, () => {
  for (let index = 0; index < CHANCES; index++) {
    playQuantile({ play: mm(0.2 + index * 1e-5), scatter: mm(0.1), ballCount: 14, probability: 0.05 })
  }
})
console.log(`quantile of the play: ${time.toFixed(2)} µs`)
