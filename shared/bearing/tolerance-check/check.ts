import { type Bearing, bearingAsked } from '#shared/bearing/bearing.ts'
import { type Refusal, type Refused, refusedDesign, refusedQuestion } from '#shared/bearing/refusal.ts'
import { type ClimateMovement, climateMovement } from '#shared/bearing/seasonal-fit/climate-movement.ts'
import type { SeasonRefusal } from '#shared/bearing/seasonal-fit/refusal.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import type { Band } from '#shared/statistics/monte-carlo.ts'
import { mm } from '#shared/units/length.ts'
import * as defaults from './defaults.ts'
import { type Differences, differencesOf } from './differences.ts'
import type { ToleranceCheckInput } from './input.ts'
import { type ToleranceRefusal, unfitContributors } from './refusal.ts'

/** A tolerance check with nothing left open. */
export interface Check {
  readonly input: Required<Omit<ToleranceCheckInput, 'year' | 'trials'>> & Pick<ToleranceCheckInput, 'year' | 'trials'>
  readonly bearing: Bearing
  readonly differences: Differences
  /** What the weather does to this bearing. Absent where nothing was said of it. */
  readonly climate?: ClimateMovement
  readonly gapLimits: Band
  readonly playLimits: Band
}

/** Why there is nothing to check, beside what speaks against the design: of the year, or of what is asked. */
export type CheckRefusal = Refusal | SeasonRefusal | ToleranceRefusal

/**
 * Fills in what was left out, and refuses what is no bearing any more.
 *
 * @param input lengths in millimetres; scatters 0 and above
 * @returns every reason at once
 */
export function checkOf(input: ToleranceCheckInput): Result<Check, Refused<CheckRefusal>> {
  const made = bearingAsked(input.design, 'tolerance-check')
  if (!made.ok) return fail(refusedDesign(made.error))
  const moved = movementOf(input)
  const check = { ...settled(input, made.value), ...(moved.ok ? moved.value : {}) }
  const unfit = [...limitRefusals(check), ...unfitContributors(check)]
  if (!moved.ok) return fail({ ...moved.error, ofQuestion: [...moved.error.ofQuestion, ...unfit] })
  return unfit.length > 0 ? fail(refusedQuestion(unfit)) : ok(check)
}

/** The weather, where it is asked about. What speaks against it in the design does so for this question too. */
function movementOf({ design, year }: ToleranceCheckInput): Result<Pick<Check, 'climate'>, Refused<SeasonRefusal>> {
  if (year === undefined) return ok({})
  const moved = climateMovement({ design, ...year })
  return moved.ok ? ok({ climate: moved.value }) : moved
}

function settled(input: ToleranceCheckInput, bearing: Bearing): Check {
  const { settled: design } = bearing
  const usual = defaults.playLimits(design.radialInternalClearance)
  const limits = {
    minBallGap: input.limits?.minBallGap ?? design.minBallGap,
    maxBallGap: input.limits?.maxBallGap ?? design.maxBallGap,
    minRadialInternalClearance: input.limits?.minRadialInternalClearance ?? usual.min,
    maxRadialInternalClearance: input.limits?.maxRadialInternalClearance ?? usual.max,
  }
  return {
    input: {
      design: design.input,
      contributors: input.contributors,
      ...(input.year === undefined ? {} : { year: input.year }),
      limits,
      ...(input.trials === undefined ? {} : { trials: input.trials }),
      significantDigits: input.significantDigits ?? defaults.SIGNIFICANT_DIGITS,
      seed: input.seed ?? defaults.SEED,
      overshootRisk: input.overshootRisk ?? defaults.OVERSHOOT_RISK,
    },
    bearing,
    differences: differencesOf(input.contributors, bearing),
    gapLimits: { min: limits.minBallGap, max: limits.maxBallGap },
    playLimits: { min: limits.minRadialInternalClearance, max: limits.maxRadialInternalClearance },
  }
}

function limitRefusals({ gapLimits, playLimits }: Check): readonly ToleranceRefusal[] {
  const refusal = ({ min, max }: Band, path: string): readonly ToleranceRefusal[] =>
    min <= max ? [] : [{ code: 'limits-reversed', path, min: mm(min), max: mm(max) }]
  return [...refusal(gapLimits, '/limits/minBallGap'), ...refusal(playLimits, '/limits/minRadialInternalClearance')]
}
