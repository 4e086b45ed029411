import { cutDeviation, type ToolError } from '#shared/making/tool-error.ts'
import { normalCdf, normalQuantileBetween } from '#shared/statistics/normal.ts'
import { depthTo } from './figures.ts'
import type { Posterior } from './posterior.ts'
import type { Target } from './subject.ts'

/**
 * The room left for a cut, in depth: at each of some hundred even bearings that might be, how far it is to where the groove is good,
 * to the aim and to where it is too deep.
 */
export interface Room {
  readonly count: number
  /** Indices of the points in the posterior. */
  readonly points: Int32Array
  /** To where the last ball goes in and the band has begun. */
  readonly toBand: Float64Array
  readonly toAim: Float64Array
  /** To the upper end, less what a rule cannot tell apart. */
  readonly toSafe: Float64Array
  readonly toDeep: Float64Array
  readonly tool: Float64Array
  /** Mean of `toAim`: what remains. */
  readonly remaining: number
  /** Mean of the tool's bias. */
  readonly toolMean: number
}

const COUNT = 512
const BINS = 1024
/** So near to the upper end a rule cannot tell, of the band at the most. Derived here, from simulated rings. */
const SHRUNK_BY = 0.2
const SHRUNK_SHARE = 0.15

/** The room under a posterior; `finished` is the figure of every point with the finish on. */
export function roomOf(posterior: Posterior, target: Target, finished: Float64Array): Room {
  const chosen = evenSample(finished, posterior.weights)
  const { threshold, refusedAt, takenAt, tool } = posterior
  const isGap = posterior.unknowns.subject.cuts === 'outer'
  const room = {
    count: COUNT,
    points: chosen,
    toBand: new Float64Array(COUNT),
    toAim: new Float64Array(COUNT),
    toSafe: new Float64Array(COUNT),
    toDeep: new Float64Array(COUNT),
    tool: new Float64Array(COUNT),
  }
  const safe = target.max - Math.min(SHRUNK_BY, SHRUNK_SHARE * (target.max - target.min))
  let [remaining, toolMean] = [0, 0]
  chosen.forEach((point, index) => {
    // Golden steps: even over the sample, and in no relation to its order.
    const uniform = ((index + 0.5) * 0.6180339887498949) % 1
    const goesIn = isGap
      ? normalQuantileBetween(threshold, refusedAt[point] ?? Number.NaN, takenAt[point] ?? Number.NaN, uniform)
      : target.min
    room.toBand[index] = depthTo(posterior, target, point, Math.max(target.min, goesIn))
    room.toAim[index] = depthTo(posterior, target, point, target.aim)
    room.toSafe[index] = depthTo(posterior, target, point, safe)
    room.toDeep[index] = depthTo(posterior, target, point, target.max)
    room.tool[index] = tool[point] ?? Number.NaN
    remaining += (room.toAim[index] ?? Number.NaN) / COUNT
    toolMean += (tool[point] ?? Number.NaN) / COUNT
  })
  return { ...room, remaining, toolMean }
}

/** Points taken at even steps of weight, in the order of their figure, so that the tails are even as well. */
function evenSample(figures: Float64Array, weights: Float64Array): Int32Array {
  const order = inOrder(figures, weights)
  const chosen = new Int32Array(COUNT)
  let [sum, next] = [0, 0]
  for (const point of order) {
    sum += weights[point] ?? Number.NaN
    while (next < COUNT && sum >= (next + 0.5) / COUNT) chosen[next++] = point
  }
  const last = order.at(-1) ?? 0
  while (next < COUNT) chosen[next++] = last
  return chosen
}

/** The points that weigh anything, by the bin of their figure. */
function inOrder(figures: Float64Array, weights: Float64Array): Int32Array {
  let [least, most, count] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0]
  for (let point = 0; point < figures.length; point++) {
    if (!((weights[point] ?? Number.NaN) > NOTHING)) continue
    count++
    least = Math.min(least, figures[point] ?? Number.NaN)
    most = Math.max(most, figures[point] ?? Number.NaN)
  }
  const perBin = most > least ? (BINS - 1) / (most - least) : 0
  const starts = new Int32Array(BINS + 1)
  const binOf = (point: number): number => Math.floor(((figures[point] ?? Number.NaN) - least) * perBin)
  for (let point = 0; point < figures.length; point++) {
    if ((weights[point] ?? Number.NaN) > NOTHING)
      starts[binOf(point) + 1] = (starts[binOf(point) + 1] ?? Number.NaN) + 1
  }
  for (let bin = 0; bin < BINS; bin++) starts[bin + 1] = (starts[bin + 1] ?? Number.NaN) + (starts[bin] ?? Number.NaN)
  const order = new Int32Array(count)
  for (let point = 0; point < figures.length; point++) {
    if (!((weights[point] ?? Number.NaN) > NOTHING)) continue
    const bin = binOf(point)
    const place = starts[bin] ?? Number.NaN
    order[place] = point
    starts[bin] = place + 1
  }
  return order
}

const NOTHING = 1e-12

export interface AfterCut {
  readonly tooDeep: number
  /** In band and clear of its upper end. */
  readonly good: number
}

/** The chances after a cut of this nominal depth. */
export function afterCut(room: Room, depth: number, tool: ToolError): AfterCut {
  const deviation = Math.max(cutDeviation(tool, depth), 1e-6)
  let good = 0
  for (let index = 0; index < room.count; index++) {
    const cut = depth * (1 + (room.tool[index] ?? Number.NaN))
    const below = normalCdf(((room.toSafe[index] ?? Number.NaN) - cut) / deviation)
    const short = normalCdf(((room.toBand[index] ?? Number.NaN) - cut) / deviation)
    good += Math.max(0, below - short)
  }
  return { tooDeep: deepAfter(room, depth, tool), good: good / room.count }
}

/** The chance of being too deep after a cut. */
export function deepAfter(room: Room, depth: number, tool: ToolError): number {
  const deviation = Math.max(cutDeviation(tool, depth), 1e-6)
  let tooDeep = 0
  for (let index = 0; index < room.count; index++)
    tooDeep += normalCdf(
      (depth * (1 + (room.tool[index] ?? Number.NaN)) - (room.toDeep[index] ?? Number.NaN)) / deviation,
    )
  return tooDeep / room.count
}
