import { type Static, Type } from 'typebox'
import { MOST_BALLS } from '#shared/bearing/bounds.ts'
import { FEWEST_BALLS } from '#shared/geometry/ring-of-balls.ts'
import { ANSWER_TYPES } from '#src/api/arrangement-answer.ts'
import { arrangement, type Groove, type OuterRingRequest, type PlatesRequest } from '#src/api/design-input.ts'
import { type Length, type NonNegativeLength, shownLength } from '#src/api/length.ts'
import type { UnitsName } from '#src/api/units.ts'
import { JSON_TYPE } from '#src/http/media-type.ts'
import { refTo } from '#src/http/schema.ts'

/** So many of each keep the whole table within what the event loop does in passing. */
const MOST_DIAMETERS = 24
const MOST_COUNTS = 20

export const SizeTableRequest = Type.Object(
  {
    units: refTo<typeof UnitsName>('Units'),
    arrangement: Type.Optional(arrangement),
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
    outerRing: Type.Optional(refTo<typeof OuterRingRequest>('OuterRingRequest')),
    plates: Type.Optional(refTo<typeof PlatesRequest>('PlatesRequest')),
    groove: Type.Optional(refTo<typeof Groove>('Groove')),
    ballGap: Type.Optional(refTo<typeof NonNegativeLength>('NonNegativeLength')),
  },
  {
    $id: 'SizeTableRequest',
    description: 'Ball diameters × counts; the rest as in a design, and with the same defaults.',
    additionalProperties: false,
  },
)
export type SizeTableRequest = Static<typeof SizeTableRequest>

const RING = {
  diameter: shownLength('Ball diameter.'),
  count: Type.Integer({ description: 'Ball count.' }),
  closedPitchRadius: shownLength('Pitch radius at which the balls exactly close.'),
  pitchRadius: shownLength('Pitch radius that leaves `ballGap`.'),
  pitchDiameter: shownLength('Twice that.'),
  ballGap: shownLength('Gap between the last ball and the first.'),
  gaugeDiameter: shownLength('Plug that fits inside the seated balls.'),
}

export const SizeTableRow = Type.Object(
  {
    ...RING,
    landDiameter: shownLength("The outer ring's hole."),
    grooveBottomDiameter: shownLength("Across the bottoms of the outer ring's groove."),
    outsideDiameter: shownLength("The outer ring's outside."),
    gapPerGrooveDepth: Type.Number({ description: 'How much the ball gap opens per unit of groove depth.' }),
  },
  { $id: 'SizeTableRow' },
)
export type SizeTableRow = Static<typeof SizeTableRow>

export const SizeTableResponse = Type.Object(
  { units: refTo<typeof UnitsName>('Units'), rows: Type.Array(refTo<typeof SizeTableRow>('SizeTableRow')) },
  { $id: 'SizeTableResponse', description: 'A row for each diameter and count, counts running fastest.' },
)
export type SizeTableResponse = Static<typeof SizeTableResponse>

export const PlateSizeTableRow = Type.Object(
  {
    ...RING,
    outsideDiameter: shownLength('Of both plates.'),
    plateGap: shownLength('Space between the faces of the plates.'),
    height: shownLength('Over both plates.'),
    gapPerPitchRadius: Type.Number({
      description: "How much the ball gap opens per unit of the groove circle's radius.",
    }),
  },
  { $id: 'PlateSizeTableRow' },
)
export type PlateSizeTableRow = Static<typeof PlateSizeTableRow>

export const ThrustSizeTableResponse = Type.Object(
  { units: refTo<typeof UnitsName>('Units'), rows: Type.Array(refTo<typeof PlateSizeTableRow>('PlateSizeTableRow')) },
  { $id: 'ThrustSizeTableResponse', description: 'The same of turntables.' },
)
export type ThrustSizeTableResponse = Static<typeof ThrustSizeTableResponse>

export const SIZE_TABLE_SCHEMAS = [
  SizeTableRow,
  SizeTableRequest,
  SizeTableResponse,
  PlateSizeTableRow,
  ThrustSizeTableResponse,
]

export const CSV_TYPE = 'text/csv'

/** Rollers answer as balls in rings do. */
export const ANSWERS = {
  [JSON_TYPE]: { schema: refTo<typeof SizeTableResponse>('SizeTableResponse') },
  [ANSWER_TYPES.thrust]: { schema: refTo<typeof ThrustSizeTableResponse>('ThrustSizeTableResponse') },
  [CSV_TYPE]: { schema: Type.String({ description: 'The same table, RFC 4180, the unit in each heading.' }) },
}
