import { type Mm, mm, type Units } from '#shared/units/length.ts'

export const PAPERS = ['a4', 'letter'] as const
export type Paper = (typeof PAPERS)[number]

/** How views are placed: first angle where the millimetre is used, third where the inch is (ISO 5456-2, ASME Y14.3). */
export type ProjectionAngle = 'first' | 'third'
export const projectionFor = (units: Units): ProjectionAngle => (units === 'in' ? 'third' : 'first')

export type PaperSize = { readonly name: string; readonly short: Mm; readonly long: Mm }

/** ISO 216 and ANSI Y14.1, both exact. */
export const PAPER_SIZES: Readonly<Record<Paper, PaperSize>> = {
  a4: { name: 'A4', short: mm(210), long: mm(297) },
  letter: { name: 'Letter', short: mm(215.9), long: mm(279.4) },
}

/** The paper that goes with the units. */
export const usualPaper = (units: Units): Paper => (units === 'in' ? 'letter' : 'a4')
