import { CAGED } from '#shared/bearing/arrangements/caged/caged.ts'
import { RADIAL } from '#shared/bearing/arrangements/radial/radial.ts'
import { ROLLER } from '#shared/bearing/arrangements/roller/roller.ts'
import { THRUST } from '#shared/bearing/arrangements/thrust/thrust.ts'
import type { SourceId } from '#shared/data/sources.ts'
import { fail, type Result } from '#shared/result.ts'
import type { AnyBearing, Arrangement } from './arrangement.ts'
import { type DesignOf, designOf, echoedBearing } from './design.ts'
import type { Dimension } from './dimensions.ts'
import type { Split } from './fields.ts'
import type { Refusal } from './refusal.ts'
import type { AnyInput } from './resolve.ts'
import type { Traits } from './traits.ts'
import type { WoodPart } from './wood-parts.ts'

/** Some arrangements by their names: what the edge makes of the service's own, it makes of any. */
export type Arrangements = Readonly<Record<string, Arrangement<AnyInput, AnyBearing>>>

/** Every arrangement. A new one: its folder, and its line here. */
export const ARRANGEMENTS = {
  radial: RADIAL,
  thrust: THRUST,
  roller: ROLLER,
  caged: CAGED,
} as const satisfies Arrangements
type Modules = typeof ARRANGEMENTS

export type ArrangementName = keyof Modules
type InputOf<A> = A extends { bearingOf(input: infer Input): unknown } ? Input : never
type BearingOf<A> = A extends { dimensionsOf(bearing: infer B): unknown } ? B : never
type DesignBy<A> = A extends { dimensionsOf(bearing: infer B): readonly Dimension<infer Key>[] }
  ? DesignOf<B, Key>
  : never

/** The input of each arrangement, and of any. */
export type InputByArrangement = { readonly [Name in ArrangementName]: InputOf<Modules[Name]> }
export type DesignInput = InputByArrangement[ArrangementName]
/** The bearing of each arrangement, and of any. */
export type BearingByArrangement = { readonly [Name in ArrangementName]: BearingOf<Modules[Name]> }
export type Bearing = BearingByArrangement[ArrangementName]
/** The design of each arrangement, and of any. */
export type DesignByArrangement = { readonly [Name in ArrangementName]: DesignBy<Modules[Name]> }
export type Design = DesignByArrangement[ArrangementName]

type Named = { readonly arrangement?: ArrangementName }

export type RadialInput = InputByArrangement['radial']
export type RadialBearing = BearingByArrangement['radial']
export type RollerBearing = BearingByArrangement['roller']
export type ThrustBearing = BearingByArrangement['thrust']
export type CagedBearing = BearingByArrangement['caged']
/** Two rings with a full ring of balls or rollers between them. */
export type FullRingDesign = RadialDesign | RollerDesign
export type RadialDesign = DesignByArrangement['radial']
export type RollerDesign = DesignByArrangement['roller']
export type ThrustDesign = DesignByArrangement['thrust']
export type CagedDesign = DesignByArrangement['caged']

export const ARRANGEMENT_NAMES = Object.keys(ARRANGEMENTS) as readonly ArrangementName[]

/** The arrangement where none is stated. */
const USUAL: ArrangementName = 'radial'

export const nameOf = ({ arrangement }: Named): ArrangementName => arrangement ?? USUAL
export const traitsOf = (design: Named): Traits => ARRANGEMENTS[nameOf(design)].traits

/** The parts of a design's arrangement that have a wood of their own, in the order in which they are made. */
export const woodPartsOf = (design: Named): readonly WoodPart[] => {
  const { members, ballSet } = traitsOf(design)
  if (members === 'plates') return ['plates']
  return ['outerRing', 'innerRing', ...(ballSet === 'caged' ? ['cage' as const] : [])]
}

/** Sources of the sizes of a design. A split inner ring has to leave room for the heads of its screws. */
export const sourcesOf = ({ arrangement, split }: Sourced): readonly SourceId[] => [
  // what was designed is of an arrangement that there is
  ...ARRANGEMENTS[(arrangement as ArrangementName | undefined) ?? USUAL].sources,
  ...(split === 'inner-ring' ? (['asme-b18.6.1'] as const) : []),
]
type Sourced = { readonly arrangement?: string; readonly split?: Split }

/** The module of an arrangement, for code that treats all of them alike. */
export const arrangementOf = (design: Named): Arrangement<DesignInput, Bearing> => ARRANGEMENTS[nameOf(design)]

/** The design of an input, of whatever arrangement: see `designOf`. */
export const design = (input: DesignInput): Result<Design, readonly Refusal[]> =>
  designOf(arrangementOf(input), input) as Result<Design, readonly Refusal[]>

export type FullRingInput = InputByArrangement['radial' | 'roller']
export type FullRingBearing = BearingByArrangement['radial' | 'roller']

/** The bearing of two rings with a full ring of balls or rollers between them. */
export const fullRingsOf = (input: FullRingInput): Result<FullRingBearing, readonly Refusal[]> =>
  input.arrangement === 'roller' ? ARRANGEMENTS.roller.bearingOf(input) : ARRANGEMENTS.radial.bearingOf(input)

export const isOfPlates = (design: Design): design is ThrustDesign => 'plate' in design.bearing
export const isOfRollers = (design: Design): design is RollerDesign =>
  'cheeks' in design.bearing && design.bearing.cheeks !== undefined
export const isCaged = (design: Design): design is CagedDesign => 'cage' in design.bearing

/** A question that can be asked of some arrangements: stated once, beside the question. */
export interface Question<Name extends ArrangementName = ArrangementName> {
  /** The path that asks it. */
  readonly name: string
  readonly serves: readonly Name[]
}

/** Why a question has no answer for an arrangement; nothing where it has. */
export function notServed(input: Named, { name, serves }: Question): readonly Refusal[] {
  const arrangement = nameOf(input)
  if (serves.includes(arrangement)) return []
  return [{ code: 'not-answered', path: '/arrangement', arrangement, question: name }]
}

/** The bearing that a question is asked of, where the question serves its arrangement: see `echoedBearing`. */
export function echoedBearingFor<Name extends ArrangementName>(
  question: Question<Name>,
  input: DesignInput,
): Result<BearingByArrangement[Name], readonly Refusal[]> {
  const refused = notServed(input, question)
  if (refused.length > 0) return fail(refused)
  // Of the arrangements that the question serves, as was just made sure.
  return echoedBearing(arrangementOf(input), input) as Result<BearingByArrangement[Name], readonly Refusal[]>
}
