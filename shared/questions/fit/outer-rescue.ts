import { THINNEST } from './defaults.ts'
import {
  type BallsOnHand,
  fullSetOnHand,
  judged,
  type Life,
  largerSet,
  linedGroove,
  nearest,
  type Remade,
  type Rescue,
  sizeFor,
  type Tried,
  type Workpiece,
  withInnerToCut,
} from './rescue.ts'
import { gapOf, pitchRadius, radiusForGap, xForPitch } from './ring-law.ts'
import type { Subject, Target } from './subject.ts'

/* A groove that sets the ball gap, and is too deep. */

interface SpoiltGroove {
  readonly subject: Subject & { readonly cuts: 'outer' }
  readonly target: Target
  readonly workpiece: Workpiece
  readonly ballsOnHand: readonly BallsOnHand[]
  /** Best estimate of where the groove is. */
  readonly grooveRadius: number
  /** Best estimate of the balls' mean. */
  readonly ballDiameter: number
}

/** The same, with the bearing that it makes with the balls in it. */
interface Spoilt extends SpoiltGroove {
  readonly asItIs: Remade | undefined
}

/** Films that the play loses until the bearing is finished, one on each of four surfaces: derived here. */
const FILMS = 4
/** The same where the outer groove is still to be cut, deeper by its films: derived here. */
const INNER_FILMS = 2

/**
 * The options, in the order in which a maker would try them. First what brings the gap into its band and can be undone,
 * cheapest first; then leave it; last what cannot be undone. A gap that is hardly noticed is left before anything is bought.
 * Nobody mixes balls who has a full set.
 */
export function outerRescues(groove: SpoiltGroove): readonly Rescue[] {
  const spoilt: Spoilt = { ...groove, asItIs: remadeWith(groove, groove.ballDiameter) }
  const asItIs = accepted(spoilt)
  const fullSet = ballsOnHand(spoilt)
  const canBeUndone = [largerBalls(spoilt), ...(fullSet.possible ? [] : [mixedBalls(spoilt)]), spacers(spoilt)]
  const options: readonly Rescue[] = [
    fullSet,
    ...(asItIs.life === 'hardly-noticed' ? [asItIs, ...canBeUndone] : [...canBeUndone, asItIs]),
    ...(spoilt.workpiece.takesLining ? [lining(spoilt)] : []),
    oneBallMore(spoilt),
    { option: 'new-blank', possible: true, ballGap: spoilt.target.aim },
  ]
  const { workpiece, target } = spoilt
  return options.map((each) => {
    const films = each.option === 'one-ball-more' ? INNER_FILMS : FILMS
    return withInnerToCut(each, workpiece, films * target.finishAllowance)
  })
}

const gapWith = ({ subject, grooveRadius }: SpoiltGroove, diameter: number): number =>
  gapOf(pitchRadius(subject.outer.seat, grooveRadius, diameter), diameter, subject.balls.count)

const isInBand = (gap: number, { min, max }: Target): boolean => gap >= min && gap <= max

const remadeWith = (spoilt: SpoiltGroove, diameter: number): Remade | undefined =>
  spoilt.workpiece.remade({
    count: spoilt.subject.balls.count,
    diameter,
    x: spoilt.grooveRadius,
    gap: gapWith(spoilt, diameter),
    keepsCutter: true,
  })

/** Up to these shares of a ball a gap is hardly noticed, and leaves the balls in their places. Common practice, no source. */
const HARDLY_NOTICED = 0.2
const STILL_EVEN = 0.35
const BALL_SHORT = 0.6

function accepted(spoilt: Spoilt): Extract<Rescue, { option: 'accept' }> {
  const { target, ballDiameter, workpiece, asItIs } = spoilt
  const ballGap = gapWith(spoilt, ballDiameter)
  const shareOfBall = ballGap / ballDiameter
  const bearing = judged(asItIs, { ballGap })
  return {
    option: 'accept',
    ...bearing,
    ...(bearing.possible && shareOfBall >= BALL_SHORT ? { possible: false, obstacle: 'out-of-band' } : {}),
    overMaxBallGap: ballGap - target.max,
    shareOfBall,
    life: lifeWith(shareOfBall, workpiece.isHard),
  }
}

function lifeWith(share: number, isHard: boolean): Life {
  if (share >= BALL_SHORT) return 'ball-short'
  if (share >= STILL_EVEN) return 'balls-bunch'
  return isHard || share >= HARDLY_NOTICED ? 'knocks' : 'hardly-noticed'
}

/** A set of balls of one size in the groove as it is cut: what speaks against it. */
function tried(spoilt: SpoiltGroove, diameter: number): Tried {
  const ballGap = gapWith(spoilt, diameter)
  if (!isInBand(ballGap, spoilt.target)) return { possible: false, obstacle: 'out-of-band', ballGap }
  return judged(remadeWith(spoilt, diameter), { ballGap })
}

function ballsOnHand(spoilt: Spoilt): Rescue {
  const wanted = { ballCount: spoilt.subject.balls.count, aim: spoilt.target.aim }
  return fullSetOnHand(
    spoilt.ballsOnHand,
    wanted,
    (diameter) => tried(spoilt, diameter),
    ({ ballGap }) => ballGap,
  )
}

/** Larger balls may stand so far in before they alone carry and the others rattle, in ball diameters. Common practice, no source. */
const MOST_STANDING_OUT = 0.02
/** Larger ones meet over a small ball between them. */
const MOST_MIXED = 1.5
/** Fewer larger balls than these push what runs on them to one side, and carry it round with them. */
const FEWEST_LARGER = 3

function mixedBalls(spoilt: Spoilt): Rescue {
  const { ballDiameter, subject, workpiece, grooveRadius, target } = spoilt
  const { count } = subject.balls
  const larger = spoilt.ballsOnHand.filter(
    ({ diameter }) => diameter > ballDiameter && diameter <= MOST_MIXED * ballDiameter,
  )
  const mixes = larger.flatMap(({ diameter, quantity }) =>
    Array.from({ length: Math.min(quantity, count - 1) }, (_, index) => index + 1).flatMap((replacedCount) => {
      const sizes = mixed(count, replacedCount, ballDiameter, diameter)
      const ballGap = workpiece.gapOfUnequal?.(grooveRadius, sizes)
      return ballGap === undefined ? [] : [{ replacedCount, ...triedMix(spoilt, replacedCount, diameter, ballGap) }]
    }),
  )
  const best = nearest(mixes, target.aim, ({ ballGap }) => ballGap)
  return { option: 'mixed-balls', ...(best ?? { possible: false, obstacle: 'none-on-hand' }) }
}

function triedMix(spoilt: Spoilt, replacedCount: number, diameter: number, ballGap: number) {
  const { target, workpiece, ballDiameter, asItIs } = spoilt
  const standsOut = diameter - ballDiameter
  const facts = { diameter, standsOut, ballGap }
  const refused = (obstacle: NonNullable<Tried['obstacle']>) => ({ ...facts, possible: false, obstacle })
  if (workpiece.arc !== undefined && diameter / 2 > workpiece.arc) return refused('rides-on-edges')
  if (standsOut > MOST_STANDING_OUT * ballDiameter) return refused('stands-out')
  if (replacedCount < FEWEST_LARGER) return refused('too-few-larger')
  if (!isInBand(ballGap, target)) return refused('out-of-band')
  const bearing = judged(asItIs, facts)
  const { inner } = bearing
  if (inner === undefined) return { ...facts, ...bearing }
  // The inner ring runs on the larger ones, which stand further in by their whole diameter's excess on either side.
  return {
    ...facts,
    ...bearing,
    inner: {
      grooveBottomDiameter: inner.grooveBottomDiameter - 2 * standsOut,
      landDiameter: inner.landDiameter - 2 * standsOut,
      landGap: inner.landGap + standsOut,
    },
  }
}

/** The larger balls spread evenly round the ring, so that no side of it stands out. */
const mixed = (count: number, replaced: number, small: number, large: number): readonly number[] =>
  Array.from({ length: count }, (_, index) =>
    Math.floor(((index + 1) * replaced) / count) > Math.floor((index * replaced) / count) ? large : small,
  )

/** The sizes that close the groove. */
const largerBalls = (spoilt: Spoilt): Rescue =>
  largerSet(
    (size) => gapWith(spoilt, size),
    spoilt.target.aim,
    spoilt.ballDiameter,
    (size) => tried(spoilt, size),
  )

/**
 * Spacers of one thickness between all neighbours are a ring of balls larger by it on the same pitch circle, of which the last gap is
 * the aim. A single one takes all that the gap has too much. Balls that fill less than half of the circle first leave the more of a
 * straight gap, the larger they are.
 */
function spacers({ subject, grooveRadius, ballDiameter, target, asItIs }: Spoilt): Rescue {
  const { count } = subject.balls
  const radius = pitchRadius(subject.outer.seat, grooveRadius, ballDiameter)
  const widest = 2 * radius * Math.sin(Math.PI / (2 * (count - 1)))
  const closed = 2 * radius * Math.sin(Math.PI / count)
  const size = sizeFor((each) => gapOf(radius, each, count), target.aim, Math.max(ballDiameter, widest), closed)
  const eachThickness = size === undefined ? 0 : size - ballDiameter
  const singleThickness = gapOf(radius, ballDiameter, count) - target.aim
  const each = eachThickness >= THINNEST ? { eachThickness } : {}
  const facts = { option: 'spacers', spacerCount: count, ...each, singleThickness } as const
  // The balls are in before the spacers are, so the gap that they leave need let none in.
  const bearing = judged(asItIs, { ballGap: Math.max(target.aim, asItIs?.assemblyGap ?? 0) })
  return singleThickness >= THINNEST
    ? { ...facts, ...bearing, ballGap: target.aim }
    : { ...facts, possible: false, obstacle: 'too-thin', ballGap: target.aim }
}

/** The groove radius for the aim. */
const xFor = ({ subject, ballDiameter, target }: SpoiltGroove, count: number): number =>
  xForPitch(subject.outer.seat, radiusForGap(target.aim, ballDiameter, count), ballDiameter)

function lining(spoilt: Spoilt): Rescue {
  const { subject, grooveRadius, ballDiameter, target, workpiece } = spoilt
  const { count } = subject.balls
  const x = xFor(spoilt, count)
  const made = workpiece.remade({ count, diameter: ballDiameter, x, gap: target.aim, keepsCutter: true })
  return linedGroove(grooveRadius - x, ballDiameter, workpiece.arc, judged(made, { ballGap: target.aim }))
}

/** Deeper for one ball more. */
function oneBallMore(spoilt: Spoilt): Rescue {
  const { subject, grooveRadius, ballDiameter, target, workpiece } = spoilt
  const ballCount = subject.balls.count + 1
  const x = xFor(spoilt, ballCount)
  const film = subject.outer.xPerFinish * target.finishAllowance
  const deeper = x + film - grooveRadius
  const facts = { option: 'one-ball-more', ballCount, deeper } as const
  if (!(deeper > 0)) return { ...facts, possible: false, obstacle: 'too-deep-for-it-too', ballGap: target.aim }
  const made = workpiece.remade({
    count: ballCount,
    diameter: ballDiameter,
    x,
    gap: target.aim,
    keepsCutter: false,
  })
  const until = made && { grooveBottomDiameter: made.grooveBottomDiameter + 2 * film, grooveDepth: made.grooveDepth }
  return { ...facts, ...(until === undefined ? {} : { until }), ...judged(made, { ballGap: target.aim }) }
}
