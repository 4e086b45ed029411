import { evenPlayLoss } from '#shared/geometry/even-play-loss.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { CHUNK, pilotTrials } from '#shared/statistics/monte-carlo.ts'
import type { Check } from './checked.ts'
import { isOutOfRound } from './climate-movement.ts'
import { drawLobes, roomForLobes } from './drawn-lobes.ts'
import { modelOf } from './model-of.ts'
import { type TrialModel, trialModel } from './trials.ts'
import { weatherOf } from './weather.ts'

/*
 * What unequal balls and lobes take of the play together: there is no table of it, for lobes of any size come with any balls.
 * But it is independent of the mean of the balls and of all that moves the rings as a whole, and those have a law without a
 * trial. So a few thousand rings of balls give the spread of the play as exactly as many more whole bearings do.
 */

/** Play that balls and lobes take beside the mean of the balls [mm], of equally likely rings. */
export interface LobedLosses {
  /** For each straight piece of the weather; for the only one where there is no weather. */
  readonly ofPieces: readonly Float64Array[]
  /** Over all pieces, each counting alike. */
  readonly mean: number
}

/** Whether some ring is no circle, of the lathe or of the weather. */
export const hasLobes = ({ differences, climate }: Check): boolean =>
  differences.has('outOfRound') || (climate?.states.some(isOutOfRound) ?? false)

/** @param chunks of rings; more than two to each straight piece of the weather */
export function lobedLosses(check: Check, chunks: number): LobedLosses {
  const { states = [], statesAPiece = 1 } = check.climate ?? {}
  const pieces = Math.max(1, states.length / statesAPiece)
  const rings = chunks * CHUNK
  const ofPieces = Array.from({ length: pieces }, (_, piece) => new Float64Array(Math.ceil((rings - piece) / pieces)))
  const model = { ...trialModel(check), evaluate: () => {} }
  const lossesOf = playLosses(check)
  const [state, losses] = [new Float64Array(CHUNK), new Float64Array(CHUNK)]
  pilotTrials(model, check.input.seed, chunks, (drawn, _, chunk) => {
    // The pieces in turn, at places evenly spread over each.
    const ringOf = (trial: number): number => chunk * CHUNK + trial
    for (let trial = 0; trial < CHUNK; trial++) {
      const place = Math.floor(((ringOf(trial) + 0.5) / rings) * statesAPiece)
      state[trial] = (ringOf(trial) % pieces) * statesAPiece + place
    }
    lossesOf(model, drawn, state, 'mean-of-its-balls', losses)
    losses.forEach((loss, trial) => {
      itemAt(ofPieces, ringOf(trial) % pieces)[Math.floor(ringOf(trial) / pieces)] = loss
    })
  })
  return { ofPieces, mean: meanOfAll(ofPieces.map(meanOfAll)) }
}

export const meanOfAll = (values: Float64Array | readonly number[]): number => {
  let sum = 0
  for (const value of values) sum += value
  return sum / values.length
}

/**
 * The play that the balls of each trial take, with its lobes, by the linear program at equal spacing [mm]: more than balls of the
 * design's size do, or than those of the mean size in that ring. Lobes are so much more room for a ball in their direction.
 *
 * @param state of the weather, by trial; undefined without weather
 */
export function playLosses(check: Check) {
  const { ballDiameter, input } = check.bearing.resolved
  const { count } = input.balls
  const { perUnevenness } = modelOf(check).slopes.play
  const weather = check.climate && weatherOf(check.climate)
  const isLobed = hasLobes(check)
  const lobes = roomForLobes()
  const still = new Float64Array(CHUNK)
  const alike = new Float64Array(count * CHUNK).fill(ballDiameter)
  const lossOf = evenPlayLoss(count)
  const turns = Array.from({ length: count }, (_, ball) => (4 * Math.PI * ball) / count)
  const [cosines, sines] = [Float64Array.from(turns, Math.cos), Float64Array.from(turns, Math.sin)]
  const larger = new Float64Array(count)
  return (
    { names }: Pick<TrialModel, 'names'>,
    drawn: readonly Float64Array[],
    state: Float64Array | undefined,
    beside: 'mean-of-its-balls' | 'design',
    out: Float64Array,
  ): void => {
    const row = (name: TrialModel['names'][number]): Float64Array | undefined => drawn[names.indexOf(name)]
    const balls = row('ballDiameter') ?? alike
    if (isLobed) drawLobes(row, state ?? still, weather, lobes)
    const { amplitude, cosine, sine } = lobes.both
    for (let trial = 0; trial < CHUNK; trial++) {
      const along = (amplitude[trial] ?? Number.NaN) * (cosine[trial] ?? Number.NaN)
      const aslant = (amplitude[trial] ?? Number.NaN) * (sine[trial] ?? Number.NaN)
      let sum = 0
      for (let ball = 0; ball < count; ball++) {
        const own = perUnevenness * ((balls[ball * CHUNK + trial] ?? Number.NaN) - ballDiameter)
        sum += own
        larger[ball] = own - along * (cosines[ball] ?? Number.NaN) - aslant * (sines[ball] ?? Number.NaN)
      }
      // Balls that are all larger by so much take twice that.
      out[trial] = lossOf(larger) - (beside === 'design' ? 0 : (2 * sum) / count)
    }
  }
}
