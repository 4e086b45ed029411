import type { SourceId } from '#shared/data/sources.ts'
import type { Result } from '#shared/result.ts'
import type { Dimension, DimensionKey } from './dimensions.ts'
import type { Fields, Group } from './field.ts'
import type { OuterSide } from './outer-side.ts'
import type { Refusal } from './refusal.ts'
import type { AnyInput, ResolvedBalls } from './resolve.ts'
import type { Traits } from './traits.ts'
import type { Finding } from './warning.ts'

/** An arrangement whose outer ring is cut to a ball gap, whatever lies inside it. */
export interface FullRingArrangement<
  Input extends AnyInput,
  B extends AnyBearing,
  F extends Fields,
  Key extends DimensionKey,
> extends Arrangement<Input, B, F, Key> {
  /** The outer ring with its balls; the bore and the inner ring are not looked at. */
  outerSideOf(input: Input): Result<OuterSide, readonly Refusal[]>
}

/** The part of a bearing that every arrangement shares. */
export interface AnyBearing {
  readonly resolved: ResolvedBalls
}

/**
 * One arrangement of a rolling bearing: what its input holds, and how a bearing follows from it. Written as methods, so that
 * a module for one input may stand in the record of all of them.
 */
export interface Arrangement<
  Input extends AnyInput,
  B extends AnyBearing,
  F extends Fields = Fields,
  Key extends DimensionKey = DimensionKey,
> {
  readonly traits: Traits
  /** Sources of its sizes, besides those that `sourcesOf` adds. */
  readonly sources: readonly SourceId[]
  /** The fields of its input, besides `units` and `arrangement`. */
  readonly fields: Group<F>
  /** Every size of the bearing that an input asks for, or all reasons at once why there is none. */
  bearingOf(input: Input): Result<B, readonly Refusal[]>
  /** The table of what to cut, in the order in which the parts are made. */
  dimensionsOf(bearing: B): readonly Dimension<Key>[]
  /** Everything that is worth a warning, in the order in which a maker meets it. */
  findingsOf(bearing: B): readonly Finding[]
}
