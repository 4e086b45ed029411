import type { Static } from 'typebox'
import { LOAD_FIELDS } from '#shared/questions/load/fields.ts'
import { type AnyLoadCheckInput, type LoadCheck, loadNameOf } from '#shared/questions/load/load-check.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { answerUnion } from '#src/api/answer.ts'
import { toDesignInput } from '#src/api/design-input.ts'
import { fromRequest } from '#src/api/fields.ts'
import { toNewtons, usualForceUnits } from '#src/api/force.ts'
import { RING_LOAD_SCHEMAS, RingLoadCheckResponse, toRingResponse } from '#src/api/load-check/arrangements/rings.ts'
import {
  THRUST_LOAD_SCHEMAS,
  ThrustLoadCheckResponse,
  toThrustResponse,
} from '#src/api/load-check/arrangements/thrust.ts'
import { present } from '#src/api/optional.ts'
import type { Fault } from '#src/http/problem.ts'
import { loadMissing, type Spoken } from '#src/words/load-check.ts'
import { termsOf } from '#src/words/terms.ts'
import { type LoadCheckRequest, SHARED_LOAD_SCHEMAS } from './schema.ts'

export const LoadCheckResponse = answerUnion(
  'LoadCheckResponse',
  'Effects of the load and the speed, and their limits.',
  RingLoadCheckResponse,
  ThrustLoadCheckResponse,
)
export type LoadCheckResponse = Static<typeof LoadCheckResponse>

export const LOAD_CHECK_SCHEMAS = [
  ...SHARED_LOAD_SCHEMAS,
  ...RING_LOAD_SCHEMAS,
  ...THRUST_LOAD_SCHEMAS,
  LoadCheckResponse,
]

/** The units and the terms of the answer to a request. */
export const spokenOf = ({ design, forceUnits }: LoadCheckRequest): Spoken => ({
  terms: termsOf(design),
  units: design.units,
  forceUnits: forceUnits ?? usualForceUnits(design.units),
})

/** The caller's input in the core's words, or that the load is missing which a bearing of this kind carries. */
export function toLoadCheckInput(request: LoadCheckRequest): Result<AnyLoadCheckInput, readonly Fault[]> {
  const { design } = request
  const name = loadNameOf(design)
  if (request[name] === undefined) return fail([{ path: `/${name}`, message: loadMissing(name) }])
  const { units, forceUnits } = spokenOf(request)
  const input = fromRequest(LOAD_FIELDS, request, units)
  const newtons = (force: number | undefined) => (force === undefined ? undefined : toNewtons(force, forceUnits))
  return ok(
    present<AnyLoadCheckInput>({
      ...input,
      design: toDesignInput(design, '/design'),
      radialLoad: newtons(input.radialLoad),
      axialLoad: newtons(input.axialLoad),
    }),
  )
}

/** A load check of any arrangement, in the caller's units and in words. */
export const toLoadAnswer = (check: LoadCheck, request: LoadCheckRequest): LoadCheckResponse =>
  'turntable' in check
    ? toThrustResponse(check, request, spokenOf(request))
    : toRingResponse(check, request, spokenOf(request))
