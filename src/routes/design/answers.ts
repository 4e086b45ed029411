import type { ArrangementName } from '#shared/bearing/arrangement.ts'
import { nameOf } from '#shared/bearing/arrangement.ts'
import { cagedDesign } from '#shared/bearing/caged-design.ts'
import { design } from '#shared/bearing/design.ts'
import type { DesignInput } from '#shared/bearing/design-input.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
import { thrustDesign } from '#shared/bearing/thrust-design.ts'
import { ok, type Result } from '#shared/result.ts'
import { refTo } from '#src/http/schema.ts'
import { ANSWER_TYPES } from '#src/wire/arrangement-answer.ts'
import { CAGED_SCHEMAS, type CagedDesignResponse } from './caged-schema.ts'
import { toCagedDesignResponse } from './caged-translate.ts'
import { ROLLER_SCHEMAS, type RollerDesignResponse } from './roller-schema.ts'
import { toRollerDesignResponse } from './roller-translate.ts'
import { DESIGN_ANSWER_SCHEMAS, type DesignResponse } from './schema.ts'
import { THRUST_SCHEMAS, type ThrustDesignResponse } from './thrust-schema.ts'
import { toThrustDesignResponse } from './thrust-translate.ts'
import { toDesignResponse } from './translate.ts'

export const DESIGN_SCHEMAS = [...DESIGN_ANSWER_SCHEMAS, ...ROLLER_SCHEMAS, ...THRUST_SCHEMAS, ...CAGED_SCHEMAS]

/** An answer of each arrangement, by the media type that says which: all of them JSON. */
export const DESIGN_ANSWERS = {
  [ANSWER_TYPES.radial]: { schema: refTo<typeof DesignResponse>('DesignResponse') },
  [ANSWER_TYPES.thrust]: { schema: refTo<typeof ThrustDesignResponse>('ThrustDesignResponse') },
  [ANSWER_TYPES.roller]: { schema: refTo<typeof RollerDesignResponse>('RollerDesignResponse') },
  [ANSWER_TYPES.caged]: { schema: refTo<typeof CagedDesignResponse>('CagedDesignResponse') },
}

type Answer = DesignResponse | RollerDesignResponse | ThrustDesignResponse | CagedDesignResponse
type Answered = Result<Answer, readonly Refusal[]>

const answered = <D>(designed: Result<D, readonly Refusal[]>, to: (design: D) => Answer): Answered =>
  designed.ok ? ok(to(designed.value)) : designed

const ANSWERS: Readonly<Record<ArrangementName, (input: DesignInput) => Answered>> = {
  radial: (input) => answered(design(input), toDesignResponse),
  thrust: (input) => answered(thrustDesign(input), toThrustDesignResponse),
  roller: (input) => answered(design(input), toRollerDesignResponse),
  caged: (input) => answered(cagedDesign(input), toCagedDesignResponse),
}

/** The design of an input, whatever its arrangement, as it is answered. */
export const answerTo = (input: DesignInput): Answered => ANSWERS[nameOf(input)](input)
