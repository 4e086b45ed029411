import type { Static } from 'typebox'
import type { SpeedLimit } from '#shared/bearing/load-check/checked-load.ts'
import type { LoadCheckInput } from '#shared/bearing/load-check/input.ts'
import type { Limit } from '#shared/bearing/load-check/limits.ts'
import type { LoadCheck } from '#shared/bearing/load-check/load-check.ts'
import type { SeatLoad } from '#shared/bearing/load-check/seat-load.ts'
import type { LoadWarning } from '#shared/bearing/load-check/warning.ts'
import { LOAD_CHECK_SOURCES } from '#shared/data/sources.ts'
import { cautionsOf } from '#src/wire/caution.ts'
import { toDesignInput } from '#src/wire/design-input.ts'
import { pressureUnits, showForce, showPressure, toNewtons, usualForceUnits } from '#src/wire/force.ts'
import { show } from '#src/wire/length.ts'
import { present } from '#src/wire/optional.ts'
import { toSource } from '#src/wire/source.ts'
import type { Warning } from '#src/wire/warning.ts'
import type { LoadCheckRequest, LoadCheckResponse } from './schema.ts'
import {
  ESTIMATE,
  explainDent,
  explainFirstMark,
  explainSpeedLimit,
  explainWarning,
  type Spoken,
  verdict,
} from './sentences.ts'

/** In what a request wants its answer. */
export const spokenOf = ({ design, forceUnits }: LoadCheckRequest): Spoken => ({
  units: design.units,
  forceUnits: forceUnits ?? usualForceUnits(design.units),
})

/** The caller's input in the core's words. */
export function toLoadCheckInput(request: LoadCheckRequest): LoadCheckInput {
  const { design, radialLoad, wood, ballWood, dentFraction, turning, speed } = request
  return present<LoadCheckInput>({
    design: toDesignInput(design),
    radialLoad: toNewtons(radialLoad, spokenOf(request).forceUnits),
    wood,
    ballWood,
    dentFraction,
    turning,
    speed,
  })
}

const USED = LOAD_CHECK_SOURCES.map(toSource)

/** A load check in the caller's units and in words. */
export function toLoadCheckResponse(check: LoadCheck, spoken: Spoken): LoadCheckResponse {
  const { load, bearing, ratios } = check
  const { units, forceUnits } = spoken
  const { ballWood, ...rest } = load
  const [lowest] = check.speedLimits
  return {
    units,
    forceUnits,
    pressureUnits: pressureUnits(forceUnits),
    radialLoad: showForce(load.radialLoad, forceUnits),
    wood: rest.wood,
    ...(ballWood === undefined ? {} : { ballWood }),
    dentFraction: rest.dentFraction,
    turning: rest.turning,
    verdict: verdict(check, spoken),
    sharing: toSharing(check, spoken),
    outerRing: toSeat(check.outerRing, spoken),
    innerRing: toSeat(check.innerRing, spoken),
    woodHardness: showPressure(check.hardness, forceUnits),
    compressionLimit: showPressure(check.compressionLimit, forceUnits),
    firstMark: toLimit(check.firstMark, explainFirstMark(check.firstMark, spoken), spoken),
    dent: toLimit(check.dent, explainDent(check, spoken), spoken),
    perTurn: { ...ratios },
    ...(load.speed === undefined || check.spun === undefined
      ? {}
      : { atSpeed: toAtSpeed(check, load.speed, check.spun, spoken) }),
    speedLimit: toSpeedLimit(lowest),
    speedLimits: check.speedLimits.map(toSpeedLimit),
    warnings: check.warnings.map((warning) => toWarning(warning, spoken)),
    cautions: [ESTIMATE, ...cautionsOf(bearing.settled.input)],
    sources: USED,
  }
}

/** Less than this part of the load is rounding, on a ball that stands square to it. */
const NO_LOAD = 1e-9

function toSharing({ sharing, load, bearing }: LoadCheck, spoken: Spoken): LoadCheckResponse['sharing'] {
  const { underBall, astride, byIntegral } = sharing
  const force = (newtons: number) => showForce(newtons, spoken.forceUnits)
  const most = Math.max(underBall.most, astride.most)
  return {
    mostLoadedBall: force(most),
    timesEvenShare: (most * bearing.settled.input.balls.count) / load.radialLoad,
    byIntegral: force(byIntegral.most),
    loadZone: underBall.loadZone,
    ballsUnderLoad: underBall.each.filter((newtons) => newtons > NO_LOAD * load.radialLoad).length,
    ballLoads: underBall.each.map(force),
    displacement: show(underBall.displacement, spoken.units),
  }
}

function toSeat(load: SeatLoad, { units, forceUnits }: Spoken): LoadCheckResponse['outerRing'] {
  return {
    seat: load.seat,
    ballLoad: showForce(load.ballLoad, forceUnits),
    width: show(load.width, units),
    ...(load.length === undefined ? {} : { length: show(load.length, units) }),
    maxPressure: showPressure(load.maxPressure, forceUnits),
    reachesEdges: load.reachesEdges,
    ...(load.dent === undefined ? {} : { dent: show(load.dent, units) }),
  }
}

const toLimit = ({ radialLoad, ballLoad, ring }: Limit, message: string, { forceUnits }: Spoken) => ({
  radialLoad: showForce(radialLoad, forceUnits),
  ballLoad: showForce(ballLoad, forceUnits),
  ring,
  message,
})

const toSpeedLimit = (limit: SpeedLimit) => ({
  reason: limit.reason,
  speed: limit.speed,
  message: explainSpeedLimit(limit),
})

function toAtSpeed({ ratios, spin }: LoadCheck, speed: number, spun: SeatLoad, spoken: Spoken) {
  const perSecond = speed / 60
  const stress = Math.max(spin.outerRimStress, spin.innerRimStress) * speed * speed
  return {
    speed,
    ballSetSpeed: ratios.ballSet * speed,
    ballSpinSpeed: ratios.ballSpin * speed,
    outerPassFrequency: ratios.outerPasses * perSecond,
    innerPassFrequency: ratios.innerPasses * perSecond,
    ballSpinFrequency: ratios.ballSpin * perSecond,
    ballForce: showForce(spin.ballForce * speed * speed, spoken.forceUnits),
    outerRing: toSeat(spun, spoken),
    rimStress: showPressure(stress, spoken.forceUnits),
  }
}

function toWarning({ severity, path, facts, suggestion }: LoadWarning, spoken: Spoken): Static<typeof Warning> {
  const said = { code: facts.code, severity, message: explainWarning(facts, spoken), path }
  if (suggestion === undefined) return said
  const { kind, value } = suggestion
  return { ...said, suggestion: { path, value: kind === 'force' ? showForce(value, spoken.forceUnits) : value } }
}
