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
