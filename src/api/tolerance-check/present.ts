import type { Static, TObject } from 'typebox'
import { nameOf } from '#shared/bearing/arrangements.ts'
import type { SourceId } from '#shared/data/sources.ts'
import { seasonSources } from '#shared/questions/season/season-sources.ts'
import type { Served } from '#shared/questions/tolerance/arrangements/models.ts'
import type { CheckRefusal } from '#shared/questions/tolerance/check.ts'
import {
  BALL_DEFAULTS,
  LIMIT_FIELDS,
  MEAN_DEFAULTS,
  METHOD_FIELDS,
  TRIALS_DEFAULT,
} from '#shared/questions/tolerance/fields.ts'
import type { ToleranceCheckInput } from '#shared/questions/tolerance/input.ts'
import type { ToleranceCheck } from '#shared/questions/tolerance/tolerance-check.ts'
import { ok, type Result } from '#shared/result.ts'
import type { Units } from '#shared/units/length.ts'
import { answer } from '#src/api/answer.ts'
import { assumptionsIn, type Defaults, defaultsOf } from '#src/api/assumption.ts'
import { cautionsOf } from '#src/api/caution.ts'
import { inRequest, woodNotes } from '#src/api/climate.ts'
import { designDefaults } from '#src/api/design-defaults.ts'
import { toDesignInput, toDesignRequest } from '#src/api/design-input.ts'
import { fromRequest, toRequest } from '#src/api/fields.ts'
import { yearIn } from '#src/api/making-input.ts'
import { present } from '#src/api/optional.ts'
import { shownBy } from '#src/api/schema.ts'
import { toSource } from '#src/api/source.ts'
import { ANSWERS, type ToleranceCheckResponse } from '#src/api/tolerance-check/arrangements/all.ts'
import type { Warning } from '#src/api/warning.ts'
import type { Fault } from '#src/http/problem.ts'
import { refusalSentence } from '#src/words/refusal.ts'
import { seasonRefusalSentence } from '#src/words/season-refusal.ts'
import type { Terms } from '#src/words/terms.ts'
import { advice, bindsOften, explainToleranceRefusal } from '#src/words/tolerance-check.ts'
import { fromContributors, toContributors } from './contributors.ts'
import { figuresOf } from './figures.ts'
import { type ToleranceCheckRequest, WHEN_NEEDED } from './request-schema.ts'

const SOURCES: readonly SourceId[] = ['jcgm-100', 'jcgm-101', 'xoshiro', 'derived', 'trade']

/** The caller's input in the core's words, or the faults of a combination. */
export function toToleranceCheckInput(request: ToleranceCheckRequest): Result<ToleranceCheckInput, readonly Fault[]> {
  const { units } = request.design
  const design = toDesignInput(request.design, '/design')
  const contributors = toContributors(request)
  if (!contributors.ok) return contributors
  return ok(
    present<ToleranceCheckInput>({
      design,
      contributors: contributors.value,
      ballsAsDesigned: true,
      year: yearIn(design.making, design),
      limits: request.limits && fromRequest(LIMIT_FIELDS, request.limits, units),
      trials: request.trials === WHEN_NEEDED ? undefined : request.trials,
      significantDigits: request.significantDigits,
      seed: request.seed,
      overshootRisk: request.overshootRisk,
    }),
  )
}

/** Why a request for a check is refused, in a sentence. */
export const checkRefusalWords =
  ({ design }: ToleranceCheckRequest) =>
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
        return seasonRefusalSentence(refusal, design.making?.climate?.temperatureScale ?? 'celsius', terms)
      default:
        return refusalSentence(refusal, units, terms)
    }
  }

/** A check of any arrangement, as it is answered. */
export function toToleranceAnswer(checked: ToleranceCheck, request: ToleranceCheckRequest): ToleranceCheckResponse {
  const input = toEcho(checked)
  const { units } = input.design
  const arrangement = nameOf(input.design) as Served
  const of = ANSWERS[arrangement]
  const assumed = assumptionsIn(request, input, { ...designDefaults(checked.check.input.design), ...CHECK_DEFAULTS })
  const whole = answer({ arrangement, units, input, assumed, summary: advice(checked) }, figuresOf(checked, of), {
    warnings: warningsOf(checked),
    cautions: cautionsOf(checked.check.bearing.resolved),
    sources: [...SOURCES, ...weatherSources(checked)].map(toSource),
  })
  return shownBy(of.Response as TObject, whole, units) as ToleranceCheckResponse
}

const CHECK_DEFAULTS: Defaults = {
  ...defaultsOf(LIMIT_FIELDS, '/limits'),
  ...defaultsOf(METHOD_FIELDS),
  '/trials': TRIALS_DEFAULT,
  '/contributors/ballDiameter/kind': BALL_DEFAULTS.kind,
  '/contributors/ballDiameter/standardDeviation': BALL_DEFAULTS.standardDeviation,
  ...Object.fromEntries(Object.entries(MEAN_DEFAULTS).map(([name, row]) => [`/contributors/${name}/mean`, row])),
}

/** One ring in so many that binds is worth a warning: common practice, no source. */
const OFTEN = 0.1

function warningsOf(checked: ToleranceCheck): Static<typeof Warning>[] {
  const { check, binds } = checked
  const { year } = check.input
  return [
    ...(binds === undefined || binds.value < OFTEN
      ? []
      : [
          {
            code: 'inner-ring-binds',
            severity: 'risk' as const,
            message: bindsOften(binds, checked),
            path: '/design/radialInternalClearance',
          },
        ]),
    ...(year === undefined ? [] : woodNotes(year.woods, inRequest)),
  ]
}

/** The request with every default filled in: sent again, it gives the same answer. */
function toEcho({ check }: ToleranceCheck): ToleranceCheckRequest {
  const { design, contributors, limits, trials = WHEN_NEEDED, significantDigits, seed, overshootRisk } = check.input
  const { units } = design
  return {
    design: toDesignRequest(design),
    contributors: fromContributors(contributors, units),
    limits: toRequest(LIMIT_FIELDS, { ...limits }, units),
    trials,
    significantDigits,
    seed,
    overshootRisk,
  }
}

/** Sources of the year, if there is one. */
const weatherSources = ({ check: { input } }: ToleranceCheck): readonly SourceId[] =>
  input.year === undefined ? [] : seasonSources(input.year.woods, input.design.balls.material)
