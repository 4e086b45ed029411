import { Type } from 'typebox'
import {
  ADJUSTMENT,
  BOTH_RINGS,
  estimate,
  fitAnswerOf,
  nextStep,
  STANDING,
  TRACK_UNTIL,
  WORK,
} from '#src/api/fit-correction/schema.ts'
import { named } from '#src/api/schema.ts'
import { refTo } from '#src/http/schema.ts'

const TrackNextStep = nextStep('TrackNextStep', TRACK_UNTIL)

const RollerFitCorrectionResponse = named(
  'RollerFitCorrectionResponse',
  'Present state of the track, and the next step. `ball…` are the rollers.',
  fitAnswerOf('roller', {
    ...STANDING,
    ...BOTH_RINGS,
    trackDiameter: estimate('Track diameter of the ring that is being cut.'),
    nextStep: Type.Optional(refTo<typeof TrackNextStep>('TrackNextStep')),
    ...WORK,
    ...ADJUSTMENT,
  }),
)

export const ROLLER = { size: 'trackDiameter', response: RollerFitCorrectionResponse, own: [TrackNextStep] } as const
