import type { Static } from 'typebox'
import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import type { SourceId } from '#shared/data/sources.ts'
import type { Year } from '#shared/questions/season/input.ts'
import { guessedWoods, seasonSources } from '#shared/questions/season/season-sources.ts'
import type { AimPoint as CoreAimPoint, Outcomes } from '#shared/questions/tolerance/aim.ts'
import type { CheckRefusal } from '#shared/questions/tolerance/check.ts'
import { isOfPlates } from '#shared/questions/tolerance/checked.ts'
import { LIMIT_FIELDS, MEAN_DEFAULTS, METHOD_FIELDS, TRIALS_DEFAULT } from '#shared/questions/tolerance/fields.ts'
import type { FigureCheck } from '#shared/questions/tolerance/figure-check.ts'
import type { CauseName, ToleranceCheckInput } from '#shared/questions/tolerance/input.ts'
import type { ToleranceCheck } from '#shared/questions/tolerance/tolerance-check.ts'
import type { FigureName } from '#shared/questions/tolerance/ways.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { inUnits, mm, type Units } from '#shared/units/length.ts'
import { answer, tagOf } from '#src/api/answer.ts'
import { assumptionsIn, type Defaults, defaultsOf, designDefaults } from '#src/api/assumption.ts'
import { cautionsOf } from '#src/api/caution.ts'
import { echoedClimate, echoedWoods, toYear, yearDefaults } from '#src/api/climate.ts'
import { toDesignInput, toDesignRequest } from '#src/api/design-input.ts'
import { fromRequest, toRequest } from '#src/api/fields.ts'
import { show } from '#src/api/length.ts'
import { type ShownNumber, showNumber } from '#src/api/number.ts'
import { present } from '#src/api/optional.ts'
import { toSource } from '#src/api/source.ts'
import type { Warning } from '#src/api/warning.ts'
import type { Fault } from '#src/http/problem.ts'
import { refusalSentence } from '#src/words/refusal.ts'
import { memorySentence, seasonRefusalSentence } from '#src/words/season-refusal.ts'
import { type Terms, termsOf } from '#src/words/terms.ts'
import {
  advice,
  bindsOften,
  CLIMATE_MISSING,
  explainAim,
  explainEffect,
  explainMethod,
  explainToleranceRefusal,
  notes,
  WOODS_MISSING,
} from '#src/words/tolerance-check.ts'
import { fromContributors, toContributors } from './contributors.ts'
import {
  type AimPoint,
  type CheckedFigure,
  type FitChances,
  type PlateAimPoint,
  type RollerAimPoint,
  type ThrustToleranceCheckResponse,
  type ToleranceCheckRequest,
  type ToleranceCheckResponse,
  WHEN_NEEDED,
} from './schema.ts'

const SOURCES: readonly SourceId[] = ['jcgm-100', 'jcgm-101', 'xoshiro', 'derived']

/** The caller's input in the core's words, or what cannot be said together. */
export function toToleranceCheckInput(request: ToleranceCheckRequest): Result<ToleranceCheckInput, readonly Fault[]> {
  const { units } = request.design
  const design = toDesignInput(request.design)
  const contributors = toContributors(request)
  const year = yearIn(request, (design.balls.material ?? BALL_MATERIAL) === 'wood')
  if (!contributors.ok || !year.ok) {
    return fail([...(contributors.ok ? [] : contributors.error), ...(year.ok ? [] : year.error)])
  }
  return ok(
    present<ToleranceCheckInput>({
      design,
      contributors: contributors.value,
      year: year.value,
      limits: request.limits && fromRequest(LIMIT_FIELDS, request.limits, units),
      trials: request.trials === WHEN_NEEDED ? undefined : request.trials,
      significantDigits: request.significantDigits,
      seed: request.seed,
      overshootRisk: request.overshootRisk,
    }),
  )
}

/** The year, where the weather is asked about: woods and climate belong together. */
function yearIn(
  { woods, climate }: ToleranceCheckRequest,
  areBallsWooden: boolean,
): Result<Year | undefined, readonly Fault[]> {
  if (woods === undefined && climate === undefined) return ok(undefined)
  if (woods === undefined) {
    return fail([{ path: '/woods', message: WOODS_MISSING }])
  }
  if (climate === undefined) {
    return fail([{ path: '/climate', message: CLIMATE_MISSING }])
  }
  return toYear({ woods, climate }, areBallsWooden)
}

/** Why a request for a check is refused, in a sentence. */
export const checkRefusalWords =
  ({ climate }: ToleranceCheckRequest) =>
  (refusal: CheckRefusal, units: Units, terms: Terms): string => {
    switch (refusal.code) {
      case 'limits-reversed':
      case 'contributor-too-wide':
        return explainToleranceRefusal(refusal, units, terms)
      case 'range-reversed':
      case 'temperature-outside':
      case 'above-fibre-saturation':
      case 'movement-unknown':
      case 'balls-without-wood':
        return seasonRefusalSentence(refusal, climate?.temperatureScale ?? 'celsius', terms)
      default:
        return refusalSentence(refusal, units, terms)
    }
  }

/** A check of any arrangement, as it is answered. */
export function toToleranceAnswer(checked: ToleranceCheck, request: ToleranceCheckRequest): ToleranceCheckResponse {
  if (isOfPlates(checked.check)) return toThrustResponse(checked, request)
  const arrangement = tagOf(checked.check.input.design, 'radial', 'roller')
  const head = toHead(checked, request)
  const rings = toRings(checked)
  return arrangement === 'roller'
    ? answer(
        { arrangement, ...head },
        { ...rings, aim: toAim(checked, toRollerAimPoint), notes: notes(checked) },
        toFoot(checked),
      )
    : answer(
        { arrangement, ...head },
        { ...rings, aim: toAim(checked, toAimPoint), notes: notes(checked) },
        toFoot(checked),
      )
}

const toRings = (checked: ToleranceCheck) => ({
  binds: showNumber(checked.binds?.value ?? Number.NaN),
  bindsStandardError: showNumber(checked.binds?.standardError ?? Number.NaN),
  method: toMethod(checked, ({ ballGap, play }) => ({ ballGap, radialInternalClearance: play })),
  ...toMade(checked),
  radialInternalClearance: toFigure(checked.figures.play, checked.check.input.design.units),
  ...toJoint(checked),
  sensitivities: toEffects(checked).map(({ contributor, ballGap, play: radialInternalClearance, message }) => ({
    contributor,
    ballGap,
    radialInternalClearance,
    message,
  })),
})

const toThrustResponse = (checked: ToleranceCheck, request: ToleranceCheckRequest): ThrustToleranceCheckResponse =>
  answer(
    { arrangement: 'thrust', ...toHead(checked, request) },
    {
      method: toMethod(checked, ({ ballGap, play }) => ({ ballGap, plateGap: play })),
      ...toMade(checked),
      plateGap: toFigure(checked.figures.play, checked.check.input.design.units),
      ...toJoint(checked),
      sensitivities: toEffects(checked).map(({ contributor, ballGap, play: plateGap, message }) => ({
        contributor,
        ballGap,
        plateGap,
        message,
      })),
      aim: toAim(checked, toPlateAimPoint),
      notes: notes(checked),
    },
    toFoot(checked),
  )

function toHead(checked: ToleranceCheck, request: ToleranceCheckRequest) {
  const input = toEcho(checked, request)
  const defaults = { ...designDefaults(input.design.arrangement), ...yearDefaults(), ...CHECK_DEFAULTS }
  return {
    units: input.design.units,
    input,
    assumed: assumptionsIn(request, input, defaults),
    summary: advice(checked),
  }
}

const CHECK_DEFAULTS: Defaults = {
  ...defaultsOf(LIMIT_FIELDS, '/limits'),
  ...defaultsOf(METHOD_FIELDS),
  '/trials': TRIALS_DEFAULT,
  ...Object.fromEntries(Object.entries(MEAN_DEFAULTS).map(([name, row]) => [`/contributors/${name}/mean`, row])),
}

/** @param named how rings or plates call what is left of either figure */
function toMethod<Left>(
  checked: ToleranceCheck,
  named: (left: Readonly<Record<FigureName, ShownNumber>>) => Left,
): { kind: ToleranceCheck['method']['kind']; residualShare?: Left; message: string } {
  const { method } = checked
  return {
    kind: method.kind,
    ...(method.kind === 'trials'
      ? {}
      : { residualShare: named({ ballGap: showNumber(method.left.ballGap), play: showNumber(method.left.play) }) }),
    message: explainMethod(checked),
  }
}

function toAim<Point>(checked: ToleranceCheck, toPoint: (point: CoreAimPoint, units: Units) => Point) {
  const { aim, check } = checked
  const { units } = check.input.design
  const { limitedRisk } = aim
  return {
    atNominal: toPoint(aim.atNominal, units),
    bestYield: toPoint(aim.bestYield, units),
    ...(limitedRisk === undefined ? {} : { limitedRisk: toPoint(limitedRisk, units) }),
    message: explainAim(checked),
  }
}

const toMade = ({ trials, isConverged, figures, check }: ToleranceCheck) => ({
  trials,
  converged: isConverged,
  ballGap: toFigure(figures.ballGap, check.input.design.units),
})

const toJoint = ({ jointFits }: ToleranceCheck) => ({
  jointFits: showNumber(jointFits.value),
  jointFitsStandardError: showNumber(jointFits.standardError),
})

/** One ring in so many that binds is worth a warning: common practice, no source. */
const OFTEN = 0.1

function warningsOf({ check, binds }: ToleranceCheck): Static<typeof Warning>[] {
  const { design, year } = check.input
  return [
    ...(binds === undefined || binds.value < OFTEN
      ? []
      : [
          {
            code: 'inner-ring-binds',
            severity: 'risk' as const,
            message: bindsOften(binds, termsOf(design)),
            path: '/design/radialInternalClearance',
          },
        ]),
    ...(year === undefined ? [] : guessedWoods(year.woods)).map(([species, path]) => ({
      code: 'movement-from-memory',
      severity: 'note' as const,
      message: memorySentence(species),
      path,
    })),
  ]
}

const toFoot = (checked: ToleranceCheck) => ({
  warnings: warningsOf(checked),
  cautions: cautionsOf(checked.check.bearing.resolved),
  sources: [...SOURCES, ...weatherSources(checked)].map(toSource),
})

/** Everything that was asked, defaults and all: sent again, it gives the same answer. */
function toEcho({ check }: ToleranceCheck, { woods, climate }: ToleranceCheckRequest): ToleranceCheckRequest {
  const { design, contributors, limits, trials = WHEN_NEEDED, significantDigits, seed, overshootRisk } = check.input
  const { units } = design
  return {
    design: toDesignRequest(design),
    contributors: fromContributors(contributors, units),
    ...(woods === undefined ? {} : { woods: echoedWoods(woods) }),
    ...(climate === undefined ? {} : { climate: echoedClimate(climate) }),
    limits: toRequest(LIMIT_FIELDS, { ...limits }, units),
    trials,
    significantDigits,
    seed,
    overshootRisk,
  }
}

function toFigure(figure: FigureCheck, units: Units): Static<typeof CheckedFigure> {
  const size = (length: number) => show(mm(length), units)
  const { worstCase, rss, trials, percentiles, histogram } = figure
  return {
    nominal: size(figure.nominal),
    worstCase: { min: size(worstCase.min), max: size(worstCase.max) },
    rss: { mean: size(rss.mean), standardDeviation: size(rss.standardDeviation) },
    monteCarlo: {
      mean: size(trials.mean),
      standardDeviation: size(trials.standardDeviation),
      percentiles: percentiles.map(({ percent, value, standardError }) => ({
        percent: showNumber(percent),
        value: size(value),
        standardError: size(standardError),
      })),
      shortest95: { min: size(trials.shortest.low), max: size(trials.shortest.high) },
      standardError: {
        mean: size(trials.standardError.mean),
        standardDeviation: size(trials.standardError.standardDeviation),
        shortest95: { min: size(trials.standardError.low), max: size(trials.standardError.high) },
      },
    },
    probability: toChances(figure.outcomes),
    histogram: { edges: histogram.edges.map(size), counts: [...histogram.counts] },
  }
}

const toChances = ({ tooTight, fits, tooLoose }: Outcomes): Static<typeof FitChances> => ({
  tooTight: showNumber(tooTight.value),
  fits: showNumber(fits.value),
  tooLoose: showNumber(tooLoose.value),
  standardError: {
    tooTight: showNumber(tooTight.standardError),
    fits: showNumber(fits.standardError),
    tooLoose: showNumber(tooLoose.standardError),
  },
})

function toEffects({ figures, check }: ToleranceCheck) {
  const { ballGap, play: plays } = figures
  const { units } = check.input.design
  return [...ballGap.rss.sensitivities]
    .toSorted(([, one], [, other]) => other.share - one.share)
    .flatMap(([contributor, gap]) => {
      const play = plays.rss.sensitivities.get(contributor)
      if (play === undefined) return []
      return [
        {
          contributor,
          ballGap: { slope: toSlope(contributor, gap.slope, units), shareOfVariance: showNumber(gap.share) },
          play: { slope: toSlope(contributor, play.slope, units), shareOfVariance: showNumber(play.share) },
          message: explainEffect(contributor, gap, play, { units, terms: termsOf(check.input.design) }),
        },
      ]
    })
}

/** A length per length is the same in all units; the weather's is a length per % of moisture. */
const toSlope = (cause: CauseName, slope: number, units: Units): ShownNumber =>
  showNumber(cause === 'climate' ? inUnits(mm(slope), units) : slope)

/** What the year rests on, where there is one. */
const weatherSources = ({ check: { input } }: ToleranceCheck): readonly SourceId[] =>
  input.year === undefined ? [] : seasonSources(input.year.woods, input.design.balls.material)

const toAimPoint = (point: CoreAimPoint, units: Units): Static<typeof AimPoint> => ({
  grooveDepth: show(point.grooveDepth, units),
  grooveBottomDiameter: show(point.grooveBottomDiameter, units),
  deeper: show(point.deeper, units),
  ballGap: show(point.ballGap, units),
  outcomes: toChances(point.outcomes),
})

const toRollerAimPoint = (point: CoreAimPoint, units: Units): Static<typeof RollerAimPoint> => ({
  trackDiameter: show(point.grooveBottomDiameter, units),
  wider: show(point.deeper, units),
  ballGap: show(point.ballGap, units),
  outcomes: toChances(point.outcomes),
})

const toPlateAimPoint = (point: CoreAimPoint, units: Units): Static<typeof PlateAimPoint> => ({
  grooveCircleDiameter: show(point.grooveBottomDiameter, units),
  furtherOut: show(point.deeper, units),
  ballGap: show(point.ballGap, units),
  outcomes: toChances(point.outcomes),
})
