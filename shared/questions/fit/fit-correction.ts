import { type DesignInput, echoedBearingFor, type Question, traitsOf } from '#shared/bearing/arrangements.ts'
import { cutTo } from '#shared/bearing/dimensions.ts'
import { type Refused, refusedDesign, refusedQuestion } from '#shared/bearing/refusal.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import { ABRASIVE, SHARP_TOOL, type ToolError } from '#shared/making/tool-error.ts'
import { FITTED_NAMES, fittedOf } from '#shared/questions/fit/arrangements/all.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { readingDeviation } from '#shared/statistics/likelihood.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { isCutBetween } from './cut-between.ts'
import * as defaults from './defaults.ts'
import { doReadingsFit, type Fit, type FitQuestion, fitOf } from './fit.ts'
import type { FitRefusal, FitSetup, FittedPart } from './fit-setup.ts'
import { innerRescues } from './inner-rescue.ts'
import type { MatingFaceAdjustment } from './mating-faces.ts'
import { outerRescues } from './outer-rescue.ts'
import {
  allReadings,
  type EarlierState,
  FEWEST_IN_PLACE,
  lastBallWord,
  type Reading,
  type ReadingKind,
} from './reading.ts'
import { usualError } from './reading-errors.ts'
import type { BallsOnHand, Rescue } from './rescue.ts'
import { gapSlope, pitchRadius } from './ring-law.ts'
import { type CountedRemoval, type Stroke, strokeOf } from './stroke.ts'
import type { Subject, Target } from './subject.ts'

/* Fit correction of a design: the entry point for a route. */

export const FIT_CORRECTION = { name: 'fit-correction', serves: FITTED_NAMES } as const satisfies Question

export interface FitCorrectionInput {
  readonly design: DesignInput
  /** One of the parts that the arrangement has to cut. */
  readonly ring: FittedPart
  readonly readings: readonly Reading[]
  readonly earlier: readonly EarlierState[]
  readonly target: Partial<Target>
  readonly tools: { readonly sharpTool?: ToolError; readonly abrasive?: ToolError }
  readonly removalHistory: readonly CountedRemoval[]
  readonly ballsOnHand: readonly BallsOnHand[]
}

/** The answer, as plain data. */
export interface FitCorrection {
  readonly resolved: ResolvedBalls
  readonly ring: FittedPart
  readonly target: Target
  readonly tools: { readonly sharpTool: ToolError; readonly abrasive: ToolError }
  readonly fit: Fit
  /** Depth of a stroke of the abrasive, if strokes were counted. */
  readonly stroke?: Stroke
  /** Only of a groove that is too deep. */
  readonly rescue?: readonly Rescue[]
  /** Only of a split inner ring whose mating faces can bring the play to the aim. */
  readonly adjustment?: MatingFaceAdjustment
  /** Only of an inner ring that is to be cut past its drawing for its balls' sake: across its bottoms, as drawn and as it is cut. */
  readonly drawnSizePassed?: Mm
}

/** Cut, measure or stop, of any arrangement and either ring. */
export function fitCorrection(input: FitCorrectionInput): Result<FitCorrection, Refused<FitRefusal>> {
  const found = setupOf(input)
  if (!found.ok) return found
  const { resolved, subject, workpiece, band } = found.value
  const target = targetOf(input.target, band, resolved)
  const refusals = [...bandRefusals(target), ...readingRefusals(input, subject)]
  if (refusals.length > 0) return fail(refusedQuestion(refusals))
  const stroke = strokeOf(input.removalHistory, figurePerDepth(subject), checkDeviation(input))
  const tools = {
    sharpTool: input.tools.sharpTool ?? SHARP_TOOL,
    abrasive: input.tools.abrasive ?? ABRASIVE,
  }
  const answer = fitOf(
    asLeft({
      subject,
      target,
      readings: input.readings,
      earlier: input.earlier,
      tools: { 'sharp-tool': tools.sharpTool, abrasive: tools.abrasive },
      ...(stroke === undefined ? {} : { stroke }),
      errorToCome: (kind) => errorToCome(input, kind),
    }),
  )
  if (!answer.ok) {
    const contradict = answer.error === 'readings-contradict'
    return fail(
      refusedQuestion<FitRefusal>([
        contradict ? contradiction(input, subject) : { code: answer.error, path: '/target' },
      ]),
    )
  }
  const fit = answer.value
  const adjustment = subject.cuts === 'inner' ? workpiece.matingFaces?.(fit.figure.value, target.aim) : undefined
  const drawnSizePassed = drawnSizePassedOf(input, found.value, fit)
  const rescue = fit.state === 'too-deep' ? rescuesOf(found.value, target, fit, input.ballsOnHand) : undefined
  return ok({
    resolved,
    ring: input.ring,
    target,
    tools,
    fit,
    ...(stroke === undefined ? {} : { stroke }),
    ...(adjustment?.isWorthIt === true ? { adjustment } : {}),
    ...(rescue === undefined ? {} : { rescue }),
    ...(drawnSizePassed === undefined ? {} : { drawnSizePassed }),
  })
}

/**
 * The drawing is made for equal balls, and the play among uneven ones is smaller. Where most of what the cut goes further is the
 * balls' doing, the drawing stops nobody; where the outer ring came out small, its own readings show why.
 */
function drawnSizePassedOf(input: FitCorrectionInput, { subject, resolved }: FitSetup, fit: Fit): Mm | undefined {
  if (subject.cuts !== 'inner' || fit.action !== 'cut' || !fit.nextStep.isSizeKnown) return undefined
  const drawn = cutTo(mm(2 * subject.inner.bottomRadius), 'outside', resolved)
  const further = drawn - fit.nextStep.until.grooveBottomDiameter
  const isTold = further > readingDeviation(errorToCome(input, 'groove-bottom-diameter'))
  return isTold && fit.takenByUneven >= further / 2 ? drawn : undefined
}

/**
 * An inner ring is cut to a finished outer one. Where the gap that was read does not fit that, the outer ring was left as it is, or
 * rescued: the gap is then taken as the outer ring took it.
 */
function asLeft(question: FitQuestion): FitQuestion {
  const { subject } = question
  if (subject.cuts !== 'inner' || subject.outerKnown.by !== 'gap') return question
  const ofOuter = allReadings(question).filter(({ kind }) => OF_FULL_RINGS.includes(kind))
  // A ring whose last ball stays out is not finished, and nobody leaves it so.
  if (lastBallWord(ofOuter) !== 'in') return question
  if (doReadingsFit({ ...question, readings: ofOuter, earlier: [] })) return question
  return { ...question, subject: { ...subject, outerKnown: { ...subject.outerKnown, isLeft: true } } }
}

/** Readings that no groove gives, with what explains them where that is plain. */
function contradiction(input: FitCorrectionInput, subject: Subject): FitRefusal {
  const { balls } = subject
  const tooWide = input.readings.find(
    (reading): reading is Extract<Reading, { kind: 'last-ball-opening' }> =>
      reading.kind === 'last-ball-opening' && reading.ballsLeftOut === 1 && reading.value > balls.diameter,
  )
  return {
    code: 'readings-contradict',
    path: '/readings',
    isAlone: allReadings(input).length === 1,
    isCutBetween: isCutBetween(subject, input.readings),
    isLastBallInAndOut: isInAndOut(input.readings),
    ...(tooWide !== undefined && { tooWide: mm(tooWide.value) }),
  }
}

const isInAndOut = (readings: readonly Reading[]): boolean =>
  new Set(readings.map((reading) => lastBallWord([reading])).filter((word) => word !== undefined)).size > 1

/** @throws RangeError where the arrangement has no such part */
function setupOf({ design, ring }: FitCorrectionInput): Result<FitSetup, Refused<FitRefusal>> {
  const { parts, setupOf: of } = fittedOf(design)
  if (!parts.includes(ring)) throw new RangeError(`ring must be one of ${parts.join(', ')}, got ${ring}`)
  const made = echoedBearingFor(FIT_CORRECTION, design)
  if (!made.ok) return fail(refusedDesign(made.error))
  const setup = of(made.value, ring)
  return setup.ok ? setup : fail(refusedQuestion(setup.error))
}

function rescuesOf(
  { subject, workpiece }: FitSetup,
  target: Target,
  { figure, grooveRadius, pitchRadius: centres, ballDiameter }: Fit,
  ballsOnHand: readonly BallsOnHand[],
): readonly Rescue[] {
  const spoilt = { target, workpiece, ballsOnHand, ballDiameter: ballDiameter.value, grooveRadius: grooveRadius.value }
  const options =
    subject.cuts === 'outer'
      ? outerRescues({ ...spoilt, subject })
      : innerRescues({ ...spoilt, subject, play: figure.value, pitchRadius: centres.value })
  // What cannot be done comes last, to say why not.
  return [...options.filter(({ possible }) => possible), ...options.filter(({ possible }) => !possible)]
}

/** The stated target, completed from the design. */
function targetOf(stated: Partial<Target>, band: FitSetup['band'], { finishAllowance }: ResolvedBalls): Target {
  const min = stated.min ?? band.min
  const max = stated.max ?? band.max
  return {
    min,
    max,
    aim: stated.aim ?? Math.min(Math.max(band.aim, min), max),
    overshootRisk: stated.overshootRisk ?? defaults.OVERSHOOT_RISK,
    finishAllowance: stated.finishAllowance ?? finishAllowance,
  }
}

function bandRefusals({ aim, min, max }: Target): readonly FitRefusal[] {
  if (!(min < max)) return [{ code: 'target-band-empty', path: '/target', min: mm(min), max: mm(max) }]
  if (aim >= min && aim <= max) return []
  return [{ code: 'aim-outside-band', path: '/target', aim: mm(aim), min: mm(min), max: mm(max) }]
}

/** Readings of a ring in which balls are closed without an inner ring. */
const OF_INNER_RINGS: readonly ReadingKind[] = ['radial-play', 'binds']
const OF_FULL_RINGS: readonly ReadingKind[] = ['ball-gap', 'last-ball-opening', 'last-ball-refused', 'last-ball-in']

function readingRefusals(
  { design, ring, readings, earlier }: FitCorrectionInput,
  subject: Subject,
): readonly FitRefusal[] {
  const { raceway } = traitsOf(design)
  const isCaged = subject.cuts === 'inner' && subject.outerKnown.by === 'groove'
  const isForeign = (kind: ReadingKind): boolean =>
    (ring !== 'inner' && OF_INNER_RINGS.includes(kind)) ||
    (isCaged && OF_FULL_RINGS.includes(kind)) ||
    ((ring === 'plate' || raceway === 'track') && kind === 'groove-depth')
  const most = subject.balls.count - FEWEST_IN_PLACE
  const judge = (reading: Reading, path: string): readonly FitRefusal[] => {
    const { kind } = reading
    if (isForeign(kind)) return [{ code: 'reading-of-other-ring', path, kind, ring }]
    if (kind !== 'last-ball-opening' || reading.ballsLeftOut <= Math.max(most, 0)) return []
    return [{ code: 'too-many-left-out', path: `${path}/ballsLeftOut`, given: reading.ballsLeftOut, most }]
  }
  return [
    ...readings.flatMap((reading, index) => judge(reading, `/readings/${index}`)),
    ...earlier.flatMap((state, at) =>
      state.readings.flatMap((reading, index) => judge(reading, `/earlier/${at}/readings/${index}`)),
    ),
  ]
}

/** How the figure moves with the depth of a cut, as designed. */
function figurePerDepth(subject: Subject): number {
  if (subject.cuts === 'inner') return 2
  const { balls, outer } = subject
  const step = 1e-4 * balls.diameter
  const at = (x: number): number => pitchRadius(outer.seat, x, balls.diameter)
  return (gapSlope(at(outer.x), balls.diameter, balls.count) * (at(outer.x + step) - at(outer.x - step))) / (2 * step)
}

/** A maker reads on with the same rule: the error of the latest such reading, and without one what is usual. */
function errorToCome(input: FitCorrectionInput, kind: ReadingKind) {
  const latest = allReadings(input).findLast((each) => each.kind === kind)
  if (latest !== undefined && 'error' in latest) return latest.error
  return usualError(kind, input.design.units) ?? { graduation: 0, standardUncertainty: defaults.BINDING_DEVIATION }
}

const checkDeviation = (input: FitCorrectionInput): number =>
  readingDeviation(errorToCome(input, input.ring === 'inner' ? 'radial-play' : 'ball-gap'))
