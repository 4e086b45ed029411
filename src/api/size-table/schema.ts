import { type Static, Type } from 'typebox'
import { ARRANGEMENTS } from '#shared/bearing/arrangements.ts'
import { MOST_BALLS } from '#shared/bearing/fields.ts'
import { FEWEST_BALLS } from '#shared/geometry/ring-of-balls.ts'
import { SERVED, type Served, SHARED_NAMES } from '#shared/questions/size-table/arrangements/by-name.ts'
import { answerUnion } from '#src/api/answer.ts'
import { type RequestByArrangement, requestTag, requestUnion } from '#src/api/design-input.ts'
import { propertiesOf } from '#src/api/fields.ts'
import type { Length } from '#src/api/length.ts'
import { text } from '#src/api/schema.ts'
import { ROWS } from '#src/api/size-table/arrangements/by-name.ts'
import type { UnitsName } from '#src/api/units.ts'
import { JSON_TYPE } from '#src/http/media-type.ts'
import { refTo } from '#src/http/schema.ts'
import { capitalised } from '#src/words/figure.ts'
import { TERMS } from '#src/words/terms.ts'
import { ROWS_DESCRIPTION } from './row.ts'

/** So many of each keep the whole table within what the event loop does in passing. */
const MOST_DIAMETERS = 24
const MOST_COUNTS = 20

const LISTS = {
  units: refTo<typeof UnitsName>('Units'),
  diameters: Type.Array(refTo<typeof Length>('Length'), {
    minItems: 1,
    maxItems: MOST_DIAMETERS,
    description: 'Ball diameters.',
  }),
  counts: Type.Array(Type.Integer({ minimum: FEWEST_BALLS, maximum: MOST_BALLS }), {
    minItems: 1,
    maxItems: MOST_COUNTS,
    description: 'Ball counts.',
  }),
}

const requestOf = (arrangement: Served) => {
  const { fields } = ARRANGEMENTS[arrangement]
  const kept = Object.entries(propertiesOf(fields.fields)).filter(([name]) =>
    SHARED_NAMES.some((each) => each === name),
  )
  const foreign = SHARED_NAMES.filter((name) => !Object.hasOwn(fields.fields, name))
  return Type.Object(
    { ...LISTS, arrangement: requestTag(arrangement, fields), ...Object.fromEntries(kept) },
    {
      $id: `${capitalised(arrangement)}SizeTableRequest`,
      description: fields.means,
      additionalProperties: false,
      'x-things': TERMS[arrangement].bearings,
      'x-foreign': foreign,
    },
  )
}
const REQUESTS = SERVED.map(requestOf)

export type SizeTableRequest = {
  [Name in Served]: { arrangement: Name; diameters: Length[]; counts: number[] } & Pick<
    RequestByArrangement[Name],
    'units' | Extract<keyof RequestByArrangement[Name], (typeof SHARED_NAMES)[number]>
  >
}[Served]

export const SizeTableRequest = requestUnion<SizeTableRequest>(
  'SizeTableRequest',
  'Ball diameters and counts. All other fields are those of a design, with the same defaults.',
  REQUESTS,
)

const rows = Object.values(ROWS)

export const SizeTableResponse = answerUnion(
  'SizeTableResponse',
  ROWS_DESCRIPTION,
  ...rows.map(({ Response }) => Response),
)
export type SizeTableResponse = Static<typeof SizeTableResponse>

export const SIZE_TABLE_SCHEMAS = [
  ...REQUESTS,
  SizeTableRequest,
  ...rows.map(({ Row }) => Row),
  ...rows.map(({ Response }) => Response),
  SizeTableResponse,
]

export const CSV_TYPE = 'text/csv'

export const ANSWERS = {
  [JSON_TYPE]: { schema: refTo<typeof SizeTableResponse>('SizeTableResponse') },
  [CSV_TYPE]: {
    schema: text('The same table as CSV (RFC 4180), with the unit in each heading.'),
  },
}
