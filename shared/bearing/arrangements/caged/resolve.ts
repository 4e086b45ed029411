import { resolveGroovedRings } from '#shared/bearing/grooved-rings.ts'
import { assumedIn, type Resolution, type ResolvedRings, wholeInput } from '#shared/bearing/resolve.ts'
import type { Traits } from '#shared/bearing/traits.ts'
import { boreRadiusForWeb, type Pockets, webAtBore } from '#shared/geometry/cage.ts'
import { pitchDiameterForHalfTurn } from '#shared/geometry/eccentric-filling.ts'
import { seatIn } from '#shared/geometry/seat.ts'
import { fail, ok } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { rounded, roundedUp } from '#shared/units/rounded.ts'
import { CAGED_FIELDS, type CagedInput } from './input.ts'

export const CAGED_TRAITS: Traits = { members: 'rings', rolls: 'balls', ballSet: 'caged', raceway: 'groove' }

/**
 * No deeper than lets a ball in between the lands of one-piece rings, the inner one aside: half a ball in both grooves together.
 * Common practice, no source.
 */
const ENGAGEMENT = { outerRing: 0.2, innerRing: 0.25 }
/** Wood between two pockets at the least, in ball diameters; more where balls so near do not go in. */
const WEB = 1 / 4
/** How much wider than the ball a pocket is, in ball diameters: it rolls freely, and does not rattle. */
const POCKET_CLEARANCE = 0.05
/** Between the cage and either land, in ball diameters. */
const LAND_CLEARANCE = 0.04

type CageInput = NonNullable<CagedInput['cage']>

/** An input of a caged bearing with nothing left open. */
export interface ResolvedCaged extends ResolvedRings {
  readonly input: CagedInput
  readonly pitchRadius: Mm
  readonly pockets: Pockets
  /** Between the cage and the land of either ring. */
  readonly landClearance: Mm
  readonly cageWidth: Mm
}

/**
 * Fills in what was left out. No gap closes this ring: the balls stand as far apart as the wood between their pockets keeps
 * them, or as the pitch diameter asked for has it.
 *
 * @returns all faults at once
 */
export function resolveCaged(input: CagedInput): Resolution<ResolvedCaged> {
  const resolution = resolveGroovedRings(input, { engagement: ENGAGEMENT, split: 'none' })
  if (!resolution.ok) return resolution
  const rings = resolution.value
  const { ballDiameter } = rings
  const { units } = input
  const pocketClearance = input.cage?.pocketClearance ?? rounded(mm(POCKET_CLEARANCE * ballDiameter), units)
  const landClearance = input.cage?.landClearance ?? rounded(mm(LAND_CLEARANCE * ballDiameter), units)
  const cageWidth = input.cage?.width ?? rings.width
  const pockets: Pockets = { pocketDiameter: mm(ballDiameter + pocketClearance), ballCount: input.balls.count }
  const inset = insetOf(rings, landClearance)
  const apart = apartIn(input, rings, pockets, inset)
  const cage: CageInput = { ...apart, pocketClearance, landClearance, width: cageWidth }
  const whole: CagedInput = wholeInput(CAGED_FIELDS, input, { ...rings.input, arrangement: 'caged', cage })
  const pitchRadius =
    apart.pitchDiameter === undefined ? mm(boreRadiusForWeb(apart.web, pockets) + inset) : mm(apart.pitchDiameter / 2)
  const touching = mm(2 * (boreRadiusForWeb(mm(0), pockets) + inset))
  if (!(2 * pitchRadius > touching)) {
    return fail([{ code: 'pockets-meet', path: '/cage/pitchDiameter', given: mm(2 * pitchRadius), above: touching }])
  }
  const assumed = assumedIn(CAGED_FIELDS, input, whole)
  return ok({ ...rings, traits: CAGED_TRAITS, input: whole, assumed, pitchRadius, pockets, landClearance, cageWidth })
}

type Rings = Pick<ResolvedRings, 'ballDiameter' | 'innerGroove' | 'radialInternalClearance' | 'split'>

/** How much further in than the balls' centres the cage's bore lies: by what stands out of the inner groove, less the clearance. */
function insetOf({ ballDiameter, innerGroove, radialInternalClearance }: Rings, landClearance: Mm): number {
  const seat = seatIn(innerGroove, ballDiameter)
  return ballDiameter / 2 + radialInternalClearance / 2 - seat.depth - landClearance
}

/** How far apart the balls stand, as it was said; or with the usual web, and wide enough to go in between rings of one piece. */
function apartIn(
  { cage, units }: CagedInput,
  { ballDiameter, split }: Rings,
  pockets: Pockets,
  inset: number,
): { readonly web: Mm; readonly pitchDiameter?: never } | { readonly web?: never; readonly pitchDiameter: Mm } {
  if (cage?.pitchDiameter !== undefined) return { pitchDiameter: cage.pitchDiameter }
  const usual = rounded(mm(WEB * ballDiameter), units)
  if (cage?.web !== undefined || split !== 'none') return { web: cage?.web ?? usual }
  // Rounded up, so that the balls still go in.
  return { web: mm(Math.max(usual, roundedUp(webToFill(pockets, ballDiameter, inset) ?? mm(0), units))) }
}

/** The least web with which the balls, lying side by side, fill no more than a half turn; undefined where no wood is left. */
export function webToFill(pockets: Pockets, ballDiameter: Mm, inset: number): Mm | undefined {
  const boreRadius = pitchDiameterForHalfTurn(pockets.ballCount, ballDiameter) / 2 - inset
  return 2 * boreRadius > pockets.pocketDiameter ? webAtBore(mm(boreRadius), pockets) : undefined
}
