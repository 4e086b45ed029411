import { type ForceUnits, inForceUnits } from '#shared/units/force.ts'
import { inUnits, type Mm, type Units } from '#shared/units/length.ts'

/** Decimals in sentences: finer than anyone cuts, coarse enough to read. */
const DECIMALS: Readonly<Record<Units, number>> = { in: 4, mm: 2 }

/** A length in a sentence: `15.96 mm`, `0.6284 in`. The exact figures to work to are in the numbers of an answer. */
export function figure(length: Mm, units: Units): string {
  const value = inUnits(length, units)
  const fixed = Number(value.toFixed(DECIMALS[units]))
  return `${fixed === 0 && value !== 0 ? Number(value.toPrecision(2)) : fixed} ${units}`
}

/** A ratio as a percentage with at most one decimal, never rounded to 0 or to certainty: `22 %`, `less than 0.1 %`. */
export function percent(ratio: number): string {
  if (ratio > 0 && ratio < 0.001) return 'less than 0.1 %'
  if (ratio < 1 && ratio > 0.999) return 'more than 99.9 %'
  return `${Number((ratio * 100).toFixed(1))} %`
}

/** The start of a sentence. */
export const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** To two digits: no estimate of a load or a speed is good for more. */
const rounded = (value: number): string => String(Number(value.toPrecision(2)))

/** A load in a sentence: `94 N`. */
export const forceFigure = (newtons: number, units: ForceUnits): string =>
  `${rounded(inForceUnits(newtons, units))} ${units}`

/** A speed in a sentence: `120 turns a minute`. */
export const speedFigure = (speed: number): string => `${rounded(speed)} turns a minute`
