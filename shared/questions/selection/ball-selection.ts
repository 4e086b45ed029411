import { type DesignInput, echoedBearingFor, nameOf, notServed, type Question } from '#shared/bearing/arrangements.ts'
import { type Refusal, type Refused, refusedDesign, refusedQuestion } from '#shared/bearing/refusal.ts'
import { type GapOverOrders, spreadOrder } from '#shared/geometry/order-round-the-ring.ts'
import type { PlateAtRest } from '#shared/geometry/plate-on-balls.ts'
import { seatIn } from '#shared/geometry/seat.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { arrangementOf, SERVED, type SelectionBearing } from '#shared/questions/selection/arrangements/by-name.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { summary } from '#shared/statistics/summary.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { rounded, roundedDown, roundedUp } from '#shared/units/rounded.ts'
import { diametersOf, missOf, overOrders, type Reach, reachOf } from './ball-choice.ts'
import {
  advisedOrder,
  bestBearing,
  chanceOfLast,
  choiceBy,
  type OrderedBalls,
  type OrderTask,
  orderBalls,
  SURE,
  UNNOTICED,
} from './ball-order.ts'
import type { OrderAim } from './ball-place.ts'
import { GROOVE_FIELD_NAMES, type GrooveField, SELECTION_GOALS, type SelectionGoal, USUAL_GOAL } from './fields.ts'

export const BALL_SELECTION = { name: 'ball-selection', serves: SERVED } as const satisfies Question

/** The raceways as they are, under the names that the bearing has for them; those of the design where they are not stated. */
type GroovesAsTheyAre = { readonly [Name in GrooveField]?: Mm }

/** A measured lot, and the bearing that takes so many of it as its design says. */
export interface BallSelectionInput extends GroovesAsTheyAre {
  readonly design: DesignInput
  readonly measured: readonly Mm[]
  readonly goal?: SelectionGoal
}

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
  | { readonly code: 'groove-meets-bore'; readonly path: string; readonly given: Mm; readonly above: Mm }

/** Facts about the chosen balls that need a warning. */
type SelectionFacts =
  | { readonly code: 'does-not-close'; readonly ballGap: Mm }
  | { readonly code: 'gap-below-band'; readonly ballGap: Mm; readonly min: Mm }
  | { readonly code: 'gap-above-band'; readonly ballGap: Mm; readonly max: Mm }
  | {
      readonly code: 'gap-below-assembly-gap'
      readonly ballGap: Mm
      readonly assemblyGap: Mm
      /** That the last ball goes in all the same. */
      readonly chance: number
    }
  | { readonly code: 'binds'; readonly play: Mm }
  | { readonly code: 'little-play'; readonly play: Mm; readonly least: Mm }
  | { readonly code: 'much-play'; readonly play: Mm; readonly most: Mm }
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
  /** The size of the raceway that clears it: tried. */
  readonly suggestion?: { readonly field: GrooveField; readonly size: Mm }
}

/** How near a choice comes to its goal. */
interface Nearness {
  /** By how much it misses the goal: the gap, the groove's radius, the spread, or its run-out. */
  readonly missedBy: number
  /** No choice of so many balls, in whatever order, misses less. Proven; 0 where nothing better is known. */
  readonly noneBelow: number
  readonly everyChoiceTried: boolean
}

export interface BallSelection extends Nearness {
  readonly input: BallSelectionInput & { readonly goal: SelectionGoal }
  readonly bearing: SelectionBearing
  /** Across the bottoms of a ring's groove, or a plate's circle. */
  readonly grooveDiameter: Mm
  /** The names of the raceways' sizes. */
  readonly fields: { readonly groove: GrooveField; readonly inner?: GrooveField }
  readonly chosen: OrderedBalls
  /** Places of the others in the measured lot. */
  readonly leftOver: readonly number[]
  readonly mean: Mm
  readonly standardDeviation: Mm
  readonly spread: Mm
  /** Radially, to the groove in which these balls leave the gap aimed at: above 0 wood to remove. */
  readonly grooveChange: Mm
  /** The inner raceway across, as drawn and as it is, and the one that gives these balls in this order the play of the design. */
  readonly inner?: {
    readonly drawn: Mm
    readonly asItIs: Mm
    readonly wanted: Mm
    readonly designedPlay: Mm
    /** How much less play these balls leave than as many of their mean size. */
    readonly takenByUneven: Mm
  }
  readonly reach: Reach
  /** The range of the gap over all orders of these balls. */
  readonly gapOverOrders: GapOverOrders
  /** The chosen balls in the best order for each aim of the arrangement: that to use first, that to avoid last. */
  readonly orders: readonly (OrderedBalls & { readonly aim: OrderAim })[]
  /** The best choice for every goal, each in its best order. */
  readonly choices: readonly (OrderedBalls & { readonly goal: SelectionGoal; readonly spread: Mm })[]
  /** How an upper plate rests on them, evenly spaced. */
  readonly atRest?: PlateAtRest
  /** How much wider the gap is where every ball is smaller than measured by `MISREAD`. */
  readonly gapWhereMisread: Mm
  readonly warnings: readonly SelectionWarning[]
}

/**
 * A ball is of the size of the design between 5/6 and 5/4 of it, so that none is below 2/3 of another: then no two balls
 * touch over the one between them (`unequal-balls.ts`; on a plate not even from 1/2 on, `balls-on-a-circle.ts`).
 * Common practice, no source.
 */
const LEAST_OF_SIZE = 5 / 6
const MOST_OF_SIZE = 5 / 4

/** A caliper may read every ball wrong by so much [mm]: common practice, no source. */
export const MISREAD = mm(0.01)

/**
 * A gap this near to a ball, in diameters of the smallest, is room for another; and any such balls can leave it.
 * Common practice, no source.
 */
const LARGEST_AIM = 0.9

/**
 * Which balls of a measured lot to take, and in which order. Each choice is judged by the exact closure of unequal balls
 * (`choiceBy` proves what it is worth), each order by the exact play and run-out of the inner ring among them, or by how
 * the upper plate rests (`orderBalls`). A ball of which two would not fit side by side in the groove is passed over.
 *
 * @param input lengths in millimetres, finite and above 0
 * @returns the choice, or every reason at once why there is none
 */
export function ballSelection(input: BallSelectionInput): Result<BallSelection, Refused<Refusal | SelectionRefusal>> {
  const unserved = notServed(input.design, BALL_SELECTION)
  if (unserved.length > 0) return fail(refusedDesign(unserved))
  const foreign = foreignTo(input)
  if (foreign.length > 0) return fail(refusedQuestion(foreign))
  const made = echoedBearingFor(BALL_SELECTION, input.design)
  if (!made.ok) return fail(refusedDesign(made.error))
  const refused = lotRefusals(input, made.value)
  if (refused.length > 0) return fail(refusedQuestion(refused))
  const picked = pick(input, made.value)
  return picked.ok ? ok(withRest(picked.value)) : fail(refusedQuestion([picked.error]))
}

/** A raceway's size under the name that it has in another arrangement. */
function foreignTo(input: BallSelectionInput): readonly Refusal[] {
  const { grooveField, innerField } = arrangementOf(input.design)
  const isForeign = (name: GrooveField) => ![grooveField, innerField].includes(name) && input[name] !== undefined
  const arrangement = nameOf(input.design)
  return GROOVE_FIELD_NAMES.filter(isForeign).map((name) => ({
    code: 'not-of-arrangement',
    path: `/${name}`,
    arrangement,
  }))
}

function lotRefusals({ measured }: BallSelectionInput, { resolved }: SelectionBearing): readonly SelectionRefusal[] {
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

/** The task, and the balls for its goal. */
interface Picked extends OrderTask {
  readonly input: BallSelection['input']
  readonly bearing: SelectionBearing
  readonly fields: BallSelection['fields']
  readonly grooveDiameter: Mm
  readonly chosen: OrderedBalls
  readonly nearness: Nearness
  readonly warnings: readonly SelectionWarning[]
}

function pick(selection: BallSelectionInput, bearing: SelectionBearing): Result<Picked, SelectionRefusal> {
  const input = { ...selection, goal: selection.goal ?? USUAL_GOAL }
  const task = taskOf(input, bearing)
  const refusal = roomRefusal(task)
  if (refusal !== undefined) return fail(refusal)
  const { goal } = input
  if (goal === 'best-bearing') {
    const { everyChoiceTried, ...chosen } = bestBearing(task)
    const nearness = { missedBy: chosen.runOut, noneBelow: 0, everyChoiceTried }
    return ok({ ...task, chosen, nearness, warnings: warningsOf(task, chosen) })
  }
  const { balls, noneBelow, everyChoiceTried } = choiceBy(task, goal)
  const chosen = advisedOrder(task, balls)
  const missedBy = missOf(task.choice, goal, diametersOf(chosen.balls))
  const nearness = { missedBy, noneBelow: Math.min(missedBy, noneBelow), everyChoiceTried }
  return ok({ ...task, chosen, nearness, warnings: warningsOf(task, chosen) })
}

type Task = Omit<Picked, 'chosen' | 'nearness' | 'warnings'>

function taskOf(input: BallSelection['input'], bearing: SelectionBearing): Task {
  const { resolved } = bearing
  const { grooveField, innerField, placeIn } = arrangementOf(input.design)
  const place = placeIn(bearing, innerField && input[innerField])
  const grooveDiameter = input[grooveField] ?? rounded(place.designed, input.design.units)
  const radius = mm(grooveDiameter / 2 - place.aboveBottom)
  const ballCount = resolved.input.balls.count
  const largest = place.closure.largestBall(radius)
  const lot = input.measured
    .map((diameter, index) => ({ index, diameter }))
    .toSorted((one, other) => one.diameter - other.diameter || one.index - other.index)
  return {
    input,
    bearing,
    place,
    fields: { groove: grooveField, ...(innerField && { inner: innerField }) },
    grooveDiameter,
    advised: new Map(),
    byFigure: new Map(),
    ballDiameter: resolved.ballDiameter,
    maxBallGap: resolved.maxBallGap,
    choice: {
      closure: place.closure,
      radius,
      aim: resolved.ballGap,
      lot: lot.filter(({ diameter }) => diameter <= largest),
      ballCount,
      order: spreadOrder(ballCount, place.parts),
    },
  }
}

/** A groove that takes no choice at all, one so wide that the balls do not even cover half of it, or one in the bore. */
function roomRefusal({ input, fields, place, choice, grooveDiameter }: Task): SelectionRefusal | undefined {
  const { closure, radius, ballCount, lot } = choice
  const path = input[fields.groove] === undefined ? '/design' : `/${fields.groove}`
  const smallest = input.measured.toSorted((one, other) => one - other).slice(0, ballCount)
  const room = lot.length < ballCount ? undefined : closure.overOrders(radius, smallest)
  if (room === undefined || !(room.most > -itemAt(smallest, 0))) {
    const closed = mm(2 * (closure.radiusFor(smallest) + place.aboveBottom))
    return { code: 'groove-too-tight', path, given: grooveDiameter, ballCount, closed }
  }
  if (!room.coversHalf) return { code: 'groove-too-wide', path, given: grooveDiameter, ballCount }
  const { inner } = place
  if (inner === undefined || inner.asItIs > inner.bore) return undefined
  return { code: 'groove-meets-bore', path: `/${fields.inner}`, given: inner.asItIs, above: inner.bore }
}

/** Everything that does not decide the choice: other choices and orders, and what clears its warnings. */
function withRest(picked: Picked): BallSelection {
  const { input, bearing, fields, grooveDiameter, chosen, nearness, place, choice } = picked
  const diameters = diametersOf(chosen.balls)
  const taken = new Set(chosen.balls.map(({ index }) => index))
  const atRest = place.atRest(diameters)
  return {
    input,
    bearing,
    grooveDiameter,
    fields,
    chosen,
    ...nearness,
    leftOver: input.measured.flatMap((_, index) => (taken.has(index) ? [] : [index])),
    ...spreadOf(diameters),
    grooveChange: mm(choice.closure.radiusFor(diameters, choice.aim) - choice.radius),
    ...(place.inner && {
      inner: {
        ...place.inner,
        wanted: innerFor(place.inner, chosen),
        takenByUneven: mm(marginOfEven(picked, diameters) - chosen.margin),
      },
    }),
    reach: reachOf(choice),
    gapOverOrders: overOrders(choice, chosen.balls),
    orders: place.aims.map((aim) => ({ aim, ...(aim === 'advised' ? chosen : orderBalls(picked, chosen.balls, aim)) })),
    choices: SELECTION_GOALS.map((goal) => {
      const best = goal === input.goal ? chosen : bestFor(picked, goal)
      return { goal, ...best, spread: spreadOf(diametersOf(best.balls)).spread }
    }),
    ...(atRest === undefined ? {} : { atRest }),
    gapWhereMisread: mm(
      choice.closure.gap(
        choice.radius,
        diameters.map((diameter) => diameter - MISREAD),
      ) - chosen.ballGap,
    ),
    warnings: withSuggestions(picked),
  }
}

const bestFor = (task: OrderTask, goal: SelectionGoal): OrderedBalls =>
  goal === 'best-bearing' ? bestBearing(task) : advisedOrder(task, choiceBy(task, goal).balls)

/** Play is what the balls leave across, less the inner raceway: what that must measure for the play of the design. */
const innerFor = ({ asItIs, designedPlay }: NonNullable<OrderTask['place']['inner']>, { margin }: OrderedBalls): Mm =>
  mm(asItIs - (designedPlay - margin))

/** The margin of as many balls that all have the mean size of these. */
function marginOfEven({ place, choice }: OrderTask, diameters: readonly number[]): number {
  const { mean } = summary(diameters)
  const places = diameters.map((_, at) => at)
  return place.judge(
    choice.radius,
    diameters.map(() => mean),
  )(places).margin
}

function spreadOf(diameters: readonly number[]): Pick<BallSelection, 'mean' | 'standardDeviation' | 'spread'> {
  const { mean, standardDeviation } = summary(diameters)
  return {
    mean: mm(mean),
    standardDeviation: mm(standardDeviation),
    spread: mm(Math.max(...diameters) - Math.min(...diameters)),
  }
}

const warningsOf = (task: Task, chosen: OrderedBalls): readonly SelectionWarning[] => [
  ...gapWarnings(task, chosen),
  ...playWarnings(task, chosen),
  ...edgeWarnings(task, diametersOf(chosen.balls)),
]

function gapWarnings(task: Task, { ballGap }: OrderedBalls): readonly SelectionWarning[] {
  const { minBallGap: min, maxBallGap: max, ballDiameter } = task.bearing.resolved
  const { assemblyGap } = task.place
  const [atMost, atLeast] = [ballGap - UNNOTICED * ballDiameter, ballGap + UNNOTICED * ballDiameter]
  if (!(atLeast >= 0)) return [{ severity: 'fault', facts: { code: 'does-not-close', ballGap } }]
  const warnings: SelectionWarning[] = []
  if (!(atLeast >= min)) warnings.push({ severity: 'risk', facts: { code: 'gap-below-band', ballGap, min } })
  if (!(atMost <= max)) warnings.push({ severity: 'risk', facts: { code: 'gap-above-band', ballGap, max } })
  if (!(atLeast >= assemblyGap)) {
    const chance = chanceOfLast(task, ballGap)
    const facts = { code: 'gap-below-assembly-gap', ballGap, assemblyGap, chance } as const
    warnings.push({ severity: chance >= SURE ? 'note' : chance > 1 - SURE ? 'risk' : 'fault', facts })
  }
  return warnings
}

/** Only of rings. Balls that do not close have no play. */
function playWarnings({ place, ballDiameter }: Task, { ballGap, margin }: OrderedBalls): readonly SelectionWarning[] {
  const [least, unnoticed] = [mm(place.enough), UNNOTICED * ballDiameter]
  if (place.inner === undefined || !(ballGap + unnoticed >= 0)) return []
  const play = mm(margin)
  const { mostPlay: most } = place.inner
  if (margin - unnoticed > most) return [{ severity: 'risk', facts: { code: 'much-play', play, most } }]
  if (margin + unnoticed >= least) return []
  return margin < 0
    ? [{ severity: 'fault', facts: { code: 'binds', play } }]
    : [{ severity: 'risk', facts: { code: 'little-play', play, least } }]
}

function edgeWarnings({ place, choice }: Task, diameters: readonly number[]): readonly SelectionWarning[] {
  const { groove, edgeShift } = place
  const ballCount = diameters.filter((diameter) => seatIn(groove, mm(diameter)).on === 'edges').length
  if (ballCount === 0) return []
  const gapShift = edgeShift(choice.radius, diameters)
  return [{ severity: 'note', facts: { code: 'rides-on-edges', ballCount, grooveRadius: groove.radius, gapShift } }]
}

type Codes = ReadonlySet<SelectionFacts['code']>
const OF_THE_GROOVE: Codes = new Set(['does-not-close', 'gap-below-band', 'gap-above-band', 'gap-below-assembly-gap'])
const OF_THE_INNER: Codes = new Set(['binds', 'little-play', 'much-play'])

/**
 * A gap out of band is cleared by the groove that the balls want, too little play by the inner one, if it can still be made:
 * the design's can, and one that is cut can be cut deeper. It is offered only where the choice, made again with it, has such
 * a warning no more.
 */
function withSuggestions({ input, bearing, fields, grooveDiameter, chosen, choice, place, warnings }: Picked) {
  const { inner } = place
  const cleared = (codes: Codes, field: GrooveField | undefined, wanted: () => Mm, canCut: () => boolean) => {
    const isOfThese = ({ facts }: SelectionWarning) => codes.has(facts.code)
    if (field === undefined || !warnings.some(isOfThese)) return undefined
    if (!(input[field] === undefined || canCut())) return undefined
    const size = [rounded, roundedUp, roundedDown]
      .map((round) => round(wanted(), input.design.units))
      .find((tried) => {
        const again = pick({ ...input, [field]: tried }, bearing)
        return again.ok && !again.value.warnings.some(isOfThese)
      })
    return size === undefined ? undefined : { field, size }
  }
  const change = () => choice.closure.radiusFor(diametersOf(chosen.balls), choice.aim) - choice.radius
  const ofGroove = cleared(
    OF_THE_GROOVE,
    fields.groove,
    () => mm(grooveDiameter + 2 * change()),
    () => change() > 0,
  )
  const ofInner = cleared(
    OF_THE_INNER,
    inner && fields.inner,
    () => (inner ? innerFor(inner, chosen) : mm(0)),
    () => inner !== undefined && innerFor(inner, chosen) < inner.asItIs,
  )
  return warnings.map((warning) => {
    const { code } = warning.facts
    const suggestion = OF_THE_GROOVE.has(code) ? ofGroove : OF_THE_INNER.has(code) ? ofInner : undefined
    return suggestion === undefined ? warning : { ...warning, suggestion }
  })
}
