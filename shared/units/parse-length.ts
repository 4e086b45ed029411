import { fail, ok, type Result } from '#shared/result.ts'
import { type Mm, mm, type Units } from './length.ts'

/** Longest text that is read as a length. */
export const LONGEST_LENGTH_TEXT = 40

/** With at most 12 digits a side, numerator × 254 stays below 2^53, so the one division is the only rounding. */
const MOST_DIGITS = 12

/** Why a text is not a length. */
export type LengthFault =
  | 'empty'
  | 'too-long'
  | 'too-many-digits'
  | 'comma'
  | 'sign'
  | 'exponent'
  | 'feet'
  | 'zero-denominator'
  | 'improper-mixed'
  | 'not-a-length'

/** A length as it was written: a fraction of whole numbers, and its own unit where it has one. */
export interface WrittenLength {
  readonly numerator: number
  readonly denominator: number
  readonly units: Units | undefined
}

const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
}

// Three shapes, told apart by their first sign after the whole number; no part can match in two ways, so the time
// to refuse a text grows with its length and no faster.
const SHAPE =
  /^(?<sign>-?)(?:(?<whole>\d+)(?: |-)(?<over>\d+)\/(?<under>\d+)|(?<top>\d+)\/(?<bottom>\d+)|(?<decimal>\d+\.\d+|\.\d+|\d+)) ?(?<unit>[a-z"]*)$/

/** A map, as an object would also know `constructor` for a unit. */
const UNIT_NAMES: ReadonlyMap<string, Units> = new Map([
  ['in', 'in'],
  ['inch', 'in'],
  ['inches', 'in'],
  ['"', 'in'],
  ['mm', 'mm'],
  ['millimetre', 'mm'],
  ['millimetres', 'mm'],
  ['millimeter', 'mm'],
  ['millimeters', 'mm'],
])

/**
 * The one spelling of the signs in which makers, rulers and keyboards differ. NFC, as NFKC would turn 1½ into 11/2; and
 * a fraction sign before a digit stays, to be refused: ½1 is not 1/21.
 */
function oneSpelling(text: string): string {
  return text
    .normalize('NFC')
    .replace(/[″”“〃]|''|′′|’’/g, '"')
    .replace(/[‐‑‒–—−]/g, '-')
    .replace(/[⁄∕]/g, '/')
    .replace(/[\u00a0\u2000-\u200a\u202f\t]/g, ' ')
    .replace(/(\d?)( ?)([½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])(?!\d)/g, (_, digit: string, space: string, sign: string) =>
      digit === '' ? `${space}${VULGAR[sign]}` : `${digit} ${VULGAR[sign]}`,
    )
    .trim()
    .toLowerCase()
}

/**
 * Reads a length as makers write it: decimal, fraction or mixed fraction, with or without a unit of its own, below 0
 * with a minus sign. `"5/8"`, `"1 3/16"`, `"1-3/16\""`, `"2 1/2 in"`, `"16 mm"`, `"1½"`, `"⅝″"`, `".5"`.
 *
 * @param text at most 40 characters; anything longer is refused unread
 * @returns whole numbers (nothing is rounded yet), or why it is not a length
 */
export function readLength(text: string): Result<WrittenLength, LengthFault> {
  if (text.length > LONGEST_LENGTH_TEXT) return fail('too-long')
  const spelled = oneSpelling(text)
  if (spelled === '') return fail('empty')
  const parts = SHAPE.exec(spelled)?.groups
  if (parts === undefined) return fail(whatIsWrong(spelled))
  const unitName = parts['unit'] ?? ''
  const units = UNIT_NAMES.get(unitName)
  if (unitName !== '' && units === undefined) return fail(whatIsWrong(spelled))
  const fraction = asFraction(parts)
  if (!fraction.ok) return fraction
  const { numerator, denominator } = fraction.value
  return ok({ numerator: parts['sign'] === '-' ? -numerator : numerator, denominator, units })
}

function whatIsWrong(spelled: string): LengthFault {
  if (spelled.includes(',')) return 'comma'
  if (/^[+-]|[+]/.test(spelled)) return 'sign'
  if (/^[\d.]+e[+-]?\d+/.test(spelled) || spelled.startsWith('0x')) return 'exponent'
  if (/^[\d ./-]+('|′|ft|feet|foot)/.test(spelled)) return 'feet'
  return 'not-a-length'
}

function asFraction(parts: Readonly<Record<string, string | undefined>>): Result<WrittenLength, LengthFault> {
  const { decimal, whole, over, under, top, bottom } = parts
  if (decimal !== undefined) {
    const [before = '', after = ''] = decimal.split('.')
    if (before.length + after.length > MOST_DIGITS) return fail('too-many-digits')
    return ok({
      numerator: Number(before + after),
      denominator: Number('1'.padEnd(after.length + 1, '0')),
      units: undefined,
    })
  }
  const upper = over ?? top ?? ''
  const lower = under ?? bottom ?? ''
  if ((whole ?? '').length + upper.length + lower.length > MOST_DIGITS) return fail('too-many-digits')
  const denominator = Number(lower)
  if (denominator === 0) return fail('zero-denominator')
  if (whole === undefined) return ok({ numerator: Number(upper), denominator, units: undefined })
  if (Number(upper) >= denominator) return fail('improper-mixed')
  return ok({ numerator: Number(whole) * denominator + Number(upper), denominator, units: undefined })
}

/**
 * A written length in millimetres, correctly rounded: whole numbers are kept to the end, so `"1 3/16"` in is 30.1625.
 *
 * @param units the units of a text that names none
 */
export function parseLength(text: string, units: Units): Result<Mm, LengthFault> {
  const read = readLength(text)
  if (!read.ok) return read
  const { numerator, denominator } = read.value
  return ok(
    (read.value.units ?? units) === 'in' ? mm((numerator * 254) / (denominator * 10)) : mm(numerator / denominator),
  )
}
