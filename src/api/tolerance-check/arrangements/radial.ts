import type { AimPlace } from '#shared/questions/tolerance/check-model.ts'
import { answerOf } from '#src/api/answer.ts'
import { shownLength as shown } from '#src/api/length.ts'
import { named, ref } from '#src/api/schema.ts'
import { aimOf, FitChances, inputRef, notes, RINGS } from '#src/api/tolerance-check/figures-schema.ts'

const AimPoint = named('AimPoint', 'A depth to stop at, and what becomes of the ball gap then.', {
  grooveDepth: shown('Depth of the outer groove.'),
  grooveBottomDiameter: shown('Diameter across the bottoms of the outer groove.'),
  deeper: shown('How much deeper than designed. Below 0 it is shallower.'),
  ballGap: shown('Mean ball gap at this aim.'),
  outcomes: ref(FitChances),
})

const RadialToleranceCheckResponse = named(
  'RadialToleranceCheckResponse',
  'Will it run, how often, and where to aim.',
  answerOf(['radial'], inputRef, {
    ...RINGS,
    aim: aimOf(
      AimPoint,
      'The depth to aim for in the outer groove. You can deepen a groove that is too shallow, but you cannot put wood back. Fit the inner ring afterwards.',
      {
        bestYield: 'The aim at which most rings fit.',
        limitedRisk:
          'The depth at which most rings fit while the chance of a groove too deep stays within the accepted risk.',
      },
    ),
    notes,
  }),
)

export const RADIAL = {
  Response: RadialToleranceCheckResponse,
  Point: AimPoint,
  play: 'radialInternalClearance',
  pointOf: (place: AimPlace) => place,
}
