import { Type } from 'typebox'
import {
  ADJUSTMENT,
  CENTRES,
  estimate,
  fitAnswerOf,
  type GrooveNextStep,
  PLAY,
  STANDING,
  WORK,
} from '#src/api/fit-correction/schema.ts'
import { choiceOf, named } from '#src/api/schema.ts'
import { refTo } from '#src/http/schema.ts'

const CagedFitCorrectionResponse = named(
  'CagedFitCorrectionResponse',
  "Present state of the inner ring's groove, and the next step.",
  fitAnswerOf('caged', {
    ...STANDING,
    ring: choiceOf<'inner'>('The ring that is being cut.', ['inner']),
    radialInternalClearance: PLAY,
    ...CENTRES,
    grooveBottomDiameter: estimate('Diameter across the groove bottoms of the inner ring.'),
    nextStep: Type.Optional(refTo<typeof GrooveNextStep>('GrooveNextStep')),
    ...WORK,
    ...ADJUSTMENT,
  }),
)

export const CAGED = { size: 'grooveBottomDiameter', response: CagedFitCorrectionResponse, own: [] } as const
