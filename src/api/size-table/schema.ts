import { type Static, Type } from 'typebox'
import { ARRANGEMENTS } from '#shared/bearing/arrangements.ts'
import { MOST_BALLS } from '#shared/bearing/fields.ts'
import { FEWEST_BALLS } from '#shared/geometry/ring-of-balls.ts'
import { SHARED_NAMES, type SIZE_TABLE } from '#shared/questions/size-table/size-table.ts'
import { answerOf, answerUnion } from '#src/api/answer.ts'
import { type RequestByArrangement, requestTag, requestUnion } from '#src/api/design-input.ts'
import { propertiesOf } from '#src/api/fields.ts'
import { type Length, shownLength } from '#src/api/length.ts'
import { shownNumber } from '#src/api/number.ts'
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

const requestOf = <Name extends (typeof SIZE_TABLE.serves)[number]>(arrangement: Name, $id: string) => {
  const { fields } = ARRANGEMENTS[arrangement]
  const kept = Object.entries(propertiesOf(fields.fields)).filter(([name]) =>
    SHARED_NAMES.some((each) => each === name),
  )
  const foreign = SHARED_NAMES.filter((name) => !Object.hasOwn(fields.fields, name))
  return Type.Object(
    { ...LISTS, arrangement: requestTag(arrangement, fields), ...Object.fromEntries(kept) },
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
    'units' | Extract<keyof RequestByArrangement[Name], (typeof SHARED_NAMES)[number]>
  >
}[(typeof SIZE_TABLE.serves)[number]]

export const SizeTableRequest = requestUnion<SizeTableRequest>(
  'SizeTableRequest',
  'Ball diameters and counts. All other fields are those of a design, with the same defaults.',
  REQUESTS,
)

const RING = {
  balls: Type.Object(
    { count: Type.Integer({ description: 'Number of balls or rollers.' }), diameter: shownLength('Nominal diameter.') },
    { description: 'The balls, as in a design.' },
  ),
  closedPitchRadius: shownLength('Pitch radius at which the balls exactly close.'),
  pitchRadius: shownLength('Pitch radius that leaves `ballGap`.'),
  pitchDiameter: shownLength('Pitch diameter: twice the pitch radius.'),
  ballGap: shownLength('Gap between the last ball and the first.'),
  gapPerPitchRadius: shownNumber('Change of the ball gap per unit of pitch radius.'),
  gauge: Type.Object(
    { nominalDiameter: shownLength('Diameter of the plug that fits inside the seated balls.') },
    { description: 'The gauge of the outer groove.' },
  ),
}

const outsideDiameter = shownLength('Outside diameter.')

export const RadialSizeTableRow = Type.Object(
  {
    ...RING,
    gapPerGrooveDepth: shownNumber('Change of the ball gap per unit of groove depth.'),
    outerRing: Type.Object(
      {
        outsideDiameter,
        landDiameter: shownLength('Diameter of the land, the hole of the ring.'),
        grooveBottomDiameter: shownLength('Diameter across the bottoms of the groove.'),
      },
      { description: 'Sizes of the outer ring.' },
    ),
  },
  { $id: 'RadialSizeTableRow', description: 'The sizes of a radial bearing for one ball diameter and count.' },
)
export type RadialSizeTableRow = Static<typeof RadialSizeTableRow>

export const RollerSizeTableRow = Type.Object(
  {
    ...RING,
    outerRing: Type.Object(
      {
        outsideDiameter,
        trackDiameter: shownLength('Diameter of the plain cylinder on which the rollers run.'),
      },
      { description: 'Sizes of the outer ring.' },
    ),
  },
  { $id: 'RollerSizeTableRow', description: 'The sizes of a roller bearing for one ball diameter and count.' },
)
export type RollerSizeTableRow = Static<typeof RollerSizeTableRow>

export const ThrustSizeTableRow = Type.Object(
  {
    ...RING,
    plates: Type.Object({ outsideDiameter }, { description: 'Sizes of both plates.' }),
    plateGap: shownLength('Space between the faces of the plates.'),
    height: shownLength('Height over both plates.'),
  },
  { $id: 'ThrustSizeTableRow', description: 'The sizes of a turntable for one ball diameter and count.' },
)
export type ThrustSizeTableRow = Static<typeof ThrustSizeTableRow>

const ROWS = 'A row for each diameter and count: all counts of the first diameter, then of the next.'
const inputRef = refTo<typeof SizeTableRequest>('SizeTableRequest')

const RadialSizeTableResponse = Type.Object(
  answerOf(['radial'], inputRef, { rows: Type.Array(refTo<typeof RadialSizeTableRow>('RadialSizeTableRow')) }),
  { $id: 'RadialSizeTableResponse', description: ROWS },
)
const RollerSizeTableResponse = Type.Object(
  answerOf(['roller'], inputRef, { rows: Type.Array(refTo<typeof RollerSizeTableRow>('RollerSizeTableRow')) }),
  { $id: 'RollerSizeTableResponse', description: ROWS },
)
const ThrustSizeTableResponse = Type.Object(
  answerOf(['thrust'], inputRef, { rows: Type.Array(refTo<typeof ThrustSizeTableRow>('ThrustSizeTableRow')) }),
  { $id: 'ThrustSizeTableResponse', description: ROWS },
)

export const SizeTableResponse = answerUnion(
  'SizeTableResponse',
  ROWS,
  RadialSizeTableResponse,
  RollerSizeTableResponse,
  ThrustSizeTableResponse,
)
export type SizeTableResponse = Static<typeof SizeTableResponse>

export const SIZE_TABLE_SCHEMAS = [
  ...REQUESTS,
  SizeTableRequest,
  RadialSizeTableRow,
  RollerSizeTableRow,
  ThrustSizeTableRow,
  RadialSizeTableResponse,
  RollerSizeTableResponse,
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
