import type { Static } from 'typebox'
import type { ThrustBearing } from '#shared/bearing/arrangements.ts'
import type { PlateAtRest } from '#shared/geometry/plate-on-balls.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import type { SelectionGoal } from '#shared/questions/selection/ball-choice.ts'
import { GROOVE_NAMES } from '#shared/questions/selection/ball-place.ts'
import type { BallSelection, BallSelectionInput, SelectionWarning } from '#shared/questions/selection/ball-selection.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { tagOf } from '#src/api/answer.ts'
import { cautionsOf } from '#src/api/caution.ts'
import { toDesignInput } from '#src/api/design-input.ts'
import { type Length, show, toMm } from '#src/api/length.ts'
import { present } from '#src/api/optional.ts'
import type { Warning } from '#src/api/warning.ts'
import { advice, explainNearness, explainOrders, explainRest, explainWarning } from '#src/words/ball-selection.ts'
import { termsOf } from '#src/words/terms.ts'
import type { BallSelectionRequest, BallSelectionResponse, ThrustBallSelectionResponse } from './schema.ts'

/** The caller's input in the core's words. */
export function toBallSelectionInput(request: BallSelectionRequest): BallSelectionInput {
  const { design, measured, goal, grooveBottomDiameter, grooveCircleDiameter } = request
  const { units } = design
  const size = (length: Length | undefined) => (length === undefined ? undefined : toMm(length, units))
  return present<BallSelectionInput>({
    design: toDesignInput(design),
    measured: measured.map((diameter) => toMm(diameter, units)),
    goal,
    grooveBottomDiameter: size(grooveBottomDiameter),
    grooveCircleDiameter: size(grooveCircleDiameter),
  })
}

const CRITERIA = {
  'close-groove': 'ball-gap',
  'least-groove-change': 'groove-radius',
  'least-spread': 'spread',
} as const satisfies Readonly<Record<SelectionGoal, string>>

/** A selection of any arrangement, as it is answered: in the caller's units and in words. */
export function toSelectionAnswer(selection: BallSelection): BallSelectionResponse {
  const { units, goal, advice, chosen, leftOver, ...figures } = shared(selection)
  const asked = { units, goal, advice, chosen, leftOver }
  const groove = show(selection.grooveDiameter, units)
  const { bearing, atRest } = selection
  return 'plate' in bearing && atRest !== undefined
    ? {
        arrangement: 'thrust',
        ...asked,
        grooveCircleDiameter: groove,
        plateRest: toRest(atRest, bearing, selection),
        ...figures,
      }
    : {
        arrangement: tagOf(bearing.settled.input, 'radial', 'roller'),
        ...asked,
        grooveBottomDiameter: groove,
        ...figures,
      }
}

/** What is said of a selection, whatever the balls lie in. */
function shared(selection: BallSelection) {
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
    warnings: selection.warnings.map((warning) => toWarning(warning, selection)),
    cautions: cautionsOf(settled),
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
      share: itemAt(rest.shares, which),
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

function toWarning(
  { severity, facts, suggestion }: SelectionWarning,
  { bearing, input }: BallSelection,
): Static<typeof Warning> {
  const { units } = input.design
  const path = `/${GROOVE_NAMES[bearing.settled.traits.members]}`
  return {
    code: facts.code,
    severity,
    message: explainWarning(facts, units, termsOf(input.design)),
    path: PATHS[facts.code],
    ...(suggestion === undefined ? {} : { suggestion: { path, value: show(suggestion, units) } }),
  }
}
