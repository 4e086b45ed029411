import type { Static } from 'typebox'
import type { SelectionGoal } from '#shared/bearing/ball-choice.ts'
import type { BallSelection, BallSelectionInput, SelectionWarning } from '#shared/bearing/ball-selection.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { cautionsOf } from '#src/wire/caution.ts'
import { toDesignInput } from '#src/wire/design-input.ts'
import { show, toMm } from '#src/wire/length.ts'
import { present } from '#src/wire/optional.ts'
import type { Warning } from '#src/wire/warning.ts'
import type { BallSelectionRequest, BallSelectionResponse } from './schema.ts'
import { advice, explainNearness, explainOrders, explainWarning } from './sentences.ts'

/** The caller's input in the core's words. */
export function toBallSelectionInput(request: BallSelectionRequest): BallSelectionInput {
  const { design, measured, goal, grooveBottomDiameter } = request
  const { units } = design
  return present<BallSelectionInput>({
    design: toDesignInput(design),
    measured: measured.map((diameter) => toMm(diameter, units)),
    goal,
    grooveBottomDiameter: grooveBottomDiameter === undefined ? undefined : toMm(grooveBottomDiameter, units),
  })
}

const CRITERIA = {
  'close-groove': 'ball-gap',
  'least-groove-change': 'groove-radius',
  'least-spread': 'spread',
} as const satisfies Readonly<Record<SelectionGoal, string>>

/** A selection in the caller's units and in words. */
export function toBallSelectionResponse(selection: BallSelection): BallSelectionResponse {
  const { input, bearing, choice, orders, grooveChange } = selection
  const { settled } = bearing
  const { units } = input.design
  const size = (length: Mm) => show(length, units)
  return {
    units,
    goal: input.goal,
    advice: advice(selection),
    chosen: choice.balls.map(({ index, diameter }) => ({ index, diameter: size(diameter) })),
    leftOver: [...selection.leftOver],
    grooveBottomDiameter: size(selection.grooveBottomDiameter),
    target: {
      ballGap: size(settled.ballGap),
      minBallGap: size(settled.minBallGap),
      maxBallGap: size(settled.maxBallGap),
    },
    ballGap: size(selection.ballGap),
    mean: size(selection.mean),
    standardDeviation: size(selection.standardDeviation),
    spread: size(selection.spread),
    grooveChange: { radial: size(grooveChange), diametral: size(mm(2 * grooveChange)) },
    bounds: toBounds(selection),
    orderEffect: {
      leastBallGap: size(orders.least),
      mostBallGap: size(orders.most),
      message: explainOrders(selection),
    },
    warnings: selection.warnings.map((warning) => toWarning(warning, units)),
    cautions: cautionsOf(settled.input),
  }
}

function toBounds(selection: BallSelection): BallSelectionResponse['bounds'] {
  const { input, choice, reach } = selection
  const size = (length: number) => show(mm(length), input.design.units)
  return {
    of: CRITERIA[input.goal],
    missedBy: size(choice.missedBy),
    noneBelow: size(choice.noneBelow),
    atMostFromBest: size(choice.missedBy - choice.noneBelow),
    everyChoiceTried: choice.everyChoiceTried,
    ...(reach.least === undefined ? {} : { leastBallGap: size(reach.least) }),
    mostBallGap: size(reach.most),
    message: explainNearness(selection),
  }
}

const PATHS: Readonly<Record<SelectionWarning['facts']['code'], string>> = {
  'does-not-close': '/measured',
  'gap-below-band': '/design/minBallGap',
  'gap-above-band': '/design/maxBallGap',
  'gap-below-assembly-gap': '/design/ballGap',
  'rides-on-edges': '/design/groove',
}

const toWarning = ({ severity, facts, suggestion }: SelectionWarning, units: Units): Static<typeof Warning> => ({
  code: facts.code,
  severity,
  message: explainWarning(facts, units),
  path: PATHS[facts.code],
  ...(suggestion === undefined
    ? {}
    : { suggestion: { path: '/grooveBottomDiameter', value: show(suggestion, units) } }),
})
