import { choice } from '#shared/bearing/field.ts'
import { plain } from '#shared/bearing/fields.ts'
import { NEWTONS_PER_LBF } from '#shared/data/wood-strength.ts'
import { significantDown } from '#shared/numbers/significant.ts'
import type { Units } from '#shared/units/length.ts'
import { type ShownNumber, showNumber } from './number.ts'

/** In which a caller speaks of loads; pressures then come in MPa or in lbf/in². */
export const FORCE_UNITS = ['N', 'lbf'] as const
export type ForceUnits = (typeof FORCE_UNITS)[number]

export const FORCE_UNITS_FIELD = choice(
  'Of every force in request and answer.',
  FORCE_UNITS,
  plain('N with millimetres, lbf with inches', 'the unit of force that goes with the unit of length'),
)

/** What goes with inches and with millimetres when nothing is said. */
export const usualForceUnits = (units: Units): ForceUnits => (units === 'in' ? 'lbf' : 'N')

export const toNewtons = (force: number, units: ForceUnits): number =>
  units === 'lbf' ? force * NEWTONS_PER_LBF : force
const inForceUnits = (newtons: number, units: ForceUnits): number =>
  units === 'lbf' ? newtons / NEWTONS_PER_LBF : newtons
export const showForce = (newtons: number, units: ForceUnits): ShownNumber => showNumber(inForceUnits(newtons, units))
/** A force that must not be passed: rounded down. */
export const showForceLimit = (newtons: number, units: ForceUnits): number =>
  significantDown(inForceUnits(newtons, units))

const SQUARE_INCH = 25.4 * 25.4
const MPA = { N: 'MPa', lbf: 'lbf/in2' } as const
export const pressureUnits = (units: ForceUnits): (typeof MPA)[ForceUnits] => MPA[units]
export const showPressure = (megapascals: number, units: ForceUnits): ShownNumber =>
  showNumber(units === 'lbf' ? (megapascals * SQUARE_INCH) / NEWTONS_PER_LBF : megapascals)

/** To two digits: no estimate of this kind is good for more. */
const rounded = (value: number): string => String(Number(value.toPrecision(2)))

export const forceFigure = (newtons: number, units: ForceUnits): string =>
  `${rounded(showForce(newtons, units))} ${units}`

export const speedFigure = (speed: number): string => `${rounded(speed)} turns a minute`
