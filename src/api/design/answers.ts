import { type ArrangementName, nameOf } from '#shared/bearing/arrangement.ts'
import { cagedDesign } from '#shared/bearing/caged-design.ts'
import { type DesignOf, design } from '#shared/bearing/design.ts'
import type { DesignInput } from '#shared/bearing/design-input.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
import { thrustDesign } from '#shared/bearing/thrust-design.ts'
import type { StockInput } from '#shared/making/input.ts'
import { ok, type Result } from '#shared/result.ts'
import { ANSWER_TYPES } from '#src/api/arrangement-answer.ts'
import { refTo } from '#src/http/schema.ts'
import { toCagedDesignResponse } from './caged-present.ts'
import { CAGED_SCHEMAS, type CagedDesignResponse } from './caged-schema.ts'
import { toDesignResponse } from './present.ts'
import { toRollerDesignResponse } from './roller-present.ts'
import { ROLLER_SCHEMAS, type RollerDesignResponse } from './roller-schema.ts'
import { DESIGN_ANSWER_SCHEMAS, type DesignResponse } from './schema.ts'
import { withPlateStock, withStock } from './stock.ts'
import { toThrustDesignResponse } from './thrust-present.ts'
import { THRUST_SCHEMAS, type ThrustDesignResponse } from './thrust-schema.ts'

export const DESIGN_SCHEMAS = [...DESIGN_ANSWER_SCHEMAS, ...ROLLER_SCHEMAS, ...THRUST_SCHEMAS, ...CAGED_SCHEMAS]

/** An answer of each arrangement, by the media type that says which: all of them JSON. */
export const DESIGN_ANSWERS = {
  [ANSWER_TYPES.radial]: { schema: refTo<typeof DesignResponse>('DesignResponse') },
  [ANSWER_TYPES.thrust]: { schema: refTo<typeof ThrustDesignResponse>('ThrustDesignResponse') },
  [ANSWER_TYPES.roller]: { schema: refTo<typeof RollerDesignResponse>('RollerDesignResponse') },
  [ANSWER_TYPES.caged]: { schema: refTo<typeof CagedDesignResponse>('CagedDesignResponse') },
}

type Answer = DesignResponse | RollerDesignResponse | ThrustDesignResponse | CagedDesignResponse

/** A design as it is answered, and with where it comes from for the caller who asked for that. */
interface Answered {
  readonly answer: Answer
  readonly withStock: (stock: StockInput) => Answer
}
type Asked = (input: DesignInput) => Result<Answered, readonly Refusal[]>

const answering =
  <B, A extends Answer>(
    design: (input: DesignInput) => Result<DesignOf<B>, readonly Refusal[]>,
    to: (designed: DesignOf<B>) => A,
    stocked: (answer: A, bearing: B, stock: StockInput) => A,
  ): Asked =>
  (input) => {
    const designed = design(input)
    if (!designed.ok) return designed
    const answer = to(designed.value)
    return ok({ answer, withStock: (stock) => stocked(answer, designed.value.bearing, stock) })
  }

const ANSWERS: Readonly<Record<ArrangementName, Asked>> = {
  radial: answering(design, toDesignResponse, withStock),
  thrust: answering(thrustDesign, toThrustDesignResponse, withPlateStock),
  roller: answering(design, toRollerDesignResponse, withStock),
  caged: answering(cagedDesign, toCagedDesignResponse, withStock),
}

/** The design of an input, whatever its arrangement, as it is answered. */
export const answerTo: Asked = (input) => ANSWERS[nameOf(input)](input)
