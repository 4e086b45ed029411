import type { Static } from 'typebox'
import type { Bounds } from '#shared/bearing/field.ts'
import { plain } from '#shared/bearing/fields.ts'
import type { WoodsInput } from '#shared/bearing/making-input.ts'
import type { PartName } from '#shared/bearing/refusal.ts'
import { significantDown } from '#shared/numbers/significant.ts'
import { carryingWoods, standInsOf } from '#shared/questions/load/carrying-woods.ts'
import type { CheckedLoad } from '#shared/questions/load/checked-load.ts'
import type { Limit } from '#shared/questions/load/limits.ts'
import type { LoadCheck, LoadSpeedReason } from '#shared/questions/load/load-check.ts'
import { loadCheckSources } from '#shared/questions/load/load-sources.ts'
import type { SeatLoad } from '#shared/questions/load/seat-load.ts'
import type { TurnRatios } from '#shared/questions/load/speeds.ts'
import type { LoadWarning } from '#shared/questions/load/warning.ts'
import { mm } from '#shared/units/length.ts'
import { answer } from '#src/api/answer.ts'
import { assumptionsIn, type Defaults, defaultsOf } from '#src/api/assumption.ts'
import { cautionsOf } from '#src/api/caution.ts'
import { designDefaults } from '#src/api/design-defaults.ts'
import { toDesignRequest } from '#src/api/design-input.ts'
import { toRequest } from '#src/api/fields.ts'
import {
  pressureUnits,
  showForce,
  showForceLimit,
  showPressure,
  showTorque,
  torqueUnits,
  usualForceUnits,
} from '#src/api/force.ts'
import { show } from '#src/api/length.ts'
import { showNumber } from '#src/api/number.ts'
import { present } from '#src/api/optional.ts'
import { shownBy } from '#src/api/schema.ts'
import { toSource } from '#src/api/source.ts'
import type { Warning } from '#src/api/warning.ts'
import * as words from '#src/words/load-check.ts'
import { termsOf } from '#src/words/terms.ts'
import { LOAD_CHECK_FIELDS, type LoadCheckRequest, SeatLoad as SeatLoadSchema } from './schema.ts'

type Spoken = words.Spoken

const OWN_DEFAULTS = defaultsOf(LOAD_CHECK_FIELDS)
/** Why a wood is taken that the plan states. */
const OF_PLAN = plain(
  'the wood of the plan',
  'the wood that is planned, or the next softer one of which all figures are known; where parts differ, the softest',
)

/** The defaults of the woods that carry a load, as a plan states them. */
export const plannedWoods = (woods: WoodsInput | undefined, at = ''): Defaults =>
  Object.fromEntries(Object.keys(carryingWoods(woods)).map((name) => [`${at}/${name}`, OF_PLAN]))

/** The answer of any load check: head, what all have, the arrangement's own part, foot. */
export function loadAnswer<const Name extends string, Own extends object>(
  check: LoadCheck,
  request: LoadCheckRequest,
  spoken: Spoken,
  arrangement: Name,
  own: Own,
) {
  const input = toEcho(check, request, spoken)
  const ofWoods = plannedWoods(request.design.making?.woods)
  const defaults = { ...designDefaults(check.bearing.resolved.input), ...OWN_DEFAULTS, ...ofWoods }
  const assumed = assumptionsIn(request, input, defaults)
  const woods = {
    isAssumed: request.wood === undefined && !Object.hasOwn(ofWoods, '/wood'),
    standIns: standInsOf(request.design.making?.woods, request, check.load.ballWood !== undefined),
  }
  return answer(
    { arrangement, units: spoken.units, input, assumed, summary: words.verdict(check, spoken, woods) },
    { ...toShared(check, spoken), ...own },
    {
      warnings: check.warnings.map((warning) => toWarning(warning, spoken)),
      cautions: [words.estimateOnly(spoken.terms), ...cautionsOf(check.bearing.resolved)],
      sources: sourcesIn(check),
    },
  )
}

/** The units and the terms of the answer to a request. */
export const spokenOf = ({ design, forceUnits }: LoadCheckRequest): Spoken => ({
  terms: termsOf(design),
  units: design.units,
  forceUnits: forceUnits ?? usualForceUnits(design.units),
})

/** Exactly those from which a figure of this answer was taken. */
const sourcesIn = ({ bearing, load, seats }: LoadCheck) =>
  loadCheckSources(
    {
      members: bearing.resolved.traits.members,
      materials: [bearing.resolved.input.balls.material ?? 'wood'],
      woods: [load.wood, ...(load.ballWood === undefined ? [] : [load.ballWood])],
      onBottom: seats.some(({ seat }) => seat.seat === 'bottom'),
    },
    'split' in bearing.resolved && bearing.resolved.split !== 'none',
  ).map(toSource)

/** With every default filled in. A load stays as the caller wrote it. */
function toEcho(
  { load, bearing }: LoadCheck,
  { radialLoad, axialLoad }: LoadCheckRequest,
  { units, forceUnits }: Spoken,
): LoadCheckRequest {
  return present<LoadCheckRequest>({
    design: toDesignRequest(bearing.resolved.input),
    ...toRequest(LOAD_CHECK_FIELDS, { ...load, radialLoad, axialLoad, forceUnits }, units),
  })
}

function toShared(check: LoadCheck, spoken: Spoken) {
  const { hardness, compressionLimit, friction, handTurned, substitutes } = check
  const { units, forceUnits } = spoken
  const torque = ({ min, max }: Bounds) => ({
    min: showTorque(min, forceUnits),
    max: showTorque(max, forceUnits),
  })
  const range = ({ min, max }: Bounds) => ({ min: showNumber(min), max: showNumber(max) })
  const { loads, gives, startingTorque, rumble } = check.workingLoad
  return {
    forceUnits,
    pressureUnits: pressureUnits(forceUnits),
    torqueUnits: torqueUnits(forceUnits),
    workingLoad: {
      still: showForce(loads.still.load, forceUnits),
      slowHand: showForce(loads.slowHand.load, forceUnits),
      steadyCrank: showForce(loads.steadyCrank.load, forceUnits),
      ballLoad: showForce(loads.slowHand.ballLoad, forceUnits),
      markDepth: show(loads.slowHand.depth, units),
      gives: show(gives, units),
      startingTorque: torque(startingTorque),
      rumble: { height: show(rumble.height, units), frequency: showNumber(rumble.frequency) },
      message: words.explainWorkingLoad(check, spoken),
    },
    handTurned: { speed: showNumber(handTurned), message: words.explainHandTurned(check, spoken) },
    friction: {
      startingTorque: torque(friction.startingTorque),
      coasting: {
        from: showNumber(friction.coasting.from),
        turns: range(friction.coasting.turns),
        seconds: range(friction.coasting.seconds),
      },
      rubbingSpeed: show(mm(friction.rubbingSpeed), units),
      message: words.explainFriction(check, spoken),
    },
    woodHardness: showPressure(hardness, forceUnits),
    compressionLimit: showPressure(compressionLimit, forceUnits),
    substitutes: substitutes.map((each) => ({ ...each, message: words.explainSubstitute(each) })),
  }
}

/** The limits of load and speed, a load as the arrangement names it. */
export function toLimits<Part extends PartName, Reason extends LoadSpeedReason, Load extends object>(
  { firstMark, ruin, speedLimits }: Pick<CheckedLoad<Part, Reason>, 'firstMark' | 'ruin' | 'speedLimits'>,
  spoken: Spoken,
  loadOf: (limit: Limit<Part>) => Load,
) {
  const toLimit = (limit: Limit<Part>, message: string) => ({
    ...loadOf(limit),
    ballLoad: showForce(limit.ballLoad, spoken.forceUnits),
    depth: show(limit.depth, spoken.units),
    message,
  })
  const [lowest, ...others] = speedLimits
  const first = {
    reason: lowest.reason,
    speed: showNumber(lowest.speed),
    message: words.explainSpeedLimit(lowest, spoken),
  }
  const beyond = others
    .filter(({ speed }) => speed < SHOWN * lowest.speed)
    .map((each) => ({
      reason: each.reason,
      speed: showNumber(each.speed),
      message: words.explainBeyond(each, spoken),
    }))
  return {
    firstMark: toLimit(firstMark, words.explainFirstMark(firstMark, spoken)),
    ruinLoad: toLimit(ruin, words.explainRuin(ruin, spoken)),
    speedLimit: first,
    speedLimits: [first, ...beyond],
  }
}

/** Reasons beyond so many times the lowest limit are of no use to anyone. */
const SHOWN = 5

/** Speeds and frequencies of the balls at a speed. */
export const toTurning = ({ ballSet, ballSpin }: Pick<TurnRatios, 'ballSet' | 'ballSpin'>, speed: number) => ({
  speed: showNumber(speed),
  ballSetSpeed: showNumber(ballSet * speed),
  ballSpinSpeed: showNumber(ballSpin * speed),
  ballSpinFrequency: showNumber((ballSpin * speed) / 60),
})

export function toSeat(load: SeatLoad, { units, forceUnits }: Spoken): Static<typeof SeatLoadSchema> {
  const ballLoad = showForce(load.ballLoad, forceUnits)
  return shownBy(SeatLoadSchema, { ...load, ballLoad, maxPressure: showPressure(load.maxPressure, forceUnits) }, units)
}

/** Less than this part of the load is rounding, on a ball that is square to it. */
const NO_LOAD = 1e-9

/** How many balls carry. */
export const carrying = (each: readonly number[], load: number): number =>
  each.filter((newtons) => newtons > NO_LOAD * load).length

function toWarning(
  { severity, path, facts, suggestion }: LoadWarning<LoadSpeedReason>,
  spoken: Spoken,
): Static<typeof Warning> {
  const warning = { code: facts.code, severity, message: words.explainWarning(facts, spoken), path }
  if (suggestion === undefined) return warning
  const { kind, value } = suggestion
  return {
    ...warning,
    suggestion: { path, value: kind === 'force' ? showForceLimit(value, spoken.forceUnits) : significantDown(value) },
  }
}
