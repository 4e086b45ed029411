import { type Static, Type } from 'typebox'
import { type CauseName, CONTRIBUTORS_OF } from '#shared/questions/tolerance/input.ts'
import { answerOf } from '#src/api/answer.ts'
import { shownLength as shown } from '#src/api/length.ts'
import {
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

export const PlateContributorEffect = Type.Object(
  {
    contributor: Type.Unsafe<CauseName>(
      Type.Enum(CONTRIBUTORS_OF.plates, { type: 'string', description: 'The contributor.' }),
    ),
    ballGap: effect('ball gap'),
    plateGap: effect('space between the plates'),
    message: Type.String({ description: 'Summary in words.' }),
  },
  {
    $id: 'PlateContributorEffect',
    description:
      'Effect of a contributor. `ballDiameter`: per unit of one ball. Contributors of grooves: per unit of one plate.',
  },
)

export const PlateAimPoint = Type.Object(
  {
    grooveCircleDiameter: shown('Diameter of the groove circle.'),
    furtherOut: shown('How much larger its radius is than designed. Below 0 it is smaller.'),
    ballGap: shown('Mean ball gap at this aim.'),
    outcomes: refTo<typeof FitChances>('FitChances'),
  },
  { $id: 'PlateAimPoint', description: 'A circle to stop at, in both plates, and what becomes of the ball gap then.' },
)

const plateAimPoint = (description: string) =>
  Type.Unsafe<Static<typeof PlateAimPoint>>({ ...refTo<typeof PlateAimPoint>('PlateAimPoint'), description })

export const ThrustToleranceCheckResponse = Type.Object(
  answerOf(['thrust'], inputRef, {
    method: methodOf({ ballGap: share('ball gap'), plateGap: share('space between the plates') }),
    ...MADE,
    plateGap: refTo<typeof CheckedFigure>('CheckedFigure'),
    ...jointly('the space between the plates'),
    sensitivities: Type.Array(refTo<typeof PlateContributorEffect>('PlateContributorEffect'), {
      description: 'The largest part in the scatter of the ball gap first.',
    }),
    aim: Type.Object(
      {
        atNominal: plateAimPoint('Value as designed.'),
        bestYield: plateAimPoint('The aim at which most turntables fit.'),
        limitedRisk: Type.Optional(
          plateAimPoint(
            'The circle at which most turntables fit while the chance of a groove too far out stays within the accepted risk.',
          ),
        ),
        message: Type.String({ description: 'Advice on which aim to choose.' }),
      },
      {
        description:
          'The groove circle to aim for. You can move a groove out by cutting its outer flank, but you cannot put wood back.',
      },
    ),
    notes,
  }),
  {
    $id: 'ThrustToleranceCheckResponse',
    description: 'How often a turntable fits, which contributors matter most, and the aim.',
  },
)
export type ThrustToleranceCheckResponse = Static<typeof ThrustToleranceCheckResponse>
