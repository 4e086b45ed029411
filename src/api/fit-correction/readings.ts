import { type Static, Type } from 'typebox'
import { MOST_BALLS } from '#shared/bearing/fields.ts'
import type { PlugResult, Reading, ReadingKind } from '#shared/questions/fit/reading.ts'
import { readingError } from '#shared/questions/fit/reading-errors.ts'
import type { ReadingError } from '#shared/statistics/likelihood.ts'
import { mm, type Units } from '#shared/units/length.ts'
import { echo, length, type NonNegativeLength, nonNegativeLength, toMm } from '#src/api/length.ts'
import { choiceOf, namedRequest } from '#src/api/schema.ts'

/** The errors of one group of readings, with what is taken of them where neither is given. */
const errors = (hand: string, graduation?: string) => ({
  graduation: Type.Optional(
    nonNegativeLength(
      `The reading was rounded to this. Default: ${graduation === undefined ? '0' : `${graduation}; 0 where only \`standardUncertainty\` is given`}. The same figure read again says nothing new.`,
    ),
  ),
  standardUncertainty: Type.Optional(
    nonNegativeLength(
      `The error of the hand, a standard deviation. Default: ${hand}; a quarter of \`graduation\` where only that is given. Common practice, no source.`,
    ),
  ),
})
const RULE = errors('0.15 mm', '0.5 mm, or 1/32 in')
const CALIPER = errors('0.1 mm')
const FELT = errors('0.05 mm')

const kind = <const K extends ReadingKind>(name: K) => Type.Literal(name, { description: 'The kind of reading.' })

const BallGapReading = namedRequest(
  'BallGapReading',
  'All balls are in and pushed together, and the gap is measured.',
  { kind: kind('ball-gap'), value: nonNegativeLength('Gap between the last ball and the first.'), ...RULE },
)
const LastBallOpeningReading = namedRequest(
  'LastBallOpeningReading',
  'One ball or more is left out because it does not go in. With one left out, the opening at exact closure is less than a ball.',
  {
    kind: kind('last-ball-opening'),
    ballsLeftOut: Type.Optional(
      Type.Integer({
        minimum: 1,
        maximum: MOST_BALLS,
        description: 'Balls that are left out because they do not go in. Default: 1.',
      }),
    ),
    value: length('Straight opening between the first and the last of the balls in place.'),
    ...RULE,
  },
)
const LastBallRefusedReading = namedRequest(
  'LastBallRefusedReading',
  'The last ball does not go in; nothing was measured.',
  { kind: kind('last-ball-refused') },
)
const LastBallInReading = namedRequest(
  'LastBallInReading',
  'The last ball goes in; nothing was measured. A `ball-gap` says this as well.',
  { kind: kind('last-ball-in') },
)
const PlugReading = namedRequest(
  'PlugReading',
  'A turned disc was tried inside the balls seated in the outer ring. It serves both rings.',
  {
    kind: kind('plug'),
    diameter: length('Diameter of the plug.'),
    result: choiceOf<PlugResult>('Fit of the plug inside the seated balls.', ['enters', 'snug', 'refuses']),
    ...FELT,
  },
)
const GrooveBottomDiameterReading = namedRequest(
  'GrooveBottomDiameterReading',
  'The groove or the track that is being cut was measured with a caliper.',
  {
    kind: kind('groove-bottom-diameter'),
    value: length('Diameter across the bottoms of the groove, or across the track.'),
    ...CALIPER,
  },
)
const GrooveDepthReading = namedRequest('GrooveDepthReading', 'The depth of the groove was measured from the land.', {
  kind: kind('groove-depth'),
  value: length('Depth from the land to the groove bottom.'),
  landDiameter: length('Diameter of the land, as you measured it.'),
  ...CALIPER,
})
const BallRowReading = namedRequest(
  'BallRowReading',
  'Balls in a straight channel: gives their mean diameter. It says nothing about the groove.',
  {
    kind: kind('ball-row'),
    count: Type.Integer({ minimum: 1, maximum: MOST_BALLS, description: 'Balls in the row.' }),
    value: length('Length of the row, the balls touching.'),
    ...RULE,
  },
)
const RadialPlayReading = namedRequest('RadialPlayReading', 'Inner ring: its play.', {
  kind: kind('radial-play'),
  value: nonNegativeLength('Whole travel of the inner ring from side to side.'),
  ...FELT,
})
const BindsReading = namedRequest('BindsReading', 'Inner ring: it does not turn freely, or does not go in.', {
  kind: kind('binds'),
})

export const READING_SCHEMAS = [
  BallGapReading,
  LastBallOpeningReading,
  LastBallRefusedReading,
  LastBallInReading,
  PlugReading,
  GrooveBottomDiameterReading,
  GrooveDepthReading,
  BallRowReading,
  RadialPlayReading,
  BindsReading,
]

export type ReadingRequest = Static<(typeof READING_SCHEMAS)[number]>

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
    case 'last-ball-in':
    case 'binds':
      return { kind: reading.kind }
    case 'plug':
      return {
        kind: 'plug',
        diameter: toMm(reading.diameter, units),
        result: reading.result,
        error: toError(reading, units),
      }
    case 'last-ball-opening':
      return {
        kind: 'last-ball-opening',
        ballsLeftOut: reading.ballsLeftOut ?? 1,
        value: toMm(reading.value, units),
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
  readonly kind: Exclude<ReadingKind, 'last-ball-refused' | 'last-ball-in' | 'binds'>
  readonly graduation?: NonNegativeLength
  readonly standardUncertainty?: NonNegativeLength
}

function toError({ kind, graduation, standardUncertainty }: Stated, units: Units): ReadingError {
  const error = readingError(kind, units, {
    ...(graduation === undefined ? {} : { graduation: toMm(graduation, units) }),
    ...(standardUncertainty === undefined ? {} : { standardUncertainty: toMm(standardUncertainty, units) }),
  })
  if (error === undefined) throw new RangeError(`kind must have an error, got ${kind}`)
  return error
}

/** A reading as the caller could have written it, with nothing left out: the way back of `toReading`. */
export function toReadingRequest(reading: Reading, units: Units): ReadingRequest {
  const size = (length: number) => echo(mm(length), units)
  if (!('error' in reading)) return { kind: reading.kind }
  const { graduation, standardUncertainty } = reading.error
  const error = { graduation: size(graduation), standardUncertainty: size(standardUncertainty) }
  switch (reading.kind) {
    case 'plug':
      return { kind: 'plug', diameter: size(reading.diameter), result: reading.result, ...error }
    case 'last-ball-opening':
      return { kind: reading.kind, ballsLeftOut: reading.ballsLeftOut, value: size(reading.value), ...error }
    case 'groove-depth':
      return { kind: reading.kind, value: size(reading.value), landDiameter: size(reading.landDiameter), ...error }
    case 'ball-row':
      return { kind: reading.kind, count: reading.count, value: size(reading.value), ...error }
    default:
      return { kind: reading.kind, value: size(reading.value), ...error }
  }
}
