import { OPEN_SIDE } from '#shared/bearing/assembly.ts'
import * as defaults from '#shared/bearing/defaults.ts'
import {
  assumedIn,
  ballsInput,
  ballsOf,
  denominatorInput,
  faultsOfMeasured,
  gapBand,
  type Resolution,
  type ResolvedBallRing,
  wholeInput,
} from '#shared/bearing/resolve.ts'
import type { Traits } from '#shared/bearing/traits.ts'
import { fail, ok } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { rounded } from '#shared/units/rounded.ts'
import { FOOTSTEP_FIELDS, type FootstepInput } from './input.ts'

export const FOOTSTEP_TRAITS: Traits = { members: 'plates', rolls: 'balls', ballSet: 'full', raceway: 'track' }

/** In ball diameters. */
const FLOOR = 1 / 2
const WALL = 2 / 3

export interface ResolvedFootstep extends ResolvedBallRing {
  readonly input: FootstepInput
  readonly floor: Mm
  readonly wall: Mm
}

export function resolveFootstep(input: FootstepInput): Resolution<ResolvedFootstep> {
  const faults = faultsOfMeasured(input)
  if (faults.length > 0) return fail(faults)
  const { units, bore } = input
  const { ballDiameter, ballScatter } = ballsOf(input, defaults.BALL_SCATTER)
  const cup = {
    floor: input.cup?.floor ?? rounded(mm(FLOOR * ballDiameter), units),
    wall: input.cup?.wall ?? rounded(mm(WALL * ballDiameter), units),
  }
  const band = gapBand(input, ballDiameter, OPEN_SIDE)
  const balls = ballsInput(input, ballScatter)
  const whole: FootstepInput = wholeInput(FOOTSTEP_FIELDS, input, {
    units,
    arrangement: 'footstep',
    balls,
    bore,
    cup,
    ...band,
    ...denominatorInput(input),
  })
  return ok({
    input: whole,
    traits: FOOTSTEP_TRAITS,
    assumed: assumedIn(FOOTSTEP_FIELDS, input, whole),
    ballDiameter,
    ballScatter,
    finishAllowance: defaults.FINISH_ALLOWANCE,
    ...cup,
    assembly: OPEN_SIDE,
    ...band,
  })
}
