import type { Lobes } from '#shared/geometry/balls-on-a-path.ts'
import { completeElliptic } from '#shared/numbers/elliptic-integrals.ts'
import { integral } from '#shared/numbers/quadrature.ts'
import {
  type Distribution,
  densityOf,
  endsOf,
  type Moments,
  meanOf,
  momentsOfSize,
  varianceOf,
} from '#shared/statistics/distribution.ts'

/*
 * Grooves with two lobes, A cos 2(ψ − ψ₀): those of the lathe, and those that the weather puts into a ring cut from a board.
 * Two such pairs, in whatever directions, are one: their amplitudes add up as vectors of the doubled directions.
 */

/** Directions that lobes are drawn in: finer than anything that depends on them. */
const DIRECTIONS = 1024
const COSINES = Float64Array.from({ length: DIRECTIONS }, (_, index) => Math.cos((2 * Math.PI * index) / DIRECTIONS))

/** @param turn the doubled direction, in whole turns: from 0 to below 1 */
export function lobesOf(amplitude: number, turn: number): Lobes {
  const place = Math.floor(turn * DIRECTIONS)
  return {
    amplitude,
    cosine: COSINES[place] ?? Number.NaN,
    // The sine is the cosine a quarter turn before.
    sine: COSINES[(place + (3 * DIRECTIONS) / 4) % DIRECTIONS] ?? Number.NaN,
  }
}

/** Both at once. The sum's amplitude is never below 0. */
export function together(one: Lobes, other: Lobes): Lobes {
  const x = one.amplitude * one.cosine + other.amplitude * other.cosine
  const y = one.amplitude * one.sine + other.amplitude * other.sine
  const amplitude = Math.sqrt(x * x + y * y)
  return amplitude > 0 ? { amplitude, cosine: x / amplitude, sine: y / amplitude } : { amplitude, cosine: 1, sine: 0 }
}

/** A normal distribution is taken to end here, in standard deviations. */
const NORMAL_ENDS = 8

/**
 * Mean and variance of the amplitude that lobes of some distribution have together with lobes of a fixed amplitude, in any direction: the
 * square's mean is the sum of both squares' means; the mean of |a + b e^iδ| over all δ is 2/π (a + b) E(k), with
 * k' = |a − b| / (a + b) (the perimeter of an ellipse, by the same integral).
 *
 * @param other the fixed amplitude, 0 or above
 */
export function momentsTogether(distribution: Distribution, other: number): Moments {
  if (other === 0) return momentsOfSize(distribution)
  const own = meanOf(distribution)
  const mean = meanOver(distribution, other, (amplitude) => meanTogether(Math.abs(amplitude), other))
  return { mean, variance: Math.max(0, varianceOf(distribution) + own * own + (other - mean) * (other + mean)) }
}

function meanTogether(one: number, other: number): number {
  const axisRatio = Math.abs(one - other) / (one + other)
  const second = axisRatio > 0 ? completeElliptic(axisRatio).second : 1
  return (2 / Math.PI) * (one + other) * second
}

/** The mean of a function that has corners at 0 and at the fixed amplitude. */
function meanOver(distribution: Distribution, other: number, at: (amplitude: number) => number): number {
  if (distribution.kind === 'discrete') {
    return distribution.values.reduce((sum, value) => sum + at(value), 0) / distribution.values.length
  }
  const { mean } = distribution
  const { least, most } = endsOf(distribution, NORMAL_ENDS)
  if (least === most) return at(mean)
  const density = densityOf(distribution)
  const corners = [mean, 0, other, -other].filter((corner) => corner > least && corner < most)
  const cuts = [least, ...corners.toSorted((one, other) => one - other), most]
  return cuts.reduce((sum, to, index) => {
    const from = cuts[index - 1]
    return from === undefined ? 0 : sum + integral((amplitude) => density(amplitude) * at(amplitude), from, to)
  }, 0)
}
