import { itemAt } from '#shared/numbers/item-at.ts'
import { type Belief, eachCell } from '#shared/statistics/belief.ts'
import { normalCdf } from '#shared/statistics/normal.ts'

/**
 * What a cut has to reckon with, in radial depth: the room left until the groove is too deep, as a distribution, and
 * how far before that the band begins and the aim lies.
 */
export interface Room {
  readonly mean: number
  readonly standardDeviation: number
  /** Depth from the shallow end of the band to the deep end. */
  readonly band: number
  /** Depth from the aim to the deep end of the band. */
  readonly aim: number
  /** The distribution, in even bins. */
  readonly from: number
  readonly step: number
  readonly weights: Float64Array
}

export interface Reach {
  readonly deepest: (y: number) => number
  readonly shallowest: (y: number) => number
  readonly aim: (y: number) => number
}

const BINS = 512

/** The room under a belief, `reach` giving the x at both ends of the band and at the aim, for each y. */
export function roomOf(belief: Belief, reach: Reach): Room {
  const rooms: number[] = []
  const chances: number[] = []
  let [mean, square, band, aim] = [0, 0, 0, 0]
  let row = { y: Number.NaN, deepest: 0, shallowest: 0, aim: 0 }
  eachCell(belief, (x, y, weight) => {
    if (y !== row.y) row = { y, deepest: reach.deepest(y), shallowest: reach.shallowest(y), aim: reach.aim(y) }
    const room = row.deepest - x
    rooms.push(room)
    chances.push(weight)
    mean += weight * room
    square += weight * room * room
    band += weight * (row.deepest - row.shallowest)
    aim += weight * (row.deepest - row.aim)
  })
  const from = rooms.reduce((least, room) => Math.min(least, room), Number.POSITIVE_INFINITY)
  const to = rooms.reduce((most, room) => Math.max(most, room), Number.NEGATIVE_INFINITY)
  const step = Math.max((to - from) / BINS, Number.MIN_VALUE)
  const weights = new Float64Array(BINS + 1)
  rooms.forEach((room, index) => {
    const bin = Math.min(BINS, Math.round((room - from) / step))
    weights[bin] = itemAt(weights, bin) + itemAt(chances, index)
  })
  return { mean, standardDeviation: Math.sqrt(Math.max(0, square - mean * mean)), band, aim, from, step, weights }
}

/** A sum of weights that add up to 1 within rounding. */
const asChance = (sum: number): number => Math.min(1, sum)

/** The chance that less room than `depth` is left: that a cut of just this depth, free of error, is too deep. */
export function chanceBelow(room: Room, depth: number): number {
  let chance = 0
  for (let bin = 0; bin < room.weights.length; bin++) {
    if (room.from + bin * room.step < depth) chance += itemAt(room.weights, bin)
  }
  return asChance(chance)
}

/** The same for a cut that comes out with a standard deviation. */
export function chanceOvershot(room: Room, depth: number, deviation: number): number {
  if (deviation === 0) return chanceBelow(room, depth)
  let chance = 0
  for (let bin = 0; bin < room.weights.length; bin++) {
    const weight = itemAt(room.weights, bin)
    if (weight > 0) chance += weight * normalCdf((depth - room.from - bin * room.step) / deviation)
  }
  return asChance(chance)
}
