import { ARRANGEMENTS, type RadialBearing, type RadialInput } from '#shared/bearing/arrangements.ts'
import { gapAt } from '#shared/bearing/ball-ring.ts'
import { beyondBounds } from '#shared/bearing/bounds.ts'
import { LEAST_WALL } from '#shared/bearing/findings.ts'
import type { Ring } from '#shared/bearing/rings.ts'
import { seated } from '#shared/questions/load/arrangements/rings.ts'
import { type YearRun, yearRun } from '#shared/questions/season/seasonal-fit.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { shopError } from '#shared/units/shop-figure.ts'
import type { DropReason } from './drop-reason.ts'
import { type Candidate, designOf, entryAt } from './grid.ts'
import type { ResolvedSearch } from './input.ts'
import { closureMark, type Marks, nestingMark, scoreOf, seatMark, sensitivityMark, wallMark } from './score.ts'
import { boardFor, materialUsed } from './stock.ts'

/** What is left when a rounding error is taken out of account, as in a design's warnings. */
const WITHIN = 1e-9
export const reaches = (value: number, least: number): boolean => value >= least - WITHIN * Math.abs(least)

/** A candidate that stays within the limits. */
export interface Judged {
  readonly bearing: RadialBearing
  readonly marks: Marks
  readonly score: number
  /** Of the rule's nearest figure for the groove's bottom. */
  readonly gapAtShop: Mm
  readonly nested: boolean
  /** The part of the boards that becomes rings, and the narrowest board that will do. */
  readonly materialUsed: number
  readonly board: Mm
}

/** A candidate held to the limits and scored, or the first reason why it is none. */
export function judge(search: ResolvedSearch, at: Candidate): Judged | DropReason {
  const count = entryAt(search.counts, at.count)
  if (count > entryAt(search.quantities, at.ball)) return 'too-few-balls'
  const made = ARRANGEMENTS.radial.bearingOf(designOf(search, at))
  if (!made.ok) return 'cannot-be-made'
  const bearing = made.value
  const { outerRing: outer, innerRing: inner, resolved, landGap } = bearing
  const { least, most } = search.outsideDiameter
  if (!(reaches(outer.outsideDiameter, least) && reaches(most, outer.outsideDiameter))) return 'outside-diameter'
  const thinnest = Math.min(outer.wall, inner.wall)
  if (!reaches(thinnest, LEAST_WALL * resolved.ballDiameter)) return 'bore-too-large'
  const nested = reaches(landGap, search.partingWidth)
  const used = materialUsed(
    {
      outsideDiameter: outer.outsideDiameter,
      outerLandDiameter: outer.landDiameter,
      innerLandDiameter: inner.landDiameter,
      bore: inner.boreDiameter,
    },
    nested,
    search.boardWidths,
  )
  const board = boardFor(outer.outsideDiameter, search.boardWidths)
  if (used === undefined || board === undefined) return 'no-board'
  const gapAtShop = shopGap(bearing)
  if (search.onlyOnRule && !(reaches(gapAtShop, resolved.minBallGap) && reaches(resolved.maxBallGap, gapAtShop))) {
    return 'not-on-rule'
  }
  if (beyondBounds(resolved.input, ARRANGEMENTS.radial.fields).length > 0) return 'cannot-be-made'
  if (ARRANGEMENTS.radial.findingsOf(bearing).some(({ severity }) => severity === 'fault')) return 'cannot-be-made'
  const { diameter, standardDeviation } = entryAt(search.balls, at.ball)
  const marks: Marks = {
    closure: closureMark(gapAtShop - bearing.ballGap, resolved.maxBallGap - resolved.minBallGap),
    wall: wallMark(thinnest, diameter),
    nesting: nestingMark(landGap, search.partingWidth),
    seat: seatMark([outer, inner].map((ring) => seatOf(ring, diameter))),
    sensitivity: sensitivityMark(count, diameter, standardDeviation),
    material: used,
  }
  const score = scoreOf(marks, search.weights)
  return { bearing, marks, score, gapAtShop, nested, materialUsed: used, board: mm(board) }
}

/** Whether a design bears the load that is asked of it; not asked of every candidate, for it takes ten times as long. */
export const bears = ({ load }: ResolvedSearch, bearing: RadialBearing): boolean =>
  load === undefined || reaches(seated(bearing, load).ruin.load, load.radialLoad)

/** Whether a design runs all the year that is asked for: up to a thousand times the work of judging it. */
export function runsInYear({ year }: ResolvedSearch, design: RadialInput): YearRun {
  if (year === undefined) return { runs: true, statesLookedAt: 0 }
  const { balls, ...rings } = year.woods
  const isWood = design.balls.material === 'wood'
  const woods = isWood && balls !== undefined ? { ...rings, balls } : rings
  return yearRun({ ...year, woods, design })
}

const seatOf = ({ seat, grooveRadius }: Ring, ballDiameter: number) => ({
  onBottom: seat === 'bottom',
  conformity: grooveRadius / ballDiameter,
})

/** The gap that the outer groove leaves when its bottom is cut to the nearest figure of the rule. */
function shopGap(bearing: RadialBearing): Mm {
  const { resolved, outerRing: outer, gapPerGrooveDepth, gapPerPitchRadius, pitchRadius } = bearing
  const { units, shopDenominator } = resolved.input
  const error = shopError(outer.grooveBottomDiameter, units, shopDenominator)
  const moved = (gapPerGrooveDepth / gapPerPitchRadius) * (error / 2)
  return gapAt(bearing, mm(pitchRadius + moved)) ?? mm(-resolved.ballDiameter)
}
