import type { Static } from 'typebox'
import { answerUnion } from '#src/api/answer.ts'
import { AimPoint, RadialToleranceCheckResponse } from './radial-schema.ts'
import { RollerAimPoint, RollerToleranceCheckResponse } from './roller-schema.ts'
import { PlateAimPoint, PlateContributorEffect, ThrustToleranceCheckResponse } from './thrust-schema.ts'

export const ToleranceCheckResponse = answerUnion(
  'ToleranceCheckResponse',
  'How often the bearing will fit, what matters most, and where to stop.',
  RadialToleranceCheckResponse,
  RollerToleranceCheckResponse,
  ThrustToleranceCheckResponse,
)
export type ToleranceCheckResponse = Static<typeof ToleranceCheckResponse>

/** The answers, inner schemas first. */
export const ARRANGEMENT_SCHEMAS = [
  AimPoint,
  RollerAimPoint,
  RadialToleranceCheckResponse,
  RollerToleranceCheckResponse,
  PlateContributorEffect,
  PlateAimPoint,
  ThrustToleranceCheckResponse,
  ToleranceCheckResponse,
]
