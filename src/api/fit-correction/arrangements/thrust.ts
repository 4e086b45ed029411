import { Type } from 'typebox'
import {
  CENTRES,
  CIRCLE_UNTIL,
  estimate,
  fitAnswerOf,
  GAP,
  nextStep,
  STANDING,
  WORK,
} from '#src/api/fit-correction/schema.ts'
import { named } from '#src/api/schema.ts'
import { refTo } from '#src/http/schema.ts'

const PlateNextStep = nextStep('PlateNextStep', CIRCLE_UNTIL)

const ThrustFitCorrectionResponse = named(
  'ThrustFitCorrectionResponse',
  'Present state of the plates, and the next step. A cut moves the groove circle out, in both plates alike.',
  fitAnswerOf('thrust', {
    ...STANDING,
    ballGap: GAP,
    ...CENTRES,
    grooveCircleDiameter: estimate('Diameter of the circle in which the groove is deepest.'),
    nextStep: Type.Optional(refTo<typeof PlateNextStep>('PlateNextStep')),
    ...WORK,
  }),
)

export const THRUST = {
  size: 'grooveCircleDiameter',
  response: ThrustFitCorrectionResponse,
  own: [PlateNextStep],
} as const
