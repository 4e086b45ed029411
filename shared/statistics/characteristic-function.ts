import { dawson } from '#shared/numbers/dawson.ts'
import { type Distribution, meanOf, momentsOfSize } from './distribution.ts'
import { FARTHEST_DRAW } from './normal-cells.ts'

/*
 * Characteristic functions E e^(i t (X − E X)): those of independent numbers that are added are multiplied, and a Fourier
 * transform leads from them back to the distribution. Closed forms, as in any table.
 */

/** Of a number less its mean; without `imaginary` it is as likely so far above it as below. */
export interface CharacteristicFunction {
  readonly real: (t: number) => number
  readonly imaginary?: (t: number) => number
}

/** sin x / x */
const sinc = (x: number): number => (Math.abs(x) < 1e-4 ? 1 - (x * x) / 6 : Math.sin(x) / x)

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

/**
 * Of the size |X| of a number. About 0: a uniform one is uniform again, a triangular one a falling line,
 * 2 (1 + i h t − e^(iht)) / (h t)², a normal one e^(−τ²/2) + 2i/√π D(τ/√2) with τ = σ t and Dawson's D.
 *
 * @returns undefined where there is no such form: of a normal one that is neither about 0 nor clear of it, and of any other
 *   that is not about 0
 */
export function characteristicOfSize(distribution: Distribution): CharacteristicFunction | undefined {
  if (distribution.kind === 'discrete') {
    return characteristicOf({ kind: 'discrete', values: distribution.values.map(Math.abs) })
  }
  if (distribution.kind === 'normal' && Math.abs(distribution.mean) >= FARTHEST_DRAW * distribution.standardDeviation) {
    return characteristicOf(distribution)
  }
  if (distribution.mean !== 0) return undefined
  if (distribution.kind === 'uniform') {
    return characteristicOf({ kind: 'uniform', mean: 0, halfWidth: distribution.halfWidth / 2 })
  }
  const { mean } = momentsOfSize(distribution)
  if (distribution.kind === 'triangular') return shifted(fallingLine(distribution.halfWidth), mean)
  const { standardDeviation } = distribution
  return shifted(
    {
      real: (t) => Math.exp(-0.5 * standardDeviation * t * (standardDeviation * t)),
      imaginary: (t) => (2 / Math.sqrt(Math.PI)) * dawson((standardDeviation * t) / Math.SQRT2),
    },
    mean,
  )
}

interface Complex {
  readonly real: (t: number) => number
  readonly imaginary: (t: number) => number
}

function fallingLine(width: number): Complex {
  const small = (angle: number): boolean => Math.abs(angle) < 1e-3
  return {
    real: (t) => {
      const angle = width * t
      return small(angle) ? 1 - (angle * angle) / 12 : (2 * (1 - Math.cos(angle))) / (angle * angle)
    },
    imaginary: (t) => {
      const angle = width * t
      return small(angle) ? angle / 3 - (angle * angle * angle) / 60 : (2 * (angle - Math.sin(angle))) / (angle * angle)
    },
  }
}

/** Of the number less something. */
const shifted = ({ real, imaginary }: Complex, by: number): Complex => ({
  real: (t) => real(t) * Math.cos(by * t) + imaginary(t) * Math.sin(by * t),
  imaginary: (t) => imaginary(t) * Math.cos(by * t) - real(t) * Math.sin(by * t),
})
