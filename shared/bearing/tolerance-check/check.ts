import { type Bearing, bearingAsked } from '#shared/bearing/bearing.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
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

/** Why there is nothing to check: of the design, of the year, or of what is asked of both. */
export type CheckRefusal = Refusal | SeasonRefusal | ToleranceRefusal

/**
 * Fills in what was left out, and refuses what is no bearing any more.
 *
 * @param input lengths in millimetres; scatters 0 and above
 * @returns every reason at once; those of the design at `/design`
 */
export function checkOf(input: ToleranceCheckInput): Result<Check, readonly CheckRefusal[]> {
  const made = bearingAsked(input.design, 'tolerance-check')
  if (!made.ok) return fail(made.error.map(inDesign))
  const moved = movementOf(input)
  const check = { ...settled(input, made.value), ...(moved.ok ? moved.value : {}) }
  const refusals = [...(moved.ok ? [] : moved.error), ...limitRefusals(check), ...unfitContributors(check)]
  return refusals.length > 0 ? fail(refusals) : ok(check)
}

const inDesign = (refusal: Refusal): Refusal => ({ ...refusal, path: `/design${refusal.path}` })

/** The weather, where it is asked about. What speaks against it in the design does so for this question too. */
function movementOf({ design, year }: ToleranceCheckInput): Result<Pick<Check, 'climate'>, readonly CheckRefusal[]> {
  if (year === undefined) return ok({})
  const moved = climateMovement({ design, ...year })
  if (moved.ok) return ok({ climate: moved.value })
  return fail(moved.error.map((each) => (each.code === 'design-refused' ? inDesign(each.refusal) : each)))
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
