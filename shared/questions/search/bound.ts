import * as defaults from '#shared/bearing/defaults.ts'
import { LEAST_WALL } from '#shared/bearing/findings.ts'
import { usualPlay, usualWall, usualWidth } from '#shared/bearing/grooved-rings.ts'
import { grooveHalfWidth } from '#shared/geometry/groove.ts'
import { closedPitchRadius } from '#shared/geometry/ring-of-balls.ts'
import { seatIn } from '#shared/geometry/seat.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { stepUp } from '#shared/units/step.ts'
import type { DropReason } from './drop-reason.ts'
import { type Candidate, entryAt } from './grid.ts'
import type { ResolvedSearch } from './input.ts'
import { reaches } from './judge.ts'
import { type Marks, nestingMark, scoreOf, seatMark, sensitivityMark, wallMark } from './score.ts'
import { boardFor } from './stock.ts'

/*
 * What can be said of a candidate without working it out, so that only those are worked out that may be among the best.
 *
 * The ball gap lies between 0 and a ball. So the pitch radius lies between that at which Z balls just close and that at
 * which Z + 1 do: a gap of a ball is room for one more. Everything else that is said here follows from these two radii:
 * no candidate scores higher than its bound, and one that is dropped here is dropped when it is worked out.
 */

/** No better score than this, or why there is none. */
export type Bound = number | DropReason

/** What a candidate's grooves are, whatever the bore. */
interface Grooves {
  readonly landGap: number
  readonly nested: boolean
  readonly outerSeat: number
  readonly innerSeat: number
  readonly outerDepth: number
  readonly innerDepth: number
  readonly seat: number
}

/** Bounds of the candidates of a search. What several share is worked out once, and remembered in here. */
export function boundsOf(search: ResolvedSearch): (at: Candidate) => Bound {
  const grooves = new Map<number, Grooves | DropReason>()
  const radii = search.balls.map(({ diameter }) =>
    search.counts.map((count) => [closedPitchRadius(diameter, count), closedPitchRadius(diameter, count + 1)] as const),
  )
  return (at) => {
    if (entryAt(search.counts, at.count) > entryAt(search.quantities, at.ball)) return 'too-few-balls'
    const key =
      (((at.ball * search.counts.length + at.count) * search.cutters.length + at.cutter) *
        search.outerEngagements.length +
        at.outer) *
        search.innerEngagements.length +
      at.inner
    let found = grooves.get(key)
    if (found === undefined) {
      found = groovesOf(search, at)
      grooves.set(key, found)
    }
    if (typeof found === 'string') return found
    return boundBy(search, at, found, entryAt(entryAt(radii, at.ball), at.count))
  }
}

/** A depth that equals the radius within rounding is a half circle, as in `resolve`. */
const HALF_CIRCLE_WITHIN = 1e-12

function groovesOf(search: ResolvedSearch, at: Candidate): Grooves | DropReason {
  const { diameter, standardDeviation } = entryAt(search.balls, at.ball)
  const cutter = entryAt(search.cutters, at.cutter)
  const radius = cutter === undefined ? mm(defaults.CONFORMITY * diameter) : mm(cutter / 2)
  const width = search.shared.width ?? usualWidth(diameter, search.shared.units)
  const balls = { count: entryAt(search.counts, at.count), diameter }
  const play =
    search.shared.radialInternalClearance ?? usualPlay(diameter, standardDeviation, { ...search.shared, balls })
  const [outerDepth, innerDepth] = [
    entryAt(search.outerEngagements, at.outer) * diameter,
    entryAt(search.innerEngagements, at.inner) * diameter,
  ]
  const seats = [outerDepth, innerDepth].map((depth) => {
    if (!(depth <= radius * (1 + HALF_CIRCLE_WITHIN) && reaches(diameter / 2, depth))) return undefined
    const groove = { radius, depth: mm(Math.min(depth, radius)) }
    return reaches(width, 2 * grooveHalfWidth(groove)) ? seatIn(groove, diameter) : undefined
  })
  const [outer, inner] = seats
  if (outer === undefined || inner === undefined) return 'no-such-groove'
  if (!reaches(diameter, outer.depth + inner.depth)) return 'lands-touch'
  const landGap = diameter - outer.depth - inner.depth + play / 2
  return {
    landGap,
    nested: reaches(landGap, search.partingWidth),
    outerSeat: outer.depth,
    innerSeat: inner.depth,
    outerDepth,
    innerDepth,
    seat: seatMark([outer, inner].map(({ on }) => ({ onBottom: on === 'bottom', conformity: radius / diameter }))),
  }
}

function boundBy(search: ResolvedSearch, at: Candidate, grooves: Grooves, [least, most]: readonly [Mm, Mm]): Bound {
  const { diameter, standardDeviation } = entryAt(search.balls, at.ball)
  const bore = entryAt(search.bores, at.bore)
  const ballRadius = diameter / 2
  const landAt = (radius: number): number => 2 * (radius + ballRadius - grooves.outerSeat)
  const outsideAt = (radius: number): number =>
    stepUp(
      landAt(radius) + 2 * grooves.outerDepth + 2 * usualWall(diameter, search.shared.units),
      defaults.roundOutsideDiameterTo(search.shared.units),
    )
  const outside = { least: outsideAt(least), most: outsideAt(most) }
  const limits = search.outsideDiameter
  if (!(reaches(limits.most, outside.least) && reaches(outside.most, limits.least))) return 'outside-diameter'
  const innerLandAt = (radius: number): number => landAt(radius) - 2 * grooves.landGap
  const innerWall = innerLandAt(most) / 2 - grooves.innerDepth - bore / 2
  if (!reaches(innerWall, LEAST_WALL * diameter)) return 'bore-too-large'
  const board = boardFor(outside.least, search.boardWidths)
  if (board === undefined) return 'no-board'
  const outerWall = outside.most / 2 - landAt(least) / 2 - grooves.outerDepth
  const [land, innerLand] = [landAt(least), innerLandAt(most)]
  const rings = (Math.PI / 4) * (outside.most * outside.most - land * land + innerLand * innerLand - bore * bore)
  const inner = grooves.nested ? 0 : innerLandAt(least) * (boardFor(innerLandAt(least), search.boardWidths) ?? 0)
  const marks: Marks = {
    closure: 1,
    wall: wallMark(Math.min(outerWall, innerWall), diameter),
    nesting: nestingMark(grooves.landGap, search.partingWidth),
    seat: grooves.seat,
    sensitivity: sensitivityMark(entryAt(search.counts, at.count), diameter, standardDeviation),
    // where the ring of balls is so small that nothing is left inside, no bore is small enough either
    material: Math.min(1, rings / (outside.least * board + Math.max(0, inner))),
  }
  return scoreOf(marks, search.weights)
}
