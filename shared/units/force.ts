import { NEWTONS_PER_LBF } from '#shared/data/wood-strength.ts'

/** The units of a load. Pressures then come in MPa or in lbf/in². */
export const FORCE_UNITS = ['N', 'lbf'] as const
export type ForceUnits = (typeof FORCE_UNITS)[number]

/** A force in newtons, as a number in other units. */
export const inForceUnits = (newtons: number, units: ForceUnits): number =>
  units === 'lbf' ? newtons / NEWTONS_PER_LBF : newtons

/** A torque in newton millimetres, as a number in N mm or, with pounds-force, in lbf in. */
export const inTorqueUnits = (torque: number, units: ForceUnits): number =>
  inForceUnits(torque, units) / (units === 'lbf' ? 25.4 : 1)

/** Standard acceleration of free fall [m/s²], exact by definition (3rd CGPM, 1901). */
const FREE_FALL = 9.80665

/** The mass that weighs so many newtons. */
export const inKilograms = (newtons: number): number => newtons / FREE_FALL
