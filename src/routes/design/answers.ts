import type { ArrangementName } from '#shared/bearing/arrangement.ts'
import { refTo } from '#src/http/schema.ts'
import { ANSWER_TYPES } from '#src/wire/arrangement-answer.ts'
import { ROLLER_SCHEMAS, type RollerDesignResponse } from './roller-schema.ts'
import { toRollerDesignResponse } from './roller-translate.ts'
import { DESIGN_ANSWER_SCHEMAS, type DesignResponse } from './schema.ts'
import { toDesignResponse } from './translate.ts'

export const DESIGN_SCHEMAS = [...DESIGN_ANSWER_SCHEMAS, ...ROLLER_SCHEMAS]

/** An answer of each arrangement, by the media type that says which: all of them JSON. */
export const DESIGN_ANSWERS = {
  [ANSWER_TYPES.radial]: { schema: refTo<typeof DesignResponse>('DesignResponse') },
  [ANSWER_TYPES.roller]: { schema: refTo<typeof RollerDesignResponse>('RollerDesignResponse') },
}

export const TO_ANSWER = {
  radial: toDesignResponse,
  roller: toRollerDesignResponse,
} as const satisfies Readonly<Record<ArrangementName, unknown>>
