import type { Static } from 'typebox'
import { type DesignInput, nameOf } from '#shared/bearing/arrangements.ts'
import type { Standing } from '#shared/bearing/field.ts'
import type { ToolError } from '#shared/making/tool-error.ts'
import type { FitCorrection } from '#shared/questions/fit/fit-correction.ts'
import type { FittedPart } from '#shared/questions/fit/fit-setup.ts'
import { mm, type Units } from '#shared/units/length.ts'
import { type Assumption, assumptionsIn, toAssumptions } from '#src/api/assumption.ts'
import { designDefaults } from '#src/api/design-defaults.ts'
import { toDesignRequest } from '#src/api/design-input.ts'
import { echo, toMm } from '#src/api/length.ts'
import { present } from '#src/api/optional.ts'
import { ASSUMED, PRIORS } from '#src/words/fit-correction.ts'
import { NAMES } from './names.ts'
import { type ReadingRequest, toReading, toReadingRequest } from './readings.ts'
import type { CountedRemoval, EarlierState, FitCorrectionRequest, FitTarget } from './schema.ts'

type Row = Static<typeof Assumption>

/** The request with every default filled in: sent again, it gives the same answer. */
export function wholeRequest(correction: FitCorrection, request: FitCorrectionRequest): FitCorrectionRequest {
  const { ring, target, tools } = correction
  const { units } = request.design
  const { readings, earlier = [], removalHistory = [], ballsOnHand = [] } = request
  const size = (length: number) => echo(mm(length), units)
  const { aim, min, max } = NAMES[ring]
  const whole = (reading: ReadingRequest): ReadingRequest => toReadingRequest(toReading(reading, units), units)
  return present<FitCorrectionRequest>({
    // A bearing's own input is one of its arrangement.
    design: toDesignRequest(correction.resolved.input as DesignInput) as FitCorrectionRequest['design'],
    ring: ring === 'plate' ? undefined : ring,
    readings: readings.map(whole),
    earlier: earlier.map(
      ({ readings: before, thenRemoved }): Static<typeof EarlierState> => ({
        readings: before.map(whole),
        thenRemoved: { with: thenRemoved.with, radial: echo(toMm(thenRemoved.radial, units), units) },
      }),
    ),
    target: {
      [aim]: size(target.aim),
      [min]: size(target.min),
      [max]: size(target.max),
      overshootRisk: target.overshootRisk,
      ...(ring !== 'plate' && { finishAllowance: size(target.finishAllowance) }),
    },
    tools: { sharpTool: toolError(tools.sharpTool, units), abrasive: toolError(tools.abrasive, units) },
    removalHistory: removalHistory.map((counted) => countedRemoval(counted, ring, units)),
    ballsOnHand: ballsOnHand.map(({ diameter, quantity }) => ({
      diameter: echo(toMm(diameter, units), units),
      quantity,
    })),
  })
}

const toolError = ({ absolute, relative }: ToolError, units: Units) => ({
  absolute: echo(mm(absolute), units),
  relative,
})

function countedRemoval(
  counted: Static<typeof CountedRemoval>,
  ring: FittedPart,
  units: Units,
): Static<typeof CountedRemoval> {
  const { aim } = NAMES[ring]
  const [before, after] = [counted[`${aim}Before`], counted[`${aim}After`]]
  if (before === undefined || after === undefined) throw new RangeError(`counted must name ${aim} before and after`)
  return {
    strokes: counted.strokes,
    [`${aim}Before`]: echo(toMm(before, units), units),
    [`${aim}After`]: echo(toMm(after, units), units),
  }
}

const PRACTICE: Standing = 'common practice, no source'
const PLAIN: Standing = 'the plain case'

/** Every value that the request left open, and what is taken of a bearing before it is measured. */
export function assumedBy(
  correction: FitCorrection,
  request: FitCorrectionRequest,
  input: FitCorrectionRequest,
): Row[] {
  const { assumed, input: resolved } = correction.resolved
  const ofDesign = toAssumptions(assumed, nameOf(request.design), input.design, resolved.seasoned?.paths)
  const { earlier = [] } = request
  return [
    ...ofDesign.map((row) => ({ ...row, path: `/design${row.path}` })),
    ...assumptionsIn(request.design.making, input.design.making, designDefaults(resolved), '/design/making'),
    ...request.readings.flatMap((stated, index) => ofReading(stated, input.readings[index], `/readings/${index}`)),
    ...earlier.flatMap(({ readings }, at) =>
      readings.flatMap((stated, index) =>
        ofReading(stated, input.earlier?.[at]?.readings[index], `/earlier/${at}/readings/${index}`),
      ),
    ),
    ...ofTarget(correction, request.target ?? {}, input.target ?? {}),
    ...ofTools(request.tools ?? {}, input.tools ?? {}),
    ...PRIOR_ROWS,
  ]
}

const INSTRUMENTS: readonly string[] = ['groove-bottom-diameter', 'groove-depth', 'plug', 'radial-play']

function ofReading(stated: ReadingRequest, whole: ReadingRequest | undefined, path: string): readonly Row[] {
  if (
    whole === undefined ||
    !('graduation' in whole) ||
    !('graduation' in stated || 'value' in stated || 'diameter' in stated)
  )
    return []
  const isInstrument = INSTRUMENTS.includes(stated.kind)
  const { graduation, standardUncertainty } = stated
  const rows: Row[] = []
  const add = (name: string, value: unknown, reason: string, standing: Standing): void => {
    if (typeof value === 'number') rows.push({ path: `${path}/${name}`, value, reason, standing })
  }
  if (stated.kind === 'last-ball-opening' && stated.ballsLeftOut === undefined)
    add('ballsLeftOut', 1, ASSUMED.oneLeftOut, PLAIN)
  if (graduation === undefined) {
    const usual = isInstrument ? ASSUMED.instrumentGraduation : ASSUMED.ruleGraduation
    const isGiven = standardUncertainty !== undefined
    add('graduation', whole.graduation, isGiven ? ASSUMED.unrounded : usual, isGiven ? PLAIN : PRACTICE)
  }
  if (standardUncertainty === undefined) {
    const usual = isInstrument ? ASSUMED.instrumentHand : ASSUMED.ruleHand
    const reason = graduation === undefined ? usual : ASSUMED.handOfGraduation
    add('standardUncertainty', whole.standardUncertainty, reason, PRACTICE)
  }
  return rows
}

type TargetRequest = Static<typeof FitTarget>

function ofTarget({ ring }: FitCorrection, stated: TargetRequest, whole: TargetRequest): readonly Row[] {
  const { aim, min, max } = NAMES[ring]
  const isPlay = ring === 'inner'
  const reasons: readonly (readonly [keyof TargetRequest, string, Standing])[] = [
    [aim, ASSUMED.ofDesign, PLAIN],
    [min, isPlay ? ASSUMED.halfThePlay : ASSUMED.ofDesign, isPlay ? PRACTICE : PLAIN],
    [max, isPlay ? ASSUMED.twiceThePlay : ASSUMED.ofDesign, isPlay ? PRACTICE : PLAIN],
    ['overshootRisk', ASSUMED.overshootRisk, PRACTICE],
    ['finishAllowance', ASSUMED.ofDesign, PLAIN],
  ]
  return reasons.flatMap(([name, reason, standing]) => {
    const value = whole[name]
    return stated[name] !== undefined || value === undefined
      ? []
      : [{ path: `/target/${name}`, value, reason, standing }]
  })
}

type ToolsRequest = NonNullable<FitCorrectionRequest['tools']>

function ofTools(stated: ToolsRequest, whole: ToolsRequest): readonly Row[] {
  return (['sharpTool', 'abrasive'] as const).flatMap((name) => {
    const error = whole[name]
    if (stated[name] !== undefined || error === undefined) return []
    return (['absolute', 'relative'] as const).map((part) => ({
      path: `/tools/${name}/${part}`,
      value: error[part],
      reason: ASSUMED.tool,
      standing: PRACTICE,
    }))
  })
}

/** They are no fields of the request: each is shown where it acts. */
const PRIOR_ROWS: readonly Row[] = [
  { path: '/readings', ...PRIORS.groove, standing: PRACTICE },
  { path: '/readings', ...PRIORS.threshold, standing: PRACTICE },
  { path: '/readings', ...PRIORS.readingBias, standing: PRACTICE },
  { path: '/design/balls', ...PRIORS.lotMean, standing: PRACTICE },
  { path: '/design/balls', ...PRIORS.scatter, standing: PRACTICE },
  { path: '/tools', ...PRIORS.toolBias, standing: PRACTICE },
]
