import { boardSize } from '#shared/making/board-size.ts'
import { toDecimals } from '#shared/numbers/decimals.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { wholeParts } from '#shared/numbers/whole-parts.ts'
import { type ForceUnits, inForceUnits, inTorqueUnits } from '#shared/units/force.ts'
import { inches, inUnits, type Mm, mm, type Units } from '#shared/units/length.ts'
import { roundedIn, rounded as roundedLength } from '#shared/units/rounded.ts'
import { figureOfRule } from '#shared/units/shop-figure.ts'
import { stepDown } from '#shared/units/step.ts'

/** A text for people, with a true minus sign before each negative number: a hyphen joins words, and 0 has no sign. */
export const withMinus = (text: string): string =>
  text.includes('-') ? text.replaceAll(/(?<![\w.)])-(?=\.?\d)/g, '−').replaceAll(/−(?=0(\.0+)? )/g, '') : text

/** Decimals in sentences: finer than anyone cuts, coarse enough to read. */
const DECIMALS: Readonly<Record<Units, number>> = { in: 4, mm: 2 }
/** Decimals of an exact figure in a table: in inches those of a caliper and one more, in millimetres its hundredths. */
export const EXACT_DECIMALS: Readonly<Record<Units, number>> = { in: 4, mm: 2 }
/** A size as a table of exact sizes has it, with its unit. */
export const exactFigure = (length: Mm, units: Units): string =>
  `${roundedIn(length, units).toFixed(EXACT_DECIMALS[units])} ${units}`

/**
 * A length in a sentence: `15.96 mm`, `5/8 in` where a rule shows it, else `0.6284 in`. The exact figures to work to are in the numbers of an
 * answer.
 */
export const figure = (length: Mm, units: Units): string => figureOfRule(length, units) ?? decimalFigure(length, units)

/** The same without fractions: for figures in a row, on an axis, or beside a tolerance. */
export function decimalFigure(length: Mm, units: Units): string {
  const value = inUnits(length, units)
  const fixed = toDecimals(value, DECIMALS[units])
  return withMinus(`${fixed === 0 && value !== 0 ? Number(value.toPrecision(2)) : fixed} ${units}`)
}

/** A size that a board must have at least, as a rule measures it: `113 mm` of 112.2 mm, `2 13/16 in` of 2.785 in. */
export const boardFigure = (least: Mm, units: Units): string => figure(boardSize(least, units), units)

/** A small difference in a sentence: `0.16 mm`, `1/64 in`, and no finer than a caliper reads where it reads it at all: `0.006 in`. */
export function differenceFigure(length: Mm, units: Units): string {
  const read = inUnits(length, units).toFixed(CALIPER_DECIMALS[units])
  return units === 'mm' || Number(read) === 0
    ? figure(length, units)
    : (figureOfRule(length, units) ?? caliperFigure(length, units))
}

/** `1.2 mm, give or take 1.05 mm`; what is 0 but for a rounding error is 0. */
export const giveOrTake = (
  { mean, standardDeviation }: { readonly mean: Mm; readonly standardDeviation: Mm },
  units: Units,
): string =>
  `${decimalFigure(roundedLength(mean, units), units)}, give or take ${decimalFigure(standardDeviation, units)}`

/**
 * How deep to cut, and how much more or less a caliper then shows across: twice the depth as it is written, so that the two agree.
 *
 * @param radial above 0
 */
export function cutFigures(radial: Mm, units: Units): { readonly depth: string; readonly across: string } {
  const step = CALIPER_STEP[units]
  const shown = stepDown(radial + step / 2, step) || radial
  return { depth: differenceFigure(mm(shown), units), across: differenceFigure(mm(2 * shown), units) }
}

/** What a caliper tells apart: between such sizes a maker sorts. */
export const CALIPER_STEP: Readonly<Record<Units, Mm>> = { in: inches(0.001), mm: mm(0.01) }

/** How a caliper is set: hundredths of a millimetre, thousandths of an inch, always all of them. */
const CALIPER_DECIMALS: Readonly<Record<Units, number>> = { in: 3, mm: 2 }
export const caliperFigure = (length: Mm, units: Units): string =>
  withMinus(`${inUnits(length, units).toFixed(CALIPER_DECIMALS[units])} ${units}`)

/** How much larger one figure is than another, in steps of a caliper: `+0.006`, `−0.04`, or nothing. */
export function errorFigure(error: Mm, units: Units): string {
  const text = Math.abs(inUnits(error, units)).toFixed(CALIPER_DECIMALS[units])
  return Number(text) === 0 ? '' : `${error > 0 ? '+' : '−'}${text}`
}

/** An angle in a sentence: `11.25°`. */
export const angleFigure = (degrees: number): string => withMinus(`${toDecimals(degrees, 2)}°`)

/** A ratio as a percentage with at most one decimal, never rounded to 0 or to certainty: `22 %`, `less than 0.1 %`. */
export const percent = (ratio: number): string => percentAs(ratio, toDecimals(ratio * 100, 1))

function percentAs(ratio: number, rounded: number): string {
  if (ratio > 0 && ratio < 0.001) return 'less than 0.1 %'
  if (ratio < 1 && ratio > 0.999) return 'more than 99.9 %'
  return withMinus(`${rounded} %`)
}

/** The shares of one whole as percentages, rounded so that they add to that whole. */
export const percentParts = (shares: readonly number[]): readonly string[] =>
  wholeParts(shares, 1000).map((tenths, index) => percentAs(itemAt(shares, index), tenths / 10))

/** The shares of one whole as numbers of a hundred that add to it: `97`, `fewer than 1`, `more than 99`. */
export const hundredthParts = (shares: readonly number[]): readonly string[] =>
  wholeParts(shares, 100).map((part, index) => hundredthAs(itemAt(shares, index), part))

/** A share as a number of a hundred. */
export const hundredths = (share: number): string => hundredthAs(share, Math.round(100 * share))

function hundredthAs(share: number, rounded: number): string {
  if (rounded === 0 && share > 0) return 'fewer than 1'
  if (rounded === 100 && share < 1) return 'more than 99'
  return String(rounded)
}

/** The same to whole hundredths, for figures that are compared in one sentence: `34 %`, `less than 1 %`. */
export function wholePercent(ratio: number): string {
  const rounded = Math.round(ratio * 100)
  if (rounded === 0 && ratio > 0) return 'less than 1 %'
  if (rounded === 100 && ratio < 1) return 'more than 99 %'
  return `${rounded} %`
}

/**
 * The chances of all that can be, as they were worked out of readings: nothing is ever quite certain. A sentence that names one of them
 * takes it from here too, so that it agrees with the picture of all.
 */
export const certainties = (chances: readonly number[]): readonly string[] =>
  percentParts(chances.map((chance) => Math.min(Math.max(chance, 1e-9), 1 - 1e-9)))

/** The start of a sentence. */
export const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** To two digits: no estimate of a load or a speed is good for more. */
const rounded = (value: number): string => withMinus(String(Number(value.toPrecision(2))))

/** The same, never above the value: for what must not be passed. */
export function roundedDown(value: number): number {
  const nearest = Number(value.toPrecision(2))
  if (nearest <= value) return nearest
  const digit = Number(`1e${Math.floor(Math.log10(value)) - 1}`)
  return Number((nearest - digit).toPrecision(2))
}

/** A load that must not be passed, in a sentence. */
export const mostForce = (newtons: number, units: ForceUnits): string =>
  `${roundedDown(inForceUnits(newtons, units))} ${units}`

/** A speed that must not be passed, in a sentence. */
export const mostSpeed = (speed: number): string => `${roundedDown(speed)} turns a minute`

/** A load in a sentence: `94 N`. */
export const forceFigure = (newtons: number, units: ForceUnits): string =>
  `${rounded(inForceUnits(newtons, units))} ${units}`

/** A torque [N mm] in a sentence: `94 N mm`. */
export const torqueFigure = (torque: number, units: ForceUnits): string =>
  `${rounded(inTorqueUnits(torque, units))} ${units === 'lbf' ? 'lbf in' : 'N mm'}`

/** A count in a sentence, to two digits. */
export const countFigure = (value: number): string => rounded(value)

/** A speed in a sentence: `120 turns a minute`. */
export const speedFigure = (speed: number): string => `${rounded(speed)} turns a minute`
