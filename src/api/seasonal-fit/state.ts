import { Type } from 'typebox'
import { shownLength as shown } from '#src/api/length.ts'
import { shownNumber } from '#src/api/number.ts'
import { described, named, object } from '#src/api/schema.ts'

/* The fields of a state that several arrangements have. */

export const RacewayShape = named(
  'RacewayShape',
  'The circle on which the balls run in a part, round when it was cut.',
  {
    alongGrain: shown('Diameter along the grain.'),
    acrossGrain: shown('Diameter across the grain.'),
    outOfRound: shown('Largest diameter less the smallest, twice the lobes of a segmented part among it.'),
    acrossGrainStress: Type.Optional(shownNumber('Hardest pull across the grain of a segmented part, in MPa.')),
  },
)
export const shapeOf = (description: string) => described<typeof RacewayShape>('RacewayShape', description)

export const BALL_GAP = {
  ballGap: object('The ball gap at that time, of balls of the mean size.', {
    min: shown('Smallest gap over all positions of the first ball.'),
    max: shown('Largest gap over all positions of the first ball.'),
    withLargestBalls: shown(
      'Smallest gap if every wooden ball lay with its largest diameter along the ring, which is very unlikely.',
    ),
  }),
}

export const PLAY = {
  radialInternalClearance: object('The play at that time, of balls of the mean size.', {
    min: shown('Play with the inner ring turned to its tightest position. Below 0 it is stiff there.'),
    max: shown('Play with the inner ring turned to its loosest position.'),
  }),
  worstRotation: Type.Optional(
    shownNumber(
      'Degrees from the grain of the outer ring to that of the inner one where the play is worst, twice a turn. Absent where a ring stays round.',
    ),
  ),
}

export const RING_GROOVES = {
  outerRing: shapeOf("The bottom of the outer ring's groove."),
  innerRing: shapeOf("The bottom of the inner ring's groove."),
}

export const LAND_GAP = { leastLandGap: shown('Smallest space between the lands, with the inner ring to one side.') }
