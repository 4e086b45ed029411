import { type Static, Type } from 'typebox'
import { answerOf } from '#src/api/answer.ts'
import { shownLength as shown } from '#src/api/length.ts'
import { type FitChances, inputRef, notes, RINGS } from '#src/api/tolerance-check/figures-schema.ts'
import { refTo } from '#src/http/schema.ts'

export const RollerAimPoint = Type.Object(
  {
    trackDiameter: shown("Diameter of the outer ring's track."),
    wider: shown('How much larger its radius is than designed. Below 0 it is smaller.'),
    ballGap: shown('Mean ball gap at this aim.'),
    outcomes: refTo<typeof FitChances>('FitChances'),
  },
  { $id: 'RollerAimPoint', description: 'A track to stop at, and what becomes of the ball gap then.' },
)

const rollerAimPoint = (description: string) =>
  Type.Unsafe<Static<typeof RollerAimPoint>>({ ...refTo<typeof RollerAimPoint>('RollerAimPoint'), description })

export const RollerToleranceCheckResponse = Type.Object(
  answerOf(['roller'], inputRef, {
    ...RINGS,
    aim: Type.Object(
      {
        atNominal: rollerAimPoint('Value as designed.'),
        bestYield: rollerAimPoint('The aim at which most rings fit.'),
        limitedRisk: Type.Optional(
          rollerAimPoint(
            'The diameter at which most rings fit while the chance of a track too wide stays within the accepted risk.',
          ),
        ),
        message: Type.String({ description: 'Advice on which aim to choose.' }),
      },
      {
        description:
          "The diameter to aim for in the outer ring's track. You can widen a track that is too narrow, but you cannot put wood back. Fit the inner ring afterwards.",
      },
    ),
    notes,
  }),
  {
    $id: 'RollerToleranceCheckResponse',
    description: 'How often a roller bearing fits, which contributors matter most, and the aim.',
  },
)
