import type { ArrangementName } from '#shared/bearing/arrangements.ts'
import type { Refused } from '#shared/bearing/refusal.ts'
import type { LoadCheckInput } from '#shared/questions/load/input.ts'
import type { LoadRefusal } from '#shared/questions/load/refusal.ts'
import type { Result } from '#shared/result.ts'
import { RING_NAMES, type RingLoadCheck, type RingSpeedReason, ringLoadCheck } from './rings.ts'
import {
  PLATE_NAMES,
  type PlateLoadCheck,
  type PlateLoadCheckInput,
  type PlateSpeedReason,
  plateLoadCheck,
} from './thrust.ts'

/** A load on a bearing of any arrangement: its own load must be there. */
export type AnyLoadCheckInput = Omit<LoadCheckInput, 'radialLoad'> &
  Omit<PlateLoadCheckInput, 'axialLoad'> &
  Partial<Pick<LoadCheckInput, 'radialLoad'> & Pick<PlateLoadCheckInput, 'axialLoad'>>

/** A load check of any arrangement. */
export type LoadCheck = RingLoadCheck | PlateLoadCheck
export type LoadSpeedReason = RingSpeedReason | PlateSpeedReason

type OwnName = (typeof RING_NAMES | typeof PLATE_NAMES)[number]

/** What a bearing carries, by the name of its load in a request. */
export type LoadName = 'radialLoad' | 'axialLoad'

/** How one arrangement is checked: the name of its load, the names that it alone takes, and the check. */
interface Checks {
  readonly loadName: LoadName
  readonly own: readonly OwnName[]
  check(input: AnyLoadCheckInput): Result<LoadCheck, Refused<LoadRefusal>>
}

const RINGS: Checks = {
  loadName: 'radialLoad',
  own: RING_NAMES,
  check: (input) => ringLoadCheck({ ...input, radialLoad: input.radialLoad ?? Number.NaN }),
}
const PLATES: Checks = {
  loadName: 'axialLoad',
  own: PLATE_NAMES,
  check: (input) => plateLoadCheck({ ...input, axialLoad: input.axialLoad ?? Number.NaN }),
}

/** How each arrangement is checked. A new one: its file, and its line here. */
export const CHECKS: Readonly<Record<ArrangementName, Checks>> = {
  radial: RINGS,
  roller: RINGS,
  caged: RINGS,
  thrust: PLATES,
}
