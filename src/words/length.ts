import type { Units } from '#shared/units/length.ts'
import { type LengthFault, LONGEST_LENGTH_TEXT } from '#shared/units/parse-length.ts'

/** The noun for a length, and examples, in sentences about input that is not valid. */
export const LENGTH_NOUN = 'a length'
export const LENGTH_EXAMPLES = '16 or "5/8"'

/** Faults of the text of a length. Each follows the quoted text. */
export const LENGTH_FAULTS: Readonly<Record<LengthFault, string>> = {
  empty: 'is empty: write a length, for example 5/8 or 16 mm',
  'too-long': `has more than ${LONGEST_LENGTH_TEXT} characters: write a length, for example 1 3/16`,
  'too-many-digits': 'has too many digits: no rule or caliper reads so many',
  comma: 'has a comma, which can mean a decimal point or thousands: use a point',
  sign: 'must not begin with a sign',
  exponent: 'has an exponent or is hexadecimal: write the number in full, for example 0.001',
  feet: 'is in feet: use inches or millimetres',
  'zero-denominator': 'divides by 0',
  'improper-mixed': 'has a fraction of 1 or more beside its whole number: write 2 1/4, not 1 5/4',
  'not-a-length':
    'is not a length: write a decimal, a fraction or a mixed fraction, with in or mm if you like, for example 5/8, 1 3/16 or 16 mm',
}

/** Both limits in the units of the input. */
export const lengthOutside = (least: number, most: number, units: Units): string =>
  `must be from ${least} to ${most} ${units}`
