import { fail, ok, type Result } from '#shared/result.ts'
import type { Units } from '#shared/units/length.ts'
import type { AnyBearing, Arrangement } from './arrangement.ts'
import { beyondBounds, isWithinBounds, lengthsBeyond } from './bounds.ts'
import type { Dimension, DimensionKey } from './dimensions.ts'
import type { Fields } from './field.ts'
import { makingLengths } from './making-input.ts'
import { PIN_HOLDS, PLATE_HOLDS } from './mounting-input.ts'
import type { Refusal } from './refusal.ts'
import type { AnyInput } from './resolve.ts'
import { asStated, type Suggestion, withSuggestion } from './suggestion.ts'
import type { Traits } from './traits.ts'
import type { Finding, Warning, WarningCode, WarningFacts } from './warning.ts'

/** A bearing of whatever arrangement, the table of what to cut, and what to watch. */
export interface DesignOf<B, Key extends DimensionKey = DimensionKey> {
  readonly bearing: B
  readonly dimensions: readonly Dimension<Key>[]
  readonly warnings: readonly Warning[]
}

/**
 * The bearing of an input as a caller sent it: one whose whole input, defaults and all, could be sent again. Needed wherever
 * the whole input is echoed.
 */
export function echoedBearing<I extends AnyInput, B extends AnyBearing>(
  arrangement: Arrangement<I, B>,
  input: I,
): Result<B, readonly Refusal[]> {
  const made = arrangement.bearingOf(input)
  if (!made.ok) return made
  const refused = [
    ...makingRefusals(input, arrangement.traits),
    ...beyondBounds(made.value.resolved.input, arrangement.fields),
  ]
  return refused.length > 0 ? fail(refused) : made
}

/**
 * What must I cut? Every size from balls, count and bore, with the gauges and the warnings.
 *
 * @param input lengths in millimetres, finite and above 0 (gaps, play, finish and scatter may be 0); ball count whole,
 *   at least 3; of each pair (`engagement` or `grooveDepth`, `wall` or `outsideDiameter`, …) at most one
 * @returns the design, or every reason at once why there is no such bearing
 */
export function designOf<I extends AnyInput, B extends AnyBearing, Key extends DimensionKey>(
  arrangement: Arrangement<I, B, Fields, Key>,
  input: I,
): Result<DesignOf<B, Key>, readonly Refusal[]> {
  const made = echoedBearing(arrangement, input)
  if (!made.ok) return made
  const bearing = made.value
  const look: Look = (mended) => {
    const again = arrangement.bearingOf(mended as I)
    return again.ok ? arrangement.findingsOf(again.value) : undefined
  }
  const isCleared = (from: AnyInput, remedy: Suggestion, facts: WarningFacts): boolean => {
    if (!isWithinBounds(remedy, arrangement.fields, from.units)) return false
    const left = look(withSuggestion(from, arrangement.fields, remedy))
    return left !== undefined && !left.some((finding) => isSame(finding.facts, facts))
  }
  const inputs = [input, bearing.resolved.input]
  return ok({
    bearing,
    dimensions: arrangement.dimensionsOf(bearing),
    warnings: arrangement
      .findingsOf(bearing)
      .map((finding) =>
        warningOf(finding, input.units, (remedy) => inputs.every((from) => isCleared(from, remedy, finding.facts))),
      ),
  })
}

/** Faults of the plan of how to make it: lengths that nobody could send, and fields that only rings have. */
function makingRefusals({ making, units, arrangement }: AnyInput, { members }: Traits): readonly Refusal[] {
  if (making === undefined) return []
  const { shaft, housing, turns, drive } = making.mounting ?? {}
  const isOne = (holds: readonly string[], hold: string | undefined) => hold === undefined || holds.includes(hold)
  const ofRings = {
    '/mounting/turns': turns,
    '/mounting/drive': drive,
    '/mounting/housing/species': housing?.species,
    '/mounting/shaft/hold': isOne(PIN_HOLDS, shaft?.hold) ? undefined : shaft?.hold,
    '/mounting/housing/hold': isOne(PLATE_HOLDS, housing?.hold) ? undefined : housing?.hold,
  }
  return [
    ...(members === 'rings' || arrangement === undefined
      ? []
      : Object.entries(ofRings)
          .filter(([, given]) => given !== undefined)
          .map(([path]) => ({ code: 'not-of-arrangement' as const, path: `/making${path}`, arrangement }))),
    ...lengthsBeyond(
      makingLengths(making).map(([path, given, bounds]) => [`/making${path}`, given, bounds]),
      units,
    ),
  ]
}

/** The findings about the bearing of an input; undefined if it has none. */
type Look = (input: AnyInput) => readonly Finding[] | undefined

/**
 * A finding with its remedies tried. A remedy is offered only where, taken into the caller's input, and as well into the
 * whole one that is echoed, it gives a bearing that no longer has the same warning.
 */
function warningOf(
  { severity, path, facts, remedies }: Finding,
  units: Units,
  clears: (remedy: Suggestion) => boolean,
): Warning {
  const suggestion = remedies.flatMap((remedy) => asStated(remedy, units)).find(clears)
  return suggestion === undefined ? { severity, path, facts } : { severity, path, facts, suggestion }
}

const isSame = (one: WarningFacts, other: WarningFacts): boolean =>
  family(one.code) === family(other.code) && ringOf(one) === ringOf(other)

const ringOf = (facts: WarningFacts): string => ('ring' in facts ? facts.ring : '')

/** Two codes for one trouble, worse and less bad: clearing one into the other is no remedy. */
function family(code: WarningCode): string {
  if (code === 'lands-touch' || code === 'lands-nearly-touch') return 'lands'
  if (code === 'groove-wider-than-ring' || code === 'shoulders-thin') return 'shoulders'
  return code
}
