import type { Static } from 'typebox'
import { nameOf } from '#shared/bearing/arrangements.ts'
import { FIT_CORRECTION_SOURCES } from '#shared/data/sources.ts'
import type { ToolError } from '#shared/making/tool-error.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { fittedOf } from '#shared/questions/fit/arrangements/all.ts'
import { askedReading } from '#shared/questions/fit/asked-reading.ts'
import type { Estimate } from '#shared/questions/fit/estimate.ts'
import type { FitCorrection, FitCorrectionInput } from '#shared/questions/fit/fit-correction.ts'
import type { FittedPart } from '#shared/questions/fit/fit-setup.ts'
import type { Rescue } from '#shared/questions/fit/rescue.ts'
import type { CountedRemoval as Counted } from '#shared/questions/fit/stroke.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { mm, type Units } from '#shared/units/length.ts'
import { answer } from '#src/api/answer.ts'
import { cautionsOf } from '#src/api/caution.ts'
import { toDesignInput } from '#src/api/design-input.ts'
import { ANSWERS, type FitCorrectionResponse } from '#src/api/fit-correction/arrangements/all.ts'
import { type Length, show, toMm } from '#src/api/length.ts'
import { showNumber } from '#src/api/number.ts'
import { present } from '#src/api/optional.ts'
import { shownBy } from '#src/api/schema.ts'
import { toSource } from '#src/api/source.ts'
import type { Fault } from '#src/http/problem.ts'
import {
  countedWithout,
  disagreeing,
  explainAdjustment,
  explainRescue,
  fitSummary,
  livingWith,
  NO_FINISH_OF_PLATES,
  nextReadingSentence,
  RING_MISSING,
  RING_OF_NONE,
  targetOfOtherPart,
  tooManyReadings,
} from '#src/words/fit-correction.ts'
import { termsOf } from '#src/words/terms.ts'
import { assumedBy, wholeRequest } from './echo.ts'
import { NAMES } from './names.ts'
import { toReading } from './readings.ts'
import {
  type CountedRemoval,
  type FitCorrectionRequest,
  type FitTarget,
  MOST_READINGS,
  NextReading,
  type RescueOption,
  type ToolErrorRequest,
} from './schema.ts'

/** The caller's input in the core's words, or what does not belong to the part that is being cut. */
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
    ...faultsOfNumber(request),
    ...(target.ok ? [] : target.error),
    ...removals.flatMap((each) => (each.ok ? [] : each.error)),
  ]
  if (!target.ok || faults.length > 0) return fail(faults)
  return ok({
    design: toDesignInput(request.design, '/design'),
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

/** Chosen by the caller where there are several. */
function partOf({ ring, design }: FitCorrectionRequest): Result<FittedPart, readonly Fault[]> {
  const { parts } = fittedOf(design)
  const [only] = parts
  if (parts.length === 1 && only !== undefined)
    return ring === undefined ? ok(only) : fail([{ path: '/ring', message: RING_OF_NONE }])
  return ring === undefined ? fail([{ path: '/ring', message: RING_MISSING }]) : ok(ring)
}

/** The schema bounds each state; all of them together are what takes the time. */
function faultsOfNumber({ readings, earlier = [] }: FitCorrectionRequest): readonly Fault[] {
  const total = earlier.reduce((sum, state) => sum + state.readings.length, readings.length)
  return total <= MOST_READINGS ? [] : [{ path: '/earlier', message: tooManyReadings(total, MOST_READINGS) }]
}

const toToolError = ({ absolute, relative }: Static<typeof ToolErrorRequest>, units: Units): ToolError => ({
  absolute: toMm(absolute, units),
  relative,
})

function toTarget(
  target: Static<typeof FitTarget>,
  ring: FittedPart,
  units: Units,
): Result<FitCorrectionInput['target'], readonly Fault[]> {
  const other = Object.values(namesOfOther(ring)).filter((name) => target[name] !== undefined)
  const message = targetOfOtherPart(ring, Object.values(NAMES[ring]))
  const faults = [
    ...other.map((name) => ({ path: `/target/${name}`, message })),
    ...(ring === 'plate' && target.finishAllowance !== undefined
      ? [{ path: '/target/finishAllowance', message: NO_FINISH_OF_PLATES }]
      : []),
  ]
  if (faults.length > 0) return fail(faults)
  const { aim, min, max } = NAMES[ring]
  const size = (length: Length | undefined) => (length === undefined ? undefined : toMm(length, units))
  return ok(
    present<FitCorrectionInput['target']>({
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
): Result<Counted, readonly Fault[]> {
  const names = countedNames(NAMES[ring])
  const other = countedNames(namesOfOther(ring)).filter((name) => counted[name] !== undefined)
  if (other.length > 0)
    return fail(other.map((name) => ({ path: `${path}/${name}`, message: targetOfOtherPart(ring, names) })))
  const [before, after] = names.map((name) => counted[name])
  if (before === undefined || after === undefined) return fail([{ path, message: countedWithout(ring, names) }])
  return ok({ strokes: counted.strokes, before: toMm(before, units), after: toMm(after, units) })
}

const namesOfOther = (ring: FittedPart) => NAMES[ring === 'inner' ? 'outer' : 'inner']
const countedNames = ({ aim }: (typeof NAMES)[FittedPart]) => [`${aim}Before`, `${aim}After`] as const

/** A fit of any arrangement, in the caller's units and in words. */
export function toFitAnswer(correction: FitCorrection, request: FitCorrectionRequest): FitCorrectionResponse {
  const { units } = request.design
  const arrangement = nameOf(request.design)
  const { size } = ANSWERS[arrangement]
  const { ring, fit } = correction
  const figure = toEstimate(fit.figure, units)
  // Names that only some arrangements have; the tests hold whole answers against each one's schema.
  const now: object = {
    ring: ring === 'plate' ? undefined : ring,
    [ring === 'inner' ? 'radialInternalClearance' : 'ballGap']: figure,
  }
  const cut: object = { [size]: toDiameter(correction, units), nextStep: toNextStep(correction, units, size) }
  const whole = answer(
    { arrangement, ...toHead(correction, request) },
    {
      ...toStanding(correction),
      ...now,
      pitchRadius: toEstimate(fit.pitchRadius, units),
      ballDiameter: toEstimate(fit.ballDiameter, units),
      ...cut,
      ...toWork(correction, request),
      adjustment: toAdjustment(correction, units),
    },
    toFoot(correction, request),
  )
  return present<object>(whole) as FitCorrectionResponse
}

function toHead(correction: FitCorrection, request: FitCorrectionRequest) {
  const { units } = request.design
  const input = wholeRequest(correction, request)
  return {
    units,
    input,
    assumed: assumedBy(correction, request, input),
    summary: fitSummary(correction, units, termsOf(request.design)),
  }
}

const toStanding = ({ fit }: FitCorrection) => ({
  action: fit.action,
  reason: fit.action === 'stop' ? fit.reason : undefined,
  state: fit.state,
  confidence: fit.confidence,
  probability: {
    tooTight: showNumber(fit.probability.tooTight),
    inBand: showNumber(fit.probability.inBand),
    tooDeep: showNumber(fit.probability.tooDeep),
  },
})

const toDiameter = ({ fit }: FitCorrection, units: Units) => {
  const { value, standardUncertainty, interval95 } = fit.grooveRadius
  return toEstimate(
    {
      value: 2 * value,
      standardUncertainty: 2 * standardUncertainty,
      interval95: { min: 2 * interval95.min, max: 2 * interval95.max },
    },
    units,
  )
}

function toNextStep({ fit }: FitCorrection, units: Units, name: string) {
  if (fit.action !== 'cut') return undefined
  const { nextStep } = fit
  const size = (length: number) => show(mm(length), units)
  return {
    with: nextStep.with,
    radial: size(nextStep.radial),
    diametral: size(2 * nextStep.radial),
    until: { [name]: size(nextStep.until.grooveBottomDiameter) },
    isSizeKnown: nextStep.isSizeKnown,
    ...(nextStep.strokes === undefined ? {} : { strokes: nextStep.strokes }),
    overshootProbability: showNumber(nextStep.overshootProbability),
  }
}

function toWork(correction: FitCorrection, request: FitCorrectionRequest) {
  const { fit, stroke, rescue } = correction
  const { units } = request.design
  const size = (length: number) => show(mm(length), units)
  const { toolBias, handBias } = fit.learnt
  return {
    remaining: { radial: size(fit.remaining), diametral: size(2 * fit.remaining) },
    nextReading: toNextReading(correction, units),
    askedReading: toAskedReading(correction),
    overshootProbability: showNumber(fit.overshootProbability),
    expectedChecks: showNumber(fit.expectedChecks),
    agreement: toAgreement(correction, request),
    learnt: {
      toolBias: {
        value: showNumber(toolBias.value),
        standardUncertainty: showNumber(toolBias.standardUncertainty),
        interval95: { min: showNumber(toolBias.interval95.min), max: showNumber(toolBias.interval95.max) },
      },
      readingBias: toEstimate(handBias, units),
      ...(stroke === undefined
        ? {}
        : {
            removalPerStroke: {
              radial: size(stroke.radial),
              relativeUncertainty: showNumber(stroke.relativeUncertainty),
            },
          }),
    },
    rescue: rescue?.map((each) => toRescue(each, correction, units)),
  }
}

const toEstimate = ({ value, standardUncertainty, interval95 }: Estimate, units: Units) => ({
  value: show(mm(value), units),
  standardUncertainty: show(mm(standardUncertainty), units),
  interval95: { min: show(mm(interval95.min), units), max: show(mm(interval95.max), units) },
})

function toNextReading(correction: FitCorrection, units: Units) {
  const { fit, resolved } = correction
  if (fit.action !== 'measure') return undefined
  const { nextReading } = fit
  const { expected, uncertaintyNow, uncertaintyAfter } = nextReading
  const message = nextReadingSentence(correction, nextReading, units, termsOf(resolved.input))
  const [standardUncertaintyNow, standardUncertaintyAfter] = [mm(uncertaintyNow), mm(uncertaintyAfter)]
  return shownBy(
    NextReading,
    {
      ...nextReading,
      expected: expected === undefined ? undefined : mm(expected),
      standardUncertaintyNow,
      standardUncertaintyAfter,
      message,
    },
    units,
  )
}

function toAskedReading(correction: FitCorrection) {
  const asked = askedReading(correction)
  if (asked === undefined) return undefined
  const { expected: _, ...told } = asked
  return told
}

function toAgreement({ fit, resolved }: FitCorrection, request: FitCorrectionRequest) {
  const { units } = request.design
  const size = (length: number) => show(mm(length), units)
  const isAlone = fit.readingsMade.ever === 1
  return {
    agrees: fit.disagreements.length === 0,
    disagreements: fit.disagreements.map(({ index, chance, expected, mistakenFor }) => ({
      path: `/readings/${index}`,
      chance,
      ...(expected === undefined
        ? {}
        : { expected: { value: size(expected.value), min: size(expected.min), max: size(expected.max) } }),
      message: disagreeing(
        {
          kind: itemAt(request.readings, index).kind,
          isAlone,
          ...(mistakenFor !== undefined && { mistaken: mistakenFor.kind }),
        },
        termsOf(resolved.input),
      ),
    })),
  }
}

function toAdjustment({ adjustment }: FitCorrection, units: Units) {
  if (adjustment === undefined) return undefined
  const { change } = adjustment
  return {
    matingFaces: show(change, units),
    message: explainAdjustment(change, units),
  }
}

type ShownRescue = Static<typeof RescueOption>

/** Figures of a rescue that are no lengths. */
const PLAIN: ReadonlySet<string> = new Set(['ballCount', 'replacedCount', 'spacerCount', 'shareOfBall'])

function toRescue(rescue: Rescue, { resolved }: FitCorrection, units: Units): ShownRescue {
  const terms = termsOf(resolved.input)
  const { raceway } = resolved.traits
  // Which lots make no full set is told in the message, and so is what the inner ring is turned to.
  const { inner, innerToCut: _cut, passedOver: _lots, ...figures } = { passedOver: undefined, ...rescue }
  const shown = (figures: object): object =>
    Object.fromEntries(
      Object.entries(figures).map(([name, figure]) => [
        name,
        typeof figure !== 'number' ? figure : PLAIN.has(name) ? showNumber(figure) : show(mm(figure), units),
      ]),
    )
  // The schema of each option has the same names; its contract tests hold every option against it.
  return present<ShownRescue>({
    ...shown(figures),
    until: 'until' in rescue && rescue.until ? shown(toSizes(rescue.until, resolved)) : undefined,
    innerRing: inner && shown(raceway === 'track' ? { trackDiameter: inner.grooveBottomDiameter } : inner),
    message: explainRescue(rescue, units, terms),
    livingWithIt: rescue.possible || rescue.option === 'accept' ? livingWith(rescue, terms) : undefined,
  } as ShownRescue)
}

/** The sizes at which a cut ends, as an arrangement calls them. */
function toSizes(
  { grooveBottomDiameter, grooveDepth }: { readonly grooveBottomDiameter: number; readonly grooveDepth: number },
  { input, traits }: FitCorrection['resolved'],
): object {
  const size = ANSWERS[nameOf(input as Parameters<typeof nameOf>[0])].size
  return { [size]: grooveBottomDiameter, ...(traits.raceway === 'track' ? {} : { grooveDepth }) }
}

const SOURCES = FIT_CORRECTION_SOURCES.map(toSource)

const toFoot = (correction: FitCorrection, request: FitCorrectionRequest) => ({
  warnings: toAgreement(correction, request).disagreements.map(({ path, message }) => ({
    code: 'reading-disagrees',
    severity: 'risk' as const,
    message,
    path,
  })),
  cautions: cautionsOf(correction.resolved),
  sources: SOURCES,
})
