import type { TSchema } from 'typebox'
import { type ArrangementName, type Design, type DesignByArrangement, nameOf } from '#shared/bearing/arrangements.ts'
import { answerUnion } from '#src/api/answer.ts'
import { CAGED } from '#src/api/design/arrangements/caged.ts'
import { RADIAL } from '#src/api/design/arrangements/radial.ts'
import { ROLLER } from '#src/api/design/arrangements/roller.ts'
import { THRUST } from '#src/api/design/arrangements/thrust.ts'
import { MAKING_SCHEMAS } from '#src/api/design/making-schema.ts'
import { PART_SCHEMAS } from '#src/api/design/parts.ts'

/** The answer of each arrangement, with the schemas that it alone refers to. A new one: its file, and its line here. */
const ANSWERS = {
  radial: RADIAL,
  thrust: THRUST,
  roller: ROLLER,
  caged: CAGED,
} as const satisfies {
  readonly [Name in ArrangementName]: {
    readonly response: TSchema
    readonly schemas: readonly TSchema[]
    /** A design in the caller's units and in words, with what is needed to make it where the caller asked for that. */
    toResponse(design: DesignByArrangement[Name]): object
  }
}
type Answers = typeof ANSWERS
type Answer = ReturnType<Answers[ArrangementName]['toResponse']>

export const DesignResponse = answerUnion(
  'DesignResponse',
  'Every size to cut, the gauges, and what to watch.',
  ...Object.values(ANSWERS).map(({ response }) => response),
)

export const DESIGN_SCHEMAS: readonly TSchema[] = [
  ...MAKING_SCHEMAS,
  ...PART_SCHEMAS,
  ...Object.values(ANSWERS).flatMap(({ schemas }): readonly TSchema[] => schemas),
  DesignResponse,
]

/** A design as it is answered, with what is needed to make it where the caller asked for that. */
export function answerOf(design: Design): Answer {
  // The answer and the design are of one arrangement.
  const { toResponse } = ANSWERS[nameOf(design.bearing.resolved.input)] as {
    toResponse(design: Design): Answer
  }
  return toResponse(design)
}
