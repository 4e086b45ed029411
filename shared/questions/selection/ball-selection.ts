import {
  type DesignInput,
  echoedBearingFor,
  type FullRingBearing,
  nameOf,
  type Question,
  type ThrustBearing,
  traitsOf,
} from '#shared/bearing/arrangements.ts'
import { type Refusal, type Refused, refusedDesign, refusedQuestion } from '#shared/bearing/refusal.ts'
import { spreadOrder } from '#shared/geometry/order-round-the-ring.ts'
import type { PlateAtRest } from '#shared/geometry/plate-on-balls.ts'
import { seatIn } from '#shared/geometry/seat.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { summary } from '#shared/statistics/summary.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { rounded, roundedDown, roundedUp } from '#shared/units/rounded.ts'
import {
  type BallChoice,
  type ChoiceTask,
  chooseBalls,
  type MeasuredBall,
  overOrders,
  type Reach,
  reachOf,
  type SelectionGoal,
} from './ball-choice.ts'
import { grooveFieldOf, placeIn } from './ball-place.ts'
import { GROOVE_FIELD_NAMES, type GrooveField } from './fields.ts'

export const BALL_SELECTION = {
  name: 'ball-selection',
  serves: ['radial', 'thrust', 'roller'],
} as const satisfies Question

/** A measured lot, and the bearing that takes so many of it as its design says. */
export interface BallSelectionInput extends GrooveAsItIs {
  readonly design: DesignInput
  readonly measured: readonly Mm[]
  readonly goal: SelectionGoal
}

/** The groove as it is, under the name that the bearing has for it; that of the design where it is not stated. */
type GrooveAsItIs = { readonly [Name in GrooveField]?: Mm }

/** Why none can be chosen. Paths are those of the input. */
export type SelectionRefusal =
  | { readonly code: 'lot-too-small'; readonly path: string; readonly given: number; readonly needed: number }
  | {
      readonly code: 'not-of-this-size'
      readonly path: string
      readonly given: Mm
      readonly least: Mm
      readonly most: Mm
    }
  | { readonly code: 'aim-takes-another-ball'; readonly path: string; readonly given: Mm; readonly below: Mm }
  | {
      readonly code: 'groove-too-tight'
      readonly path: string
      readonly given: Mm
      readonly ballCount: number
      /** The groove in which the smallest of the lot just close. */
      readonly closed: Mm
    }
  | { readonly code: 'groove-too-wide'; readonly path: string; readonly given: Mm; readonly ballCount: number }

/** What to know about the balls that were chosen. */
type SelectionFacts =
  | { readonly code: 'does-not-close'; readonly ballGap: Mm }
  | { readonly code: 'gap-below-band'; readonly ballGap: Mm; readonly min: Mm }
  | { readonly code: 'gap-above-band'; readonly ballGap: Mm; readonly max: Mm }
  | { readonly code: 'gap-below-assembly-gap'; readonly ballGap: Mm; readonly assemblyGap: Mm }
  | {
      readonly code: 'rides-on-edges'
      readonly ballCount: number
      readonly grooveRadius: Mm
      /** How much of the gap that takes or gives, about. */
      readonly gapShift: Mm
    }

export interface SelectionWarning {
  readonly severity: 'note' | 'risk' | 'fault'
  readonly facts: SelectionFacts
  /** The size of the groove that clears it: tried. */
  readonly suggestion?: Mm
}

export interface BallSelection {
  readonly input: BallSelectionInput
  readonly bearing: FullRingBearing | ThrustBearing
  /** Across the bottoms of a ring's groove, or a plate's circle. */
  readonly grooveDiameter: Mm
  /** The balls in their order round the ring, the gap between the last and the first; how near to the best they come. */
  readonly choice: BallChoice
  /** Places of the others in the measured lot. */
  readonly leftOver: readonly number[]
  /** Exact, for these balls in this order. */
  readonly ballGap: Mm
  readonly mean: Mm
  readonly standardDeviation: Mm
  readonly spread: Mm
  /** Radially, to the groove in which these balls leave the gap aimed at: above 0 wood to remove. */
  readonly grooveChange: Mm
  readonly reach: Reach
  /** What these balls leave in any order. */
  readonly orders: { readonly least: Mm; readonly most: Mm }
  /** How the upper of two plates rests on them, evenly spaced. */
  readonly atRest?: PlateAtRest
  readonly warnings: readonly SelectionWarning[]
}

/**
 * A ball is of the size of the design between 5/6 and 5/4 of it, so that none is below 2/3 of another: then no two balls
 * touch over the one between them (`unequal-balls.ts`; on a plate not even from 1/2 on, `balls-on-a-circle.ts`).
 */
const LEAST_OF_SIZE = 5 / 6
const MOST_OF_SIZE = 5 / 4

/** A gap this near to a ball, in diameters of the smallest, is room for another; and any such balls can leave it. */
const LARGEST_AIM = 0.9

/**
 * Which balls of a measured lot to take. They are laid so that no side of the ring stands out (`spreadOrder`), and each
 * choice is judged by the exact closure of unequal balls. A ball of which two would not fit side by side in the groove is
 * passed over. What the choice is worth, `chooseBalls` proves.
 *
 * @param input lengths in millimetres, finite and above 0
 * @returns the choice, or every reason at once why there is none
 */
export function ballSelection(input: BallSelectionInput): Result<BallSelection, Refused<Refusal | SelectionRefusal>> {
  const foreign = foreignTo(input)
  if (foreign.length > 0) return fail(refusedQuestion(foreign))
  const made = echoedBearingFor(BALL_SELECTION, input.design)
  if (!made.ok) return fail(refusedDesign(made.error))
  const refused = lotRefusals(input, made.value)
  if (refused.length > 0) return fail(refusedQuestion(refused))
  const found = selectionOf(input, made.value)
  return found.ok ? ok(withSuggestions(found.value)) : fail(refusedQuestion([found.error]))
}

/** A groove's size under the name that it has in another arrangement. */
function foreignTo(input: BallSelectionInput): readonly Refusal[] {
  const own = grooveFieldOf(traitsOf(input.design))
  const arrangement = nameOf(input.design)
  return GROOVE_FIELD_NAMES.filter((name) => name !== own && input[name] !== undefined).map((name) => ({
    code: 'not-of-arrangement',
    path: `/${name}`,
    arrangement,
  }))
}

type AnyBearing = BallSelection['bearing']

function lotRefusals({ measured }: BallSelectionInput, { resolved }: AnyBearing): readonly SelectionRefusal[] {
  const { ballDiameter, ballGap } = resolved
  const needed = resolved.input.balls.count
  if (measured.length < needed) return [{ code: 'lot-too-small', path: '/measured', given: measured.length, needed }]
  const [least, most] = [mm(LEAST_OF_SIZE * ballDiameter), mm(MOST_OF_SIZE * ballDiameter)]
  const strangers = measured.flatMap((given, index): SelectionRefusal[] =>
    given >= least && given <= most
      ? []
      : [{ code: 'not-of-this-size', path: `/measured/${index}`, given, least, most }],
  )
  if (strangers.length > 0) return strangers
  const below = mm(LARGEST_AIM * Math.min(...measured))
  return ballGap < below ? [] : [{ code: 'aim-takes-another-ball', path: '/design/ballGap', given: ballGap, below }]
}

function selectionOf(input: BallSelectionInput, bearing: AnyBearing): Result<BallSelection, SelectionRefusal> {
  const task = taskOf(input, bearing)
  const refusal = roomRefusal(input, bearing, task)
  if (refusal !== undefined) return fail(refusal)
  const choice = chooseBalls(task, input.goal)
  const diameters = choice.balls.map(({ diameter }) => diameter)
  const taken = new Set(choice.balls.map(({ index }) => index))
  const ballGap = task.closure.gap(task.radius, diameters)
  const atRest = placeIn(bearing).atRest(diameters)
  return ok({
    input,
    bearing,
    grooveDiameter: grooveDiameterOf(input, bearing),
    choice,
    leftOver: input.measured.flatMap((_, index) => (taken.has(index) ? [] : [index])),
    ballGap,
    ...spreadOf(diameters),
    grooveChange: mm(task.closure.radiusFor(diameters, task.aim) - task.radius),
    reach: reachOf(task),
    orders: overOrders(task, choice.balls),
    ...(atRest === undefined ? {} : { atRest }),
    warnings: [...gapWarnings(ballGap, bearing), ...edgeWarnings(task.radius, diameters, bearing)],
  })
}

function taskOf(input: BallSelectionInput, bearing: AnyBearing): ChoiceTask {
  const { resolved } = bearing
  const { closure, aboveBottom, parts } = placeIn(bearing)
  const radius = mm(grooveDiameterOf(input, bearing) / 2 - aboveBottom)
  const lot = bySize(input.measured.map((diameter, index) => ({ index, diameter })))
  const ballCount = resolved.input.balls.count
  const largest = closure.largestBall(radius)
  return {
    closure,
    radius,
    aim: resolved.ballGap,
    lot: lot.filter(({ diameter }) => diameter <= largest),
    ballCount,
    order: spreadOrder(ballCount, parts),
  }
}

const bySize = (balls: readonly MeasuredBall[]): readonly MeasuredBall[] =>
  balls.toSorted((one, other) => one.diameter - other.diameter || one.index - other.index)

/** The groove as it is, where the caller said it. */
const given = (input: BallSelectionInput): Mm | undefined => input[grooveFieldOf(traitsOf(input.design))]

/** The same, or the design's as it is stated in an answer. */
const grooveDiameterOf = (input: BallSelectionInput, bearing: AnyBearing): Mm =>
  given(input) ?? rounded(placeIn(bearing).designed, input.design.units)

/** A groove that takes no choice at all, or so wide a one that the balls do not even cover half of it. */
function roomRefusal(
  input: BallSelectionInput,
  bearing: AnyBearing,
  { closure, radius, ballCount, lot }: ChoiceTask,
): SelectionRefusal | undefined {
  const { aboveBottom } = placeIn(bearing)
  const path = given(input) === undefined ? '/design' : `/${grooveFieldOf(bearing.resolved.traits)}`
  const diameter = grooveDiameterOf(input, bearing)
  const smallest = input.measured.toSorted((one, other) => one - other).slice(0, ballCount)
  const room = lot.length < ballCount ? undefined : closure.overOrders(radius, smallest)
  if (room === undefined || !(room.most > -itemAt(smallest, 0))) {
    const closed = mm(2 * (closure.radiusFor(smallest) + aboveBottom))
    return { code: 'groove-too-tight', path, given: diameter, ballCount, closed }
  }
  return room.coversHalf ? undefined : { code: 'groove-too-wide', path, given: diameter, ballCount }
}

function spreadOf(diameters: readonly number[]): Pick<BallSelection, 'mean' | 'standardDeviation' | 'spread'> {
  const { mean, standardDeviation } = summary(diameters)
  return {
    mean: mm(mean),
    standardDeviation: mm(standardDeviation),
    spread: mm(Math.max(...diameters) - Math.min(...diameters)),
  }
}

/** What a gap may miss a limit by without a warning, in ball diameters: the search ends somewhere, sizes are rounded, and nobody reads it. */
const UNNOTICED = 1e-5

function gapWarnings(ballGap: Mm, bearing: AnyBearing): readonly SelectionWarning[] {
  const { minBallGap: min, maxBallGap: max, ballDiameter } = bearing.resolved
  const { assemblyGap } = placeIn(bearing)
  const [atMost, atLeast] = [ballGap - UNNOTICED * ballDiameter, ballGap + UNNOTICED * ballDiameter]
  if (!(atLeast >= 0)) return [{ severity: 'fault', facts: { code: 'does-not-close', ballGap } }]
  const warnings: SelectionWarning[] = []
  if (!(atLeast >= min)) warnings.push({ severity: 'risk', facts: { code: 'gap-below-band', ballGap, min } })
  if (!(atMost <= max)) warnings.push({ severity: 'risk', facts: { code: 'gap-above-band', ballGap, max } })
  if (!(atLeast >= assemblyGap)) {
    warnings.push({ severity: 'note', facts: { code: 'gap-below-assembly-gap', ballGap, assemblyGap } })
  }
  return warnings
}

function edgeWarnings(radius: Mm, diameters: readonly number[], bearing: AnyBearing): readonly SelectionWarning[] {
  const { groove, edgeShift } = placeIn(bearing)
  const ballCount = diameters.filter((diameter) => seatIn(groove, mm(diameter)).on === 'edges').length
  if (ballCount === 0) return []
  const gapShift = edgeShift(radius, diameters)
  return [{ severity: 'note', facts: { code: 'rides-on-edges', ballCount, grooveRadius: groove.radius, gapShift } }]
}

const OF_THE_GROOVE: ReadonlySet<string> = new Set<SelectionFacts['code']>([
  'does-not-close',
  'gap-below-band',
  'gap-above-band',
])

/**
 * A gap out of band is cleared by the groove that the balls want, if it can still be made: the design's can, and one that
 * is cut can be cut deeper. It is offered only where the whole selection, made again with it, has such a warning no more.
 */
function withSuggestions(selection: BallSelection): BallSelection {
  const { input, bearing, grooveDiameter, grooveChange, warnings } = selection
  const isOfGroove = ({ facts }: SelectionWarning) => OF_THE_GROOVE.has(facts.code)
  if (!warnings.some(isOfGroove) || !(given(input) === undefined || grooveChange > 0)) return selection
  const wanted = mm(grooveDiameter + 2 * grooveChange)
  const clears = (diameter: Mm): boolean => {
    const tried = selectionOf({ ...input, [grooveFieldOf(bearing.resolved.traits)]: diameter }, bearing)
    return tried.ok && !tried.value.warnings.some(isOfGroove)
  }
  const suggestion = [rounded, roundedUp, roundedDown].map((round) => round(wanted, input.design.units)).find(clears)
  if (suggestion === undefined) return selection
  return {
    ...selection,
    warnings: warnings.map((warning) => (isOfGroove(warning) ? { ...warning, suggestion } : warning)),
  }
}
