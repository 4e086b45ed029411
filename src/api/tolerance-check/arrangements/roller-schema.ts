import { answerOf } from '#src/api/answer.ts'
import { shownLength as shown } from '#src/api/length.ts'
import { named } from '#src/api/schema.ts'
import { aimOf, type FitChances, inputRef, notes, RINGS } from '#src/api/tolerance-check/figures-schema.ts'
import { refTo } from '#src/http/schema.ts'

export const RollerAimPoint = named('RollerAimPoint', 'A track to stop at, and what becomes of the ball gap then.', {
  trackDiameter: shown("Diameter of the outer ring's track."),
  wider: shown('How much larger its radius is than designed. Below 0 it is smaller.'),
  ballGap: shown('Mean ball gap at this aim.'),
  outcomes: refTo<typeof FitChances>('FitChances'),
})

export const RollerToleranceCheckResponse = named(
  'RollerToleranceCheckResponse',
  'How often a roller bearing fits, which contributors matter most, and the aim.',
  answerOf(['roller'], inputRef, {
    ...RINGS,
    aim: aimOf<typeof RollerAimPoint>(
      'RollerAimPoint',
      "The diameter to aim for in the outer ring's track. You can widen a track that is too narrow, but you cannot put wood back. Fit the inner ring afterwards.",
      {
        bestYield: 'The aim at which most rings fit.',
        limitedRisk:
          'The diameter at which most rings fit while the chance of a track too wide stays within the accepted risk.',
      },
    ),
    notes,
  }),
)
