import type { Static } from 'typebox'
import { traitsOf } from '#shared/bearing/arrangements.ts'
import type { FitCorrection } from '#shared/bearing/fit-correction/fit-correction.ts'
import type {
  FitCorrectionInput,
  FittedPart,
  FittedRing,
  Removal,
  Target,
  ToolError,
} from '#shared/bearing/fit-correction/input.ts'
import type { Rescue } from '#shared/bearing/fit-correction/rescue.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import type { Estimate } from '#shared/statistics/estimate.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { tagOf } from '#src/api/answer.ts'
import { cautionsOf } from '#src/api/caution.ts'
import { toDesignInput } from '#src/api/design-input.ts'
import { type Length, show, toMm } from '#src/api/length.ts'
import { present } from '#src/api/optional.ts'
import type { Fault } from '#src/http/problem.ts'
import { advice, disagreeing, explainAdjustment, explainRescue, nextReading, PARTS } from '#src/words/fit-correction.ts'
import { termsOf } from '#src/words/terms.ts'
import { toReading } from './readings.ts'
import {
  type CountedRemoval,
  type FitCorrectionRequest,
  type FitCorrectionResponse,
  type FitTarget,
  MOST_READINGS,
  type RingFitCorrectionResponse,
  type ThrustFitCorrectionResponse,
  type ToolErrorRequest,
} from './schema.ts'

/** The caller's input in the core's words, or what does not belong to the ring that is spoken of. */
export function toFitCorrectionInput(request: FitCorrectionRequest): Result<FitCorrectionInput, readonly Fault[]> {
  const { readings, earlier = [], tools = {}, removalHistory = [], ballsOnHand = [] } = request
  const { units } = request.design
  const part = partOf(request)
  if (!part.ok) return part
  const ring = part.value
  const target = toTarget(request.target ?? {}, ring, units)
  const removals = removalHistory.map((counted, index) =>
    toRemoval(counted, { ring, units, path: `/removalHistory/${index}` }),
  )
  const faults = [
    ...tooManyReadings(request),
    ...(target.ok ? [] : target.error),
    ...removals.flatMap((each) => (each.ok ? [] : each.error)),
  ]
  if (!target.ok || faults.length > 0) return fail(faults)
  return ok({
    design: toDesignInput(request.design),
    ring,
    readings: readings.map((reading) => toReading(reading, units)),
    earlier: earlier.map(({ readings: before, thenRemoved }) => ({
      readings: before.map((reading) => toReading(reading, units)),
      thenRemoved: { with: thenRemoved.with, radial: toMm(thenRemoved.radial, units) },
    })),
    target: target.value,
    tools: present<FitCorrectionInput['tools']>({
      sharpTool: tools.sharpTool && toToolError(tools.sharpTool, units),
      abrasive: tools.abrasive && toToolError(tools.abrasive, units),
    }),
    removalHistory: removals.flatMap((each) => (each.ok ? [each.value] : [])),
    ballsOnHand: ballsOnHand.map(({ diameter, quantity }) => ({ diameter: toMm(diameter, units), quantity })),
  })
}

/** Rings are told apart by name; plates are cut alike. */
function partOf({ ring, design }: FitCorrectionRequest): Result<FittedPart, readonly Fault[]> {
  if (traitsOf(design).members === 'rings') {
    return ring === undefined ? fail([{ path: '/ring', message: '"ring" is missing' }]) : ok(ring)
  }
  if (ring === undefined) return ok('plate')
  return fail([{ path: '/ring', message: 'is nothing that plates have, which are cut alike: leave it out' }])
}

/** The schema bounds each state; all of them together are what takes the time. */
function tooManyReadings({ readings, earlier = [] }: FitCorrectionRequest): readonly Fault[] {
  const given = earlier.reduce((sum, state) => sum + state.readings.length, readings.length)
  if (given <= MOST_READINGS) return []
  const message = `must hold at most ${MOST_READINGS} readings in all, those of now included; ${given} were given`
  return [{ path: '/earlier', message }]
}

const toToolError = ({ absolute, relative }: Static<typeof ToolErrorRequest>, units: Units): ToolError => ({
  absolute: toMm(absolute, units),
  relative,
})

/** How each part names the figure that is brought in band. */
const GAP = { aim: 'ballGap', min: 'minBallGap', max: 'maxBallGap' } as const
const NAMES = {
  outer: GAP,
  plate: GAP,
  inner: { aim: 'radialInternalClearance', min: 'minRadialInternalClearance', max: 'maxRadialInternalClearance' },
} as const

function toTarget(target: Static<typeof FitTarget>, ring: FittedPart, units: Units): Result<Target, readonly Fault[]> {
  const other = Object.values(NAMES[ring === 'inner' ? 'outer' : 'inner']).filter((name) => target[name] !== undefined)
  if (other.length > 0) {
    const names = Object.values(NAMES[ring]).join(', ')
    return fail(other.map((name) => ({ path: `/target/${name}`, message: `is not of ${PARTS[ring]}: give ${names}` })))
  }
  const { aim, min, max } = NAMES[ring]
  const size = (length: Length | undefined): Mm | undefined => (length === undefined ? undefined : toMm(length, units))
  return ok(
    present<Target>({
      aim: size(target[aim]),
      min: size(target[min]),
      max: size(target[max]),
      overshootRisk: target.overshootRisk,
      finishAllowance: size(target.finishAllowance),
    }),
  )
}

interface Place {
  readonly ring: FittedPart
  readonly units: Units
  readonly path: string
}

function toRemoval(
  counted: Static<typeof CountedRemoval>,
  { ring, units, path }: Place,
): Result<Removal, readonly Fault[]> {
  const before = counted[`${NAMES[ring].aim}Before`]
  const after = counted[`${NAMES[ring].aim}After`]
  if (before === undefined || after === undefined) {
    const name = NAMES[ring].aim
    return fail([{ path, message: `needs ${name}Before and ${name}After for ${PARTS[ring]}` }])
  }
  return ok({ strokes: counted.strokes, before: toMm(before, units), after: toMm(after, units) })
}

/** A fit of any arrangement, as it is answered. */
export const toFitAnswer = (fit: FitCorrection): FitCorrectionResponse =>
  fit.input.ring === 'plate' ? toThrustResponse(fit) : toRingResponse(fit, fit.input.ring)

function toRingResponse(fit: FitCorrection, ring: FittedRing): RingFitCorrectionResponse {
  const { units } = fit.input.design
  return present<RingFitCorrectionResponse>({
    arrangement: tagOf(fit.settled.input, 'radial', 'roller', 'caged'),
    units,
    ring,
    ...toStanding(fit),
    ballGap: ring === 'outer' ? toEstimate(fit.figure, units) : undefined,
    pitchRadius: fit.pitchRadius && toEstimate(fit.pitchRadius, units),
    ballDiameter: fit.ballDiameter && toEstimate(fit.ballDiameter, units),
    radialInternalClearance: ring === 'inner' ? toEstimate(fit.figure, units) : undefined,
    grooveBottomDiameter: toEstimate(fit.grooveBottomDiameter, units),
    ...toWork(fit),
    adjustment: toAdjustment(fit),
    rescue: fit.rescue?.map((each) => toRescue(each, fit)),
    cautions: cautionsOf(fit.settled),
  })
}

function toThrustResponse(fit: FitCorrection): ThrustFitCorrectionResponse {
  const { figure, pitchRadius, ballDiameter } = fit
  const { units } = fit.input.design
  if (pitchRadius === undefined || ballDiameter === undefined)
    throw new RangeError('fit must be one of a ring of balls')
  return present<ThrustFitCorrectionResponse>({
    units,
    arrangement: 'thrust',
    ...toStanding(fit),
    ballGap: toEstimate(figure, units),
    pitchRadius: toEstimate(pitchRadius, units),
    ballDiameter: toEstimate(ballDiameter, units),
    ...toWork(fit),
    rescue: fit.rescue?.map((each) => toRescue(each, fit)),
    cautions: cautionsOf(fit.settled),
  })
}

const toStanding = (fit: FitCorrection) => ({
  state: fit.state,
  confidence: fit.confidence,
  advice: advice(fit),
  probability: fit.probability,
})

function toWork(fit: FitCorrection) {
  const { input, target, nextStep, removalPerStroke } = fit
  const { units } = input.design
  const size = (length: number) => show(mm(length), units)
  return {
    target: {
      aim: size(target.aim),
      min: size(target.min),
      max: size(target.max),
      overshootRisk: target.overshootRisk,
      finishAllowance: size(target.finishAllowance),
    },
    remaining: { radial: size(fit.remaining), diametral: size(2 * fit.remaining) },
    nextStep: nextStep && {
      with: nextStep.tool,
      radial: size(nextStep.radial),
      diametral: size(2 * nextStep.radial),
      ...(nextStep.strokes === undefined ? {} : { strokes: nextStep.strokes }),
      overshootProbability: nextStep.overshootProbability,
    },
    stop: fit.stop,
    overshootProbability: fit.overshootProbability,
    expectedChecks: fit.expectedChecks,
    removalPerStroke: removalPerStroke && {
      radial: size(removalPerStroke.perStroke),
      relativeUncertainty: removalPerStroke.relativeUncertainty,
    },
    agreement: toAgreement(fit),
    bestNextReading: toNextReading(fit),
  }
}

const toEstimate = ({ value, standardUncertainty, interval95 }: Estimate, units: Units) => ({
  value: show(mm(value), units),
  standardUncertainty: show(mm(standardUncertainty), units),
  interval95: { low: show(mm(interval95.low), units), high: show(mm(interval95.high), units) },
})

function toAgreement({ disagreements, input }: FitCorrection): FitCorrectionResponse['agreement'] {
  const { units } = input.design
  const size = (length: number) => show(mm(length), units)
  return {
    agrees: disagreements.length === 0,
    disagreements: disagreements.map(({ index, kind, chance, expected }) => ({
      path: `/readings/${index}`,
      chance,
      ...(expected === undefined
        ? {}
        : { expected: { value: size(expected.value), low: size(expected.low), high: size(expected.high) } }),
      message: disagreeing(kind, termsOf(input.design)),
    })),
  }
}

function toNextReading({ bestNextReading, input, decidedByReading }: FitCorrection) {
  const { reading, uncertaintyNow, uncertaintyAfter } = bestNextReading
  const { units } = input.design
  return {
    kind: reading.kind,
    ...(reading.kind === 'ball-row' ? { count: reading.count } : {}),
    standardUncertaintyNow: show(mm(uncertaintyNow), units),
    standardUncertaintyAfter: show(mm(uncertaintyAfter), units),
    ...(decidedByReading === undefined ? {} : { decides: decidedByReading }),
    message: nextReading(reading, input.ring, termsOf(input.design)),
  }
}

function toAdjustment(fit: FitCorrection): RingFitCorrectionResponse['adjustment'] {
  const { adjustment, input } = fit
  if (adjustment === undefined) return undefined
  const { change, isWorthIt } = adjustment
  return {
    matingFaces: show(change, input.design.units),
    worthwhile: isWorthIt,
    message: explainAdjustment(adjustment, fit.state, {
      units: input.design.units,
      terms: termsOf(input.design),
    }),
  }
}

function toRescue(rescue: Rescue, fit: FitCorrection): NonNullable<FitCorrectionResponse['rescue']>[number] {
  const { units } = fit.input.design
  const lengths = Object.entries(rescue.lengths).map(([name, length]) => [name, show(length, units)] as const)
  return {
    option: rescue.option,
    possible: rescue.possible,
    ...(rescue.ballGap === undefined ? {} : { ballGap: show(rescue.ballGap, units) }),
    figures: Object.fromEntries([...lengths, ...Object.entries(rescue.counts)]),
    message: explainRescue(rescue, fit),
  }
}
