import { ok, type Result } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { asAsked, forQuestion } from './asked.ts'
import type { Assembly } from './assembly.ts'
import * as defaults from './defaults.ts'
import type { DesignInput } from './design-input.ts'
import { type OuterSide, outerSideOf } from './outer-side.ts'
import type { Refusal } from './refusal.ts'
import { type RingPair, ringPair } from './ring-pair.ts'
import type { Settled } from './settle.ts'

/** A bearing in figures: finished sizes and what follows from them. Lengths in millimetres, tilt in degrees. */
export interface Bearing extends OuterSide, RingPair {
  readonly settled: Settled
  readonly assembly: Assembly
  /** Where nothing else holds what rolls: beside plain tracks. */
  readonly cheeks?: Cheeks
}

/** Discs screwed on both sides of an outer ring: they keep the rollers, and the inner ring between them, from walking out. */
export interface Cheeks {
  readonly outsideDiameter: Mm
  /** Within the inner ring's wood, clear of the bore. */
  readonly holeDiameter: Mm
  readonly thickness: Mm
}

/**
 * Every size of the bearing that an input asks for, or all reasons at once why there is none.
 */
export function bearingOf(input: DesignInput): Result<Bearing, readonly Refusal[]> {
  const outer = outerSideOf(input)
  if (!outer.ok) return outer
  const pair = ringPair(outer.value.settled, outer.value.pitchRadius, outer.value.outerRing)
  return pair.ok ? ok(assembled(outer.value, pair.value)) : pair
}

/** For a question that not every arrangement can be asked, and of a design as a caller sent it. */
export const bearingFor = forQuestion(bearingOf)
export const bearingAsked = asAsked(bearingOf)

const assembled = (outer: OuterSide, pair: RingPair): Bearing => ({
  ...pair,
  ...outer,
  assembly: outer.settled.assembly,
  ...(outer.settled.traits.raceway === 'track' ? { cheeks: cheeksOf(pair) } : {}),
})

/** The hole stands halfway through the inner ring's wood: it holds the ring's sides, and clears what goes through the bore. */
const cheeksOf = ({ outerRing: outer, innerRing: inner, settled }: RingPair): Cheeks => ({
  outsideDiameter: outer.outsideDiameter,
  holeDiameter: mm((inner.boreDiameter + inner.landDiameter) / 2),
  thickness: mm(defaults.CHEEK_THICKNESS * settled.ballDiameter),
})
