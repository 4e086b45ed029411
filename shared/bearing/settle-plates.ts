import type { Groove } from '#shared/geometry/groove.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { USUAL_DENOMINATOR } from '#shared/units/shop-figure.ts'
import { traitsOf } from './arrangement.ts'
import * as defaults from './defaults.ts'
import type { DesignInput } from './design-input.ts'
import type { Refusal } from './refusal.ts'
import {
  assumedIn,
  ballsInput,
  ballsOf,
  depthInput,
  foreignTo,
  gapBand,
  grooveInput,
  grooveOf,
  outsideInput,
  type SettledBallRing,
  tooFewMeasured,
  undercut,
} from './settle.ts'

/** An input of two plates with nothing left open. */
export interface SettledPlates extends SettledBallRing {
  /** Of both plates. */
  readonly groove: Groove
  readonly thickness: Mm
}

/** The last ball of a ring that lies open is dropped in from above: any ring that closes takes it. */
const ANY_GAP_WILL_DO = mm(0)

/**
 * What `settle` does for rings: fills in what was left out, and works out what does not depend on the ring.
 *
 * @returns all faults at once
 */
export function settlePlates(input: DesignInput): Result<SettledPlates, readonly Refusal[]> {
  const foreign = foreignTo(input)
  if (foreign.length > 0) return fail(foreign)
  const traits = traitsOf(input)
  const { ballDiameter, ballScatter } = ballsOf(input, traits)
  const groove = grooveOf(input.plates, input.groove, ballDiameter, defaults.PLATE_ENGAGEMENT)
  const faults = [...tooFewMeasured(input), ...undercut(input, 'plates', groove)]
  if (faults.length > 0) return fail(faults)
  const thickness = input.plates?.thickness ?? mm(defaults.PLATE_THICKNESS * ballDiameter)
  const band = gapBand(input, ballDiameter, ANY_GAP_WILL_DO)
  const finishAllowance = input.finishAllowance ?? defaults.FINISH_ALLOWANCE
  const whole: DesignInput = {
    units: input.units,
    ...(input.arrangement === undefined ? {} : { arrangement: input.arrangement }),
    balls: ballsInput(input, ballScatter),
    bore: input.bore,
    plates: {
      ...depthInput(input.plates, defaults.PLATE_ENGAGEMENT),
      ...outsideInput(input.plates, input.units, mm(defaults.PLATE_WALL * ballDiameter)),
      thickness,
    },
    groove: grooveInput(input.groove),
    ...band,
    finishAllowance,
    ...(input.units === 'in' ? { shopDenominator: input.shopDenominator ?? USUAL_DENOMINATOR } : {}),
  }
  const assumed = assumedIn(input, whole)
  return ok({ input: whole, traits, assumed, ballDiameter, ballScatter, groove, thickness, ...band, finishAllowance })
}
