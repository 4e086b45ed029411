import {
  type BallsOnHand,
  fullSetOnHand,
  judged,
  type LifeWithPlay,
  largerSet,
  linedGroove,
  type Rescue,
  type Tried,
  type Workpiece,
  withInnerToCut,
} from './rescue.ts'
import { gapOf, pitchRadius, seatDepth, xForPitch } from './ring-law.ts'
import type { Subject, Target } from './subject.ts'

/* The groove of an inner ring that is too deep: its play is too much. The outer ring is finished, and stays. */

interface SpoiltInner {
  readonly subject: Subject & { readonly cuts: 'inner' }
  readonly target: Target
  readonly workpiece: Workpiece
  readonly ballsOnHand: readonly BallsOnHand[]
  /** Best estimates: the groove's bottom, where the balls run, their mean, and the play. */
  readonly grooveRadius: number
  readonly pitchRadius: number
  readonly ballDiameter: number
  readonly play: number
}

/**
 * The options, in the order in which a maker would try them. First what brings the play into its band, cheapest first;
 * then leave it; last what may come loose, and a new ring. A play that is hardly noticed is left before anything is cut or
 * bought.
 */
export function innerRescues(spoilt: SpoiltInner): readonly Rescue[] {
  const asItIs = accepted(spoilt)
  const inBand = [...matingFaces(spoilt), largerBalls(spoilt)]
  return [
    ballsOnHand(spoilt),
    ...(asItIs.life === 'hardly-noticed' ? [asItIs, ...inBand] : [...inBand, asItIs]),
    lining(spoilt),
    newInnerRing(spoilt),
  ]
}

/** Radius of the outer groove. */
const outerX = ({ subject, pitchRadius: centres, ballDiameter }: SpoiltInner): number =>
  xForPitch(subject.outer.seat, centres, ballDiameter)

const depthNow = ({ subject, grooveRadius }: SpoiltInner): number => subject.inner.landRadius - grooveRadius

/** The play with other balls: by how much the circle inside them has changed, and how deep they sit. */
function playWith(spoilt: SpoiltInner, diameter: number): number {
  const { subject, ballDiameter, play } = spoilt
  const x = outerX(spoilt)
  const { arcOnEdges } = subject.inner
  const of = (ball: number): number => {
    const seat = arcOnEdges === undefined ? 0 : seatDepth(arcOnEdges, depthNow(spoilt), ball)
    return 2 * (pitchRadius(subject.outer.seat, x, ball) + seat) - ball
  }
  return play + of(diameter) - of(ballDiameter)
}

/** The ball gap of a ring full of balls; undefined where the balls are kept apart. */
const gapWith = (spoilt: SpoiltInner, diameter: number): number | undefined =>
  spoilt.subject.outerKnown.by === 'gap'
    ? gapOf(pitchRadius(spoilt.subject.outer.seat, outerX(spoilt), diameter), diameter, spoilt.subject.balls.count)
    : undefined

/** These balls round an inner ring of this play, its groove so deep. */
function bearingWith(spoilt: SpoiltInner, diameter: number, play: number, depth = depthNow(spoilt)): Tried {
  const { subject, workpiece, ballDiameter } = spoilt
  const areIn = diameter === ballDiameter
  const gap = gapWith(spoilt, diameter)
  const ballGap = gap !== undefined && areIn ? Math.max(0, gap) : gap
  const facts = { radialInternalClearance: play, ...(ballGap === undefined ? {} : { ballGap }) }
  if (ballGap !== undefined && ballGap < 0) return { ...facts, possible: false, obstacle: 'last-ball-stays-out' }
  const made =
    workpiece.arc !== undefined && !(depth > 0)
      ? undefined
      : workpiece.remade({
          count: subject.balls.count,
          diameter,
          x: outerX(spoilt),
          gap: ballGap ?? 0,
          keepsCutter: true,
          inner: { play, depth },
        })
  if (made === undefined || !areIn) return judged(made, facts)
  // The present balls are in already, with whatever keeps them apart.
  const { pocketDiameter: _asItIs, ...bearing } = judged({ ...made, assemblyGap: Number.NEGATIVE_INFINITY }, facts)
  return bearing
}

/** Up to these shares of a ball play is hardly noticed, rattles, and is still worth running. Common practice, no source. */
const HARDLY_NOTICED = 0.06
const RATTLES = 0.12
const MOST_PLAY = 0.2

function accepted(spoilt: SpoiltInner): Extract<Rescue, { option: 'accept-play' }> {
  const { play, ballDiameter, target } = spoilt
  const shareOfBall = play / ballDiameter
  const { inner: _asItIs, ...bearing } = bearingWith(spoilt, ballDiameter, play)
  return {
    option: 'accept-play',
    ...bearing,
    ...(bearing.possible && shareOfBall >= MOST_PLAY ? { possible: false, obstacle: 'out-of-band' } : {}),
    overMaxPlay: play - target.max,
    shareOfBall,
    life: lifeWith(shareOfBall),
  }
}

const lifeWith = (share: number): LifeWithPlay =>
  share < HARDLY_NOTICED ? 'hardly-noticed' : share < RATTLES ? 'rattles' : 'wanders'

function matingFaces({ workpiece, play, target }: SpoiltInner): readonly Rescue[] {
  const found = workpiece.matingFaces?.(play, target.aim)
  if (found === undefined) return []
  return [
    {
      option: 'mating-faces',
      matingFaces: found.change,
      possible: found.isWorthIt,
      ...(found.isWorthIt ? {} : { obstacle: 'too-much' }),
      radialInternalClearance: target.aim,
    },
  ]
}

/** The groove is brought back to where it should be. */
function lining(spoilt: SpoiltInner): Rescue {
  const { ballDiameter, target, play, workpiece } = spoilt
  const thickness = (play - target.aim) / 2
  const { inner: _asDesigned, ...bearing } = bearingWith(spoilt, ballDiameter, target.aim, depthNow(spoilt) - thickness)
  return linedGroove(thickness, ballDiameter, workpiece.arc, bearing)
}

function tried(spoilt: SpoiltInner, diameter: number): Tried {
  const { target } = spoilt
  const play = playWith(spoilt, diameter)
  if (!(play >= target.min && play <= target.max))
    return { possible: false, obstacle: 'out-of-band', radialInternalClearance: play }
  const { inner: _asItIs, ...bearing } = bearingWith(spoilt, diameter, play)
  return bearing
}

function ballsOnHand(spoilt: SpoiltInner): Rescue {
  const wanted = { ballCount: spoilt.subject.balls.count, aim: spoilt.target.aim }
  return fullSetOnHand(
    spoilt.ballsOnHand,
    wanted,
    (diameter) => tried(spoilt, diameter),
    ({ radialInternalClearance }) => radialInternalClearance,
  )
}

const largerBalls = (spoilt: SpoiltInner): Rescue =>
  largerSet(
    (size) => playWith(spoilt, size),
    spoilt.target.aim,
    spoilt.ballDiameter,
    (size) => tried(spoilt, size),
  )

/** A new ring to the outer one as it is: the balls may run elsewhere than the design has them. */
function newInnerRing(spoilt: SpoiltInner): Rescue {
  const { ballDiameter, target, subject, workpiece } = spoilt
  const depth = subject.inner.landRadius - subject.inner.bottomRadius
  return withInnerToCut(
    { option: 'new-inner-ring', ...bearingWith(spoilt, ballDiameter, target.aim, depth) },
    workpiece,
    subject.inner.playPerFinish * target.finishAllowance,
  )
}
