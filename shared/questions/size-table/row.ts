import type { OuterSide } from '#shared/bearing/outer-side.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
import { outerWallRefusals } from '#shared/bearing/ring-pair.ts'
import { fail, type Result } from '#shared/result.ts'
import type { Mm } from '#shared/units/length.ts'

/** The balls of a pair. */
export interface Balls {
  readonly count: number
  readonly diameter: Mm
}

/** The part of a design that every pair shares: the balls come from the lists, and no row needs a bore. */
export type Without<Input> = Omit<Input, 'balls' | 'bore'>

export type Made<T> = Result<T, readonly Refusal[]>

/** An outer side with wood behind its groove. */
export function withWall(made: Made<OuterSide>): Made<OuterSide> {
  const refused = made.ok ? outerWallRefusals(made.value.resolved, made.value.outerRing) : []
  return refused.length > 0 ? fail(refused) : made
}
