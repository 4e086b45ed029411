import { inches, type Mm, mm, type Units } from '#shared/units/length.ts'
import { stepUp } from '#shared/units/step.ts'

/**
 * The least size of a board that is no smaller than needed, as boards are measured: in whole millimetres, or sixteenths of an
 * inch. Common practice, no source.
 */
export const boardSize = (needed: number, units: Units): Mm => stepUp(needed, units === 'in' ? inches(1 / 16) : mm(1))
