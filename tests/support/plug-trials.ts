import { SCATTER_TIMES } from '#shared/bearing/ball-lot.ts'
import type { BallRing } from '#shared/bearing/ball-ring.ts'
import { ENTRY_DEVIATION, ENTRY_MEAN } from '#shared/bearing/entry-gap.ts'
import { ballGapOnCircle } from '#shared/geometry/balls-on-a-circle.ts'
import { playInBlocks } from '#shared/geometry/play-among-unequal-balls-in-blocks.ts'
import { unequalBallGap } from '#shared/geometry/unequal-balls.ts'
import { mm } from '#shared/units/length.ts'
import { normals, uniforms } from './chance.ts'

/*
 * Plugs tried among real balls, one ring after another: the lot drawn, each ball drawn, the groove brought to where the largest disc
 * among the balls, evenly spread, is the one that is felt, and the gap read ball by ball. All by the exact kernels.
 */

interface Trials {
  readonly mean: number
  readonly standardDeviation: number
}

/** Drawn rings, each with the gap that it has where a plug is felt to just enter. */
function ringTrials(ring: BallRing, count: number, seed: number) {
  const { ballDiameter, ballScatter, input } = ring.resolved
  const balls = input.balls.count
  const uniform = uniforms(seed)
  const normal = normals(uniform)
  const onPlate = ring.insidePerBallDiameter === 1
  const playOf = playInBlocks(balls, 'spread')
  const clearances = new Float64Array(1)
  const discAt = (x: number, diameters: readonly number[]): number => {
    playOf(
      {
        rings: 1,
        diameters: Float64Array.from(diameters),
        centres: Float64Array.from(diameters, (d) => (onPlate ? x : x - d / 2)),
        standOffs: Float64Array.from(diameters, (d) => d / 2),
      },
      clearances,
    )
    return clearances[0] ?? Number.NaN
  }
  const gapAt = (x: number, diameters: readonly number[]): number =>
    onPlate ? ballGapOnCircle(mm(x), diameters) : unequalBallGap(mm(x), diameters)
  return Array.from({ length: count }, () => {
    let draw = uniform()
    const times = SCATTER_TIMES.find(([, chance]) => {
      draw -= chance
      return draw < 0
    })?.[0]
    const scatter = (times ?? 3) * ballScatter
    const lot = ballDiameter + 0.6 * scatter * normal()
    const diameters = Array.from({ length: balls }, () => lot + scatter * normal())
    const feel = 0.05 * normal()
    const gapWith = (plug: number): number => {
      let x = ring.pitchRadius + (onPlate ? 0 : ballDiameter / 2)
      for (let round = 0; round < 4; round++) x += (plug + feel - discAt(x, diameters)) / 2
      return gapAt(x, diameters)
    }
    return { gapWith, uniform: uniform(), normal: normal() }
  })
}

/** Mean and deviation of the gap where a plug just enters. */
export function gapsAtPlug(ring: BallRing, plug: number, count: number, seed: number): Trials {
  const gaps = ringTrials(ring, count, seed).map(({ gapWith }) => gapWith(plug))
  const mean = gaps.reduce((sum, gap) => sum + gap, 0) / count
  const square = gaps.reduce((sum, gap) => sum + (gap - mean) ** 2, 0)
  return { mean, standardDeviation: Math.sqrt(square / (count - 1)) }
}

/** How grooves stand that let go in and refuse no-go, evenly from where the one just enters to where the other does. */
export function outcomesBetweenPlugs(ring: BallRing, assemblyGap: number, count: number, seed: number) {
  const { gauge, resolved } = ring
  let [tooTight, tooDeep] = [0, 0]
  for (const { gapWith, uniform, normal } of ringTrials(ring, count, seed)) {
    const gap = gapWith(gauge.goDiameter + uniform * (gauge.noGoDiameter - gauge.goDiameter))
    const entry = assemblyGap * Math.min(1, Math.max(0, ENTRY_MEAN + ENTRY_DEVIATION * normal))
    if (gap > resolved.maxBallGap) tooDeep++
    else if (gap < Math.max(entry, resolved.minBallGap)) tooTight++
  }
  return { tooTight: tooTight / count, inBand: 1 - (tooTight + tooDeep) / count, tooDeep: tooDeep / count }
}
