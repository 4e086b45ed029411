import type { AimPlace } from '#shared/questions/tolerance/check-model.ts'
import { answerOf } from '#src/api/answer.ts'
import { shownLength as shown } from '#src/api/length.ts'
import { named, ref } from '#src/api/schema.ts'
import { aimOf, FitChances, inputRef, notes, RINGS } from '#src/api/tolerance-check/figures-schema.ts'

const RollerAimPoint = named('RollerAimPoint', 'A track to stop at, and what becomes of the ball gap then.', {
  trackDiameter: shown("Diameter of the outer ring's track."),
  wider: shown('How much larger its radius is than designed. Below 0 it is smaller.'),
  ballGap: shown('Mean ball gap at this aim.'),
  outcomes: ref(FitChances),
})

const RollerToleranceCheckResponse = named(
  'RollerToleranceCheckResponse',
  'How often a roller bearing fits, which contributors matter most, and the aim.',
  answerOf(['roller'], inputRef, {
    ...RINGS,
    aim: aimOf(
      RollerAimPoint,
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

export const ROLLER = {
  Response: RollerToleranceCheckResponse,
  Point: RollerAimPoint,
  play: 'radialInternalClearance',
  pointOf: ({ grooveBottomDiameter: trackDiameter, deeper: wider }: AimPlace) => ({ trackDiameter, wider }),
}
