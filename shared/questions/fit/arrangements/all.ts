import { type ArrangementName, type Bearing, type BearingByArrangement, nameOf } from '#shared/bearing/arrangements.ts'
import { CAGED } from '#shared/questions/fit/arrangements/caged.ts'
import { THRUST } from '#shared/questions/fit/arrangements/thrust.ts'
import type { Fitted } from '#shared/questions/fit/fit-setup.ts'
import { FULL_RINGS } from '#shared/questions/fit/full-rings.ts'

/** Every arrangement as fit correction sees it. */
const FITTED: { readonly [Name in ArrangementName]: Fitted<BearingByArrangement[Name]> } = {
  radial: FULL_RINGS,
  roller: FULL_RINGS,
  thrust: THRUST,
  caged: CAGED,
}

export const FITTED_NAMES = Object.keys(FITTED) as readonly ArrangementName[]

export const fittedOf = (design: Parameters<typeof nameOf>[0]): Fitted<Bearing> => FITTED[nameOf(design)]
