import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import { valueAt } from '#shared/bearing/field.ts'
import { DESIGN_SOURCES, LOAD_CHECK_SOURCES, type SourceId } from '#shared/data/sources.ts'
import { itemAt, lastOf } from '#shared/numbers/item-at.ts'
import type { ResolvedLoad } from '#shared/questions/load/input.ts'
import { SEARCH_DEFAULTS, SEARCH_RULES } from '#shared/questions/search/defaults.ts'
import type { DesignSearch, Ranked, SearchRefusal } from '#shared/questions/search/design-search.ts'
import { DROP_REASONS } from '#shared/questions/search/drop-reason.ts'
import {
  boreStepOf,
  type BallStock as CoreStock,
  CRITERIA,
  candidatesIn,
  countsOf,
  type DesignSearchInput,
  SHARED_FIELDS,
} from '#shared/questions/search/input.ts'
import type { Year } from '#shared/questions/season/input.ts'
import { seasonSources } from '#shared/questions/season/season-sources.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { answer } from '#src/api/answer.ts'
import { type Assumption, assumptionsIn, type Defaults, defaultsOf, ruleAssumed } from '#src/api/assumption.ts'
import { cautionsFor } from '#src/api/caution.ts'
import { echoedClimate, echoedWoods, toYear, yearDefaults } from '#src/api/climate.ts'
import { toDesignRequest } from '#src/api/design-input.ts'
import { fromRequest, toRequest } from '#src/api/fields.ts'
import { FORCE_UNITS_FIELD, toNewtons, usualForceUnits } from '#src/api/force.ts'
import { echo, type Length, show, toMm } from '#src/api/length.ts'
import { showNumber } from '#src/api/number.ts'
import { present } from '#src/api/optional.ts'
import { toSource } from '#src/api/source.ts'
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
import { searchSummary } from '#src/words/summary.ts'
import { TERMS } from '#src/words/terms.ts'
import type { DesignSearchRequest, DesignSearchResponse } from './schema.ts'

/** As many as are searched in well under a second; fewer where each may have to be loaded too. */
const MOST_CANDIDATES = 100_000
const MOST_LOADED = 40_000

/** The caller's limits in the core's words, or what contradicts itself. */
export function toDesignSearchInput(request: DesignSearchRequest): Result<DesignSearchInput, readonly Fault[]> {
  const year = yearIn(request)
  const input = { ...toInput(request), ...(year.ok && year.value !== undefined ? { year: year.value } : {}) }
  const faults = [
    ...(year.ok ? [] : year.error),
    ...reversed('/outsideDiameter/min', input.outsideDiameter, request.units),
    ...reversed('/bore/min', input.bore, request.units),
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
function yearIn({ year, balls }: DesignSearchRequest): Result<Year | undefined, readonly Fault[]> {
  if (year === undefined) return ok(undefined)
  const areSomeWooden = balls.some(({ material = BALL_MATERIAL }) => material === 'wood')
  const read = toYear(year, areSomeWooden)
  return read.ok ? read : fail(read.error.map(({ path, message }) => ({ path: `/year${path}`, message })))
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
    shared: { units, ...fromRequest(SHARED_FIELDS, request, units) },
    outsideDiameter: present({ least: size(outsideDiameter.min), most: toMm(outsideDiameter.max, units) }),
    bore: present({ least: toMm(bore.min, units), most: toMm(bore.max, units), step: size(bore.step) }),
    balls: request.balls.map(({ diameter, material, standardDeviation, quantity }) =>
      present<CoreStock>({
        diameter: toMm(diameter, units),
        material,
        standardDeviation: size(standardDeviation),
        quantity,
      }),
    ),
    counts: request.counts && present({ least: request.counts.min, most: request.counts.max }),
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

const reversed = (
  path: string,
  { least = mm(0), most }: { readonly least?: Mm; readonly most: Mm },
  units: Units,
): readonly Fault[] => (least <= most ? [] : [{ path, message: lengthsReversed(least, most, units) }])

const reversedCounts = ({ min, max }: NonNullable<DesignSearchRequest['counts']> = {}): readonly Fault[] =>
  min === undefined || max === undefined || min <= max
    ? []
    : [{ path: '/counts/min', message: countsReversed(min, max) }]

/** A search in the caller's units and in words. */
export function toDesignSearchResponse(found: DesignSearch, request: DesignSearchRequest): DesignSearchResponse {
  const { search, ranked, dropped } = found
  const materials = new Set(search.balls.map(({ material }) => material))
  const { input, assumed } = toEcho(found, request)
  return answer(
    { arrangement: 'radial', units: search.shared.units, input, assumed, summary: searchSummary(found) },
    {
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
    },
    {
      warnings: [],
      cautions: cautionsFor(materials.has('glass') ? 'glass' : 'wood', TERMS.radial),
      sources: sourcesOf(found),
    },
  )
}

function sourcesOf({ search: { load, year, balls } }: DesignSearch) {
  const used: readonly SourceId[] = [
    ...DESIGN_SOURCES,
    ...(load === undefined ? [] : LOAD_CHECK_SOURCES),
    ...(year === undefined ? [] : balls.flatMap(({ material }) => seasonSources(year.woods, material))),
  ]
  return [...new Set(used)].map(toSource)
}

/** What was asked with every default that is one value for all designs. Of the others the rule is named. */
function toEcho({ search }: DesignSearch, request: DesignSearchRequest) {
  const input = toInput(request)
  const { shared, counts } = search
  const { units } = shared
  const size = (length: Mm) => echo(length, units)
  const maybe = (length: Mm | undefined) => (length === undefined ? undefined : size(length))
  const maybeAll = (lengths: readonly Mm[] | undefined) => lengths?.map(size)
  const { least, most } = countsOf(input)
  const whole = present<DesignSearchRequest>({
    units,
    arrangement: 'radial',
    outsideDiameter: present<DesignSearchRequest['outsideDiameter']>({
      min: maybe(input.outsideDiameter.least),
      max: size(input.outsideDiameter.most),
    }),
    bore: { min: size(input.bore.least), max: size(input.bore.most), step: size(boreStepOf(input)) },
    balls: search.balls.map(({ diameter, material, standardDeviation }, place) =>
      present<DesignSearchRequest['balls'][number]>({
        diameter: size(diameter),
        material,
        standardDeviation: size(standardDeviation),
        quantity: input.balls[place]?.quantity,
      }),
    ),
    counts: { min: counts.length === 0 ? least : itemAt(counts, 0), max: counts.length === 0 ? most : lastOf(counts) },
    cutterDiameters: maybeAll(input.cutterDiameters),
    outerEngagements: [...search.outerEngagements],
    innerEngagements: [...search.innerEngagements],
    boardWidths: maybeAll(input.boardWidths),
    partingWidth: size(search.partingWidth),
    ...toRequest(SHARED_FIELDS, shared, units),
    onlyOnRule: search.onlyOnRule,
    load: request.load && search.load && toEchoedLoad(request.load, search.load, units),
    year: request.year && { woods: echoedWoods(request.year.woods), climate: echoedClimate(request.year.climate) },
    weights: { ...search.weights },
    show: search.show,
    offset: search.offset,
    limit: search.limit,
  })
  return {
    input: whole,
    assumed: [...assumptionsIn({ arrangement: 'radial', ...request }, whole, DEFAULTS), ...rulesIn(request)],
  }
}

const DEFAULTS: Defaults = {
  ...SEARCH_DEFAULTS,
  ...yearDefaults('/year'),
  ...defaultsOf({ forceUnits: FORCE_UNITS_FIELD }, '/load'),
}

const toEchoedLoad = (
  { radialLoad, forceUnits }: NonNullable<DesignSearchRequest['load']>,
  { wood, dentFraction }: ResolvedLoad,
  units: Units,
) => ({ radialLoad, forceUnits: forceUnits ?? usualForceUnits(units), wood, dentFraction })

/** The rules by which each design has a value of its own, and the limits that there are not. */
function rulesIn(request: DesignSearchRequest): Assumption[] {
  const { '/quantity': quantity, ...rules } = SEARCH_RULES
  return [
    ...Object.entries(rules)
      .filter(([path]) => valueAt(request, [path.slice(1)]) === undefined)
      .map(([path, rule]) => ruleAssumed(path, rule)),
    ...request.balls.flatMap((balls, place) =>
      balls.quantity === undefined ? [ruleAssumed(`/balls/${place}/quantity`, quantity)] : [],
    ),
  ]
}

function toRanked(ranked: Ranked, rank: number, { search }: DesignSearch): DesignSearchResponse['ranked'][number] {
  const { bearing, design, marks, findings } = ranked
  const { outerRing, innerRing } = bearing
  const { units } = search.shared
  const size = (length: Mm) => show(length, units)
  return {
    rank,
    score: showNumber(ranked.score),
    criteria: CRITERIA.map((name) => ({
      name,
      mark: showNumber(marks[name]),
      weight: showNumber(search.weights[name]),
      message: explainCriterion(name, ranked),
    })),
    design: toDesignRequest(design),
    pitchDiameter: size(mm(2 * bearing.pitchRadius)),
    outerRing: {
      outsideDiameter: size(outerRing.outsideDiameter),
      grooveBottomDiameter: size(outerRing.grooveBottomDiameter),
      wall: size(outerRing.wall),
    },
    innerRing: { wall: size(innerRing.wall) },
    shop: shopOf(ranked),
    ballGap: size(bearing.ballGap),
    gapAtShop: size(ranked.gapAtShop),
    landGap: size(bearing.landGap),
    nested: ranked.nested,
    ...(search.boardWidths.length === 0 ? {} : { board: size(ranked.board) }),
    materialUsed: showNumber(ranked.materialUsed),
    warnings: findings.map(({ severity, path, facts }) => toWarning({ severity, path, facts }, units, TERMS.radial)),
  }
}
