import { type Threshold, thresholdOf } from '#shared/bearing/entry-threshold.ts'
import { CONFIDENCE } from '#shared/bearing/plug-reading.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { readingDeviation } from '#shared/statistics/likelihood.ts'
import { contradict, type Disagreement, disagreements } from './agreement.ts'
import { isCutBetween } from './cut-between.ts'
import {
  type Decision,
  type DecisionInput,
  decide,
  type FitState,
  readsHowMuch,
  stateOf,
  touchesCut,
  wordNow,
} from './decision.ts'
import { type Estimate, estimateOf } from './estimate.ts'
import { evidenceOf } from './evidence.ts'
import { type Chances, chancesOf, figureAt, finishedFigureAt, takenByUneven } from './figures.ts'
import { mistakenFor } from './mistaken-reading.ts'
import type { ToolAtHand } from './next-cut.ts'
import { type ErrorToCome, type Offer, offers } from './next-reading.ts'
import { type Posterior, posteriorOf } from './posterior.ts'
import { allReadings, type EarlierState, lastBallWord, type Reading, type ReadingKind } from './reading.ts'
import { gapOf, pitchRadius } from './ring-law.ts'
import { roomOf } from './room.ts'
import type { Subject, Target } from './subject.ts'
import { type Tools, unknownsOf } from './unknowns.ts'

/** The question about an unfinished groove. Lengths in millimetres. */
export interface FitQuestion {
  readonly subject: Subject
  readonly target: Target
  /** At the present state. */
  readonly readings: readonly Reading[]
  readonly earlier: readonly EarlierState[]
  readonly tools: Tools
  /** Depth of one stroke of the abrasive and its relative uncertainty, if strokes were counted. */
  readonly stroke?: { readonly radial: number; readonly relativeUncertainty: number }
  /** The error that the next reading of a kind will have. */
  readonly errorToCome: ErrorToCome
}

/** The state of a groove and the next step. */
export type Fit = {
  readonly state: FitState
  readonly confidence: number
  readonly probability: Chances
  /** Ball gap, or the play of an inner ring, as it is now. */
  readonly figure: Estimate
  readonly pitchRadius: Estimate
  readonly ballDiameter: Estimate
  /** Radius of the bottom of the groove that is cut, or of a plate's circle. */
  readonly grooveRadius: Estimate
  /** How much play the balls take by being uneven, as it is estimated. */
  readonly takenByUneven: number
  /** From here to the aim, radially: above 0 wood to remove. */
  readonly remaining: number
  /** The probability of ending too deep if the maker follows the advice. */
  readonly overshootProbability: number
  /** Whether the last ball is in, by the latest word on it. */
  readonly isLastBallIn: boolean
  /** Whether it is known at this state if the last ball goes in. */
  readonly isLastBallTried: boolean
  /** How many readings of the groove that is cut were made at this state, and how many of anything at all states together. */
  readonly readingsMade: { readonly now: number; readonly ever: number }
  /** Kinds of reading that were made at this state. */
  readonly kindsRead: readonly ReadingKind[]
  /** Whether the gap, or what the last ball lacks, was read at this state; of an inner ring, its play or its groove. */
  readonly isFigureRead: boolean
  /** Intended depth of the cut before this state; absent where none was made. */
  readonly lastCut?: number
  /** Readings still to come on average. */
  readonly expectedChecks: number
  readonly disagreements: readonly Disagreement[]
  /** Whether a cut between them, which nobody entered, explains them. */
  readonly isCutBetween: boolean
  /** Whether a row of balls is among them. */
  readonly isRowDoubted: boolean
  readonly learnt: {
    /** How much more than the nominal cut this maker's tools take, over the nominal cut. */
    readonly toolBias: Estimate
    /** By how much this maker reads a rule too long. */
    readonly handBias: Estimate
  }
} & Decided

type Decided =
  | (Extract<Decision, { action: 'cut' }> & { readonly nextStep: NextStep })
  | Extract<Decision, { action: 'measure' }>
  | Extract<Decision, { action: 'stop' }>

interface NextStep {
  readonly with: ToolAtHand['name']
  readonly radial: number
  readonly strokes?: number
  /** Across the bottoms (of a plate: across the circle) when the cut is done. */
  readonly until: { readonly grooveBottomDiameter: number }
  /** Whether the groove is known well enough to stop the cut at that size; else its depth counts. */
  readonly isSizeKnown: boolean
  readonly overshootProbability: number
}

export type FitFault = 'readings-contradict' | 'target-out-of-reach'

/** What the readings tell of a groove and its balls, and which of them do not fit. */
interface Inferred {
  readonly posterior: Posterior
  readonly ballDiameter: Estimate
  readonly disagreements: readonly Disagreement[]
}

function inferredFrom({ subject, target, readings, earlier, tools }: FitQuestion): Result<Inferred, FitFault> {
  if (!isInReach(subject, target)) return fail('target-out-of-reach')
  const evidence = evidenceOf(subject, earlier, readings)
  const posterior = posteriorOf(unknownsOf(subject, earlier, tools), evidence, thresholdFor(subject))
  const ballDiameter = estimateOf(posterior.mean, posterior.weights)
  if (contradict(evidence, posterior.widestPredictions) || !isOfThisLot(ballDiameter.value, subject))
    return fail('readings-contradict')
  return ok({
    posterior,
    ballDiameter,
    disagreements: disagreements(evidence, posterior.predictions, earlier.length),
  })
}

/** Whether some groove gives all readings of a question, and each fits the others. */
export function doReadingsFit(question: FitQuestion): boolean {
  const inferred = inferredFrom(question)
  return inferred.ok && inferred.value.disagreements.length === 0
}

/** I have cut, I have measured: cut, measure, or stop? */
export function fitOf(question: FitQuestion): Result<Fit, FitFault> {
  const { subject, target, readings, earlier } = question
  const inferred = inferredFrom(question)
  if (!inferred.ok) return inferred
  const { posterior, ballDiameter } = inferred.value
  const figures = pointwise(posterior, (point) => figureAt(posterior, point))
  const finished =
    target.finishAllowance === 0 ? figures : pointwise(posterior, (point) => finishedFigureAt(posterior, target, point))
  const probability = chancesOf(posterior, target, finished)
  const { weights } = posterior
  const figure = estimateOf(figures, weights)
  const word = wordNow(question)
  const found = inferred.value.disagreements.map((each) => explained(each, question))
  const room = roomOf(posterior, target, finished)
  let offered: readonly Offer[] | undefined
  const input: DecisionInput = {
    cuts: subject.cuts,
    chances: probability,
    target,
    readings,
    earlier,
    agrees: found.length === 0,
    isRowDoubted: isRowAmong(found, readings),
    tools: toolsAtHand(question),
    room,
    offers: () => {
      offered ??= offers({
        posterior,
        points: room.points,
        figures,
        deviation: figure.standardUncertainty,
        readings,
        word,
        hasPlug: hasSnugPlug(question),
        errorOf: question.errorToCome,
      })
      return offered
    },
  }
  const decision = decide(input)
  const grooveRadius = estimateOf(posterior.cut.map(Math.abs), weights)
  return ok({
    state: stateOf(input),
    confidence: CONFIDENCE,
    probability,
    figure,
    pitchRadius: estimateOf(
      pointwise(posterior, (point) => centresAt(posterior, point)),
      weights,
    ),
    ballDiameter,
    grooveRadius,
    takenByUneven: estimateOf(
      pointwise(posterior, (point) => takenByUneven(posterior, point)),
      weights,
    ).value,
    remaining: room.remaining,
    overshootProbability: decision.action === 'cut' ? decision.cut.tooDeep : probability.tooDeep,
    isLastBallIn: word === 'in',
    isLastBallTried: word === 'in' || lastBallWord(readings) !== undefined,
    readingsMade: {
      now: readings.filter((reading) => touchesCut(reading, subject.cuts)).length,
      ever: allReadings(question).length,
    },
    kindsRead: readings.map(({ kind }) => kind),
    isFigureRead: readsHowMuch(readings, subject.cuts),
    ...lastCutOf(earlier),
    expectedChecks: expectedChecks(decision),
    disagreements: found,
    isCutBetween: found.length > 0 && isCutBetween(subject, readings),
    isRowDoubted: input.isRowDoubted,
    learnt: { toolBias: estimateOf(posterior.tool, weights), handBias: estimateOf(posterior.hand, weights) },
    ...(decision.action === 'cut'
      ? { ...decision, nextStep: nextStepOf(decision.cut, grooveRadius, question) }
      : decision),
  })
}

/** Whether a row of balls is among the readings that do not fit: these may be other balls than those of the design. */
const isRowAmong = (found: readonly Disagreement[], readings: readonly Reading[]): boolean =>
  found.some(({ index }) => itemAt(readings, index).kind === 'ball-row')

function explained(found: Disagreement, { readings, subject }: FitQuestion): Disagreement {
  const { index, expected } = found
  const mistaken = expected && mistakenFor(itemAt(readings, index), expected.value, subject.balls.diameter)
  return mistaken === undefined ? found : { ...found, mistakenFor: mistaken }
}

function lastCutOf(earlier: readonly EarlierState[]): { readonly lastCut?: number } {
  const last = earlier.at(-1)
  return last === undefined ? {} : { lastCut: last.thenRemoved.radial }
}

/**
 * A lot whose mean lies further off, over its diameter and over the scatter of its balls, is another lot.
 * Common practice, no source.
 */
const MOST_OFF = 0.1
const MOST_SCATTERS = 10

/** If no groove explains the readings, the remaining points have balls of impossible sizes. */
const isOfThisLot = (mean: number, { balls }: Subject): boolean =>
  Math.abs(mean - balls.diameter) <= Math.max(MOST_OFF * balls.diameter, MOST_SCATTERS * balls.scatter)

const hasSnugPlug = (question: FitQuestion): boolean =>
  allReadings(question).some((reading) => reading.kind === 'plug' && reading.result === 'snug')

const pointwise = ({ weights }: Posterior, of: (point: number) => number): Float64Array =>
  weights.map((_, point) => of(point))

/** Whether some depth of the groove gives the aim: an arc tighter than the ball lets it in no further than to its edges. */
function isInReach(subject: Subject, { aim }: Target): boolean {
  const { balls, outer } = subject
  if (subject.cuts === 'inner') return true
  const { seat } = outer
  if (!(aim < (balls.count - 2) * balls.diameter)) return false
  if (seat.on !== 'edges') return true
  const deepest = pitchRadius(seat, seat.landRadius + Math.min(seat.arc, balls.diameter / 2), balls.diameter)
  return gapOf(deepest, balls.diameter, balls.count) >= aim
}

const centresAt = ({ unknowns: { subject }, outer, mean }: Posterior, point: number): number =>
  pitchRadius(subject.outer.seat, outer[point] ?? Number.NaN, mean[point] ?? Number.NaN)

function thresholdFor(subject: Subject): Threshold {
  const { diameter } = subject.balls
  if (subject.cuts === 'outer') return thresholdOf(subject.assemblyGap, diameter)
  return thresholdOf(subject.outerKnown.by === 'gap' ? subject.outerKnown.assemblyGap : 0, diameter)
}

function toolsAtHand({ tools, stroke }: FitQuestion): readonly ToolAtHand[] {
  const { absolute, relative } = tools.abrasive
  const abrasive: ToolAtHand =
    stroke === undefined
      ? { name: 'abrasive', error: tools.abrasive }
      : {
          name: 'abrasive',
          error: { absolute, relative: Math.sqrt(relative ** 2 + stroke.relativeUncertainty ** 2) },
          perStroke: stroke.radial,
        }
  return [{ name: 'sharp-tool', error: tools['sharp-tool'] }, abrasive]
}

/**
 * Much less certain than a caliper would make it, the size of a groove is only inferred from a gap or a play: who stops at that size may go
 * too deep, or cut nothing at all. Derived here: a caliper's reading of the groove as it is now stays below this.
 */
const OVER_A_CALIPER = 1.5

const isSizeKnown = (grooveRadius: Estimate, errorToCome: ErrorToCome): boolean =>
  2 * grooveRadius.standardUncertainty <= OVER_A_CALIPER * readingDeviation(errorToCome('groove-bottom-diameter'))

function nextStepOf(
  { with: name, radial, tooDeep }: Extract<Decision, { action: 'cut' }>['cut'],
  grooveRadius: Estimate,
  { stroke, subject, errorToCome }: FitQuestion,
): NextStep {
  const outward = subject.cuts === 'outer' ? radial : -radial
  return {
    with: name,
    radial,
    ...(name === 'abrasive' && stroke !== undefined ? { strokes: Math.round(radial / stroke.radial) } : {}),
    until: { grooveBottomDiameter: 2 * (grooveRadius.value + outward) },
    isSizeKnown: isSizeKnown(grooveRadius, errorToCome),
    overshootProbability: tooDeep,
  }
}

/** A cut is followed by a check, and, where it does not bring the groove home, by about one and a half more. */
function expectedChecks(decision: Decision): number {
  if (decision.action === 'stop') return 0
  if (decision.action === 'measure') return 2
  return 1 + 1.5 * (1 - decision.cut.good)
}
