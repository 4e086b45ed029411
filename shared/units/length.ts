declare const unit: unique symbol

/** A length in millimetres: the only length the core knows. */
export type Mm = number & { readonly [unit]: 'mm' }

/** The units in which a caller speaks. */
export type Units = 'in' | 'mm'

export const mm = (value: number): Mm => value as Mm

/** An inch is 25.4 mm, exact since 1959. Times 254, then over 10: 1.1875 in is 30.1625 mm, not 30.162499999999998. */
export const inches = (value: number): Mm => mm((value * 254) / 10)

/** A number of the caller's units as a length. */
export const lengthOf = (value: number, units: Units): Mm => (units === 'in' ? inches(value) : mm(value))

/** A length as a number of the caller's units: the way back of `lengthOf`. */
export const inUnits = (length: Mm, units: Units): number => (units === 'in' ? (length * 10) / 254 : length)
