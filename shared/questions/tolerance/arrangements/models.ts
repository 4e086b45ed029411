import type { CheckModel } from '#shared/questions/tolerance/check-model.ts'
import type { TOLERANCE_CHECK } from '#shared/questions/tolerance/input.ts'
import { ringModel } from './rings.ts'
import { plateModel } from './thrust.ts'

export type Served = (typeof TOLERANCE_CHECK)['serves'][number]

/** How each arrangement is checked: a line each. Each takes a check of its own arrangement. */
export const MODELS = {
  radial: ringModel,
  roller: ringModel,
  thrust: plateModel,
} as const satisfies Readonly<Record<Served, (check: never) => CheckModel>>
