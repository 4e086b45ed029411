import type { Static } from 'typebox'
import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import { type Ellipse, longer, shorter } from '#shared/geometry/ellipse.ts'
import type { Trouble } from '#shared/questions/season/fit.ts'
import type { SeasonalFitInput } from '#shared/questions/season/input.ts'
import type { RunningBand as CoreBand } from '#shared/questions/season/running-band.ts'
import { guessedWoods, seasonSources } from '#shared/questions/season/season-sources.ts'
import type { FitAtState, SeasonalFit } from '#shared/questions/season/seasonal-fit.ts'
import { ok, type Result } from '#shared/result.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { inScale, type Scale } from '#shared/units/temperature.ts'
import { answer } from '#src/api/answer.ts'
import { assumptionsIn, designDefaults } from '#src/api/assumption.ts'
import { cautionsOf } from '#src/api/caution.ts'
import { echoedClimate, echoedWoods, toYear, yearDefaults } from '#src/api/climate.ts'
import { toDesignInput, toDesignRequest } from '#src/api/design-input.ts'
import { show } from '#src/api/length.ts'
import { type ShownNumber, showNumber } from '#src/api/number.ts'
import { present } from '#src/api/optional.ts'
import { toSource } from '#src/api/source.ts'
import type { Warning } from '#src/api/warning.ts'
import type { Fault } from '#src/http/problem.ts'
import { memorySentence } from '#src/words/season-refusal.ts'
import { describeBand, describeBuildIn, describeState, notesOf, warningOf } from '#src/words/seasonal-fit.ts'
import { seasonSummary } from '#src/words/summary.ts'
import type { GrooveShape, RunningBand, SeasonalFitRequest, SeasonalFitResponse, SeasonalState } from './schema.ts'

/** The caller's input in the core's words, or everything that is wrong with it beside its schema. */
export function toSeasonalFitInput(request: SeasonalFitRequest): Result<SeasonalFitInput, readonly Fault[]> {
  const design = toDesignInput(request.design)
  const year = toYear(request, (design.balls.material ?? BALL_MATERIAL) === 'wood')
  return year.ok ? ok({ design, ...year.value }) : year
}

export const scaleOf = ({ climate }: SeasonalFitRequest): Scale => climate.temperatureScale ?? 'celsius'

/** What the year does, in the caller's units and in words. */
export function toSeasonalFitResponse(season: SeasonalFit, request: SeasonalFitRequest): SeasonalFitResponse {
  const { bearing, today, states, band } = season
  const { resolved } = bearing
  const { units, balls } = resolved.input
  const scale = scaleOf(request)
  const year = [today, ...states]
  const input: SeasonalFitRequest = {
    design: toDesignRequest<'radial'>(resolved.input),
    woods: echoedWoods(request.woods),
    climate: echoedClimate(request.climate),
  }
  const defaults = { ...designDefaults('radial'), ...yearDefaults() }
  const runsAllYear = year.every(({ troubles }) => troubles.every((trouble) => trouble === 'balls-knock'))
  const used = ['derived' as const, ...seasonSources(season.input.woods, balls.material), 'trade' as const]
  return answer(
    {
      arrangement: 'radial',
      units,
      input,
      assumed: assumptionsIn(request, input, defaults),
      summary: seasonSummary(season, runsAllYear),
    },
    {
      runsAllYear,
      today: toState(today, units, scale),
      states: states.map((state) => toState(state, units, scale)),
      ...(band === undefined ? {} : { band: toBand(band, scale) }),
      buildIn: toBuildIn(season, units),
      notes: notesOf(season),
    },
    { warnings: warningsOf(season, year), cautions: cautionsOf(resolved), sources: used.map(toSource) },
  )
}

const toBand = (band: CoreBand, scale: Scale): Static<typeof RunningBand> => ({
  temperature: showNumber(inScale(band.temperature, scale)),
  min: toBandEnd(band.low),
  max: toBandEnd(band.high),
  message: describeBand(band, scale),
})

const toBandEnd = ({ relativeHumidity, moistureContent, stoppedBy }: CoreBand['low']) => ({
  relativeHumidity: showNumber(relativeHumidity),
  moistureContent: showNumber(moistureContent),
  stoppedBy: [...stoppedBy],
})

function toState(at: FitAtState, units: Units, scale: Scale): Static<typeof SeasonalState> {
  const { state, shape, fit, troubles } = at
  const size = (length: Mm) => show(length, units)
  return present<Static<typeof SeasonalState>>({
    name: state.name,
    temperature: showNumber(inScale(state.temperature, scale)),
    relativeHumidity: state.relativeHumidity === undefined ? undefined : showNumber(state.relativeHumidity),
    moistureContent: showNumber(state.moistureContent),
    outerRing: toGrooveShape(shape.outerBottom, units),
    innerRing: toGrooveShape(shape.innerBottom, units),
    ballDiameter: { min: size(shape.ball.least), mean: size(shape.ball.mean), max: size(shape.ball.most) },
    ballGap: {
      min: size(fit.ballGap.least),
      max: size(fit.ballGap.most),
      withLargestBalls: size(fit.ballGapOfLargest),
    },
    radialInternalClearance: { min: size(fit.play.worst), max: size(fit.play.best) },
    worstRotation: worstRotation(shape.outerBottom, shape.innerBottom),
    leastLandGap: size(fit.leastLandGap),
    troubles: [...troubles],
    message: describeState(at, units),
  })
}

function toGrooveShape(bottom: Ellipse, units: Units): Static<typeof GrooveShape> {
  return {
    alongGrain: show(mm(2 * bottom.along), units),
    acrossGrain: show(mm(2 * bottom.across), units),
    outOfRound: show(mm(2 * (longer(bottom) - shorter(bottom))), units),
  }
}

/** Where the long axis of the inner ring meets the short one of the outer. */
function worstRotation(outer: Ellipse, inner: Ellipse): ShownNumber | undefined {
  const [wide, within] = [outer.across - outer.along, inner.across - inner.along]
  if (wide === 0 || within === 0) return undefined
  return showNumber(wide > 0 === within > 0 ? 90 : 0)
}

function toBuildIn(season: SeasonalFit, units: Units): SeasonalFitResponse['buildIn'] {
  const { buildIn } = season
  const size = (length: Mm | undefined) => (length === undefined ? undefined : show(length, units))
  return present<SeasonalFitResponse['buildIn']>({
    ballGap: size(buildIn.ballGap),
    ballGapRange: present<SeasonalFitResponse['buildIn']['ballGapRange']>({
      min: size(buildIn.leastBallGap),
      max: size(buildIn.mostBallGap),
    }),
    radialInternalClearance: size(buildIn.play),
    radialInternalClearanceRange: present<SeasonalFitResponse['buildIn']['radialInternalClearanceRange']>({
      min: size(buildIn.leastPlay),
    }),
    message: describeBuildIn(buildIn, season),
  })
}

const TROUBLES: readonly (readonly [Trouble, Static<typeof Warning>['severity'], path: string])[] = [
  ['balls-bind', 'fault', '/design/ballGap'],
  ['rings-bind', 'fault', '/design/radialInternalClearance'],
  ['lands-rub', 'fault', '/design/outerRing'],
  ['balls-knock', 'risk', '/design/maxBallGap'],
]

function warningsOf({ input: { woods } }: SeasonalFit, year: readonly FitAtState[]): Static<typeof Warning>[] {
  const found = TROUBLES.filter(([trouble]) => year.some(({ troubles }) => troubles.includes(trouble)))
  return [
    ...found.map(([trouble, severity, path]) => ({ code: trouble, severity, message: warningOf(trouble, year), path })),
    ...guessedWoods(woods).map(([species, path]) => ({
      code: 'movement-from-memory',
      severity: 'note' as const,
      message: memorySentence(species),
      path,
    })),
  ]
}
