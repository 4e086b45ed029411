import { requireAboveZero } from '#shared/precondition.ts'
import { normalCdf, normalDensity } from './normal.ts'

/*
 * What is believed of two numbers that are not known, x and y, of which cuts move x and nothing moves y: a density on a
 * grid, multiplied by the likelihood of each reading and smeared by each cut. No shape is assumed.
 *
 * The grid is laid along u = x − skew (y − middle), such that the surest reading sees u alone; else the ridge that it
 * leaves, narrow and slanting, would need a far finer grid.
 */

/** Evenly spaced nodes. */
interface Axis {
  readonly from: number
  readonly step: number
  readonly count: number
}

export interface Belief {
  readonly u: Axis
  readonly y: Axis
  readonly skew: number
  readonly middle: number
  /** Row by row, a row for each y; they add up to 1. */
  readonly weights: Float64Array
}

/** What was known before any reading: x anywhere in a range, y normally distributed. */
export interface Prior {
  readonly x: { readonly from: number; readonly to: number }
  readonly y: { readonly mean: number; readonly standardDeviation: number }
}

/** What a reading says: how likely it is for each x and y, and outside which x (for a given y) it is out of question. */
export interface Evidence {
  readonly logLikelihood: (x: number, y: number) => number
  readonly within?: (y: number) => { readonly from: number; readonly to: number }
}

/** A move of x that is known only so well: normal, but never backwards, for wood does not grow on again. */
interface Cut {
  readonly mean: number
  readonly standardDeviation: number
}

/** Readings at one state, and the cut that ended it. */
export interface Stage {
  readonly evidence: readonly Evidence[]
  readonly thenCut?: Cut
}

export interface Fineness {
  readonly u: number
  readonly y: number
}

const FINE: Fineness = { u: 257, y: 33 }

/** Below this share of the peak a cell is of no account. */
const NEGLIGIBLE = 1e-8
const REACH_OF_Y = 5.5
const MOST_PASSES = 5

/**
 * The belief after all stages.
 *
 * @param stages in the order in which they happened; the last one is now
 * @returns undefined where no x and y at all could give the readings
 * @throws RangeError for a range that is empty or a deviation that is not above 0
 */
export function believe(prior: Prior, stages: readonly Stage[], fineness: Fineness = FINE): Belief | undefined {
  const skew = skewFor(prior, stages)
  requireAboveZero('prior width', prior.x.to - prior.x.from)
  requireAboveZero('prior standardDeviation', prior.y.standardDeviation)
  let y = axis(
    prior.y.mean - REACH_OF_Y * prior.y.standardDeviation,
    prior.y.mean + REACH_OF_Y * prior.y.standardDeviation,
    fineness.y,
  )
  for (let pass = 1; ; pass++) {
    const belief = throughStages({ prior, skew }, stages, y, fineness)
    if (belief === undefined || pass === MOST_PASSES) return belief
    const narrower = liveRange(belief.y, rowSums(belief))
    if (narrower.to - narrower.from > 0.6 * (belief.y.count - 1) * belief.y.step) return belief
    y = axis(narrower.from, narrower.to, fineness.y)
  }
}

/** The direction in which the surest reading sees nothing: how far its x goes per y. */
function skewFor({ y }: Prior, stages: readonly Stage[]): number {
  const seen = stages.flatMap(({ evidence }) =>
    evidence.flatMap(({ within }) => {
      if (within === undefined) return []
      const middle = (at: number): number => (within(at).from + within(at).to) / 2
      const step = y.standardDeviation
      return [
        {
          width: within(y.mean).to - within(y.mean).from,
          skew: (middle(y.mean + step) - middle(y.mean - step)) / (2 * step),
        },
      ]
    }),
  )
  const surest = seen.reduce<{ width: number; skew: number } | undefined>(
    (best, each) => (best === undefined || each.width < best.width ? each : best),
    undefined,
  )
  return surest?.skew ?? 0
}

/** What was known beforehand, and the direction in which the grid is laid. */
interface Ground {
  readonly prior: Prior
  readonly skew: number
}

const axis = (from: number, to: number, count: number): Axis => ({ from, step: (to - from) / (count - 1), count })
const node = ({ from, step }: Axis, index: number): number => from + step * index
const end = (a: Axis): number => node(a, a.count - 1)

/** A density over u for each row of y, not normalised. */
type Density = (u: number, row: number) => number

function throughStages(ground: Ground, stages: readonly Stage[], y: Axis, fineness: Fineness): Belief | undefined {
  const { prior, skew } = ground
  const lean = (row: number): number => skew * (node(y, row) - prior.y.mean)
  let before: Density = (u, row) => {
    const x = u + lean(row)
    const ofY = normalDensity((node(y, row) - prior.y.mean) / prior.y.standardDeviation)
    return x >= prior.x.from && x <= prior.x.to ? ofY : 0
  }
  const leans = [lean(0), lean(y.count - 1)]
  let range = { from: prior.x.from - Math.max(...leans), to: prior.x.to - Math.min(...leans) }
  let belief: Belief | undefined
  for (const { evidence, thenCut } of stages) {
    belief = observed({ before, range, y, ground, count: fineness.u }, evidence)
    if (belief === undefined) return undefined
    if (thenCut === undefined) continue
    const smeared = smear(belief, thenCut, prior.x.to - Math.min(...leans))
    if (smeared === undefined) return undefined
    before = interpolated(smeared)
    range = { from: smeared.u.from, to: end(smeared.u) }
  }
  return belief
}

interface Setting {
  readonly before: Density
  readonly range: { readonly from: number; readonly to: number }
  readonly y: Axis
  readonly ground: Ground
  readonly count: number
}

/** The density times the likelihoods, on a grid that closes in on where anything is left. */
function observed(setting: Setting, evidence: readonly Evidence[]): Belief | undefined {
  let window = closedIn(setting, evidence)
  let belief: Belief | undefined
  for (let pass = 1; pass <= MOST_PASSES; pass++) {
    belief = multiplied(setting, evidence, axis(window.from, window.to, setting.count))
    if (belief === undefined) return undefined
    const live = liveRange(belief.u, columnSums(belief))
    if (live.to - live.from > 0.6 * (window.to - window.from)) return belief
    window = live
  }
  return belief
}

/** Where all readings leave something; where they contradict one another, all that any of them leaves. */
function closedIn({ range, y, ground }: Setting, evidence: readonly Evidence[]): { from: number; to: number } {
  const ranges = evidence.flatMap(({ within }) => {
    if (within === undefined) return []
    const ends = [0, (y.count - 1) / 2, y.count - 1].map((row) => {
      const at = node(y, row)
      const lean = ground.skew * (at - ground.prior.y.mean)
      const { from, to } = within(at)
      return { from: from - lean, to: to - lean }
    })
    return [{ from: Math.min(...ends.map(({ from }) => from)), to: Math.max(...ends.map(({ to }) => to)) }]
  })
  const from = Math.max(range.from, ...ranges.map((each) => each.from))
  const to = Math.min(range.to, ...ranges.map((each) => each.to))
  if (to > from) return { from, to }
  const hull = {
    from: Math.max(range.from, Math.min(...ranges.map((each) => each.from))),
    to: Math.min(range.to, Math.max(...ranges.map((each) => each.to))),
  }
  return hull.to > hull.from ? hull : range
}

function multiplied({ before, y, ground }: Setting, evidence: readonly Evidence[], u: Axis): Belief | undefined {
  const weights = new Float64Array(u.count * y.count)
  let highest = Number.NEGATIVE_INFINITY
  for (let row = 0; row < y.count; row++) {
    const atY = node(y, row)
    const lean = ground.skew * (atY - ground.prior.y.mean)
    for (let column = 0; column < u.count; column++) {
      const atU = node(u, column)
      const density = before(atU, row)
      let log = density > 0 ? Math.log(density) : Number.NEGATIVE_INFINITY
      for (const { logLikelihood } of evidence) {
        if (log === Number.NEGATIVE_INFINITY) break
        log += logLikelihood(atU + lean, atY)
      }
      weights[row * u.count + column] = log
      if (log > highest) highest = log
    }
  }
  if (highest === Number.NEGATIVE_INFINITY) return undefined
  return normalised({
    u,
    y,
    skew: ground.skew,
    middle: ground.prior.y.mean,
    weights: weights.map((log) => Math.exp(log - highest)),
  })
}

function normalised(belief: Belief): Belief {
  const sum = belief.weights.reduce((total, weight) => total + weight, 0)
  return { ...belief, weights: belief.weights.map((weight) => weight / sum) }
}

/**
 * The belief as it would be without a reading that it rests on: divided by that reading's likelihood, on the grid that it
 * has. Where that reading alone told where to look, what lies beyond the grid is missing.
 */
export function without(belief: Belief, { logLikelihood }: Evidence): Belief {
  const logs = new Float64Array(belief.weights.length).fill(Number.NEGATIVE_INFINITY)
  eachNode(belief, (x, y, index) => {
    const weight = belief.weights[index] ?? Number.NaN
    if (weight > 0) logs[index] = Math.log(weight) - logLikelihood(x, y)
  })
  const highest = logs.reduce((most, log) => (log < Number.POSITIVE_INFINITY ? Math.max(most, log) : most))
  return normalised({ ...belief, weights: logs.map((log) => Math.exp(Math.min(0, log - highest))) })
}

const columnSums = ({ u, y, weights }: Belief): Float64Array => {
  const sums = new Float64Array(u.count)
  for (let row = 0; row < y.count; row++) {
    for (let column = 0; column < u.count; column++)
      sums[column] = (sums[column] ?? Number.NaN) + (weights[row * u.count + column] ?? Number.NaN)
  }
  return sums
}

const rowSums = ({ u, y, weights }: Belief): Float64Array => {
  const sums = new Float64Array(y.count)
  for (let row = 0; row < y.count; row++) {
    for (let column = 0; column < u.count; column++)
      sums[row] = (sums[row] ?? Number.NaN) + (weights[row * u.count + column] ?? Number.NaN)
  }
  return sums
}

/** The part of an axis where the marginal density is of any account, with a node to spare on either side. */
function liveRange(along: Axis, sums: Float64Array): { from: number; to: number } {
  const least = NEGLIGIBLE * Math.max(...sums)
  const first = sums.findIndex((sum) => sum > least)
  const last = sums.findLastIndex((sum) => sum > least)
  return { from: node(along, Math.max(0, first - 1)), to: node(along, Math.min(along.count - 1, last + 1)) }
}

const REACH_OF_CUT = 6

/**
 * The belief moved and widened by a cut. Each cell counts as evenly filled, so no cut is too small for the grid. Cells
 * much finer than the cut's deviation are first put together, so that old and new cells are of one size and the chance
 * of a cut from one to another depends on how many lie between them alone.
 *
 * @param limit where x ends: what is cut past it is no groove any more
 * @returns undefined where nothing is left before that limit
 */
function smear(belief: Belief, cut: Cut, limit: number): Belief | undefined {
  const least = Math.max(0, cut.mean - REACH_OF_CUT * cut.standardDeviation)
  const most = Math.min(cut.mean + REACH_OF_CUT * cut.standardDeviation, limit - belief.u.from)
  const width = end(belief.u) - belief.u.from + Math.max(most, belief.u.step) - least
  const { u, y, weights } = grouped(belief, Math.min(cut.standardDeviation / 4, width / belief.u.count))
  const to = Math.min(end(u) + Math.max(most, u.step), limit)
  const from = u.from + least
  if (!(to > from)) return undefined
  const out: Axis = { from, step: u.step, count: Math.ceil((to - from) / u.step) + 1 }
  const chances = cutChances(cut, least, u, out)
  const smeared = new Float64Array(out.count * y.count)
  for (let row = 0; row < y.count; row++) {
    for (let of = 0; of < u.count; of++) {
      const weight = weights[row * u.count + of] ?? Number.NaN
      if (weight === 0) continue
      const apart = u.count - 1 - of
      for (let into = 0; into < out.count; into++) {
        const index = row * out.count + into
        smeared[index] = (smeared[index] ?? Number.NaN) + weight * (chances[apart + into] ?? Number.NaN)
      }
    }
  }
  return smeared.some((weight) => weight > 0) ? normalised({ ...belief, u: out, weights: smeared }) : undefined
}

/** The belief on cells of about a size, whole ones put together; as it is where they are not finer than that. */
function grouped(belief: Belief, size: number): Belief {
  const { u, y, weights } = belief
  const together = Math.floor(size / u.step)
  if (together < 2) return belief
  const count = Math.ceil(u.count / together)
  const sums = new Float64Array(count * y.count)
  for (let row = 0; row < y.count; row++) {
    for (let column = 0; column < u.count; column++) {
      const index = row * count + Math.floor(column / together)
      sums[index] = (sums[index] ?? Number.NaN) + (weights[row * u.count + column] ?? Number.NaN)
    }
  }
  const from = u.from + ((together - 1) / 2) * u.step
  return { ...belief, u: { from, step: together * u.step, count }, weights: sums }
}

/** The chance of a cut from the last cell of `u` to the first of `out`, and so on by one cell up to first and last. */
function cutChances(cut: Cut, least: number, u: Axis, out: Axis): Float64Array {
  const chances = new Float64Array(u.count - 1 + out.count)
  return chances.map((_, index) => cutChance(cut, least + (index - u.count + 1) * u.step, u.step))
}

/** The chance of a cut of some depth, within half a cell; below 0 there is none. */
function cutChance({ mean, standardDeviation }: Cut, depth: number, cell: number): number {
  const high = depth + cell / 2
  if (high <= 0) return 0
  const low = (Math.max(0, depth - cell / 2) - mean) / standardDeviation
  if (low > REACH_OF_CUT + 2 || (high - mean) / standardDeviation < -REACH_OF_CUT - 2) return 0
  return normalCdf((high - mean) / standardDeviation) - normalCdf(low)
}

function interpolated({ u, weights }: Belief): Density {
  return (at, row) => {
    const place = (at - u.from) / u.step
    const left = Math.floor(place)
    if (left < 0 || left >= u.count - 1) return 0
    const share = place - left
    const index = row * u.count + left
    return (weights[index] ?? Number.NaN) * (1 - share) + (weights[index + 1] ?? Number.NaN) * share
  }
}

/** Walks over all cells that are of any account. */
export function eachCell(belief: Belief, visit: (x: number, y: number, weight: number) => void): void {
  eachNode(belief, (x, y, index) => {
    const weight = belief.weights[index] ?? Number.NaN
    if (weight > NEGLIGIBLE * NEGLIGIBLE) visit(x, y, weight)
  })
}

function eachNode({ u, y, skew, middle }: Belief, visit: (x: number, y: number, index: number) => void): void {
  for (let row = 0; row < y.count; row++) {
    const atY = node(y, row)
    const lean = skew * (atY - middle)
    for (let column = 0; column < u.count; column++) visit(node(u, column) + lean, atY, row * u.count + column)
  }
}

/** By how much a figure differs from one cell to the next, in both directions of the grid together. */
export function cellSpan(
  { u, y, skew }: Belief,
  of: (x: number, y: number) => number,
  at: readonly [x: number, y: number],
): number {
  const [x, atY] = at
  const there = of(x, atY)
  return Math.hypot(of(x + u.step, atY) - there, of(x + skew * y.step, atY + y.step) - there)
}

/** The expected value of any figure of x and y. */
export function expectation(belief: Belief, of: (x: number, y: number) => number): number {
  let sum = 0
  eachCell(belief, (x, y, weight) => {
    sum += weight * of(x, y)
  })
  return sum
}
