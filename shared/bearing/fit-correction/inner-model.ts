import { isPlain } from '#shared/geometry/groove.ts'
import { grooveDepthForSeat, seatIn } from '#shared/geometry/seat.ts'
import type { Evidence } from '#shared/statistics/belief.ts'
import { logAbove, logReading, readingReach } from '#shared/statistics/likelihood.ts'
import { mm } from '#shared/units/length.ts'
import type { InnerUnderWay } from './inner-under-way.ts'
import type { Reading } from './input.ts'
import type { GrooveModel } from './model.ts'

/** A ring that only just binds is felt to bind or to run: so much play either way [mm]. */
const BINDING_DOUBT = 0.05

/** What a blank has on, radially, over the track that is turned of it, in roller diameters. Common practice, no source. */
const BLANK_OVER_TRACK = 1 / 4

export interface InnerModel extends GrooveModel {
  readonly of: 'play'
}

/**
 * The inner groove: x is its bottom radius taken negative (cuts make it larger), y the radius of the circle inside the
 * balls seated in the finished outer ring, the figure is the radial internal clearance:  Gr = 2 (y − bottom radius) for
 * balls on the bottom, and through the seat for balls on the edges.
 */
export function innerModel({ pair, insideBalls }: InnerUnderWay): InnerModel {
  const { settled, innerRing } = pair
  const { ballDiameter, innerGroove } = settled
  const landRadius = innerRing.landDiameter / 2
  const onEdges = innerRing.seat === 'edges'

  const seatDepth = (x: number): number => {
    const depth = landRadius + x
    if (!onEdges) return depth
    if (depth <= 0) return 0
    return seatIn({ radius: innerGroove.radius, depth: mm(Math.min(depth, innerGroove.radius)) }, ballDiameter).depth
  }
  const play = (x: number, y: number): number => 2 * (y - landRadius + seatDepth(x))
  const xFor = (figure: number, y: number): number => {
    const seat = figure / 2 - y + landRadius
    const depth = onEdges
      ? seat > 0
        ? (grooveDepthForSeat(mm(seat), innerGroove.radius, ballDiameter) ?? innerGroove.radius)
        : 0
      : seat
    return depth - landRadius
  }

  const truth = (reading: Reading): ((x: number, y: number) => number) | undefined => {
    if (reading.kind === 'radial-play') return play
    return reading.kind === 'groove-bottom-diameter' ? (x) => -2 * x : undefined
  }

  const evidence = (reading: Reading): Evidence => {
    switch (reading.kind) {
      case 'radial-play': {
        const reach = readingReach(reading.error)
        return {
          logLikelihood: (x, y) => logReading(reading.value, play(x, y), reading.error),
          within: (y) => ({ from: xFor(reading.value - reach, y), to: xFor(reading.value + reach, y) }),
        }
      }
      case 'groove-bottom-diameter': {
        const reach = readingReach(reading.error)
        return {
          logLikelihood: (x) => logReading(reading.value, -2 * x, reading.error),
          within: () => ({ from: -(reading.value + reach) / 2, to: -(reading.value - reach) / 2 }),
        }
      }
      case 'binds':
        return { logLikelihood: (x, y) => logAbove(0, play(x, y), BINDING_DOUBT) }
      default:
        throw new RangeError(`reading must be one of the inner ring, got ${reading.kind}`)
    }
  }

  // A groove begins at its land; a plain ring is turned down from a blank that went nowhere.
  const largest = landRadius + (isPlain(innerGroove) ? BLANK_OVER_TRACK * ballDiameter : 0)
  const perSeat = seatIn(innerGroove, ballDiameter).perGrooveDepth
  return {
    of: 'play',
    prior: {
      x: { from: -largest, to: -innerRing.boreDiameter / 2 },
      y: {
        mean: insideBalls.mean,
        standardDeviation: Math.max(insideBalls.standardDeviation, 1e-6 * ballDiameter),
      },
    },
    figure: play,
    mostFigure: Number.POSITIVE_INFINITY,
    xFor,
    figurePerX: 2 * perSeat,
    // The film on the outer groove brings the balls in by as much again.
    xPerFinish: 2,
    truth,
    evidence,
    checks: ['radial-play'],
    offers: (_belief, errorOf) => [
      { kind: 'radial-play', value: mm(0), error: errorOf('radial-play') },
      { kind: 'groove-bottom-diameter', value: mm(0), error: errorOf('groove-bottom-diameter') },
    ],
    kinds: ['radial-play', 'groove-bottom-diameter', 'binds'],
  }
}
