import { Type } from 'typebox'
import {
  ADJUSTMENT,
  BOTH_RINGS,
  estimate,
  fitAnswerOf,
  type GrooveNextStep,
  STANDING,
  WORK,
} from '#src/api/fit-correction/schema.ts'
import { named } from '#src/api/schema.ts'
import { refTo } from '#src/http/schema.ts'

const RadialFitCorrectionResponse = named(
  'RadialFitCorrectionResponse',
  'Present state of the groove, and the next step.',
  fitAnswerOf('radial', {
    ...STANDING,
    ...BOTH_RINGS,
    grooveBottomDiameter: estimate('Diameter across the groove bottoms of the ring that is being cut.'),
    nextStep: Type.Optional(refTo<typeof GrooveNextStep>('GrooveNextStep')),
    ...WORK,
    ...ADJUSTMENT,
  }),
)

export const RADIAL = { size: 'grooveBottomDiameter', response: RadialFitCorrectionResponse, own: [] } as const
