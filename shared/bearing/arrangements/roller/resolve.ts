import { OPEN_SIDE } from '#shared/bearing/assembly.ts'
import * as defaults from '#shared/bearing/defaults.ts'
import { usualPlay } from '#shared/bearing/grooved-rings.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
import {
  assumedIn,
  ballsInput,
  ballsOf,
  denominatorInput,
  faultsOfMeasured,
  gapBand,
  outsideInput,
  type Resolution,
  type Resolved,
  wholeInput,
} from '#shared/bearing/resolve.ts'
import type { Traits } from '#shared/bearing/traits.ts'
import { PLAIN_TRACK } from '#shared/geometry/groove.ts'
import { fail, ok } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { rounded, roundedDown } from '#shared/units/rounded.ts'
import { ROLLER_FIELDS, type RollerInput } from './input.ts'

export const ROLLER_TRAITS: Traits = { members: 'rings', rolls: 'rollers', ballSet: 'full', raceway: 'track' }

/** Ring width in roller diameters: a dowel twice as long as thick hardly turns askew. Common practice, no source. */
const WIDTH = 2
/** How much shorter than the outer ring's width rollers and inner ring are, in roller diameters: they run free of the cheeks. */
const END_CLEARANCE = 0.05
/** Dowels are milled less true than balls and dry to ovals; rods of other materials are as true as balls. */
const SCATTER = { ...defaults.BALL_SCATTER, wood: 0.01 }

export interface ResolvedRoller extends Resolved {
  readonly input: RollerInput
  readonly rollerLength: Mm
}

/**
 * Fills in what was left out of a roller bearing's input. A plain track is a groove of depth 0 and endless radius, its limit, so
 * that seats, gauges and slopes need no case of their own.
 *
 * @returns all faults at once
 */
export function resolveRoller(input: RollerInput): Resolution<ResolvedRoller> {
  const { units } = input
  const { ballDiameter, ballScatter } = ballsOf(input, SCATTER)
  const width = input.width ?? rounded(mm(WIDTH * ballDiameter), units)
  const faults = [...faultsOfMeasured(input), ...tooLong(input, width)]
  if (faults.length > 0) return fail(faults)
  // Of a ring so narrow that nothing would be left beside the clearance, half of its width.
  const usualLength = roundedDown(mm(Math.max(width - END_CLEARANCE * ballDiameter, width / 2)), units)
  const rollerLength = input.balls.length ?? usualLength
  const outside = outsideInput(input.outerRing, units, mm(defaults.OUTER_WALL * ballDiameter))
  const rings = {
    radialInternalClearance: input.radialInternalClearance ?? usualPlay(ballDiameter, ballScatter, input),
    finishAllowance: input.finishAllowance ?? defaults.FINISH_ALLOWANCE,
    width,
  }
  const band = gapBand(input, ballDiameter, OPEN_SIDE)
  const whole: RollerInput = wholeInput(ROLLER_FIELDS, input, {
    units,
    arrangement: 'roller',
    balls: ballsInput(input, ballScatter, rollerLength),
    bore: input.bore,
    outerRing: outside,
    ...band,
    ...rings,
    ...denominatorInput(input),
  })
  return ok({
    input: whole,
    traits: ROLLER_TRAITS,
    assumed: assumedIn(ROLLER_FIELDS, input, whole),
    ballDiameter,
    ballScatter,
    outerGroove: PLAIN_TRACK,
    innerGroove: PLAIN_TRACK,
    split: 'none',
    outside,
    usualEngagement: { outerRing: 0, innerRing: 0 },
    rollerLength,
    assembly: OPEN_SIDE,
    ...rings,
    ...band,
  })
}

/** A roller as long as the ring is wide, or longer, would be pinched between the cheeks. */
function tooLong({ balls: { length } }: RollerInput, width: Mm): readonly Refusal[] {
  return length === undefined || length < width
    ? []
    : [{ code: 'roller-longer-than-ring', path: '/balls/length', given: length, below: width }]
}
