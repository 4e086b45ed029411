import type { FullRingArrangement } from '#shared/bearing/arrangement.ts'
import { type FullRings, fullRings } from '#shared/bearing/full-rings.ts'
import { outerSideOf } from '#shared/bearing/outer-side.ts'
import { ok } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { rollerDimensions } from './dimensions.ts'
import { rollerFindings } from './findings.ts'
import { ROLLER_FIELDS, type RollerInput } from './input.ts'
import { type ResolvedRoller, ROLLER_TRAITS, resolveRoller } from './resolve.ts'

/** A full ring of rollers between two plain rings. */
export interface RollerBearing extends FullRings {
  readonly settled: ResolvedRoller
  readonly cheeks: Cheeks
}

/** Discs screwed on both sides of the outer ring: they keep the rollers, and the inner ring between them, from walking out. */
export interface Cheeks {
  readonly outsideDiameter: Mm
  /** Within the inner ring's wood, clear of the bore. */
  readonly holeDiameter: Mm
  readonly thickness: Mm
}

/** A cheek's thickness in roller diameters: thin plywood beside a usual dowel. Common practice, no source. */
const CHEEK_THICKNESS = 3 / 8

export const ROLLER: FullRingArrangement<'roller', RollerInput, RollerBearing, typeof ROLLER_FIELDS.fields> = {
  name: 'roller',
  traits: ROLLER_TRAITS,
  fields: ROLLER_FIELDS,
  bearingOf: (input) => {
    const resolution = resolveRoller(input)
    if (!resolution.ok) return resolution
    const rings = fullRings(resolution.value)
    return rings.ok ? ok({ ...rings.value, cheeks: cheeksOf(rings.value) }) : rings
  },
  outerSideOf: (input) => {
    const resolution = resolveRoller(input)
    return resolution.ok ? outerSideOf(resolution.value) : resolution
  },
  dimensionsOf: rollerDimensions,
  findingsOf: rollerFindings,
}

/** The hole stands halfway through the inner ring's wood: it holds the ring's sides, and clears what goes through the bore. */
const cheeksOf = ({ outerRing, innerRing, settled }: FullRings): Cheeks => ({
  outsideDiameter: outerRing.outsideDiameter,
  holeDiameter: mm((innerRing.boreDiameter + innerRing.landDiameter) / 2),
  thickness: mm(CHEEK_THICKNESS * settled.ballDiameter),
})
