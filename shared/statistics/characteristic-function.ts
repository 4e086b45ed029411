import { type Distribution, meanOf } from './distribution.ts'

/*
 * Characteristic functions E e^(i t (X − E X)): those of independent numbers that are added are multiplied, and a Fourier
 * transform leads from them back to the distribution. Closed forms, as in any table.
 */

/** The characteristic function of a number less its mean; symmetric numbers have no `imaginary`. */
export interface CharacteristicFunction {
  readonly real: (t: number) => number
  readonly imaginary?: (t: number) => number
}

/** sin x / x */
export const sinc = (x: number): number => (Math.abs(x) < 1e-4 ? 1 - (x * x) / 6 : Math.sin(x) / x)

export function characteristicOf(distribution: Distribution): CharacteristicFunction {
  switch (distribution.kind) {
    case 'normal': {
      const { standardDeviation } = distribution
      return { real: (t) => Math.exp(-0.5 * standardDeviation * t * (standardDeviation * t)) }
    }
    case 'uniform':
      return { real: (t) => sinc(distribution.halfWidth * t) }
    case 'triangular':
      return {
        real: (t) => {
          const half = sinc((distribution.halfWidth * t) / 2)
          return half * half
        },
      }
    case 'discrete': {
      const { values } = distribution
      const mean = meanOf(distribution)
      const over = (of: (angle: number) => number, t: number): number =>
        values.reduce((sum, value) => sum + of(t * (value - mean)), 0) / values.length
      return { real: (t) => over(Math.cos, t), imaginary: (t) => over(Math.sin, t) }
    }
    default:
      return distribution satisfies never
  }
}
