import type { Served } from '#shared/questions/tolerance/arrangements/models.ts'
import type { ToleranceCheck } from '#shared/questions/tolerance/tolerance-check.ts'
import type { AnswerFoot, AnswerHead } from '#src/api/tolerance-check/figures.ts'
import type { ToleranceCheckResponse } from './answers-schema.ts'
import { toRadialAnswer } from './radial.ts'
import { toRollerAnswer } from './roller.ts'
import { toThrustAnswer } from './thrust.ts'

type ToAnswer = (checked: ToleranceCheck, head: AnswerHead, foot: AnswerFoot) => ToleranceCheckResponse

/** How each arrangement answers: a line each. */
export const TO_ANSWER: Readonly<Record<Served, ToAnswer>> = {
  radial: toRadialAnswer,
  roller: toRollerAnswer,
  thrust: toThrustAnswer,
}
