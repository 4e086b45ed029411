import { ARRANGEMENT_NAMES, type Question } from '#shared/bearing/arrangements.ts'
import type { BearingInYear } from '#shared/movement/year.ts'

export const SEASONAL_FIT = { name: 'seasonal-fit', serves: ARRANGEMENT_NAMES } as const satisfies Question

export type SeasonalFitInput = BearingInYear
