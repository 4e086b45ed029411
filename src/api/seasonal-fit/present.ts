import type { Static } from 'typebox'
import { nameOf } from '#shared/bearing/arrangements.ts'
import type { Ellipse } from '#shared/geometry/ellipse.ts'
import { ROOM_ROWS } from '#shared/movement/arrangements/parts.ts'
import { outOfRound, stops, type Trouble } from '#shared/movement/fit.ts'
import type { Raceway } from '#shared/movement/moving-wood.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { GOOD_ENOUGH } from '#shared/questions/season/advice.ts'
import type { Chances } from '#shared/questions/season/chances.ts'
import type { SeasonalFitInput } from '#shared/questions/season/input.ts'
import type { RunningBand as CoreBand } from '#shared/questions/season/running-band.ts'
import { seasonSources } from '#shared/questions/season/season-sources.ts'
import type { FitAtState, SeasonalFit } from '#shared/questions/season/seasonal-fit.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { inScale, type Scale } from '#shared/units/temperature.ts'
import { answer } from '#src/api/answer.ts'
import { assumptionsIn } from '#src/api/assumption.ts'
import { cautionsOf } from '#src/api/caution.ts'
import { fromRingWood, fromToday, inRequest, woodNotes } from '#src/api/climate.ts'
import { designDefaults } from '#src/api/design-defaults.ts'
import { toDesignInput, toDesignRequest } from '#src/api/design-input.ts'
import { show } from '#src/api/length.ts'
import { yearIn } from '#src/api/making-input.ts'
import { type ShownNumber, showNumber } from '#src/api/number.ts'
import { present } from '#src/api/optional.ts'
import { toSource } from '#src/api/source.ts'
import type { Warning } from '#src/api/warning.ts'
import type { Fault } from '#src/http/problem.ts'
import { CLIMATE_MISSING, WOODS_MISSING } from '#src/words/season-refusal.ts'
import {
  describeAdvice,
  describeBand,
  describeSegments,
  describeState,
  jointsOpen,
  notesOf,
  warningOf,
} from '#src/words/seasonal-fit.ts'
import { type Terms, termsOf } from '#src/words/terms.ts'
import type { RunningBand, SeasonalFitRequest, SeasonalFitResponse } from './schema.ts'

/** The caller's input in the core's words, or everything that is wrong with it beside its schema. */
export function toSeasonalFitInput(request: SeasonalFitRequest): Result<SeasonalFitInput, readonly Fault[]> {
  const design = toDesignInput(request.design, '/design')
  const year = yearIn(design.making, design)
  if (year !== undefined) return ok({ design, ...year })
  const { woods, climate } = design.making ?? {}
  return fail([
    ...(woods === undefined ? [{ path: '/design/making/woods', message: WOODS_MISSING }] : []),
    ...(climate === undefined ? [{ path: '/design/making/climate', message: CLIMATE_MISSING }] : []),
  ])
}

export const scaleOf = ({ design }: SeasonalFitRequest): Scale => design.making?.climate?.temperatureScale ?? 'celsius'

/** In whose units and words a state is answered. */
interface Spoken {
  readonly units: Units
  readonly scale: Scale
  readonly terms: Terms
}

/** A year of the bearing, in the caller's units and in words. */
export function toSeasonalFitResponse(season: SeasonalFit, request: SeasonalFitRequest): SeasonalFitResponse {
  const { bearing, today, states, band, chances, advice, segments } = season
  const { resolved } = bearing
  const { units, balls } = resolved.input
  const arrangement = nameOf(resolved.input)
  const spoken: Spoken = { units, scale: scaleOf(request), terms: termsOf(resolved.input) }
  const input: SeasonalFitRequest = { design: toDesignRequest(resolved.input) }
  const defaults = designDefaults(resolved.input)
  const [now, ...later] = [today, ...states].map((state, i) => toState(state, itemAt(chances.runs, i), spoken))
  const used = ['derived' as const, ...seasonSources(season.input.woods, balls.material), 'trade' as const]
  // A state has the fields of its own arrangement, as that of the answer says: see `arrangements/`.
  return answer(
    {
      arrangement,
      units,
      input,
      assumed: assumptionsIn(request, input, defaults),
      summary: describeAdvice(season, spoken.terms),
    },
    {
      runsAllYear: chances.runsAllYear >= GOOD_ENOUGH,
      probability: toChances(chances),
      today: now,
      states: later,
      ...(band === undefined ? {} : { band: toBand(band, spoken) }),
      buildIn: {
        action: advice.kind,
        changes: advice.changes.map((change) => {
          const path = inRequest(change.path)
          if (change.kind === 'length') return { path, value: show(change.to, units) }
          if (change.kind === 'today') return { path, value: fromToday(change.to, spoken.scale) }
          return { path, value: fromRingWood(change.to) }
        }),
        probability: toChances(advice.chances),
        message: describeAdvice(season, spoken.terms),
      },
      ...(segments === undefined
        ? {}
        : {
            segments: present({
              leastCount: segments.leastCount,
              acrossGrainStrength: showNumber(Math.min(...segments.worst.map(({ lobes }) => lobes.strength))),
              message: describeSegments(segments),
            }),
          }),
      notes: notesOf(season, spoken.scale, spoken.terms),
    },
    { warnings: warningsOf(season, spoken.terms), cautions: cautionsOf(resolved), sources: used.map(toSource) },
  ) as SeasonalFitResponse
}

const toChances = ({ goesTogether, runsAllYear, knocks }: Chances) => ({
  goesTogether: showNumber(goesTogether),
  runsAllYear: showNumber(runsAllYear),
  knocks: showNumber(knocks),
})

const toBand = (band: CoreBand, { scale, terms }: Spoken): Static<typeof RunningBand> => ({
  temperature: showNumber(inScale(band.temperature, scale)),
  min: toBandEnd(band.low),
  max: toBandEnd(band.high),
  message: describeBand(band, scale, terms),
})

const toBandEnd = ({ relativeHumidity, moistureContent, stoppedBy }: CoreBand['low']) => ({
  relativeHumidity: showNumber(relativeHumidity),
  moistureContent: showNumber(moistureContent),
  stoppedBy: [...stoppedBy],
})

function toState(at: FitAtState, runs: number, { units, scale, terms }: Spoken) {
  const { state, snapshot, fit, troubles } = at
  const { raceways, ball } = snapshot
  const size = (length: Mm) => show(length, units)
  const rooms = ROOM_ROWS.flatMap(([name]) => {
    const left = fit.rooms[name]
    return left === undefined ? [] : [[name, size(left)]]
  })
  return present({
    name: state.name,
    temperature: showNumber(inScale(state.temperature, scale)),
    relativeHumidity: state.relativeHumidity === undefined ? undefined : showNumber(state.relativeHumidity),
    moistureContent: showNumber(state.moistureContent),
    ballDiameter: { min: size(ball.least), mean: size(ball.mean), max: size(ball.most) },
    ...Object.fromEntries(Object.entries(raceways).map(([part, raceway]) => [part, toShape(raceway, units)])),
    ballGap: fit.ballGap && {
      min: size(fit.ballGap.least),
      max: size(fit.ballGap.most),
      withLargestBalls: size(fit.ballGapOfLargest ?? fit.ballGap.least),
    },
    radialInternalClearance: fit.play && { min: size(fit.play.worst), max: size(fit.play.best) },
    worstRotation: fit.play && worstRotation(raceways.outerRing, raceways.innerRing),
    ...Object.fromEntries(rooms),
    runs: showNumber(runs),
    troubles: [...troubles],
    message: describeState(at, runs, units, terms),
  })
}

const toShape = (raceway: Raceway, units: Units) => ({
  alongGrain: show(mm(2 * raceway.along), units),
  acrossGrain: show(mm(2 * raceway.across), units),
  outOfRound: show(mm(2 * outOfRound(raceway)), units),
  ...(raceway.segments && { acrossGrainStress: showNumber(raceway.segments.pull) }),
})

/** The rotation at which the long axis of the inner ring meets the short one of the outer. */
function worstRotation(outer: Ellipse | undefined, inner: Ellipse | undefined): ShownNumber | undefined {
  if (outer === undefined || inner === undefined || outOfRound(outer) === 0 || outOfRound(inner) === 0) return undefined
  return showNumber(outer.across > outer.along === inner.across > inner.along ? 90 : 0)
}

/** The field of the design that each trouble is about. */
const PATHS: readonly (readonly [Trouble, path: string])[] = [
  ['balls-bind', '/ballGap'],
  ['rings-bind', '/radialInternalClearance'],
  ['balls-knock', '/maxBallGap'],
  ...ROOM_ROWS.map(([, { trouble, path }]) => [trouble, path] as const),
]

function warningsOf(
  { input: { woods }, today, states, advice, openJoints }: SeasonalFit,
  terms: Terms,
): Static<typeof Warning>[] {
  const year = [today, ...states]
  const found = PATHS.filter(([trouble]) => year.some(({ troubles }) => troubles.includes(trouble)))
  return [
    ...found.map(([trouble, path]) => ({
      code: trouble,
      severity: stops(trouble) ? ('fault' as const) : ('risk' as const),
      message: warningOf(trouble, year, advice.changes.length > 0, terms),
      path: `/design${path}`,
    })),
    ...openJoints.map((worst) => ({
      code: 'joints-open',
      severity: 'risk' as const,
      message: jointsOpen(worst),
      path: inRequest(`/woods/${worst.part}`),
    })),
    ...woodNotes(woods, inRequest),
  ]
}
