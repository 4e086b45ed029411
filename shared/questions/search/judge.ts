import { ARRANGEMENTS, arrangementOf, type Bearing } from '#shared/bearing/arrangements.ts'
import { gapAt, gapLimits } from '#shared/bearing/ball-ring.ts'
import { beyondBounds } from '#shared/bearing/bounds.ts'
import { LEAST_WALL } from '#shared/bearing/findings.ts'
import type { Finding } from '#shared/bearing/warning.ts'
import { closedPitchRadius } from '#shared/geometry/ring-of-balls.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { SEARCHED } from '#shared/questions/search/arrangements/all.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { shopError } from '#shared/units/shop-figure.ts'
import { chanceAsMade, type Spread, spreadOf } from './chance.ts'
import { type DropReason, reasonOf } from './drop-reason.ts'
import { type Candidate, designOf } from './grid.ts'
import type { ResolvedSearch } from './input.ts'
import { boardFor, materialUsed } from './material.ts'
import type { Sizes } from './module.ts'
import { loadMark, type Marks, scoreOf, seatMark, wallMark } from './score.ts'
import { chanceOfSeason, chanceThroughYear } from './year.ts'

/** Allows for a rounding error, as in a design's warnings. */
const WITHIN = 1e-9
const reaches = (value: number, least: number): boolean => value >= least - WITHIN * Math.abs(least)

/** A candidate that stays within the limits. */
export interface Judged {
  readonly bearing: Bearing
  readonly sizes: Sizes
  readonly findings: readonly Finding[]
  readonly isRisky: boolean
  readonly spread: Spread
  readonly marks: Marks
  readonly score: number
  /** That the raceway leaves when it is cut to the rule's nearest figure; none where no gap closes the ring. */
  readonly gapAtShop?: Mm
  readonly isNested: boolean
  /** The part of the boards that becomes the bearing, and the narrowest board that will do. */
  readonly materialUsed: number
  readonly board: Mm
  /** The working load by hand, over the load that is carried: below 1 balls leave marks. */
  readonly margin?: number
}

/**
 * A candidate held to the limits and scored, or the first reason why it is none. Load and year take many times as long and are
 * left to `proved`: their marks are missing, and the chance of running is that of the day it is made.
 */
export function judge(search: ResolvedSearch, at: Candidate): Judged | DropReason {
  const { input, arrangement, boardWidths } = search
  const early = farOff(search, at)
  if (early !== undefined) return early
  const module = arrangementOf({ arrangement })
  const { sizesOf, dropReasons } = SEARCHED[arrangement]
  const made = module.bearingOf(designOf(search, at))
  if (!made.ok) return reasonOf(itemAt(made.error, 0).code, dropReasons)
  const bearing = made.value
  const { ballDiameter } = bearing.resolved
  const sizes = sizesOf(bearing)
  const { outsideDiameter, outerWall, innerWall, landGap } = sizes
  const { min = 0, max } = input.outsideDiameter
  if (!(reaches(outsideDiameter, min) && reaches(max, outsideDiameter))) return 'outside-diameter'
  const thinnest = Math.min(outerWall, innerWall)
  if (!reaches(thinnest, LEAST_WALL * ballDiameter)) return 'bore-too-large'
  const isNested = landGap !== undefined && reaches(landGap, input.partingWidth ?? 0)
  const used = materialUsed(sizes.discs, bearing.resolved.input.bore, isNested, boardWidths)
  const board = boardFor(outsideDiameter, boardWidths)
  if (used === undefined || board === undefined) return 'no-board'
  const gapAtShop = shopGap(bearing, sizes)
  if (input.onlyOnRule === true && !isInBand(bearing, gapAtShop)) return 'not-on-rule'
  if (beyondBounds(bearing.resolved.input, module.fields).length > 0) return 'cannot-be-made'
  const findings = module.findingsOf(bearing)
  const fault = findings.find(({ severity }) => severity === 'fault')
  if (fault !== undefined) return reasonOf(fault.facts.code, dropReasons)
  // What plugs cannot tell a rule can: that is no fault of the bearing.
  const isRisky = findings.some(({ severity, facts }) => severity === 'risk' && facts.code !== 'plugs-cannot-tell')
  const spread = spreadOf(bearing, sizes, input.tools.grooveError)
  const marks: Marks = {
    running: chanceAsMade(bearing, spread),
    wall: wallMark(thinnest, ballDiameter),
    ...(sizes.seats.length === 0 ? {} : { seat: seatMark(sizes.seats) }),
    material: used,
    ...(landGap === undefined ? {} : { nesting: isNested ? 1 : 0 }),
    onHand: onHandMark(search, bearing, bearing.resolved.input.bore),
  }
  return {
    bearing,
    sizes,
    findings,
    isRisky,
    spread,
    marks,
    score: scoreOf(marks, search, isRisky),
    ...(gapAtShop === undefined ? {} : { gapAtShop }),
    isNested,
    materialUsed: used,
    board: mm(board),
  }
}

/**
 * No lower than the score of a candidate that has another, larger bore and is else the same: only the wood beside the bore
 * hangs on that, and with less of it there are no fewer warnings. Or the reason why there is none.
 */
export function boundWith(search: ResolvedSearch, narrow: Judged, bore: Mm): number | DropReason {
  const { bearing, sizes, isNested, isRisky } = narrow
  const { ballDiameter, input } = bearing.resolved
  const thinnest = Math.min(sizes.outerWall, sizes.innerWall - (bore - input.bore) / 2)
  if (!reaches(thinnest, LEAST_WALL * ballDiameter)) return 'bore-too-large'
  const marks = {
    ...narrow.marks,
    wall: wallMark(thinnest, ballDiameter),
    material: materialUsed(sizes.discs, bore, isNested, search.boardWidths) ?? 1,
    onHand: onHandMark(search, bearing, bore),
  }
  return scoreOf(marks, search, isRisky)
}

/** A judged candidate with its load and its year, or the reason why it is none. Its score is no higher than before. */
export function proved(search: ResolvedSearch, judged: Judged): Judged | DropReason {
  const { load, year } = search.input
  const { bearing, isRisky, spread } = judged
  let { marks, margin } = judged
  if (load !== undefined) {
    const { working, ruin } = SEARCHED[search.arrangement].carries(bearing, load)
    const carried = load.radialLoad ?? load.axialLoad ?? Number.NaN
    if (!reaches(ruin, carried)) return 'dents-deeper'
    margin = working / carried
    marks = { ...marks, load: loadMark(margin) }
  }
  if (year !== undefined) {
    const chance = chanceThroughYear(year, bearing, spread)
    if (!(chance > 0)) return 'not-all-year'
    marks = { ...marks, running: Math.min(marks.running ?? 0, chance) }
  }
  return { ...judged, marks, score: scoreOf(marks, search, isRisky), ...(margin === undefined ? {} : { margin }) }
}

/**
 * A proved candidate whose chance of running counts the boards, the hysteresis and the assembly of a seasonal fit too: those
 * and the tools are independent. It takes longer than everything before, so only a page of the best has it.
 */
export function throughSeason(search: ResolvedSearch, judged: Judged): Judged {
  const { year } = search.input
  if (year === undefined) return judged
  const marks = { ...judged.marks, running: (judged.marks.running ?? 0) * chanceOfSeason(year, judged.bearing) }
  return { ...judged, marks, score: scoreOf(marks, search, judged.isRisky) }
}

/** Judges a candidate without computing its bearing, which takes far longer: most grids hold many that are far off. */
function farOff({ input, arrangement, counts, bores }: ResolvedSearch, at: Candidate): DropReason | undefined {
  const { diameter, quantity = Number.POSITIVE_INFINITY } = itemAt(input.balls, at.ball)
  const count = itemAt(counts, at.count)
  if (count > quantity) return 'too-few-balls'
  if (2 * closedPitchRadius(diameter, count) > input.outsideDiameter.max) return 'outside-diameter'
  // A gap as wide as a ball is room for one more.
  const isFull = ARRANGEMENTS[arrangement].traits.ballSet === 'full'
  return isFull && itemAt(bores, at.bore) > 2 * closedPitchRadius(diameter, count + 1) ? 'bore-too-large' : undefined
}

/** The gap that is left when what sets it is cut to the nearest figure of the rule; undefined where no gap closes the ring. */
function shopGap(bearing: Bearing, { cutDiameter, gapPerCut }: Sizes): Mm | undefined {
  if (!('ballGap' in bearing)) return undefined
  const { units, shopDenominator } = bearing.resolved.input
  const error = shopError(cutDiameter, units, shopDenominator)
  const moved = (gapPerCut / bearing.gapPerPitchRadius) * (error / 2)
  return gapAt(bearing, mm(bearing.pitchRadius + moved)) ?? mm(-bearing.resolved.ballDiameter)
}

const isInBand = ({ resolved }: Bearing, gap: Mm | undefined): boolean =>
  gap !== undefined && 'minBallGap' in resolved && isWithin(gap, gapLimits(resolved))

const isWithin = (gap: Mm, { least, most }: ReturnType<typeof gapLimits>): boolean =>
  reaches(gap, least) && reaches(most, gap)

/** The part of the tools for this bearing that is there: the drill for its bore, and a plug from go to no-go. */
function onHandMark({ input: { drillDiameters, plugDiameters } }: ResolvedSearch, bearing: Bearing, bore: Mm): number {
  const isThere: boolean[] = []
  if (drillDiameters !== undefined) isThere.push(drillDiameters.some((drill) => isSame(drill, bore)))
  if (plugDiameters !== undefined && 'gauge' in bearing) {
    const { goDiameter, noGoDiameter } = bearing.gauge
    isThere.push(plugDiameters.some((plug) => reaches(plug, goDiameter) && reaches(noGoDiameter, plug)))
  }
  return isThere.length === 0 ? 1 : isThere.filter(Boolean).length / isThere.length
}

const isSame = (one: number, other: number): boolean => reaches(one, other) && reaches(other, one)
