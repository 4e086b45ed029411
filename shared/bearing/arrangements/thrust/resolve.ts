import { OPEN_SIDE } from '#shared/bearing/assembly.ts'
import * as defaults from '#shared/bearing/defaults.ts'
import {
  assumedIn,
  ballsInput,
  ballsOf,
  denominatorInput,
  depthInput,
  faultsOfMeasured,
  gapBand,
  grooveInput,
  grooveOf,
  outsideInput,
  type Resolution,
  type ResolvedBallRing,
  undercut,
  wholeInput,
} from '#shared/bearing/resolve.ts'
import type { Outside } from '#shared/bearing/rings.ts'
import type { Traits } from '#shared/bearing/traits.ts'
import type { Groove } from '#shared/geometry/groove.ts'
import { fail, ok } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { rounded } from '#shared/units/rounded.ts'
import { THRUST_FIELDS, type ThrustInput } from './input.ts'

export const THRUST_TRAITS: Traits = { members: 'plates', rolls: 'balls', ballSet: 'full', raceway: 'groove' }

/**
 * Depth of the groove in each plate, in ball diameters: together they leave the faces 2/5 of a ball apart.
 * Common practice, no source.
 */
export const PLATE_ENGAGEMENT = 0.3
/** Wood round the groove of a plate, from its edge outward, in ball diameters. */
const WALL = 1
/** A plate's thickness in ball diameters: most of it is left under the groove. */
const THICKNESS = 1

export interface ResolvedThrust extends ResolvedBallRing {
  readonly input: ThrustInput
  /** The groove of both plates. */
  readonly groove: Groove
  readonly outside: Outside
  readonly thickness: Mm
}

/**
 * Fills in what was left out, and works out what does not depend on the ring.
 *
 * @returns all faults at once
 */
export function resolveThrust(input: ThrustInput): Resolution<ResolvedThrust> {
  const { units } = input
  const { ballDiameter, ballScatter } = ballsOf(input, defaults.BALL_SCATTER)
  const groove = grooveOf(input.plates, input.groove, ballDiameter, PLATE_ENGAGEMENT)
  const faults = [...faultsOfMeasured(input), ...undercut(input, 'plates', groove)]
  if (faults.length > 0) return fail(faults)
  const thickness = input.plates?.thickness ?? rounded(mm(THICKNESS * ballDiameter), units)
  const band = gapBand(input, ballDiameter, OPEN_SIDE)
  const finishAllowance = input.finishAllowance ?? defaults.FINISH_ALLOWANCE
  const outside = outsideInput(input.plates, units, mm(WALL * ballDiameter))
  const whole: ThrustInput = wholeInput(THRUST_FIELDS, input, {
    units,
    arrangement: 'thrust',
    balls: ballsInput(input, ballScatter),
    bore: input.bore,
    plates: { ...depthInput(input.plates, PLATE_ENGAGEMENT), ...outside, thickness },
    groove: grooveInput(input.groove),
    ...band,
    finishAllowance,
    ...denominatorInput(input),
  })
  return ok({
    input: whole,
    traits: THRUST_TRAITS,
    assumed: assumedIn(THRUST_FIELDS, input, whole),
    ballDiameter,
    ballScatter,
    groove,
    outside,
    thickness,
    assembly: OPEN_SIDE,
    ...band,
    finishAllowance,
  })
}
