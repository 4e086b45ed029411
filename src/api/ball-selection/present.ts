import type { Static } from 'typebox'
import type { ThrustBearing } from '#shared/bearing/arrangements.ts'
import type { SourceId } from '#shared/data/sources.ts'
import type { PlateAtRest } from '#shared/geometry/plate-on-balls.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import type { SelectionGoal } from '#shared/questions/selection/ball-choice.ts'
import { grooveFieldOf } from '#shared/questions/selection/ball-place.ts'
import type { BallSelection, BallSelectionInput, SelectionWarning } from '#shared/questions/selection/ball-selection.ts'
import { GROOVE_FIELDS } from '#shared/questions/selection/fields.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { answer, tagOf } from '#src/api/answer.ts'
import { assumptionsIn, defaultsOf, designDefaults } from '#src/api/assumption.ts'
import { cautionsOf } from '#src/api/caution.ts'
import { toDesignInput, toDesignRequest } from '#src/api/design-input.ts'
import { fromRequest } from '#src/api/fields.ts'
import { echo, show, toMm } from '#src/api/length.ts'
import { showNumber } from '#src/api/number.ts'
import { toSource } from '#src/api/source.ts'
import type { Warning } from '#src/api/warning.ts'
import { advice, explainNearness, explainOrders, explainRest, explainWarning } from '#src/words/ball-selection.ts'
import { termsOf } from '#src/words/terms.ts'
import type { BallSelectionRequest, BallSelectionResponse, ThrustBallSelectionResponse } from './schema.ts'

/** The caller's input in the core's words. */
export function toBallSelectionInput(request: BallSelectionRequest): BallSelectionInput {
  const { design, measured, goal } = request
  const { units } = design
  return {
    design: toDesignInput(design),
    measured: measured.map((diameter) => toMm(diameter, units)),
    goal,
    ...fromRequest(GROOVE_FIELDS, request, units),
  }
}

const SOURCES: readonly SourceId[] = ['derived', 'trade']

const CRITERIA = {
  'close-groove': 'ball-gap',
  'least-groove-change': 'groove-radius',
  'least-spread': 'spread',
} as const satisfies Readonly<Record<SelectionGoal, string>>

/** A selection of any arrangement, as it is answered: in the caller's units and in words. */
export function toSelectionAnswer(selection: BallSelection, request: BallSelectionRequest): BallSelectionResponse {
  const { bearing, atRest } = selection
  const { units } = request.design
  const head = { units, ...toEcho(selection, request), summary: advice(selection) }
  const foot = {
    warnings: selection.warnings.map((warning) => toWarning(warning, selection)),
    cautions: cautionsOf(bearing.resolved),
    sources: SOURCES.map(toSource),
  }
  const chosen = toChosen(selection, request)
  const figures = toFigures(selection)
  return 'plate' in bearing && atRest !== undefined
    ? answer(
        { arrangement: 'thrust', ...head },
        { ...chosen, plateRest: toRest(atRest, bearing, selection), ...figures },
        foot,
      )
    : answer(
        { arrangement: tagOf(bearing.resolved.input, 'radial', 'roller'), ...head },
        { ...chosen, ...figures },
        foot,
      )
}

function toEcho({ input, bearing, grooveDiameter }: BallSelection, request: BallSelectionRequest) {
  const { resolved } = bearing
  const { units } = resolved.input
  const whole: BallSelectionRequest = {
    design: toDesignRequest(resolved.input),
    measured: input.measured.map((diameter) => echo(diameter, units)),
    goal: input.goal,
    [grooveFieldOf(resolved.traits)]: echo(grooveDiameter, units),
  }
  const defaults = { ...designDefaults(whole.design.arrangement), ...defaultsOf(GROOVE_FIELDS) }
  return { input: whole, assumed: assumptionsIn(request, whole, defaults) }
}

const toChosen = ({ choice, leftOver }: BallSelection, { design: { units } }: BallSelectionRequest) => ({
  chosen: choice.balls.map(({ index, diameter }) => ({ index, diameter: show(diameter, units) })),
  leftOver: [...leftOver],
})

function toFigures(selection: BallSelection) {
  const { input, orders, grooveChange } = selection
  const size = (length: Mm) => show(length, input.design.units)
  return {
    ballGap: size(selection.ballGap),
    mean: size(selection.mean),
    standardDeviation: size(selection.standardDeviation),
    spread: size(selection.spread),
    grooveChange: { radial: size(grooveChange), diametral: size(mm(2 * grooveChange)) },
    bounds: toBounds(selection),
    orderEffect: {
      ballGap: { min: size(orders.least), max: size(orders.most) },
      message: explainOrders(selection),
    },
  }
}

function toRest(
  rest: PlateAtRest,
  { plate }: ThrustBearing,
  { choice, input }: BallSelection,
): ThrustBallSelectionResponse['plateRest'] {
  const { units } = input.design
  const rise = mm(2 * rest.rise * (plate.outsideDiameter / plate.grooveCircleDiameter))
  return {
    carriers: rest.carriers.map((place, which) => ({
      index: choice.balls[place]?.index ?? -1,
      share: showNumber(itemAt(rest.shares, which)),
    })),
    plateGap: show(mm(rest.height), units),
    rise: show(rise, units),
    mostClearance: show(mm(rest.mostClearance), units),
    message: explainRest(rest, rise, units),
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
    ballGap: { ...(reach.least === undefined ? {} : { min: size(reach.least) }), max: size(reach.most) },
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

function toWarning(
  { severity, facts, suggestion }: SelectionWarning,
  { bearing, input }: BallSelection,
): Static<typeof Warning> {
  const { units } = input.design
  const path = `/${grooveFieldOf(bearing.resolved.traits)}`
  return {
    code: facts.code,
    severity,
    message: explainWarning(facts, units, termsOf(input.design)),
    path: PATHS[facts.code],
    ...(suggestion === undefined ? {} : { suggestion: { path, value: show(suggestion, units) } }),
  }
}
