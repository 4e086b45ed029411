import { Type } from 'typebox'
import { answerOf } from '#src/api/answer.ts'
import { shownLength as shown } from '#src/api/length.ts'
import { described, named, object, text } from '#src/api/schema.ts'
import { type FitChances, inputRef, notes, RINGS } from '#src/api/tolerance-check/figures-schema.ts'
import { refTo } from '#src/http/schema.ts'

export const RollerAimPoint = named('RollerAimPoint', 'A track to stop at, and what becomes of the ball gap then.', {
  trackDiameter: shown("Diameter of the outer ring's track."),
  wider: shown('How much larger its radius is than designed. Below 0 it is smaller.'),
  ballGap: shown('Mean ball gap at this aim.'),
  outcomes: refTo<typeof FitChances>('FitChances'),
})

const rollerAimPoint = (description: string) => described<typeof RollerAimPoint>('RollerAimPoint', description)

export const RollerToleranceCheckResponse = named(
  'RollerToleranceCheckResponse',
  'How often a roller bearing fits, which contributors matter most, and the aim.',
  answerOf(['roller'], inputRef, {
    ...RINGS,
    aim: object(
      "The diameter to aim for in the outer ring's track. You can widen a track that is too narrow, but you cannot put wood back. Fit the inner ring afterwards.",
      {
        atNominal: rollerAimPoint('Value as designed.'),
        bestYield: rollerAimPoint('The aim at which most rings fit.'),
        limitedRisk: Type.Optional(
          rollerAimPoint(
            'The diameter at which most rings fit while the chance of a track too wide stays within the accepted risk.',
          ),
        ),
        message: text('Advice on which aim to choose.'),
      },
    ),
    notes,
  }),
)
