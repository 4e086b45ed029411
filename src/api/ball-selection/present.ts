import type { Static, TObject } from 'typebox'
import type { SourceId } from '#shared/data/sources.ts'
import { servedName } from '#shared/questions/selection/arrangements/by-name.ts'
import type { OrderedBalls } from '#shared/questions/selection/ball-order.ts'
import type { BallSelection, BallSelectionInput, SelectionWarning } from '#shared/questions/selection/ball-selection.ts'
import { GOAL_FIELD, GROOVE_FIELDS, type SelectionGoal } from '#shared/questions/selection/fields.ts'
import { answer } from '#src/api/answer.ts'
import { assumptionsIn, defaultsOf } from '#src/api/assumption.ts'
import { ANSWERS } from '#src/api/ball-selection/arrangements/by-name.ts'
import { cautionsOf } from '#src/api/caution.ts'
import { designDefaults } from '#src/api/design-defaults.ts'
import { toDesignInput, toDesignRequest } from '#src/api/design-input.ts'
import { fromRequest } from '#src/api/fields.ts'
import { echo, show, toMm } from '#src/api/length.ts'
import { shownBy } from '#src/api/schema.ts'
import { toSource } from '#src/api/source.ts'
import type { Warning } from '#src/api/warning.ts'
import { advice, explainNearness, explainOrders, explainWarning } from '#src/words/ball-selection.ts'
import { termsOf } from '#src/words/terms.ts'
import { type BallSelectionRequest, bothWays } from './parts.ts'
import type { BallSelectionResponse } from './schema.ts'

const FIELDS = { goal: GOAL_FIELD, ...GROOVE_FIELDS }

/** The caller's input in the core's words. */
export function toBallSelectionInput(request: BallSelectionRequest): BallSelectionInput {
  const { design, measured } = request
  const { units } = design
  return {
    design: toDesignInput(design, '/design'),
    measured: measured.map((diameter) => toMm(diameter, units)),
    ...fromRequest(FIELDS, request, units),
  }
}

const SOURCES: readonly SourceId[] = ['derived', 'trade']

const CRITERIA = {
  'best-bearing': 'run-out',
  'close-groove': 'ball-gap',
  'least-groove-change': 'groove-radius',
  'least-spread': 'spread',
} as const satisfies Readonly<Record<SelectionGoal, string>>

/** A selection of any arrangement, as it is answered: in the caller's units and in words. */
export function toSelectionAnswer(selection: BallSelection, request: BallSelectionRequest): BallSelectionResponse {
  const { bearing, chosen, leftOver, mean, standardDeviation, spread, warnings, grooveChange, orders, gapOverOrders } =
    selection
  const { units } = request.design
  const arrangement = servedName(bearing.resolved.input)
  const { Response, figuresOf, moreOf } = ANSWERS[arrangement]
  const figures = (ordered: OrderedBalls) => ({ ...ordered, ...figuresOf(ordered) })
  const inOrder = (ordered: OrderedBalls) => ({ order: ordered.balls.map(({ index }) => index), ...figures(ordered) })
  const whole = answer(
    { arrangement, units, ...toEcho(selection, request), summary: advice(selection) },
    {
      chosen: chosen.balls,
      leftOver,
      ...figures(chosen),
      ...moreOf(selection),
      mean,
      standardDeviation,
      spread,
      grooveChange: bothWays(grooveChange),
      bounds: boundsOf(selection),
      orderEffect: {
        ballGap: { min: gapOverOrders.least, max: gapOverOrders.most },
        everyOrderTried: chosen.everyOrderTried,
        orders: orders.map(({ aim, ...ordered }) => ({ aim, ...inOrder(ordered) })),
        message: explainOrders(selection),
      },
      choices: selection.choices.map((choice) => ({ ...choice, ...inOrder(choice) })),
    },
    {
      warnings: warnings.map((warning) => toWarning(warning, selection)),
      cautions: cautionsOf(bearing.resolved),
      sources: SOURCES.map(toSource),
    },
  )
  // the arrangement's own figures and their schema are made together, in its file
  return shownBy(Response as TObject, whole, units) as BallSelectionResponse
}

function toEcho({ input, bearing, grooveDiameter, inner, fields }: BallSelection, request: BallSelectionRequest) {
  const { units } = bearing.resolved.input
  const whole: BallSelectionRequest = {
    design: toDesignRequest(bearing.resolved.input),
    measured: input.measured.map((diameter) => echo(diameter, units)),
    goal: input.goal,
    [fields.groove]: echo(grooveDiameter, units),
    ...(fields.inner && inner && { [fields.inner]: echo(inner.asItIs, units) }),
  }
  const defaults = { ...designDefaults(bearing.resolved.input), ...defaultsOf(FIELDS) }
  return { input: whole, assumed: assumptionsIn(request, whole, defaults) }
}

const boundsOf = (selection: BallSelection) => ({
  ...selection,
  of: CRITERIA[selection.input.goal],
  atMostFromBest: selection.missedBy - selection.noneBelow,
  ballGap: { min: selection.reach.least, max: selection.reach.most },
  message: explainNearness(selection),
})

function toWarning(
  { severity, facts, suggestion }: SelectionWarning,
  { input, fields }: BallSelection,
): Static<typeof Warning> {
  const { units } = input.design
  const paths: Readonly<Record<SelectionWarning['facts']['code'], string>> = {
    'does-not-close': '/measured',
    'gap-below-band': '/design/minBallGap',
    'gap-above-band': '/design/maxBallGap',
    'gap-below-assembly-gap': '/design/ballGap',
    binds: `/${fields.inner}`,
    'little-play': `/${fields.inner}`,
    'much-play': `/${fields.inner}`,
    'rides-on-edges': '/design/groove',
  }
  return {
    code: facts.code,
    severity,
    message: explainWarning(facts, units, termsOf(input.design)),
    path: paths[facts.code],
    ...(suggestion && { suggestion: { path: `/${suggestion.field}`, value: show(suggestion.size, units) } }),
  }
}
