import { type Static, Type } from 'typebox'
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
import { refTo } from '#src/http/schema.ts'

const CagedFitCorrectionResponse = Type.Object(
  fitAnswerOf('caged', {
    ...STANDING,
    ring: Type.Unsafe<'inner'>(Type.Enum(['inner'], { type: 'string', description: 'The ring that is being cut.' })),
    radialInternalClearance: PLAY,
    ...CENTRES,
    grooveBottomDiameter: estimate('Diameter across the groove bottoms of the inner ring.'),
    nextStep: Type.Optional(refTo<typeof GrooveNextStep>('GrooveNextStep')),
    ...WORK,
    ...ADJUSTMENT,
  }),
  { $id: 'CagedFitCorrectionResponse', description: "Present state of the inner ring's groove, and the next step." },
)
export type CagedFitCorrectionResponse = Static<typeof CagedFitCorrectionResponse>

export const CAGED = { size: 'grooveBottomDiameter', response: CagedFitCorrectionResponse, own: [] } as const
