import { type Static, Type } from 'typebox'
import { FEWEST_TRIALS, MOST_TRIALS } from '#shared/questions/tolerance/defaults.ts'
import { LIMIT_FIELDS, METHOD_FIELDS, TRIALS_DEFAULT } from '#shared/questions/tolerance/fields.ts'
import { designRef } from '#src/api/design-input.ts'
import { optionalField, propertiesOf, type RequestOf } from '#src/api/fields.ts'
import { namedRequest } from '#src/api/schema.ts'
import { refTo } from '#src/http/schema.ts'
import type { ContributorsRequest } from './contributors.ts'

type Limits = RequestOf<typeof LIMIT_FIELDS>
export const ToleranceLimits = Type.Unsafe<Limits>(
  namedRequest('ToleranceLimits', 'Limits between which a bearing fits.', propertiesOf(LIMIT_FIELDS)),
)

/** No trials where the figures can be found more exactly without. */
export const WHEN_NEEDED = 'when-needed'

const trials = Type.Unsafe<number | 'auto' | typeof WHEN_NEEDED>({
  anyOf: [
    { type: 'integer', minimum: FEWEST_TRIALS, maximum: MOST_TRIALS },
    { type: 'string', enum: ['auto', WHEN_NEEDED] },
  ],
  description: `Number of bearings to simulate, each closed exactly. \`auto\` goes on until the figures are stable to \`significantDigits\`, checked after every 100000. Default: ${TRIALS_DEFAULT.stated}.`,
})

const request = {
  trials: Type.Optional(trials),
  significantDigits: optionalField(METHOD_FIELDS.significantDigits),
  seed: optionalField(METHOD_FIELDS.seed),
  overshootRisk: optionalField(METHOD_FIELDS.overshootRisk),
}

export const ToleranceCheckRequest = namedRequest(
  'ToleranceCheckRequest',
  'A bearing, and what of it may differ from the design. `design.units` governs request and answer. Where `design.making` states woods and a climate, the weather is one more thing that differs: each bearing meets one state of the year, all states alike. Without them the wood stays as on the day of making.',
  {
    design: designRef,
    contributors: refTo<typeof ContributorsRequest>('ContributorsRequest'),
    limits: Type.Optional(refTo<typeof ToleranceLimits>('ToleranceLimits')),
    ...request,
  },
)
export type ToleranceCheckRequest = Static<typeof ToleranceCheckRequest>
