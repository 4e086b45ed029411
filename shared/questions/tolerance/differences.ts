import type { ResolvedBallRing } from '#shared/bearing/resolve.ts'
import type { Distribution } from '#shared/statistics/distribution.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { ContributorName, Contributors, Scatter } from './input.ts'

/** The differences as distributions in mm: the amplitude of lobes, for all else the difference from the design. */
export type Differences = ReadonlyMap<ContributorName, Distribution>

export function differencesOf(contributors: Contributors, design: ResolvedBallRing): Differences {
  const differences = new Map<ContributorName, Distribution>()
  for (const [name, scatter] of Object.entries(contributors) as [ContributorName, Scatter][]) {
    const nominal = name === 'finishFilm' ? design.finishAllowance : mm(0)
    differences.set(name, differenceOf(scatter, nominal, design.ballDiameter))
  }
  return differences
}

/**
 * A spread below that is none [mm]: a millionth of an atom, beyond the last digit of any size here. Still
 * smaller ones would have squares of 0 and be divided by them.
 */
const LEAST_SPREAD = 1e-13

const spread = (value: Mm): number => (value < LEAST_SPREAD ? 0 : value)

/** @param nominal what is given where the design is kept: the film's thickness is given whole, all else as a difference */
function differenceOf(scatter: Scatter, nominal: Mm, ballDiameter: Mm): Distribution {
  switch (scatter.kind) {
    case 'normal':
      return {
        kind: 'normal',
        mean: (scatter.mean ?? nominal) - nominal,
        standardDeviation: spread(scatter.standardDeviation),
      }
    case 'uniform':
    case 'triangular':
      return { kind: scatter.kind, mean: 0, halfWidth: spread(scatter.plusMinus) }
    case 'measured':
      return { kind: 'discrete', values: scatter.diameters.map((diameter) => diameter - ballDiameter) }
    default:
      return scatter satisfies never
  }
}
