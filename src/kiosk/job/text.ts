import { LENGTH } from '#shared/bearing/field.ts'
import { inUnits, type Mm, type Units } from '#shared/units/length.ts'
import { parseLength } from '#shared/units/parse-length.ts'
import { FAULTS } from '#src/words/kiosk/faults.ts'

/** What cannot be read, in words. */
export class Unread {
  readonly message: string
  constructor(message: string) {
    this.message = message
  }
}

/** Half of the world writes a decimal with a comma. Two of them, or one among thousands, stay a fault. */
export const withPoint = (text: string): string => text.trim().replace(/^(\d+),(\d{1,4})(?!\d|.*,)/, '$1.$2')

/** A length as it was typed. */
export function readLength(text: string, units: Units, bounds = LENGTH): Mm | Unread {
  const read = parseLength(withPoint(text), units)
  if (!read.ok) return new Unread(FAULTS.length)
  const converted = inUnits(read.value, units)
  return converted >= bounds.min && converted <= bounds.max
    ? read.value
    : new Unread(FAULTS.lengthBounds(bounds.min, bounds.max, units))
}

/**
 * Several values in one field, with a semicolon, a line or a blank after the comma between them. A comma between two digits is
 * that of a decimal, unless there are more of them, or points or fractions beside it: then it parts values, as in a query.
 */
export const listIn = (text: string): readonly string[] =>
  text
    .split(/[;\n\t]|,(?!\d)|(?<!\d),/)
    .flatMap((each) => (/,.*[,./]|[./].*,/.test(each) ? each.split(',') : [each]))
    .map((each) => each.trim())
    .filter((each) => each !== '')

/** A number as it was typed. */
export function readNumber(text: string, bounds: { readonly min: number; readonly max: number }): number | Unread {
  const value = /^\d{1,12}(\.\d{1,12})?$/.test(withPoint(text)) ? Number(withPoint(text)) : Number.NaN
  return value >= bounds.min && value <= bounds.max ? value : new Unread(FAULTS.numberBounds(bounds.min, bounds.max))
}

/** A whole number as it was typed. */
export function readCount(text: string, bounds: { readonly min: number; readonly max: number }): number | Unread {
  const value = /^\d{1,9}$/.test(text.trim()) ? Number(text) : Number.NaN
  return value >= bounds.min && value <= bounds.max ? value : new Unread(FAULTS.countBounds(bounds.min, bounds.max))
}
