import { echoedBearingFor } from '#shared/bearing/arrangements.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { sharedByBalls, sharedByMany } from '#shared/contact/load-distribution.ts'
import { contactWood } from '#shared/data/contact-woods.ts'
import { ok, type Result } from '#shared/result.ts'
import type { CheckedLoad, SpeedReason } from './checked-load.ts'
import { type LoadCheckInput, type ResolvedLoad, RING_LOAD_CHECK, resolveLoad } from './input.ts'
import { type Seated, seated } from './limits.ts'
import { ballBody, seatUnder } from './seat-load.ts'
import { lowestFirst, splittingSpeed } from './speed-limits.ts'
import { rollingRadii, spinLoads, turnRatios } from './speeds.ts'
import { findLoadWarnings, type Loaded, type LoadWarning } from './warning.ts'

/** A load as it was checked, and what is worth a warning in it. */
export interface LoadCheck extends CheckedLoad {
  readonly warnings: readonly LoadWarning[]
}

/**
 * How much does it carry, and how fast may it turn? The load is shared by the balls at rest as elastic contacts share it,
 * with the play that there is; what the wood gives beyond that spreads the load further, so that the most loaded ball is
 * not underrated. An estimate for light work: averages of clear wood, one stiffness, no time under load, no shocks.
 *
 * @returns the check, or every reason why there is no such bearing
 */
export function loadCheck(input: LoadCheckInput): Result<LoadCheck, readonly Refusal[]> {
  const made = echoedBearingFor(RING_LOAD_CHECK, input.design)
  if (!made.ok) return made
  const bearing = made.value
  const load = resolveLoad(input, bearing.resolved.input.balls.material === 'wood')
  const balls = seated(bearing, load)
  const { outer, inner, sharing } = balls
  const underBall = sharedByBalls(load.radialLoad, sharing, 0)
  const astride = sharedByBalls(load.radialLoad, sharing, 1 / 2)
  const most = Math.max(underBall.most, astride.most)
  const check: CheckedLoad = {
    load,
    bearing,
    sharing: { underBall, astride, byIntegral: sharedByMany(load.radialLoad, sharing) },
    outerRing: seatUnder(outer, most),
    innerRing: seatUnder(inner, most),
    softer: outer.softer,
    hardness: outer.hardness,
    compressionLimit: contactWood(load.wood).compressionLimit,
    firstMark: balls.firstMark,
    dent: balls.dent,
    ...atSpeed(bearing, load, balls),
  }
  return ok({ ...check, warnings: findLoadWarnings(loadedOf(check)) })
}

const RINGS = ['outerRing', 'innerRing'] as const

function loadedOf(check: CheckedLoad): Loaded {
  const { load, bearing } = check
  return {
    ...check,
    design: bearing.resolved.input,
    asked: { ...load, path: '/radialLoad', load: load.radialLoad },
    seats: RINGS.map((part) => ({ part, seat: check[part], grooveWidth: bearing[part].grooveWidth })),
    ofSharing: sharingWarnings(check),
  }
}

/** Stribeck's allowance for play, 5 Fr / Z: beyond it a ball carries more than is usual. */
const USUAL_SHARE = 5

function sharingWarnings({ sharing, load, bearing }: CheckedLoad): readonly LoadWarning[] {
  const { count } = bearing.resolved.input.balls
  const share = sharing.underBall.most / load.radialLoad
  if (!(share * count > USUAL_SHARE && count > USUAL_SHARE)) return []
  const facts = { code: 'one-ball-carries', share, play: bearing.radialInternalClearance } as const
  return [{ severity: 'note', path: '/design/radialInternalClearance', facts }]
}

function atSpeed(
  bearing: RingPair,
  load: ResolvedLoad,
  { outer, inner, outerDent }: Seated,
): Pick<CheckedLoad, 'ratios' | 'spin' | 'spun' | 'speedLimits'> {
  const { turning, speed } = load
  const wood = contactWood(load.wood)
  const ratios = turnRatios(rollingRadii(bearing, outer, inner), bearing.resolved.input.balls.count, turning)
  const spin = spinLoads(bearing, ballBody(bearing, load), wood, ratios, turning)
  const rim = Math.max(spin.outerRimStress, spin.innerRimStress)
  return {
    ratios,
    spin,
    ...(speed === undefined ? {} : { spun: seatUnder(outer, spin.ballForce * speed * speed) }),
    speedLimits: lowestFirst<SpeedReason>([
      { reason: 'balls-dent-groove', speed: Math.sqrt(outerDent / spin.ballForce) },
      { reason: 'ring-splits', speed: splittingSpeed(wood.tensionStrength, rim) },
    ]),
  }
}
