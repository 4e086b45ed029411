import { type Mm, mm } from '#shared/units/length.ts'
import { type BallRing, gapAt } from './ball-ring.ts'

/*
 * Figures of two rings as they are read in bare wood, while both raceways still lack their film of finish: the balls run one
 * film further out. Of plates the film moves no circle. Derived here; fit correction counts the same.
 */

type Film = { readonly finishAllowance: Mm }

/** A gap in bare wood that the finish brings down to `gap`: by as much as it takes from the gap that is aimed at. */
export function gapBeforeFinish(gap: Mm, bearing: BallRing): Mm {
  const { pitchRadius, ballGap, resolved } = bearing
  if (resolved.finishAllowance === 0) return gap
  const bare = gapAt(bearing, mm(pitchRadius + resolved.finishAllowance))
  return mm(gap + (bare ?? ballGap) - ballGap)
}

/** A plug for bare wood, by one that stands for the finished circle inside the balls. */
export const plugBeforeFinish = (diameter: Mm, { finishAllowance }: Film): Mm => mm(diameter + 2 * finishAllowance)

/** Play in bare wood: four films take it, one on either side of both rings. */
export const playBeforeFinish = (play: Mm, { finishAllowance }: Film): Mm => mm(play + 4 * finishAllowance)
