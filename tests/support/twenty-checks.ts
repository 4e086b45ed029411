import type { RadialInput } from '#shared/bearing/arrangements/radial/input.ts'
import type { Contributors } from '#shared/questions/tolerance/input.ts'
import { type ToleranceCheck, toleranceCheck } from '#shared/questions/tolerance/tolerance-check.ts'
import { mm } from '#shared/units/length.ts'
import type { PlainChances, PlainCheck } from './plain-tolerance.ts'
import { normal, uniform } from './tolerance.ts'

/** Invented: count, diameter, ball gap, play, then standard deviations of `PlainCheck` (below 0: half widths) [mm]. */
const ROWS = [
  [14, 14, 0.7, 0.28, 0.1, 0, 0, 0, 0],
  [14, 14, 0.7, 0.28, 0.15, 0, 0, 0, 0],
  [12, 16, 0.8, 0.3, 0.1, 0.05, -0.1, 0.05, 0],
  [10, 19.05, 1.2, 0.4, 0.13, 0.03, 0.1, -0.1, 0],
  [7, 16, 1, 0.3, 0.1, 0, 0.02, 0.02, 0],
  [8, 12, 0.6, 0.3, 0.08, 0.02, 0, -0.05, 0],
  [9, 20, 1.5, 0.5, 0.15, 0.05, 0.1, 0, 0],
  [24, 10, 0.9, 0.25, 0.05, 0.02, 0.05, 0.03, 0],
  [24, 10, 0.9, 0.25, 0, 0.02, 0.05, 0.03, 0],
  [40, 8, 1, 0.3, 0.05, 0.01, 0.05, 0.05, 0],
  [31, 6, 0.6, 0.15, 0.03, 0.01, -0.05, 0.02, 0],
  [5, 25, 1.5, 0.5, 0.15, 0, 0.05, 0.05, 0],
  [6, 14, 0.9, 0.3, 0.1, 0.02, 0.05, 0.05, 0],
  [3, 20, 1, 0.4, 0.1, 0, 0.05, 0.05, 0],
  [4, 20, 1, 0.4, 0.1, 0.02, 0, 0.05, 0],
  [12, 16, 0.8, 0.3, -0.15, 0, 0.05, 0.05, 0],
  [16, 13, 0.9, 0.35, -0.1, -0.05, -0.1, -0.1, 0],
  [14, 14, 0.7, 0.28, 0.05, 0, 0, 0, 0.03],
  [9, 16, 0.8, 0.4, 0, 0, 0, 0.02, 0.05],
  [11, 15, 1, 0.4, 0.08, 0.03, 0.05, 0.05, -0.08],
] as const

interface TwentyOfThem {
  readonly name: string
  readonly design: RadialInput
  readonly contributors: Contributors
  readonly plain: PlainCheck
  /** The gap of a lobed path takes more than plain coordinates. */
  readonly isGapPlain: boolean
}

const spread = (size: number) => (size < 0 ? uniform(-size) : normal(size))

export const TWENTY: readonly TwentyOfThem[] = ROWS.map(
  ([count, diameter, gap, play, each, lot, outer, inner, lobes], row) => {
    const design: RadialInput = {
      units: 'mm',
      balls: { count, diameter: mm(diameter), material: 'glass' },
      bore: mm(count < 5 ? 0.5 : 2),
      ballGap: mm(gap),
      maxBallGap: mm(gap + 1.5),
      radialInternalClearance: mm(play),
    }
    const contributors: Contributors = {
      ...(each === 0 ? {} : { ballDiameter: spread(each) }),
      ...(lot === 0 ? {} : { ballLotMean: spread(lot) }),
      ...(outer === 0 ? {} : { outerGrooveBottomRadius: spread(outer) }),
      ...(inner === 0 ? {} : { innerGrooveBottomRadius: spread(inner) }),
      ...(lobes === 0 ? {} : { outOfRound: spread(lobes) }),
    }
    const { bearing, gapLimits, playLimits } = checkOfAny(design, contributors, 1000).check
    if ('plate' in bearing) throw new Error('these are rings')
    return {
      name: `${row + 1}: ${count} balls of ${diameter} mm`,
      design,
      contributors,
      plain: {
        count,
        diameter,
        outerBottomRadius: bearing.outerRing.grooveBottomDiameter / 2,
        innerBottomRadius: bearing.innerRing.grooveBottomDiameter / 2,
        assemblyGap: bearing.resolved.assembly.assemblyGap,
        each,
        lot,
        outer,
        inner,
        lobes,
        limits: { gap: [gapLimits.min, gapLimits.max], play: [playLimits.min, playLimits.max] },
      },
      isGapPlain: lobes === 0,
    }
  },
)

export function checkOfAny(design: RadialInput, contributors: Contributors, trials?: number): ToleranceCheck {
  const result = toleranceCheck({ design, contributors, ...(trials === undefined ? {} : { trials }) })
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return result.value
}

/** Each chance of an answer beside the plain program's, with how far apart they are in standard errors of both. */
export function comparedWith({ figures, jointFits, binds }: ToleranceCheck, plain: PlainChances, isGapPlain: boolean) {
  const { ballGap, play } = figures
  const pairs = [
    ...(isGapPlain
      ? [
          ['gap too tight', ballGap.outcomes.tooTight, plain.gap.tooTight],
          ['gap fits', ballGap.outcomes.fits, plain.gap.fits],
          ['gap too loose', ballGap.outcomes.tooLoose, plain.gap.tooLoose],
          ['both fit', jointFits, plain.both],
        ]
      : []),
    ['play too tight', play.outcomes.tooTight, plain.play.tooTight],
    ['play fits', play.outcomes.fits, plain.play.fits],
    ['play too loose', play.outcomes.tooLoose, plain.play.tooLoose],
    ['binds', binds ?? { value: Number.NaN, standardError: Number.NaN }, plain.binds],
  ] as const satisfies readonly unknown[]
  return (pairs as readonly (readonly [string, { value: number; standardError: number }, number])[]).map(
    ([name, { value, standardError }, counted]) => {
      const likely = (counted * plain.trials + 1) / (plain.trials + 2)
      const own = Math.sqrt((likely * (1 - likely)) / plain.trials)
      return { name, value, counted, apart: Math.abs(value - counted) / Math.hypot(own, standardError) }
    },
  )
}
