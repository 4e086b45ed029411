import { type Static, Type } from 'typebox'
import { MOST_BALLS } from '#shared/bearing/fields.ts'
import { readingError } from '#shared/bearing/fit-correction/defaults.ts'
import { PLUG_RESULTS, type PlugResult, type Reading, type ReadingKind } from '#shared/bearing/fit-correction/input.ts'
import type { ReadingError } from '#shared/statistics/likelihood.ts'
import type { Units } from '#shared/units/length.ts'
import { length, type NonNegativeLength, nonNegativeLength, toMm } from '#src/api/length.ts'

/** Both may be given. Neither: what is usual for the kind, and echoed. */
const error = {
  graduation: Type.Optional(
    nonNegativeLength('The step of the scale that you read: the true value lies within half a step either way.'),
  ),
  standardUncertainty: Type.Optional(nonNegativeLength('Standard deviation of your own error in reading.')),
}

const kind = <const K extends ReadingKind>(name: K) => Type.Literal(name, { description: 'The kind of reading.' })

const closed = ($id: string, description: string) => ({ $id, description, additionalProperties: false })

const BallGapReading = Type.Object(
  { kind: kind('ball-gap'), value: nonNegativeLength('Gap between the last ball and the first.'), ...error },
  closed('BallGapReading', 'All balls are in and pushed together, and you measured the gap.'),
)
const LastBallOpeningReading = Type.Object(
  {
    kind: kind('last-ball-opening'),
    value: length('Straight opening between the first and the last of the balls in place.'),
    ...error,
  },
  closed(
    'LastBallOpeningReading',
    'One or more balls are left out because they will not go in, and you measured the opening. At exact closure the opening is less than a ball.',
  ),
)
const LastBallRefusedReading = Type.Object(
  { kind: kind('last-ball-refused') },
  closed('LastBallRefusedReading', 'The last ball will not go in, and you measured nothing.'),
)
const PlugReading = Type.Object(
  {
    kind: kind('plug'),
    diameter: length('Diameter of the plug.'),
    result: Type.Unsafe<PlugResult>(
      Type.Enum(PLUG_RESULTS, { type: 'string', description: 'How the plug went in between the seated balls.' }),
    ),
    ...error,
  },
  closed('PlugReading', 'You tried a plug, a turned disc, inside the seated balls.'),
)
const GrooveBottomDiameterReading = Type.Object(
  { kind: kind('groove-bottom-diameter'), value: length('Diameter across the bottoms of the groove.'), ...error },
  closed('GrooveBottomDiameterReading', 'You measured the groove of the outer or the inner ring with a caliper.'),
)
const GrooveDepthReading = Type.Object(
  {
    kind: kind('groove-depth'),
    value: length('Depth from the land to the groove bottom.'),
    landDiameter: length('Diameter of the land, as you measured it.'),
    ...error,
  },
  closed('GrooveDepthReading', 'You measured the depth of the groove from the land.'),
)
const BallRowReading = Type.Object(
  {
    kind: kind('ball-row'),
    count: Type.Integer({ minimum: 1, maximum: MOST_BALLS, description: 'Number of balls in the row.' }),
    value: length('Length of the row, with the balls touching.'),
    ...error,
  },
  closed(
    'BallRowReading',
    'You laid balls in a straight channel and measured the row: this gives their mean diameter as many times finer as there are balls.',
  ),
)
const RadialPlayReading = Type.Object(
  {
    kind: kind('radial-play'),
    value: nonNegativeLength('Whole travel of the inner ring from side to side.'),
    ...error,
  },
  closed('RadialPlayReading', 'Inner ring: you measured its play.'),
)
const BindsReading = Type.Object(
  { kind: kind('binds') },
  closed('BindsReading', 'Inner ring: it does not turn freely, or does not go in.'),
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
  description: 'One reading, taken at the groove in its present state.',
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
