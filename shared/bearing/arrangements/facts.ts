import {
  CAGED_FIELDS_OF_SIZES,
  CAGED_SYMBOLS,
  type CagedRefusal,
  type CagedWarning,
} from '#shared/bearing/arrangements/caged/facts.ts'
import {
  ROLLER_FIELDS_OF_SIZES,
  ROLLER_SYMBOLS,
  type RollerRefusal,
  type RollerWarning,
} from '#shared/bearing/arrangements/roller/facts.ts'
import {
  THRUST_FIELDS_OF_SIZES,
  THRUST_SYMBOLS,
  type ThrustPart,
  type ThrustRefusal,
  type ThrustWarning,
} from '#shared/bearing/arrangements/thrust/facts.ts'

/* Refusals, warnings and symbols of single arrangements, beside those that several share. */

export type OwnRefusal = CagedRefusal | RollerRefusal | ThrustRefusal
export type OwnWarning = CagedWarning | RollerWarning | ThrustWarning
/** Parts with a groove, besides rings. */
export type OwnPart = ThrustPart
export const OWN_SYMBOLS = { ...CAGED_SYMBOLS, ...ROLLER_SYMBOLS, ...THRUST_SYMBOLS }
export const OWN_FIELDS_OF_SIZES = { ...CAGED_FIELDS_OF_SIZES, ...ROLLER_FIELDS_OF_SIZES, ...THRUST_FIELDS_OF_SIZES }
