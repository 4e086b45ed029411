import { type Static, Type } from 'typebox'
import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import type { DesignOf } from '#shared/bearing/design.ts'
import { arrangementTag } from '#src/api/answer.ts'
import { type Assumption, assumptionsBy } from '#src/api/assumption.ts'
import { type Caution, cautionsFor } from '#src/api/caution.ts'
import { type RequestsOf, requestBy } from '#src/api/design-input.ts'
import { type Dimension, toDimension } from '#src/api/dimension.ts'
import { show, shownLength } from '#src/api/length.ts'
import type { UnitsName } from '#src/api/units.ts'
import { toWarning, type Warning } from '#src/api/warning.ts'
import { refTo } from '#src/http/schema.ts'
import type { FOOTSTEP } from './footstep.ts'
import type { FootstepBearing } from './geometry.ts'
import { FOOTSTEP_FIELDS } from './input.ts'
import { FOOTSTEP_TERMS } from './terms.ts'

type Request = RequestsOf<{ readonly footstep: typeof FOOTSTEP }>['footstep']

export const FootstepResponse = Type.Object(
  {
    arrangement: arrangementTag('footstep'),
    units: refTo<typeof UnitsName>('Units'),
    input: Type.Unsafe<Request>(Type.Ref('FootstepToyRequest')),
    assumed: Type.Array(refTo<typeof Assumption>('Assumption')),
    cup: Type.Object({
      insideDiameter: shownLength('Across the inside.'),
      outsideDiameter: shownLength('Across the outside.'),
      boreDiameter: shownLength('Across the hole in the floor.'),
    }),
    height: shownLength('From under the cup to the top of the balls.'),
    dimensions: Type.Array(refTo<typeof Dimension>('Dimension')),
    warnings: Type.Array(refTo<typeof Warning>('Warning')),
    cautions: Type.Array(refTo<typeof Caution>('Caution')),
  },
  { $id: 'FootstepResponse', description: `Every size of a ${FOOTSTEP_TERMS.bearing}.` },
)

/** A footstep in the caller's units. */
export function toFootstepResponse({
  bearing,
  dimensions,
  warnings,
}: DesignOf<FootstepBearing>): Static<typeof FootstepResponse> {
  const { cup, height, settled } = bearing
  const { units } = settled.input
  const input = requestBy(FOOTSTEP_FIELDS, settled.input)
  return {
    arrangement: 'footstep',
    units,
    input,
    assumed: assumptionsBy(FOOTSTEP_FIELDS, settled.assumed, input),
    cup: {
      insideDiameter: show(cup.insideDiameter, units),
      outsideDiameter: show(cup.outsideDiameter, units),
      boreDiameter: show(cup.boreDiameter, units),
    },
    height: show(height, units),
    dimensions: dimensions.map((row) => toDimension(row, units, FOOTSTEP_TERMS)),
    warnings: warnings.map((warning) => toWarning(warning, units, FOOTSTEP_TERMS)),
    cautions: cautionsFor(settled.input.balls.material ?? BALL_MATERIAL, FOOTSTEP_TERMS),
  }
}
