import type { Refusal } from '#shared/bearing/refusal.ts'
import { depthPath } from '#shared/bearing/resolve.ts'
import { outerRingRound, type RingPair, ringPair } from '#shared/bearing/ring-pair.ts'
import { ballSpacing, webAtBore } from '#shared/geometry/cage.ts'
import { fillingAngle } from '#shared/geometry/eccentric-filling.ts'
import { plugDiameter } from '#shared/geometry/gauge.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { CagedInput } from './input.ts'
import { type ResolvedCaged, resolveCaged } from './resolve.ts'

/** The ring of wood that holds the balls evenly, in finished sizes. */
interface Cage {
  readonly boreDiameter: Mm
  readonly outsideDiameter: Mm
  /** Radially. */
  readonly thickness: Mm
  readonly width: Mm
  readonly pocketDiameter: Mm
  /** Wood between two pockets where it is least, at the bore. */
  readonly web: Mm
  /** Wood between a pocket and the side of the cage. */
  readonly rim: Mm
  /** Two halves, each with half of every pocket, where it comes in between rings that are closed; else one piece. */
  readonly pieces: 1 | 2
}

/** Two rings with fewer balls than they could hold, held evenly by a cage. */
export interface CagedBearing extends RingPair {
  readonly resolved: ResolvedCaged
  readonly cage: Cage
  /** Between neighbouring balls, as the cage holds them. */
  readonly ballSpacing: Mm
  /** The arc that the balls fill side by side, in degrees. */
  readonly fillingAngle: number
  /** The circle inside the balls seated in the outer groove. */
  readonly plugDiameter: Mm
}

/**
 * Every size of a caged bearing, or all reasons at once why there is none. Rings of one piece are filled eccentrically
 * (`eccentric-filling.ts`) before the cage comes in; its outside and its bore run clear of the lands.
 */
export function cagedBearingOf(input: CagedInput): Result<CagedBearing, readonly Refusal[]> {
  const resolution = resolveCaged(input)
  if (!resolution.ok) return resolution
  const resolved = resolution.value
  const { pitchRadius, ballDiameter } = resolved
  const pair = ringPair(resolved, pitchRadius, outerRingRound(pitchRadius, resolved))
  if (!pair.ok) return pair
  const faults = cageRefusals(pair.value, resolved)
  if (faults.length > 0) return fail(faults)
  const { count } = input.balls
  return ok({
    ...pair.value,
    resolved,
    cage: cageBetween(pair.value, resolved),
    ballSpacing: ballSpacing(pitchRadius, ballDiameter, count),
    fillingAngle: fillingAngle(count, ballDiameter, mm(2 * pitchRadius)),
    plugDiameter: plugDiameter(pitchRadius, ballDiameter),
  })
}

function cageBetween({ outerRing, innerRing }: RingPair, resolved: ResolvedCaged): Cage {
  const { landClearance, cageWidth, pockets, split } = resolved
  const boreDiameter = mm(innerRing.landDiameter + 2 * landClearance)
  const outsideDiameter = mm(outerRing.landDiameter - 2 * landClearance)
  return {
    boreDiameter,
    outsideDiameter,
    thickness: mm((outsideDiameter - boreDiameter) / 2),
    width: cageWidth,
    pocketDiameter: pockets.pocketDiameter,
    web: webAtBore(mm(boreDiameter / 2), pockets),
    rim: mm((cageWidth - pockets.pocketDiameter) / 2),
    pieces: split === 'none' ? 2 : 1,
  }
}

/** A cage that is there, that holds the balls where they are thickest, and that a pocket does not cut in two. */
function cageRefusals({ outerRing, innerRing, landGap }: RingPair, resolved: ResolvedCaged): readonly Refusal[] {
  const { landClearance: given, cageWidth, pockets, ballDiameter, pitchRadius, input } = resolved
  const refusals: Refusal[] = []
  const bore = innerRing.landDiameter / 2 + given
  const outside = outerRing.landDiameter / 2 - given
  if (!(outside > bore)) {
    refusals.push({ code: 'no-room-for-cage', path: '/cage/landClearance', given, below: mm(landGap / 2) })
  } else if (!(bore < pitchRadius && pitchRadius < outside)) {
    const ring = outside <= pitchRadius ? 'outerRing' : 'innerRing'
    const depth = (ring === 'outerRing' ? outerRing : innerRing).seatDepth
    const below = mm(ballDiameter / 2 - given)
    refusals.push({ code: 'cage-misses-middle', path: depthPath(input, ring), ring, depth, below })
  }
  if (!(cageWidth > pockets.pocketDiameter)) {
    refusals.push({ code: 'pocket-cuts-cage', path: '/cage/width', given: cageWidth, above: pockets.pocketDiameter })
  }
  return refusals
}
