import { LARGEST_GAP } from '#shared/bearing/resolve.ts'
import { longer, shorter } from '#shared/geometry/ellipse.ts'
import { ballGap, gapPerPitchRadius, leastPitchRadius } from '#shared/geometry/ring-of-balls.ts'
import { type GapRange, gapRangeOnEllipse } from '#shared/geometry/ring-of-balls-on-ellipse.ts'
import { bracketedRoot } from '#shared/numbers/bracketed-root.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { roundedDown, roundedUp } from '#shared/units/rounded.ts'
import type { GapBand } from './fit.ts'
import type { MadeSizes, Shape } from './shape.ts'

/** What to build in on the day of making, for the bearing to run in every state of the year. */
export interface BuildIn {
  /** Smallest gap that still closes when it is worst. Absent where no gap below a whole ball does. */
  readonly leastBallGap?: Mm
  /**
   * Largest gap that does not knock when it is widest. Below the least where the year is too wide for the band, and even
   * below 0. Absent where none was found.
   */
  readonly mostBallGap?: Mm
  /** What is advised: the design's own gap where it will do, else the nearest that closes all year. */
  readonly ballGap?: Mm
  /** Smallest play, together with that gap, at which the rings never bind. Absent where it would cut into the bore. */
  readonly leastPlay?: Mm
  /** The design's own play where it will do, else the least. */
  readonly play?: Mm
}

type ShapeOf = (made: MadeSizes) => readonly Shape[]

/** How far a ring is from the asked gap when it is moved no more [mm]. */
const NEAR_ENOUGH = 1e-9

/**
 * The gap and the play to build in. The worst gap of the year grows with the groove, so the groove for a wanted worst gap
 * is a root; the play then follows from the states at once, for the inner ring's long axis grows with its radius.
 *
 * @param shapes what a bearing of such sizes becomes in each state of the year
 * @param units in which the sizes are stated: they are rounded so that the bearing still runs
 */
export function buildIn(
  made: MadeSizes,
  shapes: ShapeOf,
  band: GapBand,
  asked: { readonly ballGap: Mm; readonly play: Mm },
  units: Units,
): BuildIn {
  const least = todayFor(made, shapes, (ranges) => Math.min(...ranges.map(({ least: gap }) => gap)), {
    gap: band.minBallGap,
    stated: (gap) => roundedUp(gap, units),
  })
  const most = todayFor(made, shapes, (ranges) => Math.max(...ranges.map(({ most: gap }) => gap)), {
    gap: band.maxBallGap,
    stated: (gap) => roundedDown(gap, units),
  })
  const bounds = {
    ...(least === undefined ? {} : { leastBallGap: least.gap }),
    ...(most === undefined ? {} : { mostBallGap: most.gap }),
  }
  if (least === undefined) return bounds
  const highest = Math.max(least.gap, most?.gap ?? asked.ballGap)
  const chosen = mm(Math.min(Math.max(asked.ballGap, least.gap), highest))
  const radius =
    chosen === asked.ballGap
      ? made.outerBottomRadius
      : chosen === least.gap
        ? least.radius
        : (most?.radius ?? made.outerBottomRadius)
  const exactPlay = playFor(withGroove(made, radius), shapes)
  const leastPlay = exactPlay === undefined ? undefined : roundedUp(exactPlay, units)
  const play = leastPlay === undefined ? {} : { leastPlay, play: mm(Math.max(asked.play, leastPlay)) }
  return { ...bounds, ballGap: chosen, ...play }
}

/** The same bearing with a larger or smaller outer ring round the balls: land and outside go with the groove. */
function withGroove(made: MadeSizes, radius: Mm): MadeSizes {
  const wider = radius - made.outerBottomRadius
  return {
    ...made,
    outerBottomRadius: radius,
    outerLandRadius: mm(made.outerLandRadius + wider),
    outsideRadius: mm(made.outsideRadius + wider),
  }
}

interface Groove {
  readonly gap: Mm
  readonly radius: Mm
}

/** The worst gap that is wanted, and how today's gap for it is rounded. */
interface Wanted {
  readonly gap: Mm
  readonly stated: (gap: Mm) => Mm
}

/** The groove, and its gap today, at which the year's worst gap is a wanted one. */
function todayFor(
  made: MadeSizes,
  shapes: ShapeOf,
  worst: (gaps: readonly GapRange[]) => number,
  wanted: Wanted,
): Groove | undefined {
  const { ballDiameter, ballCount } = made
  const slope = gapPerPitchRadius(mm(made.outerBottomRadius - ballDiameter / 2), ballDiameter, ballCount)
  const beyond = (radius: number): number => {
    const changed = shapes(withGroove(made, mm(radius)))
    const gaps = changed.map(({ outerBottom, ball }) =>
      gapRangeOnEllipse({ bottom: outerBottom, ballDiameter: ball.mean, ballCount }),
    )
    return worst(gaps) - wanted.gap
  }
  const tightest = leastPitchRadius(ballDiameter, ballCount) + ballDiameter / 2
  const [low, high] = bracket(beyond, made.outerBottomRadius, tightest, ballDiameter / slope)
  if (low === undefined || high === undefined) return undefined
  const radius = mm(bracketedRoot((at) => flattened(beyond(at), slope), low, high))
  const gap = ballGap(mm(radius - ballDiameter / 2), ballDiameter, ballCount)
  return gap < LARGEST_GAP * ballDiameter ? { gap: wanted.stated(gap), radius } : undefined
}

/** A root finder that goes on to the last bit would ask for hundreds of rings: near enough is there. */
const flattened = (value: number, slope: number): readonly [number, number] => [
  Math.abs(value) < NEAR_ENOUGH ? 0 : value,
  slope,
]

/** Widenings of the bracket, each twice the one before: from an eighth of a ball's worth to many balls' worth. */
const WIDENINGS = 8

function bracket(
  beyond: (radius: number) => number,
  start: number,
  tightest: number,
  ball: number,
): readonly [low: number | undefined, high: number | undefined] {
  const away = beyond(start) > 0 ? -1 : 1
  let inner = start
  let width = ball / 8
  for (let widening = 0; widening < WIDENINGS; widening++, width *= 2) {
    const outer = Math.max(tightest, inner + away * width)
    if (Math.sign(beyond(outer)) !== -away) return away > 0 ? [inner, outer] : [outer, inner]
    if (outer === tightest && away < 0) return [undefined, undefined]
    inner = outer
  }
  return [undefined, undefined]
}

/** How a segmented ring grows depends a little on how thick it is, so its radius is found in rounds; all else in one. */
const ROUNDS = 4

/** The play today at which the rings just never bind: by the state that asks for the smallest inner ring. */
function playFor(made: MadeSizes, shapes: ShapeOf): Mm | undefined {
  let radius = made.innerBottomRadius
  for (let round = 0; round < ROUNDS; round++) {
    const inner = { ...made, innerBottomRadius: radius }
    const radii = shapes(inner).map(({ outerBottom, innerBottom, ball }) => {
      const room = shorter(outerBottom) - ball.mean
      return (room * radius) / longer(innerBottom)
    })
    radius = mm(Math.min(...radii))
    if (!(radius > made.boreRadius)) return undefined
  }
  return mm(Math.max(0, 2 * (made.outerBottomRadius - made.ballDiameter - radius)))
}
