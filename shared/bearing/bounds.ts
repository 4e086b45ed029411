import { inUnits, lengthOf, type Mm, type Units } from '#shared/units/length.ts'
import { type Bounds, type Group, leavesOf, valueAt } from './field.ts'
import type { Refusal } from './refusal.ts'
import type { AnyInput } from './resolve.ts'
import { leafAt, type Suggestion } from './suggestion.ts'

/*
 * The limits of an input. The edge refuses everything else as a slip of the hand, not a bearing; so nothing that is
 * suggested may lie outside either.
 */

/** Whether a caller could send what is suggested. */
export function isWithinBounds({ path, kind, value }: Suggestion, group: Group, units: Units): boolean {
  const { field } = leafAt(group, path)
  if (kind === 'choice' || field.kind === 'choice' || field.kind === 'flag') return true
  return holds(field.bounds, kind === 'length' ? inUnits(value, units) : value)
}

/**
 * The lengths of a whole input, defaults and all, that nobody could send: a default beside balls of the largest size, or a
 * text in inches where the rest is in millimetres. The whole input is given back, to be sent again.
 */
export function beyondBounds(input: AnyInput, group: Group): readonly Refusal[] {
  const placed: Placed[] = []
  for (const { path, names, field } of leavesOf(group.fields)) {
    if (field.kind !== 'length' && field.kind !== 'length-or-null' && field.kind !== 'lengths') continue
    const value = valueAt(input, names)
    if (value === undefined) continue
    if (field.kind !== 'lengths') placed.push([path, value as Mm | null, field.bounds])
    else placed.push(...(value as readonly Mm[]).map((one, i): Placed => [`${path}/${i}`, one, field.bounds]))
  }
  return lengthsBeyond(placed, input.units)
}

/** A length that was stated or filled in, with where it stands, and what it may be. */
type Placed = readonly [path: string, given: Mm | null | undefined, bounds: Bounds]

/** Those of some lengths that nobody could send. */
export function lengthsBeyond(lengths: readonly Placed[], units: Units): readonly Refusal[] {
  const refusals: Refusal[] = []
  for (const [path, given, bounds] of lengths) {
    if (given === undefined || given === null || holds(bounds, inUnits(given, units))) continue
    const [min, max] = [lengthOf(bounds.min, units), lengthOf(bounds.max, units)]
    refusals.push({ code: 'beyond-bounds', path, given, min, max })
  }
  return refusals
}

const holds = ({ min, max }: Bounds, value: number): boolean => value >= min && value <= max
