import type { Static } from 'typebox'
import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import { type Ellipse, longer, shorter } from '#shared/geometry/ellipse.ts'
import type { Trouble } from '#shared/questions/season/fit.ts'
import type { SeasonalFitInput } from '#shared/questions/season/input.ts'
import { guessedWoods, seasonSources } from '#shared/questions/season/season-sources.ts'
import type { FitAtState, SeasonalFit } from '#shared/questions/season/seasonal-fit.ts'
import { ok, type Result } from '#shared/result.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { inScale, type Scale } from '#shared/units/temperature.ts'
import { cautionsOf } from '#src/api/caution.ts'
import { echoedClimate, echoedWoods, toYear } from '#src/api/climate.ts'
import { toDesignInput, toDesignRequest } from '#src/api/design-input.ts'
import { show } from '#src/api/length.ts'
import { present } from '#src/api/optional.ts'
import { toSource } from '#src/api/source.ts'
import type { Warning } from '#src/api/warning.ts'
import type { Fault } from '#src/http/problem.ts'
import { memorySentence } from '#src/words/season-refusal.ts'
import { describeBand, describeBuildIn, describeState, notesOf, warningOf } from '#src/words/seasonal-fit.ts'
import type { GrooveShape, SeasonalFitRequest, SeasonalFitResponse, SeasonalState } from './schema.ts'

/** The caller's input in the core's words, or everything that is wrong with it beside its schema. */
export function toSeasonalFitInput(request: SeasonalFitRequest): Result<SeasonalFitInput, readonly Fault[]> {
  const design = toDesignInput(request.design)
  const year = toYear(request, design.balls.material ?? BALL_MATERIAL)
  return year.ok ? ok({ design, ...year.value }) : year
}

export const scaleOf = ({ climate }: SeasonalFitRequest): Scale => climate.temperatureScale ?? 'celsius'

/** What the year does, in the caller's units and in words. */
export function toSeasonalFitResponse(season: SeasonalFit, request: SeasonalFitRequest): SeasonalFitResponse {
  const { bearing, today, states, band } = season
  const { settled } = bearing
  const { units, balls } = settled.input
  const scale = scaleOf(request)
  const year = [today, ...states]
  return present<SeasonalFitResponse>({
    arrangement: 'radial',
    units,
    input: {
      design: toDesignRequest<'radial'>(settled.input),
      woods: echoedWoods(request.woods),
      climate: echoedClimate(request.climate),
    },
    runsAllYear: year.every(({ troubles }) => troubles.every((trouble) => trouble === 'balls-knock')),
    today: toState(today, units, scale),
    states: states.map((state) => toState(state, units, scale)),
    band: band && {
      temperature: inScale(band.temperature, scale),
      low: { ...band.low, stoppedBy: [...band.low.stoppedBy] },
      high: { ...band.high, stoppedBy: [...band.high.stoppedBy] },
      message: describeBand(band, scale),
    },
    buildIn: toBuildIn(season, units),
    warnings: warningsOf(season, year),
    notes: notesOf(season),
    cautions: cautionsOf(settled),
    sources: ['derived' as const, ...seasonSources(season.input.woods, balls.material), 'trade' as const].map(toSource),
  })
}

function toState(at: FitAtState, units: Units, scale: Scale): Static<typeof SeasonalState> {
  const { state, shape, fit, troubles } = at
  const size = (length: Mm) => show(length, units)
  return present<Static<typeof SeasonalState>>({
    name: state.name,
    temperature: inScale(state.temperature, scale),
    relativeHumidity: state.relativeHumidity,
    moistureContent: state.moistureContent,
    outerRing: toGrooveShape(shape.outerBottom, units),
    innerRing: toGrooveShape(shape.innerBottom, units),
    ballDiameter: { least: size(shape.ball.least), mean: size(shape.ball.mean), most: size(shape.ball.most) },
    ballGap: {
      least: size(fit.ballGap.least),
      most: size(fit.ballGap.most),
      withLargestBalls: size(fit.ballGapOfLargest),
    },
    radialInternalClearance: { worst: size(fit.play.worst), best: size(fit.play.best) },
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
function worstRotation(outer: Ellipse, inner: Ellipse): number | undefined {
  const [wide, within] = [outer.across - outer.along, inner.across - inner.along]
  if (wide === 0 || within === 0) return undefined
  return wide > 0 === within > 0 ? 90 : 0
}

function toBuildIn(season: SeasonalFit, units: Units): SeasonalFitResponse['buildIn'] {
  const { buildIn } = season
  const size = (length: Mm | undefined) => (length === undefined ? undefined : show(length, units))
  return present<SeasonalFitResponse['buildIn']>({
    ballGap: size(buildIn.ballGap),
    leastBallGap: size(buildIn.leastBallGap),
    mostBallGap: size(buildIn.mostBallGap),
    radialInternalClearance: size(buildIn.play),
    leastRadialInternalClearance: size(buildIn.leastPlay),
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
