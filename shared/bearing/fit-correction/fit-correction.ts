import { bearingFor, traitsOf } from '#shared/bearing/arrangements.ts'
import { type Refused, refusedDesign, refusedQuestion } from '#shared/bearing/refusal.ts'
import type { SettledBalls } from '#shared/bearing/resolve.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { type Belief, believe, type Fineness, type Stage } from '#shared/statistics/belief.ts'
import { type Estimate, estimate } from '#shared/statistics/estimate.ts'
import { readingDeviation } from '#shared/statistics/likelihood.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { type Disagreement, disagreements } from './agreement.ts'
import * as defaults from './defaults.ts'
import { errorToCome } from './error-to-come.ts'
import { type GapModel, gapModel } from './gap-model.ts'
import type { GrooveUnderWay } from './groove-under-way.ts'
import { type InnerModel, innerModel } from './inner-model.ts'
import { type InnerUnderWay, insideCagedBalls, insideFullRing } from './inner-under-way.ts'
import { FIT_CORRECTION, type FitCorrectionInput, type Reading, type ToolError, type ToolName } from './input.ts'
import { type MatingFaceAdjustment, matingFaceAdjustment } from './mating-faces.ts'
import type { FitState } from './names.ts'
import { bestNextReading, type NextReading } from './next-reading.ts'
import { cutDeviation, type Plan, type PlannedTool, planCuts } from './plan.ts'
import { plateGroove } from './plate-groove.ts'
import { type FitRefusal, impossibleReadings, unevenBalls } from './refusal.ts'
import { type Rescue, rescues } from './rescue.ts'
import { ringGroove } from './ring-groove.ts'
import { chanceBelow, type Room, roomOf } from './room.ts'
import { type RemovalPerStroke, removalPerStroke } from './strokes.ts'
import { bandRefusals, gapBandOf, type OfDesign, playBandOf, type SettledTarget, settledTarget } from './target.ts'

interface NextStep {
  readonly tool: ToolName
  readonly radial: Mm
  readonly strokes?: number
  readonly overshootProbability: number
}

/** Where the groove stands, and what to do about it. Lengths in millimetres. */
export interface FitCorrection {
  readonly settled: SettledBalls
  readonly input: FitCorrectionInput
  readonly target: SettledTarget
  readonly state: FitState
  readonly confidence: number
  readonly probability: { readonly tooTight: number; readonly inBand: number; readonly tooDeep: number }
  /** Ball gap, or radial internal clearance for the inner ring. */
  readonly figure: Estimate
  /** Where the figure is the ball gap: pitch radius and mean ball diameter. */
  readonly pitchRadius?: Estimate
  readonly ballDiameter?: Estimate
  readonly grooveBottomDiameter: Estimate
  /** From here to the aim, radially: above 0 wood to remove. */
  readonly remaining: Mm
  readonly nextStep?: NextStep
  /** Cut no more and read no more: there is nothing left that would make the groove better or surer. */
  readonly stop: boolean
  /** The chance that one more reading makes clear what to do, where that is not clear. */
  readonly decidedByReading?: number
  readonly overshootProbability: number
  readonly expectedChecks: number
  readonly removalPerStroke?: RemovalPerStroke
  readonly disagreements: readonly Disagreement[]
  readonly bestNextReading: NextReading
  /** Of a split inner ring, where its mating faces can bring the play to the aim. */
  readonly adjustment?: MatingFaceAdjustment
  /** Of an outer groove that is too deep. */
  readonly rescue?: readonly Rescue[]
}

/**
 * I have cut, I have measured: how much more comes off, with what, and how risky is that?
 *
 * What is believed of the groove (and, for the outer ring, of the balls' mean) is worked out numerically from every
 * reading now and before, no shape assumed; the next cut is then planned for the fewest checks under the limit on
 * ending too deep.
 *
 * @returns the answer, or why the bearing cannot be, or which readings no groove could give
 */
export function fitCorrection(input: FitCorrectionInput): Result<FitCorrection, Refused<FitRefusal>> {
  const found = groundOf(input)
  if (!found.ok) return found
  const { groove } = found.value
  const uneven = groove === undefined ? [] : unevenBalls(groove)
  if (uneven.length > 0) return fail(refusedQuestion(uneven))
  const cut = cutOf(found.value)
  const { model } = cut
  const target = settledTarget(input, cut.ofDesign)
  const impossible = [...bandRefusals(target), ...impossibleReadings(input, model)]
  if (impossible.length > 0) return fail(refusedQuestion(impossible))
  const tools = {
    sharpTool: input.tools.sharpTool ?? defaults.SHARP_TOOL,
    abrasive: input.tools.abrasive ?? defaults.ABRASIVE,
  }
  const believing = (readings: readonly Reading[], fineness?: Fineness) =>
    believe(model.prior, stagesOf(input, readings, model, tools), fineness)
  const belief = believing(input.readings)
  if (belief === undefined) return fail(refusedQuestion([{ code: 'readings-contradict', path: '/readings' }]))
  const room = roomUnder({ belief, model, target })
  // A groove as deep as its radius grows no deeper for a ball on its edges.
  if (!(room.band > 0 && model.figurePerX > 0))
    return fail(refusedQuestion([{ code: 'target-out-of-reach', path: '/target', min: target.min, max: target.max }]))
  const others = (leftOut: number, fineness: Fineness) =>
    believing(
      input.readings.filter((_, index) => index !== leftOut),
      fineness,
    )
  return ok(answered({ input, cut, target, tools, belief, room }, disagreements(input.readings, model, belief, others)))
}

/** What is cut: the groove that holds a full ring of balls, or the inner ring inside them. */
type Ground =
  | { readonly groove: GrooveUnderWay; readonly inner?: undefined }
  | { readonly groove?: GrooveUnderWay; readonly inner: InnerUnderWay }

function groundOf({ design, ring }: FitCorrectionInput): Result<Ground, Refused<FitRefusal>> {
  if ((ring === 'plate') !== (traitsOf(design).members === 'plates')) {
    throw new RangeError(`ring must be plate for plates and for nothing else, got ${ring}`)
  }
  if (traitsOf(design).ballSet === 'caged' && ring === 'outer') {
    return fail(refusedQuestion([{ code: 'no-gap-in-cage', path: '/ring' }]))
  }
  const made = bearingFor(FIT_CORRECTION, design)
  if (!made.ok) return fail(refusedDesign(made.error))
  const bearing = made.value
  if ('plate' in bearing) return ok({ groove: plateGroove(bearing) })
  if ('cage' in bearing) return ok({ inner: insideCagedBalls(bearing) })
  const groove = ringGroove(bearing)
  return ok(ring === 'outer' ? { groove } : { groove, inner: insideFullRing(bearing) })
}

/** What is cut, as a model of what is not known of it. */
type Cut = {
  readonly settled: SettledBalls
  readonly ofDesign: OfDesign
} & (
  | { readonly model: GapModel; readonly groove: GrooveUnderWay; readonly inner?: undefined }
  | { readonly model: InnerModel; readonly inner: InnerUnderWay }
)

function cutOf({ groove, inner }: Ground): Cut {
  if (inner === undefined) {
    const { settled } = groove
    return { settled, groove, ofDesign: gapBandOf(settled), model: gapModel(groove) }
  }
  const { settled } = inner.pair
  return { settled, inner, ofDesign: playBandOf(settled), model: innerModel(inner) }
}

type Tools = Readonly<Record<'sharpTool' | 'abrasive', ToolError>>

const errorOf = (tools: Tools, name: ToolName): ToolError => (name === 'abrasive' ? tools.abrasive : tools.sharpTool)

/** No cut comes out truer than this: the doubt of a tool said to be without error. */
const TRUEST_CUT = 1e-4

function stagesOf(
  input: FitCorrectionInput,
  now: readonly Reading[],
  model: Cut['model'],
  tools: Tools,
): readonly Stage[] {
  const before = input.earlier.map(({ readings, thenRemoved }): Stage => {
    const deviation = cutDeviation(errorOf(tools, thenRemoved.with), thenRemoved.radial)
    return {
      evidence: readings.map(model.evidence),
      thenCut: { mean: thenRemoved.radial, standardDeviation: Math.max(deviation, TRUEST_CUT) },
    }
  })
  return [...before, { evidence: now.map(model.evidence) }]
}

interface Known {
  readonly input: FitCorrectionInput
  readonly cut: Cut
  readonly target: SettledTarget
  readonly tools: Tools
  readonly belief: Belief
  readonly room: Room
}

function answered(known: Known, disagreeing: readonly Disagreement[]): FitCorrection {
  const { input, cut, target, tools, belief, room } = known
  const { model } = cut
  const tooDeep = chanceBelow(room, 0)
  const inBand = Math.max(0, chanceBelow(room, room.band) - tooDeep)
  const errorOf = errorToCome(input)
  const nextReading = bestNextReading(belief, model, errorOf)
  const checkDeviation = readingDeviation(errorOf(...model.checks))
  const perStroke = removalPerStroke(input.removalHistory, model.figurePerX, checkDeviation)
  const figure = estimate(belief, model.figure)
  const adjustment = cut.inner && matingFaceAdjustment(cut.inner.pair, figure.value, target.aim)
  const grooveBottomDiameter = estimate(belief, (x) => 2 * Math.abs(x))
  const plan = planCuts({
    room,
    tools: plannedTools(tools, perStroke),
    readingDeviation: checkDeviation / model.figurePerX,
    deviationIfReadAgain: room.standardDeviation * shareLeftBy(nextReading),
    overshootRisk: target.overshootRisk,
  })
  const step = plan.step === undefined ? undefined : nextStepOf(plan.step)
  const state = tooDeep > 0.5 ? 'too-deep' : inBand >= defaults.CONFIDENCE ? 'in-band' : 'more-to-remove'
  return {
    settled: cut.settled,
    input,
    target,
    state,
    confidence: defaults.CONFIDENCE,
    probability: { tooTight: Math.max(0, 1 - inBand - tooDeep), inBand, tooDeep },
    figure,
    ...(adjustment === undefined ? {} : { adjustment }),
    grooveBottomDiameter,
    ...(cut.inner === undefined && ofTheBalls(known, cut, { state, grooveBottomDiameter })),
    remaining: mm(room.mean - room.aim),
    ...(step === undefined ? {} : { nextStep: step }),
    stop: step === undefined && (plan.decidedByReading ?? 0) < defaults.WORTH_READING_AGAIN,
    ...(plan.decidedByReading === undefined ? {} : { decidedByReading: plan.decidedByReading }),
    overshootProbability: plan.overshoot,
    expectedChecks: plan.checks,
    ...(perStroke === undefined ? {} : { removalPerStroke: perStroke }),
    disagreements: disagreeing,
    bestNextReading: nextReading,
  }
}

function ofTheBalls(
  { belief, input, target }: Known,
  { groove, model }: Extract<Cut, { readonly inner?: undefined }>,
  { state, grooveBottomDiameter }: Pick<FitCorrection, 'state' | 'grooveBottomDiameter'>,
): Pick<FitCorrection, 'pitchRadius' | 'ballDiameter' | 'rescue'> {
  const ballDiameter = estimate(belief, (_x, y) => y)
  const found = { pitchRadius: estimate(belief, model.pitchRadius), ballDiameter }
  if (state !== 'too-deep') return found
  const { ballsOnHand } = input
  const x = mm(grooveBottomDiameter.value / 2)
  return {
    ...found,
    rescue: rescues({ groove, model, target, ballsOnHand, x, ballDiameter: mm(ballDiameter.value) }),
  }
}

/** Room before the finish comes on: a groove that is to be filmed may be cut deeper by that film. */
type Held = Pick<Known, 'belief' | 'target'> & { readonly model: Cut['model'] }

function roomUnder({ belief, model, target }: Held): Room {
  const finish = model.xPerFinish * target.finishAllowance
  return roomOf(belief, {
    deepest: (y) => model.xFor(target.max, y) + finish,
    shallowest: (y) => model.xFor(target.min, y) + finish,
    aim: (y) => model.xFor(target.aim, y) + finish,
  })
}

/** What a reading leaves of the doubt, as a share of it. */
const shareLeftBy = ({ uncertaintyNow, uncertaintyAfter }: NextReading): number =>
  uncertaintyNow > 0 ? uncertaintyAfter / uncertaintyNow : 1

function plannedTools(tools: Tools, perStroke: RemovalPerStroke | undefined): readonly PlannedTool[] {
  const { absolute, relative } = tools.abrasive
  const abrasive = { name: 'abrasive', absolute, most: defaults.MOST_AT_ONCE.abrasive } as const
  return [
    perStroke === undefined
      ? { ...abrasive, relative }
      : {
          ...abrasive,
          relative: Math.hypot(relative, perStroke.relativeUncertainty),
          stroke: perStroke.perStroke,
        },
    { name: 'sharp-tool', ...tools.sharpTool, most: defaults.MOST_AT_ONCE['sharp-tool'] },
  ]
}

/** In strokes, too, where they have been counted. */
function nextStepOf({ tool, depth, overshoot }: NonNullable<Plan['step']>): NextStep {
  const { name, stroke } = tool
  const strokes = stroke === undefined ? {} : { strokes: Math.round(depth / stroke) }
  return { tool: name, radial: mm(depth), ...strokes, overshootProbability: overshoot }
}
