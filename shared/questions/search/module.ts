import type { AnyBearing } from '#shared/bearing/arrangement.ts'
import type { Fields, NumberField } from '#shared/bearing/field.ts'
import type { Split } from '#shared/bearing/fields.ts'
import type { Carried } from '#shared/questions/load/load-check.ts'
import type { Mm } from '#shared/units/length.ts'
import type { DropReasons } from './drop-reason.ts'
import type { Criterion, DepthList, OWN_FIELDS } from './fields.ts'

/** One value of each list that is searched through. */
export type Choice = Readonly<Partial<Record<DepthList | 'cutterDiameters', number>>>

/** A disc that is sawn from a board. */
export interface Disc {
  readonly outside: number
  /** The hole that is turned into it; the bore changes from candidate to candidate. */
  readonly hole: number | 'bore'
}

/** The sizes of a candidate by which it is judged. */
export interface Sizes {
  readonly outsideDiameter: Mm
  /** Wood between the raceway and the outside, and between the raceway and the bore. */
  readonly outerWall: Mm
  readonly innerWall: Mm
  readonly discs: readonly Disc[]
  /** Between two rings, of which the inner may come out of the hole of the outer, which are the first two discs. */
  readonly landGap?: Mm
  /** How a ball sits in each of its grooves; none of a plain track. */
  readonly seats: readonly { readonly onBottom: boolean; readonly conformity: number }[]
  /** The circle that is cut to set the ring of balls, and by how much the gap grows with its radius. */
  readonly cutDiameter: Mm
  readonly gapPerCut: number
}

/** How an arrangement is searched. Written as methods, so that a module for one bearing may stand in the record of all. */
export interface SearchModule<Input, B extends AnyBearing, Load> {
  /** The fields that it has beside those of all. */
  readonly has: readonly (keyof typeof OWN_FIELDS | 'onlyOnRule')[]
  /** The rows of the depths that it has lists of, and of its load. */
  readonly depths: Readonly<Partial<Record<DepthList, NumberField>>>
  readonly load: Fields
  /** The marks that it has beside `load` and `onHand`. */
  readonly marks: readonly Criterion[]
  /** Why a candidate is dropped for a refusal or a fault that only this arrangement has. */
  readonly dropReasons?: DropReasons
  /** Only if one of its rings can be split. */
  readonly usualSplit?: Split
  /** The parts of its input that a choice decides. */
  partsOf(choice: Choice): Partial<Input>
  sizesOf(bearing: B): Sizes
  carries(bearing: B, load: Load): Carried
}
