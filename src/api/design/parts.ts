import { type Static, Type } from 'typebox'
import type { BallRing } from '#shared/bearing/ball-ring.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { mm } from '#shared/units/length.ts'
import { showLengths, shownLength } from '#src/api/length.ts'
import { showNumber, shownNumber } from '#src/api/number.ts'
import { choiceOf, named, shownBy, text } from '#src/api/schema.ts'
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

const PLUG_SIZES = {
  nominalDiameter: shownLength('The circle inside the balls seated in the outer groove.'),
  goDiameter: shownLength('Diameter of the go plug, at the larger of `minBallGap` and `assemblyGap`. It must enter.'),
  noGoDiameter: shownLength('Diameter of the no-go plug, at `maxBallGap`. It must not enter.'),
}
const Gauge = named('Gauge', 'Turned plugs that check the outer groove with the balls in it.', {
  ...PLUG_SIZES,
  gapPerBallDiameterAtPlug: shownNumber(
    'Change of the ball gap per unit of mean ball diameter when the groove is cut to this plug.',
  ),
  note: text('What the plug is right for, in words.'),
})
export const gauge = refTo<typeof Gauge>('Gauge')

/** @param beforeFinish how much larger the plug is for grooves that still lack their finish, where that changes it */
export function toGauge(
  { gauge: plugs, resolved }: BallRing,
  beforeFinish: Pick<GaugeFacts, 'largerBeforeFinish'> = {},
): Static<typeof Gauge> {
  const { ballDiameter, input } = resolved
  const { gapPerBallDiameterAtPlug: gapPerBallDiameter } = plugs
  return {
    ...showLengths(PLUG_SIZES, plugs, input.units),
    gapPerBallDiameterAtPlug: showNumber(gapPerBallDiameter),
    note: gaugeNote({ ballDiameter, gapPerBallDiameter, ...beforeFinish }, input.units, termsOf(input)),
  }
}

/** A film on a ring's groove brings its balls in. */
export const beforeFinish = ({ finishAllowance }: ResolvedBalls): Pick<GaugeFacts, 'largerBeforeFinish'> =>
  finishAllowance === 0 ? {} : { largerBeforeFinish: mm(2 * finishAllowance) }

export const STEPS = { steps: Type.Array(Type.String(), { description: 'Steps in order.' }) }
const StepsOfAssembly = named('StepsOfAssembly', 'Assembly of the bearing.', STEPS)
export const stepsOfAssembly = refTo<typeof StepsOfAssembly>('StepsOfAssembly')

export const PART_SCHEMAS = [OuterRing, InnerRing, Gauge, StepsOfAssembly]
