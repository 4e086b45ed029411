import { requireAboveZero } from '#shared/precondition.ts'
import { normalCdf, normalDensity } from '#shared/statistics/normal.ts'
import * as defaults from './defaults.ts'
import type { ToolError, ToolName } from './input.ts'
import { chanceOvershot, type Room } from './room.ts'

/** A tool as the plan sees it. */
export interface PlannedTool extends ToolError {
  readonly name: ToolName
  /** Deepest radial cut that is made with it between two checks. */
  readonly most: number
  /** Depth of a stroke, where strokes are counted: the next cut is a whole number of them. */
  readonly stroke?: number
}

/** What a cut costs and what follows it. */
interface Step {
  readonly tool: PlannedTool
  readonly depth: number
  /** The chance that this cut alone ends too deep. */
  readonly overshoot: number
}

export interface Plan {
  /** Undefined where no cut is worth its risk: stop, or read again. */
  readonly step?: Step
  /** Where there is no step: the chance that after one more reading it is clear what to do. */
  readonly decidedByReading?: number
  /** The chance of ending too deep when the advice is followed to the end. */
  readonly overshoot: number
  /** Checks still to come, on average, this cut's included. */
  readonly checks: number
}

/** What the plan must keep to. All depths radial [mm]. */
export interface PlanInput {
  readonly room: Room
  readonly tools: readonly PlannedTool[]
  /** Standard deviation of the reading that follows each cut, as radial depth. */
  readonly readingDeviation: number
  /** Standard deviation of the room that the best further reading would leave, without a cut. */
  readonly deviationIfReadAgain: number
  readonly overshootRisk: number
}

/** Standard deviation with which a cut of a given depth comes out. */
export const cutDeviation = ({ absolute, relative }: ToolError, depth: number): number =>
  Math.sqrt(absolute * absolute + relative * relative * depth * depth)

/** In checks: what a scrapped ring costs at the least. The price goes up until the risk is kept. */
const LEAST_PRICE = 10
const PRICE_STEP = 3
const MOST_PRICES = 9
/** In checks: to stop in doubt costs another reading at the least, and more the larger the doubt. */
const PRICE_OF_READING_AGAIN = 2
const PRICE_OF_DOUBT = 4

/**
 * The cut that brings the groove into band in the fewest checks, with the chance of ending too deep kept below the
 * limit over all cuts to come.
 *
 * The state is how much room is believed to be left before the groove is too deep: a mean and a deviation. A cut moves
 * the mean and widens the deviation, a reading narrows it again. Counted from the last step back (dynamic programming),
 * each state gets the tool and depth that cost least, in checks plus the price of a scrapped ring; the price is raised
 * until the chance of scrap is below the limit. The first cut's risk is reckoned from the belief as it is, the steps
 * after it with normal distributions.
 *
 * @throws RangeError unless band and reading deviation are above 0
 */
export function planCuts(input: PlanInput): Plan {
  requireAboveZero('band', input.room.band)
  requireAboveZero('readingDeviation', input.readingDeviation)
  const stop = stoppedNow(input.room)
  if (isSettled(stop)) return stop
  const steps = firstSteps(input, stop)
  let plan: Plan | undefined
  let price = LEAST_PRICE
  for (let round = 0; round < MOST_PRICES; round++, price *= PRICE_STEP) {
    const next = cheapest(input, { stop, steps }, price)
    if (plan === undefined || next.overshoot < plan.overshoot) plan = next
    if (next.overshoot <= input.overshootRisk) return next
  }
  // No price is high enough: then no cut, unless the groove is past the limit as it stands.
  return plan === undefined || stop.overshoot <= input.overshootRisk
    ? standing(input, stop, futureOf(input, price), price)
    : plan
}

/** No cut: what that leaves, and whether a reading could tell more. */
const standing = (input: PlanInput, stop: Outlook, later: Future, price: number): Plan => ({
  overshoot: stop.overshoot,
  checks: 0,
  decidedByReading: chanceDecided(input, later, price),
})

/** What is to be expected from a state on, by the mean of the room left and its deviation. */
interface Outlook {
  readonly checks: number
  readonly overshoot: number
  /** The chance of a groove that is not in band at the end. */
  readonly doubt: number
}

const MEANS = 72
const DEVIATIONS = 4
/** A reading leaves a deviation between this share of its own and all of it. */
const LEAST_DEVIATION = 0.25
const STAGES = 5

interface Future {
  readonly from: number
  readonly step: number
  readonly deviations: readonly number[]
  readonly outlooks: readonly (readonly Outlook[])[]
}

function futureOf(input: PlanInput, price: number): Future {
  const { room, readingDeviation } = input
  const far = Math.max(room.mean + 3 * room.standardDeviation, 4 * room.band)
  const from = -2 * room.band
  const step = (far - from) / (MEANS - 1)
  const deviations = Array.from(
    { length: DEVIATIONS },
    (_, index) => readingDeviation * LEAST_DEVIATION ** (1 - index / (DEVIATIONS - 1)),
  )
  const states = (outlook: (mean: number, deviation: number) => Outlook): readonly (readonly Outlook[])[] =>
    deviations.map((deviation) => Array.from({ length: MEANS }, (_, index) => outlook(from + index * step, deviation)))
  let outlooks = states((mean, deviation) => stopped(room, mean, deviation))
  for (let stage = 1; stage <= STAGES; stage++) {
    const later: Future = { from, step, deviations, outlooks }
    outlooks = states((mean, deviation) => bestFrom(input, later, price, mean, deviation))
  }
  return { from, step, deviations, outlooks }
}

function stopped({ band }: Room, mean: number, deviation: number): Outlook {
  const overshoot = normalCdf(-mean / deviation)
  const inBand = normalCdf((band - mean) / deviation) - overshoot
  return { checks: 0, overshoot, doubt: 1 - inBand }
}

/** In band with enough certainty, or more likely too deep than not. */
const isSettled = ({ doubt, overshoot }: Outlook): boolean => doubt <= 1 - defaults.CONFIDENCE || overshoot > 0.5

const costOf = ({ checks, overshoot, doubt }: Outlook, price: number): number =>
  checks +
  price * overshoot +
  (checks === 0 && doubt > 1 - defaults.CONFIDENCE ? PRICE_OF_READING_AGAIN : 0) +
  PRICE_OF_DOUBT * doubt

function bestFrom(input: PlanInput, later: Future, price: number, mean: number, deviation: number): Outlook {
  let best = stopped(input.room, mean, deviation)
  if (best.doubt <= 1 - defaults.CONFIDENCE || mean < 0) return best
  let least = costOf(best, price)
  for (const tool of input.tools) {
    for (const depth of depthsOf(tool, input.room, mean)) {
      const outlook = afterCut(input, later, mean - depth, Math.hypot(deviation, cutDeviation(tool, depth)))
      const cost = costOf(outlook, price)
      if (cost < least) [best, least] = [outlook, cost]
    }
  }
  return best
}

const DEPTHS = 14

/** Depths worth trying with a tool: from where they begin to matter to the deep end of the band. */
function depthsOf({ most, absolute }: PlannedTool, { band }: Room, mean: number): readonly number[] {
  const deepest = Math.min(most, mean)
  const shallowest = Math.max(0, Math.min(deepest, mean - 3 * band - 6 * absolute))
  return Array.from(
    { length: DEPTHS },
    (_, index) => shallowest + ((index + 1) / DEPTHS) * (deepest - shallowest),
  ).filter((depth) => depth > 0)
}

// Gauss-Hermite, seven points, for a normal distribution (Abramowitz and Stegun 25.10, scaled by √2; from memory, tested
// by its moments).
export const NORMAL_NODES = [
  [0, 0.4571428571428571],
  [1.1544053947399682, 0.2401231786050127],
  [-1.1544053947399682, 0.2401231786050127],
  [2.3667594107345416, 0.0307571239675865],
  [-2.3667594107345416, 0.0307571239675865],
  [3.7504397177257425, 0.0005482688559722],
  [-3.7504397177257425, 0.0005482688559722],
] as const

/** A cut has been made; the next reading will show where the room lies, and narrow it. */
function afterCut({ readingDeviation }: PlanInput, later: Future, mean: number, deviation: number): Outlook {
  const narrowed = (deviation * readingDeviation) / Math.hypot(deviation, readingDeviation)
  const spread = Math.sqrt(Math.max(0, deviation * deviation - narrowed * narrowed))
  let [checks, overshoot, doubt] = [1, 0, 0]
  for (const [z, weight] of NORMAL_NODES) {
    const there = outlookAt(later, mean + z * spread, narrowed)
    checks += weight * there.checks
    overshoot += weight * there.overshoot
    doubt += weight * there.doubt
  }
  return { checks, overshoot, doubt }
}

function outlookAt({ from, step, deviations, outlooks }: Future, mean: number, deviation: number): Outlook {
  const row = nearestRow(deviations, deviation)
  const place = Math.min(Math.max((mean - from) / step, 0), MEANS - 1 - 1e-9)
  const left = Math.floor(place)
  const share = place - left
  const [a, b] = [outlooks[row]?.[left], outlooks[row]?.[left + 1]]
  if (a === undefined || b === undefined) return { checks: 0, overshoot: 1, doubt: 1 }
  return {
    checks: a.checks + share * (b.checks - a.checks),
    overshoot: a.overshoot + share * (b.overshoot - a.overshoot),
    doubt: a.doubt + share * (b.doubt - a.doubt),
  }
}

function nearestRow(deviations: readonly number[], deviation: number): number {
  const first = deviations[0] ?? deviation
  const ratio = (deviations[1] ?? first) / first
  const row = Math.round(Math.log(deviation / first) / Math.log(ratio))
  return Math.min(Math.max(row, 0), deviations.length - 1)
}

function stoppedNow(room: Room): Outlook {
  const overshoot = chanceOvershot(room, 0, 0)
  return { checks: 0, overshoot, doubt: 1 - (chanceOvershot(room, room.band, 0) - overshoot) }
}

/** The first step is chosen finer, and its own risk is reckoned from the belief itself. */
const FIRST_DEPTHS = 60

/** The cuts that could be made now, tool by tool, as deep as their own risk allows. */
function firstSteps({ room, tools, overshootRisk }: PlanInput, stop: Outlook): readonly Step[] {
  const most = Math.max(overshootRisk, stop.overshoot + overshootRisk / 2)
  return tools.flatMap((tool) => {
    const deepest = Math.min(tool.most, room.mean + 2 * room.standardDeviation)
    const steps: Step[] = []
    for (let index = 1; index <= FIRST_DEPTHS && deepest > 0; index++) {
      const depth = inStrokes(tool, (index / FIRST_DEPTHS) * deepest)
      if (!(depth > (steps.at(-1)?.depth ?? 0))) continue
      const overshoot = chanceOvershot(room, depth, cutDeviation(tool, depth))
      if (overshoot > most) break
      steps.push({ tool, depth, overshoot })
    }
    return steps
  })
}

/** Rounded down, for wood does not grow on again. */
const inStrokes = ({ stroke }: PlannedTool, depth: number): number =>
  stroke === undefined ? depth : Math.floor(depth / stroke) * stroke

interface Choices {
  readonly stop: Outlook
  readonly steps: readonly Step[]
}

/** What costs least now, with scrap at a price. */
function cheapest(input: PlanInput, { stop, steps }: Choices, price: number): Plan {
  const { room } = input
  const later = futureOf(input, price)
  let best: Plan | undefined
  let least = costOf(stop, price)
  for (const step of steps) {
    const deviation = Math.hypot(room.standardDeviation, cutDeviation(step.tool, step.depth))
    const outlook = afterCut(input, later, room.mean - step.depth, deviation)
    const cost = costOf(outlook, price)
    if (cost >= least) continue
    best = { step, overshoot: Math.max(outlook.overshoot, step.overshoot), checks: outlook.checks }
    least = cost
  }
  return best ?? standing(input, stop, later, price)
}

/** How far out, in deviations, and how finely the outcomes of a reading are looked at. */
const FURTHEST_OUTCOME = 4
const OUTCOMES = 81

/**
 * The chance that one more reading, without a cut, makes clear what to do: the groove is in band, or too deep, or there
 * is a cut that is worth its risk. The reading moves the mean of the room and leaves the smaller deviation.
 */
function chanceDecided(input: PlanInput, later: Future, price: number): number {
  const { room, overshootRisk } = input
  const left = Math.min(input.deviationIfReadAgain, room.standardDeviation)
  const spread = Math.sqrt(room.standardDeviation * room.standardDeviation - left * left)
  let [decided, all] = [0, 0]
  for (let outcome = 0; outcome < OUTCOMES; outcome++) {
    const z = FURTHEST_OUTCOME * ((2 * outcome) / (OUTCOMES - 1) - 1)
    const mean = room.mean + z * spread
    const stop = stopped(room, mean, left)
    const { checks, overshoot } = bestFrom(input, later, price, mean, left)
    const isWorthACut = checks > 0 && overshoot <= overshootRisk
    all += normalDensity(z)
    if (isSettled(stop) || isWorthACut) decided += normalDensity(z)
  }
  return decided / all
}
