import { ok, type Result } from '#shared/result.ts'
import {
  ABOVE,
  BELOW,
  batchCount,
  countAt,
  isStable,
  joined,
  type Plan,
  planTrials,
  runBatches,
  shareOf,
  summaryOf,
  type Tally,
  type TrialSummary,
  trialsIn,
  WITHIN,
} from '#shared/statistics/monte-carlo.ts'
import {
  accumulated,
  type CoarseHistogram,
  coarse,
  type Estimated,
  quantile,
} from '#shared/statistics/streaming-histogram.ts'
import { type Aim, aimOf, type Chance, type Outcomes } from './aim.ts'
import { type Check, type CheckRefusal, checkOf } from './check.ts'
import { MOST_TRIALS, SIGNIFICANT_DIGITS } from './defaults.ts'
import type { ToleranceCheckInput } from './input.ts'
import { FIGURES, type FigureName, type LinearLaw, linearLaw } from './linear-law.ts'
import { trialModel } from './trials.ts'
import { type WorstCase, worstCase } from './worst-case.ts'

/*
 * Will it run, how often, and where to aim? In three steps, so that the trials can be run in parts, by anyone, anywhere: what is
 * to be run (`prepareTrials`), a part of it (`runTrials`), and what all parts, in their order, come to (`concludeTrials`).
 */

/** Percentiles that are told. */
const PERCENTS = [0.1, 2.5, 5, 25, 50, 75, 95, 97.5, 99.9] as const

/** After so many batches more it is looked whether the figures stand still: however many threads there are. */
export const BATCHES_A_LOOK = 10

export interface FigureCheck {
  readonly nominal: number
  readonly worstCase: WorstCase[FigureName]
  readonly rss: LinearLaw
  readonly trials: TrialSummary
  readonly percentiles: readonly (Estimated & { readonly percent: number })[]
  readonly outcomes: Outcomes
  readonly histogram: CoarseHistogram
  /** The farthest that any trial came. */
  readonly seen: { readonly least: number; readonly most: number }
}

export interface ToleranceCheck {
  readonly check: Check
  readonly trials: number
  /** Whether the figures stand still to the digits asked for. */
  readonly isConverged: boolean
  readonly figures: Readonly<Record<FigureName, FigureCheck>>
  /** That gap and play both fit. */
  readonly jointFits: Chance
  readonly aim: Aim
}

/** What is to be run, or every reason at once why nothing is. */
export function prepareTrials(input: ToleranceCheckInput): Result<Plan, readonly CheckRefusal[]> {
  const checked = checkOf(input)
  if (!checked.ok) return checked
  const check = checked.value
  const { trials, seed } = check.input
  return ok(
    planTrials(trialModel(check), {
      seed,
      trials: trials === 'auto' ? MOST_TRIALS : trials,
      bands: [check.gapLimits, check.playLimits],
    }),
  )
}

/** Some of a plan's batches, from a number on. Any part gives the same, whoever runs it. */
interface Part {
  readonly input: ToleranceCheckInput
  readonly plan: Plan
  readonly first: number
  readonly count: number
}

/** @throws RangeError for an input that was refused */
export function runTrials({ input, plan, first, count }: Part): Tally {
  return runBatches(trialModel(accepted(input)), plan, first, count)
}

/** What was run of a plan, from its first batch on, part by part. */
export interface TrialsRun {
  readonly input: ToleranceCheckInput
  readonly plan: Plan
  readonly tallies: readonly Tally[]
}

/** Whether what was run so far stands still, gap and play, to the digits asked for: all that `auto` waits for. */
export function standsStill({ input, plan, tallies }: TrialsRun): boolean {
  const digits = input.significantDigits ?? SIGNIFICANT_DIGITS
  const batches = tallies.flatMap((tally) => tally.batches)
  return FIGURES.every((_, output) => isStable({ batches }, plan, output, digits))
}

/**
 * The whole answer.
 *
 * @throws RangeError for an input that was refused
 */
export function concludeTrials(run: TrialsRun): ToleranceCheck {
  const check = accepted(run.input)
  const { plan } = run
  const tally = joined(plan, run.tallies)
  const extremes = worstCase(check)
  const figure = (name: FigureName): FigureCheck => figureCheck(check, plan, tally, name, extremes)
  const ballGap = figure('ballGap')
  return {
    check,
    trials: trialsIn(tally),
    isConverged: standsStill(run),
    figures: { ballGap, radialInternalClearance: figure('radialInternalClearance') },
    jointFits: shareOf(tally.joint[WITHIN + 3 * WITHIN] ?? 0, trialsIn(tally)),
    aim: aimOf(check, histogramOf(tally, 0), ballGap.trials.mean, ballGap.outcomes),
  }
}

function accepted(input: ToleranceCheckInput): Check {
  const checked = checkOf(input)
  if (!checked.ok) throw new RangeError('input must be one that prepareTrials accepts')
  return checked.value
}

function figureCheck(check: Check, plan: Plan, tally: Tally, name: FigureName, extremes: WorstCase): FigureCheck {
  const output = FIGURES.indexOf(name)
  const histogram = histogramOf(tally, output)
  const below = accumulated(histogram)
  const share = (place: number): Chance => shareOf(countAt(tally, output, place), trialsIn(tally))
  return {
    nominal: check.bearing[name],
    worstCase: extremes[name],
    rss: linearLaw(check, name),
    trials: summaryOf(tally, plan, output),
    percentiles: PERCENTS.map((percent) => ({ percent, ...quantile(histogram, percent / 100, below) })),
    outcomes: { tooTight: share(BELOW), fits: share(WITHIN), tooLoose: share(ABOVE) },
    histogram: coarse(histogram),
    seen: { least: histogram.least, most: histogram.most },
  }
}

function histogramOf({ histograms }: Tally, output: number) {
  const histogram = histograms[output]
  if (histogram === undefined) throw new RangeError(`output must be one of the tally's, got ${output}`)
  return histogram
}

/** All three steps at once, in one go: for whoever has no threads to spread them over. */
export function toleranceCheck(input: ToleranceCheckInput): Result<ToleranceCheck, readonly CheckRefusal[]> {
  const plan = prepareTrials(input)
  if (!plan.ok) return plan
  const tallies: Tally[] = []
  for (let first = 0; first < batchCount(plan.value); first += BATCHES_A_LOOK) {
    tallies.push(runTrials({ input, plan: plan.value, first, count: BATCHES_A_LOOK }))
    if (input.trials === 'auto' && standsStill({ input, plan: plan.value, tallies })) break
  }
  return ok(concludeTrials({ input, plan: plan.value, tallies }))
}
