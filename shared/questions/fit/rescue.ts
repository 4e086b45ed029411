import { gapOf, gapSlope, pitchRadius, radiusForGap, xForPitch } from './ring-law.ts'
import type { Subject, Target } from './subject.ts'

/*
 * Ways out of a groove that is too deep, in the order in which a maker would try them: leave it, use other balls, fill the gap, cut
 * for one ball more, begin again. Each is tried as a bearing that can be put together and runs; each says what the inner ring must
 * then measure. Facts alone: the words are made elsewhere.
 */

/** What a bearing in the wood as it stands comes to. Lengths in millimetres. */
export interface Remade {
  readonly grooveBottomDiameter: number
  readonly grooveDepth: number
  /** Least gap at which the last ball goes in. */
  readonly assemblyGap: number
  /** Whether a ball rides on the edges of either groove. */
  readonly onEdges: boolean
  /** Of rings; plates have none. */
  readonly inner?: InnerSizes
}

/** The inner ring that goes with it. */
export interface InnerSizes {
  readonly grooveBottomDiameter: number
  readonly landDiameter: number
  readonly landGap: number
}

export interface NewBalls {
  readonly count: number
  readonly diameter: number
  /** Where the groove is, or is to be cut to. */
  readonly x: number
  readonly gap: number
  /** Whether the groove keeps the arc of the cutter that was used, whatever the design says of other balls. */
  readonly keepsCutter: boolean
}

/** What is known of the piece itself: the design core behind an interface. */
export interface Workpiece {
  /** A bearing with other balls in the wood as it stands; undefined where there can be none. */
  readonly remade: (change: NewBalls) => Remade | undefined
  /** The gap that balls of these sizes leave, in their order; undefined where they do not find room. */
  readonly gapOfUnequal: (x: number, diameters: readonly number[]) => number | undefined
  /** Radius of the groove's arc; undefined for a plain track. */
  readonly arc?: number
  /** Whether the balls are of glass or steel, and knock. */
  readonly isHard: boolean
  /** Whether something may be glued into the groove all round. */
  readonly takesLining: boolean
}

export interface BallsOnHand {
  readonly diameter: number
  readonly quantity: number
}

/** Why an option is none. */
export type Obstacle =
  | 'none-on-hand'
  | 'out-of-band'
  | 'last-ball-stays-out'
  | 'rides-on-edges'
  | 'stands-out'
  | 'no-such-bearing'
  | 'too-thin'
  | 'too-deep-for-it-too'

/** What it is like to live with a gap that is too wide. */
export type Life = 'hardly-noticed' | 'knocks' | 'balls-bunch' | 'ball-short'

interface Tried {
  readonly possible: boolean
  readonly obstacle?: Obstacle
  readonly ballGap?: number
  readonly inner?: InnerSizes
}

export type Rescue =
  | (Tried & {
      readonly option: 'accept'
      readonly overMaxBallGap: number
      /** The gap over the ball diameter. */
      readonly shareOfBall: number
      readonly life: Life
    })
  | (Tried & { readonly option: 'balls-on-hand'; readonly diameter?: number; readonly ballCount: number })
  | (Tried & {
      readonly option: 'mixed-balls'
      readonly diameter?: number
      readonly replacedCount?: number
      /** How much further in than the others the larger balls stand. */
      readonly standsOut?: number
    })
  | (Tried & { readonly option: 'larger-balls'; readonly diameter?: number; readonly largerBy?: number })
  | (Tried & {
      readonly option: 'spacers'
      readonly spacerCount: number
      readonly eachThickness?: number
      readonly singleThickness?: number
    })
  | (Tried & { readonly option: 'lining'; readonly thickness: number; readonly grooveRadius?: number })
  | (Tried & {
      readonly option: 'one-ball-more'
      readonly ballCount: number
      readonly deeper: number
      readonly grooveBottomDiameter?: number
      readonly grooveDepth?: number
    })
  | (Tried & { readonly option: 'new-blank' })

/** A groove that is too deep, as it is believed to be. */
export interface SpoiltGroove {
  readonly subject: Subject & { readonly cuts: 'outer' }
  readonly target: Target
  readonly workpiece: Workpiece
  readonly ballsOnHand: readonly BallsOnHand[]
  /** Best estimate of where the groove is. */
  readonly x: number
  /** Best estimate of the balls' mean. */
  readonly ballDiameter: number
}

/** The same, with the bearing that it makes with the balls in it. */
interface Spoilt extends SpoiltGroove {
  readonly asItIs: Remade | undefined
}

/** Every way out, the first to try first. */
export function rescues(groove: SpoiltGroove): readonly Rescue[] {
  const spoilt: Spoilt = { ...groove, asItIs: remadeWith(groove, groove.ballDiameter) }
  return [
    accepted(spoilt),
    ballsOnHand(spoilt),
    mixedBalls(spoilt),
    largerBalls(spoilt),
    spacers(spoilt),
    ...(spoilt.workpiece.takesLining ? [lining(spoilt)] : []),
    oneBallMore(spoilt),
    { option: 'new-blank', possible: true, ballGap: spoilt.target.aim },
  ]
}

const gapWith = ({ subject, x }: SpoiltGroove, diameter: number): number =>
  gapOf(pitchRadius(subject.outer.seat, x, diameter), diameter, subject.balls.count)

/** Up to these shares of a ball a gap is hardly noticed, and leaves the balls in their places. Common practice, no source. */
const HARDLY_NOTICED = 0.2
const STILL_EVEN = 0.35
const BALL_SHORT = 0.6

function accepted(spoilt: Spoilt): Rescue {
  const { target, ballDiameter, workpiece } = spoilt
  const ballGap = gapWith(spoilt, ballDiameter)
  const shareOfBall = ballGap / ballDiameter
  return {
    option: 'accept',
    possible: shareOfBall < BALL_SHORT,
    ...(shareOfBall < BALL_SHORT ? {} : { obstacle: 'out-of-band' }),
    ballGap,
    overMaxBallGap: ballGap - target.max,
    shareOfBall,
    life: lifeWith(shareOfBall, workpiece.isHard),
    ...innerOf(spoilt.asItIs),
  }
}

function lifeWith(share: number, isHard: boolean): Life {
  if (share >= BALL_SHORT) return 'ball-short'
  if (share >= STILL_EVEN) return 'balls-bunch'
  return isHard || share >= HARDLY_NOTICED ? 'knocks' : 'hardly-noticed'
}

const innerOf = (made: Remade | undefined): { readonly inner?: InnerSizes } =>
  made?.inner === undefined ? {} : { inner: made.inner }

const remadeWith = (spoilt: SpoiltGroove, diameter: number): Remade | undefined =>
  spoilt.workpiece.remade({
    count: spoilt.subject.balls.count,
    diameter,
    x: spoilt.x,
    gap: gapWith(spoilt, diameter),
    keepsCutter: true,
  })

/** A set of balls of one size in the groove as it stands: what speaks against it. */
function tried(spoilt: SpoiltGroove, diameter: number): Tried {
  const { target } = spoilt
  const ballGap = gapWith(spoilt, diameter)
  if (!(ballGap >= target.min && ballGap <= target.max)) return { possible: false, obstacle: 'out-of-band', ballGap }
  const made = remadeWith(spoilt, diameter)
  if (made === undefined) return { possible: false, obstacle: 'no-such-bearing', ballGap }
  const obstacle = obstacleOf(made, ballGap)
  return obstacle === undefined
    ? { possible: true, ballGap, ...innerOf(made) }
    : { possible: false, obstacle, ballGap, ...innerOf(made) }
}

function obstacleOf({ assemblyGap, onEdges }: Remade, ballGap: number): Obstacle | undefined {
  if (onEdges) return 'rides-on-edges'
  return ballGap >= assemblyGap - CLOSE_ENOUGH ? undefined : 'last-ball-stays-out'
}

/** A gap found by halving is met to within this [mm]. */
const CLOSE_ENOUGH = 1e-6

function ballsOnHand(spoilt: SpoiltGroove): Rescue {
  const { count } = spoilt.subject.balls
  const enough = spoilt.ballsOnHand.filter(({ quantity }) => quantity >= count)
  const all = enough.map(({ diameter }) => ({ diameter, ...tried(spoilt, diameter) }))
  const best = nearest(all, spoilt)
  if (best === undefined)
    return { option: 'balls-on-hand', possible: false, obstacle: 'none-on-hand', ballCount: count }
  return { option: 'balls-on-hand', ballCount: count, ...best }
}

/** The possible one nearest the aim; where none is, the nearest of all. */
function nearest<T extends Tried>(all: readonly T[], { target }: SpoiltGroove): T | undefined {
  const possible = all.filter((each) => each.possible)
  const off = ({ ballGap }: Tried): number => Math.abs((ballGap ?? Number.POSITIVE_INFINITY) - target.aim)
  return (possible.length > 0 ? possible : all).reduce<T | undefined>(
    (best, each) => (best === undefined || off(each) < off(best) ? each : best),
    undefined,
  )
}

/** Larger balls may stand so far in before they alone carry and the others rattle, in ball diameters. Common practice, no source. */
const MOST_STANDING_OUT = 0.02
/** Larger ones meet over a small ball between them. */
const MOST_MIXED = 1.5

function mixedBalls(spoilt: Spoilt): Rescue {
  const { ballDiameter, subject, workpiece, x } = spoilt
  const { count } = subject.balls
  const larger = spoilt.ballsOnHand.filter(
    ({ diameter }) => diameter > ballDiameter && diameter <= MOST_MIXED * ballDiameter,
  )
  const mixes = larger.flatMap(({ diameter, quantity }) =>
    Array.from({ length: Math.min(quantity, count - 1) }, (_, index) => index + 1).flatMap((replacedCount) => {
      const ballGap = workpiece.gapOfUnequal(x, mixed(count, replacedCount, ballDiameter, diameter))
      return ballGap === undefined ? [] : [{ replacedCount, ...triedMix(spoilt, diameter, ballGap) }]
    }),
  )
  const best = nearest(mixes, spoilt)
  return best === undefined
    ? { option: 'mixed-balls', possible: false, obstacle: 'none-on-hand' }
    : { option: 'mixed-balls', ...best }
}

function triedMix({ target, workpiece, ballDiameter, asItIs }: Spoilt, diameter: number, ballGap: number) {
  const standsOut = diameter - ballDiameter
  const facts = { diameter, standsOut, ballGap }
  const isInBand = ballGap >= target.min && ballGap <= target.max
  if (!isInBand) return { ...facts, possible: false, obstacle: 'out-of-band' as const }
  if (workpiece.arc !== undefined && diameter / 2 > workpiece.arc)
    return { ...facts, possible: false, obstacle: 'rides-on-edges' as const }
  if (standsOut > MOST_STANDING_OUT * ballDiameter)
    return { ...facts, possible: false, obstacle: 'stands-out' as const }
  if (asItIs === undefined) return { ...facts, possible: false, obstacle: 'no-such-bearing' as const }
  if (ballGap < asItIs.assemblyGap) return { ...facts, possible: false, obstacle: 'last-ball-stays-out' as const }
  // The inner ring runs on the larger ones, which stand further in by their whole diameter's excess on either side.
  const inner = asItIs.inner && {
    ...asItIs.inner,
    grooveBottomDiameter: asItIs.inner.grooveBottomDiameter - 2 * standsOut,
    landDiameter: asItIs.inner.landDiameter - 2 * standsOut,
    landGap: asItIs.inner.landGap + standsOut,
  }
  return { ...facts, possible: true, ...(inner === undefined ? {} : { inner }) }
}

/** The larger balls spread evenly round the ring, so that no side of it stands out. */
const mixed = (count: number, replaced: number, small: number, large: number): readonly number[] =>
  Array.from({ length: count }, (_, index) =>
    Math.floor(((index + 1) * replaced) / count) > Math.floor((index * replaced) / count) ? large : small,
  )

/** No bag of balls runs further off than this from what the ring was designed for. */
const LARGEST_BALL = 1.25
const HALVINGS = 60

/** The size that closes the groove to the aim: the gap falls as balls grow. */
function largerBalls(spoilt: SpoiltGroove): Rescue {
  const { ballDiameter, target } = spoilt
  const most = LARGEST_BALL * ballDiameter
  if (gapWith(spoilt, most) > target.aim) {
    return { option: 'larger-balls', possible: false, obstacle: 'out-of-band' }
  }
  let [low, high] = [ballDiameter, most]
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2
    if (gapWith(spoilt, middle) > target.aim) low = middle
    else high = middle
  }
  const diameter = (low + high) / 2
  return { option: 'larger-balls', diameter, largerBy: diameter - ballDiameter, ...tried(spoilt, diameter) }
}

/** Thinner than this nobody cuts a spacer or lays a lining [mm]. Common practice, no source. */
const THINNEST = 0.1

/**
 * Spacers of one thickness between all neighbours are a ring of balls larger by it on the same pitch circle, of which the last gap is
 * the aim. A single one takes all that the gap has too much.
 */
function spacers({ subject, x, ballDiameter, target, asItIs }: Spoilt): Rescue {
  const { count } = subject.balls
  const radius = pitchRadius(subject.outer.seat, x, ballDiameter)
  let size = ballDiameter
  for (let step = 0; step < HALVINGS; step++) {
    const off = gapOf(radius, size, count) - target.aim
    // d(gap)/d(diameter) on a pitch circle, by the scale of the whole: g is of the first order in R and Dw together.
    const slope = (gapOf(radius, size, count) - radius * gapSlope(radius, size, count)) / size
    size -= off / slope
  }
  const eachThickness = size - ballDiameter
  const singleThickness = gapOf(radius, ballDiameter, count) - target.aim
  const facts = { spacerCount: count, eachThickness, singleThickness, ballGap: target.aim }
  return singleThickness >= THINNEST
    ? { option: 'spacers', possible: true, ...facts, ...innerOf(asItIs) }
    : { option: 'spacers', possible: false, obstacle: 'too-thin', ...facts }
}

function lining(spoilt: SpoiltGroove): Rescue {
  const { subject, x, ballDiameter, target, workpiece } = spoilt
  const wanted = xForPitch(
    subject.outer.seat,
    radiusForGap(target.aim, ballDiameter, subject.balls.count),
    ballDiameter,
  )
  const thickness = x - wanted
  const grooveRadius = workpiece.arc === undefined ? undefined : workpiece.arc - thickness
  const facts = {
    option: 'lining',
    thickness,
    ballGap: target.aim,
    ...(grooveRadius === undefined ? {} : { grooveRadius }),
  } as const
  if (!(thickness >= THINNEST)) return { ...facts, possible: false, obstacle: 'too-thin' }
  if (grooveRadius !== undefined && grooveRadius < ballDiameter / 2)
    return { ...facts, possible: false, obstacle: 'rides-on-edges' }
  return { ...facts, possible: true }
}

/** Deeper for one ball more. */
function oneBallMore(spoilt: SpoiltGroove): Rescue {
  const { subject, x, ballDiameter, target, workpiece } = spoilt
  const ballCount = subject.balls.count + 1
  const wanted = xForPitch(subject.outer.seat, radiusForGap(target.aim, ballDiameter, ballCount), ballDiameter)
  const deeper = wanted - x
  const facts = { option: 'one-ball-more', ballCount, deeper, ballGap: target.aim } as const
  if (!(deeper > 0)) return { ...facts, possible: false, obstacle: 'too-deep-for-it-too' }
  const made = workpiece.remade({
    count: ballCount,
    diameter: ballDiameter,
    x: wanted,
    gap: target.aim,
    keepsCutter: false,
  })
  if (made === undefined) return { ...facts, possible: false, obstacle: 'no-such-bearing' }
  const { grooveBottomDiameter, grooveDepth } = made
  const obstacle = obstacleOf(made, target.aim)
  return {
    ...facts,
    possible: obstacle === undefined,
    ...(obstacle === undefined ? {} : { obstacle }),
    grooveBottomDiameter,
    grooveDepth,
    ...innerOf(made),
  }
}
