import { type Static, Type } from 'typebox'
import { type Bounds, LENGTH, LENGTH_OR_NONE } from '#shared/bearing/field.ts'
import { inUnits, lengthOf, type Mm, type Units } from '#shared/units/length.ts'
import { LONGEST_LENGTH_TEXT, parseLength } from '#shared/units/parse-length.ts'
import { roundedIn } from '#shared/units/rounded.ts'
import { refTo } from '#src/http/schema.ts'
import type { TextFormats } from '#src/http/text-format.ts'
import { LENGTH_EXAMPLES, LENGTH_FAULTS, LENGTH_NOUN, lengthOutside } from '#src/words/length.ts'

const WRITTEN =
  'a number in `units`, or text: a decimal, a fraction or a mixed fraction, with a unit of its own if you like'
const EXAMPLES = '`0.625`, `"5/8"`, `"1 3/16"`, `"16 mm"`'

/** Limits of each kind of length, in the units of the input. The names are those of the formats. */
const BOUNDS = {
  length: LENGTH,
  'non-negative-length': LENGTH_OR_NONE,
  'signed-length': { min: -LENGTH.max, max: LENGTH.max },
} as const

const lengthSchema = (format: keyof typeof BOUNDS, $id: string) => {
  const { min, max } = BOUNDS[format]
  return Type.Unsafe<number | string>({
    $id,
    type: ['number', 'string'],
    format,
    minimum: min,
    maximum: max,
    minLength: 1,
    maxLength: LONGEST_LENGTH_TEXT,
    description: `A length from ${min} to ${max}: ${WRITTEN} (${EXAMPLES}).`,
  })
}

/** A length above 0, as a caller writes it. */
export const Length = lengthSchema('length', 'Length')
export type Length = Static<typeof Length>

/** A length that may be 0: gaps, play, scatter, film. */
export const NonNegativeLength = lengthSchema('non-negative-length', 'NonNegativeLength')
export type NonNegativeLength = Static<typeof NonNegativeLength>

/** A length that may be below 0: a gap of a ring that does not close. */
export const SignedLength = lengthSchema('signed-length', 'SignedLength')
export type SignedLength = Static<typeof SignedLength>

declare const shown: unique symbol
/** A length in the units that the caller asked for. Only `show` makes one. */
export type ShownLength = number & { readonly [shown]: true }
export const ShownLength = Type.Unsafe<ShownLength>(
  Type.Number({ $id: 'ShownLength', description: 'A length in the `units` of the answer.' }),
)

/* Fields of a schema that are a length of some kind, each with a description of its own. */
export const length = (description: string) => Type.Unsafe<Length>({ ...refTo<typeof Length>('Length'), description })
export const nonNegativeLength = (description: string) =>
  Type.Unsafe<NonNegativeLength>({ ...refTo<typeof NonNegativeLength>('NonNegativeLength'), description })
export const signedLength = (description: string) =>
  Type.Unsafe<SignedLength>({ ...refTo<typeof SignedLength>('SignedLength'), description })
export const shownLength = (description: string) =>
  Type.Unsafe<ShownLength>({ ...refTo<typeof ShownLength>('ShownLength'), description })

/**
 * A computed length as an answer states it: to 1e-6 mm or 1e-7 in.
 *
 * @throws RangeError for a length that is not finite: a bug must not reach a caller as `null`
 */
export function show(length: Mm, units: Units): ShownLength {
  if (!Number.isFinite(length)) throw new RangeError(`length must be finite, got ${length}`)
  return roundedIn(length, units) as ShownLength
}

/** The lengths that some fields of an answer name, each as an answer states it. */
export function showLengths<Fields extends object>(
  fields: Fields,
  lengths: { readonly [Name in keyof Fields]: Mm },
  units: Units,
): { [Name in keyof Fields]: ShownLength } {
  const shown: Partial<Record<keyof Fields, ShownLength>> = {}
  for (const name in fields) shown[name] = show(lengths[name], units)
  return shown as { [Name in keyof Fields]: ShownLength }
}

/** Digits in which most doubles, and in which all of them, can be told apart. */
const SENT_DIGITS = [15, 16]

/**
 * A length that the caller stated, as it was sent: a third of an inch, or millimetres in a request in inches, has more digits
 * than an answer. Sent again, it is the same length.
 */
export function echo(length: Mm, units: Units): ShownLength {
  const stated = show(length, units)
  if (lengthOf(stated, units) === length) return stated
  const sent = inUnits(length, units)
  const short = SENT_DIGITS.map((digits) => Number(sent.toPrecision(digits)))
  return (short.find((value) => lengthOf(value, units) === length) ?? sent) as ShownLength
}

/**
 * A caller's length in millimetres.
 *
 * @throws RangeError for a text that the schema should have turned away
 */
export function toMm(length: number | string, units: Units): Mm {
  if (typeof length === 'number') return lengthOf(length, units)
  const parsed = parseLength(length, units)
  if (!parsed.ok) throw new RangeError(`length must have passed the schema, got ${parsed.error}`)
  return parsed.value
}

/** The formats of lengths written as text: in the units of the input they have the bounds that the schema states for numbers. */
export const LENGTH_FORMATS: TextFormats = Object.fromEntries(
  Object.entries(BOUNDS).map(([format, bounds]) => [
    format,
    {
      noun: LENGTH_NOUN,
      examples: LENGTH_EXAMPLES,
      faultOf: (text: string, input: unknown) => faultOf(text, bounds, unitsOf(input)),
    },
  ]),
)

/** The units of an input: of its design where it has one. */
const unitsOf = (input: unknown): Units =>
  (Object(input).units ?? Object(Object(input).design).units) === 'in' ? 'in' : 'mm'

/** The fault of a length written as text, or undefined if there is none: as a number it could be sent as well. */
function faultOf(text: string, { min, max }: Bounds, units: Units): string | undefined {
  const read = parseLength(text, units)
  if (!read.ok) return LENGTH_FAULTS[read.error]
  const value = inUnits(read.value, units)
  return value >= min && value <= max ? undefined : lengthOutside(min, max, units)
}
