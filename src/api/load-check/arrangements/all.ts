import type { Static } from 'typebox'
import type { LoadCheck } from '#shared/questions/load/load-check.ts'
import { answerUnion } from '#src/api/answer.ts'
import { type LoadCheckRequest, SHARED_LOAD_SCHEMAS } from '#src/api/load-check/schema.ts'
import { spokenOf } from '#src/api/load-check/shared-answer.ts'
import { RING_LOAD_SCHEMAS, RingLoadCheckResponse, toRingResponse } from './rings.ts'
import { THRUST_LOAD_SCHEMAS, ThrustLoadCheckResponse, toThrustResponse } from './thrust.ts'

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

/** A load check of any arrangement, in the caller's units and in words. */
export const toLoadAnswer = (check: LoadCheck, request: LoadCheckRequest): LoadCheckResponse =>
  'turntable' in check
    ? toThrustResponse(check, request, spokenOf(request))
    : toRingResponse(check, request, spokenOf(request))
