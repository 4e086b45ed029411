import { nameOf } from '#shared/bearing/arrangements.ts'
import { MODELS, type Served } from '#shared/questions/tolerance/arrangements/models.ts'
import type { CheckModel } from './check-model.ts'
import type { Check } from './checked.ts'

/** Only arrangements that the question serves become a check, each of its own bearing. */
export const modelOf = (check: Check): CheckModel =>
  (MODELS[nameOf(check.input.design) as Served] as (check: Check) => CheckModel)(check)
