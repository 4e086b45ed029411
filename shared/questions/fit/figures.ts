import { chanceTaken } from '#shared/bearing/entry-threshold.ts'
import type { Posterior } from './posterior.ts'
import { depthForSeat, gapOf, pitchRadius, radiusForGap, seatDepth, xForPitch } from './ring-law.ts'
import type { Subject, Target } from './subject.ts'

/*
 * The one figure that the maker wants in band: the ball gap, or the play of an inner ring. It is computed at each point of the
 * posterior, as the groove is now and as it is once a film has come on it.
 */

/** By how much the finish still to come takes a cut back. */
const finishTakes = (subject: Subject, { finishAllowance }: Target): number =>
  subject.cuts === 'outer' ? subject.outer.xPerFinish * finishAllowance : 0

/** The play that the finish takes, all surfaces together. */
const playTaken = (subject: Subject, { finishAllowance }: Target): number =>
  subject.cuts === 'inner' ? subject.inner.playPerFinish * finishAllowance : 0

/** How much play the balls of a point take by being uneven: the circle inside them is so much smaller than inside equal ones. */
export const takenByUneven = ({ scatter, reduction }: Posterior, point: number): number =>
  (scatter[point] ?? Number.NaN) * (reduction[point] ?? Number.NaN)

/** The circle inside the balls at a point. */
function insideAt(posterior: Posterior, point: number): number {
  const { unknowns, outer, mean } = posterior
  const ball = mean[point] ?? Number.NaN
  const radius = pitchRadius(unknowns.subject.outer.seat, outer[point] ?? Number.NaN, ball)
  return 2 * radius - ball - takenByUneven(posterior, point)
}

/** The figure at a point, the groove being deeper by `further` than it is. */
export function figureAt(posterior: Posterior, point: number, further = 0): number {
  const { subject } = posterior.unknowns
  const ball = posterior.mean[point] ?? Number.NaN
  if (subject.cuts === 'outer') {
    const x = (posterior.outer[point] ?? Number.NaN) + further
    return gapOf(pitchRadius(subject.outer.seat, x, ball), ball, subject.balls.count)
  }
  const { landRadius, arcOnEdges } = subject.inner
  const depth = landRadius + (posterior.cut[point] ?? Number.NaN) + further
  const seat = arcOnEdges === undefined ? depth : seatDepth(arcOnEdges, depth, ball)
  return insideAt(posterior, point) - 2 * (landRadius - seat)
}

/** The figure that will be left once the finish is on. */
export const finishedFigureAt = (posterior: Posterior, target: Target, point: number): number => {
  const { subject } = posterior.unknowns
  return figureAt(posterior, point, -finishTakes(subject, target)) - playTaken(subject, target)
}

/** How much deeper the groove of a point must be for a figure, finish and all; below 0 it is past it. */
export function depthTo(posterior: Posterior, target: Target, point: number, figure: number): number {
  const { subject } = posterior.unknowns
  const ball = posterior.mean[point] ?? Number.NaN
  const cut = posterior.cut[point] ?? Number.NaN
  if (subject.cuts === 'outer') {
    const radius = radiusForGap(figure, ball, subject.balls.count)
    return xForPitch(subject.outer.seat, radius, ball) + finishTakes(subject, target) - cut
  }
  const { landRadius, arcOnEdges } = subject.inner
  const seat = landRadius - (insideAt(posterior, point) - figure - playTaken(subject, target)) / 2
  const depth = arcOnEdges === undefined ? seat : depthForSeat(arcOnEdges, seat, ball)
  return depth - landRadius - cut
}

export interface Chances {
  readonly tooTight: number
  readonly inBand: number
  readonly tooDeep: number
}

/**
 * How the groove stands. In band is a figure at most `max` at which the last ball is in (for play: at least `min`). `finished` is
 * the figure of every point with the finish on.
 */
export function chancesOf(posterior: Posterior, target: Target, finished: Float64Array): Chances {
  const { weights, threshold, refusedAt, takenAt } = posterior
  const isGap = posterior.unknowns.subject.cuts === 'outer'
  let [inBand, tooDeep] = [0, 0]
  for (let point = 0; point < weights.length; point++) {
    const weight = weights[point] ?? Number.NaN
    const figure = finished[point] ?? Number.NaN
    if (figure > target.max) tooDeep += weight
    else if (figure >= target.min) {
      inBand += isGap
        ? weight * chanceTaken(threshold, refusedAt[point] ?? Number.NaN, takenAt[point] ?? Number.NaN, figure)
        : weight
    }
  }
  inBand = Math.min(inBand, 1)
  tooDeep = Math.min(tooDeep, 1)
  return { tooTight: Math.max(0, 1 - inBand - tooDeep), inBand, tooDeep }
}
