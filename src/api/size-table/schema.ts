import { type Static, Type } from 'typebox'
import { ARRANGEMENTS } from '#shared/bearing/arrangements.ts'
import { MOST_BALLS } from '#shared/bearing/fields.ts'
import { FEWEST_BALLS } from '#shared/geometry/ring-of-balls.ts'
import type { SIZE_TABLE } from '#shared/questions/size-table/size-table.ts'
import { answerUnion, arrangementTag } from '#src/api/answer.ts'
import { type RequestByArrangement, requestUnion } from '#src/api/design-input.ts'
import { propertiesOf } from '#src/api/fields.ts'
import { type Length, shownLength } from '#src/api/length.ts'
import type { UnitsName } from '#src/api/units.ts'
import { JSON_TYPE } from '#src/http/media-type.ts'
import { refTo } from '#src/http/schema.ts'
import { TERMS } from '#src/words/terms.ts'

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

/** The fields of a design that move a row: the rest is the same in every row, or needs a bore. */
const KEPT = ['outerRing', 'plates', 'groove', 'ballGap'] as const

const requestOf = <Name extends (typeof SIZE_TABLE.serves)[number]>(arrangement: Name, $id: string) => {
  const { fields } = ARRANGEMENTS[arrangement]
  const kept = Object.entries(propertiesOf(fields.fields)).filter(([name]) => KEPT.some((each) => each === name))
  const foreign = KEPT.filter((name) => !Object.hasOwn(fields.fields, name))
  return Type.Object(
    { ...LISTS, arrangement: arrangementTag(arrangement), ...Object.fromEntries(kept) },
    {
      $id,
      description: fields.means,
      additionalProperties: false,
      'x-things': TERMS[arrangement].bearings,
      'x-foreign': foreign,
    },
  )
}
const REQUESTS = [
  requestOf('radial', 'RadialSizeTableRequest'),
  requestOf('thrust', 'ThrustSizeTableRequest'),
  requestOf('roller', 'RollerSizeTableRequest'),
] as const

export type SizeTableRequest = {
  [Name in (typeof SIZE_TABLE.serves)[number]]: { arrangement: Name; diameters: Length[]; counts: number[] } & Pick<
    RequestByArrangement[Name],
    'units' | Extract<keyof RequestByArrangement[Name], (typeof KEPT)[number]>
  >
}[(typeof SIZE_TABLE.serves)[number]]

export const SizeTableRequest = requestUnion<SizeTableRequest>(
  'SizeTableRequest',
  'Ball diameters and counts. All other fields are those of a design, with the same defaults.',
  REQUESTS,
)

const RING = {
  diameter: shownLength('Ball diameter.'),
  count: Type.Integer({ description: 'Ball count.' }),
  closedPitchRadius: shownLength('Pitch radius at which the balls close without a gap.'),
  pitchRadius: shownLength('Pitch radius that leaves `ballGap`.'),
  pitchDiameter: shownLength('Twice the pitch radius.'),
  ballGap: shownLength('Gap between the last ball and the first.'),
  gaugeDiameter: shownLength('The plug that fits inside the seated balls.'),
}

export const SizeTableRow = Type.Object(
  {
    ...RING,
    landDiameter: shownLength("The outer ring's hole."),
    grooveBottomDiameter: shownLength("Across the bottoms of the outer ring's groove."),
    outsideDiameter: shownLength("The outer ring's outside."),
    gapPerGrooveDepth: Type.Number({ description: 'Change of the ball gap per unit of groove depth.' }),
  },
  { $id: 'SizeTableRow', description: 'The sizes of one ball diameter and count.' },
)
export type SizeTableRow = Static<typeof SizeTableRow>

export const RingSizeTableResponse = Type.Object(
  {
    arrangement: arrangementTag('radial', 'roller'),
    units: refTo<typeof UnitsName>('Units'),
    rows: Type.Array(refTo<typeof SizeTableRow>('SizeTableRow')),
  },
  {
    $id: 'RingSizeTableResponse',
    description: 'A row for each diameter and count: all counts of the first diameter, then of the next.',
  },
)
export type RingSizeTableResponse = Static<typeof RingSizeTableResponse>

export const PlateSizeTableRow = Type.Object(
  {
    ...RING,
    outsideDiameter: shownLength('Outside diameter of both plates.'),
    plateGap: shownLength('Space between the faces of the plates.'),
    height: shownLength('Height over both plates.'),
    gapPerPitchRadius: Type.Number({
      description: 'Change of the ball gap per unit of the radius of the groove circle.',
    }),
  },
  { $id: 'PlateSizeTableRow', description: 'The sizes of a turntable for one ball diameter and count.' },
)
export type PlateSizeTableRow = Static<typeof PlateSizeTableRow>

export const ThrustSizeTableResponse = Type.Object(
  {
    arrangement: arrangementTag('thrust'),
    units: refTo<typeof UnitsName>('Units'),
    rows: Type.Array(refTo<typeof PlateSizeTableRow>('PlateSizeTableRow')),
  },
  { $id: 'ThrustSizeTableResponse', description: 'A row for each diameter and count of a turntable.' },
)
export type ThrustSizeTableResponse = Static<typeof ThrustSizeTableResponse>

export const SizeTableResponse = answerUnion(
  'SizeTableResponse',
  'A row for each diameter and count: all counts of the first diameter, then of the next.',
  RingSizeTableResponse,
  ThrustSizeTableResponse,
)
export type SizeTableResponse = Static<typeof SizeTableResponse>

export const SIZE_TABLE_SCHEMAS = [
  SizeTableRow,
  ...REQUESTS,
  SizeTableRequest,
  RingSizeTableResponse,
  PlateSizeTableRow,
  ThrustSizeTableResponse,
  SizeTableResponse,
]

export const CSV_TYPE = 'text/csv'

export const ANSWERS = {
  [JSON_TYPE]: { schema: refTo<typeof SizeTableResponse>('SizeTableResponse') },
  [CSV_TYPE]: {
    schema: Type.String({ description: 'The same table as CSV (RFC 4180), with the unit in each heading.' }),
  },
}
