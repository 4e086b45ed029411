import { mm } from '#shared/units/length.ts'
import { bothWays, changeOf, selectionAnswer } from '#src/api/ball-selection/parts.ts'
import { shownLength } from '#src/api/length.ts'
import { object } from '#src/api/schema.ts'

export const IN_RINGS = selectionAnswer({
  names: ['radial', 'roller'],
  prefix: 'Ring',
  description: 'The balls to use, the gap, play and run-out that they leave, and a bound on any other choice.',
  aims: {
    advised:
      'the least run-out with enough play, at least half that of the design; where no order has so much, the most play.',
    'most-play': 'the most play, whatever the run-out.',
    'least-run-out': 'the least run-out, whatever the play.',
    'least-play': 'the order to avoid.',
  },
  figures: {
    radialInternalClearance: shownLength(
      'Play: how far the inner ring travels in every direction at least, exact for rigid balls. Below 0 it binds.',
    ),
    runOut: shownLength('What an indicator on the inner ring shows while the set of balls goes round once.'),
  },
  figuresOf: ({ margin, runOut }) => ({ radialInternalClearance: mm(margin), runOut }),
  more: {
    innerRing: object('The raceway of the inner ring.', {
      raceway: shownLength('Across the bottoms of its groove, or across its track, as it is.'),
      wanted: shownLength(
        'Diameter at which the inner ring has the play of the design, with these balls in this order.',
      ),
      change: changeOf('Difference between the two: above 0 there is wood to remove; below 0 too much is removed.'),
    }),
  },
  moreOf: ({ inner }) => {
    if (inner === undefined) throw new RangeError('a selection for rings must have an inner ring')
    const { asItIs: raceway, wanted } = inner
    return { innerRing: { raceway, wanted, change: bothWays(mm((raceway - wanted) / 2)) } }
  },
})
