import { type Static, Type } from 'typebox'
import type { DesignOf } from '#shared/bearing/design.ts'
import { answer, answerOf } from '#src/api/answer.ts'
import { assumptionsBy } from '#src/api/assumption.ts'
import { cautionsOf } from '#src/api/caution.ts'
import { type RequestsOf, requestBy } from '#src/api/design-input.ts'
import { type Dimension, toDimension } from '#src/api/dimension.ts'
import { show, shownLength } from '#src/api/length.ts'
import { toWarning } from '#src/api/warning.ts'
import { refTo } from '#src/http/schema.ts'
import type { FOOTSTEP } from './footstep.ts'
import type { FootstepBearing } from './geometry.ts'
import { FOOTSTEP_FIELDS } from './input.ts'
import { FOOTSTEP_TERMS } from './terms.ts'

type Request = RequestsOf<{ readonly footstep: typeof FOOTSTEP }>['footstep']

export const FootstepResponse = Type.Object(
  answerOf(['footstep'], Type.Unsafe<Request>(Type.Ref('FootstepToyRequest')), {
    cup: Type.Object({
      insideDiameter: shownLength('Across the inside.'),
      outsideDiameter: shownLength('Across the outside.'),
      boreDiameter: shownLength('Across the hole in the floor.'),
    }),
    height: shownLength('From under the cup to the top of the balls.'),
    dimensions: Type.Array(refTo<typeof Dimension>('Dimension')),
  }),
  { $id: 'FootstepResponse', description: `Every size of a ${FOOTSTEP_TERMS.bearing}.` },
)

/** A footstep in the caller's units. */
export function toFootstepResponse({
  bearing,
  dimensions,
  warnings,
}: DesignOf<FootstepBearing>): Static<typeof FootstepResponse> {
  const { cup, height, resolved } = bearing
  const { units } = resolved.input
  const input = requestBy(FOOTSTEP_FIELDS, resolved.input)
  return answer(
    {
      arrangement: 'footstep',
      units,
      input,
      assumed: assumptionsBy(FOOTSTEP_FIELDS, resolved.assumed, input),
      summary: 'Turn the cup, and lay the balls in it.',
    },
    {
      cup: {
        insideDiameter: show(cup.insideDiameter, units),
        outsideDiameter: show(cup.outsideDiameter, units),
        boreDiameter: show(cup.boreDiameter, units),
      },
      height: show(height, units),
      dimensions: dimensions.map((row) => toDimension(row, resolved, FOOTSTEP_TERMS)),
    },
    {
      warnings: warnings.map((warning) => toWarning(warning, units, FOOTSTEP_TERMS)),
      cautions: cautionsOf(resolved, FOOTSTEP_TERMS),
      sources: [],
    },
  )
}
