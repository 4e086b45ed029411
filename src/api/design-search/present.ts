import { nameOf, sourcesOf, traitsOf } from '#shared/bearing/arrangements.ts'
import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import { type Default, leavesOf, valueAt } from '#shared/bearing/field.ts'
import { wholeClimate, wholeWoods } from '#shared/bearing/whole-year.ts'
import type { SourceId } from '#shared/data/sources.ts'
import type { Year } from '#shared/movement/year.ts'
import { carryingWoods } from '#shared/questions/load/carrying-woods.ts'
import { resolveLoad, resolveLoadOptions } from '#shared/questions/load/input.ts'
import { dentSources } from '#shared/questions/load/load-sources.ts'
import { SEARCHED } from '#shared/questions/search/arrangements/all.ts'
import type { DesignSearch, Ranked, SearchRefusal } from '#shared/questions/search/design-search.ts'
import { DROP_REASONS } from '#shared/questions/search/drop-reason.ts'
import { DEPTH_LISTS, ON_RULE, STOCK_FIELDS } from '#shared/questions/search/fields.ts'
import { candidatesIn, type DesignSearchInput, isMarked } from '#shared/questions/search/input.ts'
import { seasonSources } from '#shared/questions/season/season-sources.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { mm } from '#shared/units/length.ts'
import { answer } from '#src/api/answer.ts'
import { type Assumption, assumptionsIn, type Defaults, defaultsOf, ruleAssumed } from '#src/api/assumption.ts'
import { caution } from '#src/api/caution.ts'
import { toYear, woodNotes, yearDefaults } from '#src/api/climate.ts'
import { ruleFaults, toDesignRequest } from '#src/api/design-input.ts'
import { fromRequest, toRequest } from '#src/api/fields.ts'
import { toNewtons, usualForceUnits } from '#src/api/force.ts'
import { plannedWoods } from '#src/api/load-check/shared-answer.ts'
import { showNumber } from '#src/api/number.ts'
import { present } from '#src/api/optional.ts'
import { shownBy } from '#src/api/schema.ts'
import { toSource } from '#src/api/source.ts'
import { toWarning } from '#src/api/warning.ts'
import type { Fault } from '#src/http/problem.ts'
import { cautionCodes } from '#src/words/bearing-caution.ts'
import {
  countsReversed,
  droppedFor,
  explainCriterion,
  explainRefusal,
  lengthsReversed,
  NOT_MARKED,
  shopOf,
  tooManyCombinations,
} from '#src/words/design-search.ts'
import { searchSummary } from '#src/words/summary.ts'
import { TERMS } from '#src/words/terms.ts'
import { type DesignSearchRequest, type DesignSearchResponse, loadRows, RankedDesign, rowsOf } from './schema.ts'

/** As many as are judged in a few seconds; fewer where each may have to be loaded too. */
const MOST_CANDIDATES = 100_000
const MOST_LOADED = 40_000

/** The caller's limits in the core's words, or what contradicts itself. */
export function toDesignSearchInput(request: DesignSearchRequest): Result<DesignSearchInput, readonly Fault[]> {
  const year = yearIn(request)
  const input = { ...toInput(request), ...(year.ok && year.value !== undefined ? { year: year.value } : {}) }
  const faults = [...ruleFaults(request), ...(year.ok ? [] : year.error), ...reversed(input), ...idleWeights(input)]
  if (faults.length > 0) return fail(faults)
  const isHard = input.load !== undefined || input.year !== undefined
  const most = isHard ? MOST_LOADED : MOST_CANDIDATES
  const candidates = candidatesIn(input)
  if (candidates <= most) return ok(input)
  return fail([{ path: '', message: tooManyCombinations({ candidates, most, isHard }) }])
}

/** Weights of marks that no design of this search has. The schema knows those of other arrangements. */
const idleWeights = (input: DesignSearchInput): readonly Fault[] =>
  (['load', 'onHand'] as const)
    .filter((name) => input.weights?.[name] !== undefined && !isMarked(input, name))
    .map((name) => ({ path: `/weights/${name}`, message: NOT_MARKED[name] }))

/** The year in the core's words; none where none is asked about. Paths are those of the request. */
function yearIn({ year, balls, arrangement }: DesignSearchRequest): Result<Year | undefined, readonly Fault[]> {
  if (year === undefined) return ok(undefined)
  const areSomeWooden = balls.some(({ material = BALL_MATERIAL }) => material === 'wood')
  const read = toYear(year, present({ arrangement, balls: { material: areSomeWooden ? 'wood' : 'glass' } }))
  return read.ok ? read : fail(read.error.map(({ path, message }) => ({ path: `/year${path}`, message })))
}

export const toSearchFault = (refusal: SearchRefusal, request: DesignSearchRequest): Fault => ({
  path: refusal.path,
  message: explainRefusal(refusal, request.year?.climate.temperatureScale ?? 'celsius', TERMS[nameOf(request)]),
})

function toInput(request: DesignSearchRequest): DesignSearchInput {
  const { units, arrangement, balls, load, onlyOnRule } = request
  return present<DesignSearchInput>({
    ...(fromRequest(rowsOf(arrangement), request, units) as unknown as Omit<DesignSearchInput, 'balls'>),
    ...Object.fromEntries(DEPTH_LISTS.flatMap((list) => (request[list] === undefined ? [] : [[list, request[list]]]))),
    units,
    arrangement,
    balls: balls.map((stock) => fromRequest(STOCK_FIELDS, stock, units)),
    onlyOnRule,
    load: load && toLoad(request, load),
  })
}

type Load = NonNullable<DesignSearchRequest['load']>
const forceUnitsOf = ({ units, load }: DesignSearchRequest) => load?.forceUnits ?? usualForceUnits(units)

function toLoad(request: DesignSearchRequest, load: Load): NonNullable<DesignSearchInput['load']> {
  const newtons = (force: number | undefined) =>
    force === undefined ? undefined : toNewtons(force, forceUnitsOf(request))
  return present<NonNullable<DesignSearchInput['load']>>({
    ...carryingWoods(request.year?.woods),
    ...fromRequest(SEARCHED[request.arrangement].load, load, request.units),
    radialLoad: newtons(load.radialLoad),
    axialLoad: newtons(load.axialLoad),
  })
}

/** Limits that are the wrong way round. */
function reversed({ outsideDiameter, bore, counts, units }: DesignSearchInput): readonly Fault[] {
  const lengths = [
    ['/outsideDiameter/min', outsideDiameter.min ?? mm(0), outsideDiameter.max],
    ['/bore/min', bore.min, bore.max],
  ] as const
  const { min = 0, max = Number.POSITIVE_INFINITY } = counts ?? {}
  return [
    ...lengths
      .filter(([, smallest, largest]) => smallest > largest)
      .map(([path, smallest, largest]) => ({ path, message: lengthsReversed(smallest, largest, units) })),
    ...(min <= max ? [] : [{ path: '/counts/min', message: countsReversed(min, max) }]),
  ]
}

/** A search in the caller's units and in words. */
export function toDesignSearchResponse(found: DesignSearch, request: DesignSearchRequest): DesignSearchResponse {
  const { search, ranked, dropped } = found
  const { arrangement } = search
  const { year } = search.input
  const terms = TERMS[arrangement]
  const isOfGlass = search.input.balls.some(({ material }) => material === 'glass')
  const input = toEcho(found, request)
  return answer(
    {
      arrangement,
      units: request.units,
      input,
      assumed: [...assumptionsIn(request, input, defaultsFor(request)), ...rulesIn(input)],
      summary: searchSummary(found),
    },
    {
      ranked: ranked.map((each, place) => toRanked(each, search.input.offset + place + 1, found)),
      more: found.more,
      candidates: found.candidates,
      dropped: DROP_REASONS.filter((reason) => dropped[reason] > 0).map((reason) => ({
        reason,
        count: dropped[reason],
        message: droppedFor(reason, terms),
      })),
    },
    {
      warnings: year === undefined ? [] : woodNotes(year.woods, (path) => `/year${path}`),
      cautions: cautionCodes(isOfGlass ? 'glass' : 'wood', { arrangement }).map((code) => caution(code, terms)),
      sources: sourcesIn(found),
    },
  )
}

function sourcesIn({ search: { input } }: DesignSearch) {
  const { load, year, balls } = input
  const dented = {
    members: traitsOf(input).members,
    materials: balls.map(({ material = BALL_MATERIAL }) => material),
    onBottom: true,
  }
  const used: readonly SourceId[] = [
    ...sourcesOf(input),
    ...(load === undefined ? [] : dentSources({ ...dented, woods: [resolveLoadOptions(load, false).wood] })),
    ...(year === undefined ? [] : balls.flatMap(({ material }) => seasonSources(year.woods, material))),
  ]
  return [...new Set(used)].map(toSource)
}

/** The request with every default that is one value for all designs. Of the others the rule is named. */
function toEcho({ search: { input } }: DesignSearch, request: DesignSearchRequest): DesignSearchRequest {
  const { units, arrangement, year } = request
  return present<DesignSearchRequest>({
    ...{ units, arrangement },
    balls: input.balls.map((stock) => toRequest(STOCK_FIELDS, { ...stock }, units)),
    ...Object.fromEntries(DEPTH_LISTS.flatMap((list) => (request[list] === undefined ? [] : [[list, request[list]]]))),
    ...(toRequest(rowsOf(arrangement), { ...input }, units) as unknown as Omit<DesignSearchRequest, 'balls'>),
    onlyOnRule: input.onlyOnRule,
    load: request.load && toEchoedLoad(request, request.load),
    year: year && { woods: wholeWoods(year.woods), climate: wholeClimate(year.climate) },
  })
}

function toEchoedLoad(request: DesignSearchRequest, load: Load): Load {
  const inCore = toLoad(request, load)
  const { wood, dentFraction } = resolveLoad({ ...inCore, radialLoad: 0 }, false)
  const offset = 'offset' in loadRows(request.arrangement) ? { offset: inCore.offset ?? mm(0) } : {}
  const whole = { wood, dentFraction, ...offset }
  return present<Load>({
    ...toRequest(SEARCHED[request.arrangement].load, { ...whole }, request.units),
    radialLoad: load.radialLoad,
    axialLoad: load.axialLoad,
    forceUnits: forceUnitsOf(request),
  })
}

const STOCK_DEFAULTS = defaultsOf(STOCK_FIELDS, '/balls/*')

const defaultsFor = (request: DesignSearchRequest): Defaults => ({
  ...defaultsOf(rowsOf(request.arrangement)),
  ...STOCK_DEFAULTS,
  '/onlyOnRule': ON_RULE.byDefault,
  ...yearDefaults('/year'),
  ...defaultsOf(loadRows(request.arrangement), '/load'),
  ...plannedWoods(request.year?.woods, '/load'),
})

/** The rules by which each design has a value of its own, and the limits that there are not. */
function rulesIn(input: DesignSearchRequest): Assumption[] {
  const { arrangement } = input
  const rules: (readonly [string, Default | undefined])[] = [
    ...leavesOf(rowsOf(arrangement)).map(({ path, field }) => [path, field.byDefault] as const),
    ...DEPTH_LISTS.map((list) => [`/${list}`, SEARCHED[arrangement].depths[list]?.byDefault] as const),
    ...input.balls.flatMap((_, place) =>
      leavesOf(STOCK_FIELDS, ['balls', String(place)]).map(({ path, field }) => [path, field.byDefault] as const),
    ),
  ]
  // A rule in millimetres has no denominator, and a mark that no design has no weight.
  return rules.flatMap(([path, rule]) =>
    rule === undefined ||
    path === '/shopDenominator' ||
    path.startsWith('/weights/') ||
    valueAt(input, path.slice(1).split('/')) !== undefined
      ? []
      : [ruleAssumed(path, rule)],
  )
}

function toRanked(ranked: Ranked, rank: number, found: DesignSearch): DesignSearchResponse['ranked'][number] {
  const { bearing, design, marks, findings, sizes, gapAtShop } = ranked
  const { search } = found
  const { units } = search.input
  return shownBy(
    RankedDesign,
    {
      rank,
      score: ranked.score,
      criteria: search.weights.map(([name, weight]) => ({
        name,
        mark: showNumber(marks[name] ?? 0),
        weight: showNumber(weight),
        message: explainCriterion(name, ranked, found),
      })),
      design: toDesignRequest(design),
      ...sizes,
      pitchDiameter: mm(2 * bearing.pitchRadius),
      shop: shopOf(ranked),
      ballGap: 'ballGap' in bearing ? bearing.ballGap : undefined,
      gapAtShop,
      nested: sizes.landGap === undefined ? undefined : ranked.isNested,
      board: search.boardWidths.length === 0 ? undefined : ranked.board,
      materialUsed: ranked.materialUsed,
      warnings: findings.map(({ severity, path, facts }) =>
        toWarning({ severity, path, facts }, units, TERMS[search.arrangement]),
      ),
    },
    units,
  )
}
