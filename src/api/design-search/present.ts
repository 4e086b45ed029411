import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import type { DesignSearch, Ranked, SearchRefusal } from '#shared/questions/search/design-search.ts'
import { DROP_REASONS } from '#shared/questions/search/drop-reason.ts'
import {
  type BallStock as CoreStock,
  CRITERIA,
  candidatesIn,
  type DesignSearchInput,
  type SharedDesign,
} from '#shared/questions/search/input.ts'
import type { Year } from '#shared/questions/season/input.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { cautionsFor } from '#src/api/caution.ts'
import { toClimate, toWoods } from '#src/api/climate.ts'
import { toDesignRequest } from '#src/api/design-input.ts'
import { toNewtons, usualForceUnits } from '#src/api/force.ts'
import { type Length, show, toMm } from '#src/api/length.ts'
import { present } from '#src/api/optional.ts'
import { toWarning } from '#src/api/warning.ts'
import type { Fault } from '#src/http/problem.ts'
import {
  countsReversed,
  DROPPED,
  explainCriterion,
  explainRefusal,
  lengthsReversed,
  shopOf,
  tooManyCombinations,
} from '#src/words/design-search.ts'
import { NO_WOODEN_BALLS } from '#src/words/season-refusal.ts'
import { TERMS } from '#src/words/terms.ts'
import type { DesignSearchRequest, DesignSearchResponse } from './schema.ts'

/** As many as are searched in well under a second; fewer where each may have to be loaded too. */
const MOST_CANDIDATES = 100_000
const MOST_LOADED = 40_000

/** The caller's limits in the core's words, or what contradicts itself. */
export function toDesignSearchInput(request: DesignSearchRequest): Result<DesignSearchInput, readonly Fault[]> {
  const year = toYear(request)
  const input = { ...toInput(request), ...(year.ok && year.value !== undefined ? { year: year.value } : {}) }
  const faults = [
    ...(year.ok ? [] : year.error),
    ...reversed('/outsideDiameter/least', input.outsideDiameter, request.units),
    ...reversed('/bore/least', input.bore, request.units),
    ...reversedCounts(request.counts),
  ]
  if (faults.length > 0) return fail(faults)
  const isHard = input.load !== undefined || input.year !== undefined
  const most = isHard ? MOST_LOADED : MOST_CANDIDATES
  const candidates = candidatesIn(input)
  if (candidates <= most) return ok(input)
  return fail([{ path: '', message: tooManyCombinations({ candidates, most, isHard }) }])
}

/** The year in the core's words; none where none is asked about. Paths are those of the request. */
function toYear({ year, balls }: DesignSearchRequest): Result<Year | undefined, readonly Fault[]> {
  if (year === undefined) return ok(undefined)
  const [woods, climate] = [toWoods(year.woods), toClimate(year.climate)]
  const areWooden = balls.some(({ material = BALL_MATERIAL }) => material === 'wood')
  const stray: readonly Fault[] =
    year.woods.balls === undefined || areWooden ? [] : [{ path: '/woods/balls', message: NO_WOODEN_BALLS }]
  if (woods.ok && climate.ok && stray.length === 0) return ok({ woods: woods.value, ...climate.value })
  const faults = [...(woods.ok ? [] : woods.error), ...(climate.ok ? [] : climate.error), ...stray]
  return fail(faults.map(({ path, message }) => ({ path: `/year${path}`, message })))
}

export const toSearchFault = (refusal: SearchRefusal, { year }: DesignSearchRequest): Fault => ({
  path: refusal.path,
  message: explainRefusal(refusal, year?.climate.temperatureScale ?? 'celsius'),
})

function toInput(request: DesignSearchRequest): DesignSearchInput {
  const { units, outsideDiameter, bore, load } = request
  const size = (length: Length | undefined): Mm | undefined => (length === undefined ? undefined : toMm(length, units))
  const sizes = (lengths: readonly Length[] | undefined) => lengths?.map((length) => toMm(length, units))
  return present<DesignSearchInput>({
    shared: toShared(request),
    outsideDiameter: present({ least: size(outsideDiameter.least), most: toMm(outsideDiameter.most, units) }),
    bore: present({ least: toMm(bore.least, units), most: toMm(bore.most, units), step: size(bore.step) }),
    balls: request.balls.map(({ diameter, material, standardDeviation, quantity }) =>
      present<CoreStock>({
        diameter: toMm(diameter, units),
        material,
        standardDeviation: size(standardDeviation),
        quantity,
      }),
    ),
    counts: request.counts && present({ least: request.counts.least, most: request.counts.most }),
    cutterDiameters: sizes(request.cutterDiameters),
    outerEngagements: request.outerEngagements,
    innerEngagements: request.innerEngagements,
    boardWidths: sizes(request.boardWidths),
    partingWidth: size(request.partingWidth),
    weights: request.weights && present({ ...request.weights }),
    onlyOnRule: request.onlyOnRule,
    load:
      load &&
      present({
        radialLoad: toNewtons(load.radialLoad, load.forceUnits ?? usualForceUnits(units)),
        wood: load.wood,
        dentFraction: load.dentFraction,
      }),
    show: request.show,
    offset: request.offset,
    limit: request.limit,
  })
}

function toShared(request: DesignSearchRequest): SharedDesign {
  const { units } = request
  const size = (length: Length | undefined): Mm | undefined => (length === undefined ? undefined : toMm(length, units))
  return present<SharedDesign>({
    units,
    ballGap: size(request.ballGap),
    minBallGap: size(request.minBallGap),
    maxBallGap: size(request.maxBallGap),
    radialInternalClearance: size(request.radialInternalClearance),
    finishAllowance: size(request.finishAllowance),
    width: size(request.width),
    split: request.split,
    shopDenominator: request.shopDenominator,
  })
}

const reversed = (
  path: string,
  { least = mm(0), most }: { readonly least?: Mm; readonly most: Mm },
  units: Units,
): readonly Fault[] => (least <= most ? [] : [{ path, message: lengthsReversed(least, most, units) }])

const reversedCounts = ({ least, most }: NonNullable<DesignSearchRequest['counts']> = {}): readonly Fault[] =>
  least === undefined || most === undefined || least <= most
    ? []
    : [{ path: '/counts/least', message: countsReversed(least, most) }]

/** A search in the caller's units and in words. */
export function toDesignSearchResponse(found: DesignSearch): DesignSearchResponse {
  const { search, ranked, dropped } = found
  const materials = new Set(search.balls.map(({ material }) => material))
  return {
    units: search.shared.units,
    ranked: ranked.map((each, place) => toRanked(each, search.offset + place + 1, found)),
    more: found.more,
    candidates: found.candidates,
    workedOut: found.workedOut,
    outranked: found.outranked,
    dropped: DROP_REASONS.filter((reason) => dropped[reason] > 0).map((reason) => ({
      reason,
      count: dropped[reason],
      message: DROPPED[reason],
    })),
    cautions: cautionsFor(materials.has('glass') ? 'glass' : 'wood', TERMS.radial),
  }
}

function toRanked(ranked: Ranked, rank: number, { search }: DesignSearch): DesignSearchResponse['ranked'][number] {
  const { bearing, design, marks, findings } = ranked
  const { units } = search.shared
  const size = (length: Mm) => show(length, units)
  return {
    rank,
    score: ranked.score,
    criteria: CRITERIA.map((name) => ({
      name,
      mark: marks[name],
      weight: search.weights[name],
      message: explainCriterion(name, ranked),
    })),
    design: toDesignRequest(design),
    outsideDiameter: size(bearing.outerRing.outsideDiameter),
    pitchDiameter: size(mm(2 * bearing.pitchRadius)),
    outerGrooveBottomDiameter: size(bearing.outerRing.grooveBottomDiameter),
    shop: shopOf(ranked),
    ballGap: size(bearing.ballGap),
    gapAtShop: size(ranked.gapAtShop),
    outerWall: size(bearing.outerRing.wall),
    innerWall: size(bearing.innerRing.wall),
    landGap: size(bearing.landGap),
    nested: ranked.nested,
    ...(search.boardWidths.length === 0 ? {} : { board: size(ranked.board) }),
    materialUsed: ranked.materialUsed,
    warnings: findings.map(({ severity, path, facts }) => toWarning({ severity, path, facts }, units, TERMS.radial)),
  }
}
