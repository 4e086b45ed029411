import { type Static, Type } from 'typebox'
import { MOST_BALLS } from '#shared/bearing/fields.ts'
import { readingError } from '#shared/bearing/fit-correction/defaults.ts'
import { PLUG_RESULTS, type PlugResult, type Reading, type ReadingKind } from '#shared/bearing/fit-correction/input.ts'
import type { ReadingError } from '#shared/statistics/likelihood.ts'
import type { Units } from '#shared/units/length.ts'
import { length, type NonNegativeLength, nonNegativeLength, toMm } from '#src/api/length.ts'

/** Both may be given. Neither: what is usual for the kind, and echoed. */
const error = {
  graduation: Type.Optional(nonNegativeLength('The reading was rounded to this: half of it either way, evenly.')),
  standardUncertainty: Type.Optional(nonNegativeLength("The hand's own error, normally distributed.")),
}

const closed = ($id: string, description: string) => ({ $id, description, additionalProperties: false })

const BallGapReading = Type.Object(
  { kind: Type.Literal('ball-gap'), value: nonNegativeLength('Gap between the last ball and the first.'), ...error },
  closed('BallGapReading', 'All balls are in and pushed together, the gap is read.'),
)
const LastBallOpeningReading = Type.Object(
  {
    kind: Type.Literal('last-ball-opening'),
    value: length('Straight opening between the first and the last of the balls in place.'),
    ...error,
  },
  closed(
    'LastBallOpeningReading',
    'One ball is left out because it will not go in. At exact closure the opening is less than a ball.',
  ),
)
const LastBallRefusedReading = Type.Object(
  { kind: Type.Literal('last-ball-refused') },
  closed('LastBallRefusedReading', 'The last ball will not go in; nothing was measured.'),
)
const PlugReading = Type.Object(
  {
    kind: Type.Literal('plug'),
    diameter: length('Of the turned disc.'),
    result: Type.Unsafe<PlugResult>(
      Type.Enum(PLUG_RESULTS, { type: 'string', description: 'How it went in between the seated balls.' }),
    ),
    ...error,
  },
  closed('PlugReading', 'A turned disc was tried inside the seated balls.'),
)
const GrooveBottomDiameterReading = Type.Object(
  { kind: Type.Literal('groove-bottom-diameter'), value: length('Across the bottoms of the groove.'), ...error },
  closed('GrooveBottomDiameterReading', 'The groove was measured with a caliper, of the outer or of the inner ring.'),
)
const GrooveDepthReading = Type.Object(
  {
    kind: Type.Literal('groove-depth'),
    value: length('Land to groove bottom.'),
    landDiameter: length('As it was measured.'),
    ...error,
  },
  closed('GrooveDepthReading', 'The depth was measured from the land.'),
)
const BallRowReading = Type.Object(
  {
    kind: Type.Literal('ball-row'),
    count: Type.Integer({ minimum: 1, maximum: MOST_BALLS, description: 'Balls in the row.' }),
    value: length('Length of the row, the balls touching.'),
    ...error,
  },
  closed('BallRowReading', 'Balls laid in a straight channel: reads their mean so many times finer.'),
)
const RadialPlayReading = Type.Object(
  {
    kind: Type.Literal('radial-play'),
    value: nonNegativeLength('Whole travel of the inner ring from side to side.'),
    ...error,
  },
  closed('RadialPlayReading', 'For the inner ring.'),
)
const BindsReading = Type.Object(
  { kind: Type.Literal('binds') },
  closed('BindsReading', 'For the inner ring: it will not turn freely, or not go in.'),
)

export const READING_SCHEMAS = [
  BallGapReading,
  LastBallOpeningReading,
  LastBallRefusedReading,
  PlugReading,
  GrooveBottomDiameterReading,
  GrooveDepthReading,
  BallRowReading,
  RadialPlayReading,
  BindsReading,
]

type ReadingRequest = Static<(typeof READING_SCHEMAS)[number]>

/** The `$id` of a schema, which its type does not know of. */
const idOf = (schema: object): string => String(Object.getOwnPropertyDescriptor(schema, '$id')?.value)

/** Which readings there are, told apart by `kind`. */
export const ReadingRequest = Type.Unsafe<ReadingRequest>({
  $id: 'ReadingRequest',
  description: 'What was read at the groove as it is.',
  type: 'object',
  required: ['kind'],
  discriminator: { propertyName: 'kind' },
  oneOf: READING_SCHEMAS.map((schema) => ({ $ref: idOf(schema) })),
})

/** A reading in millimetres, its error filled in where it was left open. */
export function toReading(reading: ReadingRequest, units: Units): Reading {
  switch (reading.kind) {
    case 'last-ball-refused':
    case 'binds':
      return { kind: reading.kind }
    case 'plug':
      return {
        kind: 'plug',
        diameter: toMm(reading.diameter, units),
        result: reading.result,
        error: toError(reading, units),
      }
    case 'groove-depth':
      return {
        kind: 'groove-depth',
        value: toMm(reading.value, units),
        landDiameter: toMm(reading.landDiameter, units),
        error: toError(reading, units),
      }
    case 'ball-row':
      return {
        kind: 'ball-row',
        count: reading.count,
        value: toMm(reading.value, units),
        error: toError(reading, units),
      }
    default:
      return { kind: reading.kind, value: toMm(reading.value, units), error: toError(reading, units) }
  }
}

interface Stated {
  readonly kind: ReadingKind
  readonly graduation?: NonNegativeLength
  readonly standardUncertainty?: NonNegativeLength
}

const toError = ({ kind, graduation, standardUncertainty }: Stated, units: Units): ReadingError =>
  readingError(kind, units, {
    ...(graduation === undefined ? {} : { graduation: toMm(graduation, units) }),
    ...(standardUncertainty === undefined ? {} : { standardUncertainty: toMm(standardUncertainty, units) }),
  })
