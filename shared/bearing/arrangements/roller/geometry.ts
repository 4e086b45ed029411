import { type FullRings, fullRings } from '#shared/bearing/full-rings.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
import { ok, type Result } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { RollerInput } from './input.ts'
import { type ResolvedRoller, resolveRoller } from './resolve.ts'

/** A full ring of rollers between two plain rings. */
export interface RollerBearing extends FullRings {
  readonly resolved: ResolvedRoller
  readonly cheeks: Cheeks
}

/** Discs screwed on both sides of the outer ring: they keep the rollers, and the inner ring between them, from walking out. */
interface Cheeks {
  readonly outsideDiameter: Mm
  /** Within the inner ring's wood, clear of the bore. */
  readonly holeDiameter: Mm
  readonly thickness: Mm
}

/** With more play than this, in roller diameters, rollers wedge over one another instead of running side by side. Common practice, no source. */
const MOST_PLAY = 1 / 2
/** A cheek's thickness in roller diameters: thin plywood beside a usual dowel. Common practice, no source. */
const CHEEK_THICKNESS = 3 / 8

/** Every size of a roller bearing, or all reasons at once why there is none. */
export function rollerBearingOf(input: RollerInput): Result<RollerBearing, readonly Refusal[]> {
  const resolution = resolveRoller(input)
  if (!resolution.ok) return resolution
  const rings = fullRings(resolution.value, playRefusals(resolution.value))
  return rings.ok ? ok({ ...rings.value, cheeks: cheeksOf(rings.value) }) : rings
}

function playRefusals({ radialInternalClearance: given, ballDiameter }: ResolvedRoller): readonly Refusal[] {
  const below = mm(MOST_PLAY * ballDiameter)
  return given < below ? [] : [{ code: 'play-lets-rollers-climb', path: '/radialInternalClearance', given, below }]
}

/** The hole stands halfway through the inner ring's wood: it holds the ring's sides, and clears what goes through the bore. */
const cheeksOf = ({ outerRing, innerRing, resolved }: FullRings): Cheeks => ({
  outsideDiameter: outerRing.outsideDiameter,
  holeDiameter: mm((innerRing.boreDiameter + innerRing.landDiameter) / 2),
  thickness: mm(CHEEK_THICKNESS * resolved.ballDiameter),
})
