import type { RingsInput } from '#shared/bearing/resolve.ts'
import { ballsLaid } from '#shared/questions/selection/ball-order.ts'
import type { ToleranceCheckInput } from '#shared/questions/tolerance/input.ts'
import { BLOCKS_PER_LOOK } from '#shared/questions/tolerance/tolerance-check.ts'
import { USUAL_BLOCK } from '#shared/statistics/monte-carlo.ts'
import type { InputOf, ResultOf, TaskName } from './thread.ts'

/*
 * The cost of a task before it is run. Its units of work are counted from its input alone, so that equal inputs have equal
 * counts; how long a unit takes is learned from the tasks that are done.
 */

/** So many balls are laid in the time that the choice takes for one of the lot. Measured. */
const LAID_A_UNIT = 200

type Cost<Name extends TaskName> = {
  readonly units: (input: InputOf<Name>) => number
  /** The work that it turned out to be, if that is known. */
  readonly done?: (input: InputOf<Name>, result: ResultOf<Name>) => number
  /** How long a unit takes [ms] until tasks have been measured: as measured once. */
  readonly unitMs: number
}

const COSTS: { readonly [Name in TaskName]: Cost<Name> } = {
  // Balls measured, balls wanted, and the orders that are looked at.
  ballSelection: {
    units: ({ design: { balls }, measured }) => measured.length + balls.count + ballsLaid(balls.count) / LAID_A_UNIT,
    unitMs: 0.5,
  },
  beginSearch: { units: () => 1, unitMs: 1 },
  furtherSearch: {
    units: ({ mostEffort }) => mostEffort,
    done: ({ progress }, { effort }) => effort - progress.effort,
    unitMs: 0.03,
  },
  concludeSearch: { units: ({ progress }) => 1 + progress.best.length, unitMs: 0.1 },
  // Readings; an earlier state costs half of one more, and the decision some eight.
  fitCorrection: {
    units: ({ readings, earlier }) =>
      earlier.reduce((sum, state) => sum + state.readings.length + 0.5, 8 + readings.length),
    unitMs: 1,
  },
  seasonalFit: { units: unitsOfYear, unitMs: 0.2 },
  seasonDefaults: { units: unitsOfYear, unitMs: 0.3 },
  prepareTrials: { units: () => 1, unitMs: 15 },
  runTrials: { units: ({ input, plan, count }) => unitsOfTrials(input, count * plan.blockSize), unitMs: 5e-6 },
  concludeTrials: { units: () => 1, unitMs: 10 },
  // As many speeds, and as many steps at each, whatever the turntable.
  safeOffsets: { units: () => 1, unitMs: 200 },
  // Pages.
  pdf: { units: (pages) => pages.length, unitMs: 20 },
  browserScript: { units: () => 1, unitMs: 150 },
}

/** States of the year, today's among them, times the balls and what is the same for any number of them. */
function unitsOfYear({ design, climate }: InputOf<'seasonalFit'>): number {
  return (1 + (climate.kind === 'months' ? climate.months.length : 2)) * (5 + design.balls.count)
}

/** Lobes, the weather and balls on edges take so many times the work of balls on the bottom of a round groove. Measured. */
const SLOW = 6
/** Play among balls that differ takes so much more for each ball. Measured. */
const UNEVEN = 16
/** Cost of a trial besides its balls, in balls. Measured. */
const TRIAL = 12

/** Work of trials, in balls laid on the bottom of a round groove. */
export function unitsOfTrials({ design, contributors, year }: ToleranceCheckInput, trials: number): number {
  const { balls } = design
  const { groove, outerRing, innerRing }: Pick<RingsInput, 'groove' | 'outerRing' | 'innerRing'> = design
  const arcs = [groove, outerRing?.groove, innerRing?.groove]
  const radii = arcs.flatMap((arc) => [
    (arc?.conformity ?? 1) * balls.diameter,
    arc?.grooveRadius ?? balls.diameter,
    (arc?.cutterDiameter ?? 2 * balls.diameter) / 2,
  ])
  const isSlow = contributors.outOfRound !== undefined || year !== undefined || Math.min(...radii) < balls.diameter / 2
  const isUneven =
    contributors.ballDiameter !== undefined || contributors.outOfRound !== undefined || year !== undefined
  return trials * ((balls.count + TRIAL) * (isSlow ? SLOW : 1) + (isUneven ? UNEVEN * balls.count : 0))
}

/** Work of the trials that a check cannot do without; none where it may be answered without any. */
export function unitsOfCheck(input: ToleranceCheckInput): number {
  const { trials } = input
  if (trials === 'auto') return unitsOfTrials(input, BLOCKS_PER_LOOK * USUAL_BLOCK)
  return trials === undefined ? 0 : unitsOfTrials(input, trials)
}

export const unitsOf = <Name extends TaskName>(name: Name, input: InputOf<Name>): number => COSTS[name].units(input)
export const unitsDone = <Name extends TaskName>(name: Name, input: InputOf<Name>, result: ResultOf<Name>): number => {
  const { units, done = units }: Cost<Name> = COSTS[name]
  return done(input, result)
}

/** Units of any task on one scale, which does not change with what is learned: to put answers in an order. */
export const standardMs = (name: TaskName, units: number): number => units * COSTS[name].unitMs

/** How long units of work take on this machine, by task. */
export interface Pace {
  /** [ms] */
  readonly msFor: (name: TaskName, units: number) => number
  readonly learn: (name: TaskName, units: number, ms: number) => void
  /** Trusts what was learned less: for a refusal that rests on it, or a slow hour would refuse for good and learn no more. */
  readonly forgetSome: (name: TaskName) => void
}

/** The first measurements count as so much work that is done [ms], and what was learned fades as twice of that comes in. */
const MEMORY_MS = 2_000
/** No input moves an estimate by more than this: one caller's odd requests must not shut out others' usual ones. */
const MOST_OFF = 4

/** Share of the way back to the figure that was measured once. */
const DOUBT = 0.1

export function pace(): Pace {
  const seen = new Map<TaskName, { ms: number; units: number }>()
  const of = (name: TaskName) => {
    const known = seen.get(name) ?? { ms: MEMORY_MS, units: MEMORY_MS / COSTS[name].unitMs }
    seen.set(name, known)
    return known
  }
  return {
    msFor: (name, units) => {
      const { unitMs } = COSTS[name]
      const { ms, units: done } = of(name)
      return units * Math.min(MOST_OFF * unitMs, Math.max(unitMs / MOST_OFF, ms / done))
    },
    forgetSome: (name) => {
      const known = of(name)
      known.ms += DOUBT * (known.units * COSTS[name].unitMs - known.ms)
    },
    learn: (name, units, ms) => {
      const known = of(name)
      known.ms += ms
      known.units += units
      if (known.ms > 2 * MEMORY_MS) {
        known.ms /= 2
        known.units /= 2
      }
    },
  }
}

/**
 * How long units of work take in one answer; undefined until that can be told.
 *
 * @param tellingMs so much of its work done, an answer tells better by itself than others do how long the rest takes
 */
export function paceOfOne(tellingMs: number) {
  const seen = new Map<TaskName, { readonly ms: number; readonly units: number }>()
  return {
    of: (name: TaskName): ((units: number) => number) | undefined => {
      const known = seen.get(name)
      return known === undefined || known.ms < tellingMs ? undefined : (units) => (units * known.ms) / known.units
    },
    learn: (name: TaskName, units: number, ms: number): void => {
      const known = seen.get(name) ?? { ms: 0, units: 0 }
      seen.set(name, { ms: known.ms + ms, units: known.units + units })
    },
  }
}
