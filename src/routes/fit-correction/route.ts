import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { computingRoute } from '#src/http/computing-route.ts'
import { notValid, problem } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { wordedFor } from '#src/wire/arrangement-words.ts'
import { refuseQuestion } from '#src/wire/refusal.ts'
import { READING_SCHEMAS, ReadingRequest } from './readings.ts'
import {
  BallsOnHand,
  CountedRemoval,
  EarlierState,
  FitCorrectionRequest,
  FitCorrectionResponse,
  FitTarget,
  LengthEstimate,
  NextStep,
  RescueOption,
  ToolErrorRequest,
} from './schema.ts'
import { explainFitRefusal } from './sentences.ts'
import { toFitCorrectionInput, toFitCorrectionResponse } from './translate.ts'

const INPUTS = [
  ...READING_SCHEMAS,
  ReadingRequest,
  ToolErrorRequest,
  FitTarget,
  EarlierState,
  CountedRemoval,
  BallsOnHand,
  FitCorrectionRequest,
]
const OUTPUTS = [LengthEstimate, NextStep, RescueOption, FitCorrectionResponse]

export const FIT_CORRECTION_SCHEMAS = [...INPUTS, ...OUTPUTS]

export const fitCorrectionRoute: FastifyPluginAsyncTypebox = async (app) => {
  computingRoute(app, {
    path: '/fit-correction',
    schema: {
      operationId: 'fitCorrection',
      tags: ['bearing'],
      summary: 'From what was read at a groove: how much more comes off, how risky that is, and what rescues it',
      body: refTo<typeof FitCorrectionRequest>('FitCorrectionRequest'),
      response: {
        200: refTo<typeof FitCorrectionResponse>('FitCorrectionResponse'),
        422: problem('Cannot exist'),
        503: problem('Too busy'),
      },
    },
    handler: async (body, request, reply) => {
      const input = toFitCorrectionInput(body)
      if (!input.ok) throw notValid(input.error)
      const fit = await app.runTask('fitCorrection', input.value, request)
      if (fit.ok) return wordedFor(body.design, toFitCorrectionResponse(fit.value))
      return refuseQuestion(reply, fit.error, body.design, explainFitRefusal)
    },
  })
}
