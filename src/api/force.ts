import { choice } from '#shared/bearing/field.ts'
import { plain } from '#shared/bearing/fields.ts'
import { NEWTONS_PER_LBF } from '#shared/data/wood-strength.ts'
import { significantDown } from '#shared/numbers/significant.ts'
import { FORCE_UNITS, type ForceUnits, inForceUnits, inTorqueUnits } from '#shared/units/force.ts'
import type { Units } from '#shared/units/length.ts'
import { type ShownNumber, showNumber } from './number.ts'

export const FORCE_UNITS_FIELD = choice(
  'The unit of every force in request and answer.',
  FORCE_UNITS,
  plain('N with millimetres, lbf with inches', 'the unit of force that goes with the unit of length'),
)

/** The default: pounds-force with inches, newtons with millimetres. */
export const usualForceUnits = (units: Units): ForceUnits => (units === 'in' ? 'lbf' : 'N')

export const toNewtons = (force: number, units: ForceUnits): number =>
  units === 'lbf' ? force * NEWTONS_PER_LBF : force
export const showForce = (newtons: number, units: ForceUnits): ShownNumber => showNumber(inForceUnits(newtons, units))
/** A force that must not be passed: rounded down. */
export const showForceLimit = (newtons: number, units: ForceUnits): number =>
  significantDown(inForceUnits(newtons, units))

const SQUARE_INCH = 25.4 * 25.4
const MPA = { N: 'MPa', lbf: 'lbf/in2' } as const
export const pressureUnits = (units: ForceUnits): (typeof MPA)[ForceUnits] => MPA[units]
export const showPressure = (megapascals: number, units: ForceUnits): ShownNumber =>
  showNumber(units === 'lbf' ? (megapascals * SQUARE_INCH) / NEWTONS_PER_LBF : megapascals)

export const TORQUE_UNITS = ['N mm', 'lbf in'] as const
const TORQUE = { N: 'N mm', lbf: 'lbf in' } as const
export const torqueUnits = (units: ForceUnits): (typeof TORQUE)[ForceUnits] => TORQUE[units]
/** A torque [N mm] in the unit that goes with the unit of force. */
export const showTorque = (torque: number, units: ForceUnits): ShownNumber => showNumber(inTorqueUnits(torque, units))
