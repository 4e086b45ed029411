import { type Static, Type } from 'typebox'
import { PLATE_SPEED_REASONS, type PlateLoadCheck } from '#shared/questions/load/arrangements/thrust.ts'
import { answerOf } from '#src/api/answer.ts'
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
import { integer, named, object, shownBy, text } from '#src/api/schema.ts'
import { refTo } from '#src/http/schema.ts'
import { explainTipping, explainUneven, type Spoken } from '#src/words/load-check.ts'

const PlateLoadSharing = named('PlateLoadSharing', 'How the balls of a turntable share the load at rest.', {
  evenShare: force('The load over the count of balls.'),
  mostLoadedBall: force(
    'Load of the most loaded of equal balls, where it stands worst: the even share of a load over the middle.',
  ),
  timesEvenShare: shownNumber('`mostLoadedBall` divided by the even share.'),
  ballsUnderLoad: integer('How many balls carry, one of them nearest to the load.'),
  ballLoads: Type.Array(force('Load of one ball.'), {
    description: 'Load of each ball with the first nearest to the load, on round the circle.',
  }),
  approach: shown(
    'How much the plates approach each other at the middle. Below 0 where a load far out lifts the plate there.',
  ),
  lean: shown('How much more they approach at the outside on the side of the load than on the other side.'),
  uneven: Type.Optional(
    object('Effect of the scatter of the balls in the design. Absent where there is none.', {
      tallest: described<typeof SeatLoad>(
        'SeatLoad',
        'The most loaded ball, in the worst position: of three that carry at first, and of more as the wood gives.',
      ),
      allCarryFrom: force('Load from which the smallest ball would carry too, about, if the wood only sprang back.'),
      message: text('Summary in words.'),
    }),
  ),
})

const PlateLoadLimit = named('PlateLoadLimit', 'A load that leaves a dent of some depth. Not a safety rating.', {
  axialLoad: force('Load of the turntable, at the requested offset and with the scatter of its balls.'),
  ...limit,
})

const PlateSpeedLimit = speedLimitOf('PlateSpeedLimit', PLATE_SPEED_REASONS)

const PlateTurnRatios = named('PlateTurnRatios', 'Turns for each turn of one plate, while the other is at rest.', {
  ballSet: shownNumber("Turns of the ball set: half of the plate's."),
  ballSpin: shownNumber(ratio.ballSpin),
  passes: shownNumber('Balls that pass a point of either groove.'),
})

const PlatesAtSpeed = named('PlatesAtSpeed', 'Effects of the speed, without the load.', {
  ...AT_SPEED,
  passFrequency: shownNumber('Frequency of a dent in either groove, in hertz.'),
  ballForce: force('Force that pushes each ball outward through its travel round the axis alone.'),
  flank: described<typeof SeatLoad>(
    'SeatLoad',
    'A ball on the outer flank of either groove, each taking half of that force alone.',
  ),
})

const Tipping = named('Tipping', 'Distance of the load from the axis at which the upper plate tips, at rest.', {
  offset: shown('Distance from the axis.'),
  message: text('Summary in words.'),
})

export const ThrustLoadCheckResponse = named(
  'ThrustLoadCheckResponse',
  'Effects of a load and a speed on a turntable: an estimate.',
  answerOf(['thrust'], refTo<typeof LoadCheckRequest>('LoadCheckRequest'), {
    ...bodyOf<typeof PlateLoadLimit, typeof PlateSpeedLimit>('PlateLoadLimit', 'PlateSpeedLimit'),
    tipsBeyond: refTo<typeof Tipping>('Tipping'),
    sharing: refTo<typeof PlateLoadSharing>('PlateLoadSharing'),
    plates: described<typeof SeatLoad>('SeatLoad', 'The most loaded ball on its groove, if all were of one size.'),
    perTurn: refTo<typeof PlateTurnRatios>('PlateTurnRatios'),
    atSpeed: Type.Optional(refTo<typeof PlatesAtSpeed>('PlatesAtSpeed')),
  }),
)
export type ThrustLoadCheckResponse = Static<typeof ThrustLoadCheckResponse>

export const THRUST_LOAD_SCHEMAS = [
  PlateLoadSharing,
  PlateLoadLimit,
  PlateSpeedLimit,
  PlateTurnRatios,
  PlatesAtSpeed,
  Tipping,
  ThrustLoadCheckResponse,
]

export function toThrustResponse(
  check: PlateLoadCheck,
  request: LoadCheckRequest,
  spoken: Spoken,
): ThrustLoadCheckResponse {
  const { load, ratios, spin, spun, plates, tipsBeyond } = check
  const { speed } = load
  return loadAnswer(check, request, spoken, 'thrust', {
    ...toLimits(check, spoken, (at) => ({ axialLoad: showForce(at.load, spoken.forceUnits) })),
    tipsBeyond: { offset: show(tipsBeyond, spoken.units), message: explainTipping(tipsBeyond, spoken) },
    sharing: toSharing(check, spoken),
    plates: toSeat(plates, spoken),
    perTurn: shownBy(PlateTurnRatios, ratios, spoken.units),
    ...(speed === undefined || spun === undefined
      ? {}
      : {
          atSpeed: {
            ...toTurning(ratios, speed),
            passFrequency: showNumber((ratios.passes * speed) / 60),
            ballForce: showForce(spin.ballForce * speed * speed, spoken.forceUnits),
            flank: toSeat(spun, spoken),
            rimStress: showPressure(spin.rimStress * speed * speed, spoken.forceUnits),
          },
        }),
  })
}

function toSharing(
  { sharing, uneven, load, most, bearing }: PlateLoadCheck,
  spoken: Spoken,
): ThrustLoadCheckResponse['sharing'] {
  const force = (newtons: number) => showForce(newtons, spoken.forceUnits)
  const share = load.axialLoad / bearing.resolved.input.balls.count
  return {
    evenShare: force(share),
    mostLoadedBall: force(most),
    timesEvenShare: showNumber(most / share),
    ballsUnderLoad: carrying(sharing.each, load.axialLoad),
    ballLoads: sharing.each.map(force),
    approach: show(sharing.approach, spoken.units),
    lean: show(sharing.lean, spoken.units),
    ...(uneven === undefined
      ? {}
      : {
          uneven: {
            tallest: toSeat(uneven.tallest, spoken),
            allCarryFrom: force(uneven.allCarryFrom),
            message: explainUneven(uneven, spoken),
          },
        }),
  }
}
