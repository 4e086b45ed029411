import type { Refused } from '#shared/bearing/refusal.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { ok, type Result } from '#shared/result.ts'
import {
  blockCount,
  blocksUntilStable,
  isStable,
  joined,
  numericalTolerance,
  type Plan,
  planTrials,
  runBlocks,
  shareOf,
  type Tally,
  trialsIn,
  WITHIN,
} from '#shared/statistics/monte-carlo.ts'
import { accumulated, type Histogram, shareBelow } from '#shared/statistics/streaming-histogram.ts'
import { type Aim, aimOf, type Chance, type GapSpread } from './aim.ts'
import { type CheckRefusal, checkOf } from './check.ts'
import { FIGURES, type FigureName } from './check-model.ts'
import type { Check } from './checked.ts'
import { MOST_TRIALS, SIGNIFICANT_DIGITS, TRIALS } from './defaults.ts'
import { type FigureCheck, figureOfShares, figureOfTrials, histogramOf, type KnownOfFigure } from './figure-check.ts'
import type { ToleranceCheckInput } from './input.ts'
import { linearLaw } from './linear-law.ts'
import { modelOf } from './model-of.ts'
import { chanceBetween, type NearlyLinear, nearlyLinear, type WhyTrials } from './nearly-linear.ts'
import { trialModel } from './trials.ts'

/*
 * Will it run, how often, and where to aim? Where the input requests no trials and the figures are nearly straight lines in what
 * differs, at once (`nearly-linear.ts`). Else in three steps, so that the trials can be run in parts, by anyone, anywhere:
 * what is to be run (`prepareTrials`), a part of it (`runTrials`), and what all parts, in their order, come to
 * (`concludeTrials`).
 */

/** After every so many blocks the stability of the figures is tested, however many threads there are. */
export const BLOCKS_PER_LOOK = 10

/** The method of an answer. */
type Method =
  | { readonly kind: 'trials'; readonly why: WhyTrials }
  /** With what of the variance of each figure neither line nor curve tells. */
  | { readonly kind: 'nearly-linear'; readonly left: Readonly<Record<FigureName, number>> }

export interface ToleranceCheck {
  readonly check: Check
  readonly method: Method
  /** Bearings that were made and closed exactly. */
  readonly trials: number
  /** Whether the figures are stable to the requested digits. */
  readonly isConverged: boolean
  readonly figures: Readonly<Record<FigureName, FigureCheck>>
  /** That gap and play both fit. */
  readonly jointFits: Chance
  /** Only of rings: the chance that the inner one does not go in among the balls. */
  readonly binds: Chance | undefined
  readonly aim: Aim
}

/** The answer, or the trials that it takes. */
export type Prepared =
  | { readonly kind: 'answered'; readonly answer: ToleranceCheck }
  | { readonly kind: 'to-run'; readonly plan: Plan; readonly why: WhyTrials }

/** The answer or the trials that it takes, or every fault of the input. */
export function prepareTrials(input: ToleranceCheckInput): Result<Prepared, Refused<CheckRefusal>> {
  const checked = checkOf(input)
  if (!checked.ok) return checked
  const check = checked.value
  const { trials, seed } = check.input
  const short = trials === undefined ? nearlyLinear(check) : 'trials-requested'
  if (typeof short !== 'string') return ok({ kind: 'answered', answer: nearlyLinearAnswer(check, short) })
  const plan = planTrials(trialModel(check), {
    seed,
    trials: trials === 'auto' ? MOST_TRIALS : (trials ?? TRIALS),
    bands: [check.gapLimits, check.playLimits],
  })
  return ok({ kind: 'to-run', plan, why: short })
}

/** Some of a plan's blocks, from a number on. Any part gives the same, whoever runs it. */
interface Part {
  readonly input: ToleranceCheckInput
  readonly plan: Plan
  readonly first: number
  readonly count: number
}

/** @throws RangeError for an input that was refused */
export function runTrials({ input, plan, first, count }: Part): Tally {
  return runBlocks(trialModel(accepted(input)), plan, first, count)
}

/** The finished part of a plan, from its first block on, part by part. */
export interface TrialsRun {
  readonly input: ToleranceCheckInput
  readonly plan: Plan
  readonly why: WhyTrials
  readonly tallies: readonly Tally[]
}

/** Whether gap and play are stable to the requested digits, by the trials so far: `auto` then stops. */
export function isRunStable({ input, plan, tallies }: Omit<TrialsRun, 'why'>): boolean {
  const digits = input.significantDigits ?? SIGNIFICANT_DIGITS
  const blocks = tallies.flatMap((tally) => tally.blocks)
  return FIGURES.every((_, output) => isStable({ blocks }, plan, output, digits))
}

/** The estimated number of blocks until gap and play are stable, by the trials so far. */
export function blocksNeeded({ input, plan, tallies }: Omit<TrialsRun, 'why'>): number {
  const digits = input.significantDigits ?? SIGNIFICANT_DIGITS
  const blocks = tallies.flatMap((tally) => tally.blocks)
  return Math.max(...FIGURES.map((_, output) => blocksUntilStable({ blocks }, plan, output, digits)))
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
  const known = knownOf(check)
  const ballGap = figureOfTrials(known.ballGap, plan, tally, 0)
  const play = figureOfTrials(known.play, plan, tally, 1)
  const gaps = histogramOf(tally, 0)
  const count = trialsIn(tally)
  const chance = (share: number): Chance => ({ ...shareOf(share * count, count), value: share })
  return {
    check,
    method: { kind: 'trials', why: run.why },
    trials: count,
    isConverged: isRunStable(run),
    figures: { ballGap, play },
    jointFits: shareOf(itemAt(tally.joint, WITHIN + 3 * WITHIN), count),
    binds: modelOf(check).canBind ? bindsOf(check, play, histogramOf(tally, 1), count) : undefined,
    aim: aimOf(check, { histogram: gaps, mean: ballGap.trials.mean, chance }, ballGap.outcomes),
  }
}

/** Counted where the limit of the play is 0, else read off the histogram. */
function bindsOf({ playLimits }: Check, { outcomes }: FigureCheck, plays: Histogram, count: number): Chance {
  if (playLimits.min === 0) return outcomes.tooTight
  const value = shareBelow(plays, accumulated(plays), 0)
  return { ...shareOf(value * count, count), value }
}

function accepted(input: ToleranceCheckInput): Check {
  const checked = checkOf(input)
  if (!checked.ok) throw new RangeError('input must be one that prepareTrials accepts')
  return checked.value
}

function knownOf(check: Check): Readonly<Record<FigureName, KnownOfFigure>> {
  const { extremes: extremesOf, nominal } = modelOf(check)
  const extremes = extremesOf()
  const of = (name: FigureName): KnownOfFigure => ({
    nominal: nominal[name],
    worstCase: extremes[name],
    rss: linearLaw(check, name),
  })
  return { ballGap: of('ballGap'), play: of('play') }
}

function nearlyLinearAnswer(check: Check, { figures, jointFits, trials }: NearlyLinear): ToleranceCheck {
  const known = knownOf(check)
  const { ballGap: gaps, play: plays } = figures
  // Told as so many bearings as there are trials where it takes trials.
  const ballGap = figureOfShares(known.ballGap, gaps, check.gapLimits, TRIALS)
  const play = figureOfShares(known.play, plays, check.playLimits, TRIALS)
  const chance: GapSpread['chance'] = (value, lows, highs) => ({ ...chanceBetween(gaps, lows, highs), value })
  return {
    check,
    method: { kind: 'nearly-linear', left: { ballGap: gaps.left, play: plays.left } },
    trials,
    isConverged: [ballGap, play].every((figure) => isSure(figure, check.input.significantDigits)),
    figures: { ballGap, play },
    jointFits,
    binds: modelOf(check).canBind ? chanceBetween(plays, [], [0]) : undefined,
    aim: aimOf(check, { histogram: gaps.histogram, mean: ballGap.trials.mean, chance }, ballGap.outcomes),
  }
}

/** Ends of the middle 95 %, which must be as stable as mean and deviation. */
const MIDDLE = [2.5, 97.5] as const

/** The same mark as for trials: twice each standard error is no more than half a unit of the last digit. */
function isSure({ trials, percentiles }: FigureCheck, digits: number): boolean {
  const { mean, standardDeviation } = trials.standardError
  const ends = percentiles.filter(({ percent }) => MIDDLE.some((end) => end === percent))
  const errors = [mean, standardDeviation, ...ends.map(({ standardError }) => standardError)]
  const tolerance = numericalTolerance(trials.standardDeviation, digits)
  return errors.every((error) => 2 * error <= tolerance)
}

/** All three steps at once, in one go: for whoever has no threads to spread them over. */
export function toleranceCheck(input: ToleranceCheckInput): Result<ToleranceCheck, Refused<CheckRefusal>> {
  const prepared = prepareTrials(input)
  if (!prepared.ok) return prepared
  if (prepared.value.kind === 'answered') return ok(prepared.value.answer)
  const { plan, why } = prepared.value
  const tallies: Tally[] = []
  for (let first = 0; first < blockCount(plan); first += BLOCKS_PER_LOOK) {
    tallies.push(runTrials({ input, plan, first, count: BLOCKS_PER_LOOK }))
    if (input.trials === 'auto' && isRunStable({ input, plan, tallies })) break
  }
  return ok(concludeTrials({ input, plan, why, tallies }))
}
