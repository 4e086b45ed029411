import { type ReadingError, readingDeviation } from '#shared/statistics/likelihood.ts'
import { openingOf } from './evidence.ts'
import type { Posterior } from './posterior.ts'
import { binds, FEWEST_IN_PLACE, type Reading, type ReadingKind } from './reading.ts'
import { gapOf, pitchRadius } from './ring-law.ts'
import { emptyPlace, insideBalls, type Place } from './unknowns.ts'

/** Why a reading is suggested. */
export type ReadingReason =
  | 'groove-unread'
  | 'no-word-on-last-ball'
  | 'refusal-has-no-figure'
  | 'readings-disagree'
  | 'cut-too-risky'
  | 'verdict-uncertain'

/** The decision that the reading serves. */
export type ReadingDecides = 'how-deep-to-cut' | 'whether-it-is-finished' | 'whether-it-is-too-deep'

/** A reading that can be made at this state. */
export interface NextReading {
  readonly kind: ReadingKind
  /** Only of an opening. */
  readonly ballsLeftOut?: number
  /** Only of a row. */
  readonly count?: number
  readonly why: ReadingReason
  readonly decides: ReadingDecides
  /** About what it will show. */
  readonly expected?: number
  /** Standard uncertainty of the figure now, and expected after this reading. */
  readonly uncertaintyNow: number
  readonly uncertaintyAfter: number
}

export type Offer = Omit<NextReading, 'why' | 'decides'>

/** The error that the next reading of a kind will have. */
export type ErrorToCome = (kind: ReadingKind) => ReadingError

interface Situation {
  readonly posterior: Posterior
  /** Even ones, enough to tell what a reading teaches. */
  readonly points: Int32Array
  /** The figure as it is now, at every point, and its standard deviation. */
  readonly figures: Float64Array
  readonly deviation: number
  /** Readings of the present state. */
  readonly readings: readonly Reading[]
  readonly word: 'in' | 'out' | undefined
  /** Whether a plug has measured the circle inside the balls: that does not change while the inner ring is cut. */
  readonly hasPlug: boolean
  readonly errorOf: ErrorToCome
}

/** The readings that can be made now, the one that teaches most first. */
export function offers(situation: Situation): readonly Offer[] {
  const possible =
    situation.posterior.unknowns.subject.cuts === 'outer' ? ofOuterRing(situation) : ofInnerRing(situation)
  return possible
    .map((each) => taught(situation, each))
    .toSorted((one, other) => one.uncertaintyAfter - other.uncertaintyAfter)
}

interface Possible {
  readonly kind: ReadingKind
  readonly ballsLeftOut?: number
  readonly count?: number
  readonly truth: (point: number) => number
}

function ofOuterRing(situation: Situation): readonly Possible[] {
  const { posterior, figures, word } = situation
  const { subject } = posterior.unknowns
  const gap = (point: number): number => (figures[point] ?? Number.NaN) + (posterior.hand[point] ?? Number.NaN)
  const goesIn = (point: number): boolean => (figures[point] ?? Number.NaN) >= posterior.threshold.mean
  const isIn = word === undefined ? chanceThat(situation, goesIn) > 0.5 : word === 'in'
  const opening = isIn ? undefined : openingOffer(situation)
  return [
    ...(isIn ? [{ kind: 'ball-gap', truth: gap } as const] : opening === undefined ? [] : [opening]),
    ...(subject.outer.seat.on === 'circle' ? [] : [caliper(posterior)]),
    { kind: 'ball-row', count: subject.balls.count, truth: row(posterior) },
  ]
}

const row =
  ({ unknowns: { subject }, mean, hand }: Posterior) =>
  (point: number): number =>
    subject.balls.count * (mean[point] ?? Number.NaN) + (hand[point] ?? Number.NaN)

const caliper = (posterior: Posterior): Possible => ({
  kind: 'groove-bottom-diameter',
  truth: (point) => 2 * Math.abs(posterior.cut[point] ?? Number.NaN),
})

/** An inner ring that binds has no play to read: the caliper does it, until it runs. */
function ofInnerRing(situation: Situation): readonly Possible[] {
  const { posterior, figures, readings, hasPlug } = situation
  const runs = !binds(readings) && chanceThat(situation, (point) => (figures[point] ?? Number.NaN) > 0) > 0.5
  const play: Possible = { kind: 'radial-play', truth: (point) => Math.max(0, figures[point] ?? Number.NaN) }
  const place = placeAt(posterior)
  const circle: Possible = {
    kind: 'plug',
    truth: (point) => insideBalls(posterior.unknowns.subject, place(point)),
  }
  return [...(runs ? [play] : []), caliper(posterior), ...(hasPlug ? [] : [circle])]
}

const chanceThat = ({ points }: Situation, holds: (point: number) => boolean): number =>
  points.reduce((sum, point) => sum + (holds(point) ? 1 : 0), 0) / points.length

/**
 * With so few balls in place the opening hardly tells where the groove is: their arc must be more than half a turn.
 * Derived here, from simulated rings.
 */
const LEAST_ARC = 1.15 / 2
/** As many balls stay out as it takes until the others go in with this chance. */
const SURELY_IN = 0.7

/** The opening with as few balls left out as will not go in: refused once more, one more is left out. */
function openingOffer(situation: Situation): Possible | undefined {
  const { posterior, readings } = situation
  const { subject } = posterior.unknowns
  const { count } = subject.balls
  const bare = readings.filter(({ kind }) => kind === 'last-ball-refused').length
  const least = Math.max(1, bare)
  for (let out = least; count - out >= FEWEST_IN_PLACE && (count - out - 1) / count > LEAST_ARC; out++) {
    const place = placeAt(posterior)
    const isIn = (point: number): boolean => {
      const ball = posterior.mean[point] ?? Number.NaN
      const radius = pitchRadius(subject.outer.seat, posterior.outer[point] ?? Number.NaN, ball)
      return gapOf(radius, ball, count - out) >= posterior.threshold.mean
    }
    if (chanceThat(situation, isIn) < SURELY_IN) continue
    return {
      kind: 'last-ball-opening',
      ballsLeftOut: out,
      truth: (point) => openingOf(subject, place(point), out) + (posterior.hand[point] ?? Number.NaN),
    }
  }
  return undefined
}

function placeAt(posterior: Posterior): (point: number) => Place {
  const place = emptyPlace()
  return (point) => {
    place.mean = posterior.mean[point] ?? Number.NaN
    place.scatter = posterior.scatter[point] ?? Number.NaN
    place.outer = posterior.outer[point] ?? Number.NaN
    place.reduction = posterior.reduction[point] ?? Number.NaN
    place.leftOut = posterior.leftOut[point] ?? Number.NaN
    return place
  }
}

/** The variance of a figure after a reading: Var g − Cov(g, f)² / (Var f + s²), exact for normal distributions. */
function taught({ points, figures, deviation, errorOf }: Situation, possible: Possible): Offer {
  const { kind, ballsLeftOut, count, truth } = possible
  const truths = Float64Array.from(points, truth)
  const own = Float64Array.from(points, (point) => figures[point] ?? Number.NaN)
  const [figure, expected] = [meanOf(own), meanOf(truths)]
  const covariance = (one: Float64Array, mean: number, other: Float64Array, itsMean: number): number =>
    one.reduce((sum, value, index) => sum + (value - mean) * ((other[index] ?? Number.NaN) - itsMean), 0) / one.length
  const both = covariance(own, figure, truths, expected)
  const noisy = covariance(truths, expected, truths, expected) + readingDeviation(errorOf(kind)) ** 2
  const share = (both * both) / Math.max(covariance(own, figure, own, figure) * noisy, Number.MIN_VALUE)
  return {
    kind,
    ...(ballsLeftOut === undefined ? {} : { ballsLeftOut }),
    ...(count === undefined ? {} : { count }),
    expected,
    uncertaintyNow: deviation,
    uncertaintyAfter: deviation * Math.sqrt(Math.max(0, 1 - share)),
  }
}

const meanOf = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0) / values.length
