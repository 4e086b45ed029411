import type { Static } from 'typebox'
import { traitsOf } from '#shared/bearing/arrangements.ts'
import { LOAD_CHECK_SOURCES } from '#shared/data/sources.ts'
import { significantDown } from '#shared/numbers/significant.ts'
import { type AnyLoadCheck, type AnyLoadCheckInput, LOAD_NAMES } from '#shared/questions/load/any-load-check.ts'
import { LOAD_FIELDS } from '#shared/questions/load/fields.ts'
import type { LoadCheck } from '#shared/questions/load/load-check.ts'
import type { PlateLoadCheck } from '#shared/questions/load/plate-load-check.ts'
import type { SeatLoad } from '#shared/questions/load/seat-load.ts'
import type { SpeedLimit } from '#shared/questions/load/speed-limits.ts'
import type { LoadSpeedReason, LoadWarning } from '#shared/questions/load/warning.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { answer, tagOf } from '#src/api/answer.ts'
import { assumptionsIn, defaultsOf, designDefaults } from '#src/api/assumption.ts'
import { cautionsOf } from '#src/api/caution.ts'
import { toDesignInput, toDesignRequest } from '#src/api/design-input.ts'
import { fromRequest, toRequest } from '#src/api/fields.ts'
import { pressureUnits, showForce, showForceLimit, showPressure, toNewtons, usualForceUnits } from '#src/api/force.ts'
import { show } from '#src/api/length.ts'
import { showNumber } from '#src/api/number.ts'
import { present } from '#src/api/optional.ts'
import { toSource } from '#src/api/source.ts'
import type { Warning } from '#src/api/warning.ts'
import type { Fault } from '#src/http/problem.ts'
import {
  estimateOnly,
  explainDent,
  explainFirstMark,
  explainSpeedLimit,
  explainUneven,
  explainWarning,
  loadMissing,
  type Spoken,
  verdict,
  withTallest,
} from '#src/words/load-check.ts'
import { termsOf } from '#src/words/terms.ts'
import {
  LOAD_CHECK_FIELDS,
  type LoadCheckRequest,
  type LoadCheckResponse,
  type RingLoadCheckResponse,
  type ThrustLoadCheckResponse,
} from './schema.ts'

/** The units and the terms of the answer to a request. */
const spokenOf = ({ design, forceUnits }: LoadCheckRequest): Spoken => ({
  terms: termsOf(design),
  units: design.units,
  forceUnits: forceUnits ?? usualForceUnits(design.units),
})

/** The caller's input in the core's words, or that the load is missing which a bearing of this kind carries. */
export function toLoadCheckInput(request: LoadCheckRequest): Result<AnyLoadCheckInput, readonly Fault[]> {
  const { design } = request
  const name = LOAD_NAMES[traitsOf(design).members]
  if (request[name] === undefined) return fail([{ path: `/${name}`, message: loadMissing(name) }])
  const { units, forceUnits } = spokenOf(request)
  const asked = fromRequest(LOAD_FIELDS, request, units)
  const newtons = (force: number | undefined) => (force === undefined ? undefined : toNewtons(force, forceUnits))
  return ok(
    present<AnyLoadCheckInput>({
      ...asked,
      design: toDesignInput(design),
      radialLoad: newtons(asked.radialLoad),
      axialLoad: newtons(asked.axialLoad),
    }),
  )
}

const USED = LOAD_CHECK_SOURCES.map(toSource)

/** A load check of any arrangement, in the caller's units and in words. */
export const toLoadAnswer = (check: AnyLoadCheck, request: LoadCheckRequest): LoadCheckResponse =>
  'plates' in check ? toThrustResponse(check, request) : toRingResponse(check, request)

function toRingResponse(check: LoadCheck, request: LoadCheckRequest): RingLoadCheckResponse {
  const spoken = spokenOf(request)
  const { load, ratios } = check
  const [lowest] = check.speedLimits
  return answer(
    {
      arrangement: tagOf(check.bearing.resolved.input, 'radial', 'roller', 'caged'),
      ...toHead(check, request, spoken),
    },
    {
      ...toSpoken(spoken),
      sharing: toSharing(check, spoken),
      outerRing: toSeat(check.outerRing, spoken),
      innerRing: toSeat(check.innerRing, spoken),
      ...toStrengths(check, spoken),
      firstMark: toLimit(check.firstMark, explainFirstMark(check.firstMark, spoken), spoken),
      dent: toLimit(check.dent, explainDent(check.dent, spoken), spoken),
      perTurn: {
        ballSet: showNumber(ratios.ballSet),
        ballSpin: showNumber(ratios.ballSpin),
        outerPasses: showNumber(ratios.outerPasses),
        innerPasses: showNumber(ratios.innerPasses),
      },
      ...(load.speed === undefined || check.spun === undefined
        ? {}
        : { atSpeed: toAtSpeed(check, load.speed, check.spun, spoken) }),
      speedLimit: toSpeedLimit(lowest, spoken),
      speedLimits: check.speedLimits.map((limit) => toSpeedLimit(limit, spoken)),
    },
    toFoot(check, spoken),
  )
}

function toThrustResponse(check: PlateLoadCheck, request: LoadCheckRequest): ThrustLoadCheckResponse {
  const spoken = spokenOf(request)
  const { load, ratios } = check
  const [lowest] = check.speedLimits
  return answer(
    { arrangement: 'thrust', ...toHead(check, request, spoken) },
    {
      ...toSpoken(spoken),
      sharing: toPlateSharing(check, spoken),
      plates: toSeat(check.plates, spoken),
      ...toStrengths(check, spoken),
      firstMark: toPlateLimit(
        check.firstMark,
        withTallest(explainFirstMark(check.firstMark, spoken), check.uneven?.firstMark, spoken),
        spoken,
      ),
      dent: toPlateLimit(check.dent, withTallest(explainDent(check.dent, spoken), check.uneven?.dent, spoken), spoken),
      perTurn: {
        ballSet: showNumber(ratios.ballSet),
        ballSpin: showNumber(ratios.ballSpin),
        passes: showNumber(ratios.passes),
      },
      ...(load.speed === undefined || check.spun === undefined
        ? {}
        : { atSpeed: toPlatesAtSpeed(check, load.speed, check.spun, spoken) }),
      ...(lowest === undefined ? {} : { speedLimit: toSpeedLimit(lowest, spoken) }),
      speedLimits: check.speedLimits.map((limit) => toSpeedLimit(limit, spoken)),
    },
    toFoot(check, spoken),
  )
}

const OWN_DEFAULTS = defaultsOf(LOAD_CHECK_FIELDS)

function toHead(check: AnyLoadCheck, request: LoadCheckRequest, spoken: Spoken) {
  const input = toEcho(check, request, spoken)
  const defaults = { ...designDefaults(input.design.arrangement), ...OWN_DEFAULTS }
  return {
    units: spoken.units,
    input,
    assumed: assumptionsIn(request, input, defaults),
    summary: verdict(check, spoken),
  }
}

/** With every default filled in. A load stays as the caller wrote it. */
function toEcho(
  { load, bearing }: AnyLoadCheck,
  { radialLoad, axialLoad }: LoadCheckRequest,
  { units, forceUnits }: Spoken,
): LoadCheckRequest {
  return present<LoadCheckRequest>({
    design: toDesignRequest(bearing.resolved.input),
    ...toRequest(LOAD_CHECK_FIELDS, { ...load, radialLoad, axialLoad, forceUnits }, units),
  })
}

const toSpoken = ({ forceUnits }: Spoken) => ({ forceUnits, pressureUnits: pressureUnits(forceUnits) })

const toStrengths = ({ hardness, compressionLimit }: AnyLoadCheck, { forceUnits }: Spoken) => ({
  woodHardness: showPressure(hardness, forceUnits),
  compressionLimit: showPressure(compressionLimit, forceUnits),
})

const toFoot = ({ warnings, bearing }: AnyLoadCheck, spoken: Spoken) => ({
  warnings: warnings.map((warning) => toWarning(warning, spoken)),
  cautions: [estimateOnly(spoken.terms), ...cautionsOf(bearing.resolved)],
  sources: USED,
})

/** Less than this part of the load is rounding, on a ball that stands square to it. */
const NO_LOAD = 1e-9

const carrying = (each: readonly number[], load: number): number =>
  each.filter((newtons) => newtons > NO_LOAD * load).length

function toSharing({ sharing, load, bearing }: LoadCheck, spoken: Spoken): RingLoadCheckResponse['sharing'] {
  const { underBall, astride, byIntegral } = sharing
  const force = (newtons: number) => showForce(newtons, spoken.forceUnits)
  const most = Math.max(underBall.most, astride.most)
  return {
    mostLoadedBall: force(most),
    timesEvenShare: showNumber((most * bearing.resolved.input.balls.count) / load.radialLoad),
    byIntegral: force(byIntegral.most),
    loadZone: showNumber(underBall.loadZone),
    ballsUnderLoad: carrying(underBall.each, load.radialLoad),
    ballLoads: underBall.each.map(force),
    displacement: show(underBall.displacement, spoken.units),
  }
}

function toPlateSharing(
  { sharing, uneven, load, bearing }: PlateLoadCheck,
  spoken: Spoken,
): ThrustLoadCheckResponse['sharing'] {
  const force = (newtons: number) => showForce(newtons, spoken.forceUnits)
  const share = load.axialLoad / bearing.resolved.input.balls.count
  return {
    evenShare: force(share),
    mostLoadedBall: force(sharing.most),
    timesEvenShare: showNumber(sharing.most / share),
    ballsUnderLoad: carrying(sharing.each, load.axialLoad),
    ballLoads: sharing.each.map(force),
    approach: show(sharing.approach, spoken.units),
    lean: show(sharing.lean, spoken.units),
    ...(uneven === undefined
      ? {}
      : {
          uneven: {
            tallest: toSeat(uneven.tallest, spoken),
            firstMarkFrom: force(uneven.firstMark),
            dentFrom: force(uneven.dent),
            allCarryFrom: force(uneven.allCarryFrom),
            message: explainUneven(uneven, spoken),
          },
        }),
  }
}

function toSeat(load: SeatLoad, { units, forceUnits }: Spoken): RingLoadCheckResponse['outerRing'] {
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

const toLimit = ({ load, ballLoad, part }: LoadCheck['firstMark'], message: string, { forceUnits }: Spoken) => ({
  radialLoad: showForce(load, forceUnits),
  ballLoad: showForce(ballLoad, forceUnits),
  ring: part,
  message,
})

const toPlateLimit = ({ load, ballLoad }: PlateLoadCheck['firstMark'], message: string, { forceUnits }: Spoken) => ({
  axialLoad: showForce(load, forceUnits),
  ballLoad: showForce(ballLoad, forceUnits),
  message,
})

const toSpeedLimit = <Reason extends LoadSpeedReason>(limit: SpeedLimit<Reason>, spoken: Spoken) => ({
  reason: limit.reason,
  speed: showNumber(limit.speed),
  message: explainSpeedLimit(limit, spoken),
})

function toPlatesAtSpeed({ ratios, spin }: PlateLoadCheck, speed: number, spun: SeatLoad, spoken: Spoken) {
  const perSecond = speed / 60
  return {
    speed: showNumber(speed),
    ballSetSpeed: showNumber(ratios.ballSet * speed),
    ballSpinSpeed: showNumber(ratios.ballSpin * speed),
    passFrequency: showNumber(ratios.passes * perSecond),
    ballSpinFrequency: showNumber(ratios.ballSpin * perSecond),
    ballForce: showForce(spin.ballForce * speed * speed, spoken.forceUnits),
    flank: toSeat(spun, spoken),
    rimStress: showPressure(spin.rimStress * speed * speed, spoken.forceUnits),
  }
}

function toAtSpeed({ ratios, spin }: LoadCheck, speed: number, spun: SeatLoad, spoken: Spoken) {
  const perSecond = speed / 60
  const stress = Math.max(spin.outerRimStress, spin.innerRimStress) * speed * speed
  return {
    speed: showNumber(speed),
    ballSetSpeed: showNumber(ratios.ballSet * speed),
    ballSpinSpeed: showNumber(ratios.ballSpin * speed),
    outerPassFrequency: showNumber(ratios.outerPasses * perSecond),
    innerPassFrequency: showNumber(ratios.innerPasses * perSecond),
    ballSpinFrequency: showNumber(ratios.ballSpin * perSecond),
    ballForce: showForce(spin.ballForce * speed * speed, spoken.forceUnits),
    outerRing: toSeat(spun, spoken),
    rimStress: showPressure(stress, spoken.forceUnits),
  }
}

function toWarning({ severity, path, facts, suggestion }: LoadWarning, spoken: Spoken): Static<typeof Warning> {
  const said = { code: facts.code, severity, message: explainWarning(facts, spoken), path }
  if (suggestion === undefined) return said
  const { kind, value } = suggestion
  return {
    ...said,
    suggestion: { path, value: kind === 'force' ? showForceLimit(value, spoken.forceUnits) : significantDown(value) },
  }
}
