import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import { inUnits, type Mm, type Units } from '#shared/units/length.ts'

/** A bearing's sizes as they stand on its sheets, all to the same digit. */
export type SizeText = (length: Mm) => string

/** The last digit is this part of a ball, or less. */
const PARTS_OF_A_BALL: Readonly<Record<Units, number>> = { in: 2500, mm: 250 }
const FEWEST_DIGITS: Readonly<Record<Units, number>> = { in: 4, mm: 2 }
const MOST_DIGITS = 9

/** To a hundredth of a millimetre or a ten thousandth of an inch, and finer for balls so small that they need it. */
export function sizeTextFor({ resolved }: { readonly resolved: ResolvedBalls }): SizeText {
  const { units } = resolved.input
  const needed = Math.ceil(Math.log10(PARTS_OF_A_BALL[units] / inUnits(resolved.ballDiameter, units)))
  const digits = Math.min(MOST_DIGITS, Math.max(FEWEST_DIGITS[units], needed))
  return (length) => {
    const text = inUnits(length, units).toFixed(digits)
    return text.replace(/\.?0+$/, '').replace(/^-0$/, '0')
  }
}
