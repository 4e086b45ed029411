import { type ArrangementName, nameOf } from '#shared/bearing/arrangements.ts'
import { type Refused, refusedQuestion } from '#shared/bearing/refusal.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import {
  RING_NAMES,
  type RingLoadCheck,
  type RingSpeedReason,
  ringLoadCheck,
  seated,
} from '#shared/questions/load/arrangements/rings.ts'
import {
  PLATE_NAMES,
  type PlateLoadCheck,
  type PlateLoadCheckInput,
  type PlateSpeedReason,
  plateLoadCheck,
} from '#shared/questions/load/arrangements/thrust.ts'
import { fail, type Result } from '#shared/result.ts'
import { type LoadCheckInput, resolveLoad } from './input.ts'
import type { LoadRefusal } from './refusal.ts'

/** A load on a bearing of any arrangement: its own load must be there. */
export type AnyLoadCheckInput = Omit<LoadCheckInput, 'radialLoad'> &
  Omit<PlateLoadCheckInput, 'axialLoad'> &
  Partial<Pick<LoadCheckInput, 'radialLoad'> & Pick<PlateLoadCheckInput, 'axialLoad'>>

/** A load check of any arrangement. */
export type LoadCheck = RingLoadCheck | PlateLoadCheck
export type LoadSpeedReason = RingSpeedReason | PlateSpeedReason

type OwnName = (typeof RING_NAMES | typeof PLATE_NAMES)[number]

/** How one arrangement is checked: the name of its load, the names that it alone takes, and the check. */
interface Checks {
  readonly loadName: 'radialLoad' | 'axialLoad'
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

const CHECKS: Readonly<Record<ArrangementName, Checks>> = {
  radial: RINGS,
  roller: RINGS,
  caged: RINGS,
  thrust: PLATES,
}

const OWN_NAMES = [...new Set(Object.values(CHECKS).flatMap(({ own }) => own))]

/** The name of the load that a design carries. */
export const loadNameOf = (design: { readonly arrangement?: ArrangementName }): Checks['loadName'] =>
  CHECKS[nameOf(design)].loadName

/** The load check of any arrangement; what only others have is refused by name. */
export function loadCheck(input: AnyLoadCheckInput): Result<LoadCheck, Refused<LoadRefusal>> {
  const arrangement = nameOf(input.design)
  const { own, check } = CHECKS[arrangement]
  const foreign = OWN_NAMES.filter((name) => input[name] !== undefined && !own.includes(name))
  if (foreign.length > 0)
    return fail(refusedQuestion(foreign.map((name) => ({ code: 'not-of-arrangement', path: `/${name}`, arrangement }))))
  return check(input)
}

/**
 * The radial load from which on some ball of two rings leaves a deeper dent than is accepted [N]: that of a load check, without
 * the rest of it.
 */
export const dentingLoad = (bearing: RingPair, load: Omit<LoadCheckInput, 'design'>): number =>
  seated(bearing, resolveLoad(load, bearing.resolved.input.balls.material === 'wood')).ruin.load
