import type { RingPair } from '#shared/bearing/ring-pair.ts'
import type { WoodPart } from '#shared/bearing/wood-parts.ts'
import { longer, shorter } from '#shared/geometry/ellipse.ts'
import { type EllipticPlay, playInEllipse } from '#shared/geometry/play-in-ellipse.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import {
  type BallSize,
  type BoardChange,
  type Change,
  largestRadius,
  leastRadius,
  movedBall,
  movedCircle,
  type Raceway,
} from './moving-wood.ts'
import type { RingWood, Woods } from './year.ts'

/** Two rings, one round the other, after a change of their wood. */
interface MovedRings {
  readonly outer: BoardChange
  readonly inner: BoardChange
  readonly outerBottom: Raceway
  readonly outerLand: Raceway
  readonly innerBottom: Raceway
  readonly innerLand: Raceway
  readonly ball: BallSize
  readonly play: EllipticPlay
}

/**
 * The wood of a part.
 *
 * @throws RangeError where it is not named
 */
export function woodOf(woods: Woods, part: WoodPart): RingWood {
  const wood = woods[part]
  if (wood === undefined) throw new RangeError(`the wood of ${part} must be named`)
  return wood
}

/**
 * Rings that are round on the day of making. Their bottoms are those that a ball on its seat reaches: the groove's own where
 * it sits on the bottom, a little inside of it where it rides on the edges.
 */
export function movingRings(bearing: RingPair, woods: Woods): (change: Change) => MovedRings {
  const { pitchRadius, radialInternalClearance, resolved } = bearing
  const { ballDiameter } = resolved
  const [outerWood, innerWood] = [woodOf(woods, 'outerRing'), woodOf(woods, 'innerRing')]
  const outerBottom = mm(pitchRadius + ballDiameter / 2)
  const innerBottom = mm(pitchRadius - radialInternalClearance / 2 - ballDiameter / 2)
  const outerHoop = { inner: outerBottom, outer: mm(bearing.outerRing.outsideDiameter / 2) }
  const innerHoop = { inner: mm(bearing.innerRing.boreDiameter / 2), outer: innerBottom }
  return (change) => {
    const [outer, inner] = [itemAt(change.boards, 0), itemAt(change.boards, 1)]
    const bottom = movedCircle(outerBottom, outerWood, outerHoop, outer)
    const within = movedCircle(innerBottom, innerWood, innerHoop, inner)
    const ball = movedBall(resolved, woods.balls, change)
    return {
      outer,
      inner,
      outerBottom: bottom,
      // What stands out beside a groove moves with its bottom.
      outerLand: scaled(bottom, bearing.outerRing.landDiameter / 2 / outerBottom),
      innerBottom: within,
      innerLand: scaled(within, bearing.innerRing.landDiameter / 2 / innerBottom),
      ball,
      play: playAmongLobes(bottom, within, ball.mean),
    }
  }
}

/** The lobes of a ring of segments take their height off the play, however the rings are turned: balls stand on all of them. */
function playAmongLobes(outer: Raceway, inner: Raceway, ballDiameter: Mm): EllipticPlay {
  const { worst, best } = playInEllipse(outer, inner, ballDiameter)
  const lost = 2 * (shorter(outer) - leastRadius(outer) + largestRadius(inner) - longer(inner))
  return { worst: mm(worst - lost), best: mm(best - lost) }
}

const scaled = (raceway: Raceway, by: number): Raceway => ({
  ...raceway,
  along: mm(raceway.along * by),
  across: mm(raceway.across * by),
})

/** The least gap between the lands, with the inner ring all the way to one side. */
export const leastLandGap = ({ outerLand, innerLand, play }: MovedRings): Mm =>
  mm(leastRadius(outerLand) - largestRadius(innerLand) - Math.max(0, play.best) / 2)
