import { type Static, Type } from 'typebox'
import { RING_SPEED_REASONS, type RingLoadCheck } from '#shared/questions/load/arrangements/rings.ts'
import { answerOf, tagOf } from '#src/api/answer.ts'
import { showForce, showPressure } from '#src/api/force.ts'
import { show, shownLength as shown } from '#src/api/length.ts'
import {
  AT_SPEED,
  bodyOf,
  described,
  force,
  type LoadCheckRequest,
  limit,
  ratio,
  type SeatLoad,
  speedLimitOf,
} from '#src/api/load-check/schema.ts'
import { carrying, loadAnswer, toLimits, toSeat, toTurning } from '#src/api/load-check/shared-answer.ts'
import { showNumber, shownNumber } from '#src/api/number.ts'
import { choiceOf, integer, named, shownBy } from '#src/api/schema.ts'
import { refTo } from '#src/http/schema.ts'
import type { Spoken } from '#src/words/load-check.ts'

const LoadSharing = named('LoadSharing', 'How the balls share the load at rest, with the play that there is.', {
  mostLoadedBall: force('Load of the most loaded ball, where it stands worst.'),
  timesEvenShare: shownNumber(
    '`mostLoadedBall` divided by the even share, load over number of balls. It is 4.37 without play among many balls; 5 is a usual value.',
  ),
  byIntegral: force(
    "Load of the most loaded ball as if there were very many balls: Sjovall's integral, solved with the play.",
  ),
  loadZone: shownNumber('The loaded part of the diameter: 0.5 without play, less with it.'),
  ballsUnderLoad: integer('How many balls carry, one of them right under the load.'),
  ballLoads: Type.Array(force('Load of one ball.'), {
    description: 'Load of each ball with the first right under the load, on round the ring.',
  }),
  displacement: shown('Travel of the inner ring down from the middle of its play.'),
})

const LoadLimit = named('LoadLimit', 'A load that leaves a dent of some depth. Not a safety rating.', {
  radialLoad: force('Load of the bearing.'),
  ring: choiceOf('The ring that reaches it first.', ['outerRing', 'innerRing']),
  ...limit,
})

const SpeedLimit = speedLimitOf('SpeedLimit', RING_SPEED_REASONS)

const TurnRatios = named('TurnRatios', 'Turns for each turn of the turning ring, while the other is at rest.', {
  ballSet: shownNumber(ratio.ballSet),
  ballSpin: shownNumber(ratio.ballSpin),
  outerPasses: shownNumber('Balls that pass a point of the outer groove.'),
  innerPasses: shownNumber('Balls that pass a point of the inner groove.'),
})

const AtSpeed = named('AtSpeed', 'Effects of the speed, without the load.', {
  ...AT_SPEED,
  outerPassFrequency: shownNumber('Frequency of a dent in the outer groove, in hertz.'),
  innerPassFrequency: shownNumber('Frequency of a dent in the inner groove, in hertz.'),
  ballForce: force('Force with which each ball presses on the outer groove through its travel round the ring alone.'),
  outerRing: described<typeof SeatLoad>('SeatLoad', 'A ball on the outer groove under that force alone.'),
})

export const RingLoadCheckResponse = named(
  'RingLoadCheckResponse',
  'Effects of a load and a speed on two rings: an estimate.',
  answerOf(['radial', 'roller', 'caged'], refTo<typeof LoadCheckRequest>('LoadCheckRequest'), {
    ...bodyOf<typeof LoadLimit, typeof SpeedLimit>('LoadLimit', 'SpeedLimit'),
    sharing: refTo<typeof LoadSharing>('LoadSharing'),
    outerRing: refTo<typeof SeatLoad>('SeatLoad'),
    innerRing: refTo<typeof SeatLoad>('SeatLoad'),
    perTurn: refTo<typeof TurnRatios>('TurnRatios'),
    atSpeed: Type.Optional(refTo<typeof AtSpeed>('AtSpeed')),
  }),
)
export type RingLoadCheckResponse = Static<typeof RingLoadCheckResponse>

export const RING_LOAD_SCHEMAS = [LoadSharing, LoadLimit, SpeedLimit, TurnRatios, AtSpeed, RingLoadCheckResponse]

export function toRingResponse(check: RingLoadCheck, request: LoadCheckRequest, spoken: Spoken): RingLoadCheckResponse {
  const { load, ratios, spin, spun } = check
  const { speed } = load
  const limits = toLimits(check, spoken, ({ load: newtons, part }) => ({
    radialLoad: showForce(newtons, spoken.forceUnits),
    ring: part,
  }))
  return loadAnswer(check, request, spoken, tagOf(check.bearing.resolved.input, 'radial', 'roller', 'caged'), {
    ...limits,
    sharing: toSharing(check, spoken),
    outerRing: toSeat(check.outerRing, spoken),
    innerRing: toSeat(check.innerRing, spoken),
    perTurn: shownBy(TurnRatios, ratios, spoken.units),
    ...(speed === undefined || spun === undefined
      ? {}
      : {
          atSpeed: {
            ...toTurning(ratios, speed),
            outerPassFrequency: showNumber((ratios.outerPasses * speed) / 60),
            innerPassFrequency: showNumber((ratios.innerPasses * speed) / 60),
            ballForce: showForce(spin.ballForce * speed * speed, spoken.forceUnits),
            outerRing: toSeat(spun, spoken),
            rimStress: showPressure(spin.rimStress * speed * speed, spoken.forceUnits),
          },
        }),
  })
}

function toSharing({ sharing, load, most, bearing }: RingLoadCheck, spoken: Spoken): RingLoadCheckResponse['sharing'] {
  const { underBall, byIntegral } = sharing
  const force = (newtons: number) => showForce(newtons, spoken.forceUnits)
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
