import { ok, type Result } from '#shared/result.ts'
import type { Assembly } from './assembly.ts'
import { type OuterSide, outerSideOf } from './outer-side.ts'
import type { Refusal } from './refusal.ts'
import type { Resolved } from './resolve.ts'
import { type RingPair, ringPair } from './ring-pair.ts'

/** Two rings with a full ring between them. Lengths in millimetres, tilt in degrees. */
export interface FullRings extends OuterSide, RingPair {
  readonly resolved: Resolved
  readonly assembly: Assembly
}

/**
 * Every size of the rings that a resolved input asks for, or all reasons at once why there are none.
 *
 * @param refused what the arrangement itself refuses
 */
export function fullRings<S extends Resolved>(
  resolved: S,
  refused: readonly Refusal[] = [],
): Result<FullRings & { readonly resolved: S }, readonly Refusal[]> {
  const outer = outerSideOf(resolved)
  if (!outer.ok) return outer
  const pair = ringPair(resolved, outer.value.pitchRadius, outer.value.outerRing, refused)
  return pair.ok ? ok({ ...pair.value, ...outer.value, resolved, assembly: resolved.assembly }) : pair
}
