import type { Static } from 'typebox'
import { answerUnion } from '#src/api/answer.ts'
import { ANSWERS } from '#src/api/ball-selection/arrangements/by-name.ts'
import { SHARED_SCHEMAS } from './parts.ts'

const answers = [...new Set(Object.values(ANSWERS))]

export const BallSelectionResponse = answerUnion(
  'BallSelectionResponse',
  'The balls to use, in which order, what they leave, and how good the choice is.',
  ...answers.map(({ Response }) => Response),
)
export type BallSelectionResponse = Static<typeof BallSelectionResponse>

export const BALL_SELECTION_SCHEMAS = [
  ...SHARED_SCHEMAS,
  ...answers.flatMap(({ schemas }) => schemas),
  BallSelectionResponse,
]
