import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { computingRoute } from '#src/http/computing-route.ts'
import { notValid, problem, refuse } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { checkTolerance } from '#src/workers/tolerance-check.ts'
import { CONTRIBUTOR_SCHEMAS } from './contributors.ts'
import {
  AimPoint,
  CheckedFigure,
  ContributorEffect,
  FitChances,
  Percentile,
  ToleranceCheckRequest,
  ToleranceCheckResponse,
  ToleranceHistogram,
  ToleranceLimits,
} from './schema.ts'
import { toToleranceCheckInput, toToleranceCheckResponse, toToleranceFault } from './translate.ts'

const INPUTS = [...CONTRIBUTOR_SCHEMAS, ToleranceLimits, ToleranceCheckRequest]
const OUTPUTS = [Percentile, FitChances, ToleranceHistogram, CheckedFigure, ContributorEffect, AimPoint]

export const TOLERANCE_CHECK_SCHEMAS = [...INPUTS, ...OUTPUTS, ToleranceCheckResponse]

export const toleranceCheckRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/tolerance-check',
    schema: {
      operationId: 'toleranceCheck',
      tags: ['bearing'],
      summary: 'Will it run when cuts and balls are not perfect: how often, what decides it, and where to aim',
      body: refTo<typeof ToleranceCheckRequest>('ToleranceCheckRequest'),
      response: {
        200: refTo<typeof ToleranceCheckResponse>('ToleranceCheckResponse'),
        422: problem('Cannot exist'),
        503: problem('Too busy, or too long'),
      },
    },
    handler: async (body, request, reply) => {
      const input = toToleranceCheckInput(body)
      if (!input.ok) throw notValid(input.error)
      const checked = await app.inParts(request, (runPart, atOnce) => checkTolerance(input.value, runPart, atOnce))
      if (checked.ok) return toToleranceCheckResponse(checked.value)
      return refuse(
        reply,
        checked.error.map((refusal) => toToleranceFault(refusal, body.design.units)),
      )
    },
  })
}
