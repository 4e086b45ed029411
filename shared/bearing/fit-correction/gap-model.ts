import type { SettledBallRing } from '#shared/bearing/resolve.ts'
import { FEWEST_BALLS, pitchRadiusForGap } from '#shared/geometry/ring-of-balls.ts'
import { type Belief, type Evidence, expectation } from '#shared/statistics/belief.ts'
import {
  logAbove,
  logReading,
  type ReadingError,
  readingDeviation,
  readingReach,
} from '#shared/statistics/likelihood.ts'
import { normalCdf, normalDensity } from '#shared/statistics/normal.ts'
import { mm } from '#shared/units/length.ts'
import * as defaults from './defaults.ts'
import type { ErrorToCome } from './error-to-come.ts'
import type { GrooveUnderWay } from './groove-under-way.ts'
import type { Reading } from './input.ts'
import type { GrooveModel } from './model.ts'
import { scatterOf } from './scatter.ts'

/** Widest and narrowest gap of which readings are made sense of, in ball diameters. */
const WIDEST_GAP = 1.25
const NARROWEST_GAP = -0.98
/** With few balls the gap runs into a limit as the groove grows: (Z − 2) Dw. */
const OF_THE_LIMIT = 0.9

/** How much wood gives when a ball is pressed into a gap below 0, in ball diameters. */
const PRESSED_IN = 0.002

/** A plug rests on the balls that stand in furthest: about the third of them, 1.09 deviations above the mean. */
const PLUG_RESTS_ABOVE_MEAN = 1.09

export interface GapModel extends GrooveModel {
  readonly of: 'ball-gap'
  /** Of balls of mean diameter y, seated in a groove at x. */
  readonly pitchRadius: (x: number, y: number) => number
}

/** The groove that holds the ring of balls: y is the mean diameter of those in it, the figure is the ball gap. */
export function gapModel(groove: GrooveUnderWay): GapModel {
  const { settled, assemblyGap, pitchRadius, xForPitch } = groove
  const { input, ballDiameter } = settled
  const ballCount = input.balls.count
  const scatter = scatterOf(groove)

  const gapIn = (x: number, y: number, count: number): number => looseGap(pitchRadius(x, y), y, count)
  const gap = (x: number, y: number): number => gapIn(x, y, ballCount) + scatter.bias
  const xForGap = (figure: number, y: number, count = ballCount): number => {
    const capped = Math.min(Math.max(figure, NARROWEST_GAP * y), widestTurnedBack(y, count))
    return xForPitch(pitchRadiusForGap(mm(capped), mm(y), count), y)
  }
  const plug = (x: number, y: number): number =>
    2 * (pitchRadius(x, y) - y / 2 - (PLUG_RESTS_ABOVE_MEAN * scatter.single) / 2)

  const truth = (reading: Reading): ((x: number, y: number) => number) | undefined => {
    switch (reading.kind) {
      case 'ball-gap':
        return gap
      case 'last-ball-opening':
        return (x, y) => gapIn(x, y, ballCount - 1) + scatter.bias
      case 'plug':
        return plug
      case 'groove-bottom-diameter':
        return (x) => 2 * x
      case 'groove-depth':
        return (x) => x - reading.landDiameter / 2
      case 'ball-row':
        return (_x, y) => reading.count * y
      default:
        return undefined
    }
  }

  const goesIn = (x: number, y: number): number => lastBallGoesIn(gap(x, y), assemblyGap, PRESSED_IN * ballDiameter)
  const isIn = (x: number, y: number): number => Math.log(goesIn(x, y))
  const isRefused = (x: number, y: number): number => Math.log(1 - goesIn(x, y))

  const evidence = (reading: Reading): Evidence => {
    switch (reading.kind) {
      case 'ball-gap': {
        const error = widened(reading.error, scatter.deviation)
        return {
          logLikelihood: (x, y) => logReading(reading.value, gap(x, y), error) + isIn(x, y),
          within: (y) => ({
            from: xForGap(reading.value - scatter.bias - readingReach(error), y),
            to: xForGap(reading.value - scatter.bias + readingReach(error), y),
          }),
        }
      }
      case 'last-ball-opening': {
        const error = widened(reading.error, scatter.deviation)
        const opening = truth(reading) ?? gap
        return {
          logLikelihood: (x, y) => logReading(reading.value, opening(x, y), error) + isRefused(x, y),
          ...(hasOpening(ballCount) && {
            within: (y: number) => ({
              from: xForGap(reading.value - scatter.bias - readingReach(error), y, ballCount - 1),
              to: xForGap(reading.value - scatter.bias + readingReach(error), y, ballCount - 1),
            }),
          }),
        }
      }
      case 'last-ball-refused':
        return { logLikelihood: isRefused }
      case 'plug':
        return plugEvidence(reading, widened(reading.error, scatter.single), plug)
      case 'groove-bottom-diameter':
        return around(
          reading.value,
          reading.error,
          (x) => 2 * x,
          (value) => value / 2,
        )
      case 'groove-depth': {
        const land = reading.landDiameter / 2
        return around(
          reading.value,
          reading.error,
          (x) => x - land,
          (value) => value + land,
        )
      }
      case 'ball-row': {
        const error = widened(
          reading.error,
          scatter.single * Math.sqrt(Math.abs(1 / reading.count - 1 / ballCount)) * reading.count,
        )
        return { logLikelihood: (_x, y) => logReading(reading.value, reading.count * y, error) }
      }
      default:
        throw new RangeError(`reading must be one of a ring of balls, got ${reading.kind}`)
    }
  }

  const mean = ballDiameter
  return {
    of: 'ball-gap',
    prior: {
      x: {
        from: Math.max(xForGap(NARROWEST_GAP * mean, mean), groove.beginsAt),
        to: xForGap(widestGap(mean, ballCount), mean),
      },
      y: { mean, standardDeviation: meanDoubt(settled) },
    },
    figure: gap,
    mostFigure: widestGap(mean, ballCount),
    xFor: (figure, y) => xForGap(figure - scatter.bias, y),
    figurePerX: groove.gapPerX,
    pitchRadius,
    xPerFinish: groove.xPerFinish,
    truth,
    evidence,
    checks: ['ball-gap', 'last-ball-opening'],
    offers: (belief, errorOf) => offers(groove, gap, belief, errorOf),
    kinds: [
      'ball-gap',
      'last-ball-opening',
      'last-ball-refused',
      'plug',
      'groove-bottom-diameter',
      ...groove.furtherReadings,
      'ball-row',
    ],
  }
}

/** Of three balls the two in place touch, whatever the groove: an opening between them says nothing of it. */
const hasOpening = (ballCount: number): boolean => ballCount > FEWEST_BALLS

const widestGap = (ballDiameter: number, ballCount: number): number =>
  Math.min(WIDEST_GAP, OF_THE_LIMIT * (ballCount - 2)) * ballDiameter

/** Up to where a gap is turned back into a groove: past the widest, for the smallest balls have a wider one there. */
const widestTurnedBack = (ballDiameter: number, ballCount: number): number =>
  Math.min(2 * WIDEST_GAP, 0.99 * (ballCount - 2)) * ballDiameter

/**
 * The ball gap; of a groove so tight that the balls but one already fill it (−Dw), it goes on falling by the arc of their
 * overlap, as that of unequal balls does, so that each groove has a gap of its own.
 */
function looseGap(pitchRadius: number, ballDiameter: number, ballCount: number): number {
  const half = pitchRadius > ballDiameter / 2 ? Math.asin(ballDiameter / (2 * pitchRadius)) : Math.PI / 2
  const open = Math.PI - (ballCount - 1) * half
  return 2 * pitchRadius * (open > 0 ? Math.sin(open) : open) - ballDiameter
}

/**
 * The chance that the last ball goes in: rigid balls in rigid wood need the assembly gap, wood that gave all it takes
 * would need none; where between the two this ring stands is not known, so anywhere, with a little over for pressing.
 * The mean of Φ((g − t) / s) over thresholds t from 0 to the assembly gap has a closed form in z Φ(z) + φ(z).
 */
export function lastBallGoesIn(gap: number, assemblyGap: number, give: number): number {
  if (assemblyGap < give * 1e-3) return normalCdf(gap / give)
  const ramp = (z: number): number => z * normalCdf(z) + normalDensity(z)
  const chance = (give / assemblyGap) * (ramp(gap / give) - ramp((gap - assemblyGap) / give))
  return Math.min(Math.max(chance, 0), 1)
}

const widened = ({ graduation, standardUncertainty }: ReadingError, deviation: number): ReadingError => ({
  graduation,
  standardUncertainty: Math.sqrt(standardUncertainty * standardUncertainty + deviation * deviation),
})

/** A reading that sees x alone. */
function around(
  value: number,
  error: ReadingError,
  truth: (x: number) => number,
  xFor: (truth: number) => number,
): Evidence {
  const reach = readingReach(error)
  return {
    logLikelihood: (x) => logReading(value, truth(x), error),
    within: () => ({ from: xFor(value - reach), to: xFor(value + reach) }),
  }
}

function plugEvidence(
  { diameter, result }: Extract<Reading, { kind: 'plug' }>,
  error: ReadingError,
  plug: (x: number, y: number) => number,
): Evidence {
  const doubt = readingDeviation(error)
  switch (result) {
    case 'enters':
      return { logLikelihood: (x, y) => logAbove(plug(x, y), diameter, doubt) }
    case 'refuses':
      return { logLikelihood: (x, y) => logAbove(diameter, plug(x, y), doubt) }
    case 'snug':
      return { logLikelihood: (x, y) => logReading(diameter, plug(x, y), error) }
    default:
      return result satisfies never
  }
}

/** How well the mean of the balls in the ring is known before anything is read. */
function meanDoubt({ input: { balls }, ballDiameter, ballScatter }: SettledBallRing): number {
  if (balls.diameters !== undefined) {
    const left = Math.max(0, 1 / balls.count - 1 / balls.diameters.length)
    const measured = defaults.BALL_CALIPER / Math.sqrt(balls.diameters.length)
    return Math.sqrt(ballScatter * ballScatter * left + measured * measured)
  }
  const lot = defaults.LOT_MEAN_OVER_SCATTER
  return Math.max(ballScatter * Math.sqrt(lot * lot + 1 / balls.count), 1e-6 * ballDiameter)
}

/** What could be read next: the gap (or the opening, while the last ball stays out), the groove, a row of the balls. */
function offers(
  { settled, assemblyGap }: GrooveUnderWay,
  gap: (x: number, y: number) => number,
  belief: Belief,
  error: ErrorToCome,
): readonly Reading[] {
  const { balls } = settled.input
  const ballsGoIn = expectation(belief, (x, y) => (gap(x, y) >= assemblyGap ? 1 : 0)) > 0.5
  const value = mm(0)
  const gapReading: Reading = { kind: 'ball-gap', value, error: error('ball-gap') }
  const openingReading: Reading = { kind: 'last-ball-opening', value, error: error('last-ball-opening') }
  return [
    ...(ballsGoIn ? [gapReading] : hasOpening(balls.count) ? [openingReading] : []),
    { kind: 'groove-bottom-diameter', value, error: error('groove-bottom-diameter') },
    { kind: 'ball-row', count: balls.count, value, error: error('ball-row') },
  ]
}
