import { type Static, Type } from 'typebox'
import type { BallRing } from '#shared/bearing/ball-ring.ts'
import { plugReading } from '#shared/bearing/plug-reading.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { mm } from '#shared/units/length.ts'
import { showLengths, shownLength } from '#src/api/length.ts'
import { showNumber, shownNumber, shownShare } from '#src/api/number.ts'
import { choiceOf, flag, named, object, shownBy, text } from '#src/api/schema.ts'
import { refTo } from '#src/http/schema.ts'
import { type GaugeFacts, gaugeNote } from '#src/words/assembly.ts'
import { termsOf } from '#src/words/terms.ts'

/* The parts of an answer that several arrangements share: the schema of each, and how it is made. */

export const seat = choiceOf(
  'The place where the ball touches: the bottom of the groove, or its two edges where the groove is tighter than the ball.',
  ['bottom', 'edges'],
)

const RING_SIZES = {
  landDiameter: shownLength('Diameter of the land, the cylinder on both sides of the groove.'),
  grooveBottomDiameter: shownLength('Diameter across the bottoms of the groove.'),
  grooveDepth: shownLength('Depth from the land to the groove bottom.'),
  seatDepth: shownLength('Depth of the ball below the land.'),
  grooveRadius: shownLength('Radius of the groove in section.'),
  grooveWidth: shownLength('Width of the groove at the land.'),
  wall: shownLength('Wood left behind the groove: to the outside (outer ring), to the bore (inner ring).'),
  width: shownLength('Width of the ring along the axis.'),
  seat,
}

const OuterRing = named('OuterRing', 'Finished sizes of the ring.', {
  outsideDiameter: shownLength('Outside diameter.'),
  ...RING_SIZES,
})
const InnerRing = named('InnerRing', 'Finished sizes of the ring.', {
  boreDiameter: shownLength('Bore.'),
  ...RING_SIZES,
})

export const RINGS = {
  outerRing: refTo<typeof OuterRing>('OuterRing'),
  innerRing: refTo<typeof InnerRing>('InnerRing'),
}
export const toRings = ({ resolved, outerRing, innerRing }: RingPair) => ({
  outerRing: shownBy(OuterRing, outerRing, resolved.input.units),
  innerRing: shownBy(InnerRing, innerRing, resolved.input.units),
})

const BALL_RING_SIZES = {
  ballDiameter: shownLength(
    'The diameter that closes the ring: the mean of the measured balls, or else the nominal one.',
  ),
  closedPitchRadius: shownLength('Pitch radius at which the touching balls exactly close.'),
  pitchRadius: shownLength('Pitch radius that leaves `ballGap`.'),
  pitchDiameter: shownLength('Circle through the centres of the seated balls.'),
  ballGap: shownLength('Gap between the last ball and the first when all others are pushed together.'),
  assemblyGap: shownLength('Least ball gap at which the last ball goes in without force: an estimate, wood gives.'),
}
export const BALL_RING = {
  ...BALL_RING_SIZES,
  gapPerPitchRadius: shownNumber('Change of the ball gap per unit of pitch radius: about 2π.'),
}
export const toBallRing = (ring: BallRing) => ({
  ...showLengths(
    BALL_RING_SIZES,
    {
      ...ring,
      ballDiameter: ring.resolved.ballDiameter,
      pitchDiameter: mm(2 * ring.pitchRadius),
      assemblyGap: ring.resolved.assembly.assemblyGap,
    },
    ring.resolved.input.units,
  ),
  gapPerPitchRadius: showNumber(ring.gapPerPitchRadius),
})
export const gapPerBallDiameter = shownNumber(
  'Change of the ball gap per unit of diameter when all balls grow and the groove stays.',
)

const LAND_SIZES = {
  landGap: shownLength('Space between the lands of concentric rings.'),
  leastLandGap: shownLength('Smallest space between the lands, with the inner ring all the way to one side.'),
}
export const LANDS = LAND_SIZES
export const toLands = (pair: RingPair) => showLengths(LAND_SIZES, pair, pair.resolved.input.units)

const PLAY_SIZES = {
  radialInternalClearance: shownLength('Play: how far one ring moves from side to side.'),
  axialPlay: shownLength('How far one ring moves along the axis.'),
}
export const PLAY = {
  ...PLAY_SIZES,
  tilt: shownNumber('Angle by which the axis of the inner ring can lean either way, in degrees: an estimate.'),
}
export const toPlay = (pair: RingPair) => ({
  ...showLengths(PLAY_SIZES, pair, pair.resolved.input.units),
  tilt: showNumber(pair.tilt),
})

const gapSpread = (description: string) =>
  object(description, {
    mean: shownLength('Ball gap to expect, below 0 where the ring does not close.'),
    standardDeviation: shownLength('Its standard deviation.'),
  })
const Gauge = named('Gauge', 'Turned plugs that check the outer groove with the balls in it.', {
  nominalDiameter: shownLength('The circle inside the balls seated in the outer groove.'),
  goDiameter: shownLength('Diameter of the go plug, at the larger of `minBallGap` and `assemblyGap`, for equal balls.'),
  noGoDiameter: shownLength('Diameter of the no-go plug, at `maxBallGap`, for equal balls.'),
  gapPerBallDiameterAtPlug: shownNumber(
    'Change of the ball gap per unit of mean ball diameter when the groove is cut to this plug.',
  ),
  ballGapWhenGoEnters: gapSpread(
    'Ball gap where the go plug just enters among unequal balls of this scatter. The circle inside unequal balls is smaller than inside equal ones, so the gap is wider than the one the plug stands for.',
  ),
  ballGapWhenNoGoRefuses: gapSpread('Ball gap where the no-go plug is just refused, a hair before it enters.'),
  probabilityBetweenPlugs: Type.Optional(
    object(
      'How a groove stands that lets the go plug in and refuses the no-go plug, nothing else being known of it. Left out where go is no smaller than no-go.',
      {
        tooTight: shownShare('The last ball does not go in.'),
        inBand: shownShare('The last ball goes in and the gap is at most `maxBallGap`.'),
        tooDeep: shownShare('The gap is above `maxBallGap`.'),
      },
    ),
  ),
  decides: flag(
    'Whether the plugs and a last ball that goes in are enough to call the groove finished, at a confidence of 0.95. Otherwise measure the gap with a rule.',
  ),
  note: text('What the plugs are right for and what they tell, in words.'),
})
export const gauge = refTo<typeof Gauge>('Gauge')

/** @param beforeFinish how much larger the plug is for grooves that still lack their finish, where that changes it */
export function toGauge(
  bearing: BallRing,
  beforeFinish: Pick<GaugeFacts, 'largerBeforeFinish'> = {},
): Static<typeof Gauge> {
  const { gauge: plugs, resolved } = bearing
  const { ballDiameter, ballScatter: scatter, input } = resolved
  const { gapPerBallDiameterAtPlug: gapPerBallDiameter } = plugs
  const { probability, ...reading } = plugReading(bearing)
  const facts = { ballDiameter, gapPerBallDiameter, ...beforeFinish, plugs: { ...reading, scatter } }
  return shownBy(
    Gauge,
    {
      ...plugs,
      ballGapWhenGoEnters: reading.whenGoEnters,
      ballGapWhenNoGoRefuses: reading.whenNoGoRefuses,
      probabilityBetweenPlugs: probability,
      decides: reading.decides,
      note: gaugeNote(facts, input.units, termsOf(input)),
    },
    input.units,
  )
}

/** A film on a ring's groove brings its balls in. */
export const beforeFinish = ({ finishAllowance }: ResolvedBalls): Pick<GaugeFacts, 'largerBeforeFinish'> =>
  finishAllowance === 0 ? {} : { largerBeforeFinish: mm(2 * finishAllowance) }

export const STEPS = { steps: Type.Array(Type.String(), { description: 'Steps in order.' }) }
const StepsOfAssembly = named('StepsOfAssembly', 'Assembly of the bearing.', STEPS)
export const stepsOfAssembly = refTo<typeof StepsOfAssembly>('StepsOfAssembly')

export const PART_SCHEMAS = [OuterRing, InnerRing, Gauge, StepsOfAssembly]
