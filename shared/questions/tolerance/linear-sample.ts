import { itemAt } from '#shared/numbers/item-at.ts'
import { characteristicOf } from '#shared/statistics/characteristic-function.ts'
import { type Distribution, varianceOf } from '#shared/statistics/distribution.ts'
import { CHUNK, pilotTrials } from '#shared/statistics/monte-carlo.ts'
import { unevenCharacteristic, unevenLoss } from '#shared/statistics/play-of-random-balls.ts'
import { sampleOf } from '#shared/statistics/sample.ts'
import type { Part, Pieces } from '#shared/statistics/sum-of-parts.ts'
import { COPIES, FIGURES, type FigureName, type Slopes } from './check-model.ts'
import type { Check } from './checked.ts'
import type { ClimateMovement } from './climate-movement.ts'
import { movedByWeather } from './linear-law.ts'
import { type LobedLosses, meanOfAll, playLosses } from './lobed-losses.ts'
import { modelOf } from './model-of.ts'
import { type TrialModel, trialModel } from './trials.ts'

/*
 * Gap (first) and play (second) as straight lines in what differs, the play of unequal balls by their linear program: as sums
 * of independent parts, for the distribution of the lines, and by trials, for what the lines miss.
 */

type Both<T> = readonly [T, T]

/**
 * The contributors, with their slopes in either figure.
 *
 * @returns undefined where the play of unequal balls has no such law
 */
export function linearParts(check: Check, lobed?: LobedLosses): readonly (Part | Pieces)[] | undefined {
  const { ballGap: gap, play } = modelOf(check).slopes
  const parts = Array.from(check.differences, ([name, distribution]): readonly Part[] | undefined => {
    if (name === 'outOfRound') return []
    if (name !== 'ballDiameter')
      return [{ ...partOf(distribution), slopes: [gap.of[name], play.of[name]], copies: COPIES[name] }]
    if (play.perUnevenness === 0) return likeBalls(distribution, gap, play)
    return unevenBalls(distribution, gap, play, lobed !== undefined)
  })
  if (!parts.every((part) => part !== undefined)) return undefined
  const weather = check.climate && weatherPart(check, check.climate)
  if (lobed !== undefined) return [...parts.flat(), withLosses(weather ?? ALWAYS_ALIKE, lobed)]
  return [...parts.flat(), ...(weather === undefined ? [] : [weather])]
}

/** One state that changes nothing. */
const ALWAYS_ALIKE: Pieces = { pieces: [{ middle: [0, 0], half: [0, 0] }] }

/** The losses of each piece's rings beside its own mean, which moves its middle. */
const withLosses = ({ pieces }: Pieces, { ofPieces, mean }: LobedLosses): Pieces => ({
  pieces: pieces.map(({ middle, half }, index) => {
    const losses = itemAt(ofPieces, index)
    const own = meanOfAll(losses)
    return { middle: [middle[0], middle[1] - (own - mean)], half, own: sampleOf(losses.map((loss) => own - loss)) }
  }),
})

const partOf = (distribution: Distribution) => ({
  characteristic: characteristicOf(distribution),
  variance: varianceOf(distribution),
})

/** States that lie evenly on a straight piece stand in the middles of equal parts of it. */
function weatherPart(check: Check, { statesAPiece }: ClimateMovement): Pieces {
  const [gaps, plays] = FIGURES.map((figure) => lessMean(movedByWeather(check, figure))) as [number[], number[]]
  const at = (state: number): Both<number> => [itemAt(gaps, state), itemAt(plays, state)]
  const reach = statesAPiece === 1 ? 0 : statesAPiece / (statesAPiece - 1) / 2
  return {
    pieces: Array.from({ length: gaps.length / statesAPiece }, (_, piece) => {
      const [from, to] = [at(piece * statesAPiece), at((piece + 1) * statesAPiece - 1)]
      return {
        middle: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2],
        half: [reach * (to[0] - from[0]), reach * (to[1] - from[1])],
      }
    }),
  }
}

function lessMean(values: readonly number[]): readonly number[] {
  const mean = meanOfAll(values)
  return values.map((value) => value - mean)
}

/** Balls of which each counts alike for the second figure. Those at the ends of the row have another slope than those between. */
function likeBalls(distribution: Distribution, gap: Slopes, play: Slopes): readonly Part[] {
  const slopesOf = (ball: number): Part['slopes'] => [itemAt(gap.eachBall, ball), itemAt(play.eachBall, ball)]
  return [
    { ...partOf(distribution), slopes: slopesOf(0), copies: 2 },
    { ...partOf(distribution), slopes: slopesOf(1), copies: gap.eachBall.length - 2 },
  ]
}

/**
 * Normal balls: their mean moves both figures, what slopes of the gap differ by is independent of it, and so is what unequal
 * balls take of the play beside it.
 */
function unevenBalls(
  distribution: Distribution,
  gap: Slopes,
  play: Slopes,
  isLobed: boolean,
): readonly Part[] | undefined {
  const count = gap.eachBall.length
  const characteristic = isLobed ? { real: () => 1 } : unevenCharacteristic(count)
  if (distribution.kind !== 'normal' || characteristic === undefined) return undefined
  const { standardDeviation: scatter } = distribution
  const sum = (slopes: readonly number[]): number => slopes.reduce((total, slope) => total + slope, 0)
  const mean = sum(gap.eachBall) / count
  const apart = Math.sqrt(sum(gap.eachBall.map((slope) => (slope - mean) * (slope - mean))))
  const normal = (standardDeviation: number) => partOf({ kind: 'normal', mean: 0, standardDeviation })
  return [
    { ...normal(scatter / Math.sqrt(count)), slopes: [sum(gap.eachBall), sum(play.eachBall)], copies: 1 },
    { ...normal(scatter), slopes: [apart, 0], copies: 1 },
    ...(isLobed
      ? []
      : [
          {
            characteristic,
            variance: unevenLoss(count).variance,
            slopes: [0, -scatter * play.perUnevenness] as const,
            copies: 1,
          },
        ]),
  ]
}

/** Some trials: where the straight lines put each, and where it is. */
export interface LinearSample {
  readonly linear: Both<Float64Array>
  readonly exact: Both<Float64Array>
}

/** @param chunks of trials */
export function linearSample(check: Check, seed: number, chunks: number): LinearSample {
  const room = (): Float64Array => new Float64Array(chunks * CHUNK)
  const sample = { linear: [room(), room()] as const, exact: [room(), room()] as const }
  const model = trialModel(check)
  const lines = FIGURES.map((figure) => lineOf(check, figure))
  pilotTrials(model, seed, chunks, (drawn, results, chunk) => {
    const from = chunk * CHUNK
    lines.forEach((line, figure) => {
      sample.exact[figure as 0 | 1].set(itemAt(results, figure), from)
      line(model, drawn, sample.linear[figure as 0 | 1].subarray(from, from + CHUNK))
    })
  })
  return sample
}

/** Puts where the lines have a figure of each trial of a chunk. Balls are drawn as they are, all else as it differs. */
function lineOf(check: Check, figure: FigureName) {
  const { slopes, nominal } = modelOf(check)
  const { eachBall, of, perUnevenness } = slopes[figure]
  const { ballDiameter } = check.bearing.resolved
  const weather = movedByWeather(check, figure)
  const lossesOf = playLosses(check)
  const losses = new Float64Array(CHUNK)
  return ({ names }: TrialModel, drawn: readonly Float64Array[], out: Float64Array): void => {
    out.fill(nominal[figure])
    const add = (ofTrial: (trial: number) => number): void => {
      for (let trial = 0; trial < CHUNK; trial++) out[trial] = (out[trial] ?? Number.NaN) + ofTrial(trial)
    }
    names.forEach((name, place) => {
      const rows = itemAt(drawn, place)
      const addRows = (slope: (row: number) => number, from: number): void => {
        for (let row = 0; row * CHUNK < rows.length; row++) {
          add((trial) => slope(row) * ((rows[row * CHUNK + trial] ?? Number.NaN) - from))
        }
      }
      if (name === 'state') add((trial) => itemAt(weather, rows[trial] ?? Number.NaN))
      else if (name !== 'ballDiameter') addRows(() => (name in of ? of[name as keyof typeof of] : 0), 0)
      else if (perUnevenness === 0) addRows((row) => itemAt(eachBall, row), ballDiameter)
    })
    if (perUnevenness === 0) return
    lossesOf({ names }, drawn, drawn[names.indexOf('state')], 'design', losses)
    add((trial) => -(losses[trial] ?? Number.NaN))
  }
}
