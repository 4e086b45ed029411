import type { Static } from 'typebox'
import type { ArrangementName } from '#shared/bearing/arrangements.ts'
import { answerUnion } from '#src/api/answer.ts'
import { CAGED } from '#src/api/fit-correction/arrangements/caged.ts'
import { RADIAL } from '#src/api/fit-correction/arrangements/radial.ts'
import { ROLLER } from '#src/api/fit-correction/arrangements/roller.ts'
import { THRUST } from '#src/api/fit-correction/arrangements/thrust.ts'
import { FIT_PARTS } from '#src/api/fit-correction/schema.ts'

/** The answer of every arrangement, and how it calls the size that is cut. */
export const ANSWERS = { radial: RADIAL, roller: ROLLER, caged: CAGED, thrust: THRUST } as const satisfies Readonly<
  Record<ArrangementName, unknown>
>

export const FitCorrectionResponse = answerUnion(
  'FitCorrectionResponse',
  'Present state of the groove, and the next step: cut, measure or stop.',
  RADIAL.response,
  ROLLER.response,
  CAGED.response,
  THRUST.response,
)
export type FitCorrectionResponse = Static<typeof FitCorrectionResponse>

export const FIT_CORRECTION_SCHEMAS = [
  ...FIT_PARTS,
  ...Object.values(ANSWERS).flatMap(({ own, response }) => [...own, response]),
  FitCorrectionResponse,
]
