import { type DesignInput, echoedBearingFor, type Question, traitsOf } from '#shared/bearing/arrangements.ts'
import { type Refused, refusedDesign, refusedQuestion } from '#shared/bearing/refusal.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { tightestCircle } from '#shared/geometry/balls-on-a-circle.ts'
import { tightestBottomRadius } from '#shared/geometry/unequal-balls.ts'
import { ABRASIVE, SHARP_TOOL, type ToolError } from '#shared/making/tool-error.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { readingDeviation } from '#shared/statistics/likelihood.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import * as defaults from './defaults.ts'
import { type Fit, type FitFault, fitOf } from './fit.ts'
import { cagedInnerSubject, innerSubject, outerSubject, plateSubject } from './from-bearing.ts'
import { type MatingFaceAdjustment, matingFaceAdjustment } from './mating-faces.ts'
import { allReadings, type EarlierState, FEWEST_IN_PLACE, type Reading, type ReadingKind } from './reading.ts'
import { usualError } from './reading-errors.ts'
import { type BallsOnHand, type Rescue, rescues, type Workpiece } from './rescue.ts'
import { gapSlope, pitchRadius } from './ring-law.ts'
import { type CountedRemoval, type Stroke, strokeOf } from './stroke.ts'
import type { Subject, Target } from './subject.ts'
import { type UnevenBalls, unevenBalls } from './uneven-balls.ts'
import { plateWorkpiece, ringWorkpiece } from './workpiece-of.ts'

/* Fit correction asked of a design: what a route calls. */

export const FIT_CORRECTION = {
  name: 'fit-correction',
  serves: ['radial', 'thrust', 'roller', 'caged'],
} as const satisfies Question

/** The ring whose groove is being brought to fit. */
export const RINGS = ['outer', 'inner'] as const
export type FittedRing = (typeof RINGS)[number]
/** What is cut: one of two rings, or both plates alike. */
export type FittedPart = FittedRing | 'plate'

export interface FitCorrectionInput {
  readonly design: DesignInput
  /** `plate` for a design of plates, and for no other. */
  readonly ring: FittedPart
  readonly readings: readonly Reading[]
  readonly earlier: readonly EarlierState[]
  readonly target: Partial<Target>
  readonly tools: { readonly sharpTool?: ToolError; readonly abrasive?: ToolError }
  readonly removalHistory: readonly CountedRemoval[]
  readonly ballsOnHand: readonly BallsOnHand[]
}

/** Why there is nothing to say about a fit. */
export type FitRefusal =
  | UnevenBalls
  | { readonly code: 'no-gap-in-cage'; readonly path: string }
  | {
      readonly code: 'reading-of-other-ring'
      readonly path: string
      readonly kind: ReadingKind
      readonly ring: FittedPart
    }
  | { readonly code: 'too-many-left-out'; readonly path: string; readonly given: number; readonly most: number }
  | { readonly code: 'target-band-empty'; readonly path: string; readonly min: Mm; readonly max: Mm }
  | { readonly code: 'aim-outside-band'; readonly path: string; readonly aim: Mm; readonly min: Mm; readonly max: Mm }
  | { readonly code: FitFault; readonly path: string }

/** The answer, as plain data. */
export interface FitCorrection {
  readonly resolved: ResolvedBalls
  readonly ring: FittedPart
  readonly target: Target
  readonly tools: { readonly sharpTool: ToolError; readonly abrasive: ToolError }
  readonly fit: Fit
  /** What a stroke of the abrasive takes off, where strokes were counted. */
  readonly stroke?: Stroke
  /** Of an outer groove, or plates, that are too deep. */
  readonly rescue?: readonly Rescue[]
  /** Of a split inner ring, where its mating faces can bring the play to the aim. */
  readonly adjustment?: MatingFaceAdjustment
}

/** What is cut, and what the design says of where to end. */
interface Ground {
  readonly resolved: ResolvedBalls
  readonly subject: Subject
  readonly workpiece?: Workpiece
  /** Of an inner ring. */
  readonly pair?: RingPair
  readonly band: Pick<Target, 'aim' | 'min' | 'max'>
}

/** Cut, measure or stop, of any arrangement and either ring. */
export function fitCorrection(input: FitCorrectionInput): Result<FitCorrection, Refused<FitRefusal>> {
  const found = groundOf(input)
  if (!found.ok) return found
  const { resolved, subject, workpiece, pair, band } = found.value
  const target = targetOf(input.target, band, resolved)
  const refusals = [...bandRefusals(target), ...readingRefusals(input, subject)]
  if (refusals.length > 0) return fail(refusedQuestion(refusals))
  const stroke = strokeOf(input.removalHistory, figurePerDepth(subject), checkDeviation(input))
  const tools = {
    sharpTool: input.tools.sharpTool ?? SHARP_TOOL,
    abrasive: input.tools.abrasive ?? ABRASIVE,
  }
  const answer = fitOf({
    subject,
    target,
    readings: input.readings,
    earlier: input.earlier,
    tools: { 'sharp-tool': tools.sharpTool, abrasive: tools.abrasive },
    ...(stroke === undefined ? {} : { stroke }),
    errorToCome: (kind) => errorToCome(input, kind),
  })
  if (!answer.ok) {
    const path = answer.error === 'readings-contradict' ? '/readings' : '/target'
    return fail(refusedQuestion([{ code: answer.error, path }]))
  }
  const fit = answer.value
  const adjustment = pair && matingFaceAdjustment(pair, fit.figure.value, target.aim)
  const isSpoilt = fit.state === 'too-deep' && workpiece !== undefined && subject.cuts === 'outer'
  return ok({
    resolved,
    ring: input.ring,
    target,
    tools,
    fit,
    ...(stroke === undefined ? {} : { stroke }),
    ...(adjustment === undefined ? {} : { adjustment }),
    ...(isSpoilt
      ? {
          rescue: rescues({
            subject,
            target,
            workpiece,
            ballsOnHand: input.ballsOnHand,
            x: fit.grooveRadius.value,
            ballDiameter: fit.ballDiameter.value,
          }),
        }
      : {}),
  })
}

function groundOf({ design, ring }: FitCorrectionInput): Result<Ground, Refused<FitRefusal>> {
  const { members, ballSet } = traitsOf(design)
  if ((ring === 'plate') !== (members === 'plates')) {
    throw new RangeError(`ring must be plate for plates and for nothing else, got ${ring}`)
  }
  if (ballSet === 'caged' && ring === 'outer') {
    return fail(refusedQuestion([{ code: 'no-gap-in-cage', path: '/ring' }]))
  }
  const made = echoedBearingFor(FIT_CORRECTION, design)
  if (!made.ok) return fail(refusedDesign(made.error))
  const bearing = made.value
  if ('cage' in bearing) {
    const { resolved } = bearing
    const band = playBand(resolved.radialInternalClearance)
    return ok({ resolved, subject: cagedInnerSubject(bearing), pair: bearing, band })
  }
  const { resolved } = bearing
  const uneven =
    'plate' in bearing
      ? unevenBalls(resolved, bearing.pitchRadius, tightestCircle)
      : unevenBalls(resolved, bearing.outerRing.grooveBottomDiameter / 2, tightestBottomRadius)
  if (uneven.length > 0) return fail(refusedQuestion(uneven))
  if ('plate' in bearing) {
    const workpiece = plateWorkpiece(bearing)
    return ok({ resolved, subject: plateSubject(bearing), workpiece, band: gapBand(resolved) })
  }
  if (ring === 'outer') {
    const workpiece = ringWorkpiece(bearing)
    return ok({ resolved, subject: outerSubject(bearing), workpiece, band: gapBand(resolved) })
  }
  const band = playBand(bearing.resolved.radialInternalClearance)
  return ok({ resolved, subject: innerSubject(bearing), pair: bearing, band })
}

interface GapBand {
  readonly ballGap: number
  readonly minBallGap: number
  readonly maxBallGap: number
}

const gapBand = ({ ballGap: aim, minBallGap: min, maxBallGap: max }: GapBand): Ground['band'] => ({ aim, min, max })

/** A play from half to twice the design's still runs well: common practice, no source. */
const playBand = (aim: number): Ground['band'] => ({ aim, min: aim / 2, max: 2 * aim })

/** What the maker said, and for the rest what the design says. */
function targetOf(said: Partial<Target>, band: Ground['band'], { finishAllowance }: ResolvedBalls): Target {
  const min = said.min ?? band.min
  const max = said.max ?? band.max
  return {
    min,
    max,
    aim: said.aim ?? Math.min(Math.max(band.aim, min), max),
    overshootRisk: said.overshootRisk ?? defaults.OVERSHOOT_RISK,
    finishAllowance: said.finishAllowance ?? finishAllowance,
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
const OF_BOTTOMS: readonly ReadingKind[] = ['groove-depth', 'plug']

function readingRefusals(
  { design, ring, readings, earlier }: FitCorrectionInput,
  subject: Subject,
): readonly FitRefusal[] {
  const { raceway } = traitsOf(design)
  const isCaged = subject.cuts === 'inner' && subject.outerKnown.by === 'groove'
  const isForeign = (kind: ReadingKind): boolean =>
    (ring !== 'inner' && OF_INNER_RINGS.includes(kind)) ||
    (isCaged && OF_FULL_RINGS.includes(kind)) ||
    (ring === 'plate' && OF_BOTTOMS.includes(kind)) ||
    (raceway === 'track' && kind === 'groove-depth')
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
  return usualError(kind, input.design.units) ?? { graduation: 0, standardUncertainty: defaults.BINDING_DOUBT }
}

const checkDeviation = (input: FitCorrectionInput): number =>
  readingDeviation(errorToCome(input, input.ring === 'inner' ? 'radial-play' : 'ball-gap'))
