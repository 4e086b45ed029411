import type { DimensionKey } from '#shared/bearing/dimensions.ts'
import type { SizeLimits } from '#shared/bearing/gap-limits.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import { inUnits, type Mm, type Units } from '#shared/units/length.ts'
import { withMinus } from '#src/words/figure.ts'
import { signOfSize } from '#src/words/standing.ts'

/** A bearing's sizes as they stand on its sheets, all to the same digit. */
export type SizeText = (length: Mm) => string

/** The last digit is this part of a ball, or less. */
const PARTS_OF_A_BALL = 250
/** Wood is worked no finer than to a hundredth of a millimetre or a thousandth of an inch. */
const FEWEST_DIGITS: Readonly<Record<Units, number>> = { in: 3, mm: 2 }
const MOST_DIGITS = 9

type Sized = { readonly resolved: ResolvedBalls }

function digitsFor({ resolved }: Sized): number {
  const { units } = resolved.input
  const needed = Math.ceil(Math.log10(PARTS_OF_A_BALL / inUnits(resolved.ballDiameter, units)))
  return Math.min(MOST_DIGITS, Math.max(FEWEST_DIGITS[units], needed))
}

const trimmed = (text: string): string => text.replace(/\.?0+$/, '').replace(/^-0$/, '0')

/** To a hundredth of a millimetre or a thousandth of an inch, and finer for balls so small that they need it. */
export function sizeTextFor(bearing: Sized): SizeText {
  const { units } = bearing.resolved.input
  const digits = digitsFor(bearing)
  return (length) => {
    const text = inUnits(length, units).toFixed(digits)
    return withMinus(text.includes('.') ? trimmed(text) : text)
  }
}

/** The same with the unit, as words say it away from a dimension line. */
export function sizeInWordsFor(bearing: Sized): SizeText {
  const say = sizeTextFor(bearing)
  return (length) => `${say(length)} ${bearing.resolved.input.units}`
}

/** How far a value may be from a whole number of steps and still be it. */
const ROUNDING = 1e-6

/**
 * How far a size may be off from its figure on the sheet (ISO 129-1): `±0.48`, or the upper and the lower deviation,
 * `+0.34/−0.14`. Rounded towards the figure, so that neither limit is passed; nothing where no such step lies between them.
 */
export function deviationText(bearing: Sized, nominal: Mm, { min, max }: SizeLimits): string {
  const { units } = bearing.resolved.input
  const step = 10 ** digitsFor(bearing)
  const shown = Math.round(inUnits(nominal, units) * step)
  const upper = Math.floor(inUnits(max, units) * step + ROUNDING) - shown
  const lower = Math.ceil(inUnits(min, units) * step - ROUNDING) - shown
  if (!(upper >= lower)) return ''
  const size = (steps: number): string => (Math.abs(steps) / step).toFixed(digitsFor(bearing))
  const either = Math.min(upper, -lower)
  // As far either way, but for the rounding.
  if (Math.abs(upper + lower) <= 1) return either > 0 ? ` ±${size(either)}` : ''
  const signed = (steps: number): string => (steps === 0 ? '0' : `${steps > 0 ? '+' : '−'}${size(steps)}`)
  return ` ${signed(upper)}/${signed(lower)}`
}

/** A sign behind a size that is what the trade or the season makes it. */
export const tradeSign = (key: DimensionKey, { resolved }: Sized): string => signOfSize(key, resolved)
