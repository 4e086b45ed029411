import { thresholdOf } from '#shared/bearing/entry-threshold.ts'
import { PART_NAMES } from '#shared/bearing/wood-parts.ts'
import { BOARD_VARIATION, HYSTERESIS } from '#shared/data/wood-movement.ts'
import type { Ellipse } from '#shared/geometry/ellipse.ts'
import { ROOM_ROWS, type RoomName } from '#shared/movement/arrangements/parts.ts'
import { type Fit, gapOnCircle, outOfRound } from '#shared/movement/fit.ts'
import type { MovingBearing } from '#shared/movement/moving-bearing.ts'
import type { BallSize, BoardChange } from '#shared/movement/moving-wood.ts'
import type { Snapshot } from '#shared/movement/snapshot.ts'
import type { WoodState } from '#shared/movement/states.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { normalCdf, normalQuantile, normalQuantileBetween } from '#shared/statistics/normal.ts'
import { normalColumn } from '#shared/statistics/normal-points.ts'
import { playMoments, playQuantile } from '#shared/statistics/play-of-random-balls.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { holds } from './segments.ts'

/*
 * How often a bearing of this design runs, over what is not known on the day of making: how much each board moves, how far
 * the wood is from rest with the air (hysteresis), how the balls scatter, and the gap at which the last ball goes in. A fixed
 * set of quasi-random bearings is taken through the year, each running in a state or not, so equal requests have equal
 * answers. A chance is good to about 0.01, beside what its models leave out.
 */

/** How many bearings are taken through the year for an answer; fewer will do to choose by. */
const BEARINGS = 256

/** Columns of quasi-random numbers, after one for each board. */
const UNKNOWNS = 3
const HYSTERESIS_COLUMN = UNKNOWNS
const BALLS_COLUMN = UNKNOWNS + 1
const PLAY_COLUMN = UNKNOWNS + 2
const THRESHOLD_COLUMN = UNKNOWNS + 3

/** How often it does what it should; from 0 to 1. */
export interface Chances {
  /** The last ball goes in on the day of making. */
  readonly goesTogether: number
  /** It goes together and runs in every state, today among them, and no joint between segments opens. */
  readonly runsAllYear: number
  /** In some state the balls have a wider gap than the design allows: it still runs. */
  readonly knocks: number
  /** It goes together and runs, in each state. */
  readonly runs: readonly number[]
}

/** The need that a bearing may miss: ball gap, play or room; `excess` is how much its gap exceeds the widest allowed. */
export type NeedName = 'gap' | 'excess' | 'play' | RoomName
/**
 * How much more of something each bearing needs than it has, in the worst state of its year: below 0 it has enough. Sorted, one
 * entry a bearing.
 */
export type Needs = ReadonlyMap<NeedName, Float64Array>

/** A state with what a bearing of mean balls does in it. */
export interface FitIn {
  readonly state: WoodState
  readonly fit?: Fit
}

/**
 * @param year today first, then the states; where a state has its fit, its gap is that of the ellipse, else of a circle as long
 * @param bearings whole, from 1 to `POINTS`
 */
export function chancesOf(
  moving: MovingBearing,
  year: readonly FitIn[],
  bearings = BEARINGS,
): { chances: Chances; needs: Needs } {
  const { bearing, band, boards, season, input } = moving
  const { ballScatter, input: design } = bearing.resolved
  const ballCount = design.balls.count
  const fullRing = 'ballGap' in bearing ? bearing : undefined
  const assemblyGap = fullRing && 'assembly' in fullRing ? fullRing.assembly.assemblyGap : mm(0)
  const perBall = fullRing === undefined ? 0 : fullRing.gapPerBallDiameter / Math.sqrt(ballCount)
  const lossAt = playLosses(ballCount)
  const hysteresis = input.today.kind === 'air' || input.climate.kind !== 'moisture' ? HYSTERESIS.moisture : 0
  const needs = new Map<NeedName, Float64Array>()
  const need = (name: NeedName, of: number, much: number): void => {
    const list = needs.get(name) ?? new Float64Array(bearings).fill(Number.NEGATIVE_INFINITY)
    needs.set(name, list)
    list[of] = Math.max(itemAt(list, of), much)
  }
  const runs = year.map(() => 0)
  const corrections = year.map(({ state, fit }) => gapCorrection(moving, state, fit))
  let [goesTogether, runsAllYear, knocks] = [0, 0, 0]
  for (let i = 0; i < bearings; i++) {
    const drawn = (column: number): number => itemAt(normalColumn(column), i)
    const moistureOff = hysteresis * (2 * normalCdf(drawn(HYSTERESIS_COLUMN)) - 1)
    const times = Array.from({ length: boards }, (_, board) => timesOf(drawn(board)))
    const closer = perBall * drawn(BALLS_COLUMN)
    const { inRound, ofOpposite } = lossAt(drawn(BALLS_COLUMN), drawn(PLAY_COLUMN))
    const threshold = thresholdAt(assemblyGap, bearing.resolved.ballDiameter, drawn(THRESHOLD_COLUMN))
    const isIn = fullRing === undefined || fullRing.ballGap + ballScatter * closer >= threshold
    if (fullRing !== undefined) need('gap', i, threshold - fullRing.ballGap - ballScatter * closer)
    let [runsInAll, knocksInSome] = [isIn, false]
    for (const [s, { state }] of year.entries()) {
      const change = (moves: number): BoardChange => ({
        from: season.today.moistureContent,
        to: state === season.today ? state.moistureContent : Math.max(0, state.moistureContent + moistureOff),
        times: moves,
      })
      const moved = moving.after({ boards: times.map(change), balls: change(1), from: season.today, to: state })
      const scatter = scatterOf(ballScatter, moved.ball)
      let runsHere = isIn
      if (moved.bottom !== undefined && band !== undefined) {
        const round = gapOnCircle(meanRadius(moved.bottom), moved.ball.mean, ballCount) + scatter * closer
        const { least, most } = itemAt(corrections, s)
        const short = band.minBallGap - (round + least)
        need('gap', i, short)
        need('excess', i, round + most - band.maxBallGap)
        runsHere &&= short <= WITHIN
        knocksInSome ||= round + most > band.maxBallGap + WITHIN
      }
      if (moved.play !== undefined) {
        const share = shareOfRound(moved.raceways, scatter, ballCount)
        const left = moved.play.worst - scatter * (ofOpposite + share * (inRound - ofOpposite))
        need('play', i, -left)
        runsHere &&= left >= -WITHIN
      }
      for (const [name, { stops }] of ROOM_ROWS) {
        const left = moved.rooms[name]
        if (left === undefined) continue
        need(name, i, -left)
        runsHere &&= !stops || left >= -WITHIN
      }
      runsHere &&= PART_NAMES.every((part) => {
        const lobes = moved.raceways[part]?.segments
        return lobes === undefined || holds(lobes)
      })
      if (runsHere) runs[s] = itemAt(runs, s) + 1
      runsInAll &&= runsHere
    }
    goesTogether += isIn ? 1 : 0
    runsAllYear += runsInAll ? 1 : 0
    knocks += knocksInSome ? 1 : 0
  }
  for (const list of needs.values()) list.sort()
  return {
    chances: {
      goesTogether: goesTogether / bearings,
      runsAllYear: runsAllYear / bearings,
      knocks: knocks / bearings,
      runs: runs.map((count) => count / bearings),
    },
    needs,
  }
}

/** As in `troublesOf`: what is advised must not fail by its rounding. */
const WITHIN = 1e-5

const meanRadius = ({ along, across }: Ellipse): number => (along + across) / 2

/**
 * Three standard deviations: no board moves less than half of what is usual for its species, or half as much again.
 * Common practice, no source.
 */
const MOST_OFF = 3
const timesOf = (z: number): number => 1 + BOARD_VARIATION.relative * Math.min(Math.max(z, -MOST_OFF), MOST_OFF)

/** Wooden balls that have changed their shape lie in any direction. */
const scatterOf = (scatter: Mm, { turned }: BallSize): number => Math.sqrt(scatter * scatter + turned * turned)

/** How far the gap on an ellipse lies from that on a circle as large: it changes with the square of the out-of-roundness. */
function gapCorrection({ snapshotIn, bearing }: MovingBearing, state: WoodState, fit: Fit | undefined) {
  const ballGap = fit?.ballGap
  if (ballGap === undefined) return { least: 0, most: 0 }
  const { bottom, ball } = snapshotIn(state)
  if (bottom === undefined) return { least: 0, most: 0 }
  const round = gapOnCircle(meanRadius(bottom), ball.mean, bearing.resolved.input.balls.count)
  return { least: ballGap.least - round, most: ballGap.most - round }
}

/** How much play uneven balls cost, in standard deviations of one ball. */
interface PlayLoss {
  /** In a round ring. */
  readonly inRound: number
  /** In a ring so far out of round that only two balls that are opposite one another can hold it. */
  readonly ofOpposite: number
}

/**
 * The loss of play of a ring of random balls, for the standardised mean of its balls and an independent standard normal
 * number. Of the loss W in a round ring 2 z̄ is due to that mean and the rest independent of it, so W and z̄ are joined by their
 * correlation,  2 / (√Z · standard deviation of W).  Of Z/2 opposite pairs, each a sum of two normal numbers, the largest is
 * below w with the chance  Φ(w/√2)^(Z/2).  Derived here.
 */
function playLosses(ballCount: number): (ofMean: number, own: number) => PlayLoss {
  const balls = { play: mm(0), scatter: mm(1), ballCount }
  const { standardDeviation } = playMoments(balls)
  const correlation = Math.min(1, 2 / (Math.sqrt(ballCount) * standardDeviation))
  const rest = Math.sqrt(1 - correlation * correlation)
  return (ofMean, own) => {
    const z = correlation * ofMean + rest * own
    const inRound = -playQuantile({ ...balls, probability: normalCdf(-z) })
    const pair = Math.exp((2 / ballCount) * Math.log(normalCdf(z)))
    return { inRound, ofOpposite: Math.min(inRound, Math.SQRT2 * normalQuantile(Math.min(pair, MOST_LIKELY))) }
  }
}
const MOST_LIKELY = 1 - 1e-12

/**
 * How much of the loss in a round ring counts where the rings are out of round, the rest being that of opposite balls. Fitted
 * to exact rings of 8, 14 and 24 balls: the play is within a fifth of a ball's standard deviation.
 */
function shareOfRound({ outerRing, innerRing }: Snapshot['raceways'], scatter: number, ballCount: number): number {
  const out =
    (outerRing === undefined ? 0 : outOfRound(outerRing)) + (innerRing === undefined ? 0 : outOfRound(innerRing))
  if (out === 0) return 1
  const inScatters = (12 / ballCount) * (out / scatter)
  return 1 / (1 + inScatters * inScatters)
}

/** The gap at which the last ball goes in: normal, between none and the assembly gap. */
function thresholdAt(assemblyGap: Mm, ballDiameter: Mm, z: number): number {
  if (assemblyGap === 0) return 0
  return normalQuantileBetween(thresholdOf(assemblyGap, ballDiameter), 0, assemblyGap, normalCdf(z))
}
