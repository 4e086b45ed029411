import { SCATTER_TIMES } from '#shared/bearing/ball-lot.ts'
import { chanceBetween, type Threshold } from '#shared/bearing/entry-threshold.ts'
import { itemAt, lastOf } from '#shared/numbers/item-at.ts'
import { logReading } from '#shared/statistics/likelihood.ts'
import { logNormalCdf } from '#shared/statistics/normal.ts'
import { normalColumn, POINTS } from '#shared/statistics/normal-points.ts'
import type { Evidence } from './evidence.ts'
import { lowerFactor, type Proposal, proposalFor, setCut } from './proposal.ts'
import { emptyPlace, type Place, type Unknowns } from './unknowns.ts'

/**
 * The posterior of an unfinished bearing: about four thousand possible bearings, each with its weight. The groove is the
 * present one.
 */
export interface Posterior {
  readonly unknowns: Unknowns
  readonly threshold: Threshold
  /** They add up to 1. */
  readonly weights: Float64Array
  readonly mean: Float64Array
  readonly scatter: Float64Array
  readonly outer: Float64Array
  readonly cut: Float64Array
  readonly tool: Float64Array
  readonly hand: Float64Array
  readonly leftOut: Float64Array
  readonly reduction: Float64Array
  /** The largest gap that refused the last ball, and the least that took it. */
  readonly refusedAt: Float64Array
  readonly takenAt: Float64Array
  /** So many even points would be as good. */
  readonly effectivePoints: number
  /** Predictions of each piece of evidence: under the stated scatter, and under the widest scatter considered. */
  readonly predictions: Proposal['predictions']
  readonly widestPredictions: Proposal['predictions']
}

/** Points are drawn a little wider than the proposal, and every so many much wider, so that its tails are never too thin. */
const NARROW = 1.05
const WIDE = 1.5
const EVERY = 8
const [TO_NARROW, TO_WIDE] = [0.5 / (NARROW * NARROW), 0.5 / (WIDE * WIDE)]
/** No scatter gets fewer of the points than this share. */
const LEAST_SHARE = 0.04
/** With fewer effective points than this share, points are drawn anew from the moments of the first. */
const WELL_SPREAD = 0.25
const MOST_ROUNDS = 3

/** One possible scatter of the balls, as a multiple of the stated scatter. */
interface Class {
  readonly times: number
  readonly chance: number
  readonly proposal: Proposal
  readonly count: number
}

/** The posterior under the evidence of all states. */
export function posteriorOf(unknowns: Unknowns, evidence: readonly Evidence[], threshold: Threshold): Posterior {
  let classes = classesOf(unknowns, evidence, threshold)
  for (let round = 1; ; round++) {
    const drawn = draw(unknowns, evidence, threshold, classes)
    if (drawn.posterior.effectivePoints >= WELL_SPREAD * POINTS || round === MOST_ROUNDS) return drawn.posterior
    classes = redrawn(classes, drawn, unknowns.columns)
  }
}

function classesOf(unknowns: Unknowns, evidence: readonly Evidence[], threshold: Threshold): readonly Class[] {
  const { balls } = unknowns.subject
  const isKnown = balls.meanUncertainty !== undefined || balls.scatter === 0
  const times = isKnown ? ([[1, 1]] as const) : SCATTER_TIMES
  const proposals = times.map(([each]) => proposalFor(unknowns, evidence, threshold, each))
  const most = Math.max(...proposals.map(({ logEvidence }) => logEvidence))
  return apportioned(
    times.map(([each, chance], index) => ({ times: each, chance, proposal: itemAt(proposals, index) })),
    times.map(([, chance], index) => chance * Math.exp(itemAt(proposals, index).logEvidence - most)),
  )
}

function apportioned(classes: readonly Omit<Class, 'count'>[], likely: readonly number[]): readonly Class[] {
  const total = likely.reduce((sum, each) => sum + each, 0)
  const shares = likely.map((each) => Math.max(each / total, LEAST_SHARE))
  const sum = shares.reduce((all, each) => all + each, 0)
  return classes.map((each, index) => ({ ...each, count: Math.floor((itemAt(shares, index) / sum) * POINTS) }))
}

interface Drawn {
  readonly posterior: Posterior
  readonly xi: Float64Array
}

function draw(
  unknowns: Unknowns,
  evidence: readonly Evidence[],
  threshold: Threshold,
  classes: readonly Class[],
): Drawn {
  const { columns, states } = unknowns
  const count = classes.reduce((sum, each) => sum + each.count, 0)
  const xi = scratchOf(count * columns)
  const posterior = columnsOf(count)
  const place = emptyPlace()
  const cuts = new Float64Array(states)
  const eta = new Float64Array(columns)
  const isOuter = unknowns.subject.cuts === 'outer'
  const normals = Array.from({ length: columns }, (_, column) => normalColumn(column))
  let point = 0
  for (const { times, chance, proposal, count: drawn } of classes) {
    const { mean, factor } = proposal
    const errors = errorsUnder(unknowns, evidence, times)
    let logDensity = Math.log(chance / drawn)
    for (let column = 0; column < columns; column++)
      logDensity += Math.log(factor[column * columns + column] ?? Number.NaN)
    const shareNarrow = (1 - 1 / EVERY) * NARROW ** -columns
    const shareWide = (1 / EVERY) * WIDE ** -columns
    for (let index = 0; index < drawn; index++, point++) {
      const at = point * columns
      const wide = index % EVERY === 0 ? WIDE : NARROW
      let logWeight = logDensity
      let square = 0
      for (let row = 0; row < columns; row++) {
        const normal = wide * (normals[row]?.[index] ?? Number.NaN)
        eta[row] = normal
        let sum = mean[row] ?? Number.NaN
        for (let column = 0; column <= row; column++)
          sum += (factor[row * columns + column] ?? Number.NaN) * (eta[column] ?? Number.NaN)
        xi[at + row] = sum
        square += normal * normal
        logWeight -= 0.5 * sum * sum
      }
      // log(narrow e^a + wide e^b), with one of the exponentials taken out.
      logWeight += TO_NARROW * square - Math.log(shareNarrow + shareWide * Math.exp((TO_NARROW - TO_WIDE) * square))
      unknowns.unfold(xi, at, times, place, cuts)
      let refusedAt = Number.NEGATIVE_INFINITY
      let takenAt = Number.POSITIVE_INFINITY
      for (let each = 0; each < evidence.length; each++) {
        const piece = evidence[each] as Evidence
        setCut(place, cuts[piece.state] ?? Number.NaN, isOuter)
        if (piece.says === 'figure') {
          logWeight += logReading(piece.value, piece.truth(place), errors[each] as Errors)
        } else if (piece.says === 'above') {
          logWeight += logNormalCdf(piece.truth(place) / piece.deviation)
        } else {
          const gap = piece.truth(place)
          if (piece.isIn) takenAt = Math.min(takenAt, gap)
          else refusedAt = Math.max(refusedAt, gap)
        }
      }
      if (refusedAt !== Number.NEGATIVE_INFINITY || takenAt !== Number.POSITIVE_INFINITY)
        logWeight += Math.log(chanceBetween(threshold, refusedAt, takenAt))
      setCut(place, cuts[states - 1] ?? Number.NaN, isOuter)
      keep(posterior, point, place)
      posterior.weights[point] = logWeight
      posterior.refusedAt[point] = refusedAt
      posterior.takenAt[point] = takenAt
    }
  }
  const effectivePoints = normalised(posterior.weights)
  return {
    xi,
    posterior: {
      ...posterior,
      unknowns,
      threshold,
      effectivePoints,
      predictions: itemAt(classes, 0).proposal.predictions,
      widestPredictions: lastOf(classes).proposal.predictions,
    },
  }
}

const COLUMNS = [
  ...(['mean', 'scatter', 'outer', 'cut', 'tool', 'hand', 'leftOut', 'reduction'] as const satisfies (keyof Place)[]),
  ...(['weights', 'refusedAt', 'takenAt'] as const),
]
type Columns = Readonly<Record<(typeof COLUMNS)[number], Float64Array>>

/** Room for the points and their ξ, used again by the next answer: none keeps it. */
let room: Columns | undefined

function columnsOf(count: number): Columns {
  const named = (array: (name: keyof Columns) => Float64Array): Columns =>
    Object.fromEntries(COLUMNS.map((name) => [name, array(name)])) as Columns
  room ??= named(() => new Float64Array(POINTS))
  const whole = room
  return named((name) => whole[name].subarray(0, count))
}

let scratch = new Float64Array(0)

function scratchOf(length: number): Float64Array {
  if (scratch.length < length) scratch = new Float64Array(length)
  return scratch
}

type Errors = { readonly graduation: number; readonly standardUncertainty: number }

/** The errors of all figures, what single balls add included. */
function errorsUnder(
  { subject }: Unknowns,
  evidence: readonly Evidence[],
  times: number,
): readonly (Errors | undefined)[] {
  return evidence.map((each) => {
    if (each.says !== 'figure') return undefined
    const ofScatter = each.perScatter * subject.balls.scatter * times
    const { graduation, standardUncertainty: hand } = each.error
    return { graduation, standardUncertainty: Math.sqrt(hand * hand + ofScatter * ofScatter) }
  })
}

function keep(columns: Columns, point: number, place: Place): void {
  columns.mean[point] = place.mean
  columns.scatter[point] = place.scatter
  columns.outer[point] = place.outer
  columns.cut[point] = place.cut
  columns.tool[point] = place.tool
  columns.hand[point] = place.hand
  columns.leftOut[point] = place.leftOut
  columns.reduction[point] = place.reduction
}

/** Logarithms of weights become weights that add up to 1. Returns how many even points would be as good: 1 / Σ w². */
function normalised(weights: Float64Array): number {
  let most = Number.NEGATIVE_INFINITY
  for (const weight of weights) if (weight > most) most = weight
  let sum = 0
  for (let point = 0; point < weights.length; point++) {
    const weight = Math.exp((weights[point] ?? Number.NaN) - most)
    weights[point] = weight
    sum += weight
  }
  let squares = 0
  for (let point = 0; point < weights.length; point++) {
    const weight = (weights[point] ?? Number.NaN) / sum
    weights[point] = weight
    squares += weight * weight
  }
  return 1 / squares
}

/** New proposals with the moments of what was drawn, where enough of it counts. */
function redrawn(classes: readonly Class[], { posterior, xi }: Drawn, columns: number): readonly Class[] {
  let from = 0
  const found = classes.map(({ times, chance, proposal, count }) => {
    const [start, end] = [from, from + count]
    from = end
    return { times, chance, ...momentsOf(posterior.weights, xi, columns, [start, end], proposal) }
  })
  return apportioned(
    found.map(({ times, chance, proposal }) => ({ times, chance, proposal })),
    found.map(({ share }) => share),
  )
}

/** With fewer effective points than this for each column a covariance is mostly noise: then the spread alone is taken over. */
const POINTS_A_COLUMN = 8

function momentsOf(
  weights: Float64Array,
  xi: Float64Array,
  columns: number,
  [start, end]: readonly [number, number],
  proposal: Proposal,
): { readonly share: number; readonly proposal: Proposal } {
  let [share, squares] = [0, 0]
  const mean = new Float64Array(columns)
  for (let point = start; point < end; point++) {
    const weight = weights[point] ?? Number.NaN
    share += weight
    squares += weight * weight
    for (let column = 0; column < columns; column++)
      mean[column] = (mean[column] ?? Number.NaN) + weight * (xi[point * columns + column] ?? Number.NaN)
  }
  if (!(share > 0 && (share * share) / squares > POINTS_A_COLUMN * columns)) return { share, proposal }
  const covariance = new Float64Array(columns * columns)
  for (let column = 0; column < columns; column++) mean[column] = (mean[column] ?? Number.NaN) / share
  for (let point = start; point < end; point++) {
    const weight = (weights[point] ?? Number.NaN) / share
    if (weight < 1e-9) continue
    for (let row = 0; row < columns; row++) {
      const off = weight * ((xi[point * columns + row] ?? Number.NaN) - (mean[row] ?? Number.NaN))
      for (let column = 0; column <= row; column++)
        covariance[row * columns + column] =
          (covariance[row * columns + column] ?? Number.NaN) +
          off * ((xi[point * columns + column] ?? Number.NaN) - (mean[column] ?? Number.NaN))
    }
  }
  return { share, proposal: { ...proposal, mean, factor: lowerFactor(covariance, columns, columns) } }
}
