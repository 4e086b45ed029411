import { type DesignInput, echoedBearingFor, nameOf, traitsOf } from '#shared/bearing/arrangements.ts'
import { entryGaps } from '#shared/bearing/entry-gap.ts'
import { playLimits } from '#shared/bearing/play-limits.ts'
import { type Refusal, type Refused, refusedDesign, refusedQuestion } from '#shared/bearing/refusal.ts'
import type { ResolvedBallRing } from '#shared/bearing/resolve.ts'
import type { SeasonRefusal } from '#shared/movement/refusal.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import type { Band } from '#shared/statistics/monte-carlo.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { Check } from './checked.ts'
import { climateMovement } from './climate-movement.ts'
import * as defaults from './defaults.ts'
import { differencesOf } from './differences.ts'
import {
  CONTRIBUTORS_OF,
  type Contributors,
  LIMITS_OF,
  type LimitsInput,
  TOLERANCE_CHECK,
  type ToleranceCheckInput,
} from './input.ts'
import { type ToleranceRefusal, unfitContributors } from './refusal.ts'

/** Why there is nothing to check: faults of the design, of the year or of the question. */
export type CheckRefusal = Refusal | SeasonRefusal | ToleranceRefusal

/**
 * Completes the input, and refuses what is not a bearing.
 *
 * @param input lengths in millimetres; scatters 0 and above
 * @returns every reason at once
 */
export function checkOf(input: ToleranceCheckInput): Result<Check, Refused<CheckRefusal>> {
  const foreign = foreignTo(input)
  if (foreign.length > 0) return fail(refusedQuestion(foreign))
  const made = completed(input)
  if (!made.ok) return fail(refusedDesign(made.error))
  const moved = movementOf(input)
  const check = { ...made.value, ...(moved.ok ? moved.value : {}) }
  const unfit = [...limitRefusals(check), ...unfitContributors(check)]
  if (!moved.ok) return fail({ ...moved.error, ofQuestion: [...moved.error.ofQuestion, ...unfit] })
  return unfit.length > 0 ? fail(refusedQuestion(unfit)) : ok(check)
}

/** Contributors and limits that do not apply to this arrangement. */
function foreignTo({ design, contributors, limits = {} }: ToleranceCheckInput): readonly Refusal[] {
  const { members } = traitsOf(design)
  const arrangement = nameOf(design)
  const names = (own: readonly string[], named: object, at: string): readonly Refusal[] =>
    Object.keys(named)
      .filter((name) => !own.includes(name))
      .map((name) => ({ code: 'not-of-arrangement', path: `${at}/${name}`, arrangement }))
  return [
    ...names(CONTRIBUTORS_OF[members], contributors, '/contributors'),
    ...names(LIMITS_OF[members], limits, '/limits'),
  ]
}

/** The effect of the weather, if the question has a year. Faults of the design are refused here too. */
function movementOf({ design, year }: ToleranceCheckInput): Result<Pick<Check, 'climate'>, Refused<SeasonRefusal>> {
  if (year === undefined) return ok({})
  const moved = climateMovement({ design, ...year })
  return moved.ok ? ok({ climate: moved.value }) : moved
}

function completed(input: ToleranceCheckInput): Result<Check, readonly Refusal[]> {
  const made = echoedBearingFor(TOLERANCE_CHECK, input.design)
  if (!made.ok) return made
  const bearing = made.value
  const design = bearing.resolved.input
  if ('plate' in bearing) {
    const usual = defaults.plateGapLimits(bearing.plateGap, design.units)
    const { minPlateGap = usual.min, maxPlateGap = usual.max } = input.limits ?? {}
    const limits = { ...gapLimitsOf(input, bearing.resolved), minPlateGap, maxPlateGap }
    const limitsOfPlay = { min: minPlateGap, max: maxPlateGap }
    return ok({ ...whole(input, design, bearing.resolved, limits, mm(0)), bearing, playLimits: limitsOfPlay })
  }
  const usual = playLimits(bearing.radialInternalClearance, design.units)
  const { minRadialInternalClearance = usual.min, maxRadialInternalClearance = usual.max } = input.limits ?? {}
  const limits = { ...gapLimitsOf(input, bearing.resolved), minRadialInternalClearance, maxRadialInternalClearance }
  const limitsOfPlay = { min: minRadialInternalClearance, max: maxRadialInternalClearance }
  const { assemblyGap } = bearing.resolved.assembly
  return ok({ ...whole(input, design, bearing.resolved, limits, assemblyGap), bearing, playLimits: limitsOfPlay })
}

type GapLimits = Required<Pick<LimitsInput, 'minBallGap' | 'maxBallGap'>>

const gapLimitsOf = ({ limits = {} }: ToleranceCheckInput, design: ResolvedBallRing): GapLimits => ({
  minBallGap: limits.minBallGap ?? design.minBallGap,
  maxBallGap: limits.maxBallGap ?? design.maxBallGap,
})

/** The part of a check that every arrangement shares. */
function whole(
  input: ToleranceCheckInput,
  design: DesignInput,
  resolved: ResolvedBallRing,
  limits: GapLimits & LimitsInput,
  assemblyGap: Mm,
) {
  const contributors = withBalls(input, resolved)
  return {
    input: {
      design,
      contributors: withMeans(contributors, resolved),
      ...(input.year === undefined ? {} : { year: input.year }),
      limits,
      ...(input.trials === undefined ? {} : { trials: input.trials }),
      significantDigits: input.significantDigits ?? defaults.SIGNIFICANT_DIGITS,
      seed: input.seed ?? defaults.SEED,
      overshootRisk: input.overshootRisk ?? defaults.OVERSHOOT_RISK,
    },
    differences: differencesOf(contributors, resolved),
    gapLimits: {
      min: limits.minBallGap,
      max: limits.maxBallGap,
      lows: entryGaps(assemblyGap).map((gap) => Math.max(gap, limits.minBallGap)),
    },
  }
}

const withBalls = ({ contributors, ballsAsDesigned }: ToleranceCheckInput, { ballScatter }: ResolvedBallRing) =>
  ballsAsDesigned === true && contributors.ballDiameter === undefined
    ? { ballDiameter: { kind: 'normal', standardDeviation: ballScatter } as const, ...contributors }
    : contributors

/** Completes normal contributors without a mean with that of the design. */
const withMeans = (contributors: Contributors, { finishAllowance }: ResolvedBallRing): Contributors =>
  Object.fromEntries(
    Object.entries(contributors).map(([name, scatter]) => [
      name,
      scatter.kind === 'normal' ? { mean: name === 'finishFilm' ? finishAllowance : mm(0), ...scatter } : scatter,
    ]),
  )

function limitRefusals({ gapLimits, playLimits, input }: Check): readonly ToleranceRefusal[] {
  const refusal = ({ min, max }: Band, path: string): readonly ToleranceRefusal[] =>
    min <= max ? [] : [{ code: 'limits-reversed', path, min: mm(min), max: mm(max) }]
  return [
    ...refusal(gapLimits, '/limits/minBallGap'),
    ...refusal(playLimits, `/limits/${'minPlateGap' in input.limits ? 'minPlateGap' : 'minRadialInternalClearance'}`),
  ]
}
