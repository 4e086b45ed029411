import { NEWTONS_PER_LBF } from '#shared/data/wood-strength.ts'
import { type ForceUnits, inForceUnits } from '#shared/units/force.ts'
import type { Units } from '#shared/units/length.ts'

/** The default: pounds-force with inches, newtons with millimetres. */
export const usualForceUnits = (units: Units): ForceUnits => (units === 'in' ? 'lbf' : 'N')

export const toNewtons = (force: number, units: ForceUnits): number =>
  units === 'lbf' ? force * NEWTONS_PER_LBF : force
export const showForce = inForceUnits

const SQUARE_INCH = 25.4 * 25.4
const MPA = { N: 'MPa', lbf: 'lbf/in2' } as const
export const pressureUnits = (units: ForceUnits): (typeof MPA)[ForceUnits] => MPA[units]
export const showPressure = (megapascals: number, units: ForceUnits): number =>
  units === 'lbf' ? (megapascals * SQUARE_INCH) / NEWTONS_PER_LBF : megapascals
