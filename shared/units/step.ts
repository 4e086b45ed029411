import { type Mm, mm } from './length.ts'

/** A length that is on a step already, within rounding, is not pushed to the next one; in steps. */
const ON_STEP_WITHIN = 1e-9

/** Steps of a rule are decimal figures in millimetres, inches being 25.4: so many steps are cleared of rounding here. */
const CLEAN = 1e9
const steps = (count: number, step: Mm): Mm => mm(Math.round(count * step * CLEAN) / CLEAN)

/** The next step at or above a length; the length itself, within rounding, stays. */
export const stepUp = (length: number, step: Mm): Mm => steps(Math.ceil(length / step - ON_STEP_WITHIN), step)

/** The next step at or below a length. */
export const stepDown = (length: number, step: Mm): Mm => steps(Math.floor(length / step + ON_STEP_WITHIN), step)
