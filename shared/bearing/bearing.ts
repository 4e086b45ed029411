import { fail, ok, type Result } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { nameOf, type Question, traitsOf } from './arrangement.ts'
import type { Assembly } from './assembly.ts'
import { beyondBounds } from './bounds.ts'
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

/** The same for a question that not every arrangement can be asked. */
export function bearingFor(input: DesignInput, question: Question): Result<Bearing, readonly Refusal[]> {
  const unanswered = notAnswered(input, question)
  return unanswered.length > 0 ? fail(unanswered) : bearingOf(input)
}

/**
 * The bearing of a design as a caller sent it: one whose whole input, defaults and all, could be sent again. That is to be
 * asked wherever the whole input is given back.
 */
export function bearingAsked(input: DesignInput, question: Question): Result<Bearing, readonly Refusal[]> {
  const made = bearingFor(input, question)
  if (!made.ok) return made
  const beyond = beyondBounds(made.value.settled.input)
  return beyond.length > 0 ? fail(beyond) : made
}

/** Why a question has no answer of an arrangement; nothing where it has. */
export function notAnswered(input: Pick<DesignInput, 'arrangement'>, question: Question): readonly Refusal[] {
  if (traitsOf(input).answers.includes(question)) return []
  return [{ code: 'not-answered', path: '/arrangement', arrangement: nameOf(input), question }]
}

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
