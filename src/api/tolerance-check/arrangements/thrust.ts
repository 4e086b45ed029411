import type { AimPlace } from '#shared/questions/tolerance/check-model.ts'
import { type CauseName, CONTRIBUTORS_OF } from '#shared/questions/tolerance/input.ts'
import { answerOf } from '#src/api/answer.ts'
import { shownLength as shown } from '#src/api/length.ts'
import { choiceOf, named, ref, text } from '#src/api/schema.ts'
import {
  aimOf,
  CheckedFigure,
  effect,
  effectsOf,
  FitChances,
  inputRef,
  jointly,
  MADE,
  methodOf,
  notes,
  share,
} from '#src/api/tolerance-check/figures-schema.ts'

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

const PlateAimPoint = named(
  'PlateAimPoint',
  'A circle to stop at, in both plates, and what becomes of the ball gap then.',
  {
    grooveCircleDiameter: shown('Diameter of the groove circle.'),
    furtherOut: shown('How much larger its radius is than designed. Below 0 it is smaller.'),
    ballGap: shown('Mean ball gap at this aim.'),
    outcomes: ref(FitChances),
  },
)

const ThrustToleranceCheckResponse = named(
  'ThrustToleranceCheckResponse',
  'How often a turntable fits, which contributors matter most, and the aim.',
  answerOf(['thrust'], inputRef, {
    method: methodOf({ ballGap: share('ball gap'), plateGap: share('space between the plates') }),
    ...MADE,
    plateGap: ref(CheckedFigure),
    ...jointly('the space between the plates'),
    sensitivities: effectsOf(PlateContributorEffect),
    aim: aimOf(
      PlateAimPoint,
      'The groove circle to aim for. You can move a groove out by cutting the whole of it again, but you cannot put wood back.',
      {
        bestYield: 'The aim at which most turntables fit.',
        limitedRisk:
          'The circle at which most turntables fit while the chance of a groove too far out stays within the accepted risk.',
      },
    ),
    notes,
  }),
)

export const THRUST = {
  Response: ThrustToleranceCheckResponse,
  Point: PlateAimPoint,
  play: 'plateGap',
  pointOf: ({ grooveBottomDiameter: grooveCircleDiameter, deeper: furtherOut }: AimPlace) => ({
    grooveCircleDiameter,
    furtherOut,
  }),
}
