import { itemAt } from '#shared/numbers/item-at.ts'
import {
  type CharacteristicFunction,
  characteristicOf,
  characteristicOfSize,
} from '#shared/statistics/characteristic-function.ts'
import { momentsOfSize, varianceOf } from '#shared/statistics/distribution.ts'
import { pilotTrials, SLICE } from '#shared/statistics/monte-carlo.ts'
import type { Part } from '#shared/statistics/sum-of-parts.ts'
import type { Check } from './checked.ts'
import { type TrialModel, trialModel } from './trials.ts'
import { COPIES, type Slopes } from './ways.ts'
import { waysOf } from './ways-of.ts'

/*
 * Gap (first) and play (second) as straight lines in what differs: as sums of independent parts, for the distribution of the
 * lines, and by trials, for what the lines miss.
 */

type Both<T> = readonly [T, T]

/**
 * What differs, with its slope in either figure. Balls at the ends of the row have another than those between.
 *
 * @returns undefined where something has no characteristic function of a closed form
 */
export function linearParts(check: Check): readonly Part[] | undefined {
  const { ballGap: gap, play } = waysOf(check).slopes
  const parts = Array.from(check.differences, ([name, distribution]): readonly Part[] | undefined => {
    const one = { characteristic: characteristicOf(distribution), variance: varianceOf(distribution) }
    if (name === 'ballDiameter') return ofBalls(one, gap.eachBall, play.eachBall)
    const slopes = [gap.of[name], play.of[name]] as const
    if (name !== 'outOfRound') return [{ ...one, slopes, copies: COPIES[name] }]
    const characteristic = characteristicOfSize(distribution)
    const { variance } = momentsOfSize(distribution)
    return characteristic && [{ characteristic, variance, slopes, copies: 2 }]
  })
  return parts.every((part) => part !== undefined) ? parts.flat() : undefined
}

interface OfOne {
  readonly characteristic: CharacteristicFunction
  readonly variance: number
}

function ofBalls(one: OfOne, gap: readonly number[], play: readonly number[]): readonly Part[] {
  const slopesOf = (ball: number): Part['slopes'] => [itemAt(gap, ball), itemAt(play, ball)]
  return [
    { ...one, slopes: slopesOf(0), copies: 2 },
    { ...one, slopes: slopesOf(1), copies: gap.length - 2 },
  ]
}

/** Some trials: where the straight lines put each, and where it is. */
export interface LinearSample {
  readonly linear: Both<Float64Array>
  readonly exact: Both<Float64Array>
}

/** @param slices of trials */
export function linearSample(check: Check, seed: number, slices: number): LinearSample {
  const { slopes, nominal } = waysOf(check)
  const room = (): Float64Array => new Float64Array(slices * SLICE)
  const sample = { linear: [room(), room()] as const, exact: [room(), room()] as const }
  const lines = [
    { slopes: slopes.ballGap, nominal: nominal.ballGap },
    { slopes: slopes.play, nominal: nominal.play },
  ]
  const model = trialModel(check)
  pilotTrials(model, seed, slices, (drawn, results, slice) => {
    lines.forEach(({ slopes, nominal }, figure) => {
      const from = slice * SLICE
      sample.exact[figure as 0 | 1].set(itemAt(results, figure), from)
      const out = sample.linear[figure as 0 | 1].subarray(from, from + SLICE).fill(nominal)
      addLines(model, drawn, slopes, check.bearing.resolved.ballDiameter, out)
    })
  })
  return sample
}

function addLines(
  { names }: TrialModel,
  drawn: readonly Float64Array[],
  slopesOfAll: Slopes,
  ballDiameter: number,
  out: Float64Array,
): void {
  names.forEach((name, place) => {
    const rows = itemAt(drawn, place)
    const slopes = slopesOfRows(name, slopesOfAll)
    // Balls are drawn as they are, all else as it differs; of lobes the size counts.
    const nominal = name === 'ballDiameter' ? ballDiameter : 0
    slopes.forEach((slope, row) => {
      const values = rows.subarray(row * SLICE, (row + 1) * SLICE)
      addLine(name === 'lobes' ? values.map(Math.abs) : values, nominal, slope, out)
    })
  })
}

function addLine(values: Float64Array, nominal: number, slope: number, out: Float64Array): void {
  if (slope === 0) return
  for (let trial = 0; trial < SLICE; trial++) {
    out[trial] = (out[trial] ?? Number.NaN) + slope * ((values[trial] ?? Number.NaN) - nominal)
  }
}

function slopesOfRows(name: TrialModel['names'][number], { eachBall, of }: Slopes): readonly number[] {
  switch (name) {
    case 'ballDiameter':
      return eachBall
    case 'lobes':
      return [of.outOfRound, of.outOfRound]
    case 'direction':
    case 'state':
    case 'grain':
    case 'innerGrain':
      return []
    default:
      return Array.from({ length: COPIES[name] }, () => of[name])
  }
}
