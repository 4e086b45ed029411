import type { Static } from 'typebox'
import type { Served } from '#shared/questions/tolerance/arrangements/models.ts'
import { answerUnion } from '#src/api/answer.ts'
import type { ToleranceAnswer } from '#src/api/tolerance-check/figures-schema.ts'
import { RADIAL } from './radial.ts'
import { ROLLER } from './roller.ts'
import { PlateContributorEffect, THRUST } from './thrust.ts'

/** The answer of each arrangement. A new one: its file, and its line here. */
export const ANSWERS = { radial: RADIAL, roller: ROLLER, thrust: THRUST } as const satisfies Readonly<
  Record<Served, ToleranceAnswer>
>

export const ToleranceCheckResponse = answerUnion(
  'ToleranceCheckResponse',
  'How often the bearing will fit, what matters most, and where to stop.',
  RADIAL.Response,
  ROLLER.Response,
  THRUST.Response,
)
export type ToleranceCheckResponse = Static<typeof ToleranceCheckResponse>

/** The answers, inner schemas first. */
export const ARRANGEMENT_SCHEMAS = [
  RADIAL.Point,
  ROLLER.Point,
  RADIAL.Response,
  ROLLER.Response,
  PlateContributorEffect,
  THRUST.Point,
  THRUST.Response,
  ToleranceCheckResponse,
]
