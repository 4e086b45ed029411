import { itemAt } from '#shared/numbers/item-at.ts'
import { requireWhole, requireWithin } from '#shared/precondition.ts'
import { type Distribution, draw, drawWithoutReplacement } from './distribution.ts'
import { type Random, randomStream, SEEDS } from './random.ts'
import {
  accumulated,
  addTo,
  clear,
  countIn,
  emptyHistogram,
  type Histogram,
  type Interval,
  roomForEdges,
  shortestInterval,
  symmetricInterval,
} from './streaming-histogram.ts'

/*
 * Propagation of distributions by trials (JCGM 101:2008). Trials come in blocks. A block has a stream of random numbers of
 * its own, and its own sums; so blocks may be run anywhere and in any order, and give the same answer, to the last bit,
 * when they are put together in their order. Within a block they are drawn, evaluated and counted by the chunk: each step a
 * small loop over arrays that stay in the nearest cache.
 */

/** Trials that are worked on together. */
export const CHUNK = 250

/** JCGM 101:2008, 7.9.4 b: at least 10^4, and 100 / (1 − 0.95) is less. */
export const USUAL_BLOCK = 10_000

/** Blocks at the least, for their scatter to tell an error. */
const FEWEST_BLOCKS = 10

/** A stream that no block has. */
const PILOT_STREAM = SEEDS - 1
/** Numbers drawn aside use the stream so many further on, cyclically. */
const ASIDE = SEEDS / 2
const PILOT_CHUNKS = 8

/** Bins reach so many standard deviations either side. */
const REACH = 8

/** The share that a coverage interval holds. */
const COVERAGE = 0.95

/**
 * Random numbers that a model needs: so many rows, of a chunk each, row after row. Those drawn aside come from a stream of
 * their own, so that all others are drawn as they are without them.
 */
export interface Source {
  readonly rows: number
  readonly isAside?: boolean
  readonly draw: (random: Random, out: Float64Array) => void
}

/** The same source, drawn aside. */
export const aside = (source: Source): Source => ({ ...source, isAside: true })

/** Independent numbers of a distribution, as many as there are rows. */
export const independent = (distribution: Distribution, rows = 1): Source => ({
  rows,
  draw: (random, out) => draw(distribution, random, out, rows * CHUNK),
})

/** Different values of a list, as many as there are rows. */
export const withoutReplacement = (values: readonly number[], rows: number): Source => ({
  rows,
  draw: (random, out) => drawWithoutReplacement(values, rows, random, out, CHUNK),
})

/** Any function of random numbers, for a chunk of trials at once. */
export interface Model {
  readonly sources: readonly Source[]
  readonly outputs: number
  /** Puts a chunk of each output into `results`. */
  readonly evaluate: (drawn: readonly Float64Array[], results: readonly Float64Array[]) => void
}

/** The range in which an output is good, ends included. */
export interface Band {
  readonly min: number
  readonly max: number
  /**
   * For the first output alone: if its lower end is uncertain, values from `min` on that are equally likely to be it, in
   * ascending order.
   */
  readonly lows?: readonly number[]
}

/** The possible lower ends of a band, none above its upper end. */
export const lowsOf = ({ min, max, lows = [min] }: Band): readonly number[] => lows.map((low) => Math.min(low, max))

/** The trials to run. Plain data: whoever has the same model can run any part of it. */
export interface Plan {
  readonly seed: number
  readonly trials: number
  readonly blockSize: number
  /** For each output where its bins lie, and about what it is summed up. */
  readonly ranges: readonly { readonly centre: number; readonly reach: number }[]
  readonly bands: readonly Band[]
}

/** Sums of one output over a block, of its differences from the centre of its range. */
interface Sums {
  readonly first: number
  readonly second: number
  readonly third: number
  readonly fourth: number
  /** The block's own intervals of 95 %: the shortest, and the one with as much below as above it. */
  readonly shortest: Interval
  readonly symmetric: Interval
}

/** The results of consecutive blocks. */
export interface Tally {
  readonly blocks: readonly { readonly count: number; readonly outputs: readonly Sums[] }[]
  /** For each output. */
  readonly histograms: readonly Histogram[]
  /** How many trials had each output below (0), in (1) or above (2) its band: digits to base 3, the first output's last. */
  readonly joint: readonly number[]
}

export const BELOW = 0
export const WITHIN = 1
export const ABOVE = 2

/**
 * Looks where the outputs lie, by some trials that are not counted, and cuts the trials into blocks.
 *
 * @param trials whole, 1 at the least
 * @param bands one for each output
 * @throws RangeError for a model that gives what is no number
 */
export function planTrials(
  model: Model,
  { seed, trials, bands }: { readonly seed: number; readonly trials: number; readonly bands: readonly Band[] },
): Plan {
  requireWhole('trials', trials, 1)
  const seen = Array.from({ length: model.outputs }, () => new Float64Array(PILOT_CHUNKS * CHUNK))
  pilotTrials(model, seed, PILOT_CHUNKS, (_, results, chunk) => {
    results.forEach((result, output) => {
      seen[output]?.set(result, chunk * CHUNK)
    })
  })
  return {
    seed,
    trials,
    blockSize: Math.min(USUAL_BLOCK, Math.ceil(trials / FEWEST_BLOCKS)),
    ranges: seen.map(rangeOf),
    bands,
  }
}

/** Looks at some chunks of trials that no plan counts: what was drawn, and what came of it. */
export function pilotTrials(
  model: Model,
  seed: number,
  chunks: number,
  look: (drawn: readonly Float64Array[], results: readonly Float64Array[], chunk: number) => void,
): void {
  const room = roomFor(model)
  const streams = streamsOf(seed, PILOT_STREAM)
  for (let chunk = 0; chunk < chunks; chunk++) {
    runChunk(model, streams, room)
    look(room.drawn, room.results, chunk)
  }
}

function rangeOf(values: Float64Array): { readonly centre: number; readonly reach: number } {
  const centre = values.reduce((sum, value) => sum + value, 0) / values.length
  requireWithin('what the model gives', centre, -Number.MAX_VALUE, Number.MAX_VALUE)
  const squares = values.reduce((sum, value) => sum + (value - centre) * (value - centre), 0)
  const reach = REACH * Math.sqrt(squares / values.length)
  // An output that nothing moves still needs bins of some width.
  return { centre, reach: Math.max(reach, Math.abs(centre) * 1e-12, Number.EPSILON) }
}

export const blockCount = ({ trials, blockSize }: Plan): number => Math.ceil(trials / blockSize)

interface Room {
  readonly drawn: readonly Float64Array[]
  readonly results: readonly Float64Array[]
  readonly places: Uint16Array
  readonly below: Float64Array
}

const roomFor = ({ sources, outputs }: Model): Room => ({
  drawn: sources.map(({ rows }) => new Float64Array(rows * CHUNK)),
  results: Array.from({ length: outputs }, () => new Float64Array(CHUNK)),
  places: new Uint16Array(CHUNK),
  below: roomForEdges(),
})

interface Streams {
  readonly main: Random
  readonly aside: Random
}

const streamsOf = (seed: number, stream: number): Streams => ({
  main: randomStream(seed, stream),
  aside: randomStream(seed, (stream + ASIDE) % SEEDS),
})

function runChunk({ sources, evaluate }: Model, { main, aside }: Streams, { drawn, results }: Room): void {
  sources.forEach((source, index) => {
    source.draw(source.isAside === true ? aside : main, itemAt(drawn, index))
  })
  evaluate(drawn, results)
}

/**
 * Runs some of a plan's blocks.
 *
 * @param first number of the first of them, from 0
 * @param count how many; those that the plan does not have are left out
 */
export function runBlocks(model: Model, plan: Plan, first: number, count: number): Tally {
  const room = roomFor(model)
  const tally = emptyTally(plan)
  const own = emptyTally(plan).histograms
  const joint = new Float64Array(tally.joint.length)
  const blocks: Tally['blocks'][number][] = []
  for (let block = first; block < Math.min(first + count, blockCount(plan)); block++) {
    const trials = Math.min(plan.blockSize, plan.trials - block * plan.blockSize)
    const streams = streamsOf(plan.seed, block)
    const sums = plan.ranges.map(() => new Float64Array(4))
    for (let done = 0; done < trials; done += CHUNK) {
      const counted = Math.min(CHUNK, trials - done)
      runChunk(model, streams, room)
      room.results.forEach((values, output) => {
        countIn(itemAt(own, output), values, counted)
        sumUp(values, itemAt(plan.ranges, output).centre, counted, itemAt(sums, output))
      })
      countBands(room, plan.bands, counted, joint)
    }
    blocks.push({
      count: trials,
      outputs: sums.map((each, output) => blockSums(each, itemAt(own, output), room.below)),
    })
    own.forEach((histogram, output) => {
      addTo(itemAt(tally.histograms, output), histogram)
      clear(histogram)
    })
  }
  return { blocks, histograms: tally.histograms, joint: Array.from(joint) }
}

function blockSums(sums: Float64Array, histogram: Histogram, room: Float64Array): Sums {
  const [first = 0, second = 0, third = 0, fourth = 0] = sums
  const below = accumulated(histogram, room)
  return {
    first,
    second,
    third,
    fourth,
    shortest: shortestInterval(histogram, COVERAGE, below),
    symmetric: symmetricInterval(histogram, COVERAGE, below),
  }
}

function sumUp(values: Float64Array, centre: number, count: number, sums: Float64Array): void {
  let [first = 0, second = 0, third = 0, fourth = 0] = sums
  for (let index = 0; index < count; index++) {
    const apart = (values[index] ?? Number.NaN) - centre
    const square = apart * apart
    first += apart
    second += square
    third += square * apart
    fourth += square * square
  }
  sums[0] = first
  sums[1] = second
  sums[2] = third
  sums[3] = fourth
}

function countBands({ results, places }: Room, bands: readonly Band[], count: number, joint: Float64Array): void {
  places.fill(0)
  for (let output = results.length - 1; output >= 0; output--) {
    const values = itemAt(results, output)
    const { min, max } = itemAt(bands, output)
    for (let index = 0; index < count; index++) {
      const value = values[index] ?? Number.NaN
      // BELOW, WITHIN or ABOVE without a branch: which of them it will be, nothing can foretell.
      places[index] = 3 * (places[index] ?? Number.NaN) + Number(value >= min) + Number(value > max)
    }
  }
  const [values, lows] = [itemAt(results, 0), itemAt(bands, 0).lows ?? []]
  for (let index = 0; index < count; index++) {
    const place = places[index] ?? Number.NaN
    const within = lows.length > 1 && place % 3 === WITHIN ? shareReached(lows, values[index] ?? Number.NaN) : 1
    joint[place] = (joint[place] ?? Number.NaN) + within
    if (within < 1) joint[place - 1] = (joint[place - 1] ?? Number.NaN) + 1 - within
  }
}

/** A share of a trial is counted in parts that add up without rounding, in whatever order. */
const COUNTED = 2 ** 20

/** The share of lower ends that a value reaches; between two it grows evenly. */
function shareReached(lows: readonly number[], value: number): number {
  const last = lows.length - 1
  if (!(value > (lows[0] ?? Number.NaN))) return 0
  if (value >= (lows[last] ?? Number.NaN)) return 1
  let [low, high] = [0, last]
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if ((lows[middle] ?? Number.NaN) <= value) low = middle
    else high = middle
  }
  const from = lows[low] ?? Number.NaN
  const part = (value - from) / ((lows[high] ?? Number.NaN) - from)
  return Math.round(((low + part + 0.5) / lows.length) * COUNTED) / COUNTED
}

function emptyTally({ ranges }: Plan): Tally {
  let places = 1
  for (let output = 0; output < ranges.length; output++) places *= 3
  return {
    blocks: [],
    histograms: ranges.map(({ centre, reach }) => emptyHistogram(centre, reach)),
    joint: Array.from({ length: places }, () => 0),
  }
}

/** Tallies of parts of one plan as one; they must be in the order of their blocks. */
export function joined(plan: Plan, tallies: readonly Tally[]): Tally {
  const sum = emptyTally(plan)
  const joint = Array.from(sum.joint)
  for (const tally of tallies) {
    sum.histograms.forEach((histogram, output) => {
      addTo(histogram, itemAt(tally.histograms, output))
    })
    tally.joint.forEach((count, place) => {
      joint[place] = (joint[place] ?? Number.NaN) + count
    })
  }
  return { blocks: tallies.flatMap(({ blocks }) => blocks), histograms: sum.histograms, joint }
}

export const trialsIn = ({ blocks }: Pick<Tally, 'blocks'>): number => blocks.reduce((sum, { count }) => sum + count, 0)

/** The results of trials for one output, with standard errors. */
export interface TrialSummary {
  readonly mean: number
  readonly standardDeviation: number
  readonly shortest: Interval
  readonly standardError: {
    readonly mean: number
    readonly standardDeviation: number
    readonly low: number
    readonly high: number
  }
}

/**
 * Mean, standard deviation and the shortest interval of 95 %, with standard errors. That of the standard deviation is
 * from the fourth moment. The ends of a shortest interval settle only with the cube root of the trials (J. Kim and D.
 * Pollard, Cube root asymptotics, Annals of Statistics 18 (1990)): their error is the scatter of the blocks' own
 * intervals over the cube root of the number of blocks.
 *
 * @throws RangeError where fewer than two trials were run, or one gave what is no number
 */
export function summaryOf(tally: Tally, plan: Plan, output: number): TrialSummary {
  const { count, mean, variance, fourth, standardDeviation } = momentsOf(tally, plan, output)
  const histogram = itemAt(tally.histograms, output)
  const slow = Math.cbrt(tally.blocks.length)
  return {
    mean,
    standardDeviation,
    shortest: shortestInterval(histogram, COVERAGE),
    standardError: {
      mean: standardDeviation / Math.sqrt(count),
      standardDeviation:
        variance > 0 ? Math.sqrt(Math.max(0, fourth - variance * variance) / (4 * variance * count)) : 0,
      low: scatterOf(tally, ({ outputs }) => outputs[output]?.shortest.low ?? Number.NaN) / slow,
      high: scatterOf(tally, ({ outputs }) => outputs[output]?.shortest.high ?? Number.NaN) / slow,
    },
  }
}

/** Mean and central moments over all trials, the variance and the fourth over their number. */
function momentsOf(tally: Pick<Tally, 'blocks'>, { ranges }: Plan, output: number) {
  const count = trialsIn(tally)
  requireWhole('trials', count, 2)
  const { centre } = ranges[output] ?? { centre: Number.NaN }
  const per = (of: (sums: Sums) => number) => sumOver(tally, output, of) / count
  const first = per((sums) => sums.first)
  const second = per((sums) => sums.second)
  const square = first * first
  const variance = Math.max(0, second - square)
  const fourth = Math.max(
    0,
    per((sums) => sums.fourth) - 4 * first * per((sums) => sums.third) + 6 * square * second - 3 * square * square,
  )
  requireWithin('what the model gives', centre + first + fourth, -Number.MAX_VALUE, Number.MAX_VALUE)
  const standardDeviation = Math.sqrt((variance * count) / (count - 1))
  return { count, mean: centre + first, variance, fourth, standardDeviation }
}

function sumOver({ blocks }: Pick<Tally, 'blocks'>, output: number, of: (sums: Sums) => number): number {
  return blocks.reduce((sum, { outputs }) => {
    const sums = outputs[output]
    return sum + (sums === undefined ? Number.NaN : of(sums))
  }, 0)
}

/** Standard deviation of a figure from block to block. */
function scatterOf({ blocks }: Pick<Tally, 'blocks'>, of: (block: Tally['blocks'][number]) => number): number {
  if (blocks.length < 2) return 0
  const figures = blocks.map(of)
  const mean = figures.reduce((sum, figure) => sum + figure, 0) / figures.length
  const squares = figures.reduce((sum, figure) => sum + (figure - mean) * (figure - mean), 0)
  return Math.sqrt(squares / (figures.length - 1))
}

/**
 * Share of the trials of which something holds, with its standard error √(p (1 − p) / n). For that error one trial more
 * of each kind is counted in (Laplace's rule), so that what never happened is not called certain.
 */
export function shareOf(happened: number, count: number): { readonly value: number; readonly standardError: number } {
  const estimate = (happened + 1) / (count + 2)
  return { value: happened / count, standardError: Math.sqrt((estimate * (1 - estimate)) / count) }
}

/** How many trials had an output at a place of its band: BELOW, WITHIN or ABOVE. */
export function countAt({ joint }: Tally, output: number, place: number): number {
  let step = 1
  for (let before = 0; before < output; before++) step *= 3
  return joint.reduce((sum, count, index) => (Math.floor(index / step) % 3 === place ? sum + count : sum), 0)
}

/**
 * Whether an output's mean, standard deviation and symmetric interval are stable to so many significant digits of the
 * standard deviation: twice the standard error of each, from the scatter of the blocks, is no more than half a unit of
 * the last of these digits (JCGM 101:2008, 7.9.2 and 7.9.4, which leaves the choice of the interval).
 */
export const isStable = (tally: Pick<Tally, 'blocks'>, plan: Plan, output: number, digits: number): boolean =>
  stabilityOf(tally, plan, output, digits).every(
    ({ scatter, tolerance }) => 2 * scatter <= tolerance * Math.sqrt(tally.blocks.length),
  )

/**
 * How many blocks it takes until an output is stable, as far as those that were run tell: their scatter stays, and what all
 * of them come to is surer by the root of their number.
 */
export const blocksUntilStable = (tally: Pick<Tally, 'blocks'>, plan: Plan, output: number, digits: number): number =>
  Math.max(
    ...stabilityOf(tally, plan, output, digits).map(({ scatter, tolerance }) =>
      scatter === 0 ? 0 : ((2 * scatter) / tolerance) ** 2,
    ),
  )

/** Mean, deviation and both ends of the middle: how each scatters from block to block, and within what it has to be known. */
function stabilityOf(
  tally: Pick<Tally, 'blocks'>,
  plan: Plan,
  output: number,
  digits: number,
): readonly { readonly scatter: number; readonly tolerance: number }[] {
  const { standardDeviation } = momentsOf(tally, plan, output)
  const tolerance = numericalTolerance(standardDeviation, digits)
  const ofBlock: readonly ((block: Tally['blocks'][number]) => number)[] = [
    ({ count, outputs }) => (outputs[output]?.first ?? Number.NaN) / count,
    ({ count, outputs }) => {
      const { first, second } = outputs[output] ?? { first: Number.NaN, second: Number.NaN }
      return Math.sqrt(Math.max(0, second - (first * first) / count) / (count - 1))
    },
    ({ outputs }) => outputs[output]?.symmetric.low ?? Number.NaN,
    ({ outputs }) => outputs[output]?.symmetric.high ?? Number.NaN,
  ]
  return ofBlock.map((of) => ({ scatter: scatterOf(tally, of), tolerance }))
}

/**
 * Half a unit of the last of so many significant digits of a number (JCGM 101:2008, 7.9.2): for 0.0754 and two digits,
 * 75 × 10^-3, it is 0.0005. Of 0 it is 0.
 */
export function numericalTolerance(value: number, digits: number): number {
  if (value === 0) return 0
  const exponent = Number(value.toExponential(digits - 1).split('e')[1])
  return Number(`5e${exponent - digits}`)
}
