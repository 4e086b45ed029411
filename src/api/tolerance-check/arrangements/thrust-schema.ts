import type { Static } from 'typebox'
import { type CauseName, CONTRIBUTORS_OF } from '#shared/questions/tolerance/input.ts'
import { answerOf } from '#src/api/answer.ts'
import { shownLength as shown } from '#src/api/length.ts'
import { choiceOf, listOf, named, text } from '#src/api/schema.ts'
import {
  aimOf,
  type CheckedFigure,
  effect,
  type FitChances,
  inputRef,
  jointly,
  MADE,
  methodOf,
  notes,
  share,
} from '#src/api/tolerance-check/figures-schema.ts'
import { refTo } from '#src/http/schema.ts'

export const PlateContributorEffect = named(
  'PlateContributorEffect',
  'Effect of a contributor. `ballDiameter`: per unit of one ball. Contributors of grooves: per unit of one plate.',
  {
    contributor: choiceOf<CauseName>('The contributor.', CONTRIBUTORS_OF.plates),
    ballGap: effect('ball gap'),
    plateGap: effect('space between the plates'),
    message: text('Summary in words.'),
  },
)

export const PlateAimPoint = named(
  'PlateAimPoint',
  'A circle to stop at, in both plates, and what becomes of the ball gap then.',
  {
    grooveCircleDiameter: shown('Diameter of the groove circle.'),
    furtherOut: shown('How much larger its radius is than designed. Below 0 it is smaller.'),
    ballGap: shown('Mean ball gap at this aim.'),
    outcomes: refTo<typeof FitChances>('FitChances'),
  },
)

export const ThrustToleranceCheckResponse = named(
  'ThrustToleranceCheckResponse',
  'How often a turntable fits, which contributors matter most, and the aim.',
  answerOf(['thrust'], inputRef, {
    method: methodOf({ ballGap: share('ball gap'), plateGap: share('space between the plates') }),
    ...MADE,
    plateGap: refTo<typeof CheckedFigure>('CheckedFigure'),
    ...jointly('the space between the plates'),
    sensitivities: listOf<typeof PlateContributorEffect>(
      'PlateContributorEffect',
      'The largest part in the scatter of the ball gap first.',
    ),
    aim: aimOf<typeof PlateAimPoint>(
      'PlateAimPoint',
      'The groove circle to aim for. You can move a groove out by cutting its outer flank, but you cannot put wood back.',
      {
        bestYield: 'The aim at which most turntables fit.',
        limitedRisk:
          'The circle at which most turntables fit while the chance of a groove too far out stays within the accepted risk.',
      },
    ),
    notes,
  }),
)
export type ThrustToleranceCheckResponse = Static<typeof ThrustToleranceCheckResponse>
